import { describe, expect, test } from "vitest";
import type { CodeAction, TextDocumentEdit, TextEdit } from "vscode-languageserver-types";
import { type CodeActionRequest, codeActions, fixAllKind } from "../../server/language-features/code-actions.ts";
import { diagnostics } from "../../server/language-features/diagnostics.ts";
import { applied, library, type Marked, marked, richClient } from "./support.ts";

const build = (body: string): Marked =>
  marked({ "parts.ferrule": library, "build.ferrule": `build x "X" {\n${body}\n}\n` });

function actionsAt(source: Marked, request: Partial<CodeActionRequest> = {}): CodeAction[] {
  const range = { start: source.position, end: source.position };
  return codeActions(source.engine, source.uri, { range, diagnostics: [], ...request }, richClient, () => 7);
}

/** Applies an action as an editor does. @returns the texts that it changed, which the engine has too afterwards. */
function apply(source: Marked, action: CodeAction): Map<string, string> {
  const texts = new Map<string, string>();
  for (const change of (action.edit?.documentChanges ?? []) as TextDocumentEdit[]) {
    expect(change.textDocument.version).toBe(7);
    const { uri } = change.textDocument;
    texts.set(uri, applied(source.text(uri), change.edits as TextEdit[]));
  }
  for (const [uri, text] of texts) source.engine.update([{ uri, text }]);
  return texts;
}

function wrong(source: Marked): string[] {
  return diagnostics(source.engine, source.uri, richClient)
    .filter(({ data }) => data.outcome !== "unknown")
    .map(({ code }) => String(code))
    .sort();
}

describe("repairs of what does not fit", () => {
  const short = () =>
    build(
      "  drivetrain {\n    rear-derailleur: corrie.sho<|>rt-12\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }",
    );

  test("the preferred one is another part, and with it nothing is wrong", () => {
    const source = short();
    expect(wrong(source)).toEqual(["drivetrain/cage-capacity", "drivetrain/largest-cog"]);
    const preferred = actionsAt(source).filter(({ isPreferred }) => isPreferred);
    expect(preferred[0]?.title).toContain("Corrie long 12");
    apply(source, preferred[0] as CodeAction);
    expect(source.text()).toContain("    rear-derailleur: corrie.long-12\n");
    expect(wrong(source)).toEqual([]);
  });

  test("every repair but the waiver leaves that finding gone", () => {
    const titles = actionsAt(short()).map(({ title }) => title);
    for (const title of titles.filter((one) => /Fit|Correct/.test(one))) {
      const source = short();
      const action = actionsAt(source).find((one) => one.title === title) as CodeAction;
      const code = String(action.diagnostics?.[0]?.code);
      apply(source, action);
      expect(wrong(source), title).not.toContain(code);
    }
    expect(titles.some((title) => title.startsWith("Correct total-capacity"))).toBe(true);
  });

  test("a waiver asks for a reason, and with one it silences the finding and stays visible", () => {
    const source = short();
    const action = actionsAt(source).find(({ title }) => title.startsWith("Waive drivetrain/cage-capacity"));
    apply(source, action as CodeAction);
    expect(wrong(source)).toContain("build/waiver-reason");
    const text = source.text().replace('""', '"The customer knows"');
    source.engine.update([{ uri: source.uri, text }]);
    const found = diagnostics(source.engine, source.uri, richClient);
    const waived = found.find(({ code }) => code === "drivetrain/cage-capacity");
    expect(waived?.data.outcome).toBe("waived");
    expect(waived?.severity).toBeGreaterThan(1);
    expect(waived?.message).toContain("The customer knows");
  });

  test("each names the finding that it mends, as the client has it", () => {
    const source = short();
    const shown = diagnostics(source.engine, source.uri, richClient);
    const ofClient = shown.map((one) => ({ ...one, source: "the client's copy" }));
    const actions = actionsAt(source, { diagnostics: ofClient });
    const named = actions.flatMap((action) => action.diagnostics ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(new Set(named.map((one) => one.source))).toEqual(new Set(["the client's copy"]));
  });

  test("a client that takes plain edits gets them by file", () => {
    const source = short();
    const range = { start: source.position, end: source.position };
    const client = { ...richClient, documentChanges: false };
    const [first] = codeActions(source.engine, source.uri, { range, diagnostics: [] }, client, () => 7);
    expect(Object.keys(first?.edit?.changes ?? {})).toEqual([source.uri]);
  });

  test("a client that knows places to fill in gets the cursor where a word is missing", () => {
    const source = short();
    const range = { start: source.position, end: source.position };
    const client = { ...richClient, snippetEdits: true };
    const actions = codeActions(source.engine, source.uri, { range, diagnostics: [] }, client, () => 7);
    const waiver = actions.find(({ title }) => title.startsWith("Waive"));
    const [change] = (waiver?.edit?.documentChanges ?? []) as { edits: { snippet?: { value: string } }[] }[];
    expect(change?.edits[0]?.snippet?.value).toMatch(/waive \S+ at \S+ "\$0" until 2027-02-25/);
    const state = actions.find(({ title }) => title.startsWith("State "));
    const [stated] = (state?.edit?.documentChanges ?? []) as { edits: { snippet?: { value: string } }[] }[];
    expect(stated?.edits[0]?.snippet?.value).toMatch(/: \$0/);
  });
});

describe("repairs of what was written", () => {
  test.each([
    ["a name nearly right", "  drivetrain { cassette: corrie.wide-10-5<|>1 }", "cassette: corrie.wide-10-52 }"],
    ["a field nearly right", "  categ<|>oy: mountain", "  category: mountain\n"],
    ["a comma for a point", "  rider { mass: 78,<|>5 kg }", "mass: 78.5 kg"],
    ["a unit of something else", '  rider { height: 71<|>" }', "height: 71 in"],
  ])("%s", (_, body, expected) => {
    const source = build(body);
    const [first] = actionsAt(source).filter(({ isPreferred }) => isPreferred);
    apply(source, first as CodeAction);
    expect(source.text()).toContain(expected);
  });

  test("text outside of every declaration is mended too", () => {
    const source = marked({ "a.ferrule": "# a re<|>mark\n" });
    const [first] = actionsAt(source);
    apply(source, first as CodeAction);
    expect(source.text()).toBe("// a remark\n");
  });

  test("all that is a matter of spelling is mended at once, and no choice is made for anybody", () => {
    const source = build(
      "  categoy: mountain\n  rider { mass: 78,5 kg }\n  drivetrain { cassette: corrie.wide-10-51 }<|>",
    );
    const [all, ...others] = actionsAt(source, { only: ["source.fixAll"] });
    expect(others).toEqual([]);
    expect(all?.kind).toBe(fixAllKind);
    apply(source, all as CodeAction);
    expect(source.text()).toContain("  category: mountain\n");
    expect(source.text()).toContain("corrie.wide-10-51");
    // Nobody asked: not offered among the rest.
    expect(actionsAt(source).map(({ kind }) => kind)).not.toContain(fixAllKind);
  });
});

describe("other units", () => {
  test("are offered for a quantity that reads well, as a rewrite and not as a repair", () => {
    const source = build("  rider { height: 71<|> in }");
    const actions = actionsAt(source, { only: ["refactor"] });
    const metric = actions.find(({ title }) => title.startsWith("Convert to 1803.4 mm"));
    expect(metric?.kind).toBe("refactor.rewrite");
    apply(source, metric as CodeAction);
    expect(source.text()).toContain("height: 1803.4 mm");
    expect(actionsAt(source, { only: ["quickfix"] }).map(({ kind }) => kind)).not.toContain("refactor.rewrite");
  });
});
