import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact } from "../shared/end.ts";

export default defineCheck({
  code: "drivetrain/battery-fitted",
  title: "A battery feeds what is wired to one",
  severity: "error",
  since: 1,
  instances: [
    { name: "rear-derailleur", slot: "drivetrain.rear-derailleur", works: "set-up" },
    { name: "rear-controller", slot: "drivetrain.rear-controller", works: "actuation" },
    { name: "front-controller", slot: "drivetrain.front-controller", works: "actuation" },
  ] as const,
  needs: (instance) => ({
    part: slot(instance.slot),
    works: anyFact<string>(instance.slot, instance.works),
    power: optional(fact(instance.slot, "power")),
    battery: optional(slot("drivetrain.battery")),
    derailleurPower: optional(fact("drivetrain.rear-derailleur", "power")),
  }),
  test({ part, works, power, battery, derailleurPower }, { name }) {
    if (stated(works) === "cable") return notApplicable(`${part.subject} works by cable`);
    if (power.state === "unknown") return cannotTell(power);
    if (power.state === "none") return notApplicable(`${part.subject} takes no power`);
    if (power.value !== "wired") return notApplicable(`${power.subject} has a battery of its own`);
    if (battery.state === "unknown") return cannotTell(battery);
    if (battery.state === "known") return holds(`${battery.subject} feeds ${power.subject}, which is wired.`);
    if (name !== "rear-derailleur" && derailleurPower.state === "known" && derailleurPower.value === "wired") {
      return notApplicable(`it shares the battery of ${derailleurPower.subject}, which is asked for there`);
    }
    return fails(
      `${power.subject} is wired to a shared battery, but the build has none (drivetrain.battery). Fit 1 battery, and say where it goes.`,
      part,
      [power],
      [{ kind: "insert-part", slot: "drivetrain.battery" }],
    );
  },
  explanation:
    "Some electronic derailleurs and controllers carry a cell of their own, and others are wired to one battery in the frame. " +
    "A wired one with no battery on the list does nothing, and the battery, its holder and its wire are easily forgotten " +
    "when the parts are ordered. Where it is fitted also decides what the frame and the seatpost have to take.",
  source: "common practice, no source",
  caution: "A damaged or wet lithium battery is not charged, and none is charged unattended.",
  examples: {
    holds: `
part rear-derailleur example.arm "Arm" { set-up: electronic; power: wired }
part shift-controller example.lever "Lever" { power: wired }
part battery example.cell "Cell" { mass: 40 g }

build example "One battery for all" {
  drivetrain { rear-derailleur: example.arm; rear-controller: example.lever; front-controller: none; battery: example.cell }
}
`,
    fails: `
part rear-derailleur example.arm "Arm" { set-up: electronic; power: wired }

build example "Nothing to feed it" {
  drivetrain { rear-derailleur: example.arm }
}
`,
  },
});
