import { defineKind } from "../define.ts";
import { angle, code, length, torque, word, yesNo } from "../fields.ts";

/** Joins bar and steerer. */
export const stem = defineKind({
  name: "stem",
  noun: "a stem",
  description: "Joins the handlebar to the steerer.",
  caution: "Faceplate gaps are even and bolts tightened in turns; a stem that slips or breaks takes the steering away.",
  fields: {
    "steerer-clamp": length("Diameter of steerer that it clamps, or of a quill.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 45,
      example: "28.6 mm",
    }),
    "bar-clamp": length("Diameter of bar that it clamps.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 40,
      example: "31.8 mm",
    }),
    length: length("From the steerer's axis to the bar clamp's middle.", {
      essential: true,
      group: "Geometry",
      lowest: 0,
      highest: 180,
    }),
    angle: angle("Deviation from square to the steerer, positive up as its markings stand upright.", {
      essential: true,
      group: "Geometry",
      lowest: -60,
      highest: 60,
      example: "-6°",
    }),
    "clamp-height": length("Height of steerer that it takes up.", {
      essential: true,
      group: "Geometry",
      lowest: 15,
      highest: 80,
    }),
    "least-engagement": length("Least length of steerer inside the clamp.", { group: "Limits", highest: 80 }),
    "bar-clamp-width": length("Length of bar inside the clamp.", { group: "Fit", lowest: 15, highest: 100 }),
    clamping: word(
      { threadless: "Clamps a plain steerer.", quill: "Goes down inside a threaded steerer." },
      "How it is held.",
      {
        group: "Fit",
      },
    ),
    "least-quill-insertion": length("Least depth of a quill in the steerer.", {
      group: "Limits",
      highest: 150,
    }),
    "quill-length": length("From a quill's lower end up its axis to the middle of the arm that leaves it.", {
      group: "Geometry",
      lowest: 60,
      highest: 400,
    }),
    "friction-paste-allowed": yesNo("Whether its maker allows friction paste in its clamps.", { group: "Limits" }),
    "routing-system": code("routing-system", "System of bar, stem, spacers and headset for hoses inside.", {
      group: "Fit",
      omitted: "none",
    }),
    "steerer-torque": torque("Torque of the bolts on the steerer.", {
      essential: true,
      // A quill's wedge is drawn up far harder than a clamp: some 17 to 33 N·m are asked for.
      highest: 40,
      example: "5 to 6 N·m",
    }),
    "bar-torque": torque("Torque of the bolts on the bar.", { essential: true, highest: 20, example: "4 to 5 N·m" }),
  },
});
