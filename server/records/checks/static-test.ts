import { fails, holds } from "../../checks/define.ts";
import { wheelPlaces } from "../../checks/shared/wheel-places.ts";
import type { Known } from "../../model/need.ts";
import { defineComparison, judged } from "../define.ts";

export default defineComparison({
  code: "record/static-test",
  title: "The brake held when it was squeezed",
  severity: "error",
  safety: true,
  restsOn: "record",
  instances: wheelPlaces.map(({ name, brake }) => ({ name, path: `${brake}.static-test` })),
  needs: () => ({}),
  test(measured: Known<boolean>, _facts, { name }) {
    if (measured.value) {
      return judged(holds(`The ${name} brake held alone, squeezed hard for ten seconds, without a leak.`), "yes");
    }
    return judged(
      fails(
        `The ${name} brake did not hold, or leaked, squeezed hard for ten seconds alone: find out why before the bicycle is moved, and test it again.`,
        measured,
        [],
      ),
      "yes",
    );
  },
  explanation:
    "Each brake is squeezed hard for ten seconds by itself before anybody rides, and looked over for leaks. A lever that " +
    "comes to the bar, sinks slowly or leaves a drop of fluid says that air, a loose fitting or a wrong pull is in it. A " +
    "bicycle that fails this test is not handed over.",
  source: "common practice, no source",
  caution: "Nobody rides a bicycle of which a brake did not hold; never pull a lever with the rotor out.",
  examples: {
    holds: `
part caliper example.caliper "Caliper" { material: aluminium }

build example "Tested" {
  front-brake.caliper: example.caliper
}

record "A-1" of example {
  front-brake.static-test: yes
}
`,
    fails: `
part caliper example.caliper "Caliper" { material: aluminium }

build example "Tested" {
  front-brake.caliper: example.caliper
}

record "A-1" of example {
  front-brake.static-test: no
}
`,
  },
});
