import { fact, optional } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { mate } from "../../model/standard.ts";
import { equal, inside } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { dimensionOf, lacksDimension, showCode } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

const words: MatingWords = {
  one: "is made for",
  other: "has",
  nothing: "has no shell for a bottom bracket",
  remedy: "fit a bottom bracket for that shell.",
};

export default defineCheck({
  code: "drivetrain/bottom-bracket-shell",
  title: "The bottom bracket fits the frame's shell",
  severity: "error",
  since: 1,
  needs: () => ({
    bracket: anySlot("drivetrain.bottom-bracket"),
    made: anyFact<ResolvedCode>("drivetrain.bottom-bracket", "shell"),
    widths: optional(fact("drivetrain.bottom-bracket", "shell-widths")),
    frame: anySlot("frame"),
    shell: anyFact<ResolvedCode>("frame", "bottom-bracket-shell"),
  }),
  test({ bracket, made, widths, frame, shell }) {
    const one = readEnd(bracket, made, "shell");
    const other = readEnd(frame, shell, "bottom-bracket-shell");
    if (one.state !== "known" || other.state !== "known") {
      return judgeMating(jointNamed("bottom-bracket-shell"), words, one, other);
    }
    // A bracket may name the shell and yet state widths that do not reach it.
    const shellWidth = dimensionOf<number>(other.fact.value, "shell-width");
    const isOutside = widths.state === "known" && shellWidth !== undefined && !inside(shellWidth, widths.value);
    if (mate(one.fact.value, other.fact.value) && !isOutside) {
      return judgeMating(jointNamed("bottom-bracket-shell"), words, one, other);
    }
    const differences = boreDifferences(one.fact.value, other.fact.value);
    if (differences.length > 0) {
      return fails(
        `${one.part.subject} is made for ${showCode(one.fact.value)}, but ${other.part.subject} has ${showCode(other.fact.value)}: ${both(differences)}. Fit a bottom bracket for that shell.`,
        one.part,
        [one.fact, other.fact],
        swaps("drivetrain.bottom-bracket", "frame"),
      );
    }
    // One bore and thread in two widths: spacers or cups of the bracket may make up for the difference.
    const width = dimensionOf<number>(other.fact.value, "shell-width");
    if (width === undefined) return cannotTell(lacksDimension(other.fact.value, "shell-width"));
    if (widths.state === "unknown") return cannotTell(widths);
    if (widths.state === "known" && inside(width, widths.value)) {
      return holds(
        `${one.part.subject} fits shells ${showInterval(widths.value, "length")} wide, and that of ${other.part.subject} is ${showQuantity(width, "length")}.`,
      );
    }
    const own = dimensionOf<number>(one.fact.value, "shell-width");
    const takes =
      widths.state === "known"
        ? `shells ${showInterval(widths.value, "length")} wide`
        : own === undefined
          ? showCode(one.fact.value)
          : `a shell ${showPair(own, width, "length")[0]} wide`;
    return fails(
      `${one.part.subject} takes ${takes}, but that of ${other.part.subject} is ${showQuantity(width, "length")}: fit a bottom bracket for that width.`,
      one.part,
      [widths.state === "known" ? widths : one.fact, other.fact],
      swaps("drivetrain.bottom-bracket", "frame"),
    );
  },
  explanation:
    "A shell is a thread, or a bore into which bearings are pressed, and a width. Threads of one diameter differ in " +
    "pitch and in which side is left-handed, and forced cups ruin a frame that cannot be mended at a bench. Pressed " +
    "bearings of the wrong bore fall through or crush. One bore comes in several widths, and many bottom brackets " +
    "suit more than one of them with spacers: their maker's range of widths decides. Metal shells are faced and chased " +
    "only where out of tolerance and the maker allows; carbon never.",
  source: "DIN ISO 6696 for the hands of the English thread; the rest common practice, no source",
  examples: {
    holds: `
part frame example.road "Road" { bottom-bracket-shell: threaded-1.370x24-68 }
part bottom-bracket example.cups "Cups" { shell: threaded-1.370x24-73; shell-widths: 68 to 73 mm }

build example "Cups for two widths" {
  frame: example.road
  drivetrain.bottom-bracket: example.cups
}
`,
    fails: `
part frame example.road "Old road" { bottom-bracket-shell: threaded-36x24-70 }
part bottom-bracket example.cups "Cups" { shell: threaded-1.370x24-68; shell-widths: 68 to 73 mm }

build example "English cups for an Italian shell" {
  frame: example.road
  drivetrain.bottom-bracket: example.cups
}
`,
  },
});

/** In what two shells differ, their widths apart; empty when nothing that either standard states sets them apart. */
function boreDifferences(made: ResolvedCode, shell: ResolvedCode): readonly string[] {
  const differences: string[] = [];
  const bores = [made, shell].map((code) => dimensionOf<number>(code, "bore"));
  const [a, b] = bores;
  // Without the bores of both nothing says that the two are one but for their width.
  if (a === undefined || b === undefined) return ["nothing says that the two are alike"];
  const [held, otherHeld] = [made, shell].map((code) => dimensionOf<string>(code, "fit"));
  if (held !== otherHeld && held !== undefined && otherHeld !== undefined) {
    // A thread and a bore are not measured alike, and what is pressed has neither hand nor pitch to differ in.
    return [`bearings are ${held} into one and ${otherHeld} into the other`];
  }
  if (!equal(a, b)) {
    const [one, other] = showPair(a, b, "length");
    const what = dimensionOf<string>(shell, "fit") === "threaded" ? "thread" : "bore";
    differences.push(`a ${what} of ${one} is not one of ${other}`);
  }
  for (const [name, what] of [
    ["left-hand", "hand of the left cup"],
    ["right-hand", "hand of the right cup"],
  ] as const) {
    const [one, other] = [made, shell].map((code) => dimensionOf<string>(code, name) ?? "none");
    if (one !== other) differences.push(`the ${what} is ${one} in one and ${other} in the other`);
  }
  for (const [name, what] of [
    ["thread-pitch", "pitch"],
    ["centre-offset", "offset from the centre plane"],
  ] as const) {
    const [one, other] = [made, shell].map((code) => dimensionOf<number>(code, name));
    if (one === undefined && other === undefined) continue;
    if (one === undefined || other === undefined) differences.push(`only one of them has a ${what}`);
    else if (!equal(one, other)) {
      const [first, second] = showPair(one, other, "length");
      differences.push(`a ${what} of ${first} is not one of ${second}`);
    }
  }
  return differences;
}
