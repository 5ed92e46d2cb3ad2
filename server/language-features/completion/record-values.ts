import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import { specDigest } from "../../records/spec-digest.ts";
import { CompletionItemKind, type Draft } from "./items.ts";
import { plainPartDraft } from "./parts.ts";

/**
 * What a record's own entries take: the digest of the build as it stands, and the parts that the build names for a slot.
 * `undefined` where the value is read like any other.
 */
export function recordValueDrafts(engine: Engine, record: Declaration, path: string): readonly Draft[] | undefined {
  const build = record.of === undefined ? undefined : engine.workshop.build(record.of);
  const assembly = build && engine.report(build)?.assembly;
  if (!assembly) return path === "spec" ? [] : undefined;
  if (path === "spec") {
    return [{ label: specDigest(assembly), kind: CompletionItemKind.Value, detail: `${record.of} as it stands today` }];
  }
  const installed = assembly.slots.get(path);
  if (!installed) return undefined;
  return [installed, ...installed.alternates].flatMap(({ part }) => (part ? [plainPartDraft(part.declaration)] : []));
}
