import { fact, optional, slot } from "../../model/need.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRings, requiredRingNeeds, ringFacts, ringSlots, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-positions",
  title: "Front derailleur and its controller serve as many rings as there are",
  severity: "error",
  since: 1,
  instances: [
    { name: "front-derailleur", slot: "drivetrain.front-derailleur", field: "rings" },
    { name: "front-controller", slot: "drivetrain.front-controller", field: "speeds" },
  ] as const,
  needs: (instance) => ({
    ...requiredRingNeeds,
    part: slot(instance.slot),
    derailleurRings: optional(fact("drivetrain.front-derailleur", "rings")),
    count: instance.field === "rings" ? fact(instance.slot, instance.field) : fact(instance.slot, instance.field),
  }),
  test(facts, { slot: path, name }) {
    const { part, count, derailleurRings } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const there = rings.rings.length;
    const served = count.value;
    const rings_ = (number: number): string => (number === 1 ? "1 ring" : `${number} rings`);
    if (served === there) return holds(`${count.subject} serves ${rings_(served)}, and there are ${there}.`);
    // Where both agree and the cranks do not, that is one fault: it is found with the derailleur.
    if (name === "front-controller" && derailleurRings.state === "known" && derailleurRings.value === served) {
      return notApplicable(`it agrees with ${derailleurRings.subject}, which is compared with the rings`);
    }
    const fewer = served < there;
    const consequence = fewer
      ? `${rings_(there - served)} can never be shifted to`
      : "a limit screw has to stop the movement that is left over";
    return fails(
      `${count.subject} serves ${rings_(served)}, but the cranks turn ${rings_(there)} (${rings.rings.map(({ teeth }) => teeth).join("-")} t), so ${consequence}: fit a ${name.replace("-", " ")} for ${rings_(there)}.`,
      part,
      [count, ...ringFacts(rings.rings)],
      swaps(path, ...ringSlots(rings.rings)),
      { severity: fewer ? "error" : "warning" },
    );
  },
  explanation:
    "A front derailleur's cage is shaped for two rings or for three, and its controller has as many positions. With too " +
    "few, a ring is never reached. With too many, the movement left over is stopped by a limit screw, which works and is " +
    "often done with three-position controllers on two rings, so that is a warning. A friction controller says " +
    "speeds: none and is not asked.",
  source: "common practice, no source",
  examples: {
    holds: `
part front-derailleur example.cage "Double cage" { rings: 2 }
part shift-controller example.left "Left lever" { speeds: 2 }
part crankset example.double "46-30" { rings: 46-30 t }

build example "Two of each" {
  drivetrain {
    front-derailleur: example.cage
    front-controller: example.left
    crankset: example.double
  }
}
`,
    fails: `
part front-derailleur example.cage "Double cage" { rings: 2 }
part shift-controller example.left "Left lever" { speeds: 2 }
part crankset example.triple "44-32-22" { rings: 44-32-22 t }

build example "Three rings on a double's cage" {
  drivetrain {
    front-derailleur: example.cage
    front-controller: example.left
    crankset: example.triple
  }
}
`,
  },
});
