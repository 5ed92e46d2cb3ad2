import { showNumber } from "../../calculations/show.ts";
import { fact, slot, worked } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Steps of up to this many per cent occur on ordinary wide cassettes. */
const usual = 100 / 3;

export default defineCheck({
  code: "drivetrain/cog-steps",
  title: "The cogs ascend in steps that a rider can use",
  severity: "information",
  since: 1,
  needs: () => ({
    cassette: slot("drivetrain.cassette"),
    cogs: fact("drivetrain.cassette", "cogs"),
    steps: worked<readonly number[]>("drivetrain.cog-steps"),
  }),
  test({ cassette, cogs, steps }) {
    const list = cogs.value;
    if (list.length === 1) return notApplicable("one cog makes no steps");
    const ascending = [...list].sort((a, b) => a - b);
    const faults: string[] = [];

    const twice = [...new Set(ascending.filter((cog, index) => ascending[index - 1] === cog))];
    if (twice.length > 0)
      faults.push(`${both(twice.map((cog) => `${cog} t`))} ${twice.length === 1 ? "occurs" : "occur"} more than once`);
    const wrongWay = list.findIndex((cog, index) => index > 0 && cog < (list[index - 1] as number));
    if (wrongWay > 0) {
      faults.push(
        `${list[wrongWay]} t follows ${list[wrongWay - 1]} t, though cogs are written from the smallest to the largest`,
      );
    }
    // Steps run from the largest cog down.
    const descending = [...ascending].reverse();
    steps.value.forEach((step, index) => {
      if (atMost(step, usual)) return;
      faults.push(
        `from ${descending[index + 1]} t to ${descending[index]} t is a step of ${showNumber(step, 1)} %, more than the ${showNumber(usual, 1)} % that ordinary cassettes have`,
      );
    });

    if (faults.length === 0) {
      const greatest = Math.max(...steps.value);
      return holds(
        `${list.length} cogs from ${ascending[0]} t to ${descending[0]} t, the greatest step ${showNumber(greatest, 1)} %.`,
        (usual - greatest) / usual,
      );
    }
    const disorder = wrongWay > 0 || twice.length > 0;
    return fails(
      `${cogs.subject} (${list.join("-")} t): ${both(faults)}. ${disorder ? "Look whether the list is written as the cassette is built." : "Fit a cassette with closer steps if the rider minds."}`,
      cassette,
      [cogs],
      [
        ...(wrongWay > 0 && twice.length === 0
          ? [
              {
                kind: "set-fact",
                slot: "drivetrain.cassette",
                fact: "cogs",
                value: `${ascending.join("-")} t`,
              } as const,
            ]
          : []),
        ...swaps("drivetrain.cassette"),
      ],
    );
  },
  explanation:
    "From each cog to the next the gear changes by the ratio of their teeth, usually by eight to twenty per cent, and by " +
    "somewhat more at the large end of wide cassettes. A step of more than a third makes the rider's legs lurch and is " +
    "often a slip of the pen, as is a cog that occurs twice or a list that does not ascend. Gear tables and limits are " +
    "worked out from the list as it stands, so a slip there spoils them all. Some cassettes do have one very large last " +
    "step on purpose, so this is information only.",
  source: "common practice, no source; a step is larger cog ÷ next smaller cog − 1",
  examples: {
    holds: `
part cassette example.cogs "11-32" { cogs: 11-13-15-18-21-24-28-32 t }

build example "Even steps" {
  drivetrain.cassette: example.cogs
}
`,
    fails: `
part cassette example.cogs "14-34" { cogs: 14-16-18-20-22-24-34 t }

build example "One very large step" {
  drivetrain.cassette: example.cogs
}
`,
  },
});
