import type { ResolvedCode } from "../../model/standard.ts";
import { mate } from "../../model/standard.ts";
import { defineCheck, fails, notApplicable } from "../define.ts";
import { brakeActuationNeeds, movedOtherwise } from "../shared/brake-pair.ts";
import { showCode } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "is of",
  other: "is made for",
  nothing: "is joined with no lever",
  remedy: "fit a lever and a brake that are made to be joined.",
};

export default defineCheck({
  code: "brake/hydraulic-family",
  title: "Lever and caliper are made to be joined",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakeActuationNeeds(place),
    lever: anySlot(ofBrake(place.brake, "lever")),
    leverFamily: anyFact<ResolvedCode>(ofBrake(place.brake, "lever"), "hydraulic-family"),
    leverFluid: anyFact<ResolvedCode>(ofBrake(place.brake, "lever"), "brake-fluid"),
    caliper: anySlot(ofBrake(place.brake, "caliper")),
    family: anyFact<ResolvedCode>(ofBrake(place.brake, "caliper"), "hydraulic-family"),
    fluid: anyFact<ResolvedCode>(ofBrake(place.brake, "caliper"), "brake-fluid"),
  }),
  test({ lever, leverFamily, leverFluid, caliper, family, fluid, ...actuation }, place) {
    if (movedOtherwise(actuation, "hydraulic")) return notApplicable("lever or brake is not moved by fluid");
    const slots = swaps(ofBrake(place.brake, "lever"), ofBrake(place.brake, "caliper"));
    const one = readEnd(lever, leverFamily, "hydraulic-family");
    const other = readEnd(caliper, family, "hydraulic-family");
    if (
      one.state === "known" &&
      other.state === "known" &&
      leverFluid.state === "known" &&
      fluid.state === "known" &&
      !mate(one.fact.value, other.fact.value) &&
      !mate(leverFluid.value, fluid.value)
    ) {
      return fails(
        `${one.part.subject} is of ${showCode(one.fact.value)} with ${showCode(leverFluid.value)}, but ${other.part.subject} is made for ${showCode(other.fact.value)} with ${showCode(fluid.value)}: neither volumes nor fluids agree. Fit a lever and a brake that are made to be joined.`,
        one.part,
        [one.fact, other.fact, leverFluid, fluid],
        slots,
      );
    }
    return judgeMating(jointNamed(`${place.name}-hydraulics`), words, one, other, slots);
  },
  explanation:
    "The piston in the lever moves a certain volume of fluid, and the pistons in the caliper need a certain volume to reach " +
    "the rotor. Only makers who designed the two together know that the lever does not come to the bar, or that the brake " +
    "is not so sharp that it throws the rider. Hose and fluid come with the family as well. A lever of one family on a " +
    "caliper of another is therefore refused even when hose and fluid would agree.",
  source: "common practice, no source; the makers' lists of what may be joined decide",
  caution:
    "Each brake is squeezed hard for ten seconds alone, and looked over for leaks, before anyone rides; a lever is never pulled with the rotor out.",
  examples: {
    holds: `
standard hydraulic-family valley-disc { source: "this example" }
part brake-lever example.lever "Lever" { brake-actuation: hydraulic; hydraulic-family: valley-disc }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; hydraulic-family: valley-disc }

build example "Made to be joined" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
    fails: `
standard hydraulic-family valley-disc { source: "this example" }
standard hydraulic-family ridge-disc { source: "this example" }
part brake-lever example.lever "Lever" { brake-actuation: hydraulic; hydraulic-family: valley-disc }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; hydraulic-family: ridge-disc }

build example "Two families" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
  },
});
