import { wheels } from "../../calculations/shared/wheels.ts";
import { fails, holds } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { most, toleranceAt } from "../tolerance.ts";

const directions = { lateral: "sideways", radial: "up and down" } as const;

export default defineComparison({
  code: "record/run-out",
  title: "The rim runs true",
  severity: "warning",
  restsOn: "record",
  instances: wheels.flatMap((wheel) =>
    (["lateral", "radial"] as const).map((direction) => ({
      name: `${wheel} ${direction}`,
      direction,
      path: `${wheel}.run-out.${direction}`,
    })),
  ),
  needs: () => ({}),
  test(measured: Known<number>, _facts, { path, direction }) {
    const bound = most(toleranceAt(path, "limit"));
    const [is, limit] = showPair(measured.value, bound, "length");
    const expected = `up to ${limit}`;
    const said = `The rim runs out by ${is} ${directions[direction]}, and ${limit}`;
    if (atMost(measured.value, bound))
      return judged(holds(`${said} is borne.`, (bound - measured.value) / bound), expected);
    return judged(
      fails(`${said} at most is borne: true the wheel, by tension and not by force.`, measured, []),
      expected,
    );
  },
  explanation:
    "Run-out is the way that the rim moves past a fixed point as the wheel turns, from one extreme to the other. Sideways " +
    "it rubs on brakes and frames; up and down it is felt as a hop and makes rim brakes grab. A millimetre is borne, and " +
    "good work stays well below it. Where the maker of a wheel or a brake asks for less, that counts.",
  source: "common practice, no source",
  caution: "A rim that rubs or grabs at a rim brake can lock the wheel.",
  examples: {
    holds: `
part rim example.rim "Rim" { bead-seat: 622 }

build example "Rim" {
  front-wheel.rim: example.rim
}

record "A-1" of example {
  front-wheel.run-out.lateral: 0.4 mm
}
`,
    fails: `
part rim example.rim "Rim" { bead-seat: 622 }

build example "Rim" {
  front-wheel.rim: example.rim
}

record "A-1" of example {
  front-wheel.run-out.lateral: 2.5 mm
}
`,
  },
});
