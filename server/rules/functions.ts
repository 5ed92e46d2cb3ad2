/**
 * What can be called in an expression. The row of a function says what it takes, for completion, hover, the reference
 * page and the check of its arguments; what it comes to is worked out in call.ts.
 */
export interface RuleFunction {
  readonly name: "min" | "max" | "sum" | "count" | "round" | "abs";
  /** As it is written, for help. */
  readonly written: string;
  readonly description: string;
  readonly example: string;
  readonly fewest: number;
  readonly most: number;
}

const noLimit = Number.POSITIVE_INFINITY;

export const ruleFunctions: readonly RuleFunction[] = [
  {
    name: "min",
    written: "min(A, B, ...)",
    description:
      "The least of numbers, of the items of lists, and of the ends of ranges. What there is none of is left out.",
    example: "min(drivetrain.cassette.cogs)",
    fewest: 1,
    most: noLimit,
  },
  {
    name: "max",
    written: "max(A, B, ...)",
    description:
      "The greatest of numbers, of the items of lists, and of the ends of ranges. What there is none of is left out.",
    example: "max(drivetrain.cassette.cogs)",
    fewest: 1,
    most: noLimit,
  },
  {
    name: "sum",
    written: "sum(A, B, ...)",
    description:
      "The sum of numbers and of the items of lists. What there is none of adds nothing; with something not stated it is a sum of at least what is known.",
    example: "sum(front-wheel.rim.mass, rear-wheel.rim.mass)",
    fewest: 1,
    most: noLimit,
  },
  {
    name: "count",
    written: "count(A, B, ...)",
    description:
      "How many items lists have, how many of the slots and values named there are, and how many of the conditions are met.",
    example: "count(lighting.front-lamp, lighting.rear-lamp)",
    fewest: 1,
    most: noLimit,
  },
  {
    name: "round",
    written: "round(A, STEP)",
    description:
      "The nearest whole number, or the nearest multiple of a step; a half goes away from zero. What has a unit needs a step.",
    example: "round(cockpit.stem.spacers-below, 5 mm)",
    fewest: 1,
    most: 2,
  },
  {
    name: "abs",
    written: "abs(A)",
    description: "A number without its sign.",
    example: "abs(drivetrain.chainline-offset)",
    fewest: 1,
    most: 1,
  },
];

const byName = new Map<string, RuleFunction>(ruleFunctions.map((row) => [row.name, row]));

export function functionByName(name: string): RuleFunction | undefined {
  return byName.get(name);
}
