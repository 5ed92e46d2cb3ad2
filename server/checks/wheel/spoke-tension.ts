import { beadSeatDiameter } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { leastMeanTension } from "../shared/least-tension.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/spoke-tension",
  title: "The spoke tension is within what rim and balance allow",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    spokes: slot(ofWheel(wheel, "spokes")),
    tension: setting(ofWheel(wheel, "spokes"), "tension"),
    most: optional(fact(ofWheel(wheel, "rim"), "greatest-spoke-tension")),
    seat: optional(fact(ofWheel(wheel, "rim"), "bead-seat")),
    drive: optional(worked<number>(`${wheel}.tension-drive-side`)),
    other: optional(worked<number>(`${wheel}.tension-non-drive-side`)),
  }),
  test({ tension, most, seat, drive, other }, { wheel }) {
    const spokes = ofWheel(wheel, "spokes");
    if (most.state === "known" && !atMost(tension.value, most.value)) {
      const [aim, limit] = showPair(tension.value, most.value, "force");
      return fails(
        `The build aims at ${aim} on the tighter side, but ${most.subject} bears ${limit} at most: build it to ${limit} or less.`,
        tension,
        [most],
        [{ kind: "set-setting", slot: spokes, setting: "tension", value: limit }, ...swaps(ofWheel(wheel, "rim"))],
      );
    }
    const diameter = seat.state === "known" ? beadSeatDiameter(seat.value) : undefined;
    const least = leastMeanTension(diameter, true);
    if (!atLeast(tension.value, least)) {
      const [aim, limit] = showPair(tension.value, least, "force");
      return fails(
        `The build aims at ${aim} on the tighter side, but a wheel of this size wants ${limit} at least: slack spokes work loose and break.`,
        tension,
        [],
        [{ kind: "set-setting", slot: spokes, setting: "tension", value: limit }],
        { severity: "warning" },
      );
    }
    const slacker = [drive, other].filter((side) => side.state === "known").sort((a, b) => a.value - b.value)[0];
    const leastSlacker = leastMeanTension(diameter, false);
    if (slacker && !atLeast(slacker.value, leastSlacker)) {
      const [is, limit] = showPair(slacker.value, leastSlacker, "force");
      const [tight] = showPair(tension.value, slacker.value, "force");
      return fails(
        `With ${tight} on the tighter side the other comes to ${is} by the angles of its spokes, and ${limit} at least is wanted there: use a rim with offset holes, a hub with nearer flanges, or more tension where the rim allows it.`,
        tension,
        [slacker],
        swaps(ofWheel(wheel, "rim"), ofWheel(wheel, "hub")),
        { severity: "warning" },
      );
    }
    const unknown = unknowns(most, seat, drive, other);
    if (unknown.length > 0) return cannotTell(...unknown);
    const aim = showQuantity(tension.value, "force");
    const bears =
      most.state === "known" ? `, and ${most.subject} bears ${showPair(most.value, tension.value, "force")[0]}` : "";
    return holds(
      `Aimed at ${aim} on the tighter side${bears}${slacker ? `; the other side comes to ${showQuantity(slacker.value, "force")}` : ""}.`,
      most.state === "known" ? (most.value - tension.value) / most.value : undefined,
    );
  },
  explanation:
    "Spokes carry the wheel by their tension. Above the rim's limit its holes crack or the rim buckles; too slack, spokes go " +
    "loose under load at every turn, unscrew and break. The two sides of a dished wheel are not alike: the side whose " +
    "spokes stand flatter is the tighter one, and the other follows from the angles. Where it comes out too slack, offset " +
    "holes or another hub help, not force. The rim maker's limit comes first; 1000 to 1200 N on the tighter side is usual.",
  source:
    "rim maker's limit; 400 N on the tighter and 300 N on the other side: JIS D 9301:2019 as described by the Japan Bicycle Promotion Institute; balance by statics",
  caution: "A rim above its spoke tension cracks, and can fold up while riding.",
  examples: {
    holds: `
part rim example.rim "Rim" { bead-seat: 622; greatest-spoke-tension: 1300 N; effective-rim-diameter: 596 mm; hole-offset: 0 mm }
part hub example.hub "Rear" {
  spoke-holes: 28
  spoke-hole-diameter: 2.5 mm
  flange-diameter-left: 45 mm
  flange-diameter-right: 45 mm
  flange-offset-left: 35 mm
  flange-offset-right: 19 mm
}
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Within the rim's limit" {
  rear-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 3; tension: 1250 N } }
  front-wheel.spokes: none
}
`,
    fails: `
part rim example.rim "Light rim" { bead-seat: 622; greatest-spoke-tension: 1000 N }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Too much for a light rim" {
  rear-wheel { rim: example.rim; spokes: example.spokes { cross: 3; tension: 1150 N } }
  front-wheel.spokes: none
}
`,
  },
});
