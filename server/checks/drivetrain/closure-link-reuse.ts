import { fact, optional, setting, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/closure-link-reuse",
  title: "A closure link that is good for once is new",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    link: slot("drivetrain.closure-link"),
    used: optional(setting("drivetrain.closure-link", "used-before")),
    reusable: optional(fact("drivetrain.closure-link", "reusable")),
  }),
  test({ link, used, reusable }) {
    if (used.state === "unknown") return cannotTell(used);
    if (used.state === "none" || !used.value) return holds(`${link.subject} has not been closed before.`);
    if (reusable.state === "unknown") return cannotTell(reusable);
    if (reusable.state === "none") return notApplicable(`${link.subject} states nothing about closing it again`);
    if (reusable.value) return holds(`${link.subject} has been closed before, which its maker allows.`);
    return fails(
      `${link.subject} has been closed before (used-before: yes), but its maker allows it once only (reusable: no): fit a new one.`,
      used,
      [reusable],
      [
        { kind: "set-setting", slot: "drivetrain.closure-link", setting: "used-before", value: "no" },
        ...swaps("drivetrain.closure-link"),
      ],
    );
  },
  explanation:
    "Closure links for narrow chains are a press fit: closing one stretches the seats of its pins, and opening it takes " +
    "the rest. Closed a second time it feels firm and holds no longer. Makers of such links allow them once, and shops " +
    "put a new one with every chain that was opened. Others may be opened again as often as their maker says. The build " +
    "states used-before where an old link goes back on.",
  source: "common practice, no source; the closure link's maker says whether it may be used again",
  caution: "A closure link used against its maker's word parts under load and throws the rider.",
  examples: {
    holds: `
part closure-link example.link "Link for five openings" { reusable: yes }

build example "Closed again, as its maker allows" {
  drivetrain.closure-link: example.link { used-before: yes }
}
`,
    fails: `
part closure-link example.link "Link for once" { reusable: no }

build example "Closed again against its maker's word" {
  drivetrain.closure-link: example.link { used-before: yes }
}
`,
  },
});
