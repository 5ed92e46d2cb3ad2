import { fails, holds } from "../../checks/define.ts";
import { ofBrake, wheelPlaces } from "../../checks/shared/wheel-places.ts";
import { fact, type Known } from "../../model/need.ts";
import { lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";

export default defineComparison({
  code: "record/pad-thickness",
  title: "The brake pads are not worn out",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: wheelPlaces.map(({ name, brake }) => ({ name, brake, path: `${brake}.pad-thickness` })),
  needs: ({ brake }) => ({ least: fact(ofBrake(brake, "pads"), "least-thickness") }),
  test(measured: Known<number>, { least }) {
    const [is, limit] = showPair(measured.value, least.value, "length");
    const expected = `at least ${limit}`;
    if (!lessThan(measured.value, least.value)) {
      return judged(
        holds(
          `Pad and backing are ${is} thick together; ${least.subject} are replaced below ${limit}.`,
          (measured.value - least.value) / least.value,
        ),
        expected,
      );
    }
    return judged(
      fails(
        `Pad and backing are ${is} thick together, and ${least.subject} are replaced below ${limit}: fit new ones before anybody rides.`,
        measured,
        [least],
      ),
      expected,
    );
  },
  explanation:
    "Pads are replaced before their backing meets the rotor or the rim. The maker states the thickness of pad and backing " +
    "together at which that is due. Both pads of a caliper are measured where they are thinnest, and the thinner one counts; " +
    "pads that wear unevenly say that the caliper is not centred or a piston sticks.",
  source: "the pad maker's own figure",
  caution: "Worn pads brake metal on metal, ruin the rotor and let the pistons come too far out.",
  examples: {
    holds: `
part brake-pads example.pads "Pads" { least-thickness: 3 mm }

build example "Pads" {
  rear-brake.pads: example.pads
}

record "A-1" of example {
  rear-brake.pad-thickness: 3.6 mm
}
`,
    fails: `
part brake-pads example.pads "Pads" { least-thickness: 3 mm }

build example "Pads" {
  rear-brake.pads: example.pads
}

record "A-1" of example {
  rear-brake.pad-thickness: 2.4 mm
}
`,
  },
});
