import { describe, expect, it } from "vitest";
import { quantities } from "../../server/calculations/table.ts";
import type { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { evaluationOf, type Variation, variationsOf } from "../checks/variations.ts";
import { build, parts } from "./bicycle.ts";
import { evaluate } from "./build.ts";
import { sprung, town } from "./other-bicycles.ts";

/**
 * Which numbers stand or fall with each fact of a bicycle, kept in one file per bicycle: every fact is left out, stated
 * to be none and, where it is a word, exchanged for another, one at a time. A change is looked at and accepted with
 * `npm test -- calculations/facts -u`.
 */
function standing(evaluation: BuildEvaluation | undefined): ReadonlyMap<string, string> {
  return new Map(
    quantities.map(({ path }) => {
      const worked = evaluation?.quantity(path);
      if (worked?.state === "unknown") {
        return [path, `asks for ${[...new Set(worked.missing.map((one) => one.path))].join(", ")}`];
      }
      return [path, worked?.state === "none" ? `means nothing: ${worked.reason}` : "is worked out"];
    }),
  );
}

/** To move a number changes values, and those are for the worked cases; whether there is one, it seldom changes. */
function isOfWords({ name }: Variation): boolean {
  return !/: -?\d/.test(name) && name !== "front and rear exchanged";
}

describe.each([
  { name: "trail", text: `${parts}${build}` },
  { name: "town", text: town },
  { name: "sprung", text: sprung },
])("a bicycle: $name", ({ name, text }) => {
  it("asks for the same facts, and says the same of what means nothing", async () => {
    const whole = standing(evaluate(text));
    const lines = ["As it stands:", ...[...whole].map(([path, state]) => `  ${path} ${state}`)];
    for (const variation of variationsOf(text).slice(1).filter(isOfWords)) {
      const changed = [...standing(evaluationOf(variation.text))].filter(([path, state]) => whole.get(path) !== state);
      lines.push(`${variation.name}:${changed.length === 0 ? " the same" : ""}`);
      lines.push(...changed.map(([path, state]) => `  ${path} ${state}`));
    }
    await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(`facts/${name}.txt`);
  }, 60_000);
});
