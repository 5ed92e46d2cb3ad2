import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Part } from "../model/part.ts";

/**
 * Why parts may be one and the same.
 * - `name`: declared under one name; only the first counts.
 * - `like-name`: names that differ in capitals, dots and dashes alone.
 * - `title`: one title for several parts of a kind.
 * - `order-number`: one order number of one supplier.
 * - `facts`: everything that is stated of them is the same, price and remarks aside.
 */
export type Likeness = "name" | "like-name" | "title" | "order-number" | "facts";

export interface Duplicates {
  readonly likeness: Likeness;
  /** What they share, in words. */
  readonly shared: string;
  readonly parts: readonly Declaration[];
}

/** Facts that two parts may differ in and still be one. */
const incidental = new Set(["price", "note", "source", "supplier", "supplier-code"]);
/** Parts that state hardly anything are alike without being one. */
const fewestFacts = 3;

/** Groups of parts that may be one and the same; at least one of each stands in these files. */
export function duplicateParts(engine: Engine, uris: readonly string[]): readonly Duplicates[] {
  const asked = new Set(uris);
  const parts = [...engine.workshop.declared("part")];
  const found: Duplicates[] = [];
  const group = (likeness: Likeness, key: (declaration: Declaration) => string | undefined): void => {
    const groups = new Map<string, Declaration[]>();
    for (const declaration of parts) {
      const shared = key(declaration);
      if (shared === undefined) continue;
      const known = groups.get(shared);
      if (known) known.push(declaration);
      else groups.set(shared, [declaration]);
    }
    for (const [shared, declarations] of groups) {
      const names = new Set(declarations.map(({ name }) => name));
      // Parts of one name are told of as such, whatever else they share.
      const areSeveral = likeness === "name" ? declarations.length > 1 : names.size > 1;
      if (!areSeveral || !declarations.some(({ uri }) => asked.has(uri))) continue;
      found.push({ likeness, shared, parts: declarations });
    }
  };
  group("name", ({ name }) => name);
  group("like-name", ({ name }) => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ""));
  group("title", ({ title, kind }) =>
    title === undefined ? undefined : `${kind ?? ""} ${title.trim().toLowerCase()}`,
  );
  group("order-number", (declaration) => orderNumber(engine.part(declaration)));
  group("facts", (declaration) => factsOf(engine.part(declaration)));
  return found.map((one) => (one.likeness === "facts" ? { ...one, shared: "all their facts" } : one));
}

function orderNumber({ facts }: Part): string | undefined {
  const code = facts.get("supplier-code");
  const supplier = facts.get("supplier") ?? facts.get("maker");
  if (code?.state !== "stated") return undefined;
  // Lists write one number in capitals, the next one not.
  return `${supplier?.state === "stated" ? `${supplier.value} ` : ""}${code.value}`.trim().toLowerCase();
}

function factsOf({ facts, kind }: Part): string | undefined {
  const stated = [...facts]
    .filter(([name]) => !incidental.has(name))
    .map(
      ([name, statement]) => `${name}: ${statement.state === "stated" ? comparable(statement.value) : statement.state}`,
    );
  if (!kind || stated.length < fewestFacts) return undefined;
  return `${kind.name}\n${stated.sort().join("\n")}`;
}

/** A value by what it comes to: 120 g and 0.12 kg are one mass, which binary fractions hold to so many digits. */
function comparable(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === "number" ? Number(inner.toPrecision(12)) : inner,
  );
}
