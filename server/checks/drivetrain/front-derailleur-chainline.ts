import { fact, slot } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { frontLine, frontLineNeeds } from "../shared/front-line.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-derailleur-chainline",
  title: "The front derailleur reaches the rings' chainline",
  severity: "error",
  since: 1,
  needs: () => ({
    ...frontLineNeeds,
    derailleur: slot("drivetrain.front-derailleur"),
    range: fact("drivetrain.front-derailleur", "chainline"),
  }),
  test(facts) {
    const { derailleur, range } = facts;
    const front = frontLine(facts);
    if (front.state === "unknown") return cannotTell(front);
    if (front.state === "none") return notApplicable("no chainline is stated for the cranks");
    const { line } = front;
    const reached = showInterval(range.value, "length");
    if (inside(line.value, range.value)) {
      return holds(
        `Chainline ${showQuantity(line.value, "length")} (${line.subject}), and ${range.subject} reaches ${reached}.`,
      );
    }
    return fails(
      `Chainline ${showQuantity(line.value, "length")} (${line.subject}), but the cage of ${range.subject} reaches ${reached} only: fit a front derailleur made for this chainline, or cranks inside its reach.`,
      derailleur,
      [range, line],
      swaps("drivetrain.front-derailleur", front.slot),
    );
  },
  explanation:
    "A front derailleur swings from its place on the seat tube out over the rings, and its stroke is a few millimetres " +
    "longer than the distance between them. Rings that stand farther out than it is made for leave the outer one out of " +
    "reach; rings farther in cannot be trimmed free of rub. Makers state the chainlines that suit each front derailleur. " +
    "The chainline is counted from the centre plane to midway between two rings, or to the middle one of three.",
  source: "definition as in the Wikipedia article Chainline; the limits are the derailleur maker's own figures",
  examples: {
    holds: `
part front-derailleur example.cage "Cage" { chainline: 43.5 to 45 mm }
part crankset example.crank "Crank" { chainline: 44.5 mm }

build example "Inside its reach" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
    fails: `
part front-derailleur example.cage "Cage" { chainline: 43.5 to 45 mm }
part crankset example.crank "Crank" { chainline: 47 mm }

build example "Too far out" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
  },
});
