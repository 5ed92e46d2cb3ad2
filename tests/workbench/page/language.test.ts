import { expect } from "chai";
import { pageTest } from "./harness.ts";

pageTest("the status bar names the language of a .ferrule file", async (workbench) => {
  await workbench.openFile("workshop.ferrule");
  const language = await workbench.page.locator("#status\\.editor\\.mode").innerText();
  expect(language.trim()).to.equal("Ferrule");
});
