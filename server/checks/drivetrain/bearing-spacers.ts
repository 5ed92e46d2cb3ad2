import type { Repair } from "../../model/finding.ts";
import { fact, optional, setting, slot } from "../../model/need.ts";
import { atMost, inside } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, lacksDimension } from "../shared/codes.ts";

/** Shells are faced and spacers rounded; less than this is taken up by the crank's preload. */
const tolerance = 0.3;

const bracketSlot = "drivetrain.bottom-bracket";

export default defineCheck({
  code: "drivetrain/bearing-spacers",
  title: "The spacers between cups and shell make up its width",
  severity: "error",
  since: 1,
  needs: () => ({
    bracket: slot(bracketSlot),
    widths: fact(bracketSlot, "shell-widths"),
    place: optional(fact(bracketSlot, "bearing-place")),
    supplied: optional(fact(bracketSlot, "spacers-supplied")),
    shell: fact("frame", "bottom-bracket-shell"),
    driveSide: optional(setting(bracketSlot, "shell-spacers-drive-side")),
    otherSide: optional(setting(bracketSlot, "shell-spacers-non-drive-side")),
  }),
  test({ bracket, widths, place, supplied, shell, driveSide, otherSide }) {
    if (place.state === "known" && place.value !== "outboard") {
      return notApplicable(`the bearings of ${bracket.subject} are not outside the shell`);
    }
    if (supplied.state === "unknown") return cannotTell(supplied);
    if (supplied.state === "none") return notApplicable(`${bracket.subject} comes without spacers`);
    const width = dimensionOf<number>(shell.value, "shell-width");
    if (width === undefined) return cannotTell(lacksDimension(shell.value, "shell-width"));
    if (!inside(width, widths.value))
      return notApplicable("the shell is not one of its widths, which is found as such");
    if (!Number.isFinite(widths.value.least)) return notApplicable(`${bracket.subject} names no narrowest shell`);
    // All spacers of the box go in at the narrowest shell; every millimetre of a wider one takes the place of spacer.
    const needed = widths.value.least + supplied.value - width;
    if (needed < -tolerance) {
      return notApplicable(`${bracket.subject} spans its widths of shell by other means than the spacers in its box`);
    }
    const unknown = [driveSide, otherSide].filter((side) => side.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    const target = Math.max(0, needed);
    const stated = [driveSide, otherSide].flatMap((side) => (side.state === "known" ? [side] : []));
    if (stated.length === 0) {
      return holds(
        target > tolerance
          ? `The shell of ${showQuantity(width, "length")} needs ${showQuantity(target, "length")} of spacers in all, and they are in the box of ${bracket.subject}.`
          : `The shell of ${showQuantity(width, "length")} needs no spacers.`,
      );
    }
    const present = stated.reduce((sum, side) => sum + side.value, 0);
    const [have, want] = showPair(present, target, "length");
    if (atMost(Math.abs(present - target), tolerance)) {
      return holds(`The shell of ${showQuantity(width, "length")} needs ${want} of spacers in all, and has ${have}.`);
    }
    const [left, right] = [otherSide, driveSide].map((side) => (side.state === "known" ? side.value : 0));
    const repairs: Repair[] = [];
    const set = (name: string, value: number): void => {
      repairs.push({
        kind: "set-setting",
        slot: bracketSlot,
        setting: name,
        value: value > 0 ? showQuantity(value, "length") : "none",
      });
    };
    if (target >= (left ?? 0)) set("shell-spacers-drive-side", target - (left ?? 0));
    if (target >= (right ?? 0)) set("shell-spacers-non-drive-side", target - (right ?? 0));
    return fails(
      `${bracket.subject} on a shell of ${showQuantity(width, "length")} needs ${want} of spacers in all, but the build puts ${have}: the cranks would ${present > target ? "not go on far enough" : "have play, or press the bearings"}.`,
      bracket,
      [widths, supplied, shell, ...stated],
      repairs,
    );
  },
  explanation:
    "One set of outside bearings serves shells of several widths: at the narrowest all spacers in the box go between cups " +
    "and shell, and at wider ones correspondingly less. With too much spacer the left arm does not come far enough onto " +
    "the spindle; with too little the cranks have play that no preload takes up, or the bearings are crushed. How the " +
    "spacers are shared between the sides moves the chainline, and is for the maker's instructions to say.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.fell "Fell" { bottom-bracket-shell: threaded-1.370x24-73 }
part bottom-bracket example.cups "Cups" { shell-widths: 68 to 73 mm; spacers-supplied: 7.5 mm }

build example "One spacer at a wide shell" {
  frame: example.fell
  drivetrain.bottom-bracket: example.cups { shell-spacers-drive-side: 2.5 mm }
}
`,
    fails: `
part frame example.road "Road" { bottom-bracket-shell: threaded-1.370x24-68 }
part bottom-bracket example.cups "Cups" { shell-widths: 68 to 73 mm; spacers-supplied: 7.5 mm }

build example "One spacer at a narrow shell" {
  frame: example.road
  drivetrain.bottom-bracket: example.cups { shell-spacers-drive-side: 2.5 mm }
}
`,
  },
});
