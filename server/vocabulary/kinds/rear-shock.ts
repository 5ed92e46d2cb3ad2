import { defineKind } from "../define.ts";
import { code, quantity, quantityRange, torque, word } from "../fields.ts";

/** Springs and damps the rear wheel. */
export const rearShock = defineKind({
  name: "rear-shock",
  noun: "a rear shock",
  description: "Springs and damps the rear end of a frame.",
  caution:
    "Air is let out of an air spring before it is opened; a shock of too long a stroke lets the tyre hit the frame.",
  fields: {
    size: code("shock-size", "Eye-to-eye length and stroke, such as 210x55.", { essential: true, group: "Suspension" }),
    "mount-body-end": code("shock-mount", "Mount at the end that carries the body.", {
      essential: true,
      group: "Suspension",
    }),
    "mount-shaft-end": code("shock-mount", "Mount at the end that carries the shaft.", {
      essential: true,
      group: "Suspension",
    }),
    spring: word({ air: "Air.", coil: "A steel coil." }, "What springs it.", { essential: true, group: "Suspension" }),
    "spring-rate": quantity("stiffness", "Rate of the coil that comes with it.", {
      group: "Suspension",
      highest: 250,
      omitted: "none",
    }),
    "greatest-air-pressure": quantity("pressure", "Greatest pressure of its air spring.", {
      group: "Limits",
      highest: 40,
      omitted: "none",
      impliedBy: ["spring"],
    }),
    "sag-range": quantityRange("ratio", "adjustable", "Sag that its maker asks for, as a share of stroke.", {
      group: "Suspension",
      lowest: 5,
      highest: 50,
    }),
    reservoir: word(
      { body: "A reservoir on the body.", remote: "A reservoir on a hose." },
      "Where its reservoir is; `none` when it has none.",
      { group: "Clearance", omitted: "none" },
    ),
    "bolt-torque": torque("Torque of its mounting bolts.", { highest: 40 }),
  },
});
