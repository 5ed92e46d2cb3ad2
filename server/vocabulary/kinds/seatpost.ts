import { defineKind } from "../define.ts";
import { code, codes, length, quantityRange, torque, word, yesNo } from "../fields.ts";

/** Carries the saddle. */
export const seatpost = defineKind({
  name: "seatpost",
  noun: "a seatpost",
  description: "Carries the saddle in the seat tube; a dropper is one that can be lowered while riding.",
  caution:
    "Never raised beyond its mark or the frame's least insertion; a dropper's stanchion is never clamped in a stand.",
  fields: {
    "post-diameter": length("Outside diameter that the seat tube or shim takes.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 40,
      example: "31.6 mm",
    }),
    "overall-length": length("Whole length, extended, from its lower end to the rails' middle.", {
      essential: true,
      group: "Geometry",
      lowest: 100,
      highest: 700,
    }),
    "least-insertion": length("Least depth in the seat tube, by its own mark.", {
      essential: true,
      group: "Limits",
      lowest: 30,
      highest: 300,
    }),
    setback: length("From the post's axis back to the middle of the rail clamp, positive backward.", {
      group: "Geometry",
      lowest: -60,
      highest: 80,
    }),
    "dropper-travel": length("By how much it drops; `none` for a rigid post.", {
      essential: true,
      group: "Geometry",
      lowest: 20,
      highest: 300,
    }),
    "travel-options": quantityRange("length", "adjustable", "Travel to which it can be set.", {
      group: "Geometry",
      lowest: 20,
      highest: 300,
      omitted: "none",
    }),
    "collar-height": length("From the seat tube's top, fully inserted, to the rails' middle, fully dropped.", {
      group: "Geometry",
      lowest: 20,
      highest: 200,
      omitted: "none",
    }),
    "body-length": length("Length below the collar, its actuator included.", {
      group: "Geometry",
      lowest: 80,
      highest: 450,
      omitted: "none",
    }),
    rails: codes("rail", "Saddle rails that its clamp takes.", { essential: true, group: "Fit" }),
    "clamp-length": length("Length of rail inside its clamp.", { group: "Fit", lowest: 15, highest: 80 }),
    control: word(
      {
        cable: "A cable with its head at the remote.",
        "cable-at-post": "A cable with its head at the post.",
        hydraulic: "A hose.",
        electronic: "A wireless signal.",
        lever: "A lever under the saddle.",
      },
      "How it is released.",
      { group: "Control", omitted: "none" },
    ),
    "post-routing": word(
      { internal: "Inside the frame.", external: "Along the outside." },
      "Where its cable or hose runs.",
      { group: "Fit", omitted: "none" },
    ),
    "shift-family": code("shift-family", "Which electronic remotes it works with.", {
      group: "Control",
      omitted: "none",
    }),
    "friction-paste-allowed": yesNo("Whether its maker allows friction paste on it.", { group: "Limits" }),
    "seat-clamp-torque": torque("Torque of the seat clamp that the post bears.", { highest: 20 }),
    "rail-clamp-torque": torque("Torque of the bolts on the saddle's rails.", { highest: 30, example: "8 to 10 N·m" }),
  },
});
