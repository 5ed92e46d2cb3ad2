import { defineKind } from "../define.ts";
import { code, length, torque } from "../fields.ts";

/** What the rider sits on. */
export const saddle = defineKind({
  name: "saddle",
  noun: "a saddle",
  description: "What the rider sits on.",
  fields: {
    rail: code("rail", "Section of its rails.", { essential: true, group: "Fit" }),
    "straight-rail-length": length("Straight length of rail that a clamp may use.", {
      group: "Fit",
      lowest: 30,
      highest: 150,
    }),
    height: length("From the rails' middle to its top where the rider sits.", {
      essential: true,
      group: "Geometry",
      lowest: 20,
      highest: 120,
    }),
    width: length("Greatest width.", { group: "Geometry", lowest: 80, highest: 320 }),
    length: length("From nose to tail.", { group: "Geometry", lowest: 150, highest: 350 }),
    "clamp-to-sitting": length("From the straight rail's middle back to where the rider sits, positive backward.", {
      group: "Geometry",
      lowest: -100,
      highest: 150,
    }),
    "clamp-to-tail": length("From the straight rail's middle back to its tail.", {
      group: "Geometry",
      lowest: 40,
      highest: 250,
      example: "135 mm",
    }),
    "tail-rise": length("From the rails' middle up to the underside of its tail; negative when that hangs lower.", {
      group: "Geometry",
      lowest: -40,
      highest: 80,
      example: "20 mm",
    }),
    "rail-clamp-torque": torque("Torque of a clamp on its rails that they bear.", { highest: 30 }),
  },
});
