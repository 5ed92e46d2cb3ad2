import { describe, expect, it } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { refusal } from "./run.ts";

// A number without bounds never leaves a calculation in any case; this holds each to saying which input was wrong.

const rows = calculations.map((calculation) => [calculation.name, calculation] as const);

describe.each(rows)("%s", (name, calculation) => {
  it("names the number that is none", () => {
    for (const { inputs } of calculation.examples) {
      for (const [input, value] of Object.entries(inputs as Readonly<Record<string, unknown>>)) {
        if (typeof value !== "number") continue;
        expect(refusal(name, { ...inputs, [input]: Number.NaN }), input).toMatch(
          new RegExp(`${input}|${input.replaceAll("-", " ")}`, "i"),
        );
      }
    }
  });
});
