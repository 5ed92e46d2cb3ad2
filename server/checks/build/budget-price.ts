import type { Known, Missing } from "../../model/need.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showMoney, showMoneyInterval } from "../../values/show.ts";
import type { Money } from "../../values/types.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
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
    const { currency, least, greatest } = budget.value;
    const known = prices.value.flatMap(({ fact }) => (fact.state === "known" ? [fact] : []));
    const counted = known.filter(({ value }) => value.currency === currency);
    const missing: Missing[] = [
      ...openSlots(slots),
      ...prices.value.flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : [])),
      // No rate of exchange is known here, so a price in another currency is as good as none.
      ...known.filter(({ value }) => value.currency !== currency).map((price) => inOtherCurrency(price, currency)),
    ];
    const amount = counted.reduce((total, { value }) => total + value.amount, 0);
    const sum = showMoney({ currency, amount });
    if (!atMost(amount, greatest)) {
      const dearest = [...counted].sort((a, b) => b.value.amount - a.value.amount).slice(0, 3);
      return fails(
        `The parts cost ${missing.length > 0 ? "at least " : ""}${sum}, but the budget allows ${showMoney({ currency, amount: greatest })}: ${showMoney({ currency, amount: amount - greatest })} too much${missing.length > 0 ? ", with prices still missing" : ""}.`,
        budget,
        dearest,
      );
    }
    if (template.state === "known" && template.value) return notApplicable("a template is not a whole bike");
    if (missing.length > 0 && !(greatest === Number.POSITIVE_INFINITY && atLeast(amount, least))) {
      return { outcome: "unknown", missing };
    }
    if (!atLeast(amount, least)) {
      return fails(
        `The parts cost ${sum}, but are to cost at least ${showMoney({ currency, amount: least })}.`,
        budget,
        [],
      );
    }
    const margin = Number.isFinite(greatest) && greatest > 0 ? (greatest - amount) / greatest : undefined;
    return holds(
      `The parts cost ${missing.length > 0 ? "at least " : ""}${sum}; the budget is ${showMoneyInterval(budget.value)}.`,
      margin,
    );
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

function inOtherCurrency(price: Known<Money>, currency: string): Missing {
  return {
    path: price.path,
    what: `a price in ${currency} of ${price.subject}, which is priced in ${price.value.currency}`,
    place: price.place,
  };
}
