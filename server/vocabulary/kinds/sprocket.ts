import { defineKind } from "../define.ts";
import { code, count, length, teeth, torque, word, yesNo } from "../fields.ts";

/** One cog, for a chain or a belt. */
export const sprocket = defineKind({
  name: "sprocket",
  noun: "a single sprocket",
  description: "One cog without a ratchet of its own, for a freehub body, a gear hub, a fixed hub or a belt drive.",
  fields: {
    speeds: count("Number of cogs, which is one.", { lowest: 1, highest: 1, group: "Gearing" }),
    cogs: teeth("Teeth of the cog.", { essential: true, group: "Gearing", example: "18 t" }),
    freehub: code(
      "freehub-body",
      "Freehub body or gear-hub driver it slides onto; a sprocket that screws on states its thread in its place.",
      { essential: true, group: "Fit" },
    ),
    thread: code("freewheel-thread", "Thread by which it screws onto the hub, when it does.", {
      group: "Fit",
      omitted: "none",
    }),
    "drive-family": code("drive-family", "Roller and tooth family of its chain, or pitch and profile of its belt.", {
      essential: true,
      group: "Fit",
    }),
    fixed: yesNo("Whether it turns the wheel in both directions, so that the rider cannot stop pedalling.", {
      group: "Fit",
    }),
    offset: length("From the shoulder it seats on to the middle of its teeth, positive outward to the drive side.", {
      group: "Fit",
      lowest: -10,
      highest: 10,
    }),
    retention: word(
      {
        lockring: "A lock-ring screwed on after it.",
        "left-hand-lockring": "A left-hand lock-ring against a threaded fixed cog.",
        "snap-ring": "A spring ring in a groove.",
        bolts: "Bolts.",
      },
      "What holds it on its seat.",
      { group: "Assembly" },
    ),
    "lockring-torque": torque("Torque of the lock-ring that holds it.", { lowest: 5, highest: 80 }),
  },
});
