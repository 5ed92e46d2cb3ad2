import { workspace } from "vscode";

/** The standards that come with the server: documents of the language, to be read. */
export const standardScheme = "ferrule-standard";

/** What a check means, why, and its source: where the code of a finding leads. */
export const explanationScheme = "ferrule-explanation";

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
