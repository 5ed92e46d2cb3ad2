import { fails, holds } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { most, toleranceAt } from "../tolerance.ts";

const path = "drivetrain.hanger-run-out";

export default defineComparison({
  code: "record/hanger-run-out",
  title: "The hanger is straight",
  severity: "warning",
  restsOn: "record",
  instances: [{ name: "", path }],
  needs: () => ({}),
  test(measured: Known<number>) {
    const [is, limit] = showPair(measured.value, most(toleranceAt(path, "limit")), "length");
    const expected = `up to ${limit}`;
    if (atMost(measured.value, most(toleranceAt(path, "limit")))) {
      return judged(
        holds(`The gauge's distance from the rim differs by ${is} round it, and ${limit} is borne.`),
        expected,
      );
    }
    return judged(
      fails(
        `The gauge's distance from the rim differs by ${is} round it, and ${limit} at most is borne: align the hanger with the gauge, or fit a new one where it is cracked or its maker forbids bending.`,
        measured,
        [],
      ),
      expected,
    );
  },
  explanation:
    "An alignment gauge screwed into the hanger is turned round the wheel, and its distance from the rim is compared top, " +
    "bottom, front and back. A bent hanger tilts the derailleur's cage, so that no cable tension or trim suits every cog, " +
    "and pushed inward it can meet the spokes. The wheel has to run true for the measurement to mean anything.",
  source: "common practice, no source",
  caution: "A derailleur on a bent hanger can be drawn into the spokes and lock the wheel.",
  examples: {
    holds: `
part hanger example.eye "Eye" { material: aluminium }

build example "Straight" {
  drivetrain.hanger: example.eye
}

record "A-1" of example {
  drivetrain.hanger-run-out: 2 mm
}
`,
    fails: `
part hanger example.eye "Eye" { material: aluminium }

build example "Bent" {
  drivetrain.hanger: example.eye
}

record "A-1" of example {
  drivetrain.hanger-run-out: 9 mm
}
`,
  },
});
