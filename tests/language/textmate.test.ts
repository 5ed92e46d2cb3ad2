import { describe, expect, it } from "vitest";
import { textMateGrammar } from "../../grammar/textmate.ts";
import { declarationKeywords } from "../../grammar/tree.ts";

interface Rule {
  name?: string;
  match?: string;
  begin?: string;
  end?: string;
  include?: string;
  captures?: Record<string, { name: string }>;
  beginCaptures?: Record<string, { name: string }>;
  patterns?: Rule[];
}

const grammar = textMateGrammar({
  keywords: declarationKeywords,
  kinds: ["cassette", "axle"],
  assemblies: ["drivetrain", "rear-wheel"],
  fields: ["links", "lockring-torque", "chain"],
  words: ["mountain", "stepped-driver"],
  units: ["N·m", "Nm", "N/mm", "mm", "kg", "GBP", "°", "%"],
}) as { patterns: Rule[]; repository: Record<string, { patterns: Rule[] }>; scopeName: string };

function expand(rules: readonly Rule[]): Rule[] {
  return rules.flatMap((rule) =>
    rule.include === undefined ? [rule] : expand(grammar.repository[rule.include.slice(1)]!.patterns),
  );
}

/** What an editor makes of one line: the earliest match wins, the first rule among equals. */
function scopesOf(
  line: string,
  rules = expand(grammar.patterns),
  from = 0,
  end?: RegExp,
): { scopes: string[]; stop: number } {
  const scopes: string[] = [];
  let offset = from;
  while (offset <= line.length) {
    let best: { rule: Rule | undefined; found: RegExpExecArray } | undefined;
    const consider = (source: string | RegExp, rule: Rule | undefined): void => {
      const pattern = new RegExp(source, "gu");
      pattern.lastIndex = offset;
      const found = pattern.exec(line);
      if (found !== null && (best === undefined || found.index < best.found.index)) best = { rule, found };
    };
    if (end !== undefined) consider(end, undefined);
    for (const rule of rules) consider((rule.match ?? rule.begin)!, rule);
    if (best === undefined) break;
    const { rule, found } = best as { rule: Rule | undefined; found: RegExpExecArray };
    if (rule === undefined) return { scopes, stop: found.index + found[0].length };
    for (const [group, { name }] of Object.entries(rule.captures ?? rule.beginCaptures ?? {})) {
      if (found[Number(group)]) scopes.push(`${found[Number(group)]} = ${name.replace(/\.ferrule$/, "")}`);
    }
    const stop = found.index + found[0].length;
    if (rule.begin === undefined) {
      if (rule.name !== undefined) scopes.push(`${found[0]} = ${rule.name.replace(/\.ferrule$/, "")}`);
      offset = stop > offset ? stop : offset + 1;
    } else {
      const inner = scopesOf(line, expand(rule.patterns ?? []), stop, new RegExp(rule.end!, "u"));
      if (rule.name !== undefined) {
        scopes.push(`${line.slice(found.index, inner.stop)} = ${rule.name.replace(/\.ferrule$/, "")}`);
      }
      scopes.push(...inner.scopes);
      offset = Math.max(inner.stop, stop);
    }
  }
  return { scopes, stop: line.length };
}

describe("the TextMate grammar", () => {
  it.each<[string, string[]]>([
    [
      'part cassette corrie.wide "Corrie" from corrie.narrow {',
      [
        "part = keyword.declaration",
        "cassette = support.type.kind",
        "corrie.wide = entity.name.type.declaration",
        '"Corrie" = string.quoted.double',
        "from = keyword.other",
        "corrie.narrow = entity.name.type.declaration",
        "{ = punctuation.section.block",
      ],
    ],
    ["part: b", ["part = variable.other.property", ": = punctuation.separator.key-value", "b = variable.other"]],
    [
      "part sprocket a",
      ["part = keyword.declaration", "sprocket = entity.name.type.kind", "a = entity.name.type.declaration"],
    ],
    [
      'record "FL-1" of b',
      [
        "record = keyword.declaration",
        '"FL-1" = string.quoted.double',
        "of = keyword.other",
        "b = entity.name.type.declaration",
      ],
    ],
    ["  drivetrain {", ["drivetrain = support.class.assembly", "{ = punctuation.section.block"]],
    ["  shed {", ["shed = variable.other.property", "{ = punctuation.section.block"]],
    [
      "  lockring-torque: 40 N·m // tight",
      [
        "lockring-torque = support.variable.property",
        ": = punctuation.separator.key-value",
        "40 = constant.numeric",
        "N·m = keyword.other.unit",
        "// tight = comment.line.double-slash",
      ],
    ],
    ["/// What it is", ["/// What it is = comment.line.documentation"]],
    ["//// not a doc", ["//// not a doc = comment.line.double-slash"]],
    [
      "  chain: none or corrie.link-12",
      [
        "chain = support.variable.property",
        ": = punctuation.separator.key-value",
        "none = constant.language",
        "or = keyword.operator.word",
        "corrie.link-12 = entity.name.type.reference",
      ],
    ],
    [
      "  require: max(drivetrain.b, 3 mm) <= 30 mm",
      [
        "require = support.variable.property",
        ": = punctuation.separator.key-value",
        "max = support.function",
        "( = punctuation.section.parens",
        "drivetrain.b = variable.other",
        ", = punctuation.separator",
        "3 = constant.numeric",
        "mm = keyword.other.unit",
        ") = punctuation.section.parens",
        "<= = keyword.operator.comparison",
        "30 = constant.numeric",
        "mm = keyword.other.unit",
      ],
    ],
    [
      '  waive drivetrain/chain-length at drivetrain.chain "why" until 2027-03-31',
      [
        "waive = keyword.control.waive",
        "drivetrain/chain-length = variable.other",
        "at = keyword.other",
        "drivetrain.chain = variable.other",
        '"why" = string.quoted.double',
        "until = keyword.other",
        "2027-03-31 = constant.numeric.date",
      ],
    ],
    [
      "  freehub: stepped-driver",
      [
        "freehub = variable.other.property",
        ": = punctuation.separator.key-value",
        "stepped-driver = variable.other.enummember",
      ],
    ],
    [
      "  mountain-bike: mountain-bike",
      [
        "mountain-bike = variable.other.property",
        ": = punctuation.separator.key-value",
        "mountain-bike = variable.other",
      ],
    ],
    [
      '  note: "a // b',
      ["note = variable.other.property", ": = punctuation.separator.key-value", '"a // b = string.quoted.double'],
    ],
  ])("%s", (line, scopes) => {
    expect(scopesOf(line).scopes).toEqual(scopes);
  });

  it("is JSON, and works with empty tables", () => {
    const empty = textMateGrammar({ keywords: ["part"], kinds: [], assemblies: [], fields: [], words: [], units: [] });
    expect(JSON.parse(JSON.stringify(empty))).toEqual(empty);
    expect(JSON.stringify(empty)).not.toContain("(?:)");
    expect(grammar.scopeName).toBe("source.ferrule");
  });
});
