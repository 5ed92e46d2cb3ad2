import { toBase, type Unit, unitBySpelling } from "../../grammar/units.ts";
import { equal } from "./compare.ts";
import type { AnyValue, Interval } from "./types.ts";
import { isInterval } from "./write.ts";

/** The facts that are judged just now. */
let current: Readonly<Record<string, unknown>> | undefined;

/**
 * Does some work in whose words a fact that a person stated in another unit is shown as it was written, with what it
 * comes to beside it. A message is worded from values, so the facts lie around the work as the units do in display.ts.
 */
export function besideWritten<Answer>(facts: Readonly<Record<string, unknown>>, work: () => Answer): Answer {
  const before = current;
  current = facts;
  try {
    return work();
  } finally {
    current = before;
  }
}

/**
 * How a quantity in the base unit was written, where somebody stated it in a unit that gives it other digits than the
 * one it is shown in: 95 psi where bar are shown, but not 42 cm for millimetres.
 */
export function otherwiseWritten(value: number | Interval, shown: Unit): string | undefined {
  for (const fact of Object.values(current ?? {})) {
    if (!isKnown(fact) || !isSame(fact.value, value)) continue;
    const [, digits = "", spelling = ""] = lastNumber.exec(fact.written) ?? [];
    const unit = unitBySpelling(spelling);
    if (!unit || unit.dimension !== shown.dimension || sameDigits(unit, shown)) continue;
    // What is written as a sum is no number that a person would know again.
    const last = toBase(Number(digits), unit);
    const ends = typeof value === "object" ? [value.least, value.greatest] : [value];
    if (ends.some((end) => equal(last, end))) return fact.written;
  }
  return undefined;
}

/** A decimal number and its unit, at the end of what was written. */
const lastNumber = /(?:^|\s)([-+]?\d+(?:\.\d+)?)\s*([^\s\d]+)$/u;

function isSame(stated: AnyValue, shown: number | Interval): boolean {
  if (typeof stated === "number") return stated === shown;
  if (typeof stated !== "object" || !isInterval(stated)) return false;
  const [least, greatest] = typeof shown === "object" ? [shown.least, shown.greatest] : [shown, shown];
  return stated.least === least && stated.greatest === greatest;
}

function isKnown(fact: unknown): fact is { readonly value: AnyValue; readonly written: string } {
  return typeof fact === "object" && fact !== null && "written" in fact && "value" in fact;
}

function sameDigits(unit: Unit, other: Unit): boolean {
  const power = Math.log10(unit.factor / other.factor);
  return unit.offset === other.offset && equal(power, Math.round(power));
}
