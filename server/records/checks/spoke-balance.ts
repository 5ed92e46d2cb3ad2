import { wheels } from "../../calculations/shared/wheels.ts";
import { showNumber } from "../../calculations/show.ts";
import { calculationByName } from "../../calculations/table.ts";
import { fails, holds, notApplicable } from "../../checks/define.ts";
import { type Known, worked } from "../../model/need.ts";
import { showQuantity } from "../../values/show.ts";
import { defineComparison, judged, notMeasured } from "../define.ts";
import { meanOf, sideText, type WheelSide } from "../spokes.ts";
import { isWithin, shareText, toleranceAt } from "../tolerance.ts";

const balance = calculationByName("tension-balance");

/** What the calculation takes; the drive side first. */
function inputs(
  drive: Known<readonly number[]>,
  nonDrive: Known<readonly number[]>,
  ratio: number,
  tighter: string,
): Record<string, number | string> {
  return {
    "mean-drive-side": meanOf(drive.value),
    "mean-non-drive-side": meanOf(nonDrive.value),
    "tension-ratio": ratio,
    "tighter-side": tighter,
  };
}

export default defineComparison({
  code: "record/spoke-balance",
  title: "The two sides of a wheel share the tension as its geometry says",
  severity: "warning",
  restsOn: "spec",
  instances: wheels.map((wheel) => ({
    name: wheel,
    wheel,
    path: `${wheel}.tension.drive-side`,
    beside: `${wheel}.tension.non-drive-side`,
  })),
  needs: ({ wheel }) => ({
    ratio: worked<number>(`${wheel}.tension-ratio`),
    tighter: worked<string>(`${wheel}.tighter-side`),
  }),
  test(
    measured: Known<readonly number[]>,
    { ratio, tighter },
    { path, beside: otherPath, wheel },
    beside?: Known<readonly number[]>,
  ) {
    const hasDrive = measured.path === path;
    if (!beside) {
      const missing = hasDrive ? otherPath : path;
      const side = sideText(hasDrive ? "non-drive-side" : "drive-side");
      return judged({
        outcome: "unknown",
        missing: [notMeasured(missing, `the tensions of the ${side} in this record (${missing})`, measured)],
      });
    }
    const results = balance?.compute(inputs(measured, beside, ratio.value, tighter.value)) as
      | Readonly<Record<string, number | string>>
      | undefined;
    const wanted = results?.["expected-slacker-tension"];
    if (!results || typeof wanted !== "number")
      return judged(notApplicable("the balance of this wheel cannot be worked out"));
    const slacker = results["slacker-side"] as WheelSide["side"];
    const [slack, tight] = slacker === "drive-side" ? [measured, beside] : [beside, measured];
    const [is, asks] = [showQuantity(meanOf(slack.value), "force"), showQuantity(wanted, "force")];
    const tightMean = showQuantity(meanOf(tight.value), "force");
    const off = meanOf(slack.value) / wanted - 1;
    const tolerance = toleranceAt(path, "balance");
    const share = tolerance.share ?? 0;
    const other = sideText(slacker === "drive-side" ? "non-drive-side" : "drive-side");
    const expected = `${asks} ± ${shareText(share)} on the ${sideText(slacker)}`;
    const said = `With ${tightMean} on the ${other}, the geometry of the ${wheel.replace("-", " ")} makes ${asks} on the ${sideText(slacker)} (${showNumber(ratio.value, 1)} %), and ${is} was measured there`;
    if (isWithin(tolerance, meanOf(slack.value), wanted)) {
      return judged(holds(`${said}.`, (share - Math.abs(off)) / share), expected);
    }
    const isSwapped = isWithin(tolerance, meanOf(tight.value), (meanOf(slack.value) * ratio.value) / 100);
    const look = isSwapped
      ? "The other way round both sides agree with it: see whether they changed places on paper before a nipple is turned, and else whether hub and rim are those of the build."
      : "Look whether the rim stands in the middle, whether hub and rim are those of the build, and whether both sides were measured alike.";
    return judged(
      fails(
        `${said}, ${shareText(off)} ${off < 0 ? "less" : "more"}; ${shareText(share)} either way is borne. ${look}`,
        slack,
        [tight, ratio],
      ),
      expected,
    );
  },
  working(measured: Known<readonly number[]>, { ratio, tighter }, _instance, working, beside) {
    if (beside) balance?.compute(inputs(measured, beside, ratio.value, tighter.value), working);
  },
  explanation:
    "A wheel stays in the middle when both sides pull equally, and a side whose spokes stand flatter needs more tension " +
    "for that: tension times the sine of the bracing angle is equal. So one side's mean says what the other's has to be. A " +
    "pair that disagrees by more than gauges do speaks of a rim out of the middle, of another hub or rim than the build " +
    "names, or of a slip in measuring.",
  source: "statics, re-derived; 10 %: common practice, no source",
  caution: "A rim out of the middle rubs on frame, fork or brake, and steers to one side.",
  examples: {
    holds: `
part rim example.rim "Rim" { effective-rim-diameter: 600 mm; hole-offset: 0 mm }
part hub example.hub "Rear" {
  spoke-holes: 32
  spoke-head: elbow
  spoke-hole-diameter: 2.6 mm
  flange-diameter-left: 45 mm
  flange-diameter-right: 45 mm
  flange-offset-left: 37 mm
  flange-offset-right: 18 mm
}
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 3; lacing: even } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1180, 1220, 1200 N
  rear-wheel.tension.non-drive-side: 570, 600, 590 N
}
`,
    fails: `
part rim example.rim "Rim" { effective-rim-diameter: 600 mm; hole-offset: 0 mm }
part hub example.hub "Rear" {
  spoke-holes: 32
  spoke-head: elbow
  spoke-hole-diameter: 2.6 mm
  flange-diameter-left: 45 mm
  flange-diameter-right: 45 mm
  flange-offset-left: 37 mm
  flange-offset-right: 18 mm
}
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 3; lacing: even } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1180, 1220, 1200 N
  rear-wheel.tension.non-drive-side: 780, 800, 790 N
}
`,
  },
});
