import { sine } from "../../calculations/shared/angles.ts";
import { stated } from "../../calculations/shared/maybe.ts";
import type { Repair } from "../../model/finding.ts";
import { buildField, fact, type Known, type Maybe, optional, setting, slot, worked } from "../../model/need.ts";
import { atLeast, atMost, lessThan } from "../../values/compare.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { aimed } from "../shared/aim.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "fit/bar-position",
  title: "The hands rest where they are aimed to",
  severity: "warning",
  since: 1,
  instances: [
    { name: "reach", field: "fit.grip-reach", quantity: "cockpit.hands-forward" },
    { name: "height", field: "fit.grip-stack", quantity: "cockpit.hands-height" },
  ] as const,
  needs: ({ field, quantity }) => ({
    stem: slot("cockpit.stem"),
    aim: buildField(field),
    tolerance: buildField("fit.tolerance"),
    actual: worked<number>(quantity),
    below: optional(setting("cockpit.stem", "spacers-below")),
    needed: optional(worked<number>("cockpit.spacers-needed")),
    mostSpacers: optional(fact("fork", "greatest-spacers")),
    clamping: optional(fact("cockpit.stem", "clamping")),
    insertion: optional(setting("cockpit.stem", "quill-insertion")),
    leastInsertion: optional(fact("cockpit.stem", "least-quill-insertion")),
    headAngle: optional(fact("frame", "head-angle")),
  }),
  test({ stem, aim, tolerance, actual, below, needed, mostSpacers, ...quill }, { name }) {
    const { off, is, by, aim: goal, tolerance: near, margin } = aimed(actual, aim, tolerance);
    const where = name === "reach" ? "in front of" : "above";
    if (off === undefined)
      return holds(`The hands rest ${is} ${where} the crank axis; the aim is ${goal}, within ${near}.`, margin);
    const related: readonly Known[] = [aim, tolerance];
    if (name === "reach") {
      return fails(
        `The hands rest ${is} in front of the crank axis, ${by} too ${off > 0 ? "far" : "near"} for the aim of ${goal} within ${near}: fit a stem some ${by} ${off > 0 ? "shorter" : "longer"}, or a bar with ${off > 0 ? "less" : "more"} reach.`,
        stem,
        related,
        swaps("cockpit.stem", "cockpit.handlebar"),
      );
    }
    const other = `a stem that points further ${off > 0 ? "down" : "up"}, or a bar with ${off > 0 ? "less" : "more"} rise`;
    const depth = depthForHeight(quill, off);
    if (stated(quill.clamping) === "quill" && quill.insertion.state === "known") {
      return fails(
        `The hands rest ${is} above the crank axis, ${by} too ${off > 0 ? "high" : "low"} for the aim of ${goal} within ${near}: ${depth ? `set the quill ${depth} deep, or fit ${other}` : `its mark does not let the quill come so high; fit ${other}`}.`,
        depth ? quill.insertion : stem,
        [...related, quill.insertion],
        [
          ...(depth
            ? [
                {
                  kind: "set-setting",
                  slot: "cockpit.stem",
                  setting: "quill-insertion",
                  value: depth,
                } as const,
              ]
            : []),
          ...swaps("cockpit.stem", "cockpit.handlebar"),
        ],
      );
    }
    const spacers = stated(needed);
    const allowed =
      spacers !== undefined &&
      atLeast(spacers, 0) &&
      !(mostSpacers.state === "known" && !atMost(spacers, mostSpacers.value));
    const set: readonly Repair[] =
      allowed && spacers !== undefined
        ? [{ kind: "set-setting", slot: "cockpit.stem", setting: "spacers-below", value: millimetres(spacers) }]
        : [];
    return fails(
      `The hands rest ${is} above the crank axis, ${by} too ${off > 0 ? "high" : "low"} for the aim of ${goal} within ${near}: ${allowed && spacers !== undefined ? `use ${millimetres(spacers)} of spacers under the stem, as far as the steerer reaches, or ${other}` : `spacers alone do not bring it there; fit ${other}`}.`,
      allowed && below.state === "known" ? below : stem,
      [...related, ...(below.state === "known" ? [below] : [])],
      [...set, ...swaps("cockpit.stem", "cockpit.handlebar")],
    );
  },
  explanation:
    "Where the hands rest follows from the frame's reach and stack, the headset, the spacers, the stem and the bar. The aim " +
    "is the rider's own, measured from the crank axis forward and up, so that it holds for any frame. Spacers bring the bar " +
    "up and, since the steering axis leans, a little back. Length is a matter of the stem, then of the bar. A frame on which " +
    "no usual stem meets the aim is the wrong size. The steerer is cut only after this is settled.",
  source: "plane geometry, re-derived; the aim and how near it has to be are the build's own",
  examples: {
    holds: `
part frame example.fell "Fell" { reach: 385 mm; stack: 560 mm; head-angle: 73° }
part headset example.bearings "Bearings" { upper-stack: 15 mm }
part stem example.stem "Stem 100" { length: 100 mm; angle: -6°; clamp-height: 40 mm }
part handlebar example.bar "Bar" { bar: drop; reach: 75 mm; rise: 0 mm }

build example "Hands where they belong" {
  frame: example.fell
  headset: example.bearings
  cockpit { stem: example.stem { spacers-below: 20 mm }; handlebar: example.bar; grips: none }
  fit { grip-reach: 545 mm; grip-stack: 628 mm; tolerance: 5 mm }
}
`,
    fails: `
part frame example.fell "Fell" { reach: 385 mm; stack: 560 mm; head-angle: 73° }
part headset example.bearings "Bearings" { upper-stack: 15 mm }
part stem example.stem "Stem 130" { length: 130 mm; angle: 0°; clamp-height: 40 mm }
part handlebar example.bar "Bar" { bar: drop; reach: 75 mm; rise: 0 mm }

build example "A long stem" {
  frame: example.fell
  headset: example.bearings
  cockpit { stem: example.stem { spacers-below: 5 mm }; handlebar: example.bar; grips: none }
  fit { grip-reach: 545 mm; grip-stack: 640 mm; tolerance: 15 mm }
}
`,
  },
});

/**
 * How deep a quill stands that brings the hands to their aim, as written in a build; `undefined` where its mark forbids
 * that or something is not stated.
 * @param off by how much the hands are too high, in millimetres.
 */
function depthForHeight(
  quill: {
    readonly insertion: Maybe<number>;
    readonly leastInsertion: Maybe<number>;
    readonly headAngle: Maybe<number>;
  },
  off: number,
): string | undefined {
  const { insertion, leastInsertion, headAngle } = quill;
  if (insertion.state !== "known" || headAngle.state !== "known") return undefined;
  const depth = insertion.value + off / sine(headAngle.value);
  if (leastInsertion.state === "known" && lessThan(depth, leastInsertion.value)) return undefined;
  return depth > 0 ? millimetres(depth) : undefined;
}
