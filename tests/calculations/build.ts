import { expect } from "vitest";
import type { ResultValue } from "../../server/calculations/define.ts";
import { Engine } from "../../server/engine/engine.ts";
import type { BuildEvaluation, WorkedQuantity } from "../../server/engine/evaluate.ts";
import { prelude } from "../../server/standards/index.ts";

const uri = "memory:///workshop/example.ferrule";

/** A workshop of one text; what its build `example` comes to. The text has to be free of slips. */
export function evaluate(text: string): BuildEvaluation {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri, text }]);
  engine.complete = true;
  const slips = engine
    .findings(uri)
    .filter(({ code, severity }) => severity === "error" && /^(language|value|model)\//.test(code))
    .map(({ code, message }) => `${code}: ${message}`);
  expect(slips).toEqual([]);
  const build = engine.workshop.lookup("build example");
  const report = build && engine.report(build);
  if (!report) throw new Error("no build is named example");
  return report.evaluation;
}

/** A number of the build, in whatever state it is. */
export function worked(evaluation: BuildEvaluation, path: string): WorkedQuantity {
  const quantity = evaluation.quantity(path);
  if (!quantity) throw new Error(`no number has the path ${path}`);
  return quantity;
}

/** A number that is known; the test fails when it is not. */
export function value(evaluation: BuildEvaluation, path: string): ResultValue {
  const quantity = worked(evaluation, path);
  if (quantity.state !== "known") throw new Error(`${path} is ${JSON.stringify({ ...quantity, row: undefined })}`);
  return quantity.value;
}

/** Paths of the facts for want of which a number is not known. */
export function missing(evaluation: BuildEvaluation, path: string): readonly string[] {
  const quantity = worked(evaluation, path);
  return quantity.state === "unknown" ? quantity.missing.map((one) => one.path) : [`${path} is ${quantity.state}`];
}

/** Why a number means nothing for this build. */
export function none(evaluation: BuildEvaluation, path: string): string {
  const quantity = worked(evaluation, path);
  return quantity.state === "none" ? quantity.reason : `${path} is ${quantity.state}`;
}
