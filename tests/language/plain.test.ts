import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseThoroughly } from "../../grammar/parse.ts";
import { readPlain } from "../../grammar/plain.ts";
import { findHeader, split } from "../../grammar/split.ts";

function ferruleFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ferrule"))
    .map((entry) => join(entry.parentPath, entry.name));
}

const declarations = ["samples", "server/standards"].flatMap(ferruleFiles).flatMap((file) => {
  const text = readFileSync(file, "utf8");
  return split(text)
    .filter((chunk) => chunk.keyword !== undefined)
    .map((chunk) => text.slice(chunk.start, chunk.end));
});

/** The quick tree where there is one, and the thorough tree of the same text. */
function both(text: string) {
  const headerStart = findHeader(text);
  if (headerStart < 0) return undefined;
  const quick = readPlain(text, headerStart);
  return quick && { quick, thorough: parseThoroughly(text, headerStart) };
}

describe("the quick reader gives the parser's tree or none", () => {
  it("on every declaration of the samples and standards, nearly all of which are plain", () => {
    let plain = 0;
    for (const text of declarations) {
      const trees = both(text);
      if (!trees) continue;
      plain++;
      expect(trees.quick).toEqual(trees.thorough);
    }
    expect(declarations.length).toBeGreaterThan(300);
    expect(plain / declarations.length).toBeGreaterThan(0.9);
  });

  it("on the headers of records", () => {
    for (const header of [
      'record "A-1" of example',
      'record   "A 1"  of  example.x',
      'record "" of example',
      'record "A" of of-x',
    ]) {
      const trees = both(`/// Said.\n${header} {\n  date: 2026-11-20\n  a.b: 1180, 1150 N\n}\n`);
      expect(trees?.quick, header).toBeDefined();
      expect(trees?.quick).toEqual(trees?.thorough);
    }
    const others = [
      "record A-1 of example",
      'record "A-1"',
      'record "A-1" example',
      "record of example",
      'record "A" of "b"',
    ];
    for (const header of [
      ...others,
      'record "A" of of',
      'record "A" of x "T"',
      'record "A" from x',
      'record"A" of x',
    ]) {
      expect(both(`${header} {\n  date: 2026-11-20\n}\n`), header).toBeUndefined();
    }
  });

  it("on waivers, with and without their parts", () => {
    const line = (waiver: string): string => `build one "One" {\n  frame: a.b\n  ${waiver}\n}\n`;
    const waivers = [
      'waive drivetrain/chain-length at drivetrain.chain "Spare links" until 2027-03-31',
      'waive drivetrain/chain-length "Spare links" until 2027-03-31',
      'waive drivetrain/chain-length at drivetrain.chain "Spare links"',
      'waive a/b ""',
    ];
    for (const waiver of waivers) {
      const trees = both(line(waiver));
      expect(trees?.quick).toBeDefined();
      expect(trees?.quick).toEqual(trees?.thorough);
    }
    for (const waiver of ["waive", "waive a/b", 'waive at x "y"', 'waive a/b at "y"', 'waive a/b "y" until']) {
      expect(both(line(waiver))).toBeUndefined();
    }
  });

  it("on the same with any piece of it changed", () => {
    const pieces = fc.constantFrom(
      ...'\n|;|{|}|:|,|//| //|///|"|\'|(|)|<|<=|=|-| - |or| or |from|waive| |  |\t|\r|.|..|0|,5|3,5|29"|x: y|x {|{ a: b }|}\n|{\n|none|#|[|§|·|\\|–|a:b|# x|/|/*|*|+|{ }|;;|waive a/b|if|\u00a0|in|1 in'.split(
        "|",
      ),
    );
    let compared = 0;
    fc.assert(
      fc.property(
        fc.nat(declarations.length - 1),
        fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), pieces), {
          minLength: 1,
          maxLength: 3,
        }),
        (index, changes) => {
          let text = declarations[index] ?? "";
          for (const [share, removed, piece] of changes) {
            const at = Math.floor(share * text.length);
            text = text.slice(0, at) + piece + text.slice(at + removed);
          }
          const first = split(text).find((chunk) => chunk.keyword !== undefined);
          if (!first) return;
          const trees = both(text.slice(first.start, first.end));
          if (!trees) return;
          compared++;
          expect(trees.quick).toEqual(trees.thorough);
        },
      ),
      { numRuns: 4000 },
    );
    expect(compared).toBeGreaterThan(400);
  });
});
