import { defineKind } from "../define.ts";
import { angle, code, length, torque, word, yesNo } from "../fields.ts";

/** The bar that the rider holds. */
export const handlebar = defineKind({
  name: "handlebar",
  noun: "a handlebar",
  description: "The bar that the rider holds, with the diameters at which stem and controls clamp it.",
  caution:
    "A bar scored, crushed or crashed is replaced; where its torque window and that of what clamps it do not overlap, the two do not fit.",
  fields: {
    bar: word(
      {
        flat: "Straight, with or without sweep.",
        riser: "Rises outside the clamp.",
        drop: "Drops below the tops.",
        "swept-back": "Swept back by 30 degrees or more.",
        bullhorn: "Turned forward at its ends.",
        "aero-base": "A base bar for extensions.",
      },
      "Its shape.",
      { essential: true, group: "Shape" },
    ),
    "clamp-diameter": length("Diameter where the stem clamps it.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 40,
      example: "31.8 mm",
    }),
    "control-diameter": length("Diameter where grips, levers and controllers clamp it.", {
      essential: true,
      group: "Fit",
      lowest: 18,
      highest: 32,
      example: "22.2 mm",
    }),
    width: length("Overall width as sold; of drop bars from middle to middle at the drops' ends.", {
      essential: true,
      group: "Geometry",
      lowest: 300,
      highest: 1000,
    }),
    "least-width": length("Least overall width that its maker allows after cutting; `none` when it must not be cut.", {
      group: "Geometry",
      lowest: 300,
      highest: 1000,
    }),
    rise: length("Height of the grips above the clamp, with the bar at its intended rotation.", {
      group: "Geometry",
      lowest: -100,
      highest: 300,
    }),
    "back-sweep": angle("Angle by which the grips turn backward, seen from above.", {
      group: "Geometry",
      lowest: -20,
      highest: 100,
    }),
    "up-sweep": angle("Angle by which the grips turn upward, seen from behind.", {
      group: "Geometry",
      lowest: -20,
      highest: 30,
    }),
    reach: length("Of a drop bar: from the clamp's middle forward to the farthest part of the bend.", {
      group: "Geometry",
      lowest: 30,
      highest: 160,
    }),
    drop: length("Of a drop bar: from the tops down to the drops, middle to middle.", {
      group: "Geometry",
      lowest: 50,
      highest: 200,
    }),
    flare: angle("Of a drop bar: angle by which each drop turns outward.", {
      group: "Geometry",
      lowest: -10,
      highest: 40,
    }),
    "clamp-zone": length("Length in the middle that the stem or other clamps may use.", {
      group: "Fit",
      lowest: 20,
      highest: 300,
    }),
    "control-length": length("Straight length on each side that grips and clamps may use.", {
      group: "Fit",
      lowest: 80,
      highest: 400,
    }),
    "control-clamping": yesNo("Whether its maker allows controls to be clamped at the control diameter.", {
      group: "Limits",
    }),
    "bar-ends-allowed": yesNo("Whether its maker allows bar ends or plugs that expand.", { group: "Limits" }),
    "friction-paste-allowed": yesNo("Whether its maker allows friction paste at the clamps.", { group: "Limits" }),
    "stem-clamp-torque": torque("Torque of the stem's bar clamp that this bar bears.", {
      highest: 20,
      example: "<= 5 N·m",
    }),
    "control-clamp-torque": torque("Torque of a control's clamp that this bar bears.", {
      highest: 12,
      example: "<= 3 N·m",
    }),
    "routing-system": code(
      "routing-system",
      "System of bar, stem, spacers and headset for wires inside; `none` without one.",
      {
        group: "Fit",
        omitted: "none",
      },
    ),
  },
});
