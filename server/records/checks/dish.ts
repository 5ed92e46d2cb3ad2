import { wheels } from "../../calculations/shared/wheels.ts";
import { fails, holds } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { allowed, isWithin, toleranceAt } from "../tolerance.ts";

export default defineComparison({
  code: "record/dish",
  title: "The rim stands in the middle between the locknuts",
  severity: "warning",
  restsOn: "record",
  instances: wheels.map((wheel) => ({ name: wheel, path: `${wheel}.dish` })),
  needs: () => ({}),
  test(measured: Known<number>, _facts, { path }) {
    const tolerance = toleranceAt(path, "limit");
    const [is, limit] = showPair(Math.abs(measured.value), allowed(tolerance, 0), "length");
    const expected = `up to ${limit} to either side`;
    const where = measured.value === 0 ? "" : ` toward the ${measured.value > 0 ? "drive" : "non-drive"} side`;
    const said = `The rim stands ${is} out of the middle${where}, and ${limit}`;
    if (isWithin(tolerance, measured.value, 0)) return judged(holds(`${said} is borne.`), expected);
    const pull = measured.value > 0 ? "non-drive" : "drive";
    return judged(
      fails(
        `${said} at most is borne: tighten the ${pull} side, or let the other one down, evenly all round.`,
        measured,
        [],
      ),
      expected,
    );
  },
  explanation:
    "The rim is to stand midway between the faces that the dropouts take, measured with a dishing gauge from both sides. " +
    "Out of the middle, the tyre comes nearer to one stay and the brake sits crooked. A frame that is made for a rim out " +
    "of the middle says so, and then the measurement is taken from where its maker wants it.",
  source: "common practice, no source",
  examples: {
    holds: `
part rim example.rim "Rim" { bead-seat: 622 }

build example "Rim" {
  rear-wheel.rim: example.rim
}

record "A-1" of example {
  rear-wheel.dish: -0.5 mm
}
`,
    fails: `
part rim example.rim "Rim" { bead-seat: 622 }

build example "Rim" {
  rear-wheel.rim: example.rim
}

record "A-1" of example {
  rear-wheel.dish: 3 mm
}
`,
  },
});
