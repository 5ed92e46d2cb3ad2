import { describe, expect, test } from "vitest";
import type { CompletionItem, CompletionList, TextEdit } from "vscode-languageserver-types";
import { completion, resolveCompletion } from "../../server/language-features/completion.ts";
import { applied, library, type Marked, marked, richClient } from "./support.ts";

function listAt(source: Marked): CompletionList {
  return completion(source.engine, source.uri, source.position, richClient);
}

/** Labels in the order in which an editor lists them when nothing is typed. */
function labels({ items }: CompletionList): string[] {
  return inOrder(items).map(({ label }) => label);
}

function inOrder(items: readonly CompletionItem[]): CompletionItem[] {
  return [...items].sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
}

/** The text after an item was taken, as an editor without snippets would leave it. */
function taken(source: Marked, label: string): string {
  const item = listAt(source).items.find((one) => one.label === label);
  if (!item) throw new Error(`${label} is not offered: ${labels(listAt(source)).join(", ")}`);
  return applied(source.text(), [item.textEdit as TextEdit]);
}

const build = (body: string): Marked =>
  marked({ "parts.ferrule": library, "build.ferrule": `build x "X" {\n${body}\n}\n` });

describe("parts for a slot", () => {
  const drivetrain = (line: string): Marked =>
    build(
      `  drivetrain {\n    ${line}\n    hanger: moor.eye\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }`,
    );

  test.each([
    ["nothing typed", "rear-derailleur: <|>"],
    ["nothing typed and no blank", "rear-derailleur:<|>"],
    ["a few letters", "rear-derailleur: cor<|>"],
    ["in the middle of a name", "rear-derailleur: corrie.<|>long"],
    ["settings behind it", "rear-derailleur: <|> { }"],
    ["a remark behind it", "rear-derailleur: <|> // which?"],
    ["an alternate", "rear-derailleur: corrie.long-12 or <|>"],
  ])("with %s, those that fit come first and the others last with the reason", (_, line) => {
    const list = listAt(drivetrain(line));
    const parts = inOrder(list.items).filter(({ label }) => label.startsWith("corrie."));
    expect(parts.map(({ label }) => label)).toEqual(["corrie.long-12", "corrie.short-12"]);
    expect(parts[1]?.labelDetails?.description).toBe("does not fit");
    expect(parts[1]?.detail).toMatch(/42 t.*26 t/);
    // Another kind of part is not offered at all.
    expect(labels(list)).not.toContain("corrie.wide-10-52");
  });

  test("the word at the cursor is replaced, dots and dashes included", () => {
    expect(taken(drivetrain("rear-derailleur: corrie.sh<|>"), "corrie.long-12")).toContain(
      "    rear-derailleur: corrie.long-12\n",
    );
  });

  test("none is offered for a slot, and not as an alternate", () => {
    expect(labels(listAt(drivetrain("rear-derailleur: <|>")))).toContain("none");
    expect(labels(listAt(drivetrain("rear-derailleur: corrie.long-12 or <|>")))).not.toContain("none");
  });

  test("the wheel that is bought whole comes first in its second place, and the others do not fit", () => {
    const source = marked({
      "a.ferrule": `
part built-wheel a.wheel "Wheel" { bead-seat: 622 }
part built-wheel a.another "Another wheel" { bead-seat: 622 }
part rim a.rim "Rim" { bead-seat: 622 }
build x "X" {
  front-wheel { hub: a.wheel; rim: <|> }
}
`,
    });
    const parts = inOrder(listAt(source).items).filter(({ label }) => label.startsWith("a."));
    expect(parts.map(({ label }) => label)).toEqual(["a.wheel", "a.another", "a.rim"]);
    expect(parts.map(({ labelDetails }) => labelDetails?.description === "does not fit")).toEqual([false, true, true]);
  });

  test("behind a name stands an alternate or how the part is installed", () => {
    expect(labels(listAt(build("  drivetrain {\n    chain: corrie.link <|>\n  }")))).toEqual(["or", "{"]);
  });

  test("half-typed lines around the cursor do no harm", () => {
    const source = marked({
      "parts.ferrule": library,
      "build.ferrule": `build x "X" {\n  drivetrain {\n    cassette: corrie.wide-10-52 {\n    rear-derailleur: <|>\n    crankset: corrie.arm-32\n  cockpit {\n    stem\n`,
    });
    expect(labels(listAt(source))).toEqual(["corrie.long-12", "none", "corrie.short-12"]);
  });

  test("in a one-line block, in a group and by a dotted path alike", () => {
    for (const body of [
      "  drivetrain { cassette: corrie.wide-10-52; crankset: corrie.arm-32; rear-derailleur: <|> }",
      "  drivetrain { cassette: corrie.wide-10-52; crankset: corrie.arm-32; rear-derailleur: <|>",
      "  drivetrain { cassette: corrie.wide-10-52; crankset: corrie.arm-32 }\n  drivetrain.rear-derailleur: <|>",
    ]) {
      expect(labels(listAt(build(body)))).toEqual(["corrie.long-12", "none", "corrie.short-12"]);
    }
  });

  test("a variant is judged with what it inherits", () => {
    const source = marked({
      "parts.ferrule": library,
      "build.ferrule": `build base "Base" {\n  drivetrain {\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }\n}\nbuild x "X" from base {\n  drivetrain.rear-derailleur: <|>\n}\n`,
    });
    expect(labels(listAt(source))).toEqual(["corrie.long-12", "none", "corrie.short-12"]);
  });

  test("a fault elsewhere in the build speaks against no part here", () => {
    const pods = `standard control-clamp fit "Fit" { form: shared }
part brake-lever stop "Stop" { mount: band-22.2; clamp-offers: fit }
part shift-controller pod "Pod" { mount: fit }
part remote thumb "Thumb" { mount: fit }
`;
    const source = marked({
      "parts.ferrule": library + pods,
      "build.ferrule": `build x "X" {\n  drivetrain {\n    rear-derailleur: <|>\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n    rear-controller: pod { clamp: rear-brake.lever }\n  }\n  front-brake { lever: stop { side: left } }\n  rear-brake { lever: stop { side: right } }\n  seat { remote: thumb { clamp: rear-brake.lever } }\n}\n`,
    });
    const report = source.engine.report(source.engine.workshop.build("x") as never);
    expect(report?.findings.map(({ code }) => code)).toContain("cockpit/clamp-interface");
    const long = listAt(source).items.find(({ label }) => label === "corrie.long-12");
    expect(long?.labelDetails?.description).not.toBe("does not fit");
    expect(labels(listAt(source)).indexOf("corrie.long-12")).toBe(0);
  });

  test("what only asks for another set-up is told from what does not fit", () => {
    const source = marked({
      "parts.ferrule": `${library}\npart chain link "Link" { drive-family: 12-speed }\n`,
      "build.ferrule": `build x "X" {\n  budget { price: <= GBP 100 }\n  drivetrain {\n    cassette: <|>\n    rear-derailleur: corrie.long-12\n    crankset: corrie.arm-32\n  }\n}\n`,
    });
    const wide = listAt(source).items.find(({ label }) => label === "corrie.wide-10-52");
    expect(wide?.labelDetails?.description).toBe("fits, with a change");
    expect(wide?.detail).toContain("GBP 184.00");
  });

  test("a changed library is seen at once", () => {
    const source = drivetrain("rear-derailleur: <|>");
    expect(labels(listAt(source))[0]).toBe("corrie.long-12");
    source.engine.update([
      { uri: "file:///workshop/parts.ferrule", text: library.replace("total-capacity: 42 t", "total-capacity: 20 t") },
    ]);
    expect(listAt(source).items.find(({ label }) => label === "corrie.long-12")?.labelDetails?.description).toBe(
      "does not fit",
    );
  });

  test("looking at an item shows what speaks against it and what it is", () => {
    const source = drivetrain("rear-derailleur: <|>");
    const item = listAt(source).items.find(({ label }) => label === "corrie.short-12");
    if (!item) throw new Error("not offered");
    const { documentation } = resolveCompletion(source.engine, item, richClient);
    const { value } = documentation as { value: string };
    expect(value).toContain("✗ `drivetrain/cage-capacity` Capacity needed 42 t");
    expect(value).toContain("Corrie short 12");
  });
});

