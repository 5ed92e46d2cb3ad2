import { length, slotReference, word } from "../fields.ts";
import { sides } from "../words.ts";

/** How anything that a hand works is installed on the bar. */
export const controlSettings = {
  clamp: slotReference(
    "Slot whose clamp it shares, such as `rear-brake.lever`; left out or `none`, it uses a band of its own on the bar.",
    { group: "Fit", omitted: "none", example: "rear-brake.lever" },
  ),
  side: word(sides, "Hand that works it.", { group: "Fit" }),
  position: length("From the inner end of the grip, or the bend of a drop bar, to the clamp's middle.", {
    group: "Set-up",
    highest: 300,
  }),
} as const;

/** How a brake lever is installed. */
export const leverSettings = {
  side: word(sides, "Hand that works it; law and habit differ by country.", { group: "Fit", essential: true }),
  position: length("From the inner end of the grip, or the bend of a drop bar, to the clamp's middle.", {
    group: "Set-up",
    highest: 300,
  }),
  "reach-set": length("From the bar's middle to the blade, as set for the rider.", {
    group: "Set-up",
    lowest: 30,
    highest: 140,
  }),
} as const;
