import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { describeType } from "../../server/reference/field-type.ts";
import type { FieldType } from "../../server/values/types.ts";
import { codesOf, read } from "../values/tokens.ts";

/** What the reference page says that each input takes, by calculation and input: it is what a person was told. */
const told = new Map<string, string>();
for (const section of readFileSync("grammar/reference/calculations.md", "utf8").split(/^## /m).slice(1)) {
  const [name = ""] = section.split("\n");
  for (const [, input = "", takes = ""] of section.matchAll(
    /^\| `([a-z0-9-]+)`(?: \(may be left out\))? \| (.*?) \| .* \|$/gm,
  )) {
    if (!told.has(`${name} ${input}`)) told.set(`${name} ${input}`, takes.replaceAll("\\|", "|"));
  }
}

interface Bound {
  readonly at: number;
  readonly unit: string;
  readonly outward: 1 | -1;
}

/** "a whole number of t; 6 to 200", "torque in N·m, N·cm; 0.01 N·m or more". */
function boundsIn(takes: string): readonly Bound[] {
  const said = takes.split("; ")[1];
  if (said === undefined) return [];
  const both = /^(-?[\d.]+)(?: (\D+?))? to (-?[\d.]+)(?:\s?(\D+))?$/.exec(said);
  if (both) {
    const unit = both[4] ?? "";
    return [
      { at: Number(both[1]), unit, outward: -1 },
      { at: Number(both[3]), unit, outward: 1 },
    ];
  }
  const one = /^(-?[\d.]+)(?:\s?(\D+?))? (or more|at most)$/.exec(said);
  if (!one) throw new Error(`no bounds can be read from "${said}"`);
  return [{ at: Number(one[1]), unit: one[2] ?? "", outward: one[3] === "or more" ? -1 : 1 }];
}

function problems(type: FieldType, value: number, unit: string): readonly string[] {
  return codesOf(read(type, unit === "" ? `${value}` : `${value} ${unit}`));
}

const rows = calculations.flatMap(({ name, inputs }) =>
  Object.entries(inputs).map(([input, { field }]) => ({ name, input, type: field.type })),
);
const bounded = rows.flatMap(({ name, input, type }) =>
  boundsIn(told.get(`${name} ${input}`) ?? "").map((bound) => ({ name, input, type, ...bound })),
);

describe("the page of calculations", () => {
  it("says of every input what is read", () => {
    const said = rows.map(({ name, input }) => [name, input, told.get(`${name} ${input}`)]);
    expect(said).toEqual(rows.map(({ name, input, type }) => [name, input, describeType(type)]));
    expect(bounded.length).toBeGreaterThan(50);
  });
  it.each(bounded)("$name: $input may be $at $unit and no farther", ({ type, at, unit, outward }) => {
    const step = type.type === "count" ? 1 : Math.max(Math.abs(at), 1e-3) / 1000;
    expect(problems(type, at, unit)).toEqual([]);
    expect(problems(type, at + outward * step, unit)).toEqual([
      // A count below nothing is no count at all.
      type.type === "count" && at === 0 && outward < 0 ? "not-whole" : "out-of-bounds",
    ]);
  });
});
