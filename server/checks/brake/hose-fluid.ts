import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakeActuationNeeds, movedOtherwise } from "../shared/brake-pair.ts";
import { matingPair, showCode, showCodes } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/hose-fluid",
  title: "The hose bears the brake's fluid",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakeActuationNeeds(place),
    hose: slot(ofBrake(place.brake, "hose")),
    bears: fact(ofBrake(place.brake, "hose"), "brake-fluids"),
    ofCaliper: optional(fact(ofBrake(place.brake, "caliper"), "brake-fluid")),
    ofLever: optional(fact(ofBrake(place.brake, "lever"), "brake-fluid")),
  }),
  test({ hose, bears, ofCaliper, ofLever, ...actuation }, { brake }) {
    if (movedOtherwise(actuation, "hydraulic")) return notApplicable("lever or brake is not moved by fluid");
    if (ofCaliper.state === "known" && ofLever.state === "known" && !mate(ofCaliper.value, ofLever.value)) {
      return notApplicable("lever and caliper are found to hold different fluids");
    }
    const fluid = ofCaliper.state === "known" ? ofCaliper : ofLever;
    if (fluid.state !== "known") {
      const unknown = unknowns(ofCaliper, ofLever);
      return unknown.length > 0 ? cannotTell(...unknown) : notApplicable("neither lever nor caliper holds fluid");
    }
    if (matingPair(bears.value, fluid.value)) return holds(`${hose.subject} bears ${showCode(fluid.value)}.`);
    return fails(
      `${hose.subject} bears ${showCodes(bears.value)}, but ${fluid.subject} is filled with ${showCode(fluid.value)}: fit a hose for that fluid.`,
      hose,
      [bears, fluid],
      swaps(ofBrake(brake, "hose")),
    );
  },
  explanation:
    "The inner tube of a hose bears the fluid that it was made for. Glycol hardens some plastics until they crack, and mineral " +
    "oil swells some rubbers, both slowly and from inside. The maker of the hose names the fluids. It is one more reason to " +
    "take the hose from the kit of the brake.",
  source: "common practice, no source; the hose maker's list decides",
  caution: "A hose that its fluid attacks bursts under hard braking.",
  examples: {
    holds: `
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; brake-fluid: DOT-4 }
part hose example.hose "Hose" { brake-fluids: DOT-4, DOT-5.1 }

build example "A hose for glycol" {
  front-brake { caliper: example.caliper; hose: example.hose }
}
`,
    fails: `
standard brake-fluid valley-oil { base: mineral; source: "this example" }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic; brake-fluid: valley-oil }
part hose example.hose "Hose" { brake-fluids: DOT-4, DOT-5.1 }

build example "Oil in a hose for glycol" {
  front-brake { caliper: example.caliper; hose: example.hose }
}
`,
  },
});
