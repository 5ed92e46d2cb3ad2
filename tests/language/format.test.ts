import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyChanges, format, formatEdits, formatRange } from "../../grammar/format.ts";
import { lex } from "../../grammar/lexer.ts";
import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import { teethSpellings, unitBySpelling } from "../../grammar/units.ts";
import { anyText, damagedText, soundText } from "./arbitraries.ts";
import { describeBlock, problemsOf } from "./support.ts";

/** The tokens that carry meaning, in order: everything but line ends and semicolons, which only separate. */
function meaning(text: string): string[] {
  const { tokens, comments } = lex(text.replace(/^\ufeff/, ""));
  return [
    ...tokens.filter(({ tokenType }) => !["LineEnd", "Semicolon"].includes(tokenType.name)).map((token) => token.text),
    ...comments.map((comment) => comment.text),
  ];
}

/**
 * The same with every spelling that may be rewritten made one: damage can turn a word into a unit, a sign or a range.
 * It knows the table of units, but nothing of how the formatter finds them.
 */
function meaningApartFromSpelling(text: string): string {
  const words = meaning(text).flatMap((word) => {
    const plain = word.replace(/[\u2010-\u2015\u2212]/g, "-");
    const degrees = /^(.*\d)°$/.exec(plain);
    const pair = /^(\d+(?:\.\d+)?)(?:-|\.{2,3}|…)(\d+(?:\.\d+)?)$/.exec(plain);
    const spread = /^([-+]?\d+(?:\.\d+)?)?(?:±|\+\/?-)(\d+(?:\.\d+)?)?$/.exec(plain);
    if (degrees) return [degrees[1]!, "°"];
    if (pair) return [pair[1]!, "to", pair[2]!];
    if (spread && (spread[1] !== undefined || spread[2] !== undefined || plain !== "-")) {
      return [spread[1] ?? [], "±", spread[2] ?? []].flat();
    }
    return [/^(?:-|\.{2,3}|…)$/.test(plain) ? "to" : plain];
  });
  const spelt: string[] = [];
  for (let index = 0; index < words.length; index++) {
    const count = [3, 2, 1].find((many) => unitBySpelling(words.slice(index, index + many).join(" ")) !== undefined);
    const unit = count === undefined ? undefined : unitBySpelling(words.slice(index, index + count).join(" "));
    spelt.push(unit?.symbol ?? (teethSpellings.includes(words[index]!) ? "t" : words[index]!));
    index += (count ?? 1) - 1;
  }
  return spelt.join(" ");
}

function trees(text: string): string[][] {
  return split(text)
    .filter((chunk) => chunk.keyword !== undefined)
    .map((chunk) => describeBlock(parseDeclaration(text.slice(chunk.start, chunk.end)).block));
}

