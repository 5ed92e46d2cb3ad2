import { beadSeatDiameter } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { showNumber } from "../../calculations/show.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { leastMeanTension } from "../../checks/shared/least-tension.ts";
import { unknowns } from "../../checks/shared/unknowns.ts";
import { fact, type Known, optional, setting, worked } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { counted, meanOf, otherSide, sideText, spokesText, wheelSides } from "../spokes.ts";
import { isWithin, shareText, toleranceAt } from "../tolerance.ts";

export default defineComparison({
  code: "record/spoke-tension",
  title: "The spokes of a side have the tension aimed at, and no more than the rim bears",
  severity: "warning",
  safety: true,
  restsOn: "spec",
  instances: wheelSides,
  needs: ({ wheel, side }) => ({
    most: optional(fact(ofWheel(wheel, "rim"), "greatest-spoke-tension")),
    seat: optional(fact(ofWheel(wheel, "rim"), "bead-seat")),
    holes: optional(fact(ofWheel(wheel, "hub"), "spoke-holes")),
    lacing: optional(setting(ofWheel(wheel, "spokes"), "lacing")),
    tighter: optional(worked<string>(`${wheel}.tighter-side`)),
    aim: optional(worked<number>(`${wheel}.tension-${side}`)),
    otherAim: optional(worked<number>(`${wheel}.tension-${otherSide(side)}`)),
  }),
  test(measured: Known<readonly number[]>, { most, seat, holes, lacing, tighter, aim, otherAim }, { path, side }) {
    const tensions = measured.value;
    const mean = meanOf(tensions);
    const where = sideText(side);
    const tolerance = toleranceAt(path, "aim");
    const share = tolerance.share ?? 0;
    const expected = aim.state === "known" ? `${showQuantity(aim.value, "force")} ± ${shareText(share)}` : undefined;
    const ofSide =
      holes.state === "known" && (lacing.state !== "known" || lacing.value === "even") ? holes.value / 2 : undefined;
    if (most.state === "known") {
      const over = tensions.flatMap((tension, index) => (atMost(tension, most.value) ? [] : [index + 1]));
      if (over.length > 0) {
        const [highest, bears] = showPair(Math.max(...tensions), most.value, "force");
        return judged(
          fails(
            `${spokesText(over)} of the ${where}, ${counted}, ${over.length === 1 ? `has ${highest}` : `have up to ${highest}`}, but ${most.subject} bears ${bears} at most: let the side down evenly and true the wheel again.`,
            measured,
            [most],
            [],
            { severity: "error", caution: "A rim above its spoke tension cracks, and can fold up while riding." },
          ),
          expected,
        );
      }
    }
    const isTight = tighter.state === "known" && (tighter.value === side || tighter.value === "equal");
    const diameter = seat.state === "known" ? beadSeatDiameter(seat.value) : undefined;
    const bound = leastMeanTension(diameter, isTight);
    const average = showQuantity(mean, "force");
    if (!atLeast(mean, bound)) {
      const [is, limit] = showPair(mean, bound, "force");
      return judged(
        fails(
          `The ${where} averages ${is}, and ${limit} at least is wanted there: bring the wheel up to its tension.`,
          measured,
          aim.state === "known" ? [aim] : [],
        ),
        expected,
      );
    }
    if (aim.state === "known" && !isWithin(tolerance, mean, aim.value)) {
      const [is, wanted] = showPair(mean, aim.value, "force");
      const off = mean / aim.value - 1;
      const isOther = otherAim.state === "known" && isWithin(tolerance, mean, otherAim.value);
      const deed = isOther
        ? `That is what the ${sideText(otherSide(side))} comes to: see whether the sides changed places on paper before a nipple is turned.`
        : `${off < 0 ? "Bring it up" : "Let it down"} evenly, and true the wheel again.`;
      return judged(
        fails(
          `The ${where} averages ${is}, ${shareText(off)} ${off < 0 ? "below" : "above"} the ${wanted} that the build's tension comes to there; ${shareText(share)} either way is borne. ${deed}`,
          measured,
          [aim],
        ),
        expected,
      );
    }
    const unknown = unknowns(aim, most);
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    if (aim.state !== "known" && most.state !== "known") {
      return judged(notApplicable("neither build nor rim states a tension"));
    }
    const share_ =
      ofSide !== undefined && tensions.length < ofSide
        ? `${tensions.length} of ${ofSide} spokes`
        : `${tensions.length} spokes`;
    const aimed =
      aim.state === "known" ? `, and the build's tension comes to ${showQuantity(aim.value, "force")} there` : "";
    const bears =
      most.state === "known"
        ? `; ${most.subject} bears ${showPair(most.value, Math.max(...tensions), "force")[0]}, and the tightest has ${showPair(Math.max(...tensions), most.value, "force")[0]}`
        : "";
    return judged(
      holds(
        `${share_} of the ${where} average ${average}${aimed}${bears}.`,
        most.state === "known" ? (most.value - Math.max(...tensions)) / most.value : undefined,
      ),
      expected,
    );
  },
  working(measured: Known<readonly number[]>, _facts, _instance, working) {
    const tensions = measured.value;
    const sum = tensions.map((tension) => showNumber(tension, 1)).join(" + ");
    working.step(`Mean: (${sum}) ÷ ${tensions.length} = ${showQuantity(meanOf(tensions), "force", { digits: 1 })}`);
  },
  explanation:
    "The build aims at a tension on the tighter side, and the geometry of hub and rim says what that comes to on the " +
    "other. The mean of what was measured on a side should be within a tenth of that, which is about as near as tension " +
    "gauges agree. No spoke goes above what the rim's maker allows: its holes crack or the rim buckles. A mean below what a " +
    "standard for wheels asks leaves spokes that go slack at every turn.",
  source:
    "rim maker's limit; 400 N on the tighter and 300 N on the other side: JIS D 9301:2019 as described by the Japan Bicycle Promotion Institute; 10 % from the aim: common practice, no source",
  caution: "A wheel far from its tension loosens and breaks spokes; the rim maker's limit comes first.",
  examples: {
    holds: `
part rim example.rim "Rim" { bead-seat: 622; greatest-spoke-tension: 1250 N; effective-rim-diameter: 600 mm; hole-offset: 0 mm }
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
  rear-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 3; lacing: even; tension: 1200 N } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1180, 1150, 1210 N
}
`,
    fails: `
part rim example.rim "Rim" { bead-seat: 622; greatest-spoke-tension: 1250 N }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel { rim: example.rim; spokes: example.spokes { cross: 3; tension: 1200 N } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1180, 1310, 1210 N
}
`,
  },
});
