import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { dimensionFact } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Diameters that are named alike differ by up to this much in millimetres, by rounding. */
const rounding = 0.05;

export default defineCheck({
  code: "wheel/spoke-end",
  title: "The spokes go through the hub's holes, and are no thinner there than at their thread",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    spokes: slot(ofWheel(wheel, "spokes")),
    end: fact(ofWheel(wheel, "spokes"), "end-diameter"),
    head: optional(fact(ofWheel(wheel, "spokes"), "spoke-head")),
    thread: optional(fact(ofWheel(wheel, "spokes"), "thread")),
    hole: optional(fact(ofWheel(wheel, "hub"), "spoke-hole-diameter")),
  }),
  test({ spokes, end, head, thread, hole }, { wheel }) {
    // What a straight-pull spoke lies in is a slot, or a hole that its thickest part does not pass.
    const hangs = head.state !== "known" || head.value === "elbow";
    if (hangs && hole.state === "known" && !greaterThan(hole.value, end.value)) {
      const [is, bore] = showPair(end.value, hole.value, "length");
      return fails(
        `${spokes.subject} are ${is} thick at the elbow, but the spoke holes of ${hole.subject} are ${bore}: they do not go through. Fit thinner spokes, or a hub for these; flanges are not drilled out.`,
        spokes,
        [end, hole],
        swaps(ofWheel(wheel, "spokes"), ofWheel(wheel, "hub")),
      );
    }
    const threaded = thread.state === "known" ? dimensionFact<number>(thread.value, "diameter") : undefined;
    // Spokes for heavy wheels are thicker at the elbow than at the thread; none are the other way about.
    if (threaded && greaterThan(threaded.value - end.value, rounding)) {
      const [is, named] = showPair(end.value, threaded.value, "length");
      return fails(
        `${spokes.subject} are stated to be ${is} thick at the elbow, but their thread (${threaded.subject}) is that of spokes of ${named}, and no spoke is thicker at its thread: one of the two is not what they have. Measure a spoke, and choose the nipples by it.`,
        spokes,
        [end, threaded],
        swaps(ofWheel(wheel, "spokes")),
      );
    }
    const open = unknowns(...(hangs ? [head, hole] : []), thread);
    if (open.length > 0) return cannotTell(...open);
    const [is = "", bore = ""] = showPair(end.value, hole.state === "known" ? hole.value : end.value, "length");
    const through = hangs && hole.state === "known" ? `, go through holes of ${bore}` : "";
    return holds(
      `${spokes.subject} are ${is} thick at the elbow${through}, and are no thinner there than at the thread.`,
    );
  },
  explanation:
    "A spoke is put through a hole of the flange up to its elbow, so that the hole has to be wider than the spoke: holes of " +
    "2.3 to 2.6 mm are for ends of 2.0 mm, wider ones for 2.3 mm. A flange that is drilled out for thicker spokes tears. " +
    "The thread is rolled on the other end and named by the diameter there, which is the same, or less on spokes with a " +
    "strengthened elbow. Where it is stated to be more, nipples are chosen for a spoke that is not there, and strip " +
    "under tension.",
  source: "definition of the thread's diameter, from memory; holes: common practice, no source",
  caution: "A nipple that strips, or a flange that tears, lets a wheel collapse.",
  examples: {
    holds: `
part hub example.hub "Front" { spoke-hole-diameter: 2.6 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow; end-diameter: 2 mm; thread: 2.0x56 }

build example "Through the holes" {
  front-wheel { hub: example.hub; spokes: example.spokes }
  rear-wheel { hub: none; spokes: none }
}
`,
    fails: `
part hub example.hub "Front" { spoke-hole-diameter: 2.2 mm }
part spokes example.spokes "Thick spokes" { spoke-head: elbow; end-diameter: 2.3 mm; thread: 2.3x56 }

build example "Too thick for the flange" {
  front-wheel { hub: example.hub; spokes: example.spokes }
  rear-wheel { hub: none; spokes: none }
}
`,
  },
});
