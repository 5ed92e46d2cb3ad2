import { describe, expect, it } from "vitest";
import { format } from "../../grammar/format.ts";
import { split } from "../../grammar/split.ts";
import { addLine, type DeclarationEdit, removeEntry, writeEntry } from "../../server/engine/edit-build.ts";
import { Declaration } from "../../server/model/declaration.ts";

function declare(text: string): Declaration {
  const chunk = split(text).find(({ keyword }) => keyword !== undefined);
  if (chunk?.keyword === undefined) throw new Error("no declaration");
  return new Declaration({ ...chunk, keyword: chunk.keyword }, text.slice(chunk.start, chunk.end), "a.ferrule", false);
}

function applied(edit: DeclarationEdit | undefined): string {
  if (!edit) throw new Error("no edit");
  const { text } = edit.declaration;
  const after = text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
  // Whatever is written has to be in the formatter's own form already.
  expect(format(after).text).toBe(after);
  return after;
}

const build = `build one "One" {
  category: mountain
  drivetrain {
    cassette: a.wide // from the box
    chain: a.link { links: 116 }
    rear-controller: a.pod { clamp: rear-brake.lever; side: right }
    battery: a.cell { place: derailleur }
  }
  extras {
    lower-cage: a.cage
  }
}
`;

describe("writing an entry", () => {
  it("replaces a value that stands there", () => {
    expect(applied(writeEntry(declare(build), "drivetrain.chain.links", "114"))).toContain("a.link { links: 114 }");
  });

  it("adds to a one-line block", () => {
    expect(applied(writeEntry(declare(build), "drivetrain.rear-controller.position", "30 mm"))).toContain(
      "{ clamp: rear-brake.lever; side: right; position: 30 mm }",
    );
  });

  it("opens a block behind a part's name, in front of a comment", () => {
    expect(applied(writeEntry(declare(build), "drivetrain.cassette.position", "2 mm"))).toContain(
      "cassette: a.wide { position: 2 mm } // from the box",
    );
  });

  it("adds a line to the assembly, after its last entry", () => {
    expect(applied(writeEntry(declare(build), "drivetrain.hanger", "a.eye"))).toContain(
      "    battery: a.cell { place: derailleur }\n    hanger: a.eye\n  }\n",
    );
  });

  it("opens an assembly that is not there", () => {
    expect(applied(writeEntry(declare(build), "seat.post", "a.post"))).toContain(
      "  }\n  seat {\n    post: a.post\n  }\n}\n",
    );
  });

  it("writes a dotted path into a variant", () => {
    const variant = 'build two "Two" from one {\n  frame: a.frame\n}\n';
    expect(applied(writeEntry(declare(variant), "seat.post", "a.post"))).toBe(
      'build two "Two" from one {\n  frame: a.frame\n  seat.post: a.post\n}\n',
    );
  });

  it("gives a variant without a block one", () => {
    expect(applied(writeEntry(declare('build two "Two" from one\n'), "seat.post", "a.post"))).toBe(
      'build two "Two" from one {\n  seat.post: a.post\n}\n',
    );
  });

  it("keeps line ends with carriage returns together", () => {
    const edit = addLine(
      declare(build.replaceAll("\n", "\r\n")),
      declare(build.replaceAll("\n", "\r\n")).tree.block!,
      "note: none",
    );
    expect(edit.declaration.text.slice(edit.span.start - 1, edit.span.start + 2)).toBe("}\r\n");
  });
});

describe("taking an entry out", () => {
  it.each([
    ["drivetrain.rear-controller.clamp", "a.pod { side: right }"],
    ["drivetrain.rear-controller.side", "a.pod { clamp: rear-brake.lever }"],
    ["drivetrain.chain.links", "chain: a.link\n"],
  ])("%s", (path, expected) => {
    expect(applied(removeEntry(declare(build), path))).toContain(expected);
  });

  it("takes the whole line", () => {
    const text = applied(removeEntry(declare(build), "drivetrain.battery"));
    expect(text).not.toContain("battery");
    expect(text).toContain("side: right }\n  }\n");
  });

  it("is nothing for a path that is not there", () => {
    expect(removeEntry(declare(build), "seat.post")).toBeUndefined();
  });
});
