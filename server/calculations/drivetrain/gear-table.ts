import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, optionalInput } from "../define.ts";
import { cogsField, gearOverlaps, gearRange, gearSteps, gearsOf, ringsField } from "../shared/gears.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/**
 * Everything about the gears at once, for a person with a pencil. A build gets the same numbers from `gear-ratios`,
 * `gear-developments` and `gain-ratios`, each of which is unknown by itself when its own facts are missing.
 */
export default defineCalculation({
  name: "gear-table",
  title: "Gear table",
  description:
    "Ratio, development, gear inches, gain ratio and speed of every gear, with steps, range and shared gears; what needs the wheel, the crank or a cadence is given when that is stated.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    "wheel-circumference": optionalInput(length("Circumference of the driven wheel over its tyre.")),
    "wheel-diameter": optionalInput(
      length("Diameter of the driven wheel over its tyre, when its circumference is not at hand."),
    ),
    "crank-length": optionalInput(length("From the middle of the spindle to the middle of the pedal axle.")),
    cadence: optionalInput(quantity("cadence", "Turns of the cranks in a minute.", { lowest: 1, highest: 300 })),
  },
  results: {
    gears: { unit: "", digits: 0, list: true, description: "Ring × cog of every gear: the order of all the lists." },
    ratios: { unit: "", digits: 3, list: true, description: "Turns of the wheel for one turn of the cranks." },
    developments: { unit: "m", digits: 2, list: true, description: "Distance for one turn of the cranks." },
    "gear-inches": { unit: "in", digits: 1, list: true, description: "Wheel diameter that would go as far ungeared." },
    "gain-ratios": { unit: "", digits: 2, list: true, description: "Way of the bicycle over way of the pedal." },
    speeds: { unit: "km/h", digits: 1, list: true, description: "Speed at the cadence." },
    steps: {
      unit: "%",
      digits: 1,
      list: true,
      description: "Step from each gear to the next higher one on the same ring, largest cog to smallest.",
    },
    overlaps: {
      unit: "",
      digits: 0,
      list: true,
      description: "For each ring and the next larger one, how many of the larger ring's gears both serve.",
    },
    range: { unit: "%", digits: 1, description: "Highest gear over the lowest." },
  },
  formula:
    "ratio = ring ÷ cog; development = circumference × ratio; gear inches = circumference ÷ π in inches × ratio; gain ratio = wheel radius ÷ crank length × ratio; speed = development × cadence × 0.06",
  source: "Wikipedia, Gear inches; 16 CFR 1512.5, footnote on gear development; gain ratio from memory",
  compute(inputs, working) {
    const { rings, cogs, cadence, "crank-length": crank, "wheel-diameter": diameter } = inputs;
    const wrong =
      notTeeth({ rings, cogs }) ??
      notPositive({
        "wheel-circumference": inputs["wheel-circumference"],
        "wheel-diameter": diameter,
        "crank-length": crank,
        cadence,
      });
    if (wrong) return wrong;
    const circumference = inputs["wheel-circumference"] ?? (diameter === undefined ? undefined : Math.PI * diameter);
    if (diameter !== undefined && inputs["wheel-circumference"] === undefined) {
      working?.step(`Wheel circumference: π × ${say(diameter, "mm")} = ${say(circumference as number, "mm", 1)}`);
    }
    const gears = gearsOf(rings, cogs);
    const developments = circumference && gears.map(({ ratio }) => (circumference * ratio) / 1000);
    const inches = circumference && gears.map(({ ratio }) => (circumference / (25.4 * Math.PI)) * ratio);
    const gains =
      circumference && crank ? gears.map(({ ratio }) => (circumference / (2 * Math.PI * crank)) * ratio) : undefined;
    const speeds = developments && cadence ? developments.map((metres) => metres * cadence * 0.06) : undefined;
    if (working) {
      gears.forEach(({ name, ring, cog, ratio }, at) => {
        const parts = [`${name}: ratio ${ring} ÷ ${cog} = ${say(ratio)}`];
        if (developments) parts.push(`development ${say(developments[at] as number, "m")}`);
        if (inches) parts.push(`${say(inches[at] as number, "gear inches", 1)}`);
        if (gains) parts.push(`gain ratio ${say(gains[at] as number)}`);
        if (speeds) parts.push(`${say(speeds[at] as number, "km/h", 1)} at ${say(cadence as number, "rpm")}`);
        working.step(parts.join("; "));
      });
      working.step(
        `Steps on a ring: ${
          gearSteps(cogs)
            .map((step) => say(step, "%", 1))
            .join(", ") || "none"
        }`,
      );
      working.step(`Gears that two rings share: ${gearOverlaps(rings, cogs).join(", ") || "none, for a single ring"}`);
      working.step(`Range: highest ÷ lowest = ${say(gearRange(gears), "%", 1)}`);
    }
    return {
      gears: gears.map(({ name }) => name),
      ratios: gears.map(({ ratio }) => ratio),
      ...(developments ? { developments } : {}),
      ...(inches ? { "gear-inches": inches } : {}),
      ...(gains ? { "gain-ratios": gains } : {}),
      ...(speeds ? { speeds } : {}),
      steps: gearSteps(cogs),
      overlaps: gearOverlaps(rings, cogs),
      range: gearRange(gears),
    };
  },
  examples: [
    {
      inputs: { rings: [50], cogs: [17], "wheel-circumference": 2105, "crank-length": 172.5, cadence: 90 },
      results: {
        gears: ["50×17"],
        ratios: [2.941176],
        developments: [6.191176],
        "gear-inches": [77.58711],
        "gain-ratios": [5.712211],
        speeds: [33.43235],
        steps: [],
        range: 100,
      },
      source: "worked independently by script from the definitions",
    },
    {
      inputs: { rings: [32], cogs: [51], "wheel-circumference": 2300, "crank-length": 175, cadence: 80 },
      results: {
        ratios: [0.627451],
        developments: [1.443137],
        "gear-inches": [18.08523],
        "gain-ratios": [1.312471],
        speeds: [6.92706],
      },
      source: "worked independently by script from the definitions",
    },
    {
      inputs: { rings: [48], cogs: [24], "wheel-diameter": 26 * 25.4 },
      results: { "gear-inches": [52] },
      source: "Wikipedia, Gear inches: a 26 in wheel with 48/24 gives 52",
    },
  ],
});
