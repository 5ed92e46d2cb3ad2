import { defineKind } from "../define.ts";
import { code, length, quantity, word, yesNo } from "../fields.ts";

/** A tyre. */
export const tyre = defineKind({
  name: "tyre",
  noun: "a tyre",
  description: "A tyre, named by its section width and its bead seat.",
  caution: "Never inflated beyond the lower of tyre's and rim's limits; eyes are protected when beads are seated.",
  fields: {
    size: code("tyre-designation", "Section width and bead seat, such as 61-622.", {
      essential: true,
      group: "Fit",
      example: "61-622",
      source: "ISO 5775-1",
    }),
    construction: word(
      {
        tube: "For use with a tube.",
        "tubeless-ready": "For use with or without a tube, with sealant.",
        tubeless: "Airtight by itself.",
        tubular: "Sewn round its tube and glued on.",
        airless: "Without air.",
      },
      "What holds the air in.",
      { essential: true, group: "Fit" },
    ),
    "straight-side-approved": yesNo("Whether its maker approves it on tubeless straight-side rims.", { group: "Fit" }),
    bead: word({ wire: "A wire bead.", folding: "A folding bead." }, "Bead of the tyre.", { group: "Fit" }),
    "measured-width": length("Width as measured on the rim stated beside it.", {
      group: "Clearance",
      lowest: 15,
      highest: 140,
    }),
    "measured-on-rim": length("Inner width of the rim on which it was measured.", {
      group: "Clearance",
      lowest: 10,
      highest: 110,
    }),
    "measured-height": length("From bead seat to tread as measured on that rim.", {
      group: "Clearance",
      lowest: 12,
      highest: 140,
    }),
    "least-pressure": quantity("pressure", "Least pressure printed on it.", { group: "Limits", highest: 16 }),
    "greatest-pressure": quantity("pressure", "Greatest pressure printed on it.", {
      essential: true,
      group: "Limits",
      lowest: 0.5,
      highest: 18,
    }),
    "narrowest-rim": length("Narrowest rim, by inner width, that its maker allows.", {
      group: "Limits",
      lowest: 8,
      highest: 110,
    }),
    "widest-rim": length("Widest rim, by inner width, that its maker allows.", {
      group: "Limits",
      lowest: 8,
      highest: 110,
    }),
    directional: yesNo("Whether its tread has a direction.", { group: "Assembly" }),
    "load-limit": quantity("mass", "Greatest load on the tyre.", {
      group: "Limits",
      unit: "kg",
      lowest: 10_000,
      highest: 400_000,
    }),
  },
});
