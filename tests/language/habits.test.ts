import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import { apply, describeBlock, marked, problemsOf } from "./support.ts";

/** What is typed, with the reported place between « and »; and the same text after the fix. */
interface Habit {
  readonly code: string;
  readonly typed: string;
  readonly mended: string;
}

const inBuild: Habit[] = [
  { code: "hash-comment", typed: "«# the long one»\nframe: b", mended: "// the long one\nframe: b" },
  { code: "hash-comment", typed: "frame: b «# the long one»", mended: "frame: b // the long one" },
  { code: "hash-comment", typed: "«## two»\nframe: b", mended: "// two\nframe: b" },
  { code: "block-comment", typed: "frame: b «/* old */»", mended: "frame: b // old" },
  { code: "block-comment", typed: "«/** old»\nframe: b", mended: "// old\nframe: b" },
  { code: "missing-separator", typed: "mass: 78 kg «inseam»: 845 mm", mended: "mass: 78 kg; inseam: 845 mm" },
  { code: "missing-separator", typed: "own { a: 1, «b»: 2 }", mended: "own { a: 1; b: 2 }" },
  { code: "equals-sign", typed: "links «=>» 116", mended: "links: 116" },
  { code: "equals-sign", typed: "links «=» 116", mended: "links: 116" },
  { code: "equals-sign", typed: "links«=»116", mended: "links: 116" },
  { code: "equals-sign", typed: "links :«=» 116", mended: "links: 116" },
  { code: "equals-sign", typed: "links «==» 116", mended: "links: 116" },
  {
    code: "dash-list",
    typed: "tension:\n  «- 1180\n  - 1150\n  - 1210 N»\nframe: b",
    mended: "tension: 1180, 1150, 1210 N\nframe: b",
  },
  { code: "dash-list", typed: 'tags:\n«- "a b"»', mended: 'tags: "a b"' },
  { code: "dash-list", typed: "«-» links: 116", mended: "links: 116" },
  { code: "square-brackets", typed: "tension: «[1180, 1150, 1210]» N", mended: "tension: 1180, 1150, 1210 N" },
  { code: "square-brackets", typed: "tension: «[1180]»", mended: "tension: 1180" },
  {
    code: "square-brackets",
    typed: "tension: «[»\n  1180,\n  1150,\n]\nframe: b",
    mended: "tension: 1180, 1150\nframe: b",
  },
  { code: "single-quotes", typed: "note: «'as fitted'»", mended: 'note: "as fitted"' },
  { code: "curly-quotes", typed: "note: «“as fitted”»", mended: 'note: "as fitted"' },
  { code: "curly-quotes", typed: "note: «„as fitted“»", mended: 'note: "as fitted"' },
  { code: "colon-before-brace", typed: "rider«:» { mass: 78 kg }", mended: "rider { mass: 78 kg }" },
  { code: "trailing-comma", typed: "links: 116«,»", mended: "links: 116" },
  { code: "trailing-comma", typed: "tension: 1180, 1150«,»", mended: "tension: 1180, 1150" },
  {
    code: "missing-colon",
    typed: "«chain» corrie.link-12 { links: 116 }",
    mended: "chain: corrie.link-12 { links: 116 }",
  },
  { code: "missing-colon", typed: '«note» "as fitted"', mended: 'note: "as fitted"' },
  { code: "missing-colon", typed: "«mass»<= 12.5 kg", mended: "mass: <= 12.5 kg" },
  { code: "blank-in-key", typed: "«rear derailleur»: corrie.long-12", mended: "rear-derailleur: corrie.long-12" },
  { code: "quoted-key", typed: '«"links"»: 116', mended: "links: 116" },
  {
    code: "unquoted-address",
    typed: "source: «https://example.org/a?b=c»",
    mended: 'source: "https://example.org/a?b=c"',
  },
  {
    code: "unquoted-address",
    typed: "own { source: «https://example.org/a» }",
    mended: 'own { source: "https://example.org/a" }',
  },
  {
    code: "unquoted-address",
    typed: "source: «shop://stock/12»; links: 116",
    mended: 'source: "shop://stock/12"; links: 116',
  },
  { code: "decimal-comma", typed: "mass: «3,5» kg", mended: "mass: 3.5 kg" },
  { code: "decimal-comma", typed: "mass: «1.234,56» g", mended: "mass: 1234.56 g" },
  { code: "thousands-comma", typed: "price: GBP «3,200»", mended: "price: GBP 3200" },
  { code: "thousands-comma", typed: "price: «£1,234,567.50»", mended: "price: £1234567.50" },
  { code: "missing-blank", typed: "tension: «1180,1150,1210» N", mended: "tension: 1180, 1150, 1210 N" },
  { code: "missing-blank", typed: "tension: «1180,1150» N", mended: "tension: 1180, 1150 N" },
  { code: "decimal-comma", typed: "length: «293,25» mm", mended: "length: 293.25 mm" },
  { code: "missing-blank", typed: 'note: as«"»fitted"', mended: 'note: as "fitted"' },
  { code: "inch-mark", typed: 'size: 29«"»', mended: "size: 29 in" },
  { code: "inch-mark", typed: 'size: 1-1/8«"» { mass: 1 g }', mended: "size: 1-1/8 in { mass: 1 g }" },
  { code: "inch-mark", typed: "size: 29«”»", mended: "size: 29 in" },
  { code: "inch-mark", typed: "size: 29«″»x2", mended: "size: 29 in x2" },
  { code: "stray-quote", typed: 'size: wide«"»', mended: "size: wide" },
  { code: "unclosed-text", typed: 'note: «"as fitted»', mended: 'note: "as fitted"' },
  { code: "unclosed-text", typed: 'own { bin: «"A3» }', mended: 'own { bin: "A3" }' },
  { code: "unclosed-text", typed: "note: «“as fitted»", mended: 'note: "as fitted"' },
  { code: "invisible-character", typed: "frame: moor«\u200b».fell", mended: "frame: moor.fell" },
  { code: "invisible-character", typed: "frame: moor.fell«\u0000»", mended: "frame: moor.fell" },
  { code: "direction-character", typed: "frame: «\u202e»moor.fell", mended: "frame: moor.fell" },
  { code: "missing-line-end", typed: "rider { mass: 78 kg } «frame»: b", mended: "rider { mass: 78 kg }\n  frame: b" },
  {
    code: "missing-line-end",
    typed: "own { rider { mass: 78 kg } «frame»: b }",
    mended: "own { rider { mass: 78 kg }; frame: b }",
  },
  {
    code: "missing-braces",
    typed: "rider«:»\n    mass: 78 kg\n  frame: b",
    mended: "rider {\n    mass: 78 kg\n  }\n  frame: b",
  },
];

