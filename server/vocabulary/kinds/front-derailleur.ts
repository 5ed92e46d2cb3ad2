import { defineKind } from "../define.ts";
import { code, count, length, number, quantityRange, toothCount, torque, word } from "../fields.ts";
import { shiftActuations } from "../words.ts";

/** The cage that moves the chain over the rings. */
export const frontDerailleur = defineKind({
  name: "front-derailleur",
  noun: "a front derailleur",
  description: "Moves the chain from ring to ring.",
  fields: {
    mount: code("front-derailleur-mount", "How it is fixed to the frame; a band states its diameter.", {
      essential: true,
      group: "Fit",
    }),
    actuation: word(shiftActuations, "What moves it.", { essential: true, group: "Control" }),
    "shift-family": code("shift-family", "Which controllers it works with.", { group: "Control" }),
    "pull-direction": word(
      {
        top: "The cable leaves upward.",
        bottom: "The cable leaves downward.",
        side: "The cable leaves forward along the down tube.",
        either: "Up or down.",
        electronic: "A wire or none.",
      },
      "Where its cable goes.",
      { group: "Fit" },
    ),
    "actuation-ratio": number("Sideways movement of the cage for each millimetre of cable pulled.", {
      group: "Control",
      lowest: 0.3,
      highest: 4,
    }),
    rings: count("Number of rings it serves.", { group: "Gearing", lowest: 1, highest: 3, essential: true }),
    speeds: count("Number of cogs of the drivetrains whose chain it takes.", {
      group: "Gearing",
      lowest: 1,
      highest: 14,
    }),
    "largest-ring": toothCount("Most teeth of the outer ring that its cage clears.", {
      essential: true,
      group: "Gearing",
    }),
    "least-largest-ring": toothCount(
      "Fewest teeth of the outer ring that its cage follows; left out, its maker names none.",
      { group: "Gearing", omitted: "none" },
    ),
    capacity: count("Greatest difference between the largest and the smallest ring.", {
      essential: true,
      group: "Gearing",
      unit: "t",
      lowest: 1,
      highest: 30,
    }),
    "least-middle-difference": count("Fewest teeth between the outer ring and the middle one of three.", {
      group: "Gearing",
      unit: "t",
      lowest: 1,
      highest: 20,
      omitted: "none",
    }),
    chainline: quantityRange("length", "allowed", "Chainlines of the crank that its cage reaches.", {
      group: "Fit",
      lowest: 30,
      highest: 80,
      example: "43.5 to 46 mm",
    }),
    "chainstay-angle": quantityRange("angle", "allowed", "Angle between chainstay and seat tube that suits its cage.", {
      group: "Fit",
      lowest: 50,
      highest: 80,
    }),
    "widest-tyre": length("Widest tyre, as measured, that passes its cage at the shortest chainstay it names.", {
      group: "Clearance",
      highest: 100,
    }),
    "mounting-torque": torque("Torque of its band or mounting bolt.", { highest: 15, example: "5 to 7 N·m" }),
    "cable-bolt-torque": torque("Torque of the bolt that holds the cable.", { highest: 15 }),
  },
});
