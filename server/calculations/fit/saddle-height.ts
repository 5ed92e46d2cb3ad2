import { buildField, fact } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, optionalInput } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Saddle heights to begin with, from the rider's inseam. */
export default defineCalculation({
  name: "saddle-height",
  title: "Saddle height from the inseam",
  description: "Two published formulas for a saddle height to begin with; the rider's knee and comfort decide.",
  inputs: {
    inseam: input(length("From the floor to the crotch, without shoes.", { lowest: 200, highest: 1300 })),
    "crank-length": optionalInput(length("From the middle of the spindle to the middle of the pedal axle.")),
  },
  results: {
    "saddle-height-by-crank-axis": {
      unit: "mm",
      digits: 0,
      description: "From crank axis to saddle top along the seat tube: 0.883 × inseam.",
    },
    "saddle-height-by-pedal": {
      unit: "mm",
      digits: 0,
      description: "From the pedal axle, crank down in line with the seat tube, to saddle top: 1.09 × inseam.",
    },
    "saddle-height-by-pedal-less-crank": {
      unit: "mm",
      digits: 0,
      description: "The second less the crank's length, so that it compares with the first.",
    },
  },
  formula: "0.883 × inseam from the crank axis; 1.09 × inseam from the pedal axle",
  source:
    "Peveler, Bishop, Smith, Richardson and Whitehorn (2005), JEPonline 8(1), 51-55; 1.09 after Hamley and Thomas (1967)",
  compute({ inseam, "crank-length": crank }, working) {
    const wrong = notPositive({ inseam, "crank-length": crank });
    if (wrong) return wrong;
    const byAxis = 0.883 * inseam;
    const byPedal = 1.09 * inseam;
    working?.step(`From the crank axis: 0.883 × ${say(inseam, "mm")} = ${say(byAxis, "mm")}`);
    working?.step(`From the pedal axle: 1.09 × ${say(inseam, "mm")} = ${say(byPedal, "mm")}`);
    if (crank !== undefined) {
      working?.step(
        `The same from the crank axis: ${say(byPedal, "mm")} − ${say(crank, "mm")} = ${say(byPedal - crank, "mm")}`,
      );
    }
    return {
      "saddle-height-by-crank-axis": byAxis,
      "saddle-height-by-pedal": byPedal,
      ...(crank === undefined ? {} : { "saddle-height-by-pedal-less-crank": byPedal - crank }),
    };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: { inseam: buildField("rider.inseam"), crank: fact("drivetrain.crankset", "crank-length") },
      inputs: ({ inseam, crank }) => known({ inseam: inseam.value, "crank-length": crank.value }),
    },
  ],
  examples: [
    {
      inputs: { inseam: 780, "crank-length": 172.5 },
      results: {
        "saddle-height-by-crank-axis": 688.74,
        "saddle-height-by-pedal": 850.2,
        "saddle-height-by-pedal-less-crank": 677.7,
      },
      source: "formulas of Peveler et al. (2005), worked by hand",
    },
    {
      inputs: { inseam: 830 },
      results: { "saddle-height-by-crank-axis": 732.89, "saddle-height-by-pedal": 904.7 },
      source: "formulas of Peveler et al. (2005), worked by hand",
    },
  ],
});
