import { expect } from "chai";
import { pageTest } from "./harness.ts";

pageTest("a built-in standard is found by its dimension and opened to be read", async (workbench) => {
  await workbench.openFile("workshop.ferrule");
  await workbench.command("Ferrule: Open Built-in Standard...");
  const input = workbench.page.locator(".quick-input-widget input[type=text]");
  await workbench.page.locator(".quick-input-list .monaco-list-row").first().waitFor();
  await input.fill("12x148");
  const rows = workbench.page.locator(".quick-input-list .monaco-list-row");
  await rows.filter({ hasText: "12x148" }).first().waitFor();
  expect((await rows.first().innerText()).replaceAll("\n", " ")).to.match(/12x148.*axle/);
  await workbench.page.keyboard.press("Enter");
  await workbench.page.locator(".tabs-container .tab.active", { hasText: "axles.ferrule" }).waitFor();
  const text = await workbench.until("the standard is drawn", async () => {
    const drawn = await workbench.visibleText();
    return drawn.includes("standard axle 12x148") && drawn;
  });
  expect(text).to.include("width: 148 mm");
  await workbench.page.keyboard.type("x");
  await workbench.page.locator(".monaco-editor-overlaymessage", { hasText: /read-only/i }).waitFor();
});
