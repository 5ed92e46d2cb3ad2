import { showNumber } from "../../calculations/show.ts";
import { fact, optional, slot, worked } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { rearActuationNeeds, rearDerailleurActuation } from "../shared/actuation.ts";
import { ofOneFamily } from "../shared/of-one-family.ts";
import { swaps } from "../shared/swaps.ts";

/**
 * Error added up over all clicks, in millimetres, that can still be shared out with the cable adjuster: half of it at
 * each end is about the sideways play that a guide pulley has.
 */
const tolerable = 1;

export default defineCheck({
  code: "drivetrain/indexing",
  title: "Controller, derailleur and cassette keep step",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...rearActuationNeeds,
    controller: slot("drivetrain.rear-controller"),
    derailleur: slot("drivetrain.rear-derailleur"),
    actuation: optional(fact("drivetrain.rear-controller", "actuation")),
    positions: optional(fact("drivetrain.rear-controller", "speeds")),
    controllerFamily: optional(fact("drivetrain.rear-controller", "shift-family")),
    derailleurFamily: optional(fact("drivetrain.rear-derailleur", "shift-family")),
    cogs: optional(fact("drivetrain.cassette", "cogs")),
    pull: optional(fact("drivetrain.rear-controller", "pull-per-click")),
    ratio: optional(fact("drivetrain.rear-derailleur", "actuation-ratio")),
    pitch: optional(fact("drivetrain.cassette", "cog-pitch")),
    error: optional(worked<number>("drivetrain.indexing-error")),
  }),
  test(facts) {
    const { controller, actuation, positions, controllerFamily, derailleurFamily, cogs, pull, ratio, pitch, error } =
      facts;
    const moved = rearDerailleurActuation(facts);
    if (actuation.state === "none") return notApplicable(`${controller.subject} has no shift control`);
    if (actuation.state === "known" && actuation.value !== "cable")
      return notApplicable("the controller pulls no cable");
    if (moved.state === "known" && moved.value !== "cable") return notApplicable("no cable moves the derailleur");
    if (actuation.state === "unknown" || moved.state === "unknown") {
      return cannotTell(...[actuation, moved].filter((one) => one.state === "unknown"));
    }
    if (positions.state === "none") return notApplicable(`${controller.subject} has no clicks`);
    if (cogs.state === "known" && cogs.value.length === 1) return notApplicable("one cog needs no clicks");

    if (controllerFamily.state === "unknown" || derailleurFamily.state === "unknown") {
      return cannotTell(...[controllerFamily, derailleurFamily].filter((one) => one.state === "unknown"));
    }
    const families = controllerFamily.state === "known" && derailleurFamily.state === "known";
    if (families && mate(controllerFamily.value, derailleurFamily.value)) {
      // Rounding explains a good part of a cog's distance over all clicks, never more than a whole one.
      const known = error.state === "known" && pull.state === "known" && ratio.state === "known";
      if (known && pitch.state === "known" && !atMost(Math.abs(error.value), pitch.value)) {
        return fails(
          `${ofOneFamily(controllerFamily, derailleurFamily)}, but ${pull.written} of cable × ${ratio.written} against cogs ${pitch.written} apart adds up to ${showNumber(error.value, 2)} mm over all clicks, more than a whole cog: one of the three numbers, or one of the families, is not what the part has. Compare them with the makers' sheets.`,
          controller,
          [controllerFamily, derailleurFamily, pull, ratio, pitch],
        );
      }
      return holds(
        `${ofOneFamily(controllerFamily, derailleurFamily)}; published pulls and ratios are too rounded to say more.`,
      );
    }

    // A mixture: its makers promise nothing, so the numbers are all there is.
    if (error.state === "unknown") return cannotTell(error);
    if (error.state === "none" || pull.state !== "known" || ratio.state !== "known" || pitch.state !== "known") {
      return notApplicable("pull, ratio or cog pitch is stated to be none");
    }
    const sum = `${pull.written} of cable × ${ratio.written} against cogs ${pitch.written} apart adds up to ${showNumber(error.value, 2)} mm over all clicks`;
    const size = Math.abs(error.value);
    if (atMost(size, tolerable)) {
      return holds(
        `${controller.subject} and ${ratio.subject} are not of one family, but ${sum}, which the cable adjuster can share out.`,
        (tolerable - size) / tolerable,
      );
    }
    return fails(
      `${controller.subject} and ${ratio.subject} are not of one family, and ${sum}, more than the ${tolerable} mm that can be shared out between the ends: the middle or the end gears will not index. Fit a controller and a derailleur of one family, with the cogs they are made for.`,
      controller,
      [...(families ? [controllerFamily, derailleurFamily] : []), pull, ratio, pitch],
      swaps("drivetrain.rear-controller", "drivetrain.rear-derailleur", "drivetrain.cassette"),
    );
  },
  explanation:
    "Each click of a cable controller pulls a length of cable, the derailleur turns it into sideways movement by its " +
    "ratio, and that has to be the distance from cog to cog. A small error in each click adds up from one end of the " +
    "cassette to the other. Parts of one shift family are made for each other and pass, whatever the published figures " +
    "give: these are rounded, and a rounding of 0.05 in both pull and ratio alone makes more than 1.5 mm over eight " +
    "clicks. Only where it comes to more than a whole cog is one of the numbers wrong, and that is said. Mixtures are " +
    "judged by the arithmetic, and only with a warning. About a millimetre can be shared out " +
    "between both ends with the cable adjuster, because guide pulleys have some play.",
  source:
    "common practice, no source: cog pitch = cable pull × actuation ratio; the tolerable sum of 1 mm is common practice too",
  examples: {
    holds: `
standard shift-family example-flat { actuation: cable }
standard shift-family example-drop { actuation: cable }

part shift-controller example.lever "Lever" { actuation: cable; speeds: 9; shift-family: example-flat; pull-per-click: 2.5 mm }
part rear-derailleur example.arm "Arm" { set-up: cable; shift-family: example-drop; actuation-ratio: 1.7 }
part cassette example.cogs "11-34" { cogs: 11-13-15-17-20-23-26-30-34 t; cog-pitch: 4.35 mm }

build example "A mixture that keeps step" {
  drivetrain {
    rear-controller: example.lever
    rear-derailleur: example.arm
    cassette: example.cogs
  }
}
`,
    fails: `
standard shift-family example-flat { actuation: cable }
standard shift-family example-drop { actuation: cable }

part shift-controller example.lever "Lever" { actuation: cable; speeds: 9; shift-family: example-flat; pull-per-click: 2.5 mm }
part rear-derailleur example.arm "Arm" { set-up: cable; shift-family: example-drop; actuation-ratio: 1.4 }
part cassette example.cogs "11-34" { cogs: 11-13-15-17-20-23-26-30-34 t; cog-pitch: 4.35 mm }

build example "A mixture that does not" {
  drivetrain {
    rear-controller: example.lever
    rear-derailleur: example.arm
    cassette: example.cogs
  }
}
`,
  },
});
