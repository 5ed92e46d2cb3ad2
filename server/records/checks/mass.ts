import { eachPartOnce } from "../../calculations/shared/every-part.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { openSlotNeeds, openSlots } from "../../checks/shared/open-slots.ts";
import { buildField, everyFact, type Known, optional, worked } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin, shareText, toleranceAt } from "../tolerance.ts";

const path = "whole.mass";

export default defineComparison({
  code: "record/mass",
  title: "The bicycle weighs what its parts come to, and no more than its budget",
  severity: "warning",
  restsOn: "spec",
  instances: [{ name: "", path }],
  needs: () => ({
    sum: optional(worked<number>("bike.mass-at-least")),
    masses: everyFact<number>("mass"),
    budget: optional(buildField("budget.mass")),
    ...openSlotNeeds,
  }),
  test(measured: Known<number>, { sum, masses, budget, ...slots }) {
    const tolerance = toleranceAt(path, "worked");
    const expected = sum.state === "known" ? showQuantity(sum.value, "mass") : undefined;
    if (budget.state === "known" && !atMost(measured.value, budget.value.greatest)) {
      const [is, limit] = showPair(measured.value, budget.value.greatest, "mass");
      return judged(fails(`The bicycle weighs ${is}, and its budget is ${limit}.`, measured, [budget]), expected);
    }
    if (sum.state === "unknown" || budget.state === "unknown") {
      return judged(cannotTell(...[sum, budget].flatMap((one) => (one.state === "unknown" ? [one] : []))), expected);
    }
    if (sum.state === "none") return judged(notApplicable("no part states a mass"), expected);
    const unweighed = eachPartOnce(masses.value).flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : []));
    const missing = [...openSlots(slots), ...unweighed];
    const [is, parts] = showPair(measured.value, sum.value, "mass");
    const isLighter = measured.value < sum.value;
    const isApart = !isWithin(tolerance, measured.value, sum.value);
    // What nobody weighed weighs something: it may be all of the difference.
    if (isApart && !isLighter && missing.length > 0) {
      return judged(cannotTell({ state: "unknown", missing }), expected);
    }
    if (isApart) {
      return judged(
        fails(
          `The bicycle weighs ${is}, and its parts come to ${parts} by what the libraries state: ${shareText((measured.value - sum.value) / sum.value)} apart, of which ${shareText(tolerance.share ?? 0)} is borne. A part's mass is stated wrongly, or another part is fitted.`,
          measured,
          [sum],
          [],
          { severity: "information" },
        ),
        expected,
      );
    }
    const open = unweighed.length === 0 ? "" : `, with ${unweighed.length} parts of unknown mass`;
    return judged(holds(`The bicycle weighs ${is}, and its parts come to ${parts}${open}.`), expected);
  },
  explanation:
    "A whole bicycle on the scales says whether the masses in the libraries are right. It should be within a twentieth of " +
    "what its parts come to; cables, grease, and what nobody weighed make it heavier. Lighter than its parts it cannot be: " +
    "then something is stated wrongly or not fitted. The budget that the build states is for the bicycle as it stands.",
  source: "common practice, no source; the budget is the build's own",
  examples: {
    holds: `
part frame example.frame "Frame" { mass: 1850 g }
part fork example.fork "Fork" { mass: 1900 g }

build example "On the scales" {
  frame: example.frame
  fork: example.fork
  budget { mass: <= 4 kg }
}

record "A-1" of example {
  whole.mass: 3.8 kg
}
`,
    fails: `
part frame example.frame "Frame" { mass: 1850 g }
part fork example.fork "Fork" { mass: 1900 g }

build example "On the scales" {
  frame: example.frame
  fork: example.fork
  budget { mass: <= 4 kg }
}

record "A-1" of example {
  whole.mass: 4.2 kg
}
`,
  },
});
