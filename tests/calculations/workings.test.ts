import { describe, expect, it } from "vitest";
import type { Calculation } from "../../server/calculations/define.ts";
import { showResult } from "../../server/calculations/show.ts";
import { calculations } from "../../server/calculations/table.ts";
import { readInputs } from "../published-values/calculate.ts";
import { cases } from "../published-values/cases/index.ts";

/**
 * The working that each calculation shows, and its results as a person reads them, for its own examples and the worked
 * cases; kept in one file per calculation. A change is looked at and accepted with `npm test -- workings -u`.
 */
function shown(calculation: Calculation, inputs: unknown): readonly string[] {
  const lines: string[] = [];
  const results = calculation.compute(inputs as never, { step: (text) => lines.push(`  ${text}`) });
  for (const [name, value] of Object.entries(results)) {
    if (value !== undefined) lines.push(`  = ${name}: ${showResult(calculation.results[name], value)}`);
  }
  return lines;
}

describe.each(calculations.map((calculation) => ({ name: calculation.name, calculation })))(
  "$name",
  ({ name, calculation }) => {
    it("shows the same working", async () => {
      const lines = [
        ...calculation.examples.flatMap(({ inputs }, index) => [`Example ${index + 1}`, ...shown(calculation, inputs)]),
        ...cases
          .filter((one) => one.calculation === name)
          .flatMap(({ inputs }, index) => [
            `Case ${index + 1}`,
            ...shown(calculation, readInputs(calculation, inputs)),
          ]),
      ];
      await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(`workings/${name}.txt`);
    });
  },
);
