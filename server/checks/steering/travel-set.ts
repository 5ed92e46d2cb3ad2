import { fact, optional, setting, slot } from "../../model/need.ts";
import { equal, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/travel-set",
  title: "The fork can be set to the travel that is planned",
  severity: "error",
  since: 1,
  needs: () => ({
    fork: slot("fork"),
    travel: fact("fork", "travel"),
    set: setting("fork", "travel-set"),
    options: optional(fact("fork", "travel-options")),
  }),
  test({ fork, travel, set, options }) {
    const is = showQuantity(set.value, "length");
    if (equal(set.value, travel.value)) return holds(`${fork.subject} has ${is} of travel as it comes.`);
    if (options.state === "known" && inside(set.value, options.value)) {
      return holds(`${fork.subject} is set to ${is}, and can be set to ${showInterval(options.value, "length")}.`);
    }
    const can =
      options.state === "known"
        ? `can be set to ${showInterval(options.value, "length")}`
        : `has ${showQuantity(travel.value, "length")} and cannot be set to another`;
    return fails(
      `The build sets ${fork.subject} to ${is} of travel, but it ${can}: plan with what it has, or fit another fork.`,
      set,
      [set, options.state === "known" ? options : travel],
      [
        {
          kind: "set-setting",
          slot: "fork",
          setting: "travel-set",
          value: showQuantity(travel.value, "length", { displayUnits: "metric" }),
        },
        ...swaps("fork"),
      ],
    );
  },
  explanation:
    "Some suspension forks can be set to another travel, by spacers inside or by an air shaft that the maker sells. Others " +
    "have the one that they were made with. A travel that the fork cannot be set to makes everything that follows from it " +
    "wrong: the length of the fork, the angles, the sag and the frame's limit. The work is done with the air let out, by " +
    "the maker's instructions. A fork that nobody resets says nothing of it in the build.",
  source: "common practice, no source; the fork maker's own statement decides",
  caution: "Air is let out of an air spring before it is opened.",
  examples: {
    holds: `
part fork example.fork "Fork 140" { travel: 140 mm; travel-options: 120 to 150 mm }

build example "Ten millimetres down" {
  fork: example.fork { travel-set: 130 mm }
}
`,
    fails: `
part fork example.fork "Fork 140" { travel: 140 mm; travel-options: 120 to 150 mm }

build example "Beyond its shafts" {
  fork: example.fork { travel-set: 160 mm }
}
`,
  },
});
