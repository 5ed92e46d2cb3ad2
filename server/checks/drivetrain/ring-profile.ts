import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/ring-profile",
  title: "Something keeps the chain on a single ring",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...requiredRingNeeds,
    derailleur: slot("drivetrain.rear-derailleur"),
    frontDerailleur: optional(slot("drivetrain.front-derailleur")),
    guide: optional(slot("drivetrain.chain-guide")),
    crankProfile: optional(fact("drivetrain.crankset", "ring-profile")),
    ringProfile: optional(fact("drivetrain.chainring", "ring-profile")),
  }),
  test(facts) {
    const { frontDerailleur, guide, crankProfile, ringProfile } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const [ring, ...others] = rings.rings;
    if (others.length > 0) return notApplicable("there are several rings, between which the chain has to move");
    if (guide.state === "known") return holds(`${guide.subject} keeps the chain on the ${ring.teeth} t ring.`);
    if (frontDerailleur.state === "known") {
      return holds(`The cage of ${frontDerailleur.subject} keeps the chain on the ${ring.teeth} t ring.`);
    }
    if (isKind(ring.part.value, "belt-ring")) return notApplicable("a belt cannot be thrown by a derailleur");
    const profile = ring.slot === "drivetrain.crankset" ? crankProfile : ringProfile;
    if (profile.state === "known" && profile.value === "alternating") {
      return holds(`${profile.subject} has wide and narrow teeth in turn, which hold the chain on a single ring.`);
    }
    const unknown = [profile, guide, frontDerailleur].filter((one) => one.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    if (profile.state !== "known") return notApplicable("no tooth profile is stated");
    return fails(
      `${profile.subject} is the only ring and its teeth are ${profile.value}, and neither a chain guide nor a front derailleur keeps the chain on it: fit a ring with alternating teeth, or a chain guide.`,
      ring.part,
      [profile],
      [...swaps(ring.slot), { kind: "insert-part", slot: "drivetrain.chain-guide" }],
    );
  },
  explanation:
    "With two rings the front derailleur's cage stands over the chain and keeps it where it is. With one ring and nothing " +
    "over it, the lower run swings on rough ground and throws the chain off. Rings made to be single have wide and narrow " +
    "teeth in turn, which fill the wide and narrow gaps of the chain and hold it sideways. An even or a ramped ring, made " +
    "to let the chain go, needs a guide. It works on smooth roads, so this is a warning.",
  source: "common practice, no source",
  examples: {
    holds: `
part rear-derailleur example.arm "Arm" { speeds: 11 }
part crankset example.crank "Crank" { rings: 40 t; ring-profile: alternating }

build example "Teeth that hold the chain" {
  drivetrain {
    crankset: example.crank
    rear-derailleur: example.arm
    front-derailleur: none
  }
}
`,
    fails: `
part rear-derailleur example.arm "Arm" { speeds: 11 }
part crankset example.crank "Crank" { rings: 40 t; ring-profile: ramped }

build example "Nothing that holds the chain" {
  drivetrain {
    crankset: example.crank
    rear-derailleur: example.arm
    front-derailleur: none
  }
}
`,
  },
});
