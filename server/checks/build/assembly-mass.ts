import { eachPartOnce, ofAssembly } from "../../calculations/shared/every-part.ts";
import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, everyFact, optional } from "../../model/need.ts";
import { defineCheck } from "../define.ts";
import { budgetAssemblies, massBudget } from "../shared/budgets.ts";
import { openSlotNeedsOf, openSlots } from "../shared/open-slots.ts";

export default defineCheck({
  code: "build/assembly-mass",
  title: "An assembly weighs what was agreed",
  severity: "error",
  since: 1,
  instances: budgetAssemblies,
  needs: ({ name }) => ({
    budget: buildField(`budget.${name}.mass`),
    template: optional(buildField("template")),
    masses: everyFact<number>("mass"),
    ...openSlotNeedsOf(name),
  }),
  test({ budget, template, masses, ...slots }, { name }) {
    return massBudget(budget, {
      rows: ofAssembly(eachPartOnce(masses.value), name),
      open: openSlots(slots),
      isTemplate: stated(template) === true,
      words: { sum: `Everything in ${name} weighs`, aim: "is to weigh" },
    });
  },
  explanation:
    "The masses of all parts of one assembly are added up and compared with what was agreed for it, as the masses of " +
    "the whole bike are. A part whose mass nobody stated weighs something all the same: the sum is then a least. A wheel " +
    "is often agreed on by its own mass, since it is felt before anything else is.",
  source: "common practice, no source",
  examples: {
    holds: `
part lamp example.front "Front lamp" { mass: 110 g }
part lamp example.rear "Rear lamp" { mass: 45 g }
part bell example.bell "Bell" { mass: 38 g }

build example "A lit bike" {
  lighting {
    front-lamp: example.front
    rear-lamp: example.rear
    bell: example.bell
  }
  budget { lighting.mass: <= 200 g }
}
`,
    fails: `
part rim example.rim "Rim" { mass: 520 g }
part tyre example.tyre "Tyre" { mass: 1080 g }

build example "A wheel that is too heavy before it has a hub" {
  rear-wheel { rim: example.rim; tyre: example.tyre }
  budget { rear-wheel.mass: <= 1.5 kg }
}
`,
  },
});
