import { pageTest } from "./harness.ts";

pageTest("the code of a finding leads to what the check means, why, and its source", async (workbench) => {
  await workbench.openFile("wrong/fellside-draft.ferrule");
  await workbench.waitForFindings();
  await workbench.problems();
  const link = workbench.page.locator(".markers-panel .monaco-link", { hasText: "drivetrain/cage-capacity" });
  await link.first().click();
  await workbench.page.locator(".tabs-container .tab.active", { hasText: "cage-capacity" }).waitFor();
  const text = workbench.webview().locator("body");
  for (const words of ["The cage takes up the slack of every gear", "Caution:", "Source:"]) {
    await text.getByText(words).first().waitFor();
  }
});
