import { length, number, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** One pound-force per inch, in newtons per millimetre. */
const poundPerInch = 4.4482216152605 / 25.4;

/** The coil for a rider. */
export default defineCalculation({
  name: "spring-rate",
  title: "Spring rate of a coil shock",
  description:
    "Rate of the coil that gives a sag under the load on the rear wheel, preload aside, and the rate at the wheel.",
  inputs: {
    "wheel-load": input(quantity("force", "Sprung load on the rear wheel.", { lowest: 1 })),
    leverage: input(
      number("Leverage at sag: travel of the wheel for each millimetre of stroke.", { lowest: 0.1, highest: 10 }),
    ),
    "shock-sag": input(length("How far the shock is to be pressed in.")),
  },
  results: {
    "shock-force": { unit: "N", digits: 0, description: "Force on the shock at sag." },
    "spring-rate": { unit: "N/mm", digits: 1, description: "Rate of the coil." },
    "spring-rate-inch": {
      unit: "lb/in",
      digits: 0,
      description: "The same in pounds-force per inch, as coils are marked.",
    },
    "wheel-rate": { unit: "N/mm", digits: 2, description: "Rate felt at the wheel." },
  },
  formula: "rate = load × leverage ÷ shock sag; wheel rate = rate ÷ leverage²",
  source: "statics of a lever, re-derived",
  compute({ "wheel-load": load, leverage, "shock-sag": sag }, working) {
    const wrong = notPositive({ "wheel-load": load, leverage, "shock-sag": sag });
    if (wrong) return wrong;
    const force = load * leverage;
    const rate = force / sag;
    const wheel = rate / leverage ** 2;
    working?.step(`Force on the shock: ${say(load, "N")} × ${say(leverage)} = ${say(force, "N")}`);
    working?.step(
      `Rate: ${say(force, "N")} ÷ ${say(sag, "mm")} = ${say(rate, "N/mm")} = ${say(rate / poundPerInch, "lb/in", 1)}`,
    );
    working?.step(`At the wheel: ${say(rate, "N/mm")} ÷ ${say(leverage)}² = ${say(wheel, "N/mm")}`);
    return {
      "shock-force": force,
      "spring-rate": rate,
      "spring-rate-inch": rate / poundPerInch,
      "wheel-rate": wheel,
    };
  },
  examples: [
    {
      inputs: { "wheel-load": 520, leverage: 2.7, "shock-sag": 19.5 },
      results: { "shock-force": 1404, "spring-rate": 72, "spring-rate-inch": 411.1307, "wheel-rate": 9.87654 },
      source: "worked independently by script",
    },
    {
      inputs: { "wheel-load": 600, leverage: 3, "shock-sag": 18 },
      results: { "spring-rate": 100, "wheel-rate": 11.111111 },
      source: "worked by hand: 1800 ÷ 18, then ÷ 9",
    },
  ],
});
