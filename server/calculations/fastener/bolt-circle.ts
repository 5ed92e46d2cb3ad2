import { count, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, optionalInput, unusable } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** A bolt circle from what a caliper reaches, and the other way round. */
export default defineCalculation({
  name: "bolt-circle",
  title: "Bolt circle",
  description:
    "Diameter of a circle of evenly spread bolts from the distance between two neighbours, or the distances from the diameter.",
  inputs: {
    bolts: input(count("Number of bolts.", { lowest: 2, highest: 24 })),
    "bolt-circle": optionalInput(length("Diameter of the circle through their middles; give this or the distance.")),
    "adjacent-distance": optionalInput(length("Between the middles of two neighbours.")),
  },
  results: {
    "bolt-circle-diameter": { unit: "mm", digits: 2, description: "Diameter of the circle." },
    "adjacent-bolts": { unit: "mm", digits: 2, description: "Between the middles of two neighbours." },
    "next-but-one-bolts": { unit: "mm", digits: 2, description: "Between the middles of two with one between them." },
  },
  formula: "distance = diameter × sin(180° ÷ bolts); next but one: × sin(360° ÷ bolts)",
  source: "plane geometry",
  compute({ bolts, "bolt-circle": circle, "adjacent-distance": distance }, working) {
    const wrong = notPositive({ bolts, "bolt-circle": circle, "adjacent-distance": distance });
    if (wrong) return wrong;
    if (bolts < 2 || !Number.isInteger(bolts)) return unusable("A circle needs two bolts or more.");
    const sin = Math.sin(Math.PI / bolts);
    if (circle === undefined && distance === undefined) {
      return unusable("Give either bolt-circle or adjacent-distance.");
    }
    if (circle !== undefined && distance !== undefined) {
      return unusable("Give either bolt-circle or adjacent-distance, not both.");
    }
    const diameter = circle ?? (distance as number) / sin;
    if (circle === undefined) {
      working?.step(`Diameter: ${say(distance as number, "mm")} ÷ sin(180° ÷ ${bolts}) = ${say(diameter, "mm")}`);
    }
    const adjacent = diameter * sin;
    const nextButOne = diameter * Math.sin((2 * Math.PI) / bolts);
    working?.step(`Neighbours: ${say(diameter, "mm")} × sin(180° ÷ ${bolts}) = ${say(adjacent, "mm")}`);
    if (bolts > 2) {
      working?.step(`Next but one: ${say(diameter, "mm")} × sin(360° ÷ ${bolts}) = ${say(nextButOne, "mm")}`);
    }
    return {
      "bolt-circle-diameter": diameter,
      "adjacent-bolts": adjacent,
      ...(bolts > 2 ? { "next-but-one-bolts": nextButOne } : {}),
    };
  },
  examples: [
    {
      inputs: { bolts: 5, "bolt-circle": 110 },
      results: { "adjacent-bolts": 64.65638 },
      source: "worked independently: 110 × sin 36°",
    },
    {
      inputs: { bolts: 6, "bolt-circle": 44 },
      results: { "adjacent-bolts": 22, "next-but-one-bolts": 38.10512 },
      source: "six-bolt rotor on 44 mm (from memory): a hexagon's side is half its diameter",
    },
    {
      inputs: { bolts: 4, "adjacent-distance": 73.53911 },
      results: { "bolt-circle-diameter": 104 },
      source: "worked independently: 73.53911 × √2",
    },
  ],
});
