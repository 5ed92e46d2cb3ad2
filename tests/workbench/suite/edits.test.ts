import { expect } from "chai";
import * as vscode from "vscode";
import { isFault, withDraft } from "./draft.ts";
import { test } from "./harness.ts";
import { findingsOf, openText, removeFile } from "./workspace.ts";

test("a quick fix swaps in the part that fits, and the finding is gone", () =>
  withDraft(async ({ document }) => {
    const findings = await findingsOf(document.uri, "the fault is found", (found) => found.some(isFault));
    const fault = findings.find(isFault);
    if (fault === undefined) throw new Error("no fault");
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      "vscode.executeCodeActionProvider",
      document.uri,
      fault.range,
      vscode.CodeActionKind.QuickFix.value,
      100,
    );
    const swap = actions.find(({ title }) => title.includes("draft.long"));
    if (swap?.edit === undefined) throw new Error(`no swap among: ${actions.map(({ title }) => title).join("; ")}`);
    expect(swap.kind?.value).to.match(/^quickfix/);
    expect(await vscode.workspace.applyEdit(swap.edit)).to.equal(true);
    expect(document.getText()).to.include("rear-derailleur: draft.long");
    await findingsOf(document.uri, "the fault is gone", (found) => !found.some(isFault));
  }));

test("formatting writes the one canonical text and keeps every comment", async () => {
  const before = ["part   cassette draft.ragged   {", "speeds:12 // counted", "      mass :372 g", "}", ""].join("\n");
  const { document } = await openText("draft-ragged.ferrule", before);
  const edits = await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>(
    "vscode.executeFormatDocumentProvider",
    document.uri,
    { tabSize: 2, insertSpaces: true },
  );
  const change = new vscode.WorkspaceEdit();
  change.set(document.uri, edits ?? []);
  await vscode.workspace.applyEdit(change);
  expect(document.getText()).to.equal(
    ["part cassette draft.ragged {", "  speeds: 12 // counted", "  mass: 372 g", "}", ""].join("\n"),
  );
  const again = await vscode.commands.executeCommand<vscode.TextEdit[] | undefined>(
    "vscode.executeFormatDocumentProvider",
    document.uri,
    { tabSize: 2, insertSpaces: true },
  );
  expect(again ?? []).to.have.length(0);
  await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
  await removeFile("draft-ragged.ferrule");
});
