import { defineKind } from "../define.ts";
import { code, codes, count, length, quantity, quantityRange, torque, word } from "../fields.ts";
import { eitherSide, shiftActuations } from "../words.ts";

/** What the rider moves to change gear. */
export const shiftController = defineKind({
  name: "shift-controller",
  noun: "a shift controller",
  description: "What the rider's hand moves to change gear: by cable or by electric signal.",
  fields: {
    actuation: word(shiftActuations, "What it moves.", { essential: true, group: "Control" }),
    "shift-family": code("shift-family", "Which derailleurs and gear hubs it works with.", {
      essential: true,
      group: "Control",
    }),
    speeds: count("Number of positions it indexes; rings for a front one.", {
      essential: true,
      lowest: 1,
      highest: 14,
      group: "Gearing",
    }),
    "pull-per-click": quantity("length", "Cable pulled by one click, on average.", {
      group: "Control",
      lowest: 0.5,
      highest: 12,
      example: "3.6 mm",
    }),
    mount: code("control-clamp", "How it is held: a band of its own, a clamp shared with the lever, or built in.", {
      essential: true,
      group: "Fit",
    }),
    "clamp-offers": codes("control-clamp", "Shared clamps that it offers to another control.", {
      group: "Fit",
      omitted: "none",
    }),
    hand: word(eitherSide, "Hand that it is made for.", { group: "Fit" }),
    width: length("Length of bar that its own band takes up; `none` for one that shares a clamp.", {
      group: "Fit",
      lowest: 3,
      highest: 80,
    }),
    "clamp-torque": torque("Torque of the bolt of its band, or of its own bolt in the clamp that it shares.", {
      essential: true,
      highest: 12,
      example: "2 to 3 N·m",
    }),
    power: word(
      { "own-battery": "A battery of its own.", wired: "A wire from a shared battery." },
      "Where it gets its power; `none` when it works by cable.",
      { group: "Electronics" },
    ),
    "battery-type": code("battery-type", "Battery that it takes.", { group: "Electronics", omitted: "none" }),
    "pairing-window": quantityRange("time", "tolerance", "How long it waits to be paired.", {
      group: "Set-up",
      lowest: 5,
      highest: 600,
      omitted: "none",
    }),
  },
});
