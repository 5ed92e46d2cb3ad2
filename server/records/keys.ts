import type { Declaration } from "../model/declaration.ts";
import type { Workshop } from "../model/workshop.ts";
import { dayOfRecord } from "./read-record.ts";

/** The name under which the records of a build look each other up: one of them is judged beside the others. */
export function recordsKey(build: string): string {
  return `records of ${build}`;
}

/**
 * The builds whose records have to be looked at anew after an edit, by their keys. Records see no more of each other
 * than serial and day, so that a letter typed into one wakes none of the others.
 * @param changed the keys of the names whose meaning may have changed.
 */
export function changedRecords(
  workshop: Workshop,
  changed: ReadonlySet<string>,
  gone: readonly Declaration[],
  fresh: readonly Declaration[],
): ReadonlySet<string> {
  const keys = new Set<string>();
  const add = ({ of }: Declaration): void => {
    if (of !== undefined) keys.add(recordsKey(of));
  };
  const written = fresh.filter(({ keyword }) => keyword === "record");
  for (const before of gone) {
    if (before.keyword !== "record") continue;
    const index = written.findIndex((after) => looksAlike(before, after));
    if (index < 0) add(before);
    else written.splice(index, 1);
  }
  for (const declaration of written) add(declaration);
  // Where a serial stands twice, a move decides which of the two counts.
  for (const key of changed) {
    const same = key.startsWith("record ") ? workshop.all(key) : [];
    if (same.length > 1) for (const declaration of same) add(declaration);
  }
  return keys;
}

function looksAlike(one: Declaration, other: Declaration): boolean {
  return one.key === other.key && one.of === other.of && dayOfRecord(one) === dayOfRecord(other);
}
