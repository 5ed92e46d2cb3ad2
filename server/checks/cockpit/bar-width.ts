import { fact, optional, setting, slot } from "../../model/need.ts";
import { atLeast, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "cockpit/bar-width",
  title: "The bar may be cut to the width that is planned",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    bar: slot("cockpit.handlebar"),
    cut: setting("cockpit.handlebar", "cut-width"),
    width: fact("cockpit.handlebar", "width"),
    least: optional(fact("cockpit.handlebar", "least-width")),
  }),
  test({ bar, cut, width, least }) {
    const [planned, sold] = showPair(cut.value, width.value, "length");
    if (lessThan(width.value, cut.value)) {
      return fails(
        `The build cuts ${bar.subject} to ${planned}, but it is ${sold} wide as sold: fit a bar at least as wide as is wanted.`,
        cut,
        [width],
        swaps("cockpit.handlebar"),
      );
    }
    if (cut.value === width.value) return holds(`${bar.subject} is ${sold} wide as sold, and stays so.`);
    if (least.state === "unknown") return cannotTell(least);
    if (least.state === "none") {
      return fails(
        `The build cuts ${bar.subject} from ${sold} to ${planned}, but its maker does not allow it to be cut (least-width: none): fit a bar of the width that is wanted.`,
        cut,
        [width],
        [
          { kind: "set-setting", slot: "cockpit.handlebar", setting: "cut-width", value: millimetres(width.value) },
          ...swaps("cockpit.handlebar"),
        ],
      );
    }
    if (atLeast(cut.value, least.value)) {
      return holds(
        `${bar.subject} is cut from ${sold} to ${planned}, and its maker allows ${showQuantity(least.value, "length")}.`,
        (cut.value - least.value) / least.value,
      );
    }
    const [to, allowed] = showPair(cut.value, least.value, "length");
    return fails(
      `The build cuts ${bar.subject} to ${to}, but its maker allows ${allowed} at least: cut it no narrower, or fit a narrower bar.`,
      cut,
      [least, width],
      [
        { kind: "set-setting", slot: "cockpit.handlebar", setting: "cut-width", value: millimetres(least.value, "up") },
        ...swaps("cockpit.handlebar"),
      ],
    );
  },
  explanation:
    "Flat bars are sold wide and cut to the rider. Their makers say how far: farther in the wall is thinner or tapered, the " +
    "bend comes too near, and grips and clamps have no full length to hold on. Some bars may not be cut at all. The same " +
    "is taken off both ends, with a fine blade and a guide; on carbon with a mask, the dust kept wet. A bar that nobody " +
    "cuts states nothing in the build.",
  source: "common practice, no source; the least width is the bar maker's own figure",
  caution:
    "Carbon dust is not breathed in: mask, water, and a blade for carbon. A bar cut too far can break where it is clamped.",
  examples: {
    holds: `
part handlebar example.wide "Wide 780" { width: 780 mm; least-width: 720 mm }

build example "Twenty off each end" {
  cockpit.handlebar: example.wide { cut-width: 740 mm }
}
`,
    fails: `
part handlebar example.wide "Wide 780" { width: 780 mm; least-width: 720 mm }

build example "Cut too far" {
  cockpit.handlebar: example.wide { cut-width: 680 mm }
}
`,
  },
});
