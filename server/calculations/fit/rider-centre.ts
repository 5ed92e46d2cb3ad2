import { buildField, fact, worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known } from "../define.ts";
import { posture } from "../shared/body.ts";
import { notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Where the mass of a seated rider balances. */
export default defineCalculation({
  name: "rider-centre",
  title: "Centre of mass of the rider",
  description:
    "Where the mass of a rider of usual proportions balances, seated with both hands on the bar and the cranks level: an estimate from the contact points.",
  inputs: {
    "rider-height": input(length("Height of the rider.", { lowest: 500, highest: 2500 })),
    "saddle-setback": input(length("Where the rider sits, behind the crank axis, level.", { lowest: -300 })),
    "saddle-top-height": input(length("Saddle's top above the crank axis, upright.")),
    "hands-forward": input(length("Hands in front of the crank axis.", { lowest: -500 })),
    "hands-height": input(length("Hands above the crank axis.", { lowest: -500 })),
    "crank-length": input(length("From the middle of the spindle to the middle of the pedal axle.")),
  },
  results: {
    "rider-centre-forward": {
      unit: "mm",
      digits: 0,
      description: "Rider's centre of mass in front of the crank axis; negative behind it.",
    },
    "rider-centre-height": { unit: "mm", digits: 0, description: "Rider's centre of mass above the crank axis." },
    "trunk-angle": { unit: "°", digits: 0, description: "Lean of the trunk from level; 90° is upright." },
  },
  formula:
    "sum of mass × place over trunk, head, arms, thighs, shanks and feet, each a straight segment between saddle, bar and pedals; arms straight to 96 %, the trunk no farther back than 85°",
  source:
    "segment masses and centres after Dempster (1955), lengths after Drillis and Contini (1966), both as in Winter, Biomechanics and Motor Control of Human Movement (from memory); hip 5 % of height above the saddle, arms and the greatest lean: common practice, no source",
  compute(given, working) {
    const { "rider-height": height, "crank-length": crankLength } = given;
    const saddle = { forward: -given["saddle-setback"], up: given["saddle-top-height"] };
    const hands = { forward: given["hands-forward"], up: given["hands-height"] };
    const wrong =
      notPositive({ "rider-height": height, "saddle-top-height": saddle.up, "crank-length": crankLength }) ??
      notFinite({
        "saddle-setback": saddle.forward,
        "hands-forward": hands.forward,
        "hands-height": hands.up,
      });
    if (wrong) return wrong;
    const found = posture({ height, saddle, hands, crankLength });
    if (!found) return impossible("The bar is out of the rider's reach.");
    const { centre, trunkAngle } = found;
    working?.step(
      `Seated ${say(-saddle.forward, "mm")} behind and ${say(saddle.up, "mm")} above the crank axis, hands ${say(hands.forward, "mm")} in front and ${say(hands.up, "mm")} above: the trunk leans ${say(trunkAngle, "°")} from level`,
    );
    working?.step(
      `Trunk 49.7 %, head 8.1 %, arms 10 % and legs 32.2 % of the mass balance ${say(centre.forward, "mm")} in front of the crank axis and ${say(centre.up, "mm")} above it`,
    );
    return {
      "rider-centre-forward": centre.forward,
      "rider-centre-height": centre.up,
      "trunk-angle": trunkAngle,
    };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: {
        height: buildField("rider.height"),
        setback: worked<number>("seat.saddle-setback"),
        top: worked<number>("seat.saddle-top-height"),
        forward: worked<number>("cockpit.hands-forward"),
        up: worked<number>("cockpit.hands-height"),
        crank: fact("drivetrain.crankset", "crank-length"),
      },
      inputs: (facts) =>
        known({
          "rider-height": facts.height.value,
          "saddle-setback": facts.setback.value,
          "saddle-top-height": facts.top.value,
          "hands-forward": facts.forward.value,
          "hands-height": facts.up.value,
          "crank-length": facts.crank.value,
        }),
    },
  ],
  examples: [
    {
      inputs: {
        "rider-height": 1750,
        "saddle-setback": 200,
        "saddle-top-height": 700,
        "hands-forward": 480,
        "hands-height": 640,
        "crank-length": 172.5,
      },
      results: { "rider-centre-forward": 12.3793111, "rider-centre-height": 850.9031527, "trunk-angle": 50.8323922 },
      source: "worked independently by script: segments placed by intersecting circles in complex numbers",
    },
    {
      // Hands so near that the trunk would lean backward: it stays at 85°, and the arms bend.
      inputs: {
        "rider-height": 1700,
        "saddle-setback": 150,
        "saddle-top-height": 600,
        "hands-forward": 220,
        "hands-height": 800,
        "crank-length": 160,
      },
      results: { "rider-centre-forward": -59.7814519, "rider-centre-height": 813.8877837, "trunk-angle": 85 },
      source: "worked independently by script: segments placed by intersecting circles in complex numbers",
    },
  ],
});
