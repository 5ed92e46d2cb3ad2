import { defineKind } from "../define.ts";
import { code, length, quantityRange, torque, word, words } from "../fields.ts";
import { brakeActuations, brakePulls, padCompounds } from "../words.ts";

/** Presses pads on a rotor. */
export const caliper = defineKind({
  name: "caliper",
  noun: "a disc-brake caliper",
  description: "Presses brake pads against a rotor.",
  caution:
    "Rotors burn and cut; brake fluid harms eyes, skin and paint; each brake is tested alone before anyone rides.",
  fields: {
    mount: code("brake-mount", "What it is fixed to.", { essential: true, group: "Brakes" }),
    "brake-actuation": word(brakeActuations, "What moves it.", { essential: true, group: "Brakes" }),
    "hydraulic-family": code("hydraulic-family", "Which levers it is made to be joined with.", { group: "Brakes" }),
    "brake-fluid": code("brake-fluid", "Fluid that it is filled with; fluids are never mixed.", { group: "Brakes" }),
    "brake-pull": word(brakePulls, "How much cable it needs.", { group: "Brakes" }),
    "hose-fitting": code("hose-fitting", "Fitting that its hose port takes.", { group: "Brakes" }),
    "pad-shape": code("pad-shape", "Shape of pad that it takes.", { group: "Brakes" }),
    "rotor-thickness": quantityRange("length", "allowed", "Thickness of rotor, new, that it takes.", {
      group: "Brakes",
      lowest: 1,
      highest: 4,
      example: "1.8 to 2 mm",
    }),
    "largest-rotor": length("Largest rotor that it clears.", { group: "Brakes", lowest: 100, highest: 260 }),
    "smallest-rotor": length("Smallest rotor that it reaches.", { group: "Brakes", lowest: 100, highest: 260 }),
    pistons: word({ two: "Two pistons.", four: "Four pistons.", six: "Six pistons." }, "Number of pistons.", {
      group: "Brakes",
    }),
    "bolt-length": length("Length of the mounting bolts that come with it.", {
      group: "Brakes",
      lowest: 8,
      highest: 80,
    }),
    "bolt-grip": quantityRange("length", "allowed", "Thickness of frame or adapter that its bolts clamp.", {
      group: "Brakes",
      lowest: 3,
      highest: 60,
    }),
    "mounting-torque": torque("Torque of its mounting bolts.", { essential: true, highest: 20, example: "6 to 8 N·m" }),
    "hose-torque": torque("Torque of the hose nut or banjo bolt.", { highest: 15 }),
    "cable-bolt-torque": torque("Torque of the bolt that holds the cable.", { highest: 15 }),
    "pad-compounds": words(padCompounds, "Compounds of pad that its maker allows.", { group: "Limits" }),
  },
});