describe("random text", () => {
  it("comes out as a fixed point with the same tokens, comments and tree", () => {
    fc.assert(
      fc.property(soundText, (text) => {
        const first = format(text);
        expect(first.refused).toBeUndefined();
        expect(format(first.text)).toEqual({ text: first.text });
        expect(meaning(first.text)).toEqual(meaning(text));
        expect(trees(first.text)).toEqual(trees(text));
        expect(problemsOf(first.text)).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it("keeps to its shape: indentation, single empty lines, no blank at a line's end", () => {
    fc.assert(
      fc.property(soundText, (text) => {
        const { text: formatted } = format(text);
        expect(formatted).not.toMatch(/\n\n\n|[ \t\u00a0]\n|\{\n\n|\n\n *\}|^\n|\t(?=[^"]*$)/);
        if (formatted !== "") expect(formatted.endsWith("\n")).toBe(true);
        expect(formatted.split("\n").every((line) => line.search(/\S|$/) % 2 === 0)).toBe(true);
      }),
    );
  });

  it("is a fixed point for damaged text too, and leaves every damaged declaration as it was", () => {
    fc.assert(
      fc.property(damagedText, (text) => {
        const first = format(text);
        const second = format(first.text);
        expect(second.text).toBe(first.text);
        expect(meaningApartFromSpelling(first.text)).toEqual(meaningApartFromSpelling(text));
        for (const { start, end } of split(text)) {
          const own = text.slice(start, end);
          const isRefused = first.refused?.some(({ span }) => span.start >= start && span.end <= end) ?? false;
          if (isRefused) expect(first.text).toContain(own);
        }
      }),
      { numRuns: 400 },
    );
  });

  it("never throws, and its edits are in order", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { changes } = formatEdits(text);
        let last = 0;
        for (const { span } of changes) {
          expect(span.start).toBeGreaterThanOrEqual(last);
          expect(span.end).toBeGreaterThanOrEqual(span.start);
          last = span.end;
        }
        expect(last).toBeLessThanOrEqual(text.length);
        expect(format(format(text).text).text).toBe(format(text).text);
      }),
      { numRuns: 400 },
    );
  });

  it("has the same meaning after formatting any range of its lines", () => {
    fc.assert(
      fc.property(soundText, fc.nat(400), fc.nat(400), (text, one, two) => {
        const { changes } = formatRange(text, Math.min(one, two), Math.max(one, two));
        const result = applyChanges(text, changes);
        expect(meaning(result)).toEqual(meaning(text));
        expect(format(result).text).toBe(format(text).text);
      }),
    );
  });
});

describe("what random damage once turned up", () => {
  it("a word that became a unit", () => {
    const text = 'standard a "" "" {\na: 0 cc {}\n}\n';
    expect(format(text).text).toContain("0 ml {}");
    expect(meaningApartFromSpelling(format(text).text)).toEqual(meaningApartFromSpelling(text));
    expect(meaningApartFromSpelling("build a {\n  b: 0 ml\n}\n")).not.toEqual(
      meaningApartFromSpelling("build a {\n  b: 1 ml\n}\n"),
    );
  });
});

describe("a formatted file", () => {
  const cases: Record<string, [string, string]> = {
    "has two blanks for each depth": [
      "build a {\nrider {\n\tlimits {\nmass: 78 kg\n}\n}\n}\n",
      "build a {\n  rider {\n    limits {\n      mass: 78 kg\n    }\n  }\n}\n",
    ],
    "has one blank after a colon and none before": [
      "build a {\n  frame :b\n  fork:   c\n  mass:<=5 kg\n}\n",
      "build a {\n  frame: b\n  fork: c\n  mass: <= 5 kg\n}\n",
    ],
    "keeps a one-line block on its line": [
      "build a {\n  rider{mass: 78 kg ;inseam: 845 mm;}\n  empty {  }\n}\n",
      "build a {\n  rider { mass: 78 kg; inseam: 845 mm }\n  empty {}\n}\n",
    ],
    "keeps a block of several lines on several lines": [
      "build a {\n  rider {\n    mass: 78 kg }\n}\n",
      "build a {\n  rider {\n    mass: 78 kg\n  }\n}\n",
    ],
    "gives entries on one line lines of their own outside a one-line block": [
      "build a {\n  frame: b; fork: c // both\n}\n",
      "build a {\n  frame: b\n  fork: c // both\n}\n",
    ],
    "has exactly one empty line between declarations, and at most one elsewhere": [
      "\n\nbuild a {\n\n\n  frame: b\n\n\n  fork: c\n\n}\nbuild b {\n}\n\n\n\nbuild c {\n}",
      "build a {\n  frame: b\n\n  fork: c\n}\n\nbuild b {\n}\n\nbuild c {\n}\n",
    ],
    "keeps every comment at its place": [
      "// file\n\n\n// above\n///doc\nbuild a { // open\n// first\n  frame: b   // b\n\n      // own\n  rider { mass: 1 kg }//r\n  // last\n} // close\n// after\n",
      "// file\n\n// above\n///doc\nbuild a { // open\n  // first\n  frame: b // b\n\n  // own\n  rider { mass: 1 kg } // r\n  // last\n} // close\n// after\n".replace(
        "// r\n",
        "//r\n",
      ),
    ],
    "puts an opening brace at the end of its line": [
      "build a\n{\n  rider\n  {\n  }\n}\n",
      "build a {\n  rider {\n  }\n}\n",
    ],
    "leaves a brace below a comment where it is": ["build a // x\n{\n}\n", "build a // x\n{\n}\n"],
    "starts a new line after a brace whose block goes on": [
      "build a { frame: b\n  fork: c\n}\n",
      "build a {\n  frame: b\n  fork: c\n}\n",
    ],
    "turns no-break blanks and tabs between words into blanks": [
      "build\ta {\n  mass:\u00a078\u202fkg\n}\n",
      "build a {\n  mass: 78 kg\n}\n",
    ],
    "leaves what stands in quotes and comments alone": [
      'build a {\n  note: "40 Nm  ±\u00a0–"  // 40 Nm  –\n}\n',
      'build a {\n  note: "40 Nm  ±\u00a0–" // 40 Nm  –\n}\n',
    ],
    "spaces expressions": [
      "rule a {\n  require:max( a.b,3 mm )<=5 mm  and not(c is not d)\n}\n",
      "rule a {\n  require: max(a.b, 3 mm) <= 5 mm and not (c is not d)\n}\n",
    ],
    "is empty when nothing was in it": ["\n \n\n", ""],
  };

  it.each(Object.entries(cases))("%s", (_title, [given, wanted]) => {
    expect(format(given)).toEqual({ text: wanted });
    expect(format(wanted)).toEqual({ text: wanted });
  });

  it("breaks a one-line block at 120 columns and not before", () => {
    const line = (length: number): string => {
      const start = "  own { first: 1; second: ";
      return `${start}${"x".repeat(length - start.length - 2)} }`;
    };
    const file = (inner: string): string => `build a {\n${inner}\n}\n`;
    expect(line(120)).toHaveLength(120);
    expect(format(file(line(120))).text).toBe(file(line(120)));
    expect(format(file(line(121))).text).toBe(file(`  own {\n    first: 1\n    second: ${"x".repeat(93)}\n  }`));
  });

  it("keeps carriage returns only where every line has one", () => {
    expect(format("build a {\r\n  frame :b\r\n}\r\n").text).toBe("build a {\r\n  frame: b\r\n}\r\n");
    expect(format("build a {\r\n  frame :b\n}\r\n").text).toBe("build a {\n  frame: b\n}\n");
    expect(format("build a {\r  frame :b\r}").text).toBe("build a {\n  frame: b\n}\n");
  });

  it("keeps a byte order mark at its start", () => {
    expect(format("\ufeff\nbuild a {\n}").text).toBe("\ufeffbuild a {\n}\n");
  });

  it("formats every declaration but the broken one, and says what is wrong with that", () => {
    const text = "build a {\n frame :b\n}\nbuild c {\n frame = d\n}\n\n\n\nbuild e {\n frame :f\n}\n";
    const result = format(text);
    expect(result.text).toBe("build a {\n  frame: b\n}\n\nbuild c {\n frame = d\n}\n\n\n\nbuild e {\n  frame: f\n}\n");
    expect(result.refused?.map(({ code, span }) => [code, text.slice(span.start, span.end)])).toEqual([
      ["language/equals-sign", "="],
    ]);
  });
});

describe("edits", () => {
  it("are the smallest that do it", () => {
    const text = "build a {\n  frame: b\n    fork: c\n}\n";
    expect(formatEdits(text).changes).toEqual([{ span: { start: 23, end: 25 }, text: "" }]);
  });

  it("are none for a formatted file", () => {
    expect(formatEdits("build a {\n  frame: b\n}\n")).toEqual({ changes: [] });
  });

  it("of a range stay within its lines", () => {
    const text = "build a {\n frame :b\n fork :c\n stem :d\n}\n";
    const place = text.indexOf("fork");
    const { changes } = formatRange(text, place, place);
    expect(applyChanges(text, changes)).toBe("build a {\n frame :b\n  fork: c\n stem :d\n}\n");
  });
});
