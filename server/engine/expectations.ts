import type { Assembly } from "../model/assembly.ts";
import { type Declaration, declarationKey, headerPlace } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { missingWords } from "../model/need.ts";
import { textFinding } from "../model/read-fields.ts";
import type { Workshop } from "../model/workshop.ts";
import type { Expectation, ExpectedOutcome } from "../rules/rule.ts";
import type { RuleCheck } from "../rules/rule-check.ts";
import { AlternateQuestions, hasAlternates } from "./alternates.ts";
import { BuildEvaluation, type CheckRow, ofCombination } from "./evaluate.ts";

/** What the examples of a rule are tried with. */
export interface ExpectationContext {
  readonly workshop: Workshop;
  assemble(build: Declaration): Assembly;
}

const wordsOf: Readonly<Record<ExpectedOutcome, string>> = {
  holds: "hold",
  fails: "fail",
  unknown: "be unknown",
  "not-applicable": "not apply",
};
const saidOf: Readonly<Record<CheckRow["outcome"], string>> = {
  holds: "it holds",
  fails: "it fails",
  unknown: "it cannot be checked",
  waived: "it is waived",
  notApplicable: "it does not apply",
};

/**
 * Tries a rule on the builds that it names as its examples; where it comes out otherwise than it says, that is a
 * finding at the example. A waiver in the build changes nothing here: the rule itself is tried.
 */
export function expectationFindings(
  check: RuleCheck,
  context: ExpectationContext,
): { readonly findings: readonly Finding[]; readonly lookups: readonly string[] } {
  const findings: Finding[] = [];
  const lookups: string[] = [];
  for (const expectation of check.rule.expectations) {
    const key = declarationKey("build", expectation.build);
    lookups.push(key);
    const build = context.workshop.lookup(key);
    if (build) findings.push(...tried(check, expectation, context.assemble(build), context.workshop, lookups));
    else if (context.workshop.complete) findings.push(unknownBuild(expectation));
  }
  return { findings, lookups };
}

function tried(
  check: RuleCheck,
  { outcome, place }: Expectation,
  assembly: Assembly,
  workshop: Workshop,
  lookups: string[],
): Finding[] {
  const evaluation = new BuildEvaluation(assembly, workshop);
  const questions = hasAlternates(assembly) ? new AlternateQuestions(evaluation, workshop) : undefined;
  const row = evaluation.check(check, undefined, questions?.ask(check));
  lookups.push(...assembly.lookups, ...evaluation.reader.lookups, ...(questions?.lookups ?? []));
  if (row.outcome === (outcome === "not-applicable" ? "notApplicable" : outcome)) return [];
  const { declaration } = assembly;
  return [
    textFinding(
      place.declaration,
      place.span,
      "model/expectation",
      `The rule is expected to ${wordsOf[outcome]} for ${declaration.name}, but ${saidOf[row.outcome]}: ${reasonOf(row)}`,
      { related: [{ message: `${declaration.label} is declared here`, place: headerPlace(declaration) }] },
    ),
  ];
}

/** Why the row came out so, in words. */
function reasonOf({ outcome, instances }: CheckRow): string {
  const found = instances.find((one) => one.verdict.outcome === outcome);
  const verdict = found?.verdict;
  switch (verdict?.outcome) {
    case "holds":
    case "fails":
      return ofCombination(verdict.message, found?.combination);
    case "unknown": {
      const missing = verdict.missing.map(({ what }) => what).join(", ");
      return ofCombination(`${missingWords(verdict.missing)}: ${missing}.`, found?.combination);
    }
    case "notApplicable":
      return `${verdict.reason}.`;
    default:
      return "it says nothing.";
  }
}

function unknownBuild({ build, place }: Expectation): Finding {
  return textFinding(
    place.declaration,
    place.span,
    "model/unknown-build",
    `No build is declared with the name ${build}.`,
    { repairs: [{ kind: "near-name", place, name: build, keyword: "build", kinds: [] }] },
  );
}
