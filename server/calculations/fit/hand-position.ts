import { fact, optional, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, optionalInput } from "../define.ts";
import { sine } from "../shared/angles.ts";
import { negative, notBetween, notFinite } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";

/** Where the hands rest. */
export default defineCalculation({
  name: "hand-position",
  title: "Position of the hands",
  description:
    "Middle of the grips of a flat or risen bar, or the forward bend of a drop bar, in front of and above the crank axis; hoods stand a little above that bend, as their maker says.",
  inputs: {
    "bar-clamp-forward": input(length("Bar clamp in front of the crank axis.", { lowest: -500 })),
    "bar-clamp-height": input(length("Bar clamp above the crank axis.", { lowest: -500 })),
    rise: optionalInput(
      length("Height of the grips above the clamp; 0 when left out.", { lowest: -200, highest: 300 }),
    ),
    "bar-reach": optionalInput(length("Of a drop bar: from the clamp forward to the farthest part of the bend.")),
    "back-sweep": optionalInput(angle("Angle by which the grips turn backward.", { lowest: -30, highest: 110 })),
    "grip-distance": optionalInput(
      length("From the bend of the bar out to the middle of the grip, along it; what the sweep works on."),
    ),
  },
  results: {
    "hands-forward": { unit: "mm", digits: 0, description: "Hands in front of the crank axis." },
    "hands-height": { unit: "mm", digits: 0, description: "Hands above the crank axis." },
  },
  formula: "forward: bar clamp + reach − grip distance × sin back sweep; up: bar clamp + rise",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { rise = 0, "bar-reach": barReach = 0, "back-sweep": sweep = 0, "grip-distance": distance = 0 } = given;
    const wrong =
      notFinite({
        "bar-clamp-forward": given["bar-clamp-forward"],
        "bar-clamp-height": given["bar-clamp-height"],
        rise,
      }) ??
      negative({ "bar-reach": barReach, "grip-distance": distance }) ??
      notBetween(-181, 181, "°", { "back-sweep": sweep });
    if (wrong) return wrong;
    const back = distance * sine(sweep);
    const forward = given["bar-clamp-forward"] + barReach - back;
    const up = given["bar-clamp-height"] + rise;
    working?.step(
      `Forward: ${say(given["bar-clamp-forward"], "mm")} + ${say(barReach, "mm")} − ${say(distance, "mm")} × sin ${say(sweep, "°")} = ${say(forward, "mm")}`,
    );
    working?.step(`Up: ${say(given["bar-clamp-height"], "mm")} + ${say(rise, "mm")} = ${say(up, "mm")}`);
    return { "hands-forward": forward, "hands-height": up };
  },
  inBuild: [
    {
      assembly: "cockpit",
      needs: {
        forward: worked<number>("cockpit.bar-clamp-forward"),
        height: worked<number>("cockpit.bar-clamp-height"),
        shape: fact("cockpit.handlebar", "bar"),
        rise: optional(fact("cockpit.handlebar", "rise")),
        barReach: optional(fact("cockpit.handlebar", "reach")),
        sweep: optional(fact("cockpit.handlebar", "back-sweep")),
        straight: optional(fact("cockpit.handlebar", "control-length")),
        grips: optional(fact("cockpit.grips", "length")),
      },
      inputs: (facts) => {
        const clamp = { "bar-clamp-forward": facts.forward.value, "bar-clamp-height": facts.height.value };
        if (facts.shape.value === "drop") {
          const missing = missingOf(facts.barReach);
          return missing.length > 0 ? lacking(missing) : known({ ...clamp, "bar-reach": stated(facts.barReach) });
        }
        // A flat bar that states no rise has none; every other shape has to say.
        const flat = facts.shape.value === "flat" && facts.rise.state === "unknown";
        const swept = (stated(facts.sweep) ?? 0) !== 0;
        const missing = [
          ...(flat ? [] : missingOf(facts.rise)),
          ...missingOf(facts.sweep),
          ...(swept ? missingOf(facts.straight, facts.grips) : []),
        ];
        if (missing.length > 0) return lacking(missing);
        return known({
          ...clamp,
          rise: stated(facts.rise),
          "back-sweep": stated(facts.sweep),
          "grip-distance": Math.max(0, (stated(facts.straight) ?? 0) - (stated(facts.grips) ?? 0) / 2),
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        "bar-clamp-forward": 460,
        "bar-clamp-height": 640,
        rise: 20,
        "back-sweep": 30,
        "grip-distance": 200,
      },
      results: { "hands-forward": 360, "hands-height": 660 },
      source: "by hand: 200 × sin 30° back, 20 mm up",
    },
    {
      inputs: { "bar-clamp-forward": 470, "bar-clamp-height": 620, "bar-reach": 80 },
      results: { "hands-forward": 550, "hands-height": 620 },
      source: "by hand: a drop bar of 80 mm reach",
    },
  ],
});
