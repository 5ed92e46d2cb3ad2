import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { workedBy } from "../shared/actuation.ts";
import { shiftPair, shiftPairNeeds, shiftPairs } from "../shared/shift-pairs.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/actuation",
  title: "Controllers and what they move work in the same way",
  severity: "error",
  since: 1,
  instances: shiftPairs,
  needs: shiftPairNeeds,
  test(facts, instance) {
    const pair = shiftPair(facts, instance);
    if ("reason" in pair) return notApplicable(pair.reason);
    if ("unknown" in pair) return cannotTell(pair.unknown);
    const { controller, controllerActuation, moved, movedActuation, slots } = pair;
    if (controller.state === "none") {
      if (movedActuation.state === "none") return notApplicable(`${moved.subject} changes gear by itself`);
      const { cogs } = facts;
      if (instance.name === "rear" && cogs.state === "unknown") return cannotTell(cogs);
      if (instance.name === "rear" && cogs.state === "known" && cogs.value.length === 1) {
        return notApplicable("with one cog the derailleur only takes up slack, and nothing has to move it");
      }
      return fails(
        `Nothing moves ${moved.subject}: ${slots.controller} is none. Fit a controller that works ${movedActuation.state === "known" ? workedBy(movedActuation.value) : "with it"}, or leave ${moved.subject} off.`,
        moved,
        [],
        [{ kind: "insert-part", slot: slots.controller }],
      );
    }
    if (controller.state === "unknown") return cannotTell(controller);
    if (controllerActuation.state === "none") {
      return fails(
        `${controller.subject} has no shift control, so nothing moves ${moved.subject}: fit a controller, or a lever with one built in.`,
        controller,
        [],
        swaps(slots.controller),
      );
    }
    if (controllerActuation.state === "unknown" || movedActuation.state === "unknown") {
      return cannotTell(...[controllerActuation, movedActuation].filter((one) => one.state === "unknown"));
    }
    if (movedActuation.state === "none") return notApplicable(`${moved.subject} states nothing that moves it`);
    if (controllerActuation.value === movedActuation.value) {
      return holds(
        `${controllerActuation.subject} works ${workedBy(controllerActuation.value)}, and so does ${movedActuation.subject}.`,
      );
    }
    return fails(
      `${controllerActuation.subject} works ${workedBy(controllerActuation.value)}, but ${movedActuation.subject} is moved ${workedBy(movedActuation.value)}: fit a controller that works ${workedBy(movedActuation.value)}, or something in place of ${movedActuation.subject} that is moved ${workedBy(controllerActuation.value)}.`,
      controller,
      [controllerActuation, movedActuation],
      swaps(slots.controller, slots.moved),
    );
  },
  explanation:
    "A cable controller pulls, an electronic one sends a signal, and neither can do the other's work: a derailleur with " +
    "a motor has nowhere to hold a cable, and one for a cable hears nothing. The check takes each derailleur, and a hub " +
    "with gears inside, with the controller that belongs to it. A derailleur that clamps to the axle exists both ways; " +
    "there its power says which it is, and power: none means a cable. A brake lever named as a controller has to have a " +
    "shift control built in.",
  source: "common practice, no source",
  examples: {
    holds: `
part rear-derailleur example.motor "Motor" { set-up: electronic }
part shift-controller example.button "Button" { actuation: electronic }

build example "A signal for a motor" {
  drivetrain {
    rear-derailleur: example.motor
    rear-controller: example.button
    front-derailleur: none
  }
}
`,
    fails: `
part rear-derailleur example.motor "Motor" { set-up: electronic }
part shift-controller example.trigger "Trigger" { actuation: cable }

build example "A cable for a motor" {
  drivetrain {
    rear-derailleur: example.motor
    rear-controller: example.trigger
    front-derailleur: none
  }
}
`,
  },
});
