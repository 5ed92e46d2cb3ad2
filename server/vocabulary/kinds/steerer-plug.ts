import { defineKind } from "../define.ts";
import { length, torque, word } from "../fields.ts";

/** What the top cap pulls on. */
export const steererPlug = defineKind({
  name: "steerer-plug",
  noun: "a steerer plug",
  description: "What the top cap pulls on inside the steerer to preload the headset.",
  caution: "A star nut never goes into a carbon steerer; a plug that backs up the clamp spans all of it.",
  fields: {
    "plug-type": word(
      { "star-nut": "A star nut driven in.", "expanding-plug": "A plug that expands.", glued: "A glued sleeve." },
      "Which of them it is.",
      { essential: true, group: "Fit" },
    ),
    "least-bore": length("Smallest inside diameter of steerer that it fits.", {
      group: "Fit",
      lowest: 10,
      highest: 40,
    }),
    "greatest-bore": length("Largest inside diameter of steerer that it fits.", {
      group: "Fit",
      lowest: 10,
      highest: 40,
    }),
    span: length("Length of steerer that it backs up.", { group: "Fit", highest: 150 }),
    "expander-torque": torque("Torque that expands it.", { highest: 15 }),
  },
});
