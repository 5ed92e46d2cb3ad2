import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";

/** A part that no build names. */
export interface UnusedPart {
  readonly declaration: Declaration;
  /** Parts that derive from it, where there are any: it cannot simply be taken away. */
  readonly baseOf: readonly string[];
  /** Parts that name it among their facts. */
  readonly namedBy: readonly string[];
}

/**
 * The parts of these files that no build of the workshop names, neither first nor as an alternate, templates and
 * variants included.
 */
export function unusedParts(engine: Engine, uris: readonly string[]): readonly UnusedPart[] {
  const used = new Set<string>();
  for (const build of engine.workshop.declared("build")) {
    for (const { name, alternates } of engine.assemble(build).slots.values()) {
      used.add(name);
      for (const other of alternates) used.add(other.name);
    }
    if (!build.builtIn) build.forgetTree();
  }
  const baseOf = new Map<string, string[]>();
  const namedBy = new Map<string, string[]>();
  for (const part of engine.workshop.declared("part")) {
    if (part.from !== undefined) baseOf.set(part.from, [...(baseOf.get(part.from) ?? []), part.name]);
    const { facts, kind } = engine.part(part);
    for (const [fact, statement] of facts) {
      if (kind?.fields[fact]?.type.type !== "part" || statement.state !== "stated") continue;
      const name = String(statement.value);
      namedBy.set(name, [...(namedBy.get(name) ?? []), part.name]);
    }
  }
  return uris.flatMap((uri) =>
    (engine.file(uri)?.declarations ?? []).flatMap((declaration) =>
      declaration.keyword !== "part" || used.has(declaration.name)
        ? []
        : [
            {
              declaration,
              baseOf: baseOf.get(declaration.name) ?? [],
              namedBy: namedBy.get(declaration.name) ?? [],
            },
          ],
    ),
  );
}
