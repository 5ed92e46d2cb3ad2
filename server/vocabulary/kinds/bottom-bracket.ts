import { defineKind } from "../define.ts";
import { code, length, quantityRange, text, torque, word } from "../fields.ts";

/** The crank bearings in their shell. */
export const bottomBracket = defineKind({
  name: "bottom-bracket",
  noun: "a bottom bracket",
  description: "The bearings of the cranks, with or without a spindle, for one shell of a frame.",
  fields: {
    shell: code("bottom-bracket-shell", "Shell of the frame that it fits.", { essential: true, group: "Fit" }),
    spindle: code("spindle", "Spindle that it carries.", { essential: true, group: "Fit" }),
    "spindle-length": length("Length of its own spindle; `none` when the crank brings the spindle.", {
      group: "Fit",
      lowest: 80,
      highest: 240,
    }),
    "shell-widths": quantityRange("length", "allowed", "Shell widths it fits, its own spacers used.", {
      group: "Fit",
      lowest: 50,
      highest: 150,
      example: "68 to 73 mm",
    }),
    "bearing-place": word(
      {
        outboard: "Bearings outside the shell.",
        inboard: "Bearings inside the shell.",
        cartridge: "A closed cartridge with its own spindle.",
        "cup-and-cone": "Adjustable cups on a loose spindle.",
      },
      "Where its bearings sit.",
      { group: "Fit" },
    ),
    "spacers-supplied": length("Thickness of the loose spacers in the box, together.", {
      group: "Fit",
      highest: 40,
    }),
    "drive-side-face": length(
      "Of outboard bearings: from the shell's middle to where the drive-side cup rests, half the shell and the spacers there, with which the chainline of the cranks is true; left out, the spacers are taken to be as the makers say.",
      { group: "Fit", lowest: 25, highest: 75, omitted: "none", example: "39 mm" },
    ),
    "cup-tool": text("Tool that turns or presses its cups.", { group: "Assembly" }),
    "cup-torque": torque("Torque of its cups in the shell.", { highest: 90, example: "35 to 50 N·m" }),
  },
});
