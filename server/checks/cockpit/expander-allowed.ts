import type { Installed } from "../../model/assembly.ts";
import { fact, type Maybe, type Need, optional, slot } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { clampForm, controls, levers } from "../shared/controls.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

type ExpanderNeeds = {
  readonly control: Need<Installed, true>;
  readonly mount: Need<ResolvedCode, true>;
  readonly bar: Need<Installed, true>;
  readonly allowed: Need<boolean, true>;
};

interface ExpanderFacts {
  readonly control: Maybe<Installed>;
  readonly mount: Maybe<ResolvedCode>;
  readonly bar: Maybe<Installed>;
  readonly allowed: Maybe<boolean>;
}

export default defineCheck({
  code: "cockpit/expander-allowed",
  title: "The bar bears what expands in its ends",
  severity: "error",
  since: 1,
  safety: true,
  instances: [...levers.map((path) => ({ name: path, slot: path })), ...controls],
  needs: ({ slot: path }): ExpanderNeeds => ({
    control: anySlot(path),
    mount: anyFact(path, "mount"),
    bar: optional(slot("cockpit.handlebar")),
    allowed: optional(fact("cockpit.handlebar", "bar-ends-allowed")),
  }),
  test({ control, mount, bar, allowed }: ExpanderFacts, { slot: path }) {
    if (control.state === "none") return notApplicable(`${path} is none`);
    if (bar.state === "none") return notApplicable("cockpit.handlebar is none");
    if (mount.state === "none") return notApplicable(`what is in ${path} states no mount`);
    if (control.state === "unknown" || mount.state === "unknown") return cannotTell(...unknowns(control, mount));
    if (clampForm(mount.value) !== "bar-end") {
      return notApplicable(`${control.subject} does not sit in the bar's end`);
    }
    if (allowed.state === "none") return notApplicable(`${allowed.path} is none`);
    if (allowed.state === "unknown") return cannotTell(...unknowns(bar, allowed));
    if (allowed.value) {
      return holds(
        `${control.subject} expands in the bar's end, and the maker of ${allowed.subject} allows it (bar-ends-allowed: yes).`,
      );
    }
    return fails(
      `${control.subject} expands in the bar's end, but the maker of ${allowed.subject} forbids what does (bar-ends-allowed: no): fit a control with a band, or a bar that bears it.`,
      control,
      [mount, allowed],
      swaps(path, "cockpit.handlebar"),
    );
  },
  explanation:
    "A shifter, or a brake lever, that sits in the bar's end is held by a plug that is spread until it grips the wall from " +
    "inside. The wall of a light bar is thin there, and one of carbon fibre splits lengthwise. Makers of such bars forbid " +
    "bar ends and whatever expands. Plugs that only close the ends are asked about where the ends are.",
  source: "common practice, no source; the bar maker's own statement decides",
  caution: "A bar that splits takes the control, and the hand on it, with it. The bar maker's word comes first.",
  examples: {
    holds: `
part handlebar example.drop "Drop 440" { bar-ends-allowed: yes }
part shift-controller example.end "Bar-end shifter" { mount: bar-end }

build example "A bar that bears an expander" {
  cockpit.handlebar: example.drop
  drivetrain { rear-controller: example.end; front-controller: none }
  front-brake.lever: none
  rear-brake.lever: none
  seat.remote: none
}
`,
    fails: `
part handlebar example.light "Light 420" { bar-ends-allowed: no }
part shift-controller example.end "Bar-end shifter" { mount: bar-end }

build example "An expander in a light bar" {
  cockpit.handlebar: example.light
  drivetrain.rear-controller: example.end
}
`,
  },
});
