import { fact, optional, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { degrees, radians } from "../shared/angles.ts";
import { forkLengthAlongAxis, frontAxle, rearAxle } from "../shared/axle-positions.ts";
import { forkAsSet, forkAsSetNeeds } from "../shared/fork-as-set.ts";
import { notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { trailOf } from "../shared/trail.ts";

/** What a fork of another length does to a bicycle. */
export default defineCalculation({
  name: "fork-length-effect",
  title: "Effect of another fork length",
  description:
    "Head angle, wheelbase, height of the crank axis and, where wheel and offset are given, trail after a change of the fork's length along the steering axis.",
  inputs: {
    wheelbase: input(length("Wheelbase before.")),
    "head-angle": input(angle("Head angle before.")),
    "fork-length-change": input(
      length("How much longer the fork is, along the steering axis; negative when it is shorter.", {
        lowest: -400,
        highest: 400,
      }),
    ),
    chainstay: input(length("From crank axis to rear axle along the line between them.")),
    "bottom-bracket-drop": input(
      length("How far the crank axis lies below the axles.", { lowest: -150, highest: 200 }),
    ),
    "wheel-radius": optionalInput(length("Radius of the front wheel, for the trail.")),
    "fork-offset": optionalInput(length("Offset of the fork, for the trail.", { lowest: -50, highest: 200 })),
  },
  results: {
    "frame-turn": { unit: "°", digits: 2, description: "By how much the frame turns nose up." },
    "head-angle-after": { unit: "°", digits: 2, description: "Head angle afterwards." },
    "wheelbase-after": { unit: "mm", digits: 1, description: "Wheelbase afterwards." },
    "crank-axis-rise": { unit: "mm", digits: 1, description: "By how much the crank axis rises." },
    "trail-before": { unit: "mm", digits: 1, description: "Trail before." },
    "trail-after": { unit: "mm", digits: 1, description: "Trail afterwards." },
    "fork-length-difference": { unit: "mm", digits: 1, description: "The change of length along the steering axis." },
  },
  formula:
    "turn = arctangent of (change × sin head angle) ÷ (wheelbase + change × cos head angle); new wheelbase = the hypotenuse; crank axis rises by x × sin turn + drop × (1 − cos turn), x its distance in front of the rear axle",
  source: "plane geometry with both wheels on the ground, re-derived",
  compute(given, working) {
    const { wheelbase, chainstay, "head-angle": headAngle, "fork-length-change": change } = given;
    const { "bottom-bracket-drop": drop, "wheel-radius": radius, "fork-offset": offset } = given;
    const wrong =
      notPositive({ wheelbase, chainstay, "wheel-radius": radius }) ??
      notFinite({ "fork-length-change": change, "bottom-bracket-drop": drop, "fork-offset": offset }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    const rear = rearAxle(chainstay, drop);
    if (!rear) return impossible("The bottom-bracket drop is longer than the chainstay.");
    const rise = change * Math.sin(radians(headAngle));
    const along = wheelbase + change * Math.cos(radians(headAngle));
    if (along <= 0) return impossible("The fork would end behind the rear axle.");
    const turn = Math.atan2(rise, along);
    const after = Math.hypot(rise, along);
    const lift = -rear.forward * Math.sin(turn) + drop * (1 - Math.cos(turn));
    const angleAfter = headAngle - degrees(turn);
    working?.step(
      `Turn: arctangent of ${say(rise, "mm")} ÷ ${say(along, "mm")} = ${say(degrees(turn), "°")}; head angle ${say(headAngle, "°")} − ${say(degrees(turn), "°")} = ${say(angleAfter, "°")}`,
    );
    working?.step(`Wheelbase: √(${say(Math.abs(rise))}² + ${say(along)}²) = ${say(after, "mm")}`);
    working?.step(
      `Crank axis: ${say(-rear.forward, "mm")} × sin ${say(degrees(turn), "°")} + ${say(drop, "mm")} × (1 − cos ${say(degrees(turn), "°")}) = ${say(lift, "mm")} higher`,
    );
    const trails =
      radius === undefined || offset === undefined
        ? undefined
        : { "trail-before": trailOf(radius, headAngle, offset), "trail-after": trailOf(radius, angleAfter, offset) };
    if (trails) {
      working?.step(`Trail: from ${say(trails["trail-before"], "mm")} to ${say(trails["trail-after"], "mm")}`);
    }
    return {
      "frame-turn": degrees(turn),
      "head-angle-after": angleAfter,
      "wheelbase-after": after,
      "crank-axis-rise": lift,
      ...trails,
      "fork-length-difference": change,
    };
  },
  inBuild: [
    {
      assembly: "steering",
      needs: {
        reach: fact("frame", "reach"),
        stack: fact("frame", "stack"),
        headAngle: fact("frame", "head-angle"),
        headTube: fact("frame", "head-tube-length"),
        chainstay: fact("frame", "chainstay"),
        drop: fact("frame", "bottom-bracket-drop"),
        lowerStack: fact("headset", "lower-stack"),
        designed: fact("frame", "fork-axle-to-crown"),
        designedOffset: optional(fact("frame", "fork-offset")),
        ...forkAsSetNeeds,
        radius: optional(worked<number>("front-wheel.wheel-radius")),
      },
      inputs: (facts) => {
        const fitted = forkAsSet(facts);
        if (typeof fitted !== "number") return lacking(fitted);
        const fittedOffset = facts.forkOffset.value;
        // A chart that does not say the offset it assumes is taken to assume the fitted one.
        const offset = stated(facts.designedOffset) ?? fittedOffset;
        const chainstay = (facts.chainstay.value.least + facts.chainstay.value.greatest) / 2;
        const front = frontAxle({
          reach: facts.reach.value,
          stack: facts.stack.value,
          headAngle: facts.headAngle.value,
          headTubeLength: facts.headTube.value,
          lowerStack: facts.lowerStack.value,
          axleToCrown: facts.designed.value,
          forkOffset: offset,
        });
        const rear = rearAxle(chainstay, facts.drop.value);
        const before = forkLengthAlongAxis(facts.designed.value, offset);
        const after = forkLengthAlongAxis(fitted, fittedOffset);
        return known(
          {
            wheelbase: front && rear ? front.forward - rear.forward : Number.NaN,
            "head-angle": facts.headAngle.value,
            "fork-length-change": before === undefined || after === undefined ? Number.NaN : after - before,
            chainstay,
            "bottom-bracket-drop": facts.drop.value,
            "wheel-radius": stated(facts.radius),
            "fork-offset": fittedOffset,
          },
          { "trail-before": missingOf(facts.radius), "trail-after": missingOf(facts.radius) },
        );
      },
    },
  ],
  examples: [
    {
      inputs: {
        wheelbase: 1000,
        "head-angle": 73,
        "fork-length-change": 20,
        chainstay: Math.hypot(405, 70),
        "bottom-bracket-drop": 70,
        "wheel-radius": 336,
        "fork-offset": 45,
      },
      results: {
        "head-angle-after": 71.91066,
        "wheelbase-after": 1006.0293,
        "crank-axis-rise": 7.7123,
        "trail-before": 55.6694,
        "trail-after": 62.4127,
        "frame-turn": 1.08934,
        "fork-length-difference": 20,
      },
      tolerance: 1e-5,
      source: "worked independently by script with rotated axes",
    },
    {
      inputs: {
        wheelbase: 1200,
        "head-angle": 65,
        "fork-length-change": 20,
        chainstay: Math.hypot(434, 35),
        "bottom-bracket-drop": 35,
      },
      results: { "head-angle-after": 64.14066, "wheelbase-after": 1208.5883, "crank-axis-rise": 6.513 },
      tolerance: 1e-5,
      source: "worked independently by script with rotated axes",
    },
  ],
});
