import { type Quantity, quantities } from "../calculations/table.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Place } from "../model/declaration.ts";
import type { Finding, Outcome } from "../model/finding.ts";
import type { Missing } from "../model/need.ts";
import type { Workshop } from "../model/workshop.ts";
import type { CheckSet } from "../rules/check-set.ts";
import { AlternateQuestions, type Alternates, hasAlternates, mostCombinations } from "./alternates.ts";
import { BuildEvaluation, type CheckRow, rowFindings, type WorkedQuantity } from "./evaluate.ts";
import { inOwnText } from "./provenance.ts";
import { KeptVerdicts } from "./reuse.ts";
import { applyWaivers } from "./waivers.ts";

export type Counts = Readonly<Record<Outcome, number>>;

/** Everything there is to say of one build. */
export interface BuildReport {
  readonly assembly: Assembly;
  readonly evaluation: BuildEvaluation;
  /** One row for every check there is, in the order of the table, then one for every house rule by name. */
  readonly rows: readonly CheckRow[];
  /** Rows by outcome; they add up to the number of checks. */
  readonly counts: Counts;
  /** What became of slots that name several parts; absent where none does. */
  readonly alternates?: Alternates;
  /** What fails, is waived or cannot be checked, and problems of the text. */
  readonly findings: readonly Finding[];
  readonly lookups: readonly string[];
  /** Those of the lookups that answering checks made. */
  readonly answerLookups: readonly string[];
}

/**
 * Runs every check and every house rule on an assembled build.
 * @param before a report of the same build as it was, on the same libraries: what still holds is taken from it.
 */
export function reportBuild(
  assembly: Assembly,
  workshop: Workshop,
  checks: CheckSet,
  today: string,
  languageNumber: number,
  before?: BuildReport,
): BuildReport {
  const evaluation = new BuildEvaluation(assembly, workshop);
  const kept = before && new KeptVerdicts(before, assembly);
  const questions = hasAlternates(assembly) ? new AlternateQuestions(evaluation, workshop) : undefined;
  const plain = checks.all.map((check, index) =>
    evaluation.check(check, kept && ((instance) => kept.verdict(index, instance)), questions?.ask(check)),
  );
  const found = plain.map((row) => rowFindings(row, assembly, languageNumber));
  const { findings, aboutWaivers } = applyWaivers(assembly, found.flat(), today, checks);

  let next = 0;
  const rows = plain.map((row, index): CheckRow => {
    const own = findings.slice(next, next + (found[index]?.length ?? 0));
    next += found[index]?.length ?? 0;
    if (row.outcome !== "fails") return row;
    return own.every(({ outcome }) => outcome === "waived") ? { ...row, outcome: "waived" } : row;
  });

  const counts: Record<Outcome, number> = { holds: 0, fails: 0, unknown: 0, waived: 0, notApplicable: 0 };
  for (const { outcome } of rows) counts[outcome]++;

  const answerLookups = [
    ...new Set([...evaluation.reader.lookups, ...(questions?.lookups ?? []), ...(before?.answerLookups ?? [])]),
  ];
  const template = assembly.fields.get("template");
  const whole = !(template?.state === "stated" && template.value === true);
  return {
    assembly,
    evaluation,
    rows,
    counts,
    ...(questions ? { alternates: questions.alternates } : {}),
    findings: [
      ...assembly.findings,
      ...findings,
      ...aboutWaivers,
      ...(questions ? limitFindings(assembly, questions.alternates) : []),
      // A template is not a whole bike; what it leaves open is for the builds that derive from it.
      ...(whole ? missingFindings(assembly, rows) : []),
    ],
    lookups: [...assembly.lookups, ...answerLookups, assembly.declaration.key],
    answerLookups,
  };
}

