import type { CodeHalf, Family } from "./define.ts";

/** One half of a composite code as written, such as `ZS44` of `ZS44/28.6`. */
export interface WrittenHalf {
  readonly half: CodeHalf;
  /** As written; absent for an optional half that was left out. */
  readonly text?: string;
  /** The number, in the base unit, of a half that is a quantity. */
  readonly value?: number;
  /** Where it stands inside the code. */
  readonly start: number;
  readonly end: number;
}

/**
 * Splits a code of a composite family into its halves.
 * @returns undefined when the family is not composite, or the code does not have its form.
 */
export function compositeHalves(family: Family, code: string): readonly [WrittenHalf, WrittenHalf] | undefined {
  const { composite } = family;
  if (!composite) return undefined;
  const [firstHalf, secondHalf] = composite.halves;
  const at = code.indexOf(composite.separator);
  if (at < 0) {
    const first = readHalf(firstHalf, code, 0);
    return first && secondHalf.optional
      ? [first, { half: secondHalf, start: code.length, end: code.length }]
      : undefined;
  }
  const first = readHalf(firstHalf, code.slice(0, at), 0);
  const second = readHalf(secondHalf, code.slice(at + composite.separator.length), at + composite.separator.length);
  return first && second ? [first, second] : undefined;
}

function readHalf(half: CodeHalf, text: string, start: number): WrittenHalf | undefined {
  if (text === "") return undefined;
  const place = { half, text, start, end: start + text.length };
  if (!("dimension" in half)) return place;
  return /^\d+(\.\d+)?$/.test(text) ? { ...place, value: Number(text) } : undefined;
}
