import { defineKind } from "../define.ts";
import { code, torque, word, yesNo } from "../fields.ts";
import { threadTreatments } from "../words.ts";

/** The replaceable piece that a derailleur hangs from. */
export const hanger = defineKind({
  name: "hanger",
  noun: "a hanger",
  description:
    "The replaceable piece between the frame's rear end and the derailleur, made to bend before the frame does.",
  fields: {
    seat: code("hanger-seat", "Rear end of a frame that it fits.", { essential: true, group: "Fit" }),
    "derailleur-mount": code("derailleur-mount", "What it offers to the derailleur.", {
      essential: true,
      group: "Fit",
    }),
    aligned: yesNo("Whether it is centred by the axle, so that it cannot be bent straight and needs no gauge.", {
      group: "Assembly",
    }),
    "mounting-torque": torque("Torque of the bolt or bolts that hold it to the frame.", { example: "20 to 25 N·m" }),
    "derailleur-torque": torque("Torque of a derailleur in its thread.", { example: "8 to 10 N·m" }),
    "mounting-thread": word(threadTreatments, "How its own bolt is treated.", { group: "Assembly" }),
  },
});
