import { expect } from "chai";
import * as vscode from "vscode";
import { test } from "./harness.ts";
import { eventually, findingsOf, openText, removeFile } from "./workspace.ts";

test("a file that ends in .ferrule is a Ferrule document, and opening it starts the extension", async () => {
  const { document } = await openText("activation.ferrule", "// nothing yet\n");
  expect(document.languageId).to.equal("ferrule");
  const extension = vscode.extensions.getExtension("north-yard.ferrule");
  if (extension === undefined) throw new Error("the extension is not installed");
  await eventually("the extension is active", () => extension.isActive);
  // A workbench calls an extension active that failed to start; asking for its start again tells the two apart.
  await extension.activate();
  await removeFile("activation.ferrule");
});

test("the language server answers: a broken declaration is a finding, and mending it clears the finding", async () => {
  const editor = await openText("broken.ferrule", "part cassette {\n}\n");
  const { uri } = editor.document;
  const findings = await findingsOf(uri, "a finding for a part with no name", (found) => found.length > 0);
  expect(findings[0]?.range.start.line).to.equal(0);
  await editor.edit((edit) => edit.insert(new vscode.Position(0, "part cassette ".length), "gill.mended "));
  await findingsOf(uri, "no error once the part has a name", (found) =>
    found.every(({ severity }) => severity !== vscode.DiagnosticSeverity.Error),
  );
  await removeFile("broken.ferrule");
});
