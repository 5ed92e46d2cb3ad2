import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { atMost, inside } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, lacksDimension } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";

/** Half of a difference in length lands at either side; this much moves the ring by a millimetre. */
const tolerance = 2;

const shapesOfCranks = ["round", "stepped"];

export default defineCheck({
  code: "drivetrain/spindle-length",
  title: "The spindle is as long as cranks and shell need",
  severity: "error",
  since: 1,
  needs: () => ({
    cranks: slot("drivetrain.crankset"),
    bracket: slot("drivetrain.bottom-bracket"),
    spindle: optional(fact("drivetrain.bottom-bracket", "spindle")),
    needed: optional(fact("drivetrain.crankset", "spindle")),
    wanted: optional(fact("drivetrain.crankset", "spindle-length")),
    own: optional(fact("drivetrain.bottom-bracket", "spindle-length")),
    spans: optional(fact("drivetrain.crankset", "shell-widths")),
    shell: fact("frame", "bottom-bracket-shell"),
  }),
  test({ cranks, bracket, spindle, needed, wanted, own, spans, shell }) {
    if (spindle.state === "known" && needed.state === "known" && !mate(spindle.value, needed.value)) {
      return notApplicable("cranks and bearings are for different spindles, which is found as such");
    }
    const shape = spindle.state === "known" ? dimensionOf<string>(spindle.value, "shape") : undefined;
    const brought = own.state === "none" || (shape !== undefined && shapesOfCranks.includes(shape));

    if (brought) {
      if (spans.state === "unknown") return cannotTell(spans);
      if (spans.state === "none") return notApplicable(`${cranks.subject} names no widths of shell`);
      const width = dimensionOf<number>(shell.value, "shell-width");
      if (width === undefined) return cannotTell(lacksDimension(shell.value, "shell-width"));
      if (inside(width, spans.value)) {
        return holds(
          `The spindle of ${cranks.subject} spans shells of ${showInterval(spans.value, "length")}, and the frame's is ${showQuantity(width, "length")}.`,
        );
      }
      return fails(
        `The spindle of ${cranks.subject} spans shells of ${showInterval(spans.value, "length")}, but that of ${shell.subject} is ${showQuantity(width, "length")} wide: fit cranks with a spindle for that width.`,
        cranks,
        [spans, shell],
        swaps("drivetrain.crankset", "frame"),
      );
    }

    if (own.state === "unknown") return cannotTell(own);
    if (own.state !== "known") return notApplicable(`${bracket.subject} has no spindle of its own`);
    if (wanted.state === "unknown") return cannotTell(wanted);
    if (wanted.state === "none") return notApplicable(`${cranks.subject} names no length of spindle`);
    const difference = own.value - wanted.value;
    const [has, needs] = showPair(own.value, wanted.value, "length");
    if (atMost(Math.abs(difference), tolerance)) {
      return holds(`${cranks.subject} needs a spindle of ${needs}, and that of ${bracket.subject} is ${has}.`);
    }
    const half = showQuantity(Math.abs(difference) / 2, "length");
    return fails(
      `${cranks.subject} needs a spindle of ${needs}, but that of ${bracket.subject} is ${has}: the ring stands about ${half} too far ${difference > 0 ? "out" : "in"}${difference > 0 ? "" : ", and an arm may touch the frame"}. Fit a bottom bracket with ${needs}.`,
      bracket,
      [own, wanted],
      swaps("drivetrain.bottom-bracket", "drivetrain.crankset"),
      { severity: "warning" },
    );
  },
  explanation:
    "A bottom bracket with a spindle of its own comes in many lengths, and the cranks' maker names the one that puts the " +
    "ring on its chainline: half of a difference lands at each side, so a spindle four millimetres too long moves the " +
    "ring out by two. Too short a one brings ring or arm against the frame. Cranks that bring their spindle suit one " +
    "width of shell or a few: on a wider shell the left arm does not reach far enough onto its splines and comes off. " +
    "Lengths of the first kind that differ by up to 2 mm pass here, and beyond that are a warning.",
  source: "common practice, no source",
  caution: "An arm that does not reach far enough onto its spindle comes off under load.",
  examples: {
    holds: `
part frame example.town "Town" { bottom-bracket-shell: threaded-1.370x24-68 }
part crankset example.crank "Crank" { spindle: square-taper-JIS; spindle-length: 113 mm }
part bottom-bracket example.cartridge "Cartridge 113" { spindle: square-taper-JIS; spindle-length: 113 mm }

build example "A cartridge of the right length" {
  frame: example.town
  drivetrain {
    crankset: example.crank
    bottom-bracket: example.cartridge
  }
}
`,
    fails: `
part frame example.fat "Wide" { bottom-bracket-shell: threaded-1.370x24-100 }
part crankset example.crank "Crank" { spindle: round-24; shell-widths: 68 to 73 mm }
part bottom-bracket example.cups "Cups" { spindle: round-24; spindle-length: none }

build example "A spindle too short for the shell" {
  frame: example.fat
  drivetrain {
    crankset: example.crank
    bottom-bracket: example.cups
  }
}
`,
  },
});
