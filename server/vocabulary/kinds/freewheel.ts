import { defineKind } from "../define.ts";
import { code, count, length, teeth, text, torque } from "../fields.ts";

/** Cogs with their own ratchet, screwed to the hub. */
export const freewheel = defineKind({
  name: "freewheel",
  noun: "a freewheel",
  description: "One or more cogs with a ratchet of their own that screw onto a threaded hub.",
  fields: {
    speeds: count("Number of cogs.", { lowest: 1, highest: 10, essential: true, group: "Gearing" }),
    cogs: teeth("Teeth of every cog, from the smallest to the largest.", {
      essential: true,
      group: "Gearing",
      example: "14-16-18-21-24-28 t",
    }),
    thread: code("freewheel-thread", "Thread by which it screws onto the hub.", { essential: true, group: "Fit" }),
    "drive-family": code("drive-family", "Roller and tooth family that chain, rings and cogs share.", { group: "Fit" }),
    "cog-pitch": length("Distance between the middles of neighbouring cogs.", { group: "Fit", lowest: 3, highest: 8 }),
    "stack-width": length("From the outer face of the smallest cog to the inner face of the largest.", {
      group: "Fit",
      lowest: 1,
      highest: 60,
    }),
    "remover-tool": text("Tool that takes it off.", { group: "Assembly" }),
    "mounting-torque": torque("Torque at which it is seated before pedalling tightens it further.", { highest: 80 }),
  },
});
