import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import { describeBlock, entriesByLine } from "./support.ts";

const good = `build fellside-l "Fellside 29 hardtail, size L" {
  category: mountain
  rider { mass: 78 kg; inseam: 845 mm }

  frame: moor.fellside-l
  drivetrain {
    rear-derailleur: corrie.long-12
    // the long one
    chain: corrie.link-12 { links: 116 }
    crankset: corrie.crank {
      length: 170 mm
      bolts {
        torque: 12 N·m
      }
      note: "as fitted"
    }
    front-derailleur: none
  }
  rear-wheel {
    tyre: beck.rough-61-622 { pressure: 1.6 bar; tubeless: yes }
  }
  waive drivetrain/chain-length at drivetrain.chain "Owner asked" until 2027-03-31
  extras.lower-cage: moor.cage-a
}
`;
const lines = good.split("\n").slice(0, -1);

/** Ways a line is broken while it is typed, edited or pasted over. */
const breakages: Record<string, (line: string) => string> = {
  "the colon is missing": (line) => line.replace(":", ""),
  "the second half is not typed yet": (line) => line.slice(0, indentOf(line) + Math.ceil(line.trim().length / 2)),
  "only the first character is typed": (line) => line.slice(0, indentOf(line) + 1),
  "the last character is missing": (line) => line.slice(0, -1),
  "an opening brace is missing": (line) => line.replace("{", ""),
  "a closing brace is missing": (line) => line.replace("}", ""),
  "a quote is left open": (line) => `${line} "`,
  "a text is left open": (line) => line.replace(/" *([{u].*)?$/, " $1"),
  "a closing brace is too many": (line) => `${line} }`,
  "an opening brace is too many": (line) => `${line} {`,
  "a parenthesis stands before it": (line) => line.replace(/^( *)/, "$1)( "),
  "signs stand in place of it": (line) => `${" ".repeat(indentOf(line))}:: = ,`,
  "a comma follows": (line) => `${line},`,
  "a colon follows": (line) => `${line}:`,
};

function indentOf(line: string): number {
  return line.length - line.trimStart().length;
}

function withoutLine(entries: readonly string[], line: number): string[] {
  return entries.filter((entry) => !new RegExp(`(^|> )${line}: `).test(entry));
}

const expected = entriesByLine(good, parseDeclaration(good).block);

describe("the sound build", () => {
  it("reads without a problem and with every entry", () => {
    expect(parseDeclaration(good).problems).toEqual([]);
    expect(expected).toHaveLength(21);
    expect(expected).toContain("6 > 10 > 12 > 13: torque: 12 N·m");
  });
});

describe.each(Object.entries(breakages))("%s", (_title, breakLine) => {
  const broken = lines
    .map((line, index) => ({ index, line, other: breakLine(line) }))
    .filter(({ index, line, other }) => {
      // A header that no longer begins a declaration is the splitter's business; a blank line cannot be broken.
      if (line.trim() === "" || other === line || /^\s*\/\//.test(line)) return false;
      if (index === 0) return /^build \S/.test(other);
      // Where nothing is left of a block's first line, there is no name under which its entries could be kept.
      return !(other.includes("::") && line.endsWith("{"));
    });

  it.each(broken)("costs only its own line: $other", ({ index, other }) => {
    const text = [...lines.with(index, other), ""].join("\n");
    const tree = parseDeclaration(text);
    expect(withoutLine(entriesByLine(text, tree.block), index + 1)).toEqual(withoutLine(expected, index + 1));
  });
});

describe("a closing brace too many", () => {
  const candidates = lines
    .map((line, index) => ({ index, line }))
    .filter(({ line }) => line.endsWith("none") || line.endsWith("m"));
  it.each(candidates)("is reported on its own line: $line", ({ index, line }) => {
    const text = [...lines.with(index, `${line} }`), ""].join("\n");
    const { problems } = parseDeclaration(text);
    const places = problems.map(({ code, span }) => `${code} ${text.slice(0, span.start).split("\n").length}`);
    expect(places).toEqual([`language/stray-brace ${index + 1}`]);
  });
});

describe("half-typed text", () => {
  it("keeps an entry whose value is still missing, so that it can be completed", () => {
    const tree = parseDeclaration("build a {\n  drivetrain {\n    chain: \n    cassette: b\n  }\n}\n");
    expect(describeBlock(tree.block)).toEqual(["drivetrain", "  chain: ", "  cassette: b"]);
    expect(tree.problems.map(({ code }) => code)).toEqual(["language/missing-value"]);
  });

  it("keeps a key without its colon", () => {
    const tree = parseDeclaration("build a {\n  drive\n  frame: b\n}\n");
    expect(describeBlock(tree.block)).toEqual(["drive: ", "frame: b"]);
    expect(tree.problems.map(({ code }) => code)).toEqual(["language/incomplete-entry"]);
  });

  it("takes what is typed after an open block at the end as part of that block", () => {
    const text = "build a {\n  frame: b\n  drivetrain {\n    \n";
    const tree = parseDeclaration(text);
    expect(tree.block?.span.end).toBe(text.length);
    expect(tree.problems.map(({ code }) => code)).toEqual([
      "language/missing-closing-brace",
      "language/missing-closing-brace",
    ]);
  });

  it("gives a block without braces the lines that are indented deeper", () => {
    const tree = parseDeclaration("build a {\n  rider:\n    mass: 78 kg\n    inseam: 845 mm\n  frame: b\n}\n");
    expect(describeBlock(tree.block)).toEqual(["rider", "  mass: 78 kg", "  inseam: 845 mm", "frame: b"]);
    expect(tree.problems.map(({ code }) => code)).toEqual(["language/missing-braces"]);
  });

  it("believes braces that balance, however the lines are indented", () => {
    const tree = parseDeclaration("build a {\ndrivetrain {\nchain: b\n      cassette: c\n}\n  frame: d }\n");
    expect(describeBlock(tree.block)).toEqual(["drivetrain", "  chain: b", "  cassette: c", "frame: d"]);
    expect(tree.problems).toEqual([]);
  });

  it("closes blocks by braces alone where nothing is indented", () => {
    const tree = parseDeclaration("build a {\ndrivetrain {\nchain: b\nframe: d\n}\n");
    expect(describeBlock(tree.block)).toEqual(["drivetrain", "  chain: b", "  frame: d"]);
    expect(tree.problems.map(({ code }) => code)).toEqual(["language/missing-closing-brace"]);
  });

  it("ends a one-line block with its line when its brace is missing", () => {
    const tree = parseDeclaration("build a {\n  rider { mass: 78 kg\n  frame: b\n}\n");
    expect(describeBlock(tree.block)).toEqual(["rider", "  mass: 78 kg", "frame: b"]);
    expect(tree.problems).toHaveLength(1);
  });
});
