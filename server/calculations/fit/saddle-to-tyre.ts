import { fact, optional, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { type Point, rearAxle } from "../shared/axle-positions.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { dropperTravel, postLengthNeeds } from "../shared/post-length.ts";
import { alongSeatTube } from "../shared/saddle-position.ts";
import { say } from "../shared/say.ts";

/** How near the rear tyre comes to the saddle. */
export default defineCalculation({
  name: "saddle-to-tyre",
  title: "Room between saddle and rear tyre",
  description:
    "The least distance from the underside of the saddle to the rear tyre, with the dropper down and the rear wheel at full travel.",
  inputs: {
    "rails-back": input(length("Middle of the straight rails behind the crank axis, level.", { lowest: -300 })),
    "rails-up": input(length("Middle of the rails above the crank axis, the dropper extended.")),
    "rails-to-tail": input(length("From the middle of the straight rails back to the saddle's tail, level.")),
    "tail-rise": optionalInput(
      length("From the rails up to the underside of the tail; 0 when left out.", { lowest: -50, highest: 100 }),
    ),
    "dropper-travel": optionalInput(length("By how much the dropper drops; 0 when left out.")),
    "seat-angle": input(angle("Actual angle of the seat tube, along which it drops.")),
    chainstay: input(length("From crank axis to rear axle, unladen.")),
    "bottom-bracket-drop": input(
      length("How far the crank axis lies below the rear axle, unladen.", { lowest: -100, highest: 150 }),
    ),
    "rear-travel": optionalInput(length("Upright travel of the rear axle; 0 when left out.")),
    "growth-full": optionalInput(
      length("How much longer the line from crank axis to rear axle is at full travel; 0 when left out.", {
        lowest: -50,
        highest: 100,
      }),
    ),
    "wheel-radius": input(length("Radius of the rear wheel over its tyre.")),
  },
  results: {
    "saddle-to-tyre": {
      unit: "mm",
      digits: 0,
      description: "Least distance from the saddle's underside to the tyre; negative when they meet.",
    },
  },
  formula:
    "distance from the axle, raised by the travel, to the line from the dropped rails to the saddle's tail, less the wheel's radius",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { chainstay, "wheel-radius": radius, "seat-angle": seatAngle, "rails-to-tail": toTail } = given;
    const { "tail-rise": rise = 0, "dropper-travel": drop = 0, "rear-travel": travel = 0 } = given;
    const { "growth-full": growth = 0, "rails-back": back, "rails-up": up, "bottom-bracket-drop": below } = given;
    const wrong =
      notPositive({ chainstay, "wheel-radius": radius, "rails-up": up }) ??
      negative({ "rails-to-tail": toTail, "dropper-travel": drop, "rear-travel": travel }) ??
      notFinite({ "rails-back": back, "tail-rise": rise, "growth-full": growth, "bottom-bracket-drop": below }) ??
      notBetween(20, 120, "°", { "seat-angle": seatAngle });
    if (wrong) return wrong;
    const axle = rearAxle(chainstay + growth, below + travel);
    if (!axle) return impossible("The axle would rise farther than the chainstay is long.");
    const down = alongSeatTube({ seatAngle, offset: 0 }, -drop, 0);
    const rails = { forward: down.forward - back, up: up + down.up };
    const tail = { forward: rails.forward - toTail, up: rails.up + rise };
    const near = nearestOnLine(axle, rails, tail);
    const gap = Math.hypot(near.forward - axle.forward, near.up - axle.up) - radius;
    working?.step(
      `Rear axle at full travel: ${say(-axle.forward, "mm")} behind the crank axis, ${say(axle.up, "mm")} above it`,
    );
    working?.step(
      `Tail with the dropper down: ${say(-tail.forward, "mm")} behind the crank axis, ${say(tail.up, "mm")} above it`,
    );
    working?.step(
      `Nearest point of the saddle: ${say(gap + radius, "mm")} from the axle, less a radius of ${say(radius, "mm")} = ${say(gap, "mm")}`,
    );
    return { "saddle-to-tyre": gap };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: {
        setback: worked<number>("seat.saddle-setback"),
        top: worked<number>("seat.saddle-top-height"),
        height: fact("seat.saddle", "height"),
        sitting: optional(fact("seat.saddle", "clamp-to-sitting")),
        toTail: fact("seat.saddle", "clamp-to-tail"),
        rise: fact("seat.saddle", "tail-rise"),
        ...postLengthNeeds,
        seatAngle: fact("frame", "seat-angle"),
        chainstay: fact("frame", "chainstay"),
        drop: fact("frame", "bottom-bracket-drop"),
        travel: optional(fact("frame", "rear-travel")),
        growth: optional(fact("frame", "rear-centre-growth-full")),
        bottomed: optional(fact("frame", "rear-centre-growth-bottomed")),
        radius: worked<number>("rear-wheel.wheel-radius"),
      },
      inputs: (facts) => {
        const missing = missingOf(facts.sitting, facts.dropperTravel, facts.travel);
        if (missing.length > 0) return lacking(missing);
        return known({
          "rails-back": facts.setback.value - (stated(facts.sitting) ?? 0),
          "rails-up": facts.top.value - facts.height.value,
          "rails-to-tail": facts.toTail.value,
          "tail-rise": facts.rise.value,
          "dropper-travel": dropperTravel(facts) ?? 0,
          "seat-angle": facts.seatAngle.value,
          // Farthest forward the wheel comes nearest.
          chainstay: facts.chainstay.value.least,
          "bottom-bracket-drop": facts.drop.value,
          "rear-travel": stated(facts.travel) ?? 0,
          // Where nobody states it, the wheel is taken to keep its distance from the crank axis, which is nearer.
          "growth-full": stated(facts.bottomed) ?? stated(facts.growth) ?? 0,
          "wheel-radius": facts.radius.value,
        });
      },
    },
  ],
  examples: [
    {
      // Rails 300 mm straight above a level axle line: 3-4-5 triangles.
      inputs: {
        "rails-back": 100,
        "rails-up": 500,
        "rails-to-tail": 0,
        "seat-angle": 90,
        chainstay: 500,
        "bottom-bracket-drop": 0,
        "dropper-travel": 200,
        "wheel-radius": 350,
      },
      results: { "saddle-to-tyre": 150 },
      source: "by hand: 400 mm along and 300 mm up are 500 mm from the axle, less 350 mm",
    },
    {
      inputs: {
        "rails-back": 150,
        "rails-up": 655,
        "rails-to-tail": 140,
        "tail-rise": 25,
        "dropper-travel": 170,
        "seat-angle": 75,
        chainstay: 435,
        "bottom-bracket-drop": 35,
        "rear-travel": 150,
        "growth-full": 12,
        "wheel-radius": 370,
      },
      results: { "saddle-to-tyre": -2.142967 },
      source: "worked independently by script, a million points along the saddle",
    },
  ],
});

/** The point of a straight line between two ends that is nearest to another point. */
function nearestOnLine(point: Point, one: Point, other: Point): Point {
  const along = { forward: other.forward - one.forward, up: other.up - one.up };
  const square = along.forward ** 2 + along.up ** 2;
  if (square === 0) return one;
  const share = ((point.forward - one.forward) * along.forward + (point.up - one.up) * along.up) / square;
  const inside = Math.max(0, Math.min(1, share));
  return { forward: one.forward + along.forward * inside, up: one.up + along.up * inside };
}
