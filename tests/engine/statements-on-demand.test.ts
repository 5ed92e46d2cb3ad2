import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { readPart } from "../../server/model/part.ts";
import { readFields } from "../../server/model/read-fields.ts";
import { readStandard } from "../../server/model/standard.ts";
import type { Statement } from "../../server/model/stated.ts";
import { prelude } from "../../server/standards/index.ts";

const today = "2026-11-25";

function engineOf(text: string): Engine {
  const engine = new Engine({ today });
  engine.update([{ uri: "file:///parts.ferrule", text }]);
  return engine;
}

function sampleParts(): string {
  const folder = join(import.meta.dirname, "..", "..", "samples", "parts");
  return readdirSync(folder)
    .map((name) => readFileSync(join(folder, name), "utf8"))
    .join("\n");
}

/** Entries in every state a block can bring them into. */
const oddParts = `
part cassette odd.cogs "Odd" {
  speeds: 12
  speeds: 11
  cogs: about twelve
  freehub: none
  lockring-torque: 40 Nm
  colour { speeds: 9 }
  nonsense: 4
  own { speeds: 8 }
}

part cassette odd.derived from odd.cogs {
  cogs: 11-13-15 t
  freehub: none
}

part cassette odd.twice from odd.derived { speeds: 3 }
part gadget odd.gadget { mass: 12 g; speeds: 4 }
`;

describe("facts of parts", () => {
  test.each([
    ["of the samples", sampleParts()],
    ["with faults", oddParts],
  ])("%s are the same one by one and all at once", (_, text) => {
    const one = engineOf(text);
    const all = engineOf(text);
    let compared = 0;
    for (const declaration of one.workshop.declared("part")) {
      const twin = all.workshop.lookup(declaration.key);
      if (!twin) throw new Error(`no ${declaration.key}`);
      const whole = new Map(readPart(twin, all.workshop).facts);
      const { facts, kind } = readPart(declaration, one.workshop);
      const names = [...new Set([...Object.keys(kind?.fields ?? {}), ...whole.keys(), "nonsense"])];
      // Backwards, so that nothing rests on the order of the text.
      for (const name of names.reverse()) {
        expect(said(facts.get(name)), `${declaration.key} ${name}`).toEqual(said(whole.get(name)));
        expect(facts.has(name)).toBe(whole.has(name));
        compared++;
      }
      expect([...facts].map(([name, statement]) => [name, said(statement)])).toEqual(
        [...whole].map(([name, statement]) => [name, said(statement)]),
      );
    }
    expect(compared).toBeGreaterThan(10);
  });

  test("what counts is the first statement of a block and the last layer", () => {
    const { workshop } = engineOf(oddParts);
    const fact = (part: string, name: string): unknown => {
      const declaration = workshop.part(part);
      const statement = declaration && readPart(declaration, workshop).facts.get(name);
      return statement?.state === "stated" ? statement.value : statement?.state;
    };
    expect(fact("odd.cogs", "speeds")).toBe(12);
    expect(fact("odd.cogs", "cogs")).toBe("unreadable");
    expect(fact("odd.cogs", "nonsense")).toBeUndefined();
    expect(fact("odd.derived", "speeds")).toBe(12);
    expect(fact("odd.derived", "cogs")).toEqual([11, 13, 15]);
    expect(fact("odd.twice", "speeds")).toBe(3);
    expect(fact("odd.twice", "freehub")).toBe("none");
  });

  test("asking for single facts before the findings changes no finding", () => {
    const asked = engineOf(oddParts);
    const plain = engineOf(oddParts);
    for (const declaration of asked.workshop.declared("part")) {
      for (const name of ["cogs", "speeds", "colour"]) asked.part(declaration).facts.get(name);
    }
    const findings = (engine: Engine): unknown =>
      engine.findings("file:///parts.ferrule").map(({ code, message, place }) => ({ code, message, at: place.span }));
    expect(findings(asked)).toEqual(findings(plain));
    expect(findings(plain)).not.toEqual([]);
  });
});

test("dimensions of the built-in standards are the same one by one and all at once", () => {
  const { workshop } = new Engine({ today, prelude });
  let compared = 0;
  for (const declaration of workshop.declared("standard")) {
    const { dimensions, family } = readStandard(declaration);
    const whole = new Map<string, Statement>();
    const block = declaration.readTree().block;
    if (!block || !family) throw new Error(`${declaration.key} has no block or no family`);
    readFields(block, {
      declaration,
      fields: family.fields,
      owner: "a standard",
      prefix: "",
      free: ["own"],
      into: whole,
      findings: [],
    });
    for (const name of Object.keys(family.fields)) {
      expect(said(dimensions.get(name)), `${declaration.key} ${name}`).toEqual(said(whole.get(name)));
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(500);
});

/** A statement without the declaration it stands in. */
function said(statement: Statement | undefined): unknown {
  if (!statement) return undefined;
  const { place, ...rest } = statement;
  return { ...rest, at: place.span };
}
