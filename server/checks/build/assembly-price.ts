import { eachPartOnce, ofAssembly } from "../../calculations/shared/every-part.ts";
import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import type { Money } from "../../values/types.ts";
import { defineCheck } from "../define.ts";
import { budgetAssemblies, priceBudget } from "../shared/budgets.ts";
import { openSlotNeedsOf, openSlots } from "../shared/open-slots.ts";

export default defineCheck({
  code: "build/assembly-price",
  title: "An assembly costs what was agreed",
  severity: "error",
  since: 1,
  instances: budgetAssemblies,
  needs: ({ name }) => ({
    budget: buildField(`budget.${name}.price`),
    template: optional(buildField("template")),
    prices: everyFact<Money>("price"),
    ...openSlotNeedsOf(name),
  }),
  test({ budget, template, prices, ...slots }, { name }) {
    return priceBudget(budget, {
      rows: ofAssembly(eachPartOnce(prices.value), name),
      open: openSlots(slots),
      isTemplate: stated(template) === true,
      words: { sum: `Everything in ${name} costs`, aim: "is to cost" },
    });
  },
  explanation:
    "The prices of all parts of one assembly are added up and compared with what was agreed for it, as the prices of " +
    "the whole bike are. A part without a price, or priced in another currency, costs something all the same: the sum " +
    "is then a least. Labour is not a part.",
  source: "common practice, no source",
  examples: {
    holds: `
part lamp example.front "Front lamp" { price: GBP 64 }
part lamp example.rear "Rear lamp" { price: GBP 28 }
part bell example.bell "Bell" { price: GBP 9.50 }

build example "A lit bike" {
  lighting {
    front-lamp: example.front
    rear-lamp: example.rear
    bell: example.bell
  }
  budget { lighting.price: <= GBP 110 }
}
`,
    fails: `
part rim example.rim "Rim" { price: GBP 95 }
part tyre example.tyre "Tyre" { price: GBP 62 }

build example "A wheel that costs too much before it has a hub" {
  rear-wheel { rim: example.rim; tyre: example.tyre }
  budget { rear-wheel.price: <= GBP 150 }
}
`,
  },
});
