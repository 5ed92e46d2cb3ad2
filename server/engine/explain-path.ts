import type { Calculation, ResultValue, Working } from "../calculations/define.ts";
import { showResult } from "../calculations/show.ts";
import { calculationOfQuantity, type Quantity } from "../calculations/table.ts";
import type { Installed } from "../model/assembly.ts";
import { headerPlace, type Place } from "../model/declaration.ts";
import { label } from "../model/facts.ts";
import type { Known, Maybe, Missing, OfSlot } from "../model/need.ts";
import type { Statement } from "../model/stated.ts";
import { specDigest } from "../records/spec-digest.ts";
import type { Field } from "../vocabulary/define.ts";
import { buildFields, slotByPath } from "../vocabulary/index.ts";
import { type BuildReport, workedQuantities } from "./build-report.ts";
import type { CheckRow } from "./evaluate.ts";

/** Something stated, and where. */
export interface StatedFact {
  readonly path: string;
  readonly written: string;
  /** What states it: a part's title, or the build's. */
  readonly subject: string;
  readonly place: Place;
  readonly description?: string;
}

/** A number of a build with everything it was worked out from. */
export interface ExplainedNumber {
  readonly form: "number";
  readonly path: string;
  readonly calculation: Calculation;
  readonly description: string;
  readonly outcome:
    | { readonly state: "known"; readonly value: ResultValue; readonly shown: string; readonly unit: string }
    | { readonly state: "unknown"; readonly missing: readonly Missing[] }
    | { readonly state: "none"; readonly reason: string };
  /** Facts that people stated, and numbers worked out before this one. */
  readonly facts: readonly StatedFact[];
  readonly steps: readonly string[];
}

/** A fact, a setting, or a field of the build. */
export interface ExplainedValue {
  readonly form: "value";
  readonly path: string;
  readonly description: string;
  /** Absent when nobody stated it. */
  readonly stated?: StatedFact;
  /** What leaving it out means, when it is not stated. */
  readonly omitted: Field["omitted"];
  readonly unreadable: boolean;
  /** Where it would be stated, when it is not. */
  readonly place: Place;
}

/** What stands in a slot. */
export interface ExplainedSlot {
  readonly form: "slot";
  readonly path: string;
  readonly description: string;
  readonly kinds: readonly string[];
  readonly installed?: Installed;
  readonly settings: readonly StatedFact[];
  readonly facts: readonly StatedFact[];
}

/** A check asked of this build. */
export interface ExplainedRow {
  readonly form: "check";
  readonly row: CheckRow;
}

/** Everything under an assembly, or of the whole build. */
export interface ExplainedGroup {
  readonly form: "group";
  readonly path: string;
  /** The digest of the specification, for records to state; of the whole build alone. */
  readonly spec?: string;
  readonly slots: readonly { readonly path: string; readonly name: string; readonly place: Place }[];
  readonly fields: readonly StatedFact[];
  readonly numbers: readonly { readonly path: string; readonly shown: string }[];
}

export type ExplainedPath = ExplainedNumber | ExplainedValue | ExplainedSlot | ExplainedRow | ExplainedGroup;

/** What stands at a path of a build and how it comes about; `undefined` when no path of that name can be. */
export function explainPath(report: BuildReport, path: string): ExplainedPath | undefined {
  const row = report.rows.find(({ check }) => check.code === path);
  if (row) return { form: "check", row };
  const quantity = calculationOfQuantity(path);
  if (quantity) return explainNumber(report, quantity);
  if (slotByPath(path)) return explainSlot(report, path);
  return explainValue(report, path) ?? explainGroup(report, path);
}

/** Every path of a build that can be explained, for "did you mean". */
export function explainablePaths(report: BuildReport): readonly string[] {
  const { slots, fields } = report.assembly;
  const paths = new Set<string>([...slots.keys(), ...Object.keys(buildFields), ...fields.keys()]);
  for (const [path, installed] of slots) {
    for (const name of Object.keys(installed.part?.kind?.fields ?? {})) paths.add(`${path}.${name}`);
    for (const name of Object.keys(installed.slot.settings)) paths.add(`${path}.${name}`);
  }
  for (const worked of workedQuantities(report)) paths.add(worked.row.path);
  return [...paths];
}

function explainNumber(report: BuildReport, row: Quantity): ExplainedNumber {
  const { evaluation } = report;
  const result = row.calculation.results[row.result];
  const common = {
    form: "number" as const,
    path: row.path,
    calculation: row.calculation,
    description: result?.description ?? row.calculation.description,
  };
  const worked = evaluation.quantity(row.path);
  if (!worked || worked.state === "none") {
    const reason = worked?.reason ?? `${row.path} means nothing here`;
    return { ...common, outcome: { state: "none", reason }, facts: [], steps: [] };
  }
  if (worked.state === "unknown") {
    return { ...common, outcome: { state: "unknown", missing: worked.missing }, facts: [], steps: [] };
  }
  const { value, unit } = worked;
  const outcome = { state: "known" as const, value, unit, shown: showResult(result, value) };
  const resolution = evaluation.reader.resolve(row.inBuild.needs);
  if (resolution.state !== "known") return { ...common, outcome, facts: [], steps: [] };
  const facts = (Object.values(resolution.facts) as Maybe[]).flatMap(knownFacts);
  const inputs = row.inBuild.inputs(resolution.facts);
  const steps: string[] = [];
  const recorder: Working = { step: (text) => steps.push(text) };
  if (inputs.state === "known") row.calculation.compute(inputs.inputs, recorder);
  return { ...common, outcome, facts, steps };
}

