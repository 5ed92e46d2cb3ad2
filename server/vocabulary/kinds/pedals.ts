import { defineKind } from "../define.ts";
import { code, length, torque, word } from "../fields.ts";

/** A pair of pedals. */
export const pedals = defineKind({
  name: "pedals",
  noun: "a pair of pedals",
  description: "A pair of pedals: the left one has a left-hand thread.",
  fields: {
    thread: code("pedal-thread", "Thread of its axles; the left one is left-handed.", {
      essential: true,
      group: "Fit",
    }),
    foot: word(
      {
        platform: "A flat platform for any shoe.",
        cleat: "A catch for a cleat.",
        both: "A platform on one side and a catch on the other, or both together.",
        "toe-clip": "A clip and strap.",
      },
      "What holds the foot.",
      { essential: true, group: "Shape" },
    ),
    "cleat-bolts": word(
      { two: "Cleats with two bolts.", three: "Cleats with three bolts.", four: "Cleats with four bolts." },
      "Bolts of its cleat.",
      { group: "Fit", omitted: "none" },
    ),
    "outer-edge": length("From the crank's outer face to the pedal's outer edge.", {
      group: "Clearance",
      lowest: 30,
      highest: 180,
    }),
    "underside-height": length("From the pedal axle's middle down to its lowest part when level.", {
      group: "Clearance",
      highest: 60,
    }),
    "platform-height": length("From the pedal axle's middle up to the foot.", {
      group: "Geometry",
      lowest: -20,
      highest: 50,
    }),
    "mounting-torque": torque("Torque of a pedal in its crank.", { highest: 60, example: "35 to 40 N·m" }),
  },
});
