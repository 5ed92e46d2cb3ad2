import type { Repair } from "../../model/finding.ts";
import { buildField, fact, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { aimed, placed } from "../shared/aim.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "fit/saddle-setback",
  title: "The rider sits as far back as is aimed at",
  severity: "warning",
  since: 1,
  needs: () => ({
    saddle: slot("seat.saddle"),
    aim: buildField("fit.saddle-setback"),
    tolerance: buildField("fit.tolerance"),
    actual: worked<number>("seat.saddle-setback"),
    position: optional(setting("seat.saddle", "rail-position")),
    straight: optional(fact("seat.saddle", "straight-rail-length")),
    clamp: optional(fact("seat.post", "clamp-length")),
    insertion: optional(setting("seat.post", "insertion")),
    wanted: optional(worked<number>("seat.insertion-for-height")),
    angle: optional(fact("frame", "seat-angle")),
  }),
  test({ saddle, aim, tolerance, actual, position, straight, clamp, insertion, wanted, angle }) {
    // The height is set first, and the post leans back: what it changes is not to be mended on the rails.
    const raised = insertion.state === "known" && wanted.state === "known" ? insertion.value - wanted.value : 0;
    const later = angle.state === "known" && greaterThan(Math.abs(raised), tolerance.value);
    const value = later ? actual.value + raised * Math.cos((angle.value * Math.PI) / 180) : actual.value;
    const { off, is, by, aim: goal, tolerance: near, margin } = aimed({ ...actual, value }, aim, tolerance);
    const who = later ? "With the saddle at the height that is aimed at, the rider" : "The rider";
    if (off === undefined)
      return holds(
        `${who} sits ${placed(value, is, "behind", "in front of")} the crank axis; the aim is ${goal}, within ${near}.`,
        margin,
      );
    const forward = off > 0;
    const room = straight.state === "known" && clamp.state === "known" ? (straight.value - clamp.value) / 2 : undefined;
    const moved = position.state === "known" ? position.value - off : undefined;
    const reachable = moved !== undefined && (room === undefined || atMost(Math.abs(moved), room));
    const set: readonly Repair[] = reachable
      ? [{ kind: "set-setting", slot: "seat.saddle", setting: "rail-position", value: millimetres(moved) }]
      : [];
    return fails(
      `${who} sits ${placed(value, is, "behind", "in front of")} the crank axis, ${by} too far ${forward ? "back" : "forward"} for the aim of ${goal} within ${near}: ${reachable ? `move the saddle ${forward ? "forward" : "back"}, until the clamp holds its rails ${fromMiddle(moved)}` : `fit a post with ${by} ${forward ? "less" : "more"} setback`}.`,
      position.state === "known" ? position : saddle,
      [aim, tolerance],
      [...set, ...swaps("seat.post", "seat.saddle")],
    );
  },
  explanation:
    "Setback is how far behind the crank axis the rider sits, level. It follows from the seat tube's angle and offset, the " +
    "post's setback, how high the saddle stands, and where it is clamped on its rails. It decides how the weight rests on " +
    "hands and feet. It is judged at the saddle height that is aimed at, and is set before the reach to the bar: a short reach is not mended by pushing the saddle forward. " +
    "The rails allow two or three centimetres; more is a matter of another post.",
  source: "plane geometry, re-derived; the aim and how near it has to be are the build's own",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-angle: 73°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 20 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Four millimetres from the aim" {
  frame: example.fell
  seat { post: example.post { insertion: 180 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-setback: 225 mm; tolerance: 5 mm }
}
`,
    fails: `
part frame example.fell "Fell" { seat-angle: 73°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 0 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "A post without setback" {
  frame: example.fell
  seat { post: example.post { insertion: 180 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-setback: 225 mm; tolerance: 5 mm }
}
`,
  },
});

/** Where the clamp stands along the straight of the rails: the saddle is back where the clamp is before their middle. */
function fromMiddle(position: number): string {
  if (Math.abs(position) < 0.25) return "in their middle";
  return `${millimetres(Math.abs(position))} ${position > 0 ? "in front of" : "behind"} their middle`;
}
