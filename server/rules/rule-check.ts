import type { Check, Verdict } from "../checks/define.ts";
import { headerPlace, type Place } from "../model/declaration.ts";
import type { Related } from "../model/finding.ts";
import type { Maybe, Missing, Need, Needs } from "../model/need.ts";
import { breaches, comparisons, Wording } from "./breach.ts";
import { Evaluation } from "./evaluate.ts";
import { gapNeeds, gapsOf } from "./least-sums.ts";
import { repairsOf } from "./mending.ts";
import type { PathMeaning } from "./paths.ts";
import { type Rule, ruleCode } from "./rule.ts";
import { both, decide, type Reason, type Truth, yes } from "./truth.ts";
import { pathsOf, type Typed } from "./typed-expression.ts";

/** A rule as a check: it is asked, counted, waived and reported like those that come with the program. */
export interface RuleCheck extends Check {
  readonly rule: Rule;
}

/** Whether a check is a house rule. */
export function isRuleCheck(check: Check): check is RuleCheck {
  return "rule" in check;
}

/** @param today `2026-11-25`; a rule does not apply after its last day. */
export function ruleCheck(rule: Rule, today: string): RuleCheck {
  const { declaration, paths, until, because } = rule;
  const title = declaration.title ?? `The house rule ${declaration.name}`;
  const needs: Needs = Object.fromEntries([
    ...[...paths.values()].flatMap((meaning) => Object.entries<Need>(gapNeeds(meaning))),
    ...[...paths].map(([path, { need }]) => [path, need]),
  ]);
  return {
    rule,
    code: ruleCode(declaration.name),
    title,
    severity: rule.severity,
    since: 1,
    needs: () => needs,
    test: (facts) => {
      if (until !== undefined && until < today) return notApplicable(`The rule applied until ${until}`);
      return verdict(rule, facts as Readonly<Record<string, Maybe>>);
    },
    explanation: because ?? `A rule of this workshop: ${title}`,
    source: `house rule ${declaration.name}`,
    examples: { holds: "", fails: "" },
  };
}

function notApplicable(reason: string): Verdict {
  return { outcome: "notApplicable", reason };
}

function verdict(rule: Rule, facts: Readonly<Record<string, Maybe>>): Verdict {
  const text = ({ span }: Typed): string => rule.declaration.text.slice(span.start, span.end).replace(/\s+/g, " ");
  const answer = ({ path }: PathMeaning): Maybe =>
    facts[path] ?? { state: "unknown", missing: [{ path, what: path, place: headerPlace(rule.declaration) }] };
  const gaps = (meaning: PathMeaning): readonly Missing[] => gapsOf(meaning, (key) => facts[key]);
  const evaluation = new Evaluation(answer, text, gaps);
  const places = [...rule.paths.keys()].flatMap((path) => facts[path] ?? []);

  if (rule.when) {
    const applies = decide(evaluation.truth(rule.when));
    if (applies.state === "fails") return notApplicable(`It is for builds of which this is true: ${text(rule.when)}`);
    if (applies.state === "absent") return notApplicable(`${applies.path} is none`);
    if (applies.state === "unknown") return { outcome: "unknown", missing: missingOf(applies.reasons, rule) };
  }
  const found = decide(rule.requirements.map((each) => evaluation.truth(each)).reduce(both, yes as Truth));
  if (found.state === "absent") return notApplicable(`${found.path} is none`);
  if (found.state === "unknown") return { outcome: "unknown", missing: missingOf(found.reasons, rule) };

  const wording = new Wording(evaluation, text);
  if (found.state === "holds") {
    const shown = rule.requirements
      .flatMap((each) => comparisons(each, evaluation))
      .map((each) => wording.comparison(each));
    return { outcome: "holds", message: sentence(shown.length > 0 ? shown.join("; ") : title(rule)) };
  }
  const broken = rule.requirements.flatMap((each) => breaches(each, evaluation));
  const said = rule.message
    ? rule.message.map((piece) => ("text" in piece ? piece.text : wording.value(piece.value))).join("")
    : [title(rule), broken.map((each) => each.map((one) => wording.breach(one)).join(", or ")).join("; ")].join(": ");
  const at = standsAt(
    broken.flat().map(({ expression }) => expression),
    rule,
    answer,
  );
  return {
    outcome: "fails",
    message: [said, rule.because, rule.mend].flatMap((part) => (part === undefined ? [] : sentence(part))).join(" "),
    at,
    related: [
      { message: `required by the house rule ${rule.declaration.name}`, place: headerPlace(rule.declaration) },
      ...places.flatMap((one): Related[] =>
        one.state === "known" && one.path !== at.path && one.written !== ""
          ? [{ message: `${one.subject}: ${one.path} ${one.written}`, place: one.place }]
          : [],
      ),
    ],
    repairs: repairsOf(rule, broken),
  };
}

function title({ declaration }: Rule): string {
  return (declaration.title ?? `House rule ${declaration.name}`).replace(/\.$/, "");
}

function sentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === "") return "";
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

/** The first thing named by what is broken that the build says something of: a person would change it first. */
function standsAt(
  broken: readonly Typed[],
  rule: Rule,
  answer: (meaning: PathMeaning) => Maybe,
): { readonly place: Place; readonly path: string } {
  const inOrder = [...broken, ...rule.requirements].flatMap((each) => [...pathsOf(each).values()]);
  // What somebody stated is changed, and not what is worked out from it.
  const stated = inOrder.filter(({ what }) => what !== "number");
  for (const meaning of [...stated, ...inOrder]) {
    const one = answer(meaning);
    if (one.state !== "unknown") return { place: one.place, path: meaning.path };
  }
  return { place: headerPlace(rule.declaration), path: "" };
}

/** What has to be stated, or what has no answer, for a person. */
function missingOf(reasons: readonly Reason[], rule: Rule): readonly Missing[] {
  const missing = new Map<string, Missing>();
  for (const reason of reasons) {
    const one = missingFor(reason, rule);
    if (one) missing.set(`${one.path} ${one.what}`, one);
  }
  return [...missing.values()];
}

function missingFor(reason: Reason, rule: Rule): Missing | undefined {
  const place = headerPlace(rule.declaration);
  switch (reason.why) {
    case "missing":
      return reason.missing;
    case "undefined":
      return { path: reason.path, what: reason.what, place };
    case "spread":
      return { path: reason.path, what: `one value of ${reason.path}, which is a range`, place };
    case "absent":
      return undefined;
  }
}