/** The statements behind an answer; one that gathers every slot's fact has one for each slot that states it. */
function knownFacts(answer: Maybe): StatedFact[] {
  if (answer.state !== "known") return [];
  if (answer.written !== "") return [statedFact(answer)];
  const rows = Array.isArray(answer.value) ? (answer.value as readonly Partial<OfSlot>[]) : [];
  return rows.flatMap(({ fact }) => (fact?.state === "known" ? [statedFact(fact)] : []));
}

function statedFact({ path, written, subject, place }: Known): StatedFact {
  return { path, written, subject, place };
}

function explainSlot(report: BuildReport, path: string): ExplainedSlot {
  const slot = slotByPath(path);
  const installed = report.assembly.slots.get(path);
  const own = report.assembly.declaration.label;
  const part = installed?.part;
  return {
    form: "slot",
    path,
    description: slot?.description ?? "",
    kinds: slot?.kinds ?? [],
    ...(installed ? { installed } : {}),
    settings: installed ? statements(path, installed.settings, own, slot?.settings ?? {}) : [],
    facts: part ? statements(path, part.facts, label(installed), part.kind?.fields ?? {}) : [],
  };
}

function statements(
  prefix: string,
  from: ReadonlyMap<string, Statement>,
  subject: string,
  fields: Readonly<Record<string, Field>>,
): StatedFact[] {
  return [...from].map(([name, statement]) => ({
    path: prefix === "" ? name : `${prefix}.${name}`,
    written: writtenOf(statement),
    subject,
    place: statement.place,
    ...(fields[name] === undefined ? {} : { description: fields[name].description }),
  }));
}

function writtenOf(statement: Statement): string {
  if (statement.state === "stated") return statement.written;
  return statement.state === "none" ? "none" : "(cannot be read)";
}

/** A fact of a part, a setting of a slot, or a field of the build. */
function explainValue(report: BuildReport, path: string): ExplainedValue | undefined {
  const { assembly } = report;
  const field = (buildFields as Readonly<Record<string, Field>>)[path];
  const own = { subject: assembly.declaration.label, place: headerPlace(assembly.declaration) };
  if (field) return value(path, field, assembly.fields.get(path), own.subject, own.place);
  const dot = path.lastIndexOf(".");
  const slot = slotByPath(path.slice(0, dot));
  const name = path.slice(dot + 1);
  const installed = assembly.slots.get(path.slice(0, dot));
  if (dot < 0 || !slot) return undefined;
  const setting = Object.hasOwn(slot.settings, name) ? slot.settings[name] : undefined;
  if (setting) return value(path, setting, installed?.settings.get(name), own.subject, installed?.place ?? own.place);
  const part = installed?.part;
  const fact = part?.kind && Object.hasOwn(part.kind.fields, name) ? part.kind.fields[name] : undefined;
  if (!part || !fact) return undefined;
  return value(path, fact, part.facts.get(name), label(installed), headerPlace(part.declaration));
}

function value(
  path: string,
  field: Field,
  statement: Statement | undefined,
  subject: string,
  place: Place,
): ExplainedValue {
  return {
    form: "value",
    path,
    description: field.description,
    omitted: field.omitted,
    unreadable: statement?.state === "unreadable",
    place: statement?.place ?? place,
    ...(statement ? { stated: { path, written: writtenOf(statement), subject, place: statement.place } } : {}),
  };
}

function explainGroup(report: BuildReport, path: string): ExplainedGroup | undefined {
  const isUnder = (other: string): boolean => path === "" || other.startsWith(`${path}.`);
  const { assembly } = report;
  const slots = [...assembly.slots]
    .filter(([slot]) => isUnder(slot))
    .map(([slot, installed]) => ({ path: slot, name: installed.name, place: installed.place }));
  const fields = statements("", assembly.fields, assembly.declaration.label, buildFields).filter((fact) =>
    isUnder(fact.path),
  );
  const numbers = workedQuantities(report).flatMap((worked) =>
    worked.state === "known" && isUnder(worked.row.path)
      ? [{ path: worked.row.path, shown: showResult(worked.row.calculation.results[worked.row.result], worked.value) }]
      : [],
  );
  if (path !== "" && slots.length + fields.length + numbers.length === 0) return undefined;
  return { form: "group", path, ...(path === "" ? { spec: specDigest(assembly) } : {}), slots, fields, numbers };
}
