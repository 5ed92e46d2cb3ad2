import type { ResolvedCode } from "../model/standard.ts";
import { equal, inside } from "../values/compare.ts";
import type { AnyValue, Code, FieldType, Interval, Money } from "../values/types.ts";
import type { Tolerance } from "../vocabulary/index.ts";
import { isWithin } from "./tolerance.ts";

/**
 * Whether a measured value is the stated one: numbers within a tolerance or inside a stated range, everything else as
 * it is. The stated value is as a build answers it, with the standard behind each code.
 */
export function sameValue(type: FieldType, measured: AnyValue, stated: unknown, tolerance: Tolerance): boolean {
  if (typeof measured === "number") return sameNumber(measured, stated, tolerance);
  switch (type.type) {
    case "teeth":
    case "quantities":
      return sameList(measured as readonly number[], stated as readonly number[], (one, other) =>
        type.type === "teeth" ? one === other : isWithin(tolerance, one, other),
      );
    case "code":
      return sameCode(measured as Code, stated as ResolvedCode);
    case "codes":
      return sameSet(measured as readonly Code[], stated as readonly ResolvedCode[], sameCode);
    case "words":
      return sameSet(measured as readonly string[], stated as readonly string[], (one, other) => one === other);
    case "money":
      return sameMoney(measured as Money, stated as Money | (Interval & { readonly currency: string }));
    default:
      return measured === stated;
  }
}

function sameNumber(measured: number, stated: unknown, tolerance: Tolerance): boolean {
  if (typeof stated === "number") return isWithin(tolerance, measured, stated);
  const { least, greatest } = stated as Interval;
  // One number with nothing said of how exact it is has a tolerance like any other; a stated range has none beyond it.
  return equal(least, greatest) ? isWithin(tolerance, measured, least) : inside(measured, { least, greatest });
}

function sameMoney(measured: Money, stated: Money | (Interval & { readonly currency: string })): boolean {
  if (measured.currency !== stated.currency) return false;
  return "amount" in stated ? equal(measured.amount, stated.amount) : inside(measured.amount, stated);
}

/** A code is the same under any of its standard's names. */
function sameCode({ code }: Code, stated: ResolvedCode): boolean {
  return (
    code === stated.code ||
    code === stated.standard?.declaration.name ||
    (stated.standard?.aliases ?? []).includes(code)
  );
}

function sameList(one: readonly number[], other: readonly number[], same: (a: number, b: number) => boolean): boolean {
  return one.length === other.length && one.every((item, index) => same(item, other[index] ?? Number.NaN));
}

function sameSet<A, B>(one: readonly A[], other: readonly B[], same: (a: A, b: B) => boolean): boolean {
  return (
    one.length === other.length &&
    one.every((item) => other.some((against) => same(item, against))) &&
    other.every((against) => one.some((item) => same(item, against)))
  );
}
