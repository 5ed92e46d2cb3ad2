import type { Maybe, Need } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySetting } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

type AirNeeds = {
  readonly spring: Need<string, true>;
  readonly pressure: Need<number, true>;
  readonly most: Need<number, true>;
};

export default defineCheck({
  code: "frame/air-pressure",
  title: "The air springs hold the pressure that is planned",
  severity: "error",
  since: 1,
  safety: true,
  instances: [
    { name: "fork", slot: "fork" },
    { name: "rear shock", slot: "rear-shock" },
  ] as const,
  needs: ({ slot: path }): AirNeeds => ({
    spring: anyFact(path, "spring"),
    pressure: anySetting(path, "air-pressure"),
    most: anyFact(path, "greatest-air-pressure"),
  }),
  test(facts, { slot: path }) {
    const { spring, pressure, most } = facts as {
      [K in keyof AirNeeds]: AirNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
    };
    if (spring.state === "none") return notApplicable(`${path} has no spring`);
    if (spring.state === "known" && spring.value !== "air") return notApplicable(`${spring.subject} has no air spring`);
    if (most.state === "none") return notApplicable(`the maker states no greatest pressure of ${path}`);
    const unknown = unknowns(spring, pressure, most);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (pressure.state !== "known" || most.state !== "known")
      return notApplicable(`no pressure is planned for ${path}`);
    const [is, may] = showPair(pressure.value, most.value, "pressure");
    if (atMost(pressure.value, most.value)) {
      return holds(
        `${is} in the air spring, and ${most.subject} holds ${may}.`,
        (most.value - pressure.value) / most.value,
      );
    }
    return fails(
      `The air spring of ${most.subject} is to hold ${is}, but ${may} is the most: lower it to ${may} or less; a rider who needs more is too heavy for it.`,
      pressure,
      [pressure, most],
      [
        {
          kind: "set-setting",
          slot: path,
          setting: "air-pressure",
          value: showQuantity(most.value, "pressure", { displayUnits: "metric" }),
        },
        ...swaps(path),
      ],
    );
  },
  explanation:
    "Air springs of forks and shocks are filled with a shock pump to a pressure that goes by the rider's mass. Each has a " +
    "greatest pressure that is printed on it. Beyond that the seals give way or the can bursts. A rider who needs more for " +
    "the right sag needs another spring, or a shock with a larger can. Reading the gauge as the pump is taken off shows " +
    "less than was there: the loss is the hose's.",
  source: "common practice, no source; the limit is the maker's own figure",
  caution: "A can that bursts throws its parts. Air is let out before a spring is opened.",
  examples: {
    holds: `
part fork example.fork "Fork" { spring: air; greatest-air-pressure: 9 bar }

build example "Inside the limit" {
  fork: example.fork { air-pressure: 6.5 bar }
  rear-shock: none
}
`,
    fails: `
part fork example.fork "Fork" { spring: air; greatest-air-pressure: 9 bar }

build example "More than the can holds" {
  fork: example.fork { air-pressure: 11 bar }
}
`,
  },
});
