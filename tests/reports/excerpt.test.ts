import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LineIndex } from "../../server/engine/positions.ts";
import { excerpt } from "../../server/reports/excerpt.ts";
import { plain } from "../../server/reports/paint.ts";
import { columns, printable, wrap } from "../../server/reports/printable.ts";

/** The two lines for a stretch of a text, marked with « and ». */
function show(marked: string, width = 80): string[] {
  const start = marked.indexOf("«");
  const end = marked.indexOf("»") - 1;
  const text = marked.replace(/[«»]/g, "");
  const lines = new LineIndex(text);
  const range = { start: lines.position(start), end: lines.position(end) };
  return excerpt({ text, lines }, range, width, 4, plain);
}

describe("an excerpt", () => {
  test.each([
    ["points to a stretch", "a: b\nmass: «372 g»\nc: d", ["   2 | mass: 372 g", "     |       ^^^^^"]],
    ["points to a place between characters", "mass:«» 372 g", ["   1 | mass: 372 g", "     |      ^"]],
    ["points past the end of a line", "mass:«»", ["   1 | mass:", "     |      ^"]],
    ["of several lines points to the first", "x {\n  «a {\n  }\n»}", ["   2 |   a {", "     |   ^^^"]],
    ["knows wide characters", 'x: "自転車" «y»', ['   1 | x: "自転車" y', "     |             ^"]],
    ["marks wide characters over their whole width", 'x: «"自転車"»', ['   1 | x: "自転車"', "     |    ^^^^^^^^"]],
    ["knows combining marks", "cafe\u0301 «y»", ["   1 | cafe\u0301 y", "     |      ^"]],
    ["knows emoji of several code points", "👩🏽‍🔧 «y»", ["   1 | 👩🏽‍🔧 y", "     |    ^"]],
    ["shows a tab as a blank", "\tx:\t«y»", ["   1 |  x: y", "     |     ^"]],
    ["of a line that ends with a carriage return", "a: «b»\r\nc: d", ["   1 | a: b", "     |    ^"]],
    ["of an empty text", "«»", ["   1 |", "     | ^"]],
  ])("%s", (_, marked, shown) => {
    expect(show(marked)).toEqual(shown);
  });

  test("cuts a long line on both sides with the stretch in view", () => {
    expect(show(`${"a".repeat(100)} «middle» ${"b".repeat(100)}`, 40)).toMatchInlineSnapshot(`
      [
        "   1 | …aaaaaaaaaaaaaaaaaaaaaaaa middle…",
        "     |                           ^^^^^^",
      ]
    `);
  });

  test("cuts a stretch that is too long itself", () => {
    expect(show(`x: «${"m".repeat(200)}» y`, 40)).toMatchInlineSnapshot(`
      [
        "   1 | … mmmmmmmmmmmmmmmmmmmmmmmmmmmmmm…",
        "     |   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^",
      ]
    `);
  });

  test("of a line of ten million characters is there at once", () => {
    const started = performance.now();
    expect(show(`${"a".repeat(10_000_000)}«b»`, 80)[0]).toHaveLength(80);
    expect(performance.now() - started).toBeLessThan(1000);
  });

  test("of any text fits the width, and its mark stands under the stretch", () => {
    const text = fc.string({ unit: "grapheme", maxLength: 120 });
    fc.assert(
      fc.property(text, text, text, fc.integer({ min: 30, max: 100 }), (before, marked, after, width) => {
        const clean = [before, marked, after].map((part) => part.replace(/[\r\n\u2028\u2029«»]/g, ""));
        const [line = "", mark = ""] = show(`${clean[0]}«${clean[1]}»${clean[2]}`, width);
        expect(columns(line)).toBeLessThanOrEqual(Math.max(width, 27));
        expect(columns(mark)).toBeLessThanOrEqual(Math.max(width, 27) + 1);
        const carets = mark.indexOf("^");
        const shownBefore = line.slice(7).startsWith("…") ? undefined : printable(clean[0] ?? "");
        if (shownBefore !== undefined) expect(carets).toBe(7 + columns(shownBefore));
      }),
    );
  });
});

describe("wrapping", () => {
  test("never drops or adds a word", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "grapheme" })), fc.integer({ min: 1, max: 100 }), (words, width) => {
        const text = words.map((word) => `.${word.replace(/\s/g, "_")}`).join(" ");
        expect(wrap(text, width).join(" ")).toBe(text);
      }),
    );
  });
});
