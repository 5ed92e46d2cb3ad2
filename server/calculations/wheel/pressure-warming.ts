import { quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input } from "../define.ts";
import { negative } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Pressure of the air outside, and zero of the Celsius scale above absolute zero. */
const atmosphere = 1.01325;
const celsiusZero = 273.15;

/** What warming does to a tyre's pressure. */
export default defineCalculation({
  name: "pressure-warming",
  title: "Tyre pressure at another temperature",
  description: "Pressure that a gauge shows after the air in a tyre has warmed or cooled, its volume unchanged.",
  inputs: {
    pressure: input(quantity("pressure", "Pressure that the gauge shows now.")),
    temperature: input(quantity("temperature", "Temperature now.", { lowest: -60, highest: 150 })),
    "other-temperature": input(quantity("temperature", "The other temperature.", { lowest: -60, highest: 150 })),
  },
  results: { "other-pressure": { unit: "bar", digits: 2, description: "Pressure that the gauge shows then." } },
  formula: "(gauge + 1.01325 bar) × absolute temperature then ÷ absolute temperature now − 1.01325 bar",
  source: "Gay-Lussac's law for a fixed volume; standard atmosphere of 1.01325 bar",
  compute({ pressure, temperature, "other-temperature": other }, working) {
    const wrong = negative({
      pressure,
      temperature: temperature + celsiusZero,
      "other-temperature": other + celsiusZero,
    });
    if (wrong) return wrong;
    if (temperature + celsiusZero === 0) return impossible("No gas is left at absolute zero.");
    const factor = (other + celsiusZero) / (temperature + celsiusZero);
    const then = (pressure + atmosphere) * factor - atmosphere;
    working?.step(
      `(${say(pressure)} + ${atmosphere}) × ${say(other + celsiusZero)} ÷ ${say(temperature + celsiusZero)} − ${atmosphere} = ${say(then, "bar")}`,
    );
    return { "other-pressure": then };
  },
  examples: [
    {
      inputs: { pressure: 5, temperature: 20, "other-temperature": 40 },
      results: { "other-pressure": 5.41025 },
      source: "worked independently: 6.01325 × 313.15 ÷ 293.15 − 1.01325",
    },
    {
      inputs: { pressure: 2, temperature: 26.85, "other-temperature": -23.15 },
      results: { "other-pressure": 1.4977917 },
      source: "worked by hand: 3.01325 × 250 ÷ 300 − 1.01325",
    },
  ],
});
