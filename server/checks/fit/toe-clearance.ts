import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, fact, optional, slot, worked } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/**
 * From a pedal's middle forward to the steered tyre: 100 mm by JIS D 9301:2019, 5.6.2, and 89 mm where the foot is held
 * or the bicycle is a child's; 89 mm by 16 CFR 1512.17(d) where the foot is not held.
 */
const freeFoot = { least: 100, source: "JIS D 9301:2019, 5.6.2" };
const heldFoot = { least: 89, source: "JIS D 9301:2019, 5.6.2" };

export default defineCheck({
  code: "fit/toe-clearance",
  title: "The front wheel steers clear of the toes",
  severity: "warning",
  since: 1,
  needs: () => ({
    fork: slot("fork"),
    clearance: worked<number>("geometry.toe-clearance"),
    foot: fact("drivetrain.pedals", "foot"),
    category: optional(buildField("category")),
  }),
  test({ fork, clearance, foot, category }) {
    // 16 CFR 1512.2 takes track bicycles out of its scope (from memory).
    if (stated(category) === "track") {
      return notApplicable("on a banked track the front wheel is hardly steered, and no standard asks for it");
    }
    const child = stated(category) === "child";
    // A pedal that holds the foot on one side only leaves it free on the other.
    const held = foot.value === "cleat" || foot.value === "toe-clip";
    const rule = held || child ? heldFoot : freeFoot;
    const [is, least] = showPair(Math.round(clearance.value * 10) / 10, rule.least, "length", { digits: 0 });
    if (atLeast(clearance.value, rule.least)) {
      return holds(
        `There are ${is} from the pedal to the steered front wheel, and ${least} are asked for (${rule.source}).`,
        (clearance.value - rule.least) / clearance.value,
      );
    }
    // Enough for a child's bicycle, and nobody says whose it is.
    if (category.state === "unknown" && atLeast(clearance.value, heldFoot.least)) return cannotTell(category);
    return fails(
      `There are ${is} from the pedal's middle forward to the steered front wheel, and ${rule.source} asks for ${least}: at walking pace the toe can meet the ${atLeast(clearance.value, heldFoot.least) ? "tyre; 16 CFR 1512.17(d) is content with 89 mm" : "tyre"}. Shorter cranks, a narrower tyre or a fork with more offset give room; tell the rider where they do not.`,
      fork,
      [clearance, foot],
      swaps("drivetrain.crankset", "front-wheel.tyre", "fork"),
    );
  },
  explanation:
    "When the bar is turned at low speed, the front wheel swings back towards the foot, and a toe that meets the tyre throws " +
    "the rider. What counts is the distance from the middle of the pedal forward to the arc of the steered tyre or mudguard, " +
    "not the gap straight ahead. Published rules ask for 100 mm, or 89 mm where the foot is held. Small frames for large " +
    "wheels often have less, and many are ridden so by people who know it. A mudguard takes its share.",
  source: "JIS D 9301:2019, 5.6.2, and 16 CFR 1512.17(d); the sweep is solid geometry, re-derived",
  caution: "A rider whose toe can meet the wheel has to know it before the first ride.",
  examples: {
    holds: `
${bike("reach: 410 mm", "cleat", 170)}
`,
    fails: `
${bike("reach: 350 mm", "platform", 175)}
`,
  },
});

/** A whole front centre, with the numbers that make the difference. */
function bike(reach: string, foot: string, crank: number): string {
  return `part frame example.fell "Fell" {
  ${reach}
  stack: 550 mm
  head-angle: 71.5°
  head-tube-length: 140 mm
  chainstay: 430 mm
  bottom-bracket-drop: 70 mm
}
part fork example.fork "Fork" { axle-to-crown: 385 mm; fork-offset: 47 mm }
part headset example.bearings "Bearings" { lower-stack: 4 mm }
part crankset example.crank "Crank ${crank}" { crank-length: ${crank} mm; q-factor: 150 mm }
part pedals example.pedals "Pedals" { foot: ${foot}; outer-edge: 95 mm }
part rim example.rim "Rim" { inner-width: 23 mm }
part tyre example.tyre "Tyre" { size: 40-622; measured-width: 40 mm; measured-on-rim: 23 mm; measured-height: 40 mm }

build example "${foot} pedals and a frame with ${reach}" {
  category: gravel
  frame: example.fell
  fork: example.fork
  headset: example.bearings
  drivetrain { crankset: example.crank; pedals: example.pedals }
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel { rim: example.rim; tyre: example.tyre }
}`;
}
