import type { Verdict } from "../checks/define.ts";
import { checks, instancesOf, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Need } from "../model/need.ts";
import type { Statement } from "../model/stated.ts";
import type { BuildReport } from "./build-report.ts";
import { isTouched, readsField } from "./reads.ts";

/**
 * A letter typed into a build changes one line of it, and nearly every check reads others. What held before and reads
 * nothing that differs still holds; only what failed or was open is asked again, since its places have moved.
 */

/** Where two assemblies of one build say different things. */
export interface Differences {
  readonly slots: ReadonlySet<string>;
  readonly fields: ReadonlySet<string>;
}

/** The slots and fields in which two assemblies differ in what they say, wherever it stands. */
export function differences(before: Assembly, after: Assembly): Differences {
  return {
    slots: differing(before.slots, after.slots, sameInstalled),
    fields: differing(before.fields, after.fields, sameStatement),
  };
}

function differing<Value>(
  before: ReadonlyMap<string, Value>,
  after: ReadonlyMap<string, Value>,
  same: (one: Value, other: Value) => boolean,
): ReadonlySet<string> {
  const names = new Set<string>();
  for (const [name, value] of after) {
    const earlier = before.get(name);
    if (earlier === undefined || !same(earlier, value)) names.add(name);
  }
  for (const name of before.keys()) if (!after.has(name)) names.add(name);
  return names;
}

function sameInstalled(one: Installed, other: Installed): boolean {
  return (
    one.state === other.state &&
    one.name === other.name &&
    one.part === other.part &&
    one.alternates.length === other.alternates.length &&
    one.alternates.every((alternate, index) => alternate.name === other.alternates[index]?.name) &&
    differing(one.settings, other.settings, sameStatement).size === 0
  );
}

function sameStatement(one: Statement, other: Statement): boolean {
  if (one.state !== other.state) return false;
  return one.state !== "stated" || other.state !== "stated" || one.written === other.written;
}

/** For each slot and field the answers that rest on it, by check and instance in the order of the table. */
const touchedBySlot = new Map<string, readonly (readonly boolean[])[]>();
const touchedByField = new Map<string, readonly (readonly boolean[])[]>();

function touched(
  kept: Map<string, readonly (readonly boolean[])[]>,
  name: string,
  isRead: (need: Need) => boolean,
): readonly (readonly boolean[])[] {
  const known = kept.get(name);
  if (known) return known;
  const found = checks.map((check) =>
    instancesOf(check).map((instance) => (Object.values(needsOf(check, instance)) as Need[]).some(isRead)),
  );
  kept.set(name, found);
  return found;
}

/** Answers of an earlier report that still hold for an assembly, by check and instance in the order of the table. */
export class KeptVerdicts {
  readonly #before: BuildReport;
  readonly #touched: readonly (readonly (readonly boolean[])[])[];

  constructor(before: BuildReport, after: Assembly) {
    this.#before = before;
    const { slots, fields } = differences(before.assembly, after);
    this.#touched = [
      ...[...slots].map((slot) => touched(touchedBySlot, slot, (need) => isTouched(need, slot))),
      ...[...fields].map((field) => touched(touchedByField, field, (need) => readsField(need, field))),
    ];
  }

  verdict(check: number, instance: number): Verdict | undefined {
    // House rules stand behind the checks of the table, and are few.
    if (check >= checks.length) return undefined;
    const verdict = this.#before.rows[check]?.instances[instance]?.verdict;
    // What fails or is open points to places, which may have moved.
    if (verdict?.outcome !== "holds" && verdict?.outcome !== "notApplicable") return undefined;
    return this.#touched.some((one) => one[check]?.[instance]) ? undefined : verdict;
  }
}
