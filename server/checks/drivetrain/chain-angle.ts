import { showNumber } from "../../calculations/show.ts";
import { fact, optional, slot, worked } from "../../model/need.ts";
import { atMost, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { frontLine, frontLineNeeds, suitableChainlines } from "../shared/front-line.ts";
import { swaps } from "../shared/swaps.ts";

/** Degrees: up to three is good, from three to four is usual in the end gears of wide cassettes. */
const usual = 4;

export default defineCheck({
  code: "drivetrain/chain-angle",
  title: "The chain runs no more askew than is usual",
  severity: "information",
  since: 1,
  needs: () => ({
    ...frontLineNeeds,
    cassette: slot("drivetrain.cassette"),
    angle: worked<number>("drivetrain.greatest-chain-angle"),
    gear: worked<string>("drivetrain.worst-chain-angle-gear"),
    cogLine: fact("rear-wheel.hub", "cog-line"),
    chainstay: fact("frame", "chainstay"),
    design: optional(fact("frame", "chainline")),
  }),
  test(facts) {
    const { cassette, angle, gear, cogLine, chainstay, design } = facts;
    const front = frontLine(facts);
    if (front.state === "unknown") return cannotTell(front);
    if (front.state === "none") return notApplicable("no chainline is stated for the cranks");
    const shown = `${showNumber(angle.value, 1)}° in ${gear.value}`;
    if (atMost(angle.value, usual)) {
      return holds(
        `The chain runs at most ${shown} askew, and up to ${usual}° is usual.`,
        (usual - angle.value) / usual,
      );
    }
    if (design.state === "known") {
      if (!inside(front.line.value, suitableChainlines(design.value))) {
        return notApplicable(`the chain runs ${shown} askew because of the chainline, which is found as such`);
      }
      return holds(
        `The chain runs ${shown} askew, with the chainline of ${showInterval(design.value, "length")} that ${design.subject} is designed for.`,
      );
    }
    return fails(
      `The chain runs askew by ${shown}, more than the ${usual}° that are usual: rings at ${showQuantity(front.line.value, "length")}, cogs at ${showQuantity(cogLine.value, "length")}, chainstay ${showQuantity(chainstay.value.least, "length")}. Use that gear sparingly, or bring rings and cogs closer into line.`,
      cassette,
      [front.line, cogLine, chainstay],
      swaps(front.slot),
    );
  },
  explanation:
    "In the end gears the chain runs at an angle to the wheel. A few degrees are normal; more of them wear chain and teeth " +
    "faster, make noise, and let the chain drop when the rider pedals backward. The angle follows from the chainline of " +
    "the rings, the place of each cog and the length of the chainstay, and it grows as the chainstay gets shorter. Wide " +
    "cassettes with single rings reach three to four degrees as their makers mean them, so only more is mentioned, and " +
    "not where the cranks give the very chainline that the frame's maker designed it for.",
  source: "trigonometry; up to 3° good and 3° to 4° usual: common practice, no source",
  examples: {
    holds: `
part frame example.frame "Frame" { chainstay: 420 mm }
part crankset example.crank "Crank" { rings: 42 t; chainline: 45 mm }
part cassette example.cogs "11-28" { cogs: 11-13-15-17-19-21-24-28 t; cog-pitch: 4.8 mm }
part hub example.hub "Hub" { cog-line: 45 mm }

build example "In line" {
  frame: example.frame
  drivetrain {
    crankset: example.crank
    cassette: example.cogs
  }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part frame example.frame "Frame" { chainstay: 405 mm }
part crankset example.crank "Crank" { rings: 42 t; chainline: 55 mm }
part cassette example.cogs "11-28" { cogs: 11-13-15-17-19-21-24-28 t; cog-pitch: 4.8 mm }
part hub example.hub "Hub" { cog-line: 43 mm }

build example "Rings far outside the cogs" {
  frame: example.frame
  drivetrain {
    crankset: example.crank
    cassette: example.cogs
  }
  rear-wheel.hub: example.hub
}
`,
  },
});
