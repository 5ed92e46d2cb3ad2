import { describe, expect, test } from "vitest";
import { format } from "../../grammar/format.ts";
import { Engine } from "../../server/engine/engine.ts";
import { canonicalValues } from "../../server/model/canonical-values.ts";
import type { Declaration } from "../../server/model/declaration.ts";
import { mate, type ResolvedCode, readStandard, resolveCode } from "../../server/model/standard.ts";
import { prelude } from "../../server/standards/index.ts";
import { families } from "../../server/vocabulary/index.ts";

const engine = new Engine({ today: "2026-11-25", prelude });
const declarations: Declaration[] = prelude.flatMap(({ uri }) => [...(engine.file(uri)?.declarations ?? [])]);

function resolve(family: string, code: string): ResolvedCode {
  const found = resolveCode({ family, code }, engine.workshop, []);
  if (!found) throw new Error(`no standard ${family} ${code}`);
  return found;
}

/** Families whose interfaces are each maker's own, or are written in two halves: nothing open to ship. */
const withoutOpenStandards = [
  "shift-family",
  "hydraulic-family",
  "hose-fitting",
  "pad-shape",
  "routing-system",
  "headset-upper",
  "headset-lower",
  "shock-size",
  "tyre-designation",
];

describe("the standards that come with the program", () => {
  test("every file holds standards, all of them clean", () => {
    for (const { uri } of prelude) {
      expect(engine.file(uri)?.declarations.length, uri).toBeGreaterThan(0);
      expect(engine.fileProblems(uri), uri).toEqual([]);
      expect(
        engine.findings(uri).map(({ code, message, path }) => `${path} ${code}: ${message}`),
        uri,
      ).toEqual([]);
    }
  });

  test("every file is written as the formatter writes it", () => {
    for (const { uri, text } of prelude) expect(format(text, canonicalValues).text, uri).toBe(text);
  });

  test("every declaration is a standard of a known family, with a title", () => {
    for (const declaration of declarations) {
      expect(declaration.keyword, declaration.key).toBe("standard");
      expect(families.has(declaration.kind ?? ""), declaration.key).toBe(true);
      expect(declaration.title, declaration.key).toMatch(/\S/);
    }
  });

  test("every standard says where its numbers come from", () => {
    for (const declaration of declarations) {
      const source = readStandard(declaration).dimensions.get("source");
      expect(source?.state, declaration.key).toBe("stated");
      expect(String(source?.state === "stated" && source.value), declaration.key).toMatch(
        /from memory|common practice|Wiki|ISO|JIS|trade magazines/,
      );
    }
  });

  test("no name is declared twice, and no two standards of a family go by one name", () => {
    for (const family of families.keys()) {
      const names = declarations
        .filter(({ kind }) => kind === family)
        .flatMap((declaration) => [declaration.name, ...readStandard(declaration).aliases]);
      expect(
        names.filter((name, index) => names.indexOf(name) !== index),
        family,
      ).toEqual([]);
    }
  });

  test("every family has a standard, unless it has no open one", () => {
    const empty = [...families.keys()].filter((family) => !declarations.some(({ kind }) => kind === family));
    expect(empty.sort()).toEqual([...withoutOpenStandards].sort());
  });

  test("whatever a standard names as its mate exists, and mates both ways", () => {
    let asked = 0;
    for (const declaration of declarations) {
      for (const named of readStandard(declaration).mates) {
        const family = named.slice(0, named.indexOf("/"));
        const one = resolve(declaration.kind ?? "", declaration.name);
        const other = resolve(family, named.slice(family.length + 1));
        expect(mate(one, other), `${declaration.key} with ${named}`).toBe(true);
        expect(mate(other, one), `${named} with ${declaration.key}`).toBe(true);
        asked++;
      }
    }
    expect(asked).toBeGreaterThan(6);
  });

  test("interfaces mate with themselves and, unless named, with no other of their family", () => {
    for (const one of declarations) {
      for (const other of declarations) {
        if (one.kind !== other.kind) continue;
        const a = resolve(one.kind ?? "", one.name);
        const b = resolve(other.kind ?? "", other.name);
        const named =
          readStandard(one).mates.includes(`${other.kind}/${other.name}`) ||
          readStandard(other).mates.includes(`${one.kind}/${one.name}`);
        expect(mate(a, b), `${one.key} with ${other.key}`).toBe(one === other || named);
      }
    }
  });

  test("an alias stands for the standard that states it", () => {
    expect(resolve("axle", "148x12").code).toBe("12x148");
    expect(resolve("bead-seat", "650B").code).toBe("584");
    expect(resolve("bottom-bracket-shell", "english-73").code).toBe("threaded-1.370x24-73");
    expect(resolve("rim-kind", "hookless").code).toBe("tubeless-straight-side");
  });
});
