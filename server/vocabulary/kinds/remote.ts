import { defineKind } from "../define.ts";
import { code, codes, length, torque, word } from "../fields.ts";
import { eitherSide } from "../words.ts";

/** A remote for a dropper or a lockout. */
export const remote = defineKind({
  name: "remote",
  noun: "a remote",
  description: "A lever or button on the bar for a dropper post or the suspension.",
  fields: {
    serves: word(
      { dropper: "A dropper post.", fork: "The fork.", shock: "The rear shock.", both: "Fork and shock." },
      "What it works.",
      { essential: true, group: "Control" },
    ),
    control: word(
      {
        cable: "A cable with its head at the remote.",
        "cable-at-post": "A cable clamped at the remote, its head at the other end.",
        hydraulic: "A hose.",
        electronic: "A wireless signal.",
      },
      "How it works it.",
      { essential: true, group: "Control" },
    ),
    mount: code("control-clamp", "How it is held.", { essential: true, group: "Fit" }),
    "clamp-offers": codes("control-clamp", "Shared clamps that it offers to another control.", {
      group: "Fit",
      omitted: "none",
    }),
    hand: word(eitherSide, "Hand that it is made for.", { group: "Fit" }),
    width: length("Length of bar that its own band takes up; `none` for one that shares a clamp.", {
      group: "Fit",
      lowest: 3,
      highest: 80,
    }),
    "shift-family": code("shift-family", "Which electronic parts it talks to.", { group: "Control", omitted: "none" }),
    "clamp-torque": torque("Torque of the bolt of its band, or of its own bolt in the clamp that it shares.", {
      highest: 12,
    }),
  },
});
