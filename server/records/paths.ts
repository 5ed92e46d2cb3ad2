import { quantities } from "../calculations/table.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Field } from "../vocabulary/define.ts";
import {
  buildFields,
  measuredFieldAt,
  measurements,
  recordFields,
  slotByPath,
  slotPaths,
} from "../vocabulary/index.ts";
import { workedFieldAt } from "./worked-field.ts";

/** The part of a path before its last name; empty for one name. */
export function parentOf(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf(".")));
}

/** How a value measured at a path is read; `undefined` where nothing can be measured there. */
export function recordFieldAt(path: string, assembly?: Assembly): Field | undefined {
  const kind = assembly?.slots.get(parentOf(path))?.part?.kind?.name;
  return measuredFieldAt(path, kind) ?? workedFieldAt(path);
}

/** The paths at which a record of a build can hold a value, the commonest first: for completion and "did you mean". */
export function recordablePaths(assembly?: Assembly): readonly string[] {
  const settings = slotPaths.flatMap((path) =>
    Object.keys(slotByPath(path)?.settings ?? {}).map((name) => `${path}.${name}`),
  );
  const facts = [...(assembly?.slots ?? [])].flatMap(([path, { part }]) =>
    Object.keys(part?.kind?.fields ?? {}).map((name) => `${path}.${name}`),
  );
  const worked = quantities.flatMap(({ path }) => (workedFieldAt(path) ? [path] : []));
  const paths = [
    ...Object.keys(measurements),
    ...settings,
    ...Object.keys(buildFields),
    ...facts,
    ...worked,
    ...slotPaths,
  ];
  return [...new Set(paths)];
}

/** Whether a path has paths that can be recorded below it, so that a block may stand there. */
export function isGroup(path: string): boolean {
  if (slotByPath(path)) return true;
  groups ??= new Set(
    [...recordablePaths(), ...Object.keys(recordFields)].flatMap((whole) => {
      const names = whole.split(".");
      return names.slice(1).map((_, index) => names.slice(0, index + 1).join("."));
    }),
  );
  return groups.has(path);
}

let groups: Set<string> | undefined;
