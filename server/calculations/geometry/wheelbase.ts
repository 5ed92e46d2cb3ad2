import { fact, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { frontAxle, rearAxle, settle } from "../shared/axle-positions.ts";
import { forkAsSet, forkAsSetNeeds } from "../shared/fork-as-set.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Where the wheels of a frame and fork stand. */
export default defineCalculation({
  name: "wheelbase",
  title: "Front centre and wheelbase",
  description:
    "Place of the front axle by the frame's chart and the fork, the distances from crank axis and rear axle to it, and, with the bottom-bracket drop known, how the bicycle stands on its wheels.",
  inputs: {
    reach: input(length("Head tube's top in front of the crank axis.")),
    stack: input(length("Head tube's top above the crank axis.")),
    "head-angle": input(angle("Angle of the steering axis from the horizontal, by the chart.")),
    "head-tube-length": input(length("Length of the head tube.")),
    "lower-stack": input(length("From the crown-race seat to the head tube's lower edge.")),
    "axle-to-crown": input(length("From the fork's axle to the crown-race seat, in a straight line.")),
    "fork-offset": input(length("Offset of the fork, square to the steering axis.", { lowest: -50, highest: 200 })),
    chainstay: input(length("From crank axis to rear axle along the line between them.")),
    "bottom-bracket-drop": optionalInput(
      length("How far the crank axis lies below the axles by the chart; the front axle's height when left out.", {
        lowest: -100,
        highest: 150,
      }),
    ),
    "front-wheel-radius": optionalInput(length("Radius of the front wheel over its tyre.")),
    "rear-wheel-radius": optionalInput(length("Radius of the rear wheel over its tyre.")),
  },
  results: {
    "front-axle-forward": {
      unit: "mm",
      digits: 1,
      description: "Front axle in front of the crank axis, by the chart.",
    },
    "front-axle-height": { unit: "mm", digits: 1, description: "Front axle above the crank axis, by the chart." },
    "front-centre": { unit: "mm", digits: 1, description: "From crank axis to front axle in a straight line." },
    wheelbase: { unit: "mm", digits: 1, description: "Between the axles along the ground." },
    "frame-tilt": {
      unit: "°",
      digits: 2,
      description: "By how much the frame stands nose up against its chart, with this fork and these wheels.",
    },
    "actual-head-angle": { unit: "°", digits: 2, description: "Head angle as the bicycle stands." },
    "crank-axis-height": { unit: "mm", digits: 1, description: "Crank axis above the ground; needs the wheels." },
  },
  formula:
    "from the head tube's top down the steering axis by head tube + lower stack + √(axle-to-crown² − offset²), then forward square to it by the offset; rear axle at √(chainstay² − drop²) behind; the frame turns until both wheels touch the ground",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { reach, stack, chainstay, "head-angle": headAngle, "fork-offset": forkOffset } = given;
    const wrong =
      notPositive({
        reach,
        stack,
        chainstay,
        "axle-to-crown": given["axle-to-crown"],
        "front-wheel-radius": given["front-wheel-radius"],
        "rear-wheel-radius": given["rear-wheel-radius"],
      }) ??
      negative({ "head-tube-length": given["head-tube-length"], "lower-stack": given["lower-stack"] }) ??
      notFinite({ "fork-offset": forkOffset, "bottom-bracket-drop": given["bottom-bracket-drop"] }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    const front = frontAxle({
      reach,
      stack,
      headAngle,
      headTubeLength: given["head-tube-length"],
      lowerStack: given["lower-stack"],
      axleToCrown: given["axle-to-crown"],
      forkOffset,
    });
    if (!front) return impossible("The fork's offset is longer than the fork.");
    const drop = given["bottom-bracket-drop"] ?? front.up;
    const rear = rearAxle(chainstay, drop);
    if (!rear) return impossible("The bottom-bracket drop is longer than the chainstay.");
    if (front.forward <= rear.forward) return impossible("The front axle would stand behind the rear one.");
    const frontRadius = given["front-wheel-radius"];
    const rearRadius = given["rear-wheel-radius"];
    const bothRadii = frontRadius !== undefined && rearRadius !== undefined;
    const stands = settle(front, rear, bothRadii ? frontRadius : 300, bothRadii ? rearRadius : 300);
    if (!stands) return impossible("The wheels differ more than the wheelbase allows.");
    const frontCentre = Math.hypot(front.forward, front.up);
    working?.step(
      `Front axle: ${say(front.forward, "mm")} in front of the crank axis and ${say(front.up, "mm")} above it, by the chart`,
    );
    working?.step(
      `Front centre: √(${say(Math.abs(front.forward))}² + ${say(Math.abs(front.up))}²) = ${say(frontCentre, "mm")}`,
    );
    working?.step(
      `Rear axle: √(${say(chainstay)}² − ${say(Math.abs(drop))}²) = ${say(-rear.forward, "mm")} behind the crank axis`,
    );
    working?.step(
      `Wheelbase: ${say(stands.wheelbase, "mm")}${bothRadii ? "" : ", both wheels taken as equally large"}`,
    );
    working?.step(
      `The frame stands ${say(stands.tilt, "°")} nose up against its chart: head angle ${say(headAngle - stands.tilt, "°")}`,
    );
    if (bothRadii) working?.step(`Crank axis: ${say(stands.crankAxisHeight, "mm")} above the ground`);
    return {
      "front-axle-forward": front.forward,
      "front-axle-height": front.up,
      "front-centre": frontCentre,
      wheelbase: stands.wheelbase,
      "frame-tilt": stands.tilt,
      "actual-head-angle": headAngle - stands.tilt,
      ...(bothRadii ? { "crank-axis-height": stands.crankAxisHeight } : {}),
    };
  },
  inBuild: [
    {
      assembly: "geometry",
      needs: {
        reach: fact("frame", "reach"),
        stack: fact("frame", "stack"),
        headAngle: fact("frame", "head-angle"),
        headTube: fact("frame", "head-tube-length"),
        chainstay: fact("frame", "chainstay"),
        drop: fact("frame", "bottom-bracket-drop"),
        lowerStack: fact("headset", "lower-stack"),
        ...forkAsSetNeeds,
        frontRadius: worked<number>("front-wheel.wheel-radius"),
        rearRadius: worked<number>("rear-wheel.wheel-radius"),
      },
      inputs: (facts) => {
        const axleToCrown = forkAsSet(facts);
        if (typeof axleToCrown !== "number") return lacking(axleToCrown);
        return known({
          reach: facts.reach.value,
          stack: facts.stack.value,
          "head-angle": facts.headAngle.value,
          "head-tube-length": facts.headTube.value,
          "lower-stack": facts.lowerStack.value,
          "axle-to-crown": axleToCrown,
          "fork-offset": facts.forkOffset.value,
          // Where the dropouts can be moved, the middle of their way stands for the wheel's place.
          chainstay: (facts.chainstay.value.least + facts.chainstay.value.greatest) / 2,
          "bottom-bracket-drop": facts.drop.value,
          "front-wheel-radius": facts.frontRadius.value,
          "rear-wheel-radius": facts.rearRadius.value,
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        reach: 385,
        stack: 560,
        "head-angle": 73,
        "head-tube-length": 150,
        "lower-stack": 2,
        "axle-to-crown": 371,
        "fork-offset": 45,
        chainstay: 410,
      },
      results: {
        "front-axle-forward": 580.1432,
        "front-axle-height": 75.6289,
        "front-centre": 585.0521,
        wheelbase: 983.1076,
        "frame-tilt": 0,
      },
      tolerance: 2e-6,
      source: "worked independently by script with rotated axes",
    },
    {
      inputs: {
        reach: 400,
        stack: 600,
        "head-angle": 90,
        "head-tube-length": 100,
        "lower-stack": 0,
        "axle-to-crown": 500,
        "fork-offset": 300,
        chainstay: 500,
        "bottom-bracket-drop": 300,
        "front-wheel-radius": 350,
        "rear-wheel-radius": 350,
      },
      results: {
        "front-axle-forward": 700,
        "front-axle-height": 100,
        "front-centre": 707.106781,
        wheelbase: 1118.033989,
        "frame-tilt": 10.304846,
        "actual-head-angle": 79.695154,
        "crank-axis-height": 126.393202,
      },
      source: "worked by hand with right angles and 3-4-5 triangles: the axles lie 1100 apart and 200 out of level",
    },
  ],
});