describe("names", () => {
  test("of fields not yet stated, the expected ones first in the order of the vocabulary", () => {
    const list = listAt(marked({ "parts.ferrule": `part cassette x "X" {\n  speeds: 12\n  <|>\n}\n` }));
    const names = labels(list);
    expect(names.slice(0, 3)).toEqual(["cogs", "freehub", "drive-family"]);
    expect(names).not.toContain("speeds");
    expect(names.indexOf("lockring-torque")).toBeLessThan(names.indexOf("maker"));
    expect(taken(marked({ "parts.ferrule": `part cassette x "X" {\n  co<|>\n}\n` }), "cogs")).toContain("  cogs: \n");
  });

  test("are replaced without a second colon", () => {
    expect(taken(marked({ "parts.ferrule": `part cassette x "X" {\n  co<|>: 11-34 t\n}\n` }), "cogs")).toContain(
      "  cogs: 11-34 t\n",
    );
  });

  test("of slots in an assembly, of settings in a slot, of groups and assemblies in a build", () => {
    expect(labels(listAt(build("  drivetrain {\n    chain: none\n    <|>\n  }"))).slice(0, 3)).toEqual([
      "rear-derailleur",
      "hanger",
      "front-derailleur",
    ]);
    expect(labels(listAt(build("  drivetrain { chain: c { <|> } }")))).toEqual(["links"]);
    const names = labels(listAt(build("  drivetrain { }\n  <|>")));
    expect(names.slice(0, 3)).toEqual(["category", "frame", "fork"]);
    expect(names).toContain("cockpit");
    expect(names).toContain("waive");
    expect(names).not.toContain("drivetrain");
    expect(names).not.toContain("remove");
  });

  test("go on behind the dots of a path", () => {
    expect(taken(build("  cockpit.stem.sp<|>"), "cockpit.stem.spacers-below")).toContain(
      "  cockpit.stem.spacers-below: \n",
    );
    expect(labels(listAt(build("  rider.<|>")))).toContain("rider.mass");
  });

  test("nothing is offered in a comment, in a text, and for the workshop's own data", () => {
    for (const body of ["  // dri<|>", '  note: "dri<|>"', "  own { sh<|> }"]) {
      expect(labels(listAt(build(body)))).toEqual([]);
    }
  });

  test("a new declaration may begin in the first column, whatever is still open", () => {
    const open = `build x "X" {\n  drivetrain {\n    cassette: c\n<|>\n`;
    expect(labels(listAt(marked({ "build.ferrule": open })))).toContain("part");
    expect(labels(listAt(marked({ "build.ferrule": "<|>" })))).toEqual([
      "part",
      "build",
      "standard",
      "rule",
      "record",
      "workshop",
    ]);
    expect(labels(listAt(build("  <|>")))).not.toContain("part");
  });
});

