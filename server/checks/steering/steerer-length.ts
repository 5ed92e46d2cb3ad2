import { notThreadless, threadlessNeeds } from "../../calculations/shared/threadless.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, equal, greaterThan, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { mostCapGap, usualCapGap } from "../shared/cap-gap.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

/** A stated length and a stated gap that are this much apart, in millimetres, were not worked out from each other. */
const slip = 1;

export default defineCheck({
  code: "steering/steerer-length",
  title: "The steerer is cut to the length of what stands on it",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadlessNeeds,
    stem: slot("cockpit.stem"),
    length: optional(setting("fork", "steerer-length")),
    stack: optional(worked<number>("steering.steerer-stack")),
    clampHeight: optional(fact("cockpit.stem", "clamp-height")),
    above: optional(setting("cockpit.stem", "spacers-above")),
    below: optional(setting("cockpit.stem", "spacers-below")),
    gap: optional(setting("cockpit.stem", "cap-gap")),
    engagement: optional(fact("cockpit.stem", "least-engagement")),
  }),
  test({ stem, length, stack, clampHeight, above, below, gap, engagement, ...kind }) {
    // What a quill has no use for is not asked for.
    const other = notThreadless(kind);
    if (other) return notApplicable(other);
    if ([length, stack, clampHeight, above, below].some(({ state }) => state === "none")) {
      return notApplicable("nothing is stated that stands on the steerer");
    }
    if (
      length.state !== "known" ||
      stack.state !== "known" ||
      clampHeight.state !== "known" ||
      above.state !== "known" ||
      below.state !== "known"
    ) {
      return cannotTell(...unknowns(length, stack, clampHeight, above, below));
    }
    const left = stack.value - length.value;
    const planned = gap.state === "known" && gap.value > 0 && atMost(gap.value, mostCapGap) ? gap.value : usualCapGap;
    // No more is left out than the stem can do without.
    const spare = engagement.state === "known" ? above.value + clampHeight.value - engagement.value : planned;
    const wanted = spare > 0 ? Math.min(planned, spare) : planned;
    const [cut, full] = showPair(length.value, stack.value, "length");
    const cutTo = millimetres(stack.value - wanted);
    const again: Repair = { kind: "set-setting", slot: "fork", setting: "steerer-length", value: cutTo };
    const spacers = (name: "spacers-above" | "spacers-below", height: number): readonly Repair[] =>
      height >= 0 ? [{ kind: "set-setting", slot: "cockpit.stem", setting: name, value: millimetres(height) }] : [];
    const facts: readonly Known[] = [length, stack];

    if (atMost(left, 0)) {
      return fails(
        `The steerer is cut to ${cut}, but only ${full} stand on it: the cap rests on the steerer and cannot take up play. Cut it to ${cutTo}, or add ${millimetres(wanted - left)} of spacers.`,
        length,
        facts,
        [again, ...spacers("spacers-above", above.value + wanted - left)],
      );
    }
    const held = clampHeight.value - Math.max(0, left - above.value);
    const short =
      engagement.state === "known" && lessThan(held, engagement.value)
        ? `${stem.subject} then holds ${showPair(held, engagement.value, "length")[0]} of it and needs ${showPair(held, engagement.value, "length")[1]}`
        : undefined;
    if (greaterThan(left, mostCapGap) || short) {
      const most = showPair(left, mostCapGap, "length");
      return fails(
        `The steerer is cut to ${cut}, and ${full} stand on it: it ends ${most[0]} below the top${greaterThan(left, mostCapGap) ? `, and ${most[1]} is the most` : ""}${short ? `; ${short}` : ""}. Leave it at ${cutTo}, or take out ${millimetres(left - wanted)} of spacers.`,
        length,
        [...facts, ...(short && engagement.state === "known" ? [clampHeight, engagement] : [])],
        [
          again,
          ...spacers("spacers-above", above.value - (left - wanted)),
          ...spacers("spacers-below", below.value - (left - wanted)),
        ],
      );
    }
    if (gap.state === "known" && !equal(gap.value, left) && greaterThan(Math.abs(gap.value - left), slip)) {
      const [is, said] = showPair(left, gap.value, "length");
      const isGap = gap.value > 0 && atMost(gap.value, mostCapGap);
      const remedy = isGap
        ? `for a gap of ${equal(wanted, gap.value) ? said : `${showQuantity(wanted, "length")}, as ${stem.subject} still holds enough of it,`} it is cut to ${cutTo}`
        : `and a gap is more than nothing and ${showQuantity(mostCapGap, "length")} at most, so it is the gap that is to be corrected`;
      return fails(
        `The steerer is cut to ${cut}, and ${full} stand on it: it ends ${is} below the top, but the build says cap-gap: ${said}. Both cannot be right${isGap ? ": " : ", "}${remedy}.`,
        length,
        [...facts, gap],
        [
          ...(isGap ? [again] : []),
          { kind: "set-setting", slot: "cockpit.stem", setting: "cap-gap", value: millimetres(left) },
        ],
        { severity: "warning" },
      );
    }
    // Only a steerer that ends inside the clamp asks how much of it the stem needs.
    const unknown = unknowns(greaterThan(left, above.value) ? engagement : undefined);
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(
      `The steerer is cut to ${cut}, and ${full} stand on it: it ends ${showQuantity(left, "length")} below the top, and ${stem.subject} holds ${showQuantity(held, "length")} of it.`,
    );
  },
  explanation:
    "The steerer ends a few millimetres below the top of the stem, or of the spacer on it, so that the cap can pull the " +
    "bearings together. Cut too long, the cap meets the steerer first and play stays in. Cut too short, the stem clamps " +
    "air: ISO 4210-2 allows a gap of 5 mm at most, and a stem's maker states how much steerer has to be inside. The length " +
    "is counted from the crown-race seat: lower stack, head tube, upper stack, spacers, stem, less the gap. It is cut after " +
    "the rider's position is settled.",
  source: "TBIS 4210-2:2018, clause 4.7.4, the adoption of ISO 4210-2; 3 mm of gap: common practice, no source",
  caution:
    "A stem that holds on too little steerer comes off. Measure twice; a steerer cut too short is not mended. The makers' instructions come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { head-tube-length: 140 mm }
part fork example.fork "Fork" { steerer-diameter: 28.6 mm }
part headset example.bearings "Bearings" { lower-stack: 4 mm; upper-stack: 8 mm }
part stem example.stem "Stem" { clamp-height: 40 mm; least-engagement: 36 mm }

build example "Three millimetres below the top" {
  frame: example.fell
  fork: example.fork { steerer-length: 199 mm }
  headset: example.bearings
  cockpit.stem: example.stem { spacers-below: 10 mm; spacers-above: 0 mm; cap-gap: 3 mm }
}
`,
    fails: `
part frame example.fell "Fell" { head-tube-length: 140 mm }
part fork example.fork "Fork" { steerer-diameter: 28.6 mm }
part headset example.bearings "Bearings" { lower-stack: 4 mm; upper-stack: 8 mm }
part stem example.stem "Stem" { clamp-height: 40 mm; least-engagement: 36 mm }

build example "Measured without the lower bearing" {
  frame: example.fell
  fork: example.fork { steerer-length: 189 mm }
  headset: example.bearings
  cockpit.stem: example.stem { spacers-below: 10 mm; spacers-above: 0 mm; cap-gap: 3 mm }
}
`,
  },
});
