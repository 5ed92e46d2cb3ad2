import { expect } from "chai";
import type { Workbench } from "../workbench.ts";
import { pageTest } from "./harness.ts";

const file = "wrong/fellside-draft.ferrule";

/** The row of the Problems view that tells of the short cage: how it begins and the check's code. */
const capacity = { message: "Capacity needed 42 t", code: "drivetrain/cage-capacity" };

/** The rows of the Problems view that tell of a finding. */
async function rowsOf(workbench: Workbench, { message, code }: typeof capacity): Promise<string[]> {
  await workbench.problems();
  const rows = workbench.page
    .locator(".markers-panel .monaco-list-row", { hasText: message })
    .filter({ hasText: code });
  return rows.allInnerTexts();
}

async function openWrongBuild(workbench: Workbench): Promise<void> {
  await workbench.openFile(file);
  await workbench.waitForFindings();
  await workbench.until("the short cage is listed", async () => (await rowsOf(workbench, capacity)).length > 0);
}

pageTest("the wrong build opens with its faults underlined and listed, each with its numbers", async (workbench) => {
  await openWrongBuild(workbench);
  const [summary] = await workbench.problems();
  expect(Number(/^(\d+) problems in file fellside-draft/.exec(summary ?? "")?.[1])).to.be.at.least(8);
  const [row] = await rowsOf(workbench, capacity);
  expect(row).to.include("42 t").and.to.include("39 t");
  expect(await workbench.page.locator(".editor-instance .cdr.squiggly-error").count()).to.be.at.least(3);
});

pageTest(
  "hovering over the part at fault shows the comparison and how its number was worked out",
  async (workbench) => {
    await openWrongBuild(workbench);
    const hover = await workbench.hover("corrie.mid-12");
    expect(hover).to.include("42 t").and.to.include("39 t");
    expect(hover, "the working: 52 less 10").to.match(/52\s*t?\s*[−-]\s*10/);
  },
);

pageTest(
  "a quick fix swaps in a part that fits, and the fault is gone from the list and the text",
  async (workbench) => {
    await openWrongBuild(workbench);
    const titles = await workbench.quickFixes("corrie.mid-12");
    const swap = titles.find((title) => title.includes("corrie.long-12"));
    if (swap === undefined) throw new Error(`no swap among: ${titles.join("; ")}`);
    await workbench.takeQuickFix(swap);
    await workbench.until("the text names the long cage", async () =>
      (await workbench.visibleText()).includes("rear-derailleur: corrie.long-12"),
    );
    await workbench.until("the fault is gone", async () => (await rowsOf(workbench, capacity)).length === 0);
    const text = await workbench.visibleText();
    expect(text).to.not.include("rear-derailleur: corrie.mid-12");
  },
);

pageTest("completion of a slot says of each part whether it fits", async (workbench) => {
  await openWrongBuild(workbench);
  await workbench.reveal("corrie.mid-12");
  await workbench.execute("editor.action.triggerSuggest");
  const rows = workbench.page.locator(".suggest-widget.visible .monaco-list-row");
  await rows.first().waitFor();
  const labels = await rows.evaluateAll((all) => all.map((row) => row.getAttribute("aria-label") ?? ""));
  const places = ["corrie.long-12", "corrie.mid-12"].map((name) => labels.findIndex((label) => label.includes(name)));
  expect(places[0], "the cage that is long enough is offered").to.be.at.least(0);
  expect(places[1], "the one that is not comes later").to.be.greaterThan(places[0] ?? 0);
  expect(labels[places[1] ?? 0]).to.include("does not fit");
  await workbench.page.keyboard.press("Escape");
});

pageTest("the command to restart the server brings the findings back", async (workbench) => {
  await openWrongBuild(workbench);
  await workbench.command("Ferrule: Restart Language Server");
  await workbench.until("the findings are back", async () => (await rowsOf(workbench, capacity)).length > 0);
});
