import { expect } from "chai";
import * as vscode from "vscode";
import { test } from "./harness.ts";
import { eventually, openText, removeFile } from "./workspace.ts";

test("a file that ends in .ferrule is a Ferrule document, and opening it starts the extension", async () => {
  const { document } = await openText("activation.ferrule", "// nothing yet\n");
  expect(document.languageId).to.equal("ferrule");
  const extension = vscode.extensions.getExtension("north-yard.ferrule");
  expect(extension, "the extension is installed").not.to.equal(undefined);
  await eventually("the extension is active", () => extension?.isActive);
  await removeFile("activation.ferrule");
});
