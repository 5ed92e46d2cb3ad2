import type { Missing } from "../../model/need.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
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
    const known = masses.value.flatMap(({ fact }) => (fact.state === "known" ? [fact] : []));
    const missing: Missing[] = [
      ...openSlots(slots),
      ...masses.value.flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : [])),
    ];
    const sum = known.reduce((total, { value }) => total + value, 0);
    const { least, greatest } = budget.value;
    if (!atMost(sum, greatest)) {
      const [weighs, most] = showPair(sum, greatest, "mass");
      const heaviest = [...known].sort((a, b) => b.value - a.value).slice(0, 3);
      return fails(
        `The bike weighs ${missing.length > 0 ? "at least " : ""}${weighs}, but the budget allows ${most}: ${showQuantity(sum - greatest, "mass")} too much${missing.length > 0 ? ", with masses still missing" : ""}.`,
        budget,
        heaviest,
        missing.length > 0 ? [] : [{ kind: "set-field", field: "budget.mass", value: `<= ${roundedUp(sum)}` }],
      );
    }
    if (template.state === "known" && template.value) return notApplicable("a template is not a whole bike");
    if (missing.length > 0 && !(greatest === Number.POSITIVE_INFINITY && atLeast(sum, least))) {
      return { outcome: "unknown", missing };
    }
    if (!atLeast(sum, least)) {
      const [weighs, fewest] = showPair(sum, least, "mass");
      return fails(`The bike weighs ${weighs}, but is to weigh at least ${fewest}.`, budget, []);
    }
    const margin = Number.isFinite(greatest) && greatest > 0 ? (greatest - sum) / greatest : undefined;
    return holds(
      `The bike weighs ${missing.length > 0 ? "at least " : ""}${showQuantity(sum, "mass")}; the budget is ${showInterval(budget.value, "mass")}.`,
      margin,
    );
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

/** A mass in kilograms, rounded up to a tenth, as a budget would be written. */
function roundedUp(grams: number): string {
  return `${Math.ceil(grams / 100) / 10} kg`;
}
