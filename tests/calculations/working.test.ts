import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { readInputs } from "../published-values/calculate.ts";
import { cases } from "../published-values/cases/index.ts";
import { record } from "./run.ts";

const math = create(all ?? {});

/** Workings that tell places and lengths without an equation; every other has to have one that is checked here. */
const withoutEquations = new Set([
  "belt-length",
  "chain-angle",
  "stem-solutions",
  "rider-centre",
  "saddle-to-tyre",
  "chain-growth",
  "centre-of-mass",
  "mass",
  "price",
  "pressure-limits",
]);

const units = "mm²|mm|links|N·m|N/mm|lb/in|km/h|m/s²|MPa|GPa|rpm|bar|kg|in|N|m|t|g|°";
const withoutUnits = (text: string): string =>
  text.replace(new RegExp(`(?<=[\\d.]) ?(?:${units})(?![\\p{L}/²])`, "gu"), "");

/** What a line puts before an equals sign, as mathjs reads it; angles are in degrees. `undefined` for prose. */
function expressionOf(text: string): string | undefined {
  const written = withoutUnits(text.split(/: |; |, /).at(-1) ?? "")
    .replace(/^(?:(?!arc|sin |cos |tan )\p{L}+ )+/u, "")
    .replace(/(\d) % of/g, "$1 ÷ 100 ×")
    .replace(/(\d) %/g, "$1 ÷ 100")
    .replace(/arctangent of (\S+) ÷ (\S+)/g, "degrees(atan($1 ÷ $2))")
    .replace(/arcsine of (\S+) ÷ (\S+)/g, "degrees(asin($1 ÷ $2))")
    .replace(/arcsin\(/g, "asin(")
    .replace(/(sin|cos|tan) ([\d.-]+)/g, "$1(radians($2))")
    .replace(/\b(sin|cos|tan)\(([^()]*÷[^()]*)\)/g, "$1(radians($2))")
    .replace(/ (?:on the ring|on the cog|for each link, down to an even number|of the quill)/g, "")
    .replaceAll("2π", "(2 * pi)")
    .replaceAll("π", "pi")
    .replaceAll("√", "sqrt")
    .replaceAll("²", "^2")
    .replaceAll("×", "*")
    .replaceAll("÷", "/")
    .replaceAll("−", "-")
    .trim();
  return /^[^*/^]/.test(written) &&
    /^[\d.+*/()^ -]*$/.test(written.replace(/degrees|radians|atan|asin|sin|cos|tan|sqrt|pi/g, ""))
    ? written
    : undefined;
}

const scope = {
  degrees: (angle: number) => (angle * 180) / Math.PI,
  radians: (angle: number) => (angle * Math.PI) / 180,
};

interface Equation {
  readonly line: string;
  readonly left: number;
  readonly right: number;
}

/** Every equation of a line: what stands before each equals sign, and the number after it. */
function equationsOf(line: string): readonly Equation[] {
  const parts = line.split(" = ");
  return parts.slice(1).flatMap((after, index) => {
    const expression = expressionOf(parts[index] ?? "");
    const between = index + 2 < parts.length && !/[;,:]/.test(after) ? expressionOf(after) : undefined;
    const right = between ?? /^-?\d+(?:\.\d+)?/.exec(after)?.[0];
    if (expression === undefined || right === undefined || !/\d.*[*/+^-]|\(/.test(expression)) return [];
    const number = (written: string): number => Number(math.evaluate(written, { ...scope }));
    return [{ line, left: number(expression), right: number(right) }];
  });
}

/** Numbers are shown rounded, and metres, per cent and bars stand for thousands, hundreds and tens of the base unit. */
function agrees({ left, right }: Equation): boolean {
  return [1, 100, 1000, 0.001, 10].some((scale) => Math.abs(left * scale - right) <= 0.06 + Math.abs(right) * 1e-3);
}

describe.each(calculations.map((calculation) => [calculation.name, calculation] as const))(
  "%s",
  (name, calculation) => {
    const inputs = [
      ...calculation.examples.map((example) => example.inputs),
      ...cases.filter((one) => one.calculation === name).map((one) => readInputs(calculation, one.inputs) as never),
    ];
    const equations = inputs.flatMap((given) =>
      record(calculation, given).working.flatMap((line) => equationsOf(line)),
    );

    it("works out what its working says", () => {
      expect(equations.filter((equation) => !agrees(equation))).toEqual([]);
      expect(equations.length > 0, equations.map(({ line }) => line).join("\n")).toBe(!withoutEquations.has(name));
    });
  },
);

describe("an equation", () => {
  it.each([
    ["Sum: 2 mm + 3 mm = 5 mm", true],
    ["Sum: 2 mm + 3 mm = 6 mm", false],
    ["Half: 30 % of 60 mm = 18 mm", true],
    ["Half: 30 % of 60 mm = 16 mm", false],
    ["Turn: arctangent of 10 ÷ 10 = 45°; head angle 73° − 45° = 28°", true],
    ["Turn: arctangent of 10 ÷ 10 = 45°; head angle 73° − 45° = 29°", false],
  ])("%s", (line, holds) => {
    const equations = equationsOf(line);
    expect(equations.length).toBeGreaterThan(0);
    expect(equations.every(agrees)).toBe(holds);
  });
});
