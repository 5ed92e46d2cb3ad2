import { showNumber } from "../../calculations/show.ts";
import type { Known, Maybe } from "../../model/need.ts";
import { buildField, optional, worked } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const inMetres = 1000;

export default defineCheck({
  code: "drivetrain/gearing-aims",
  title: "The gears are those that are aimed at",
  severity: "warning",
  since: 1,
  instances: [{ name: "lowest-development" }, { name: "highest-development" }, { name: "greatest-step" }] as const,
  needs: () => ({
    lowestAim: optional(buildField("gearing.lowest-development")),
    highestAim: optional(buildField("gearing.highest-development")),
    stepAim: optional(buildField("gearing.greatest-step")),
    lowest: optional(worked<number>("drivetrain.lowest-development")),
    highest: optional(worked<number>("drivetrain.highest-development")),
    lowestOfHub: optional(worked<number>("drivetrain.lowest-hub-development")),
    highestOfHub: optional(worked<number>("drivetrain.highest-hub-development")),
    steps: optional(worked<readonly number[]>("drivetrain.gear-steps")),
  }),
  test(facts, { name }) {
    if (name === "greatest-step") return judgeSteps(facts.stepAim, facts.steps);
    const isLowest = name === "lowest-development";
    const aim = isLowest ? facts.lowestAim : facts.highestAim;
    if (aim.state !== "known") return notAimed(aim, name);
    // A gear in the hub multiplies what ring and cog give.
    const [ofHub, ofChain] = isLowest ? [facts.lowestOfHub, facts.lowest] : [facts.highestOfHub, facts.highest];
    const actual = ofHub.state === "known" ? ofHub : ofChain;
    if (ofHub.state === "unknown" || actual.state !== "known") return notKnown(ofChain, ofHub);
    const wanted = aim.value / inMetres;
    const [is, goal] = [`${showNumber(actual.value, 2)} m`, `${showNumber(wanted, 2)} m`];
    const missed = isLowest ? greaterThan(actual.value, wanted) : lessThan(actual.value, wanted);
    const said = `The ${isLowest ? "lowest" : "highest"} gear goes ${is} for a turn of the cranks, and ${goal} at ${isLowest ? "most" : "least"} is aimed at`;
    if (!missed) return holds(`${said}.`, Math.abs(wanted - actual.value) / wanted);
    return fails(
      `${said}: fit ${isLowest ? "a smaller ring or a larger cog" : "a larger ring or a smaller cog"}, or change the aim.`,
      aim,
      [actual],
      swaps("drivetrain.cassette", "drivetrain.chainring", "drivetrain.crankset"),
    );
  },
  explanation:
    "How far a bicycle goes for one turn of the cranks says how hard it is up a hill and how fast it is down one. A build " +
    "may state the lowest gear that its rider needs, the highest one that is asked for, and the greatest step from a gear " +
    "to the next on the same ring. They are aims: what is missed is a warning. Developments count the tyre as it stands on " +
    "its rim, and the gears in a hub.",
  source: "definition, as in the Wikipedia article Gear inches; the aims are the build's own",
  examples: {
    holds: `${bike(2600)}`,
    fails: `${bike(1800)}`,
  },
});

function notAimed(aim: Exclude<Maybe, Known>, name: string): Verdict {
  return aim.state === "unknown" ? cannotTell(aim) : notApplicable(`the build states no gearing.${name}`);
}

function notKnown(...numbers: readonly Maybe[]): Verdict {
  const [open] = unknowns(...numbers);
  return open ? cannotTell(open) : notApplicable("no such number can be worked out for these gears");
}

function judgeSteps(aim: Maybe<number>, steps: Maybe<readonly number[]>): Verdict {
  if (aim.state !== "known") return notAimed(aim, "greatest-step");
  if (steps.state !== "known") return notKnown(steps);
  if (steps.value.length === 0) return notApplicable("one gear makes no steps");
  const greatest = 1 + Math.max(...steps.value) / 100;
  const [is, goal] = [showNumber(greatest, 3), showNumber(aim.value, 3)];
  const said = `The greatest step from a gear to the next is ${is} times, and ${goal} at most is aimed at`;
  if (!greaterThan(greatest, aim.value)) return holds(`${said}.`, (aim.value - greatest) / aim.value);
  return fails(
    `${said}: fit a cassette with closer cogs, or change the aim.`,
    aim,
    [steps],
    swaps("drivetrain.cassette"),
  );
}

/** One ring and one pair of cogs, and a lowest gear that is aimed at. */
function bike(lowest: number): string {
  return `
part cassette example.cogs "Cogs" { cogs: 18-30 t }
part chainring example.ring "Ring" { teeth: 34 t }
part crankset example.cranks "Cranks" { rings: none }
part hub example.hub "Hub" { gears: none }
part rim example.rim "Rim" { inner-width: 19 mm }
part tyre example.tyre "Tyre" { size: 32-622; measured-width: 32 mm; measured-on-rim: 19 mm; measured-height: 31 mm }

build example "Aimed at ${lowest} mm" {
  gearing.lowest-development: ${lowest} mm
  drivetrain { cassette: example.cogs; chainring: example.ring; crankset: example.cranks }
  rear-wheel { hub: example.hub; rim: example.rim; tyre: example.tyre }
}
`;
}
