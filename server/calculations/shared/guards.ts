import { type Impossible, unusable } from "../define.ts";

/**
 * Refusals that many calculations share. Each returns the reason for the first input that is wrong, or `undefined`
 * when all are usable; an input left out is not looked at.
 */
export type NamedNumbers = Readonly<Record<string, number | undefined>>;

/** Lengths, counts and the like that must be more than zero. */
export function notPositive(inputs: NamedNumbers): Impossible | undefined {
  return refuse(inputs, (value) => value > 0, "must be more than zero");
}

/** Numbers that may be zero but not less. */
export function negative(inputs: NamedNumbers): Impossible | undefined {
  return refuse(inputs, (value) => value >= 0, "must not be less than zero");
}

/** Numbers of any sign. */
export function notFinite(inputs: NamedNumbers): Impossible | undefined {
  return refuse(inputs, () => true, "must be a number");
}

/** Angles between which a tube or an axis of a bicycle can stand, from the horizontal. */
export function notBetween(
  least: number,
  greatest: number,
  unit: string,
  inputs: NamedNumbers,
): Impossible | undefined {
  return refuse(
    inputs,
    (value) => value > least && value < greatest,
    `must lie between ${least} and ${greatest} ${unit}`.trimEnd(),
  );
}

/** Tooth counts: at least one of them, each a whole number of three or more. */
export function notTeeth(inputs: Readonly<Record<string, readonly number[]>>): Impossible | undefined {
  for (const [name, teeth] of Object.entries(inputs)) {
    if (teeth.length === 0) return unusable(`${name} names no tooth count.`);
    const wrong = teeth.find((count) => !Number.isInteger(count) || count < 3 || count > 1000);
    if (wrong !== undefined) return unusable(`${name} holds ${wrong}, which is no tooth count.`);
  }
  return undefined;
}

function refuse(inputs: NamedNumbers, accepts: (value: number) => boolean, must: string): Impossible | undefined {
  for (const [name, value] of Object.entries(inputs)) {
    if (value !== undefined && !(Number.isFinite(value) && accepts(value))) return unusable(`${name} ${must}.`);
  }
  return undefined;
}
