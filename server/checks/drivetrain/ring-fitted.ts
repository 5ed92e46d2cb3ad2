import { optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings, ringFacts } from "../shared/fitted-rings.ts";

export default defineCheck({
  code: "drivetrain/ring-fitted",
  title: "The chain has a ring to run on",
  severity: "error",
  since: 1,
  needs: () => ({
    ...fittedRingNeeds,
    cranks: slot("drivetrain.crankset"),
    chain: optional(slot("drivetrain.chain")),
  }),
  test({ cranks, chain, ...facts }) {
    if (chain.state === "unknown") return cannotTell(chain);
    if (chain.state === "none") return notApplicable("drivetrain.chain is none");
    const rings = fittedRings(facts);
    if (rings.state === "unknown") return cannotTell(rings);
    if (rings.state === "known") {
      return holds(
        `${chain.subject} runs on ${ringFacts(rings.rings)
          .map((fact) => fact.subject)
          .join(" and ")}.`,
      );
    }
    return fails(
      `${cranks.subject} comes without a ring, and the build fits none: ${chain.subject} has 0 rings to run on and needs 1. Fit a ring for that crankset.`,
      cranks,
      [chain],
      [
        { kind: "insert-part", slot: "drivetrain.chainring" },
        { kind: "swap-part", slot: "drivetrain.crankset" },
      ],
    );
  },
  explanation:
    "Some cranksets come with their rings, and others are sold bare. A bare one with no ring chosen for it looks " +
    "complete on a list, and everything that depends on the ring is passed over, since there is no ring to ask about. " +
    "This check says so before the parts are bought.",
  source: "common practice, no source",
  examples: {
    holds: `
part crankset example.arm "Arm" { rings: none }
part chainring example.round "Round 34" { teeth: 34 t }
part chain example.link "Link" { speeds: 11 }

build example "A ring on bare cranks" {
  drivetrain {
    crankset: example.arm
    chainring: example.round
    chain: example.link
  }
}
`,
    fails: `
part crankset example.arm "Arm" { rings: none }
part chain example.link "Link" { speeds: 11 }

build example "Bare cranks" {
  drivetrain {
    crankset: example.arm
    chainring: none
    chain: example.link
  }
}
`,
  },
});
