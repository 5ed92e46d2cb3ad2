import { showNumber } from "../../calculations/show.ts";
import { fails, holds } from "../../checks/define.ts";
import { fact, type Known } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { defineComparison, judged } from "../define.ts";

export default defineComparison({
  code: "record/belt-frequency",
  title: "The belt is as tight as its maker states",
  severity: "warning",
  restsOn: "spec",
  instances: [{ name: "", path: "drivetrain.belt-frequency" }],
  needs: () => ({ asks: fact("drivetrain.chain", "tension-frequency") }),
  test(measured: Known<number>, { asks }) {
    const { least, greatest } = asks.value;
    const range =
      least === greatest ? `${showNumber(least, 1)} Hz` : `${showNumber(least, 1)} to ${showNumber(greatest, 1)} Hz`;
    const is = `${showNumber(measured.value, 1)} Hz`;
    if (inside(measured.value, asks.value)) {
      return judged(holds(`The belt's free run sounds at ${is}, and ${asks.subject} asks for ${range}.`), range);
    }
    const slack = measured.value < least;
    return judged(
      fails(
        `The belt's free run sounds at ${is}, but ${asks.subject} asks for ${range}: ${slack ? "tighten it, or it jumps teeth" : "let it off, or it wears hub and crank bearings"}.`,
        measured,
        [asks],
      ),
      range,
    );
  },
  explanation:
    "A belt has no slack to spare: too loose, it climbs over its teeth under load, and too tight, it loads the bearings. " +
    "Its tension is heard as the natural frequency of the free run, plucked like a string. The window is the belt maker's, " +
    "and it is measured at several places of the crank, since no ring is perfectly round.",
  source: "the belt maker's own figure",
  caution: "A belt that jumps under load throws the rider; it is never levered on, twisted or turned inside out.",
  examples: {
    holds: `
part belt example.belt "Belt" { teeth: 118; tension-frequency: 45 to 60 }

build example "Belt" {
  drivetrain.chain: example.belt
}

record "A-1" of example {
  drivetrain.belt-frequency: 50
}
`,
    fails: `
part belt example.belt "Belt" { teeth: 118; tension-frequency: 45 to 60 }

build example "Belt" {
  drivetrain.chain: example.belt
}

record "A-1" of example {
  drivetrain.belt-frequency: 30
}
`,
  },
});
