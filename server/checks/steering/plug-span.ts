import { notThreadless, threadlessNeeds } from "../../calculations/shared/threadless.ts";
import { fact, optional, setting, slot } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { mostCapGap } from "../shared/cap-gap.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "steering/plug-span",
  title: "In carbon, the plug backs up all of the stem's clamp",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadlessNeeds,
    plug: slot("cockpit.steerer-plug"),
    plugType: fact("cockpit.steerer-plug", "plug-type"),
    material: fact("fork", "steerer-material"),
    span: fact("cockpit.steerer-plug", "span"),
    clampHeight: fact("cockpit.stem", "clamp-height"),
    depth: optional(setting("cockpit.steerer-plug", "depth")),
    above: optional(setting("cockpit.stem", "spacers-above")),
    gap: optional(setting("cockpit.stem", "cap-gap")),
  }),
  test({ plug, plugType, material, span, clampHeight, depth, above, gap, ...kind }) {
    const other = notThreadless(kind);
    if (other) return notApplicable(other);
    if (material.value !== "carbon") return notApplicable("a metal steerer bears the clamp by itself");
    if (plugType.value === "star-nut") return notApplicable("a star nut backs up nothing, and is not for carbon");
    const [long, tall] = showPair(span.value, clampHeight.value, "length");
    const tooShort = (): Verdict =>
      fails(
        `${plug.subject} backs up ${long} of the steerer, but the clamp of ${clampHeight.subject} is ${tall} high: fit a plug of ${tall} or longer.`,
        plug,
        [span, clampHeight],
        swaps("cockpit.steerer-plug", "cockpit.stem"),
      );
    if (above.state !== "known" || gap.state !== "known") {
      // However the steerer ends, no more of the clamp than this can be free of it.
      if (!atLeast(span.value, clampHeight.value - mostCapGap)) return tooShort();
      if (above.state === "none") return notApplicable(`${above.path} is none`);
      if (gap.state === "none") return notApplicable(`${gap.path} is none`);
      return cannotTell(...unknowns(above, gap, depth));
    }
    // Both from the steerer's top down.
    const clamp = { top: Math.max(0, above.value - gap.value), foot: above.value - gap.value + clampHeight.value };
    if (!atLeast(span.value, clamp.foot - clamp.top)) return tooShort();
    if (depth.state === "none") return notApplicable(`${depth.path} is none`);
    if (depth.state === "unknown") return cannotTell(depth);
    const backed = { top: depth.value, foot: depth.value + span.value };
    const from = (place: typeof clamp): string =>
      `from ${showQuantity(place.top, "length")} to ${showQuantity(place.foot, "length")}`;
    if (atMost(backed.top, clamp.top) && atLeast(backed.foot, clamp.foot)) {
      return holds(
        `${plug.subject} backs up the steerer ${from(backed)} below its top, and the clamp of ${clampHeight.subject} is ${from(clamp)}.`,
        (backed.foot - clamp.foot) / span.value,
      );
    }
    const right = millimetres(Math.min(clamp.top, Math.max(0, clamp.foot - span.value)), "up");
    return fails(
      `${plug.subject} backs up the steerer ${from(backed)} below its top, but the clamp of ${clampHeight.subject} is ${from(clamp)}: set the plug ${right} below the top, or fit a longer one.`,
      depth,
      [depth, span, clampHeight, above, gap],
      [
        { kind: "set-setting", slot: "cockpit.steerer-plug", setting: "depth", value: right },
        ...swaps("cockpit.steerer-plug"),
      ],
    );
  },
  explanation:
    "A carbon steerer is a thin tube, and the stem's two bolts squeeze it. The plug inside is there not only for the cap to " +
    "pull on: it backs the tube up where it is clamped. It has to span all of the clamp, from its upper edge to its lower " +
    "one, or the tube is crushed where the plug ends. A tall stem, or spacers over it, may need a longer plug or one that " +
    "is set deeper. Plugs with a rim rest on the steerer's top and cannot be set deeper.",
  source: "common practice, no source; the fork maker's instructions decide",
  caution: "A carbon steerer that is crushed at the edge of its plug breaks without warning.",
  examples: {
    holds: `
part fork example.fork "Carbon fork" { steerer-material: carbon }
part steerer-plug example.plug "Plug 60" { plug-type: expanding-plug; span: 60 mm }
part stem example.stem "Stem" { clamp-height: 42 mm }

build example "Backed up past the clamp" {
  fork: example.fork
  cockpit {
    stem: example.stem { spacers-above: 10 mm; cap-gap: 3 mm }
    steerer-plug: example.plug { depth: 0 mm }
  }
}
`,
    fails: `
part fork example.fork "Carbon fork" { steerer-material: carbon }
part steerer-plug example.plug "Plug 30" { plug-type: expanding-plug; span: 30 mm }
part stem example.stem "Stem" { clamp-height: 42 mm }

build example "A plug that ends inside the clamp" {
  fork: example.fork
  cockpit {
    stem: example.stem { spacers-above: 5 mm; cap-gap: 3 mm }
    steerer-plug: example.plug { depth: 0 mm }
  }
}
`,
  },
});
