import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "wheel/retention-tabs",
  title: "Open dropouts of the fork keep a wheel whose axle came loose",
  severity: "warning",
  since: 1,
  safety: true,
  needs: () => ({
    axle: slot("front-wheel.axle"),
    fork: slot("fork"),
    tabs: optional(fact("fork", "retention-tabs")),
  }),
  test({ axle, fork, tabs }) {
    if (isKind(axle.value, "thru-axle")) return notApplicable("a thru axle is closed in the dropouts");
    if (tabs.state === "unknown") return cannotTell(tabs);
    if (tabs.state === "none") return notApplicable(`${tabs.path} is none`);
    if (tabs.value) return holds(`${fork.subject} has tabs that keep the wheel when ${axle.subject} comes loose.`);
    return fails(
      `${axle.subject} holds the front wheel in open dropouts, and ${fork.subject} has no tabs that keep it when that comes loose: add tabbed washers or clips that belong to it, or fit a fork with tabs.`,
      fork,
      [tabs, axle],
      swaps("fork"),
    );
  },
  explanation:
    "A front wheel in open dropouts is held by a skewer or by nuts alone. Lips or tabs at the dropouts keep it there when " +
    "that was closed badly, so that it rattles and is noticed instead of coming out. With a disc brake, which pushes the " +
    "axle toward the opening, they matter most. They are never filed off to change wheels faster. Some forks use tabbed " +
    "washers or a clip to the same end.",
  source: "16 CFR 1512.12 and ISO 4210-2 ask for a second hold of the front wheel (from memory)",
  caution: "A front wheel that comes out throws the rider over the bar.",
  examples: {
    holds: `
part fork example.fork "Fork" { retention-tabs: yes }
part quick-release example.skewer "Skewer" { wheel: front }

build example "Kept by its tabs" {
  fork: example.fork
  front-wheel.axle: example.skewer
}
`,
    fails: `
part fork example.fork "Fork" { retention-tabs: no }
part quick-release example.skewer "Skewer" { wheel: front }

build example "Filed off" {
  fork: example.fork
  front-wheel.axle: example.skewer
}
`,
  },
});
