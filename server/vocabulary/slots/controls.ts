import { length, slotReference, word } from "../fields.ts";
import { sides } from "../words.ts";

/** How anything that a hand works is installed on the bar. */
export const controlSettings = {
  clamp: slotReference(
    "Slot whose clamp it shares, such as `rear-brake.lever`; left out or `none`, it uses a band of its own on the bar.",
    {
      group: "Fit",
      omitted: "none",
      example: "rear-brake.lever",
      deed: { none: "Fit it with a band of its own", otherwise: "Mount it on the clamp of {}" },
    },
  ),
  side: word(sides, "Hand that works it.", {
    group: "Fit",
    deed: { left: "Fit it for the left hand", right: "Fit it for the right hand" },
  }),
  position: length("From the inner end of the grip, or the bend of a drop bar, to the clamp's middle.", {
    group: "Set-up",
    highest: 300,
    deed: "Clamp it {} from the grip",
  }),
} as const;

/** How a brake lever is installed. */
export const leverSettings = {
  side: word(sides, "Hand that works it; law and habit differ by country.", {
    group: "Fit",
    essential: true,
    deed: { left: "Fit it for the left hand", right: "Fit it for the right hand" },
  }),
  position: length("From the inner end of the grip, or the bend of a drop bar, to the clamp's middle.", {
    group: "Set-up",
    highest: 300,
    deed: "Clamp it {} from the grip",
  }),
  "reach-set": length("From the bar's middle to the blade, as set for the rider.", {
    group: "Set-up",
    lowest: 30,
    highest: 140,
    deed: "Set the reach to {}",
  }),
} as const;
