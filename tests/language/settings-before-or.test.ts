import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import type { TextChange } from "../../grammar/tree.ts";

function mended(text: string, changes: readonly TextChange[]): string {
  return [...changes]
    .sort((one, other) => other.span.start - one.span.start)
    .reduce((sofar, { span, text: put }) => sofar.slice(0, span.start) + put + sofar.slice(span.end), text);
}

describe("settings before `or`", () => {
  it.each([
    [
      "build b {\n  cockpit.stem: m.a { spacers-below: 15 mm } or m.b\n}\n",
      "build b {\n  cockpit.stem: m.a or m.b { spacers-below: 15 mm }\n}\n",
    ],
    [
      "build b {\n  cockpit { stem: m.a { spacers-below: 15 mm } or m.b or m.c }\n}\n",
      "build b {\n  cockpit { stem: m.a or m.b or m.c { spacers-below: 15 mm } }\n}\n",
    ],
    [
      "build b {\n  stem: m.a {\n    // kept\n    spacers-below: 15 mm\n  } or m.b\n  frame: m.f\n}\n",
      "build b {\n  stem: m.a or m.b {\n    // kept\n    spacers-below: 15 mm\n  }\n  frame: m.f\n}\n",
    ],
  ])("are one error, and a fix moves them behind the last part", (text, wanted) => {
    const { problems } = parseDeclaration(text);
    expect(problems.map(({ code, span }) => [code, text.slice(span.start, span.end)])).toEqual([
      ["language/settings-before-or", "or"],
    ]);
    const after = mended(text, problems[0]?.fix?.changes ?? []);
    expect(after).toBe(wanted);
    expect(parseDeclaration(after).problems).toEqual([]);
  });

  it("of each part are one error without a fix, since they may differ", () => {
    const { problems, block } = parseDeclaration(
      "build b {\n  rear-wheel.tyre: m.a { pressure: 2 bar } or m.b { pressure: 3 bar }\n  frame: m.f\n}\n",
    );
    expect(problems.map(({ code, fix }) => [code, fix])).toEqual([["language/settings-before-or", undefined]]);
    expect(block?.entries).toHaveLength(2);
  });

  it("on a line of its own `or` is the start of another entry", () => {
    const { problems } = parseDeclaration("build b {\n  stem: m.a { spacers-below: 15 mm }\n  or: m.b\n}\n");
    expect(problems).toEqual([]);
  });
});
