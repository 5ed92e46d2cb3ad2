import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import type { CheckRow } from "../../engine/evaluate.ts";
import type { Declaration } from "../../model/declaration.ts";
import { ruleCode } from "../../rules/rule.ts";

export interface RuleBuild {
  readonly build: Declaration;
  readonly report: BuildReport;
  /** What the rule comes to for it. */
  readonly row: CheckRow;
}

/** How many builds are looked at for one answer: a workshop may have thousands. */
const mostLookedAt = 100;

/** The builds that a rule is asked of with what came of it, those in open files first, then by name. */
export function rulesBuilds(engine: Engine, rule: Declaration): readonly RuleBuild[] {
  const code = ruleCode(rule.name);
  const builds = [...engine.workshop.declared("build")].filter((build) => engine.workshop.build(build.name) === build);
  const order = (one: Declaration, other: Declaration): number =>
    Number(engine.isOpen(other.uri)) - Number(engine.isOpen(one.uri)) || (one.name < other.name ? -1 : 1);
  return builds
    .sort(order)
    .slice(0, mostLookedAt)
    .flatMap((build) => {
      const report = engine.report(build);
      const row = report?.rows.find(({ check }) => check.code === code);
      return report && row ? [{ build, report, row }] : [];
    });
}