const inRule: Habit[] = [
  { code: "missing-colon", typed: "«require» a < b", mended: "require: a < b" },
  { code: "operator-spelling", typed: "require: a «==» b", mended: "require: a = b" },
  { code: "operator-spelling", typed: "require: a «=>» b", mended: "require: a >= b" },
  { code: "operator-spelling", typed: "require: a «=<» b", mended: "require: a <= b" },
  { code: "operator-spelling", typed: "require: a «<>» b", mended: "require: a is not b" },
  { code: "operator-spelling", typed: "require: a «!=» b", mended: "require: a is not b" },
  { code: "operator-spelling", typed: "require: a = b «&&» c = d", mended: "require: a = b and c = d" },
  { code: "operator-spelling", typed: "require: a = b «||» c = d", mended: "require: a = b or c = d" },
  { code: "arithmetic-blanks", typed: "require: a < «b*c»", mended: "require: a < b * c" },
  { code: "arithmetic-blanks", typed: "require: a < b «-5» mm", mended: "require: a < b - 5 mm" },
];

function inside(header: string, body: string): string {
  return `${header} {\n  ${body}\n}\n`;
}

describe.each([
  { header: "build a", habits: inBuild },
  { header: "rule a", habits: inRule },
])("in a $header", ({ header, habits }) => {
  it.each(habits)("$code: $typed", ({ code, typed, mended }) => {
    const { text, spans } = marked(inside(header, typed));
    const problems = problemsOf(text);
    expect(problems.map((problem) => problem.code)).toEqual([`language/${code}`]);
    const [problem] = problems;
    expect(problem!.span).toEqual(spans[0]);
    expect(problem!.severity).toBe("error");

    const wanted = inside(header, mended);
    expect(apply(text, problem!.fix!.changes)).toBe(wanted);
    expect(problemsOf(wanted)).toEqual([]);
  });

  it.each(habits.filter(({ code }) => code !== "arithmetic-blanks"))(
    "$code is read as what is meant: $typed",
    ({ typed, mended }) => {
      const [given, meant] = [typed, mended].map((body) => parseDeclaration(marked(inside(header, body)).text).block);
      expect(describeBlock(given)).toEqual(describeBlock(meant));
    },
  );
});

