import { angle, length, quantityRange } from "../fields.ts";

/**
 * Geometry of a frame. Positions are measured from the crank axis with both axles at the height that the maker's
 * chart assumes; angles are from the horizontal.
 */
export const frameGeometryFields = {
  stack: length("Height of the head tube's top, on its axis, above the crank axis.", {
    essential: true,
    group: "Geometry",
    lowest: 150,
    highest: 900,
  }),
  reach: length("Distance of the head tube's top, on its axis, in front of the crank axis.", {
    essential: true,
    group: "Geometry",
    lowest: 100,
    highest: 700,
  }),
  "head-angle": angle("Angle of the steering axis from the horizontal.", {
    essential: true,
    group: "Geometry",
    lowest: 55,
    highest: 80,
  }),
  "seat-angle": angle("Actual angle of the seat tube's axis, which need not pass through the crank axis.", {
    group: "Geometry",
    lowest: 55,
    highest: 85,
  }),
  "seat-tube-offset": length(
    "Distance of the seat tube's axis from the crank axis, square to that axis, positive when it passes in front.",
    { group: "Geometry", lowest: -100, highest: 150 },
  ),
  "effective-seat-angle": angle("Angle from the crank axis to the saddle clamp at the stated height.", {
    group: "Geometry",
    lowest: 60,
    highest: 85,
  }),
  "effective-seat-angle-height": length("Height above the crank axis at which the effective seat angle holds.", {
    group: "Geometry",
    lowest: 300,
    highest: 1000,
  }),
  "seat-tube-length": length("From the crank axis to the seat tube's top, along it.", {
    group: "Geometry",
    lowest: 100,
    highest: 700,
  }),
  "top-tube-effective": length("Horizontal distance from the head tube's top to the seat tube's axis.", {
    group: "Geometry",
    lowest: 200,
    highest: 750,
  }),
  "head-tube-length": length("Length of the head tube, without headset cups.", {
    essential: true,
    group: "Geometry",
    lowest: 60,
    highest: 300,
  }),
  chainstay: quantityRange(
    "length",
    "adjustable",
    "From crank axis to rear axle along the line between them, unladen; a range where the dropouts can be moved.",
    { essential: true, group: "Geometry", lowest: 150, highest: 1200, example: "425 to 440 mm" },
  ),
  "bottom-bracket-drop": length("How far the crank axis lies below the axles, positive below.", {
    essential: true,
    group: "Geometry",
    lowest: -80,
    highest: 120,
  }),
  "front-centre": length(
    "From the crank axis to the front axle in a straight line, as the chart states it for the fork that it assumes.",
    { group: "Geometry", lowest: 300, highest: 1500, omitted: "none", example: "592 mm" },
  ),
  wheelbase: length("Between the axles, as the chart states it for the fork that it assumes.", {
    group: "Geometry",
    lowest: 500,
    highest: 2500,
    omitted: "none",
    example: "1012 mm",
  }),
  standover: length("Height of the top tube where the rider stands over it, on the tyres that its maker assumes.", {
    group: "Geometry",
    lowest: 200,
    highest: 1000,
  }),
  "fork-axle-to-crown": length(
    "Axle-to-crown of the fork that the chart assumes, straight from the axle to the crown-race seat.",
    { group: "Geometry", lowest: 150, highest: 650 },
  ),
  "fork-axle-to-crown-range": quantityRange("length", "allowed", "Axle-to-crown of the forks that its maker allows.", {
    group: "Limits",
    lowest: 150,
    highest: 650,
    example: "530 to 560 mm",
  }),
  "fork-offset": length("Offset of the fork that the chart assumes, square to the steering axis.", {
    group: "Geometry",
    lowest: 0,
    highest: 120,
  }),
  "fork-travel-range": quantityRange("length", "allowed", "Travel of the forks that its maker allows.", {
    group: "Limits",
    highest: 250,
    example: "120 to 150 mm",
  }),
} as const;
