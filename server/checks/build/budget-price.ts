import { eachPartOnce } from "../../calculations/shared/every-part.ts";
import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import type { Money } from "../../values/types.ts";
import { defineCheck } from "../define.ts";
import { priceBudget } from "../shared/budgets.ts";
import { openSlotNeeds, openSlots } from "../shared/open-slots.ts";

export default defineCheck({
  code: "build/budget-price",
  title: "The parts cost what was agreed",
  severity: "error",
  since: 1,
  needs: () => ({
    budget: buildField("budget.price"),
    template: optional(buildField("template")),
    prices: everyFact<Money>("price"),
    ...openSlotNeeds,
  }),
  test({ budget, template, prices, ...slots }) {
    return priceBudget(budget, {
      rows: eachPartOnce(prices.value),
      open: openSlots(slots),
      isTemplate: stated(template) === true,
      words: { sum: "The parts cost", aim: "are to cost" },
    });
  },
  explanation:
    "The prices of all parts are added up and compared with what was agreed. A part without a stated price costs " +
    "something all the same, so that a sum with gaps is a least: when the known parts alone are over the budget it is " +
    "broken, and when they are not, nobody can tell yet. Prices in several currencies are never added up, since a rate " +
    "of exchange would be a guess: a price in another currency than the budget's counts as missing. Labour is not a part.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.steel "Steel" { price: GBP 640 }
part headset example.bearing "Bearing" { price: GBP 48.50 }

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
  budget.price: <= GBP 700
}
`,
    fails: `
part frame example.steel "Steel" { price: GBP 640 }
part fork example.rigid "Rigid" { price: GBP 185 }

build example "Over the budget before it has wheels" {
  frame: example.steel
  fork: example.rigid
  budget.price: <= GBP 800
}
`,
  },
});
