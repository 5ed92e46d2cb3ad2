import { defineKind } from "../define.ts";
import { code, length, torque } from "../fields.ts";

/** A piece that turns one derailleur mount into another. */
export const derailleurAdapter = defineKind({
  name: "derailleur-adapter",
  noun: "a derailleur adapter",
  description: "A link or piece that sits on one derailleur mount and offers another, or moves it.",
  fields: {
    "sits-on": code("derailleur-mount", "Mount that it is fixed to.", { essential: true, group: "Fit" }),
    offers: code("derailleur-mount", "Mount that it offers to the derailleur.", { essential: true, group: "Fit" }),
    drop: length("How much lower the derailleur hangs on it.", { group: "Geometry", lowest: -20, highest: 60 }),
    "mounting-torque": torque("Torque of its own bolt."),
    "derailleur-torque": torque("Torque of a derailleur in its thread."),
  },
});
