import { describe, expect, it } from "vitest";
import type { Check, Verdict } from "../../server/checks/define.ts";
import { checks } from "../../server/checks/table.ts";
import { additionsTo } from "./additions.ts";
import { answers, both, type Variation, variationsOf } from "./variations.ts";

/** What a check comes to, by instance, without the words of its message. */
type Outline = ReadonlyMap<string, string>;

function outlineOf(check: Check, text: string): Outline {
  const applying = answers(check, text).filter(
    ({ verdict }) => check.instances === undefined || verdict.outcome !== "notApplicable",
  );
  return new Map(applying.map(({ instance, verdict }) => [instance, outline(verdict)]));
}

function outline(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "holds":
      return "holds";
    case "fails": {
      const mends = new Set(
        verdict.repairs.map((repair) => `${repair.kind}${"slot" in repair ? ` ${repair.slot}` : ""}`),
      );
      return [
        `fails${verdict.severity === undefined ? "" : ` as ${verdict.severity}`} at ${verdict.at.path}`,
        ...mends,
      ].join("; mends ");
    }
    case "unknown":
      return `unknown: ${[...new Set(verdict.missing.map(({ path }) => path))].sort().join(", ")}`;
    case "notApplicable":
      return "does not apply";
  }
}

/** Whether it is what comes of one of the two alone, or asks for all that either asks for. */
function isExpected(said: string | undefined, one: string | undefined, other: string | undefined): boolean {
  if (said === one || said === other) return true;
  const [asked, first, second] = [said, one, other].map((text = "") =>
    text.startsWith("unknown: ") ? text.slice("unknown: ".length).split(", ") : undefined,
  );
  if (!asked || !first || !second) return false;
  return [...new Set([...first, ...second])].sort().join() === asked.join();
}

/** A check of every slot there is can be varied in so many ways that only some, evenly taken, are tried. */
const mostPairs = 1000;

/**
 * What comes of two at once where it is neither what comes of the one nor of the other: of facts left out or stated
 * to be none, each beside every other way to vary the example.
 */
function interactions(check: Check, example: string): readonly string[] {
  const single = [...variationsOf(example).slice(1), ...additionsTo(check, example)];
  const alone = new Map(single.map((variation) => [variation, outlineOf(check, variation.text)]));
  const takesAway = ({ name }: Variation): boolean => / left out$|: none(?: added)?$/.test(name);
  const pairs = single.flatMap((one, at) =>
    single.slice(at + 1).flatMap((other) => {
      const together = takesAway(one) || takesAway(other) ? both(example, one, other) : undefined;
      return together ? [{ one, other, together }] : [];
    }),
  );
  const step = Math.ceil(pairs.length / mostPairs);
  const lines: string[] = [];
  for (const { one, other, together } of pairs.filter((_, index) => index % step === 0)) {
    const outlines = [outlineOf(check, together.text), alone.get(one), alone.get(other)];
    const instances = new Set(outlines.flatMap((outline) => [...(outline?.keys() ?? [])]));
    const unlike = [...instances].flatMap((instance) => {
      const [said, first, second] = outlines.map((outline) => outline?.get(instance));
      return isExpected(said, first, second) ? [] : [`    ${`${instance} ${said ?? "does not apply"}`.trim()}`];
    });
    if (unlike.length > 0) lines.push(together.name, ...unlike);
  }
  return lines;
}

describe.each(checks.map((check) => ({ code: check.code, check })))("$code", ({ code, check }) => {
  it("says the same of its examples varied in two ways at once", async () => {
    const { holds, fails } = check.examples;
    const sections = [
      `${code}: ${check.title}`,
      ...["", "# The example that holds", ...interactions(check, holds)],
      ...(fails === "" ? [] : ["", "# The example that fails", ...interactions(check, fails)]),
    ];
    await expect(`${sections.join("\n")}\n`).toMatchFileSnapshot(`pairs/${code}.txt`);
  });
});