/** That some checks were not asked of every combination of alternates. */
function limitFindings(assembly: Assembly, { combinations, limited, slots }: Alternates): Finding[] {
  if (limited.length === 0) return [];
  const which = limited.length === 1 ? "this check was" : `these ${limited.length} checks were`;
  return [
    {
      code: "build/alternates-limit",
      severity: "information",
      message: `The alternates of ${slots.length} slots make ${combinations} bikes. At most ${mostCombinations} combinations are tried for one question, those nearest to the first-named parts, so ${which} not made of all of them: ${limited.join(", ")}. Name fewer alternates, or split the build into variants.`,
      place: inOwnText(assembly, slots[0]?.path ?? ""),
      path: slots[0]?.path ?? "",
      related: [],
      repairs: [],
      outcome: "unknown",
    },
  ];
}

/** How many missing facts one message spells out. */
const mostSpeltOut = 12;

/**
 * What is not stated, with the checks that wait for it: a question is asked once. Facts that would be shown at one
 * place and hold up the same checks are asked for together. What is written but of no use is found where
 * it stands.
 */
function missingFindings(assembly: Assembly, rows: readonly CheckRow[]): Finding[] {
  const byFact = new Map<string, { missing: Missing; codes: Set<string> }>();
  for (const { check, missing } of rows) {
    for (const one of missing) {
      if (one.spoilt) continue;
      // Two alternates can lack the same fact; each is asked for.
      const key = `${one.path} ${one.what}`;
      const known = byFact.get(key) ?? { missing: one, codes: new Set() };
      known.codes.add(check.code);
      byFact.set(key, known);
    }
  }
  const groups = new Map<string, { place: Place; codes: readonly string[]; facts: Missing[] }>();
  for (const { missing, codes } of byFact.values()) {
    const place = inBuild(assembly, missing);
    const key = `${place.span.start} ${[...codes].join(" ")}`;
    const group = groups.get(key);
    if (group) group.facts.push(missing);
    else groups.set(key, { place, codes: [...codes], facts: [missing] });
  }
  return [...groups.values()].map(({ place, codes, facts }) => {
    const spelt = facts.slice(0, mostSpeltOut).map(({ what }) => what);
    const rest = facts.length - spelt.length;
    const list = rest > 0 ? `${spelt.join(", ")} and ${rest} more` : spelt.join(", ");
    const checksWait = codes.length === 1 ? "this cannot be checked" : `these ${codes.length} cannot be checked`;
    return {
      code: "build/missing-fact",
      severity: "information",
      message: `Not stated: ${list}. Without ${facts.length === 1 ? "it" : "them"} ${checksWait}: ${codes.join(", ")}.`,
      place,
      path: facts[0]?.path ?? "",
      related: facts
        .filter((fact) => fact.place.declaration !== assembly.declaration)
        .map((fact) => ({ message: `${fact.what} would be stated here`, place: fact.place })),
      repairs: facts.flatMap(({ path }) => stateable(assembly, path)),
      outcome: "unknown",
    };
  });
}

/** Where a missing fact is shown: where it would be stated if that is in this build, else at its slot. */
function inBuild(assembly: Assembly, missing: Missing): Place {
  return missing.place.declaration === assembly.declaration ? missing.place : inOwnText(assembly, missing.path);
}

function stateable(assembly: Assembly, path: string): Finding["repairs"] {
  const dot = path.lastIndexOf(".");
  const slot = path.slice(0, dot);
  const name = path.slice(dot + 1);
  const installed = assembly.slots.get(slot);
  if (installed?.part?.kind && Object.hasOwn(installed.part.kind.fields, name)) {
    return [{ kind: "state-fact", slot, fact: name }];
  }
  if (installed && Object.hasOwn(installed.slot.settings, name)) {
    return [{ kind: "state-setting", slot, setting: name }];
  }
  return installed ? [] : [{ kind: "insert-part", slot: path }];
}

/** Every number of the build that can be worked out, cannot be for want of facts, or means nothing here. */
export function workedQuantities(report: BuildReport): readonly WorkedQuantity[] {
  return quantities.flatMap((row: Quantity) => report.evaluation.quantity(row.path) ?? []);
}
