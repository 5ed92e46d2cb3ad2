import { fact, optional, setting, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { armFixed } from "../shared/arm-fixed.ts";
import { unknowns } from "../shared/unknowns.ts";

/** Materials of which stays bear the clip of an arm by common practice. */
const steels: ReadonlySet<string> = new Set(["steel", "stainless-steel"]);

export default defineCheck({
  code: "drivetrain/coaster-arm",
  title: "The arm of a coaster brake is fixed to the frame",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    hub: slot("rear-wheel.hub"),
    coaster: fact("rear-wheel.hub", "coaster-brake"),
    fixed: optional(setting("rear-wheel.hub", "arm-fixed")),
    forbids: optional(fact("frame", "forbids")),
    allowed: optional(fact("frame", "coaster-arm-allowed")),
    material: optional(fact("frame", "material")),
  }),
  test({ hub, coaster, fixed, forbids, allowed, material }) {
    if (!coaster.value) return notApplicable(`${hub.subject} has no coaster brake`);
    if (forbids.state === "known" && forbids.value.includes("coaster-brake")) {
      return fails(
        `${forbids.subject} forbids a coaster brake, but ${hub.subject} has one: its arm would load a stay that is not made for it. Fit a hub without one.`,
        hub,
        [forbids, coaster],
        [{ kind: "swap-part", slot: "rear-wheel.hub" }],
      );
    }
    if (allowed.state === "known" && !allowed.value) {
      return fails(
        `The maker of ${allowed.subject} allows no arm on its stay (coaster-arm-allowed: no), but ${hub.subject} has a coaster brake with one: its pull crushes a stay that is not made for it. Fit a hub without one.`,
        hub,
        [allowed, coaster],
        [{ kind: "swap-part", slot: "rear-wheel.hub" }],
      );
    }
    const held = armFixed(
      hub,
      coaster,
      fixed,
      "a coaster brake with an arm",
      "the axle turns when the rider brakes, the brake does nothing and the wheel can come loose.",
    );
    if (held.outcome === "fails" || allowed.state !== "unknown") return held;
    // Steel stays have carried such clips for a century; others only where the frame's maker says so.
    if (material.state !== "known" || !steels.has(material.value)) return cannotTell(...unknowns(fixed, allowed));
    return held.outcome === "holds"
      ? holds(
          `${held.message} The maker of ${material.subject} does not say whether its stay bears one; it is of steel, and bears it by common practice.`,
        )
      : held;
  },
  explanation:
    "A coaster brake presses shoes against the inside of the turning hub, and the whole braking force tries to turn the " +
    "axle. A steel arm on the left end of the axle carries it to the chainstay, where a clip or a bolt holds it. Loose or " +
    "left off, the axle turns in the dropouts: the brake fails at the first hard stop and the nuts unscrew. A frame " +
    "whose maker forbids coaster brakes has stays too thin for that load. Round steel stays bear the clip by common " +
    "practice; of aluminium, titanium and carbon the frame's maker has to say it (coaster-arm-allowed). The build states " +
    "arm-fixed at the hub.",
  source: "common practice, no source",
  caution:
    "A coaster brake whose arm is loose does not brake and can let the wheel come out. It is checked before every first ride.",
  examples: {
    holds: `
part frame example.town "Town" { coaster-arm-allowed: yes }
part hub example.hub "Back-pedal hub" { coaster-brake: yes }

build example "The arm is clipped to the stay" {
  frame: example.town
  rear-wheel.hub: example.hub { arm-fixed: yes }
}
`,
    fails: `
part hub example.hub "Back-pedal hub" { coaster-brake: yes }

build example "The arm hangs loose" {
  rear-wheel.hub: example.hub { arm-fixed: no }
}
`,
  },
});
