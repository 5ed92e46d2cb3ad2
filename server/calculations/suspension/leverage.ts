import { fact } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, meaningless } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { shockSize } from "../shared/shock-size.ts";

/** How much farther the wheel moves than the shock. */
export default defineCalculation({
  name: "leverage",
  title: "Average leverage of a rear suspension",
  description: "Travel of the rear wheel for each millimetre of the shock's stroke, on average over all of it.",
  inputs: {
    "rear-travel": input(length("Vertical travel of the rear axle.")),
    stroke: input(length("Stroke of the shock.")),
  },
  results: { leverage: { unit: "", digits: 3, description: "Average leverage." } },
  formula: "travel ÷ stroke",
  source: "definition; trade magazines quote it with one decimal",
  compute({ "rear-travel": travel, stroke }, working) {
    const wrong = notPositive({ "rear-travel": travel, stroke });
    if (wrong) return wrong;
    working?.step(`${say(travel, "mm")} ÷ ${say(stroke, "mm")} = ${say(travel / stroke)}`);
    return { leverage: travel / stroke };
  },
  inBuild: [
    {
      assembly: "suspension",
      needs: { travel: fact("frame", "rear-travel"), size: fact("rear-shock", "size") },
      inputs: ({ travel, size }) => {
        const shock = shockSize(size.value);
        if (!shock) return meaningless(`${size.written} does not say a stroke`);
        return known({ "rear-travel": travel.value, stroke: shock.stroke });
      },
    },
  ],
  examples: [
    {
      inputs: { "rear-travel": 160, stroke: 57 },
      results: { leverage: 2.807018 },
      source: "trade magazine of 2023: 2.8 for 160 mm on a 57 mm stroke",
    },
    {
      inputs: { "rear-travel": 90, stroke: 42.5 },
      results: { leverage: 2.117647 },
      source: "trade magazine of 2023: 2.1 for 90 mm on a 42.5 mm stroke",
    },
  ],
});
