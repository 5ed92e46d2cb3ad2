import { defineKind } from "../define.ts";
import { code, length, torque, word } from "../fields.ts";
import { axleSeats, wheelPositions } from "../words.ts";

/** A screwed axle. */
export const thruAxle = defineKind({
  name: "thru-axle",
  noun: "a thru axle",
  description: "An axle pushed through dropouts and hub and screwed tight.",
  caution: "Seated on both sides and tightened to its torque; a wheel that comes loose throws the rider.",
  fields: {
    axle: code("axle", "Axle standard, with its width.", { essential: true, group: "Fit" }),
    wheel: word(wheelPositions, "Wheel that it is made for, where it is for one only.", {
      group: "Fit",
      omitted: "none",
    }),
    "axle-length": length("Length under the head, thread included.", {
      essential: true,
      group: "Fit",
      lowest: 80,
      highest: 260,
    }),
    "axle-thread-pitch": length("Thread pitch.", {
      essential: true,
      group: "Fit",
      lowest: 0.5,
      highest: 2.5,
      example: "1.5 mm",
    }),
    "axle-seat": word(axleSeats, "Shape under its head.", { essential: true, group: "Fit" }),
    "axle-torque": torque("Torque at which it is tightened.", { essential: true, highest: 60 }),
  },
});
