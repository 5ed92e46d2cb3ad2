import { fact, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { frontLine, frontLineNeeds } from "../shared/front-line.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-line",
  title: "Belt ring and sprocket are in one line",
  severity: "error",
  since: 1,
  needs: () => ({
    ...frontLineNeeds,
    belt: slot("drivetrain.chain"),
    tolerance: fact("drivetrain.chain", "line-tolerance"),
    cogLine: fact("rear-wheel.hub", "cog-line"),
  }),
  test(facts) {
    const { tolerance, cogLine } = facts;
    const front = frontLine(facts);
    if (front.state === "unknown") return cannotTell(front);
    if (front.state === "none") return notApplicable("no belt line is stated for the cranks");
    const apart = Math.abs(front.line.value - cogLine.value);
    const [off, most] = showPair(apart, tolerance.value, "length");
    const lines = `${front.line.subject} at ${showQuantity(front.line.value, "length")}, ${cogLine.subject} at ${showQuantity(cogLine.value, "length")}`;
    if (atMost(apart, tolerance.value)) {
      return holds(
        `Ring and sprocket are ${off} out of line (${lines}), and ${tolerance.subject} allows ${most}.`,
        tolerance.value === 0 ? 0 : (tolerance.value - apart) / tolerance.value,
      );
    }
    return fails(
      `Ring and sprocket are ${off} out of line (${lines}), but ${tolerance.subject} allows ${most}: bring the two into line with spacers, or a ring with another offset.`,
      front.part,
      [front.line, cogLine, tolerance],
      swaps(front.slot, "rear-wheel.hub"),
    );
  },
  explanation:
    "A chain bends sideways and a belt does not. Out of line by more than a millimetre or so it climbs the flange of ring " +
    "or sprocket, squeals, frays at its edge, and in the end runs off. Belt makers state the greatest difference between " +
    "the two lines. Both are counted from the bike's centre plane, positive to the drive side, with the sprocket fitted.",
  source: "common practice, no source; the tolerance is the belt maker's own figure",
  examples: {
    holds: `
part belt example.belt "Belt" { line-tolerance: 1 mm }
part belt-ring example.ring "Belt ring" { teeth: 50 t; ring-chainline: 45.8 mm }
part crankset example.crank "Crank" { rings: none }
part hub example.hub "Gear hub" { cog-line: 45 mm }

build example "In line" {
  drivetrain {
    chain: example.belt
    chainring: example.ring
    crankset: example.crank
  }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part belt example.belt "Belt" { line-tolerance: 1 mm }
part belt-ring example.ring "Belt ring" { teeth: 50 t; ring-chainline: 47.5 mm }
part crankset example.crank "Crank" { rings: none }
part hub example.hub "Gear hub" { cog-line: 45 mm }

build example "Out of line" {
  drivetrain {
    chain: example.belt
    chainring: example.ring
    crankset: example.crank
  }
  rear-wheel.hub: example.hub
}
`,
  },
});
