import { code, count, length, number, quantityRange, torque } from "../fields.ts";

/** What a frame with rear suspension states; a rigid one says `rear-travel: none`. */
export const frameSuspensionFields = {
  "rear-travel": length("Vertical travel of the rear axle; `none` for a rigid rear end.", {
    essential: true,
    group: "Suspension",
    lowest: 10,
    highest: 300,
  }),
  "shock-size": code("shock-size", "Eye-to-eye length and stroke of shock that it takes, such as 210x55.", {
    group: "Suspension",
  }),
  "shock-mount-body-end": code("shock-mount", "What takes the end of the shock that carries its body.", {
    group: "Suspension",
  }),
  "shock-mount-shaft-end": code("shock-mount", "What takes the end of the shock that carries its shaft.", {
    group: "Suspension",
  }),
  "shock-bolt-torque": torque("Torque of the shock's bolts that the frame bears.", {
    lowest: 1,
    highest: 40,
  }),
  "leverage-start": number("Leverage at the start of travel: rear-axle movement for each millimetre of stroke.", {
    group: "Suspension",
    lowest: 1,
    highest: 5,
  }),
  "leverage-end": number("Leverage at the end of travel.", { group: "Suspension", lowest: 1, highest: 5 }),
  "sag-range": quantityRange("ratio", "adjustable", "Sag of the shock that its maker asks for, as a share of stroke.", {
    group: "Suspension",
    lowest: 5,
    highest: 50,
    example: "25 to 30 %",
  }),
  "rear-centre-growth-sag": length(
    "How much longer the line from crank axis to rear axle is at sag than unladen; negative when it is shorter.",
    { group: "Suspension", lowest: -30, highest: 60 },
  ),
  "rear-centre-growth-full": length(
    "How much longer the line from crank axis to rear axle is at its longest in the travel than unladen.",
    { group: "Suspension", lowest: -30, highest: 80 },
  ),
  "rear-centre-growth-bottomed": length(
    "The same at the end of the travel, for a rear end that is longest before that; left out, it is longest at the end.",
    { group: "Suspension", lowest: -30, highest: 80, omitted: "none" },
  ),
  "idler-teeth": count("Teeth of an idler that the upper run of the chain passes over.", {
    group: "Suspension",
    unit: "t",
    lowest: 8,
    highest: 40,
    omitted: "none",
  }),
} as const;
