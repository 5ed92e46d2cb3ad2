import { describe, expect, it } from "vitest";
import type { Check } from "../../server/checks/define.ts";
import { checks } from "../../server/checks/table.ts";
import { additionsTo } from "./additions.ts";
import { answers, asItStands, type Variation, variationsOf, verdictLine } from "./variations.ts";

/**
 * What each check says when its examples are varied, kept in one file per check beside this one. A change is looked
 * at and accepted with `npm test -- variations -u`.
 */
function said(check: Check, variations: readonly Variation[]): readonly string[] {
  const lines: string[] = [];
  let standing: readonly string[] = [];
  for (const { name, text } of variations) {
    const own: string[] = [];
    const applying = answers(check, text).filter(
      ({ verdict }) => check.instances === undefined || verdict.outcome !== "notApplicable",
    );
    for (const { instance, verdict } of applying) {
      own.push(`    ${instance === "" ? "" : `${instance} `}${verdictLine(verdict)}`);
    }
    if (applying.length === 0) own.push("    does not apply");
    if (name === asItStands) standing = own;
    // Most facts of an example are there for one answer, and most variations leave it as it is.
    if (name !== asItStands && own.join() === standing.join()) lines.push(`${name}: the same`);
    else lines.push(name, ...own);
  }
  return lines;
}

/** What it says when more is stated, those ways together that change nothing. */
function addedTo(check: Check, example: string, title: string): readonly string[] {
  const [whole] = variationsOf(example);
  const additions = additionsTo(check, example);
  if (!whole || additions.length === 0) return [];
  const lines = said(check, [whole, ...additions]);
  const isSame = (line: string): boolean => line.endsWith(": the same");
  const same = lines.filter(isSame).map((line) => `    ${line.slice(0, -": the same".length)}`);
  const standing = lines.findIndex((line, index) => index > 0 && !line.startsWith(" "));
  const others = (standing < 0 ? [] : lines.slice(standing)).filter((line) => !isSame(line));
  return ["", title, ...others, ...(same.length === 0 ? [] : ["the same with", ...same])];
}

describe.each(checks.map((check) => ({ code: check.code, check })))("$code", ({ code, check }) => {
  const holding = variationsOf(check.examples.holds);
  const failing = check.examples.fails === "" ? [] : variationsOf(check.examples.fails);

  it("says the same of every variation of its examples", async () => {
    const sections = [
      `${code}: ${check.title}`,
      `${check.severity} since ${check.since}${check.safety ? ", for somebody's safety" : ""}`,
      ...["", "# The example that holds", ...said(check, holding)],
      ...(failing.length === 0 ? [] : ["", "# The example that fails", ...said(check, failing)]),
      ...addedTo(check, check.examples.holds, "# More stated, of the example that holds"),
      ...(failing.length === 0 ? [] : addedTo(check, check.examples.fails, "# More stated, of the example that fails")),
    ];
    // What cannot be checked names what is missing.
    expect(sections.join("\n").match(/^.*unknown: *$/gm) ?? []).toEqual([]);
    await expect(`${sections.join("\n")}\n`).toMatchFileSnapshot(`variations/${code}.txt`);
  });

  // Omission never passes for a fact: leaving one out of what fails leaves a failure, an open question or nothing to ask.
  it("never holds for want of a fact", () => {
    const [whole] = failing;
    if (!whole) return;
    const before = new Map(answers(check, whole.text).map(({ instance, verdict }) => [instance, verdict.outcome]));
    for (const { name, text, isUnknownWithout } of failing) {
      if (!isUnknownWithout) continue;
      for (const { instance, verdict } of answers(check, text)) {
        const turned = before.get(instance) === "fails" && verdict.outcome === "holds";
        expect(turned, `${name}: ${verdictLine(verdict)}`).toBe(false);
      }
    }
  });
});
