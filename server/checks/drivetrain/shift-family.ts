import { mate } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { ofOneFamily } from "../shared/of-one-family.ts";
import { shiftPair, shiftPairNeeds, shiftPairs } from "../shared/shift-pairs.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/shift-family",
  title: "Controllers and what they move understand each other",
  severity: "error",
  since: 1,
  instances: shiftPairs,
  needs: shiftPairNeeds,
  test(facts, instance) {
    const pair = shiftPair(facts, instance);
    if ("reason" in pair) return notApplicable(pair.reason);
    if ("unknown" in pair) return cannotTell(pair.unknown);
    const { controller, controllerActuation, controllerFamily, movedActuation, movedFamily, slots } = pair;
    if (controller.state === "none") return notApplicable(`${slots.controller} is none`);
    if (controller.state === "unknown") return cannotTell(controller);
    if (controllerActuation.state === "unknown" || movedActuation.state === "unknown") {
      return cannotTell(...[controllerActuation, movedActuation].filter((one) => one.state === "unknown"));
    }
    if (controllerActuation.state === "none" || movedActuation.state === "none") {
      return notApplicable("one of the two has no shift control");
    }
    if (controllerActuation.value !== movedActuation.value) {
      return notApplicable("they do not even work in the same way, which is found as such");
    }
    const byCable = controllerActuation.value === "cable";
    if (byCable && instance.name === "rear") return notApplicable("by cable, pull and ratio are compared instead");

    if (controllerFamily.state === "unknown" || movedFamily.state === "unknown") {
      return cannotTell(...[controllerFamily, movedFamily].filter((one) => one.state === "unknown"));
    }
    if (controllerFamily.state === "none" || movedFamily.state === "none") {
      return notApplicable("one of the two belongs to no family");
    }
    if (mate(controllerFamily.value, movedFamily.value)) {
      return holds(`${ofOneFamily(controllerFamily, movedFamily)}.`);
    }
    const why = byCable ? "the pull of the cable does not suit it" : "they cannot talk to each other";
    return fails(
      `${controllerFamily.subject} is of ${showCode(controllerFamily.value)}, but ${movedFamily.subject} is of ${showCode(movedFamily.value)}: ${why}. Fit both of one family.`,
      controller,
      [controllerFamily, movedFamily],
      swaps(slots.controller, slots.moved),
      // A front cage swung by the wrong length of cable often still reaches both rings.
      byCable && instance.name === "front" ? { severity: "warning" } : {},
    );
  },
  explanation:
    "Electronic controllers and derailleurs are paired, by radio or over a wire, and only parts of one family know each " +
    "other's signals, whatever the number of speeds. Hubs with gears inside each need the controller made for them, " +
    "because their clicks are of unequal length. A front derailleur worked by cable needs the right pull for its lever: " +
    "a mixture may reach both rings and still not trim, so that one is a warning. For a rear derailleur worked by cable " +
    "another check compares pull, ratio and cog spacing.",
  source: "common practice, no source; which families go together is stated in the standards",
  examples: {
    holds: `
standard shift-family example-radio { actuation: electronic }

part rear-derailleur example.motor "Motor" { set-up: electronic; shift-family: example-radio }
part shift-controller example.button "Button" { actuation: electronic; shift-family: example-radio }

build example "One family" {
  drivetrain {
    rear-derailleur: example.motor
    rear-controller: example.button
    front-derailleur: none
  }
}
`,
    fails: `
standard shift-family example-radio { actuation: electronic }
standard shift-family example-wired { actuation: electronic }

part rear-derailleur example.motor "Motor" { set-up: electronic; shift-family: example-radio }
part shift-controller example.button "Button" { actuation: electronic; shift-family: example-wired }

build example "Two families" {
  drivetrain {
    rear-derailleur: example.motor
    rear-controller: example.button
    front-derailleur: none
  }
}
`,
  },
});
