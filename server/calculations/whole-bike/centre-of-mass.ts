import { buildField, everyFact, fact, optional, worked } from "../../model/need.ts";
import { quantities } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, unusable } from "../define.ts";
import { rearAxle, turned } from "../shared/axle-positions.ts";
import { eachPartOnce } from "../shared/every-part.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { placeOfSlot } from "../shared/part-places.ts";
import { alongSeatTube } from "../shared/saddle-position.ts";
import { say } from "../shared/say.ts";

/** Where several masses balance; in a build, the bicycle and its rider, without what is carried. */
export default defineCalculation({
  name: "centre-of-mass",
  title: "Centre of mass",
  description:
    "Place where masses at given places balance, seen from the side. In a build these are the rider and the parts, each at the axle, saddle, bar or crank axis that it is nearest to; what is carried is left out.",
  inputs: {
    masses: input(quantities("mass", "The masses, separated by commas.")),
    forward: input(quantities("length", "How far each lies in front of the rear wheel's contact, in the same order.")),
    heights: input(quantities("length", "How high each lies above the ground, in the same order.")),
  },
  results: {
    "total-mass": { unit: "kg", digits: 2, description: "All of them together." },
    "centre-forward": { unit: "mm", digits: 1, description: "Centre of mass in front of the rear wheel's contact." },
    "centre-height": { unit: "mm", digits: 1, description: "Centre of mass above the ground." },
  },
  formula: "sum of mass × distance ÷ sum of masses, along the ground and upward",
  source: "definition; the places of a build's parts: common practice, no source",
  compute({ masses, forward, heights }, working) {
    if (masses.length === 0) return unusable("No mass is given.");
    if (forward.length !== masses.length || heights.length !== masses.length) {
      return unusable(`${masses.length} masses need as many distances and heights.`);
    }
    if (![...masses, ...forward, ...heights].every(Number.isFinite) || masses.some((mass) => mass < 0)) {
      return unusable("Masses and distances must be numbers, and no mass less than zero.");
    }
    const total = masses.reduce((sum, mass) => sum + mass, 0);
    if (total <= 0) return impossible("All masses are zero.");
    const balance = (places: readonly number[]): number =>
      masses.reduce((sum, mass, index) => sum + mass * (places[index] as number), 0) / total;
    const [x, y] = [balance(forward), balance(heights)];
    masses.forEach((mass, index) => {
      working?.step(
        `${say(mass / 1000, "kg")} at ${say(forward[index] as number, "mm")} forward, ${say(heights[index] as number, "mm")} up`,
      );
    });
    working?.step(`Together ${say(total / 1000, "kg")}: centre ${say(x, "mm")} forward, ${say(y, "mm")} up`);
    return { "total-mass": total / 1000, "centre-forward": x, "centre-height": y };
  },
  inBuild: [
    {
      assembly: "bike",
      needs: {
        riderMass: buildField("rider.mass"),
        riderForward: worked<number>("seat.rider-centre-forward"),
        riderUp: worked<number>("seat.rider-centre-height"),
        masses: everyFact<number>("mass"),
        reach: fact("frame", "reach"),
        stack: fact("frame", "stack"),
        chainstay: fact("frame", "chainstay"),
        drop: fact("frame", "bottom-bracket-drop"),
        seatAngle: fact("frame", "seat-angle"),
        seatTubeOffset: optional(fact("frame", "seat-tube-offset")),
        seatTube: fact("frame", "seat-tube-length"),
        frontForward: worked<number>("geometry.front-axle-forward"),
        frontUp: worked<number>("geometry.front-axle-height"),
        tilt: worked<number>("geometry.frame-tilt"),
        crankAxis: worked<number>("geometry.crank-axis-height"),
        handsForward: worked<number>("cockpit.hands-forward"),
        handsUp: worked<number>("cockpit.hands-height"),
        setback: worked<number>("seat.saddle-setback"),
        saddleUp: worked<number>("seat.saddle-top-height"),
      },
      inputs: (facts) => {
        const rows = eachPartOnce(facts.masses.value);
        const missing = [...rows.flatMap(({ fact: mass }) => missingOf(mass)), ...missingOf(facts.seatTubeOffset)];
        if (missing.length > 0) return lacking(missing);
        const chainstay = (facts.chainstay.value.least + facts.chainstay.value.greatest) / 2;
        const rear = rearAxle(chainstay, facts.drop.value);
        if (!rear) return meaningless("the bottom-bracket drop is longer than the chainstay");
        const marks = {
          frontAxle: { forward: facts.frontForward.value, up: facts.frontUp.value },
          rearAxle: rear,
          hands: { forward: facts.handsForward.value, up: facts.handsUp.value },
          saddle: { forward: -facts.setback.value, up: facts.saddleUp.value },
          headTubeTop: { forward: facts.reach.value, up: facts.stack.value },
          seatTubeTop: alongSeatTube(
            { seatAngle: facts.seatAngle.value, offset: stated(facts.seatTubeOffset) ?? 0 },
            facts.seatTube.value,
            0,
          ),
        };
        const rider = { forward: facts.riderForward.value, up: facts.riderUp.value };
        const all = [
          { mass: facts.riderMass.value, place: rider },
          ...rows.flatMap(({ slot, fact: mass }) =>
            mass.state === "known" ? [{ mass: mass.value, place: placeOfSlot(slot, marks) }] : [],
          ),
        ];
        // The chart's places, once the bicycle stands on its wheels.
        const ground = turned(rear, facts.tilt.value).forward;
        const standing = all.map(({ place }) => turned(place, facts.tilt.value));
        return known({
          masses: all.map(({ mass }) => mass),
          forward: standing.map((place) => place.forward - ground),
          heights: standing.map((place) => place.up + facts.crankAxis.value),
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        masses: [2000, 85_000, 4000, 3000],
        forward: [0, 300, 900, 1020],
        heights: [300, 900, 700, 350],
      },
      results: { "total-mass": 94, "centre-forward": 342.1277, "centre-height": 861.1702 },
      source:
        "benchmark bicycle of Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1; centre worked independently",
    },
    {
      inputs: { masses: [1000, 3000], forward: [0, 400], heights: [100, 300] },
      results: { "total-mass": 4, "centre-forward": 300, "centre-height": 250 },
      source: "worked by hand: three quarters of the way",
    },
  ],
});
