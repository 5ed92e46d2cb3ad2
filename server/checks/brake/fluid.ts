import type { ResolvedCode } from "../../model/standard.ts";
import { mate } from "../../model/standard.ts";
import { defineCheck, fails, notApplicable } from "../define.ts";
import { brakeActuationNeeds, movedOtherwise } from "../shared/brake-pair.ts";
import { dimensionOf, showCode } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "is filled with",
  other: "is filled with",
  nothing: "holds no fluid",
  remedy: "fit a lever and a brake for one fluid.",
};

export default defineCheck({
  code: "brake/fluid",
  title: "Lever and caliper hold the same fluid",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakeActuationNeeds(place),
    lever: anySlot(ofBrake(place.brake, "lever")),
    leverFluid: anyFact<ResolvedCode>(ofBrake(place.brake, "lever"), "brake-fluid"),
    leverFamily: anyFact<ResolvedCode>(ofBrake(place.brake, "lever"), "hydraulic-family"),
    caliper: anySlot(ofBrake(place.brake, "caliper")),
    fluid: anyFact<ResolvedCode>(ofBrake(place.brake, "caliper"), "brake-fluid"),
    family: anyFact<ResolvedCode>(ofBrake(place.brake, "caliper"), "hydraulic-family"),
  }),
  test({ lever, leverFluid, leverFamily, caliper, fluid, family, ...actuation }, place) {
    if (movedOtherwise(actuation, "hydraulic")) return notApplicable("lever or brake is not moved by fluid");
    if (leverFamily.state === "known" && family.state === "known" && !mate(leverFamily.value, family.value)) {
      return notApplicable("lever and caliper are found not to be made to be joined, their fluids with them");
    }
    const slots = swaps(ofBrake(place.brake, "lever"), ofBrake(place.brake, "caliper"));
    const one = readEnd(lever, leverFluid, "brake-fluid");
    const other = readEnd(caliper, fluid, "brake-fluid");
    if (one.state === "known" && other.state === "known" && !mate(one.fact.value, other.fact.value)) {
      const bases = [one, other].map(({ fact }) => dimensionOf<string>(fact.value, "base"));
      if (bases.every((base) => base === "glycol")) {
        return fails(
          `${one.part.subject} is filled with ${showCode(one.fact.value)}, but ${other.part.subject} with ${showCode(other.fact.value)}: both are glycol, and which of the two both makers allow decides. Drain what is there and fill the whole brake with that one.`,
          one.part,
          [one.fact, other.fact],
          slots,
          { severity: "warning" },
        );
      }
    }
    return judgeMating(jointNamed(`${place.name}-fluid`), words, one, other, slots);
  },
  explanation:
    "The seals of a brake are made of a rubber that bears one kind of fluid. Mineral oil makes the seals of a glycol brake " +
    "swell, and glycol those of an oil brake, so that pistons stick or leak: the brake feels well at first and fails later. " +
    "Mineral oils are not all one either; each maker's has its own viscosity and additives. Glycol fluids harm paint and " +
    "skin and draw water from the air, so that they are renewed. The fluid is printed on the lever's lid.",
  source: "common practice, no source; 49 CFR 571.116 for the glycol fluids (from memory)",
  caution: "Fluids are never mixed: seals swell and the brake fails. Brake fluid harms eyes, skin and paint.",
  examples: {
    holds: `
part brake-lever example.lever "Lever" { brake-actuation: hydraulic; brake-fluid: DOT-4 }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; brake-fluid: DOT-4 }

build example "One fluid" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
    fails: `
standard brake-fluid valley-oil { base: mineral; source: "this example" }
part brake-lever example.lever "Lever" { brake-actuation: hydraulic; brake-fluid: DOT-4 }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; brake-fluid: valley-oil }

build example "Two fluids" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
  },
});