describe("headers", () => {
  test("take kinds, families, bases and builds where each stands", () => {
    expect(labels(listAt(marked({ "a.ferrule": "part cas<|>" })))).toContain("cassette");
    expect(labels(listAt(marked({ "a.ferrule": "standard <|>" })))).toContain("freehub-body");
    const of = (text: string) => labels(listAt(marked({ "parts.ferrule": library, "a.ferrule": text })));
    expect(of(`part cassette mine "Mine" <|>`)).toEqual(["from"]);
    expect(of(`part cassette mine "Mine" from <|>`)).toEqual(["corrie.close-11-34", "corrie.wide-10-52"]);
    expect(of(`build one "One" {\n}\nbuild two "Two" from <|>`)).toEqual(["one"]);
    expect(of(`build one "One" {\n}\nrecord "1" <|>`)).toEqual(["of"]);
    expect(of(`build one "One" {\n}\nrecord "1" of <|>`)).toEqual(["one"]);
  });
});

describe("values", () => {
  const part = (line: string): Marked => marked({ "a.ferrule": `part cassette x "X" {\n  ${line}\n}\n` });

  test("words of a set come with their meanings", () => {
    const list = listAt(build("  category: <|>"));
    expect(labels(list)).toContain("gravel");
    expect(list.items.find(({ label }) => label === "gravel")?.detail).toMatch(/Unpaved/);
  });

  test("codes of the family, found by their other names too", () => {
    const list = listAt(part("freehub: <|>"));
    const stepped = list.items.find(({ label }) => label === "stepped-driver");
    expect(stepped?.labelDetails?.description).toContain("Stepped driver");
    expect(stepped?.filterText).toContain("stepped-driver-short");
    expect(labels(list)).not.toContain("12x148");
  });

  test("a standard of the workshop's own is offered before those that come with Ferrule", () => {
    const source = marked({
      "own.ferrule": `standard freehub-body north "North" { }\n`,
      "a.ferrule": `part cassette x "X" {\n  freehub: <|>\n}\n`,
    });
    expect(labels(listAt(source))[0]).toBe("north");
  });

  test("both halves of a composite code", () => {
    const headset = (value: string): Marked => marked({ "a.ferrule": `part headset x "X" {\n  upper: ${value}\n}\n` });
    expect(labels(listAt(headset("ZS<|>")))).toContain("ZS44");
  });

  test("units behind a number, with and without a blank", () => {
    expect(labels(listAt(build("  rider { mass: 78 <|> }")))).toEqual(["kg", "g", "lb", "oz", "st"]);
    expect(taken(build("  rider { mass: 78 <|> }"), "kg")).toContain("mass: 78 kg }");
    expect(taken(build("  rider { mass: 78<|> }"), "kg")).toContain("mass: 78 kg }");
    expect(labels(listAt(part("cogs: 11-13-15 <|>")))).toEqual(["t"]);
  });

  test("slots of the same build for a shared clamp, those that offer one first", () => {
    const source = marked({
      "parts.ferrule": `${library}\npart brake-lever corrie.stop "Stop" { clamp-offers: control-fitting }\npart shift-controller corrie.pod "Pod" { mount: control-fitting }\n`,
      "build.ferrule": `build x "X" {\n  frame: moor.fellside-l\n  drivetrain { rear-controller: corrie.pod { clamp: <|> } }\n  rear-brake { lever: corrie.stop }\n}\n`,
    });
    const names = labels(listAt(source));
    expect(names[0]).toBe("rear-brake.lever");
    expect(names).toContain("frame");
    expect(names).not.toContain("drivetrain.rear-controller");
  });

  test("what is inherited, to be removed", () => {
    const source = marked({
      "parts.ferrule": library,
      "b.ferrule": `build base "Base" {\n  drivetrain { cassette: corrie.wide-10-52 }\n}\nbuild x "X" from base {\n  remove: <|>\n}\n`,
    });
    expect(labels(listAt(source))).toEqual(["drivetrain.cassette"]);
  });
});

describe("waivers", () => {
  const body = (waiver: string): Marked =>
    build(
      `  drivetrain {\n    rear-derailleur: corrie.short-12\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }\n  ${waiver}`,
    );

  test("begin with the code of a check, those that fail here first", () => {
    const list = listAt(body("waive <|>"));
    expect(labels(list).slice(0, 2).sort()).toEqual(["drivetrain/cage-capacity", "drivetrain/largest-cog"]);
    expect(labels(list).length).toBeGreaterThan(50);
  });

  test("go on with a path, a reason and a day", () => {
    expect(labels(listAt(body("waive drivetrain/cage-capacity <|>")))).toEqual(['"reason"', "at"]);
    expect(labels(listAt(body("waive drivetrain/cage-capacity at <|>")))[0]).toBe("drivetrain.rear-derailleur");
    expect(labels(listAt(body('waive drivetrain/cage-capacity at drivetrain.rear-derailleur "so" <|>')))).toEqual([
      "until",
    ]);
    expect(labels(listAt(body('waive drivetrain/cage-capacity "so" until <|>')))).toContain("2027-02-25");
  });
});
