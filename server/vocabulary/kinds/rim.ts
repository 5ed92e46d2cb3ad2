import { defineKind } from "../define.ts";
import { code, count, length, quantity, words, yesNo } from "../fields.ts";
import { forbiddenThings } from "../words.ts";

/** The outside of a wheel. */
export const rim = defineKind({
  name: "rim",
  noun: "a rim",
  description: "The hoop of a wheel that carries the tyre.",
  caution: "Pressure and spoke tension above the rim's own limits break it; a worn brake track bursts under pressure.",
  fields: {
    "bead-seat": code("bead-seat", "Bead seat, whose diameter the tyre has to share exactly.", {
      essential: true,
      group: "Fit",
      example: "622",
    }),
    "inner-width": length("Width between the bead walls; `none` for a rim that tubulars are glued to.", {
      essential: true,
      group: "Fit",
      lowest: 10,
      highest: 110,
    }),
    "rim-kind": code(
      "rim-kind",
      "Kind by ISO 5775-2: straight side or crotchet, tubeless or not; `tubular` where tyres are glued on.",
      {
        essential: true,
        group: "Fit",
        source: "ISO 5775-2:2021",
      },
    ),
    "effective-rim-diameter": length(
      "Diameter on which the spokes' ends are meant to lie, with the nipples and washers that its maker states.",
      { essential: true, group: "Geometry", lowest: 80, highest: 720 },
    ),
    "rim-holes": count("Spoke holes.", { essential: true, group: "Shape", lowest: 12, highest: 48 }),
    "hole-offset": length("Distance of the spoke holes from the rim's middle, positive toward the non-drive side.", {
      group: "Geometry",
      lowest: -10,
      highest: 10,
    }),
    depth: length("From the spoke face to the outer edge.", { group: "Shape", lowest: 5, highest: 120 }),
    "outer-width": length("Overall width.", { group: "Shape", lowest: 12, highest: 120 }),
    "valve-hole": length("Diameter of the valve hole.", { group: "Fit", lowest: 5, highest: 10 }),
    "valve-hole-depth": length("Thickness of rim that the valve passes through.", { group: "Fit", highest: 120 }),
    "greatest-pressure": quantity("pressure", "Greatest tyre pressure that the rim bears.", {
      essential: true,
      group: "Limits",
      lowest: 0.5,
      highest: 16,
    }),
    "greatest-spoke-tension": quantity("force", "Greatest spoke tension that the rim bears.", {
      essential: true,
      group: "Limits",
      lowest: 200,
      highest: 3000,
    }),
    "narrowest-tyre": length("Narrowest tyre that its maker allows.", { group: "Limits", lowest: 15, highest: 130 }),
    "widest-tyre": length("Widest tyre that its maker allows.", { group: "Limits", lowest: 15, highest: 150 }),
    "brake-track": yesNo("Whether it has a track for rim brakes.", { group: "Brakes" }),
    forbids: words(forbiddenThings, "What its maker forbids on it.", { group: "Limits", omitted: "none" }),
  },
});
