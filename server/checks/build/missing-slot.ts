import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, holds, notApplicable } from "../define.ts";
import { askedSlots } from "../shared/open-slots.ts";

export default defineCheck({
  code: "build/missing-slot",
  title: "Every place on the bike has a part, or says that it has none",
  severity: "information",
  since: 1,
  instances: askedSlots.map((path) => ({ name: path as string, slot: path })),
  needs: ({ slot: path }) => ({ here: optional(slot(path)), template: optional(buildField("template")) }),
  test({ here, template }, { slot: path }) {
    if (stated(template) === true) return notApplicable("a template is not a whole bike");
    if (here.state === "unknown") return cannotTell(here);
    return holds(here.state === "none" ? `${path}: none.` : `${path}: ${here.subject}.`);
  },
  explanation:
    "A part that nobody chose yet fails no check, because there is nothing to compare: everything that depends on it " +
    "simply cannot be told. This check lists the places that are still open, so that a build that looks clean is not " +
    "taken for a finished one. A place where a bike has nothing on purpose says none, which settles it. Places that " +
    "follow from others, such as the controller of a front derailleur that is not there, are not asked for. " +
    "A build with template: yes is only a base for others and is not asked.",
  source: "common practice, no source",
  examples: {
    holds: `
part fork example.rigid "Rigid" { travel: none }

build example "A frame set, whose other places are empty on purpose" {
  frame: none
  fork: example.rigid
  rear-shock: none
  headset: none
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    cassette: none
    chain: none
    crankset: none
    chainring: none
    bottom-bracket: none
    pedals: none
    rear-controller: none
  }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  cockpit { stem: none; handlebar: none; grips: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  rear-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
}
`,
    // What nobody chose is not known; it is never wrong.
    fails: "",
  },
});
