import { ofWheel } from "../../calculations/shared/wheels.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { dimensionFact } from "../../checks/shared/codes.ts";
import { both } from "../../checks/shared/sentence.ts";
import { unknowns } from "../../checks/shared/unknowns.ts";
import { wheelPlaces } from "../../checks/shared/wheel-places.ts";
import { fact, type Known, optional, setting } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { usualTolerance } from "../../vocabulary/index.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin } from "../tolerance.ts";

const tolerance = usualTolerance("pressure");

export default defineComparison({
  code: "record/pressure",
  title: "The tyre is inflated within its limits, and as it was specified",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: wheelPlaces.map(({ name, wheel }) => ({ name, wheel, path: `${wheel}.tyre.pressure` })),
  needs: ({ wheel }) => ({
    aim: optional(setting(ofWheel(wheel, "tyre"), "pressure")),
    ofTyre: optional(fact(ofWheel(wheel, "tyre"), "greatest-pressure")),
    least: optional(fact(ofWheel(wheel, "tyre"), "least-pressure")),
    ofRim: optional(fact(ofWheel(wheel, "rim"), "greatest-pressure")),
    kind: optional(fact(ofWheel(wheel, "rim"), "rim-kind")),
  }),
  test(measured: Known<number>, { aim, ofTyre, least, ofRim, kind }) {
    const ofKind = kind.state === "known" ? dimensionFact<number>(kind.value, "greatest-pressure") : undefined;
    const limits = [ofTyre, ofRim, ...(ofKind ? [ofKind] : [])].flatMap((one) => (one.state === "known" ? [one] : []));
    const subject = (known: Known<number>): string =>
      known === ofKind ? `any tyre on ${known.subject}` : known.subject;
    const expected = aim.state === "known" ? showQuantity(aim.value, "pressure") : undefined;
    const broken = limits.filter(({ value }) => !atMost(measured.value, value));
    const [tightest] = [...broken].sort((one, other) => one.value - other.value);
    if (tightest) {
      const [is] = showPair(measured.value, tightest.value, "pressure");
      const bear = broken.map((one) => `${subject(one)} bears ${showPair(one.value, measured.value, "pressure")[0]}`);
      return judged(
        fails(
          `The tyre holds ${is}, but ${both(bear)} at most: let air out before anybody stands near it.`,
          measured,
          broken,
        ),
        expected,
      );
    }
    if (least.state === "known" && !atLeast(measured.value, least.value)) {
      const [is, asks] = showPair(measured.value, least.value, "pressure");
      return judged(
        fails(
          `The tyre holds ${is}, but ${least.subject} prints ${asks} at least: inflate it before it is ridden.`,
          measured,
          [least],
        ),
        expected,
      );
    }
    if (aim.state === "known" && !isWithin(tolerance, measured.value, aim.value)) {
      const [is, wanted] = showPair(measured.value, aim.value, "pressure");
      return judged(
        fails(
          `The tyre holds ${is}, and the build states ${wanted}: ${measured.value < aim.value ? "inflate it, and look whether it loses air" : "let it down"}, or write the rider's own pressure into the build.`,
          measured,
          [aim],
          [],
          { severity: "warning", caution: "" },
        ),
        expected,
      );
    }
    const unknown = unknowns(aim, ofTyre, least, ofRim, kind);
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    if (aim.state !== "known" && limits.length === 0)
      return judged(notApplicable("nothing states a pressure for this tyre"));
    const [lowest] = [...limits].sort((one, other) => one.value - other.value);
    const is = showQuantity(measured.value, "pressure");
    const bears = lowest ? `; ${subject(lowest)} bears ${showPair(lowest.value, measured.value, "pressure")[0]}` : "";
    return judged(
      holds(
        `The tyre holds ${is}${expected === undefined ? "" : `, and the build states ${expected}`}${bears}.`,
        lowest ? (lowest.value - measured.value) / lowest.value : undefined,
      ),
      expected,
    );
  },
  explanation:
    "What a tyre holds is read cold, on a gauge of its own. Above what tyre, rim or kind of rim bear it blows off or the " +
    "rim cracks; below what the tyre prints it rolls off in bends. Inside these limits the build's own figure is the " +
    "rider's, and a tenth of a bar or a twentieth of it is as near as gauges agree.",
  source:
    "the makers' own limits; 5 bar on tubeless straight-side rims by ETRTO (from memory); a tenth of a bar or 5 % from the aim: common practice, no source",
  caution: "Eye protection when tyres are seated; the lower of the printed limits is never passed.",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { greatest-pressure: 3.5 bar; least-pressure: 1.4 bar }
part rim example.rim "Rim" { rim-kind: tubeless-crotchet; greatest-pressure: 3.5 bar }

build example "Tyres" {
  rear-wheel { rim: example.rim; tyre: example.tyre { pressure: 1.6 bar } }
}

record "A-1" of example {
  rear-wheel.tyre.pressure: 1.65 bar
}
`,
    fails: `
part tyre example.tyre "Tyre" { greatest-pressure: 3.5 bar; least-pressure: 1.4 bar }
part rim example.rim "Rim" { rim-kind: tubeless-crotchet; greatest-pressure: 3 bar }

build example "Tyres" {
  rear-wheel { rim: example.rim; tyre: example.tyre { pressure: 1.6 bar } }
}

record "A-1" of example {
  rear-wheel.tyre.pressure: 3.2 bar
}
`,
  },
});
