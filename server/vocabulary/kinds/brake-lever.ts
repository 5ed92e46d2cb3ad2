import { defineKind } from "../define.ts";
import { code, codes, count, length, quantityRange, torque, word } from "../fields.ts";
import { brakeActuations, brakePulls, eitherSide, shiftActuations } from "../words.ts";

/** What the rider's hand squeezes to brake. */
export const brakeLever = defineKind({
  name: "brake-lever",
  noun: "a brake lever",
  description: "What the rider's hand squeezes to brake, with or without a shift control built into it.",
  caution:
    "Each brake is squeezed hard for ten seconds and looked over for leaks before anyone rides; never with the rotor out.",
  fields: {
    "brake-actuation": word(brakeActuations, "What it moves.", { essential: true, group: "Brakes" }),
    "hydraulic-family": code("hydraulic-family", "Which calipers it is made to be joined with.", { group: "Brakes" }),
    "brake-fluid": code("brake-fluid", "Fluid that it is filled with; fluids are never mixed.", { group: "Brakes" }),
    "brake-pull": word(brakePulls, "How much cable it pulls.", { group: "Brakes" }),
    "hose-fitting": code("hose-fitting", "Fitting that its hose port takes.", { group: "Brakes" }),
    "hose-exit": word(
      { inboard: "Toward the stem.", outboard: "Toward the bar's end.", "under-tape": "Along the bar under the tape." },
      "Where hose or cable leaves it.",
      { group: "Fit" },
    ),
    mount: code("control-clamp", "How it is held, usually a band of its own with its diameter.", {
      essential: true,
      group: "Fit",
    }),
    "clamp-offers": codes(
      "control-clamp",
      "Shared clamps that it offers to another control; `none` when it offers none.",
      {
        group: "Fit",
      },
    ),
    bars: word({ flat: "Flat and riser bars.", drop: "Drop bars.", any: "Either." }, "Bars that it is made for.", {
      group: "Fit",
    }),
    hand: word(eitherSide, "Hand that it is made for.", { group: "Fit" }),
    width: length("Length of bar that its band takes up.", { group: "Fit", lowest: 3, highest: 80 }),
    reach: quantityRange("length", "adjustable", "From the bar's middle to the blade, as far as it can be set.", {
      group: "Geometry",
      lowest: 30,
      highest: 140,
    }),
    "hood-reach": length("From the bar's clamp to the hollow of the hood, along the bar's top.", {
      group: "Geometry",
      highest: 120,
      omitted: "none",
    }),
    "clamp-torque": torque("Torque of its clamp bolt.", { essential: true, highest: 12, example: "4 to 6 N·m" }),
    "hose-torque": torque("Torque of the hose nut or banjo bolt.", { highest: 15 }),
    actuation: word(shiftActuations, "What the shift control built into it moves; `none` when it has none.", {
      group: "Control",
      omitted: "none",
      impliedBy: ["shift-family", "speeds", "pull-per-click", "power"],
    }),
    "shift-family": code("shift-family", "Which derailleurs its built-in shift control works with.", {
      group: "Control",
    }),
    speeds: count("Number of positions that its built-in shift control indexes; `none` when it has no clicks.", {
      group: "Gearing",
      lowest: 1,
      highest: 14,
    }),
    "pull-per-click": length("Cable pulled by one click of its built-in shift control, on average.", {
      group: "Control",
      lowest: 0.5,
      highest: 12,
    }),
    power: word(
      { "own-battery": "A battery of its own.", wired: "A wire from a shared battery." },
      "Where its built-in shift control gets its power.",
      { group: "Electronics", omitted: "none" },
    ),
    "battery-type": code("battery-type", "Battery that its built-in shift control takes.", {
      group: "Electronics",
      omitted: "none",
    }),
  },
});
