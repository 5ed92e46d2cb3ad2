import { fails, holds } from "../../checks/define.ts";
import { buildField, type Known, optional } from "../../model/need.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { Tolerance } from "../../vocabulary/index.ts";
import { defineComparison, judged } from "../define.ts";
import { allowed, isWithin, toleranceAt } from "../tolerance.ts";

const positions = [
  { name: "saddle height", path: "fit.saddle-height" },
  { name: "saddle setback", path: "fit.saddle-setback" },
  { name: "reach of the grips", path: "fit.grip-reach" },
  { name: "height of the grips", path: "fit.grip-stack" },
  { name: "drop from saddle to bar", path: "fit.saddle-to-bar-drop" },
] as const;

export default defineComparison({
  code: "record/position",
  title: "The rider sits as the build aims at",
  severity: "warning",
  restsOn: "spec",
  instances: positions,
  needs: ({ path }) => ({ aim: buildField(path), tolerance: optional(buildField("fit.tolerance")) }),
  test(measured: Known<number>, { aim, tolerance }, { name, path }) {
    const own: Tolerance | undefined =
      tolerance.state === "known" ? { of: "", by: tolerance.value, source: "the build" } : undefined;
    const borne = own ?? toleranceAt(path, "aim");
    const [is, wanted] = showPair(measured.value, aim.value, "length");
    const within = showQuantity(allowed(borne, aim.value), "length");
    const expected = `${wanted} ± ${within}`;
    const said = `The ${name} is ${is}, and the build aims at ${wanted}`;
    if (isWithin(borne, measured.value, aim.value)) return judged(holds(`${said}, within ${within}.`), expected);
    const more = measured.value > aim.value ? "more" : "less";
    const apart = showQuantity(Math.abs(measured.value - aim.value), "length");
    const whose = own ? "the build's tolerance" : "what is borne where the build states no tolerance";
    return judged(
      fails(
        `${said}: ${apart} ${more}, where ${whose} is ${within}. Set it anew, or write down in the build what suits the rider.`,
        measured,
        tolerance.state === "known" ? [aim, tolerance] : [aim],
      ),
      expected,
    );
  },
  explanation:
    "What the rider feels is five lengths, and the build states what is aimed at with how much either way. They are " +
    "measured on the bicycle as it stands, from the crank axis, the tyres inflated. A rider who ends up elsewhere and is " +
    "content is a reason to write the build anew, so that the next bicycle fits at once.",
  source: "the build's own aims; 5 mm where it states no tolerance: common practice, no source",
  examples: {
    holds: `
part saddle example.perch "Perch" { rail: round-7 }

build example "Position" {
  fit { saddle-height: 746 mm; tolerance: 10 mm }
  seat.saddle: example.perch
}

record "A-1" of example {
  fit.saddle-height: 741 mm
}
`,
    fails: `
part saddle example.perch "Perch" { rail: round-7 }

build example "Position" {
  fit { saddle-height: 746 mm; tolerance: 10 mm }
  seat.saddle: example.perch
}

record "A-1" of example {
  fit.saddle-height: 730 mm
}
`,
  },
});
