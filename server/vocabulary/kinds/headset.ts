import { defineKind } from "../define.ts";
import { angle, code, length, quantityRange, word, words } from "../fields.ts";

/** The steering bearings. */
export const headset = defineKind({
  name: "headset",
  noun: "a headset",
  description: "The steering bearings in the head tube, with their covers and compression ring.",
  caution: "Preload is set with the stem loose, then the stem's bolts are tightened in turns; no play may remain.",
  fields: {
    upper: code("headset-upper", "Upper fit and steerer, such as ZS44/28.6.", { essential: true, group: "Fit" }),
    lower: code("headset-lower", "Lower fit and crown-race seat, such as ZS56/40.", { essential: true, group: "Fit" }),
    "upper-stack": length(
      "Height above the head tube, cover included, where the first spacer or stem rests; of a threaded one up to the top of its locknut.",
      {
        essential: true,
        group: "Geometry",
        highest: 60,
      },
    ),
    "lower-stack": length("Height from the crown-race seat to the head tube's lower edge.", {
      essential: true,
      group: "Geometry",
      highest: 40,
    }),
    "locknut-gap": quantityRange(
      "length",
      "allowed",
      "How far below the top of its locknut its maker lets a threaded steerer end; left out, by common practice 1 to 4 mm.",
      { group: "Limits", highest: 15, omitted: "none", example: "1 to 3 mm" },
    ),
    "upper-bearing-angle": angle("Angle of the upper bearing's outer seat, such as 45 degrees.", {
      group: "Fit",
      lowest: 0,
      highest: 90,
    }),
    "lower-bearing-angle": angle("Angle of the lower bearing's outer seat.", { group: "Fit", lowest: 0, highest: 90 }),
    "compression-ring": word(
      { split: "A split ring.", keyed: "A ring for a keyed steerer." },
      "Ring that centres the steerer in the upper bearing.",
      { group: "Fit" },
    ),
    "plug-supplied": words(
      { "star-nut": "A star nut.", "expanding-plug": "An expanding plug." },
      "What it comes with to preload it from inside the steerer.",
      { group: "Fit", omitted: "none" },
    ),
    "routing-system": code("routing-system", "System of bar, stem, spacers and headset for hoses inside.", {
      group: "Fit",
      omitted: "none",
    }),
  },
});
