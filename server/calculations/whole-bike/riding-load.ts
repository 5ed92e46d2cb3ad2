import { buildField, everyFact, optional, setting, worked } from "../../model/need.ts";
import { quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { eachPartOnce } from "../shared/every-part.ts";
import { usualFrontShare } from "../shared/front-share.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";

/** What rests on either wheel of a bicycle with its rider. */
export default defineCalculation({
  name: "riding-load",
  title: "Mass of bicycle and rider on the wheels",
  description:
    "Rider, kit and bicycle together, and what of it rests on either wheel: what lies on a rack on the wheel below it, the " +
    "rest by the usual share unless one is given.",
  inputs: {
    "rider-mass": input(quantity("mass", "Mass of the rider, dressed to ride.", { unit: "kg" })),
    "kit-mass": input(quantity("mass", "Mass of what is carried.", { unit: "kg" })),
    "bike-mass": input(quantity("mass", "Mass of the bicycle.", { unit: "kg" })),
    "front-rack-load": optionalInput(quantity("mass", "What of the kit lies on the front rack.", { unit: "kg" })),
    "rear-rack-load": optionalInput(quantity("mass", "What of the kit lies on the rear rack.", { unit: "kg" })),
    "front-share": optionalInput(
      quantity("ratio", "Share on the front wheel; 45 % when left out, as is usual of riders at their ease.", {
        lowest: 1,
        highest: 99,
      }),
    ),
  },
  results: {
    "all-up-mass": { unit: "g", digits: 0, description: "Rider, kit and bicycle together." },
    "front-wheel-load": { unit: "g", digits: 0, description: "Mass that rests on the front wheel." },
    "rear-wheel-load": { unit: "g", digits: 0, description: "Mass that rests on the rear wheel." },
  },
  formula:
    "sum, of the kit no less than lies on the racks; front = front rack's load + share × (sum − racks' loads); rear = the rest",
  source:
    "definition; the share of 45 to 55, and that what lies on a rack rests on the wheel below it: common practice, no source",
  compute(given, working) {
    const { "rider-mass": rider, "kit-mass": kit, "bike-mass": bike, "front-share": share = usualFrontShare } = given;
    const { "front-rack-load": onFront = 0, "rear-rack-load": onRear = 0 } = given;
    const wrong =
      negative({ "rider-mass": rider, "kit-mass": kit, "bike-mass": bike }) ??
      negative({ "front-rack-load": onFront, "rear-rack-load": onRear }) ??
      notPositive({ "front-share": share });
    if (wrong) return wrong;
    if (share >= 100) return impossible("The front wheel cannot carry all of it.");
    const racks = onFront + onRear;
    const carried = Math.max(kit, racks);
    const sum = rider + carried + bike;
    const front = onFront + ((sum - racks) * share) / 100;
    if (carried > kit) {
      working?.step(
        `The racks carry ${say(racks / 1000, "kg")}, more than the kit of ${say(kit / 1000, "kg")}: that counts`,
      );
    }
    working?.step(
      `All up: ${say(rider / 1000, "kg")} + ${say(carried / 1000, "kg")} + ${say(bike / 1000, "kg")} = ${say(sum / 1000, "kg")}`,
    );
    const practice = given["front-share"] === undefined ? ", by common practice" : "";
    working?.step(
      racks > 0
        ? `Front${practice}: ${say(onFront / 1000, "kg")} on its rack + ${say(share, "%")} of ${say((sum - racks) / 1000, "kg")} = ${say(front / 1000, "kg")}; rear ${say(sum / 1000, "kg")} − ${say(front / 1000, "kg")} = ${say((sum - front) / 1000, "kg")}`
        : `Front${practice}: ${say(share, "%")} of ${say(sum / 1000, "kg")} = ${say(front / 1000, "kg")}; rear ${say(sum / 1000, "kg")} − ${say(front / 1000, "kg")} = ${say((sum - front) / 1000, "kg")}`,
    );
    return { "all-up-mass": sum, "front-wheel-load": front, "rear-wheel-load": sum - front };
  },
  inBuild: [
    {
      assembly: "bike",
      needs: {
        rider: buildField("rider.mass"),
        kit: buildField("rider.kit-mass"),
        masses: everyFact<number>("mass"),
        share: optional(worked<number>("bike.front-share")),
        onFront: optional(setting("carrying.front-rack", "load")),
        onRear: optional(setting("carrying.rear-rack", "load")),
      },
      inputs: ({ rider, kit, masses, share, onFront, onRear }) => {
        const rows = eachPartOnce(masses.value);
        const missing = rows.flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : []));
        if (missing.length > 0) return lacking(missing);
        return known({
          "rider-mass": rider.value,
          "kit-mass": kit.value,
          "bike-mass": rows.reduce((sum, { fact }) => sum + (fact.state === "known" ? fact.value : 0), 0),
          // Where the position is not known well enough to work the share out, the usual one stands in.
          "front-share": stated(share),
          // A load that nobody stated is part of the kit all the same, which is shared by both wheels.
          "front-rack-load": stated(onFront),
          "rear-rack-load": stated(onRear),
        });
      },
    },
  ],
  examples: [
    {
      inputs: { "rider-mass": 75_000, "kit-mass": 3000, "bike-mass": 12_000 },
      results: { "all-up-mass": 90_000, "front-wheel-load": 40_500, "rear-wheel-load": 49_500 },
      source: "common practice, no source: 90 kg shared 45 to 55",
    },
    {
      inputs: { "rider-mass": 60_000, "kit-mass": 0, "bike-mass": 10_000, "front-share": 40 },
      results: { "all-up-mass": 70_000, "front-wheel-load": 28_000, "rear-wheel-load": 42_000 },
      source: "worked by hand",
    },
    {
      inputs: {
        "rider-mass": 75_000,
        "kit-mass": 20_000,
        "bike-mass": 15_000,
        "front-rack-load": 4000,
        "rear-rack-load": 16_000,
      },
      results: { "all-up-mass": 110_000, "front-wheel-load": 44_500, "rear-wheel-load": 65_500 },
      source: "worked by hand: 4 + 0.45 × 90 = 44.5 kg",
    },
    {
      inputs: { "rider-mass": 60_000, "kit-mass": 0, "bike-mass": 14_000, "front-share": 40, "rear-rack-load": 30_000 },
      results: { "all-up-mass": 104_000, "front-wheel-load": 29_600, "rear-wheel-load": 74_400 },
      source: "worked by hand: 0.40 × 74 = 29.6 kg",
    },
  ],
});
