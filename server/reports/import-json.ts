import type { ImportPlan } from "../interchange/plan.ts";
import type { ImportPlace } from "../interchange/rows.ts";

/** What `import --format json` writes: what became of every row. Lines and columns count from 1. */
export interface JsonImport {
  readonly schemaVersion: 1;
  readonly source: string;
  /** True when nothing was written. */
  readonly dryRun: boolean;
  readonly files: readonly string[];
  readonly added: readonly string[];
  readonly changed: readonly JsonKnown[];
  readonly left: readonly JsonKnown[];
  readonly same: number;
  readonly repeated: readonly { readonly name: string; readonly at: ImportPlace; readonly first: ImportPlace }[];
  readonly rejected: readonly (ImportPlace & { readonly reason: string })[];
}

interface JsonKnown {
  readonly name: string;
  readonly differences: readonly { readonly what: string; readonly before?: string; readonly after: string }[];
}

export function importJson(
  plan: ImportPlan,
  wrote: readonly { readonly file: string }[],
  dryRun: boolean,
  source: string,
): JsonImport {
  const { added, changed, left, same, repeated, rejected } = plan;
  const known = ({ name, differences }: ImportPlan["changed"][number]): JsonKnown => ({ name, differences });
  return {
    schemaVersion: 1,
    source,
    dryRun,
    files: wrote.map(({ file }) => file),
    added,
    changed: changed.map(known),
    left: left.map(known),
    same,
    repeated,
    rejected: rejected.map(({ at, reason }) => ({ ...at, reason })),
  };
}
