import { workspace } from "vscode";

/** Where the standards that come with the server are read from. */
export const standardScheme = "ferrule-standard";

/**
 * Whether documents of a file system are someone's work. The other side of a comparison, an older revision or a preview
 * is not: its declarations would stand beside those of the file itself as if they were declared twice.
 */
export function isWorkedOn(scheme: string): boolean {
  return (
    scheme === "file" ||
    scheme === "untitled" ||
    scheme === standardScheme ||
    workspace.workspaceFolders?.some(({ uri }) => uri.scheme === scheme) === true ||
    workspace.fs.isWritableFileSystem(scheme) === true
  );
}

/** The schemes of the documents that the language server is for. */
export function documentSchemes(): readonly string[] {
  const schemes = new Set(["file", "untitled", standardScheme]);
  for (const { uri } of workspace.workspaceFolders ?? []) schemes.add(uri.scheme);
  for (const { languageId, uri } of workspace.textDocuments) {
    if (languageId === "ferrule" && isWorkedOn(uri.scheme)) schemes.add(uri.scheme);
  }
  return [...schemes];
}
