import { defineKind } from "../define.ts";
import { code, quantityRange, torque, word, yesNo } from "../fields.ts";
import { brakeActuations, brakePulls } from "../words.ts";

/** Presses blocks on the rim. */
export const rimBrake = defineKind({
  name: "rim-brake",
  noun: "a rim brake",
  description: "Presses rubber blocks against the rim.",
  caution: "Blocks toe the rim and never the tyre; each brake is tested alone before anyone rides.",
  fields: {
    mount: code("brake-mount", "What it is fixed to: bosses, or a bolt through the crown or bridge.", {
      essential: true,
      group: "Brakes",
    }),
    arms: word(
      {
        cantilever: "Cantilevers on bosses, pulled up by a straddle cable.",
        "direct-pull": "Long direct-pull arms on bosses.",
        "dual-pivot": "A caliper with two pivots.",
        "single-pivot": "A caliper with one pivot.",
        "direct-mount": "A caliper on two bolts.",
      },
      "Kind of arms.",
      { essential: true, group: "Brakes" },
    ),
    "brake-actuation": word(brakeActuations, "What moves it.", { group: "Brakes" }),
    "brake-pull": word(brakePulls, "How much cable it needs.", { essential: true, group: "Brakes" }),
    "hydraulic-family": code("hydraulic-family", "Which levers it is made to be joined with.", {
      group: "Brakes",
      omitted: "none",
    }),
    "brake-fluid": code("brake-fluid", "Fluid that it is filled with.", { group: "Brakes", omitted: "none" }),
    reach: quantityRange("length", "adjustable", "From the mounting bolt down to the middle of the blocks.", {
      group: "Brakes",
      lowest: 20,
      highest: 120,
    }),
    "cable-stop-needed": yesNo("Whether it needs a cable stop on the frame or fork.", {
      group: "Brakes",
      omitted: "none",
    }),
    "mounting-torque": torque("Torque of its mounting bolts.", { highest: 20 }),
    "pad-bolt-torque": torque("Torque of the bolts that hold the blocks.", { highest: 15 }),
    "cable-bolt-torque": torque("Torque of the bolt that holds the cable.", { highest: 15 }),
  },
});
