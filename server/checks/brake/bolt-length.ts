import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "brake/bolt-length",
  title: "The caliper's bolts are for the thickness of the stay",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    caliper: slot("rear-brake.caliper"),
    mount: optional(fact("rear-brake.caliper", "mount")),
    thickness: optional(fact("frame", "rear-brake-clamped-thickness")),
    grip: optional(fact("rear-brake.caliper", "bolt-grip")),
    adapter: anySlot("rear-brake.adapter"),
  }),
  test({ caliper, mount, thickness, grip, adapter }) {
    if (adapter.state !== "none") return notApplicable("the caliper is bolted to its adapter");
    if (grip.state === "none") return notApplicable(`no bolts of ${caliper.subject} pass through the stay`);
    if (thickness.state === "none") return notApplicable("no bolts of a brake pass through the stay");
    const form = mount.state === "known" ? dimensionOf<string>(mount.value, "form") : undefined;
    if (form !== undefined && form !== "flat" && (thickness.state === "unknown" || grip.state === "unknown")) {
      return notApplicable(`${caliper.subject} does not sit on a flat mount`);
    }
    if (thickness.state === "unknown" || grip.state === "unknown") return cannotTell(...unknowns(thickness, grip));
    const is = showQuantity(thickness.value, "length");
    const range = showInterval(grip.value, "length");
    if (inside(thickness.value, grip.value)) {
      return holds(
        `The stay of ${thickness.subject} is ${is} thick, and the bolts of ${caliper.subject} are for ${range}.`,
      );
    }
    const thick = greaterThan(thickness.value, grip.value.greatest);
    return fails(
      `The stay of ${thickness.subject} is ${is} thick, but the bolts of ${caliper.subject} are for ${range}: they ${thick ? "catch too little thread in the caliper" : "bottom in the caliper before it is held, or go through it"}. Order its bolts for ${is}.`,
      caliper,
      [grip, thickness],
      swaps("rear-brake.caliper"),
    );
  },
  explanation:
    "At a flat mount the bolts come from below through the chainstay and screw into the caliper. Stays differ in thickness, " +
    "so that calipers are supplied with bolts of several lengths, each marked with the thickness it is for. A short bolt " +
    "holds by a turn or two and strips; a long one bottoms in the caliper and is tight although nothing is clamped. The " +
    "frame's maker states the thickness. A fork's flat mount carries a plate, and the caliper's bolts go into that.",
  source: "common practice, no source; the makers' figures decide",
  caution: "A caliper held by too little thread comes off under hard braking.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-brake-clamped-thickness: 32 mm }
part caliper example.caliper "Flat caliper" { bolt-grip: 30 to 34 mm }

build example "Bolts for this stay" {
  frame: example.frame
  rear-brake.caliper: example.caliper
}
`,
    fails: `
part frame example.frame "Frame" { rear-brake-clamped-thickness: 37 mm }
part caliper example.caliper "Flat caliper" { bolt-grip: 30 to 34 mm }

build example "Bolts too short" {
  frame: example.frame
  rear-brake.caliper: example.caliper
}
`,
  },
});
