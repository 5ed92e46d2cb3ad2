import { buildField, fact, optional, setting, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, meaningless } from "../define.ts";
import { cosine, sine } from "../shared/angles.ts";
import { negative, notBetween, notFinite } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Spacers that bring the hands to a height. */
export default defineCalculation({
  name: "spacers-for-height",
  title: "Spacers for a height of the hands",
  description:
    "Spacers under the present stem that bring the hands to a wanted height, and how far they move backward by it.",
  inputs: {
    "hands-height": input(length("Hands above the crank axis now.")),
    "wanted-height": input(length("Wanted height of the hands above the crank axis.")),
    "spacers-below": input(length("Spacers under the stem now.")),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.")),
  },
  results: {
    "spacers-needed": {
      unit: "mm",
      digits: 1,
      description: "Spacers for the wanted height; below zero when spacers alone cannot bring it.",
    },
    "spacers-change": { unit: "mm", digits: 1, description: "Spacers to add, or to take out when negative." },
    "hands-move-back": { unit: "mm", digits: 1, description: "By how much the hands move backward then." },
  },
  formula: "change = (wanted − present height) ÷ sin head angle; the hands move back by change × cos head angle",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { "hands-height": now, "wanted-height": wanted, "spacers-below": spacers, "head-angle": headAngle } = given;
    const wrong =
      notFinite({ "hands-height": now, "wanted-height": wanted }) ??
      negative({ "spacers-below": spacers }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    const change = (wanted - now) / sine(headAngle);
    const back = change * cosine(headAngle);
    working?.step(
      `Change: (${say(wanted, "mm")} − ${say(now, "mm")}) ÷ sin ${say(headAngle, "°")} = ${say(change, "mm")}`,
    );
    working?.step(`Spacers: ${say(spacers, "mm")} + ${say(change, "mm")} = ${say(spacers + change, "mm")}`);
    working?.step(`Back: ${say(change, "mm")} × cos ${say(headAngle, "°")} = ${say(back, "mm")}`);
    return { "spacers-needed": spacers + change, "spacers-change": change, "hands-move-back": back };
  },
  inBuild: [
    {
      assembly: "cockpit",
      needs: {
        now: worked<number>("cockpit.hands-height"),
        wanted: buildField("fit.grip-stack"),
        clamping: optional(fact("cockpit.stem", "clamping")),
        spacers: optional(setting("cockpit.stem", "spacers-below")),
        headAngle: fact("frame", "head-angle"),
      },
      inputs: ({ now, wanted, clamping, spacers, headAngle }) => {
        if (clamping.state === "known" && clamping.value === "quill") {
          return meaningless("a quill is set higher or lower in its steerer, without spacers");
        }
        if (spacers.state === "unknown") return lacking(spacers.missing);
        if (spacers.state === "none") return meaningless("the stem stands on no spacers");
        return known({
          "hands-height": now.value,
          "wanted-height": wanted.value,
          "spacers-below": spacers.value,
          "head-angle": headAngle.value,
        });
      },
    },
  ],
  examples: [
    {
      inputs: { "hands-height": 631.67766, "wanted-height": 622.11461, "spacers-below": 20, "head-angle": 73 },
      results: { "spacers-needed": 10, "spacers-change": -10, "hands-move-back": -2.92372 },
      source: "worked independently: 10 mm of spacer at 73° are 9.56305 mm of height and 2.92372 mm of reach",
    },
    {
      inputs: { "hands-height": 600, "wanted-height": 610, "spacers-below": 5, "head-angle": 90 },
      results: { "spacers-needed": 15, "spacers-change": 10, "hands-move-back": 0 },
      source: "by hand on an upright steering axis",
    },
  ],
});
