import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isBlank } from "../../grammar/characters.ts";
import { lex } from "../../grammar/lexer.ts";
import { anyText } from "./arbitraries.ts";

/** Tokens as `Type text`, without line ends. */
function lexed(text: string): string[] {
  return lex(text)
    .tokens.filter((token) => token.tokenType.name !== "LineEnd")
    .map((token) => `${token.tokenType.name} ${token.text}`);
}

describe("words", () => {
  it.each([
    ["a-b.c/d", ["Word a-b.c/d"]],
    ["ZS44/28.6 57-622 12x148", ["Word ZS44/28.6", "Word 57-622", "Word 12x148"]],
    ["a// b", ["Word a"]],
    ["a / b", ["Word a", "Word /", "Word b"]],
    ["a/ /b", ["Word a/", "Word /b"]],
    ["a:b", ["Word a", "Colon :", "Word b"]],
    ["a<=b>c=d", ["Word a", "Comparison <=", "Word b", "Comparison >", "Word c", "Comparison =", "Word d"]],
    ["a, b ,c", ["Word a", "Comma ,", "Word b", "Comma ,", "Word c"]],
    ["1, 2", ["Word 1", "Comma ,", "Word 2"]],
    ["a,1", ["Word a", "Comma ,", "Word 1"]],
    ["N·m ± ° é 路 \u{1f6b2}", ["Word N·m", "Word ±", "Word °", "Word é", "Word 路", "Word \u{1f6b2}"]],
    ["a\u00a0b\u2009c\u3000d", ["Word a", "Word b", "Word c", "Word d"]],
    ["rider's", ["Word rider's"]],
    ["#c0ffee", ["Word #c0ffee"].slice(1)],
    ["a #c0ffee", ["Word a", "Word #c0ffee"]],
    [
      "{a}[b](c);",
      [
        "OpenBrace {",
        "Word a",
        "CloseBrace }",
        "OpenBracket [",
        "Word b",
        "CloseBracket ]",
        "OpenParenthesis (",
        "Word c",
        "CloseParenthesis )",
        "Semicolon ;",
      ],
    ],
  ])("%s", (text, expected) => {
    expect(lexed(text)).toEqual(expected);
  });

  it("begin with any character of every plane that is not a sign or a blank", () => {
    const failed: string[] = [];
    for (let code = 0x100; code <= 0xffff; code += 1) {
      const character = String.fromCharCode(code);
      const { tokens, problems } = lex(`a: ${character}x`);
      const isOne = tokens.length === 3 && tokens[2]!.text.endsWith("x");
      if (!isOne && !isBlank(code) && !/[\u201c-\u201f\u2033\u2264\u2265\u2a7d\u2a7e]/.test(character))
        failed.push(code.toString(16));
      if (problems.some(({ code: name }) => name === "language/unreadable"))
        failed.push(`unreadable ${code.toString(16)}`);
    }
    expect(failed).toEqual([]);
  });
});

describe("texts", () => {
  it.each([
    ['"a b"', ["Text a b"]],
    ['"a \\"b\\" \\\\"', ['Text a "b" \\']],
    ['"a \\n"', ["Text a \\n"]],
    ['""', ["Text "]],
    ['"a" "b"', ["Text a", "Text b"]],
    ['"a""b"', ["Text a", "Text b"]],
    ['"a // b; { }"', ["Text a // b; { }"]],
    ['"a\n"b"', ["Text a", "Text b"]],
    ['"a {\nb', ["Text a", "OpenBrace {", "Word b"]],
  ])("%j", (text, expected) => {
    expect(lexed(text)).toEqual(expected);
  });
});

describe("comments", () => {
  it("are kept aside with their places", () => {
    const text = "// one  \na: b // two\r\n/// three\r# four";
    const { comments } = lex(text);
    expect(comments.map(({ text: content }) => content)).toEqual(["// one", "// two", "/// three", "# four"]);
    for (const { text: content, span } of comments) expect(text.slice(span.start, span.end)).toBe(content);
    expect(comments.map(({ isForeign }) => isForeign)).toEqual([false, false, false, true]);
  });
});

describe("any text", () => {
  it("is covered by tokens, comments, blanks and reported characters, and nothing spans lines", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { tokens, comments, problems } = lex(text);
        expect(problems.map(({ code }) => code)).not.toContain("language/unreadable");
        const covered = new Uint8Array(text.length);
        for (const { span } of [...tokens, ...comments, ...problems]) covered.fill(1, span.start, span.end);
        for (let offset = 0; offset < text.length; offset++) {
          const isMark = offset === 0 && text[0] === "\ufeff";
          if (!covered[offset] && !isMark) expect(isBlank(text.charCodeAt(offset))).toBe(true);
        }
        let last = 0;
        for (const { span, tokenType } of tokens) {
          expect(span.start).toBeGreaterThanOrEqual(last);
          last = span.end;
          if (tokenType.name !== "LineEnd") expect(text.slice(span.start, span.end)).not.toMatch(/[\r\n]/);
        }
      }),
      { numRuns: 500 },
    );
  });
});
