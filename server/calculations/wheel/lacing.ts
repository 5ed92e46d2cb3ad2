import { type Facts, fact, type Maybe, optional, setting, slot } from "../../model/need.ts";
import { count, length } from "../../vocabulary/fields.ts";
import {
  type BuildInputs,
  defineCalculation,
  impossible,
  input,
  known,
  lacking,
  meaningless,
  optionalInput,
} from "../define.ts";
import { negative, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { spokeGeometry } from "../shared/spoke-geometry.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

const inputs = {
  "flange-diameter-drive-side": input(length("Diameter of the drive side's circle of spoke holes.")),
  "flange-diameter-non-drive-side": input(length("Diameter of the non-drive side's circle of spoke holes.")),
  "flange-offset-drive-side": input(
    length("From the plane midway between the locknuts to the drive-side flange.", { lowest: -20, highest: 100 }),
  ),
  "flange-offset-non-drive-side": input(
    length("From the plane midway between the locknuts to the non-drive-side flange.", { lowest: -20, highest: 100 }),
  ),
  "effective-rim-diameter": input(
    length("Diameter on which the spokes' ends are meant to lie, nipple and washers included."),
  ),
  "spoke-hole-diameter": input(length("Diameter of a hole in the flange.")),
  "spoke-holes": input(count("Spokes of the whole wheel, half of them on either side.", { lowest: 8, highest: 96 })),
  "cross-drive-side": input(count("Crossings on the drive side.", { lowest: 0, highest: 8 })),
  "cross-non-drive-side": input(count("Crossings on the non-drive side.", { lowest: 0, highest: 8 })),
  "hole-offset": optionalInput(
    length("Distance of the rim's holes from its middle, positive toward the non-drive side.", {
      lowest: -20,
      highest: 20,
    }),
  ),
};

function needsOf(wheel: Wheel) {
  const hub = ofWheel(wheel, "hub");
  const spokes = ofWheel(wheel, "spokes");
  return {
    // Where there is nothing to lace, nobody is asked for the measures of hub and rim.
    spokes: slot(spokes),
    diameterLeft: fact(hub, "flange-diameter-left"),
    diameterRight: fact(hub, "flange-diameter-right"),
    offsetLeft: fact(hub, "flange-offset-left"),
    offsetRight: fact(hub, "flange-offset-right"),
    hole: fact(hub, "spoke-hole-diameter"),
    holes: fact(hub, "spoke-holes"),
    head: optional(fact(hub, "spoke-head")),
    rimDiameter: fact(ofWheel(wheel, "rim"), "effective-rim-diameter"),
    rimOffset: optional(fact(ofWheel(wheel, "rim"), "hole-offset")),
    cross: optional(setting(spokes, "cross")),
    crossDriveSide: optional(setting(spokes, "cross-drive-side")),
    crossNonDriveSide: optional(setting(spokes, "cross-non-drive-side")),
    lacing: optional(setting(spokes, "lacing")),
  };
}

function feed(facts: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  if (facts.head.state === "known" && facts.head.value === "straight") {
    return meaningless("straight-pull spokes are laced as their hub demands");
  }
  if (facts.lacing.state === "known" && facts.lacing.value !== "even") {
    return meaningless(`only an even lacing is worked out, not ${facts.lacing.written}`);
  }
  const crossOf = (side: Maybe<number>): Maybe<number> => (side.state === "known" ? side : facts.cross);
  const drive = crossOf(facts.crossDriveSide);
  const nonDrive = crossOf(facts.crossNonDriveSide);
  if (drive.state === "none" || nonDrive.state === "none") return meaningless("no crossing is stated");
  const missing = missingOf(drive, ...(nonDrive === drive ? [] : [nonDrive]), facts.rimOffset);
  if (drive.state !== "known" || nonDrive.state !== "known" || missing.length > 0) return lacking(missing);
  return known({
    "flange-diameter-drive-side": facts.diameterRight.value,
    "flange-diameter-non-drive-side": facts.diameterLeft.value,
    "flange-offset-drive-side": facts.offsetRight.value,
    "flange-offset-non-drive-side": facts.offsetLeft.value,
    "effective-rim-diameter": facts.rimDiameter.value,
    "spoke-hole-diameter": facts.hole.value,
    "spoke-holes": facts.holes.value,
    "cross-drive-side": drive.value,
    "cross-non-drive-side": nonDrive.value,
    "hole-offset": stated(facts.rimOffset),
  });
}

/** Both sides of an evenly laced wheel: spoke lengths, angles, and how the tension shares out. */
export default defineCalculation({
  name: "lacing",
  title: "Spoke lengths and balance of a wheel",
  description:
    "Spoke lengths and bracing angles of both sides of an evenly laced wheel, and the tension of the slacker side as a share of the tighter one's.",
  inputs,
  results: {
    "spoke-length-drive-side": { unit: "mm", digits: 1, description: "Length of the drive side's spokes." },
    "spoke-length-non-drive-side": { unit: "mm", digits: 1, description: "Length of the non-drive side's spokes." },
    "bracing-angle-drive-side": { unit: "°", digits: 2, description: "Angle between drive-side spokes and rim plane." },
    "bracing-angle-non-drive-side": {
      unit: "°",
      digits: 2,
      description: "Angle between non-drive-side spokes and rim plane.",
    },
    "tension-ratio": {
      unit: "%",
      digits: 1,
      description: "Tension of the slacker side as a share of that of the tighter one, in balance.",
    },
    "tighter-side": { unit: "", digits: 0, description: "`drive-side`, `non-drive-side`, or `equal`." },
    "past-tangent": {
      unit: "",
      digits: 0,
      description: "`yes` when a spoke would leave its flange beyond the tangent, over its neighbours' heads.",
    },
  },
  formula:
    "length of a side as in spoke-length, with the rim's hole offset added on the drive side and taken off on the other; balance: tension × sin of the bracing angle is equal on both sides",
  source: "Wikipedia, Spoke, section Spoke length; balance by statics, re-derived",
  compute(given, working) {
    const { "spoke-holes": holes, "effective-rim-diameter": rim, "spoke-hole-diameter": hole } = given;
    const shift = given["hole-offset"] ?? 0;
    const wrong =
      notPositive({
        "flange-diameter-drive-side": given["flange-diameter-drive-side"],
        "flange-diameter-non-drive-side": given["flange-diameter-non-drive-side"],
        "effective-rim-diameter": rim,
        "spoke-holes": holes,
      }) ??
      negative({
        "spoke-hole-diameter": hole,
        "cross-drive-side": given["cross-drive-side"],
        "cross-non-drive-side": given["cross-non-drive-side"],
      }) ??
      notFinite({
        "flange-offset-drive-side": given["flange-offset-drive-side"],
        "flange-offset-non-drive-side": given["flange-offset-non-drive-side"],
        "hole-offset": shift,
      });
    if (wrong) return wrong;
    if (holes % 2 !== 0) return impossible(`${holes} spokes do not share out evenly on two sides.`);
    const sideOf = (name: "drive-side" | "non-drive-side", toRim: number) => ({
      name,
      flangeDiameter: given[`flange-diameter-${name}`],
      offset: given[`flange-offset-${name}`] + toRim,
      rimDiameter: rim,
      holeDiameter: hole,
      spokes: holes / 2,
      cross: given[`cross-${name}`],
    });
    const sides = [sideOf("drive-side", shift), sideOf("non-drive-side", -shift)] as const;
    for (const side of sides) {
      if (side.flangeDiameter >= rim) return impossible("A flange is as large as the rim.");
      if (2 * side.cross >= side.spokes) {
        return impossible(
          `A spoke of ${side.spokes} on a side cannot cross ${side.cross}: its hole would lie behind the axle.`,
        );
      }
    }
    const [drive, nonDrive] = [spokeGeometry(sides[0]), spokeGeometry(sides[1])];
    if (drive.length <= 0 || nonDrive.length <= 0) return impossible("The hole in a flange reaches the rim.");
    const [driveSine, nonDriveSine] = [sides[0].offset / drive.holeToRim, sides[1].offset / nonDrive.holeToRim];
    for (const [side, spoke] of [
      [sides[0], drive],
      [sides[1], nonDrive],
    ] as const) {
      working?.step(
        `${side.name}: angle 360° × ${side.cross} ÷ ${side.spokes} = ${say(spoke.lacingAngle, "°")}, offset ${say(side.offset, "mm")}, hole to rim ${say(spoke.holeToRim, "mm")} − ${say(hole / 2, "mm")} = ${say(spoke.length, "mm")}; bracing ${say(spoke.bracingAngle, "°")}`,
      );
    }
    const lengths = {
      "spoke-length-drive-side": drive.length,
      "spoke-length-non-drive-side": nonDrive.length,
      "bracing-angle-drive-side": drive.bracingAngle,
      "bracing-angle-non-drive-side": nonDrive.bracingAngle,
      "past-tangent": drive.pastTangent || nonDrive.pastTangent ? "yes" : "no",
    };
    if (driveSine <= 0 || nonDriveSine <= 0) {
      working?.step("A flange lies beyond the rim's plane, so no tension balances the sides");
      return lengths;
    }
    const ratio = Math.min(driveSine, nonDriveSine) / Math.max(driveSine, nonDriveSine);
    working?.step(
      `Balance: sin ${say(Math.min(drive.bracingAngle, nonDrive.bracingAngle), "°")} ÷ sin ${say(Math.max(drive.bracingAngle, nonDrive.bracingAngle), "°")} = ${say(100 * ratio, "%", 1)}; the flatter side is the tighter one`,
    );
    const tighter = Math.abs(ratio - 1) < 1e-9 ? "equal" : driveSine < nonDriveSine ? "drive-side" : "non-drive-side";
    return { ...lengths, "tension-ratio": 100 * ratio, "tighter-side": tighter };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: {
        "flange-diameter-drive-side": 45,
        "flange-diameter-non-drive-side": 45,
        "flange-offset-drive-side": 18,
        "flange-offset-non-drive-side": 37,
        "effective-rim-diameter": 600,
        "spoke-hole-diameter": 2.6,
        "spoke-holes": 32,
        "cross-drive-side": 3,
        "cross-non-drive-side": 3,
      },
      results: {
        "spoke-length-drive-side": 291.3842,
        "spoke-length-non-drive-side": 293.164,
        "bracing-angle-drive-side": 3.5259,
        "bracing-angle-non-drive-side": 7.21841,
        "tension-ratio": 48.9445,
        "tighter-side": "drive-side",
        "past-tangent": "no",
      },
      tolerance: 2e-6,
      source: "130 mm rear wheel with flanges 47 and 28 mm from the locknuts, worked independently by script",
    },
    {
      inputs: {
        "flange-diameter-drive-side": 39,
        "flange-diameter-non-drive-side": 39,
        "flange-offset-drive-side": 30,
        "flange-offset-non-drive-side": 30,
        "effective-rim-diameter": 602,
        "spoke-hole-diameter": 2.2,
        "spoke-holes": 36,
        "cross-drive-side": 3,
        "cross-non-drive-side": 2,
      },
      results: { "spoke-length-drive-side": 292.1776, "spoke-length-non-drive-side": 286.8039 },
      source: "inputs of the example in the Wikipedia article Spoke, three and two crossings; worked independently",
    },
    {
      inputs: {
        "flange-diameter-drive-side": 45,
        "flange-diameter-non-drive-side": 45,
        "flange-offset-drive-side": 25,
        "flange-offset-non-drive-side": 30,
        "effective-rim-diameter": 600,
        "spoke-hole-diameter": 2.6,
        "spoke-holes": 32,
        "cross-drive-side": 3,
        "cross-non-drive-side": 3,
        "hole-offset": 2.5,
      },
      results: { "tension-ratio": 100, "tighter-side": "equal" },
      source: "by symmetry: an offset of 2.5 mm makes 25 and 30 mm alike",
    },
  ],
});
