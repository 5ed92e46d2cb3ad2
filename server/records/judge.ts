import type { Verdict } from "../checks/define.ts";
import { headerPlace } from "../model/declaration.ts";
import type { FactReader } from "../model/facts.ts";
import type { Known, Need, Needs } from "../model/need.ts";
import { omittedSlot } from "../model/omission.ts";
import { besideWritten } from "../values/as-written.ts";
import { measurementAt, slotByPath } from "../vocabulary/index.ts";
import type { Bike } from "./bike.ts";
import asSpecified, { specifiedInstance } from "./checks/as-specified.ts";
import nothingThere, { type AbsentInstance } from "./checks/nothing-there.ts";
import type { Comparison, Judgement, MeasuredInstance } from "./define.ts";
import { parentOf } from "./paths.ts";
import type { RecordEntry, RecordText } from "./read-record.ts";
import { type AskedComparison, comparisonsOf } from "./table.ts";

/** What came of one comparison of a record. */
export interface RecordRow {
  readonly comparison: Comparison;
  readonly instance: MeasuredInstance;
  readonly measured: Known;
  /** What was measured beside it, where the comparison looks at both. */
  readonly beside?: Known;
  readonly needs: Needs;
  /** The answer on the specification as it stands today. */
  readonly verdict: Verdict;
  readonly expected?: string;
  /**
   * The answer that counts. Where the recipe has moved on since the bicycle was built, what rests on it cannot be known,
   * whether it agrees today or not.
   */
  readonly outcome: Verdict["outcome"];
}

/** Values that can be compared: what was measured and can be read. */
export function measuredValues({ declaration, entries }: RecordText): ReadonlyMap<string, Known> {
  const values = new Map<string, Known>();
  for (const { path, statement } of entries) {
    if (statement.state !== "stated") continue;
    const { value, written, place } = statement;
    values.set(path, { state: "known", value, written, path, subject: `record ${declaration.name}`, place });
  }
  return values;
}

/**
 * Compares everything that a record holds with the bike that it was built to.
 * @param isCurrent whether that bike's specification is still the one of the build.
 */
export function judgeRecord(text: RecordText, reader: FactReader, isCurrent: boolean): readonly RecordRow[] {
  const values = measuredValues(text);
  const rows: RecordRow[] = [];
  const asked = new Set<AskedComparison>();
  for (const entry of text.entries) {
    const measured = values.get(entry.path);
    if (!measured) continue;
    for (const one of questions(entry, measured, reader)) {
      // Both sides of a wheel ask for their balance, once.
      if (asked.has(one)) continue;
      asked.add(one);
      rows.push(answer(one, values, reader, isCurrent));
    }
  }
  return rows;
}

function questions(entry: RecordEntry, measured: Known, reader: FactReader): readonly AskedComparison[] {
  const absent = absentInstance(measured, reader);
  if (absent) return [{ comparison: nothingThere, instance: absent, needs: {} }];
  const known = comparisonsOf(entry.path);
  if (known.length > 0) return known;
  const instance = specifiedInstance(entry.path, entry.field.type);
  return [{ comparison: asSpecified, instance, needs: asSpecified.needs(instance) }];
}

/** What is measured on a part that the build says is not there. */
function absentInstance(measured: Known, { assembly }: FactReader): AbsentInstance | undefined {
  const { path } = measured;
  const measurement = measurementAt(path);
  const slot = slotByPath(measurement?.on ?? parentOf(path));
  if (!slot) return undefined;
  const within = measurement?.builtInto;
  if (within && assembly.slots.get(within.slot)?.part?.kind?.name === within.kind) return undefined;
  const installed = assembly.slots.get(slot.path);
  const isNone = installed ? installed.state === "none" : omittedSlot(slot, assembly.slots) === "none";
  if (!isNone) return undefined;
  const absent: Known = {
    state: "known",
    value: undefined,
    written: installed ? "none" : "left out, which means none",
    path: slot.path,
    subject: assembly.declaration.label,
    place: installed?.place ?? headerPlace(assembly.declaration),
  };
  return { name: path, path, slot: slot.path, absent };
}

function answer(
  { comparison, instance, needs }: AskedComparison,
  values: ReadonlyMap<string, Known>,
  reader: FactReader,
  isCurrent: boolean,
): RecordRow {
  const own = values.get(instance.path);
  const beside = instance.beside === undefined ? undefined : values.get(instance.beside);
  const measured = (own ?? beside) as Known;
  const { verdict, expected } = judgement(comparison, instance, needs, reader, measured, own ? beside : undefined);
  const isOpen = comparison.restsOn === "spec" && !isCurrent && verdict.outcome !== "notApplicable";
  return {
    comparison,
    instance,
    measured,
    ...(own && beside ? { beside } : {}),
    needs,
    verdict,
    ...(expected === undefined ? {} : { expected }),
    outcome: isOpen ? "unknown" : verdict.outcome,
  };
}

function judgement(
  comparison: Comparison,
  instance: MeasuredInstance,
  needs: AskedComparison["needs"],
  reader: FactReader,
  measured: Known,
  beside: Known | undefined,
): Judgement {
  const resolution = reader.resolve(needs);
  if (resolution.state === "unknown") return { verdict: { outcome: "unknown", missing: resolution.missing } };
  if (resolution.state === "none") {
    return { verdict: { outcome: "notApplicable", reason: `${resolution.path} is none` } };
  }
  return besideWritten({ ...resolution.facts, measured, beside }, () =>
    comparison.test(measured, resolution.facts, instance, beside),
  );
}

/** What the comparison of a row rests on, as the build answers it. */
export function comparedWith({ needs }: RecordRow, reader: FactReader): readonly Known[] {
  return (Object.values(needs) as Need[]).flatMap((need) => {
    const answer = reader.answer(need);
    return answer.state === "known" && answer.written !== "" ? [answer] : [];
  });
}

/** The working of a row: from what was measured, and of every worked-out number that it was compared with. */
export function workingOf(row: RecordRow, bike: Bike): readonly string[] {
  const { comparison, instance, measured, beside, needs } = row;
  const steps: string[] = [];
  const resolution = bike.reader.resolve(needs);
  if (resolution.state === "known") {
    comparison.working?.(measured, resolution.facts, instance, { step: (text) => steps.push(text) }, beside);
  }
  for (const need of Object.values(needs) as Need[]) {
    if (need.kind === "worked") steps.push(...bike.working(need.quantity).filter((step) => !steps.includes(step)));
  }
  return steps;
}
