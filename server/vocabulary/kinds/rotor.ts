import { defineKind } from "../define.ts";
import { code, length, torque, word, words } from "../fields.ts";
import { padCompounds } from "../words.ts";

/** The brake disc. */
export const rotor = defineKind({
  name: "rotor",
  noun: "a rotor",
  description: "The disc on the hub that a caliper brakes.",
  caution: "A rotor burns and cuts, and brakes badly once touched with grease or fluid.",
  fields: {
    diameter: length("Outside diameter.", {
      essential: true,
      group: "Brakes",
      lowest: 100,
      highest: 260,
      example: "180 mm",
    }),
    mount: code("rotor-mount", "How it is fixed to the hub.", { essential: true, group: "Brakes" }),
    "lockring-tool": word(
      {
        inside: "A tool inside the lock-ring, as for cassettes.",
        outside: "A tool round the outside of the lock-ring.",
      },
      "Where its lock-ring's tool engages; a large axle needs the outside one.",
      { group: "Brakes", omitted: "none" },
    ),
    "greatest-axle-diameter": length("Largest axle end that passes its inside lock-ring.", {
      group: "Brakes",
      lowest: 5,
      highest: 40,
      omitted: "none",
    }),
    "pad-compounds": words(padCompounds, "Compounds of pad that its maker allows.", { group: "Limits" }),
    thickness: length("Thickness when new.", { group: "Brakes", lowest: 1, highest: 4, example: "1.8 mm" }),
    "least-thickness": length("Thickness at which it is replaced.", { group: "Limits", lowest: 0.8, highest: 3.5 }),
    "mounting-torque": torque("Torque of its bolts or lock-ring.", { essential: true, highest: 60 }),
  },
});
