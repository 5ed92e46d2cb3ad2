import { count, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, optionalInput } from "../define.ts";
import { negative, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { spokeGeometry } from "../shared/spoke-geometry.ts";

/** Length of the spokes of one side of a wheel, laced evenly. */
export default defineCalculation({
  name: "spoke-length",
  title: "Spoke length of one side",
  description:
    "Length of the spokes of one side of an evenly laced wheel, with the angles of the lacing; straight-pull, paired and uneven lacings are not worked out.",
  inputs: {
    "flange-diameter": input(length("Diameter of the flange's circle of spoke holes.")),
    "flange-offset": input(
      length("From the plane midway between the locknuts to the flange, positive outward.", {
        lowest: -20,
        highest: 100,
      }),
    ),
    "effective-rim-diameter": input(
      length("Diameter on which the spokes' ends are meant to lie, nipple and washers included."),
    ),
    "spoke-hole-diameter": input(length("Diameter of a hole in the flange.")),
    spokes: input(count("Spokes of this side: half of the wheel's.", { lowest: 4, highest: 48 })),
    cross: input(count("How many spokes each one crosses; 0 is radial.", { lowest: 0, highest: 8 })),
    "hole-offset": optionalInput(
      length("Distance of the rim's holes from its middle, positive away from this side.", {
        lowest: -20,
        highest: 20,
      }),
    ),
  },
  results: {
    "spoke-length": {
      unit: "mm",
      digits: 1,
      description: "Length of a spoke, from the inside of its elbow to its end.",
    },
    "lacing-angle": { unit: "°", digits: 2, description: "Angle at the axle between the two ends of a spoke." },
    "bracing-angle": { unit: "°", digits: 2, description: "Angle between a spoke and the plane of the rim." },
    "past-tangent": {
      unit: "",
      digits: 0,
      description: "`yes` when the spoke would leave the flange beyond its tangent, over its neighbours' heads.",
    },
  },
  formula:
    "length = √(d² + r1² + r2² − 2 × r1 × r2 × cos a) − r3, with d the flange offset (and rim offset), r1 the radius of the hole circle, r2 half the effective rim diameter, r3 half the hole diameter, a = 360° × crossings ÷ spokes of the side",
  source: "Wikipedia, Spoke, section Spoke length",
  compute(inputs, working) {
    const { "flange-diameter": flange, "flange-offset": offset, "effective-rim-diameter": rim, spokes, cross } = inputs;
    const hole = inputs["spoke-hole-diameter"];
    const shift = inputs["hole-offset"] ?? 0;
    const wrong =
      notPositive({ "flange-diameter": flange, "effective-rim-diameter": rim, spokes }) ??
      negative({ "spoke-hole-diameter": hole, cross }) ??
      notFinite({ "flange-offset": offset, "hole-offset": shift });
    if (wrong) return wrong;
    if (flange >= rim) return impossible("The flange is as large as the rim.");
    if (2 * cross >= spokes) {
      return impossible(`A spoke of ${spokes} on a side cannot cross ${cross}: its hole would lie behind the axle.`);
    }
    const side = {
      flangeDiameter: flange,
      offset: offset + shift,
      rimDiameter: rim,
      holeDiameter: hole,
      spokes,
      cross,
    };
    const spoke = spokeGeometry(side);
    if (spoke.length <= 0) return impossible("The hole in the flange reaches the rim.");
    working?.step(`Lacing angle: 360° × ${cross} ÷ ${spokes} = ${say(spoke.lacingAngle, "°")}`);
    if (shift !== 0) {
      working?.step(
        `Offset to the rim's holes: ${say(offset, "mm")} + ${say(shift, "mm")} = ${say(side.offset, "mm")}`,
      );
    }
    working?.step(
      `Hole to rim: √(${say(Math.abs(side.offset))}² + ${say(flange / 2)}² + ${say(rim / 2)}² − 2 × ${say(flange / 2)} × ${say(rim / 2)} × cos ${say(spoke.lacingAngle, "°")}) = ${say(spoke.holeToRim, "mm")}`,
    );
    working?.step(`Length: ${say(spoke.holeToRim, "mm")} − ${say(hole / 2, "mm")} = ${say(spoke.length, "mm")}`);
    working?.step(
      `Bracing angle: arcsine of ${say(Math.abs(side.offset))} ÷ ${say(spoke.holeToRim)} = ${say(spoke.bracingAngle, "°")}`,
    );
    if (spoke.pastTangent) working?.step("The spoke leaves the flange beyond its tangent: fewer crossings");
    return {
      "spoke-length": spoke.length,
      "lacing-angle": spoke.lacingAngle,
      "bracing-angle": spoke.bracingAngle,
      "past-tangent": spoke.pastTangent ? "yes" : "no",
    };
  },
  examples: [
    {
      inputs: {
        "flange-diameter": 39,
        "flange-offset": 30,
        "effective-rim-diameter": 602,
        "spoke-hole-diameter": 2.2,
        spokes: 18,
        cross: 3,
      },
      results: { "spoke-length": 292.1776, "lacing-angle": 60, "past-tangent": "no" },
      source: "inputs of the example in the Wikipedia article Spoke; length worked independently",
    },
    {
      inputs: {
        "flange-diameter": 39,
        "flange-offset": 30,
        "effective-rim-diameter": 602,
        "spoke-hole-diameter": 2.2,
        spokes: 18,
        cross: 0,
      },
      results: { "spoke-length": 281.9941, "lacing-angle": 0 },
      source: "the same wheel radially laced, worked independently: √(30² + 281.5²) − 1.1",
    },
    {
      inputs: {
        "flange-diameter": 45,
        "flange-offset": 18,
        "effective-rim-diameter": 600,
        "spoke-hole-diameter": 2.6,
        spokes: 16,
        cross: 3,
      },
      results: { "spoke-length": 291.3842, "lacing-angle": 67.5, "bracing-angle": 3.5259 },
      source: "drive side of a 130 mm rear wheel, worked independently by script",
    },
  ],
});
