/** What the tests in the extension host do most often: open a text, and wait until the extension has answered. */
import * as vscode from "vscode";

/** The folder the workbench has open: a copy of the samples that a test may change. */
export function workspaceRoot(): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error("the workbench has no folder open");
  return folder.uri;
}

/** Writes a file into the open folder. @param path from the open folder, with `/` between folders */
export async function writeFile(path: string, text: string): Promise<vscode.Uri> {
  const uri = vscode.Uri.joinPath(workspaceRoot(), path);
  await vscode.workspace.fs.createDirectory(vscode.Uri.joinPath(uri, ".."));
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  return uri;
}

/**
 * Writes a file into the open folder and shows it in an editor.
 * @param path from the open folder, with `/` between folders
 */
export async function openText(path: string, text: string): Promise<vscode.TextEditor> {
  const uri = await writeFile(path, text);
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
}

/** Shows a file of the open folder in an editor. @param path from the open folder, with `/` between folders */
export async function openFile(path: string): Promise<vscode.TextEditor> {
  const uri = vscode.Uri.joinPath(workspaceRoot(), path);
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(uri));
}

/** Removes a file that a test wrote, and whatever the workbench says of it. */
export async function removeFile(path: string): Promise<void> {
  await vscode.workspace.fs.delete(vscode.Uri.joinPath(workspaceRoot(), path));
}

/**
 * Asks again and again until the answer is neither undefined nor false.
 * @param question says what was being waited for when it never comes
 */
export async function eventually<Answer>(
  question: string,
  ask: () => Answer | undefined | false | Thenable<Answer | undefined | false>,
  milliseconds = 20_000,
): Promise<Answer> {
  const until = Date.now() + milliseconds;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined && answer !== false) return answer;
    if (Date.now() > until) throw new Error(`${question}: not so after ${milliseconds} ms`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Waits until the findings of a file satisfy a condition, and returns them. */
export function findingsOf(
  uri: vscode.Uri,
  question: string,
  condition: (findings: readonly vscode.Diagnostic[]) => boolean,
): Promise<readonly vscode.Diagnostic[]> {
  return eventually(question, () => {
    const findings = vscode.languages.getDiagnostics(uri);
    return condition(findings) && findings;
  });
}

/** The position of the first occurrence of some words in a document. */
export function positionOf(document: vscode.TextDocument, words: string): vscode.Position {
  const offset = document.getText().indexOf(words);
  if (offset < 0) throw new Error(`"${words}" does not occur in ${document.uri}`);
  return document.positionAt(offset);
}
