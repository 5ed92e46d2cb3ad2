import { fact, optional, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "cockpit/clamp-zone",
  title: "The stem clamps the bar where the bar may be clamped",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    stem: slot("cockpit.stem"),
    bar: slot("cockpit.handlebar"),
    width: optional(fact("cockpit.stem", "bar-clamp-width")),
    zone: optional(fact("cockpit.handlebar", "clamp-zone")),
  }),
  test({ stem, bar, width, zone }) {
    // Most makers of bars state none, since any stem's clamp is narrower than the thick part of an ordinary bar.
    if (zone.state !== "known") return notApplicable(`${bar.subject} states no length that may be clamped`);
    if (width.state === "unknown") return cannotTell(width);
    if (width.state === "none") return notApplicable(`${stem.subject} does not clamp the bar`);
    const [clamps, may] = showPair(width.value, zone.value, "length");
    if (atMost(width.value, zone.value)) {
      return holds(
        `${stem.subject} clamps ${clamps} of the bar, and ${may} in the middle of ${bar.subject} may be clamped.`,
        (zone.value - width.value) / zone.value,
      );
    }
    return fails(
      `${stem.subject} clamps ${clamps} of the bar, but only ${may} in the middle of ${bar.subject} may be clamped: fit a stem with a narrower clamp, or another bar.`,
      stem,
      [width, zone],
      swaps("cockpit.stem", "cockpit.handlebar"),
    );
  },
  explanation:
    "A bar is thick and round in the middle only. Outside of that it tapers, bends or has a thinner wall, and a clamp whose " +
    "edge lies there presses on a line: the bar creaks, is notched, and cracks. Makers of bars state how much of the " +
    "middle may be clamped, by the stem and by whatever else is put beside it. A bar that states nothing is not asked about.",
  source: "common practice, no source; both lengths are the makers' own figures",
  caution: "A bar that cracks at the stem throws the rider.",
  examples: {
    holds: `
part stem example.stem "Stem" { bar-clamp-width: 44 mm }
part handlebar example.bar "Bar" { clamp-zone: 60 mm }

build example "Inside the thick part" {
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
    fails: `
part stem example.stem "Stem" { bar-clamp-width: 44 mm }
part handlebar example.bar "Bar" { clamp-zone: 30 mm }

build example "Over its edge" {
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
  },
});
