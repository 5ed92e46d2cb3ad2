import { eachPartOnce } from "../../calculations/shared/every-part.ts";
import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import { defineCheck } from "../define.ts";
import { massBudget } from "../shared/budgets.ts";
import { openSlotNeeds, openSlots } from "../shared/open-slots.ts";

export default defineCheck({
  code: "build/budget-mass",
  title: "The bike weighs what was agreed",
  severity: "error",
  since: 1,
  needs: () => ({
    budget: buildField("budget.mass"),
    template: optional(buildField("template")),
    masses: everyFact<number>("mass"),
    ...openSlotNeeds,
  }),
  test({ budget, template, masses, ...slots }) {
    return massBudget(budget, {
      rows: eachPartOnce(masses.value),
      open: openSlots(slots),
      isTemplate: stated(template) === true,
      words: { sum: "The bike weighs", aim: "is to weigh" },
    });
  },
  explanation:
    "The masses of all parts are added up and compared with what was agreed. A part whose mass nobody stated weighs " +
    "something all the same, so that a sum with gaps is a least: when the known parts alone are over the budget, it is " +
    "broken whatever the others weigh, and when they are not, nobody can tell yet. Masses are of everything that a " +
    "place on the bike takes, such as all spokes of a wheel. Cables, fluid, sealant and paint count only where they are written down.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.steel "Steel" { mass: 2150 g }
part headset example.bearing "Bearing" { mass: 94 g }

build example "A frame with its headset" {
  frame: example.steel
  fork: none
  rear-shock: none
  headset: example.bearing
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    cassette: none
    chain: none
    crankset: none
    chainring: none
    bottom-bracket: none
    pedals: none
    rear-controller: none
  }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  cockpit { stem: none; handlebar: none; grips: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  rear-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  budget.mass: <= 2.3 kg
}
`,
    fails: `
part frame example.steel "Steel" { mass: 2150 g }
part fork example.rigid "Rigid" { mass: 1050 g }

build example "Over the budget before it has wheels" {
  frame: example.steel
  fork: example.rigid
  budget.mass: <= 3.1 kg
}
`,
  },
});
