import { headerPlace } from "../../model/declaration.ts";
import type { Known, Missing, Unknown } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import type { AnyValue } from "../../values/types.ts";
import { either } from "./sentence.ts";

/** What a fact of codes may hold: one, or several of which any will do. */
export type OneOrMoreCodes = ResolvedCode | readonly ResolvedCode[];

export function asList(value: OneOrMoreCodes): readonly ResolvedCode[] {
  return Array.isArray(value) ? value : [value as ResolvedCode];
}

/** The first pair of interfaces that mate, one from each side. */
export function matingPair(
  one: OneOrMoreCodes,
  other: OneOrMoreCodes,
): readonly [ResolvedCode, ResolvedCode] | undefined {
  for (const a of asList(one)) for (const b of asList(other)) if (mate(a, b)) return [a, b];
  return undefined;
}

/** A code for a sentence, with the standard's title where it has one: "M10x1 (Threaded eye, M10 x 1)". */
export function showCode(code: ResolvedCode): string {
  const title = code.standard?.declaration.title;
  return title === undefined || code.halves ? code.code : `${code.code} (${title})`;
}

/** Codes for a sentence: "12x142 or 12x148". */
export function showCodes(codes: OneOrMoreCodes): string {
  return either(asList(codes).map(showCode));
}

/** What a standard states of itself; `undefined` when it states nothing readable, or none. */
export function dimensionOf<Value extends AnyValue>(code: ResolvedCode, name: string): Value | undefined {
  const statement = code.standard?.dimensions.get(name);
  return statement?.state === "stated" ? (statement.value as Value) : undefined;
}

/** A dimension of a standard in the shape of a fact, so that a finding can point to where the standard states it. */
export function dimensionFact<Value extends AnyValue>(code: ResolvedCode, name: string): Known<Value> | undefined {
  const statement = code.standard?.dimensions.get(name);
  if (!code.standard || statement?.state !== "stated") return undefined;
  return {
    state: "known",
    value: statement.value as Value,
    written: statement.written,
    path: `${code.family}.${code.code}.${name}`,
    subject: code.standard.declaration.label,
    place: statement.place,
  };
}

/**
 * Says that a standard does not state a dimension that the question turns on. A code that needs no standard has no
 * dimensions beyond its own two numbers, so that none can be missing.
 */
export function lacksDimension(code: ResolvedCode, name: string): Unknown {
  if (!code.standard) return { state: "unknown", missing: [] };
  const missing: Missing = {
    path: `${code.family}.${code.code}.${name}`,
    what: `${name} of the standard ${code.family} ${code.code}`,
    place: headerPlace(code.standard.declaration),
  };
  return { state: "unknown", missing: [missing] };
}