describe("headers", () => {
  const cases: Habit[] = [
    { code: "colon-before-brace", typed: "build a«:» {\n}\n", mended: "build a {\n}\n" },
    {
      code: "missing-name",
      typed: '«build» "Fellside 29, large" {\n}\n',
      mended: 'build fellside-29-large "Fellside 29, large" {\n}\n',
    },
    { code: "base-spelling", typed: "build a «extends» b {\n}\n", mended: "build a from b {\n}\n" },
    { code: "base-spelling", typed: "build a«:» b {\n}\n", mended: "build a from b {\n}\n" },
    { code: "block-comment", typed: "«/* parts */»\n\nbuild a {\n}\n", mended: "// parts\n\nbuild a {\n}\n" },
    { code: "missing-block", typed: "«build a»\n", mended: "build a {\n}\n" },
    { code: "second-title", typed: 'build a "b" «"c"» {\n}\n', mended: 'build a "b"  {\n}\n' },
    { code: "unknown-declaration", typed: "«biuld» a {\n}\n", mended: "build a {\n}\n" },
    {
      code: "unknown-declaration",
      typed: "build b {\n}\n«Part» cassette a {\n}\n",
      mended: "build b {\n}\npart cassette a {\n}\n",
    },
    { code: "hash-comment", typed: "«# parts»\n\nbuild a {\n}\n", mended: "// parts\n\nbuild a {\n}\n" },
  ];
  it.each(cases)("$code: $typed", ({ code, typed, mended }) => {
    const { text, spans } = marked(typed);
    const problems = problemsOf(text);
    expect(problems.map((problem) => problem.code)).toEqual([`language/${code}`]);
    expect(problems[0]!.span).toEqual(spans[0]);
    expect(apply(text, problems[0]!.fix!.changes)).toBe(mended);
    expect(problemsOf(mended)).toEqual([]);
  });
});

describe("what is no mistake", () => {
  it.each([
    "frame: b\t// tabs\tare fine",
    "\tframe:\tb",
    "colour: #c0ffee",
    "frame:\u00a0b",
    'note: "it\'s 29\\" wide"',
    "note: rider's",
    "tension: 1180, 1150, 1210 N",
    'source: "https://example.org" // https://example.org',
    "ratio: 1/2",
    "size: 57-622",
    "headset: ZS44/28.6",
    "mass: ≤ 12.5 kg",
  ])("%s", (body) => {
    expect(problemsOf(inside("build a", body))).toEqual([]);
  });

  it("keeps a joiner in a title, and only warns of what turns the direction of a comment", () => {
    const text = 'build a "क्\u200dष" {\n  // \u202e\n}\n';
    expect(problemsOf(text).map(({ code, severity }) => [code, severity])).toEqual([
      ["language/direction-character", "warning"],
    ]);
  });
});

describe("messages", () => {
  it("say what was expected, with an example, and end as a sentence", () => {
    const sources = [
      ...inBuild.map(({ typed }) => inside("build a", typed)),
      ...inRule.map(({ typed }) => inside("rule a", typed)),
    ];
    for (const source of sources) {
      for (const { message } of problemsOf(marked(source).text)) {
        expect(message).toMatch(/^\S.*[.?]$/);
        expect(message.length).toBeGreaterThan(20);
      }
    }
  });

  it("says both readings of a comma that may be either", () => {
    expect(problemsOf(inside("build a", "mass: 3,200 kg"))[0]!.message).toContain("3.200");
    expect(problemsOf(inside("build a", "mass: 3,200 kg"))[0]!.message).toContain("3200");
  });

  it("stay apart for each declaration", () => {
    const text = "build a {\n  links = 1\n}\nbuild b {\n  links = 2\n}\n";
    expect(split(text)).toHaveLength(2);
    expect(problemsOf(text).map(({ span }) => text.slice(span.start, span.end + 2))).toEqual(["= 1", "= 2"]);
  });
});
