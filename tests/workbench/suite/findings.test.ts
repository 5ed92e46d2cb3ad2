import { expect } from "chai";
import * as vscode from "vscode";
import { buildPath, codeOf, isFault, libraryPath, withDraft } from "./draft.ts";
import { test } from "./harness.ts";
import {
  eventually,
  findingsOf,
  openFile,
  openText,
  positionOf,
  removeFile,
  workspaceRoot,
  writeFile,
} from "./workspace.ts";

test("a cage too short for its gears is an error at the derailleur, with both numbers and where each was stated", () =>
  withDraft(async ({ document }) => {
    const findings = await findingsOf(document.uri, "the fault is found", (found) => found.some(isFault));
    const [fault, ...more] = findings.filter(isFault);
    expect(more).to.have.length(0);
    if (fault === undefined) throw new Error("no fault");
    expect(fault.severity).to.equal(vscode.DiagnosticSeverity.Error);
    expect(fault.source).to.equal("ferrule");
    expect(document.getText(fault.range)).to.equal("draft.medium");
    expect(fault.message).to.include("39 t").and.to.include("35 t");
    const stated = (fault.relatedInformation ?? []).map(({ location }) => location);
    expect(stated.map(({ uri }) => uri.path.split("/").at(-1))).to.include(libraryPath);
    const library = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(workspaceRoot(), libraryPath));
    const words = stated.filter(({ uri }) => uri.path === library.uri.path).map(({ range }) => library.getText(range));
    expect(words.join("\n")).to.include("35 t").and.to.include("11-13-15-17-19-21-23-25-27-30-34");
  }));

test("facts that nobody stated are notes, not silence", () =>
  withDraft(async ({ document }) => {
    const findings = await findingsOf(document.uri, "missing facts are told", (found) =>
      found.some((finding) => codeOf(finding) === "build/missing-fact"),
    );
    const missing = findings.filter((finding) => codeOf(finding) === "build/missing-fact");
    expect(new Set(missing.map(({ severity }) => severity))).to.deep.equal(
      new Set([vscode.DiagnosticSeverity.Information]),
    );
  }));

test("an edit of a library is felt in the build that uses it", () =>
  withDraft(async ({ document }) => {
    await findingsOf(document.uri, "the fault is found", (found) => found.some(isFault));
    const library = await openFile(libraryPath);
    const at = positionOf(library.document, "35 t");
    await library.edit((edit) => edit.replace(new vscode.Range(at, at.translate(0, 4)), "39 t"));
    await findingsOf(document.uri, "a longer cage mends it", (found) => !found.some(isFault));
    await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    await findingsOf(document.uri, "without the edit it is back", (found) => found.some(isFault));
  }));

test("a file that is renamed takes its findings along", () =>
  withDraft(async ({ document }) => {
    await findingsOf(document.uri, "the fault is found", (found) => found.some(isFault));
    const renamed = vscode.Uri.joinPath(workspaceRoot(), "draft-renamed.ferrule");
    const change = new vscode.WorkspaceEdit();
    change.renameFile(document.uri, renamed);
    expect(await vscode.workspace.applyEdit(change)).to.equal(true);
    await findingsOf(renamed, "the fault is found under the new name", (found) => found.some(isFault));
    await findingsOf(document.uri, "nothing is left under the old name", (found) => found.length === 0);
    await removeFile("draft-renamed.ferrule");
  }));

test("a file that nobody opened is checked, and when it is deleted nothing is left of it", async () => {
  const uri = await writeFile("draft-unopened.ferrule", "part cassette {\n}\n");
  await findingsOf(uri, "the broken part is found", (found) => found.length > 0);
  await removeFile("draft-unopened.ferrule");
  await findingsOf(uri, "nothing is left of the file", (found) => found.length === 0);
});

test("a file that is deleted while it is shown leaves nothing once its editor is closed", async () => {
  const uri = await writeFile("draft-shown.ferrule", "part cassette {\n}\n");
  // Opened as from the explorer: an extension that opens a document by itself holds on to it for minutes.
  await vscode.commands.executeCommand("vscode.open", uri);
  await findingsOf(uri, "the broken part is found", (found) => found.length > 0);
  await removeFile("draft-shown.ferrule");
  await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  await findingsOf(uri, "nothing is left of the file", (found) => found.length === 0);
});

test("a deleted folder takes its findings along", async () => {
  const uri = await writeFile("draft-folder/inner/broken.ferrule", "part cassette {\n}\n");
  await findingsOf(uri, "the broken part is found", (found) => found.length > 0);
  await vscode.workspace.fs.delete(vscode.Uri.joinPath(workspaceRoot(), "draft-folder"), { recursive: true });
  await findingsOf(uri, "nothing is left of the folder", (found) => found.length === 0);
});

test("a text that was never saved is checked too", async () => {
  const document = await vscode.workspace.openTextDocument({ language: "ferrule", content: "part cassette {\n}\n" });
  await vscode.window.showTextDocument(document);
  await findingsOf(document.uri, "the broken part is found", (found) => found.length > 0);
  await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
});

test("the other side of a comparison is left alone", async () => {
  const scheme = "draft-revision";
  const provider = vscode.workspace.registerTextDocumentContentProvider(scheme, {
    provideTextDocumentContent: () => "part cassette {\n}\n",
  });
  const { document } = await openText(buildPath, "part cassette {\n}\n");
  const older = vscode.Uri.parse(`${scheme}:/${buildPath}`);
  await vscode.workspace.openTextDocument(older);
  await findingsOf(document.uri, "the file itself is checked", (found) => found.length > 0);
  expect(vscode.languages.getDiagnostics(older)).to.have.length(0);
  provider.dispose();
  await removeFile(buildPath);
});

test("the restart command reads everything again", () =>
  withDraft(async ({ document }) => {
    await findingsOf(document.uri, "the fault is found", (found) => found.some(isFault));
    const cleared = eventually(
      "the old findings are gone",
      () => vscode.languages.getDiagnostics(document.uri).length === 0,
    );
    await Promise.all([cleared, vscode.commands.executeCommand("ferrule.restartServer")]);
    await findingsOf(document.uri, "the new server finds the fault again", (found) => found.some(isFault));
  }));
