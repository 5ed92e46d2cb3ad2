import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { CodeAction, TextDocumentEdit, TextEdit } from "vscode-languageserver-types";
import { Engine } from "../../server/engine/engine.ts";
import { codeActions } from "../../server/language-features/code-actions.ts";
import { diagnostics } from "../../server/language-features/diagnostics.ts";
import { hover } from "../../server/language-features/hover.ts";
import { prelude } from "../../server/standards/index.ts";
import { applied, richClient, today } from "./support.ts";

const samples = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "samples");

/** The workshop of the samples, as an editor has it with the wrong build open. */
function open(): { readonly engine: Engine; readonly uri: string } {
  const engine = new Engine({ today, prelude });
  const names = readdirSync(samples, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ferrule"));
  engine.update(
    names.map((name) => ({ uri: `file:///samples/${name}`, text: readFileSync(join(samples, name), "utf8") })),
  );
  const uri = "file:///samples/wrong/fellside-draft.ferrule";
  engine.setOpen(uri, true);
  return { engine, uri };
}

function wrong(engine: Engine, uri: string) {
  return diagnostics(engine, uri, richClient).filter(
    ({ data, severity }) => data.outcome === "fails" && severity === 1,
  );
}

function preferred(engine: Engine, uri: string, finding: ReturnType<typeof wrong>[number]): CodeAction | undefined {
  const request = { range: finding.range, diagnostics: [finding], only: ["quickfix"] };
  return codeActions(engine, uri, request, richClient, () => 1).find(
    ({ isPreferred, diagnostics: mended }) => isPreferred && mended?.some(({ data }) => data.key === finding.data.key),
  );
}

function apply(engine: Engine, { edit }: CodeAction): void {
  for (const { textDocument, edits } of (edit?.documentChanges ?? []) as TextDocumentEdit[]) {
    const text = applied(engine.file(textDocument.uri)?.text ?? "", edits as TextEdit[]);
    engine.update([{ uri: textDocument.uri, text }]);
  }
}

describe("the wrong build of the samples", () => {
  const found = wrong(open().engine, open().uri);

  test("has the faults that a person took care to put in", () => {
    expect(found.length).toBeGreaterThanOrEqual(8);
    const codes = found.map(({ code }) => code);
    expect(codes).toContain("drivetrain/cage-capacity");
    expect(codes).toContain("drivetrain/hanger-seat");
    expect(codes).toContain("cockpit/clamp-interface");
  });

  test.each(found.map((finding) => [String(finding.code), finding] as const))(
    "%s: the preferred repair leaves it gone, and nothing new wrong",
    (_, finding) => {
      const { engine, uri } = open();
      const action = preferred(engine, uri, finding);
      expect(action?.title).toBeTruthy();
      apply(engine, action as CodeAction);
      const after = wrong(engine, uri).map(({ data }) => data.key);
      expect(after).not.toContain(finding.data.key);
      const before = found.map(({ data }) => data.key);
      expect(after.filter((key) => !before.includes(key))).toEqual([]);
    },
  );

  test("is right after the preferred repairs were taken one after another", () => {
    const { engine, uri } = open();
    for (let left = found.length; left > 0; left--) {
      const [first] = wrong(engine, uri);
      if (!first) break;
      const action = preferred(engine, uri, first);
      expect(action, String(first.code)).toBeDefined();
      apply(engine, action as CodeAction);
    }
    expect(wrong(engine, uri).map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  test.each([
    ["drivetrain/cage-capacity", /Cogs: 52 t − 10 t = 42 t/],
    ["drivetrain/hanger-seat", /`frame\.hanger-seat`: coaxial-12 \(.*\[moor-frames\.ferrule:\d+\]/],
    [
      "cockpit/clamp-interface",
      /`drivetrain\.rear-controller\.clamp`: rear-brake\.lever \(.*\[fellside-draft\.ferrule:\d+\]/,
    ],
  ])("%s: hovering where it is shown gives the comparison with both places", (code, expected) => {
    const { engine, uri } = open();
    const finding = found.find((one) => one.code === code);
    if (!finding) throw new Error(`${code} is not found`);
    const contents = hover(engine, uri, finding.range.start, richClient)?.contents as { value: string };
    const [comparison = ""] = contents.value.split("**Checks that read this slot**");
    expect(comparison).toContain(`\`${code}\``);
    expect(comparison).toMatch(expected);
    expect(finding.relatedInformation?.length).toBeGreaterThanOrEqual(2);
  });
});
