import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRings, requiredRingNeeds, ringFacts } from "../shared/fitted-rings.ts";

export default defineCheck({
  code: "drivetrain/front-shifting",
  title: "What is there for several rings has several rings to serve, and the other way round",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...requiredRingNeeds,
    derailleur: optional(slot("drivetrain.front-derailleur")),
    controller: optional(slot("drivetrain.front-controller")),
    actuation: optional(fact("drivetrain.front-controller", "actuation")),
    rear: optional(slot("drivetrain.rear-derailleur")),
    tensioner: optional(slot("drivetrain.chain-tensioner")),
  }),
  test(facts) {
    const { derailleur, controller, actuation, rear, tensioner } = facts;
    const rings = fittedRings(facts);
    const unknown = [rings, derailleur].filter((one) => one.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    if (rings.state !== "known") return notApplicable("no ring is fitted");
    const count = rings.rings.length;
    const teeth = `${rings.rings.map((ring) => ring.teeth).join("-")} t`;
    if (derailleur.state === "known") {
      if (count === 1) return notApplicable("the front derailleur is compared with the rings by itself");
      return holds(`${derailleur.subject} moves the chain between the ${count} rings (${teeth}).`);
    }
    // A lever with no shift control in it may stand here because it is the brake lever.
    const moves = controller.state === "known" && actuation.state !== "none";
    if (moves) {
      return fails(
        `${controller.subject} is the front controller, but the build has no front derailleur: it moves nothing. Fit a front derailleur for the ${count === 1 ? "ring" : `${count} rings`} (${teeth}), or leave the controller off.`,
        controller,
        ringFacts(rings.rings),
        [
          ...(count > 1 ? [{ kind: "insert-part", slot: "drivetrain.front-derailleur" } as const] : []),
          { kind: "leave-empty", slot: "drivetrain.front-controller" },
        ],
      );
    }
    if (count === 1) return notApplicable("there is one ring");
    const slack =
      rear.state === "none" && tensioner.state === "none"
        ? ", and neither a rear derailleur nor a tensioner takes up the slack between them"
        : "";
    const [first] = rings.rings;
    return fails(
      `The cranks turn ${count} rings (${teeth}), but the build has no front derailleur, so the chain is moved by hand${slack}. Fit a front derailleur and its controller, or cranks with one ring.`,
      first.part,
      ringFacts(rings.rings),
      [{ kind: "insert-part", slot: "drivetrain.front-derailleur" }],
    );
  },
  explanation:
    "Several rings are there to be changed between, and a front derailleur with its controller does that. Where one of the " +
    "three is forgotten the build looks complete: a ring that is never reached, or a lever with nothing at the end of its " +
    "cable. Some bikes have two rings for two terrains and change by hand at the roadside, so this is a warning.",
  source: "common practice, no source",
  examples: {
    holds: `
part front-derailleur example.cage "Double cage" { rings: 2 }
part crankset example.double "46-30" { rings: 46-30 t }

build example "A cage for two rings" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.double
  }
}
`,
    fails: `
part crankset example.double "46-30" { rings: 46-30 t }

build example "Two rings and nothing between them" {
  drivetrain {
    front-derailleur: none
    crankset: example.double
  }
}
`,
  },
});
