import { notThreadless, threadlessNeeds } from "../../calculations/shared/threadless.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, optional, setting, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "steering/spacer-limit",
  title: "No more spacers under the stem than the fork's maker allows",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadlessNeeds,
    stem: slot("cockpit.stem"),
    below: optional(setting("cockpit.stem", "spacers-below")),
    most: optional(fact("fork", "greatest-spacers")),
  }),
  test({ stem, below, most, ...kind }) {
    const other = notThreadless(kind);
    if (other) return notApplicable(other);
    if (below.state === "none") return notApplicable(`${below.path} is none`);
    if (most.state === "none") return notApplicable(`${most.path} is none`);
    if (most.state === "unknown" || below.state === "unknown") {
      return cannotTell(...[below, most].flatMap((one) => (one.state === "unknown" ? [one] : [])));
    }
    const [has, allows] = showPair(below.value, most.value, "length");
    if (atMost(below.value, most.value)) {
      return holds(
        `${has} of spacers under ${stem.subject}, and ${most.subject} allows ${allows}.`,
        most.value > 0 ? (most.value - below.value) / most.value : 0,
      );
    }
    const repairs: readonly Repair[] = [
      { kind: "set-setting", slot: "cockpit.stem", setting: "spacers-below", value: millimetres(most.value, "down") },
      ...swaps("fork"),
    ];
    return fails(
      `${has} of spacers under ${stem.subject}, but the maker of ${most.subject} allows ${allows} at most: use ${allows} and a stem that points further up, or a bar with more rise.`,
      below,
      [below, most],
      repairs,
    );
  },
  explanation:
    "Every spacer under the stem lengthens the lever by which the bar bends the steerer at the upper bearing. Makers of " +
    "carbon steerers therefore limit the stack, commonly to 30 or 40 mm, and some limit aluminium ones too. A higher bar " +
    "is better had from a stem that points up or a bar that rises. Spacers over the stem do not count, and one thin one " +
    "there lets the clamp sit whole on the steerer. A fork without a limit states none.",
  source: "common practice, no source; the limit is the fork maker's own figure",
  caution: "A steerer that breaks at the upper bearing takes the steering away without warning.",
  examples: {
    holds: `
part fork example.fork "Carbon fork" { greatest-spacers: 30 mm }
part stem example.stem "Stem" { length: 100 mm }

build example "At the limit" {
  fork: example.fork
  cockpit.stem: example.stem { spacers-below: 30 mm }
}
`,
    fails: `
part fork example.fork "Carbon fork" { greatest-spacers: 30 mm }
part stem example.stem "Stem" { length: 100 mm }

build example "A tall stack on carbon" {
  fork: example.fork
  cockpit.stem: example.stem { spacers-below: 45 mm }
}
`,
  },
});
