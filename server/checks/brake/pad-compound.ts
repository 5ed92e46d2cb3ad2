import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { both, either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/pad-compound",
  title: "The pads are of a compound that rotor and caliper allow",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    pads: slot(ofBrake(brake, "pads")),
    compound: fact(ofBrake(brake, "pads"), "compound"),
    caliper: anySlot(ofBrake(brake, "caliper")),
    ofCaliper: optional(fact(ofBrake(brake, "caliper"), "pad-compounds")),
    ofRotor: optional(fact(ofBrake(brake, "rotor"), "pad-compounds")),
  }),
  test({ pads, compound, caliper, ofCaliper, ofRotor }, { brake }) {
    if (caliper.state === "unknown") return cannotTell(caliper);
    if (caliper.state === "none") return notApplicable("there is no brake for the pads");
    const onRim = isKind(caliper.value, "rim-brake");
    const rubber = compound.value === "rubber";
    if (onRim !== rubber) {
      return fails(
        onRim
          ? `${pads.subject} are ${compound.value} pads for a rotor, but ${caliper.subject} brakes the rim: fit rubber blocks.`
          : `${pads.subject} are rubber blocks for a rim, but ${caliper.subject} brakes a rotor: fit pads for a rotor.`,
        pads,
        [compound, caliper],
        swaps(ofBrake(brake, "pads")),
      );
    }
    if (onRim) return holds(`${pads.subject} are rubber, for a rim.`);
    const limits = [ofRotor, ofCaliper].flatMap((limit) => (limit.state === "known" ? [limit] : []));
    const refusing = limits.filter(({ value }) => !value.includes(compound.value));
    const [first] = refusing;
    if (first) {
      return fails(
        `${pads.subject} are ${compound.value}, but ${both(refusing.map((limit) => `${limit.subject} allows ${either(limit.value)}`))} only: fit pads of such a compound.`,
        pads,
        [compound, ...refusing],
        swaps(ofBrake(brake, "pads"), ofBrake(brake, first === ofRotor ? "rotor" : "caliper")),
      );
    }
    const unknown = unknowns(ofRotor, ofCaliper);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (limits.length === 0) return notApplicable("neither rotor nor caliper limits the compound");
    return holds(
      `${pads.subject} are ${compound.value}, which ${both(limits.map(({ subject }) => subject))} ${limits.length > 1 ? "allow" : "allows"}.`,
    );
  },
  explanation:
    "Resin pads are quiet and gentle; sintered metal lasts longer in wet and grit, and carries more heat into caliper and " +
    "fluid. Soft rotors are marked for resin pads only: sintered ones cut through them in a season. Some calipers are not " +
    "made for the heat of metal either. What rotor and caliper print decides, and both have to allow the compound.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A rotor worn through by the wrong pads breaks under braking.",
  examples: {
    holds: `
part caliper example.caliper "Caliper" { pad-compounds: resin, semi-metallic }
part rotor example.rotor "Rotor" { pad-compounds: resin, semi-metallic, sintered }
part brake-pads example.pads "Pads" { compound: semi-metallic }

build example "Allowed by both" {
  front-brake { caliper: example.caliper; rotor: example.rotor; pads: example.pads }
}
`,
    fails: `
part caliper example.caliper "Caliper" { pad-compounds: resin, sintered }
part rotor example.rotor "Soft rotor" { pad-compounds: resin }
part brake-pads example.pads "Pads" { compound: sintered }

build example "Metal on a soft rotor" {
  front-brake { caliper: example.caliper; rotor: example.rotor; pads: example.pads }
}
`,
  },
});
