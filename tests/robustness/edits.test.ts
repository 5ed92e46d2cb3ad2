import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LineIndex } from "../../server/engine/positions.ts";
import { codeActions } from "../../server/language-features/code-actions.ts";
import { completion } from "../../server/language-features/completion.ts";
import { definition } from "../../server/language-features/definition.ts";
import { diagnostics } from "../../server/language-features/diagnostics.ts";
import { documentHighlights } from "../../server/language-features/document-highlights.ts";
import { documentSymbols } from "../../server/language-features/document-symbols.ts";
import { foldingRanges } from "../../server/language-features/folding-ranges.ts";
import { formatDocument } from "../../server/language-features/formatting.ts";
import { hover } from "../../server/language-features/hover.ts";
import { inlayHints } from "../../server/language-features/inlay-hints.ts";
import { references } from "../../server/language-features/references.ts";
import { prepareRename } from "../../server/language-features/rename.ts";
import { selectionRanges } from "../../server/language-features/selection-ranges.ts";
import { semanticTokens } from "../../server/language-features/semantic-tokens.ts";
import { plainClient } from "../../server/language-features/shared/options.ts";
import { openSamples, sampleFiles } from "../samples/workshop.ts";

/*
 * Whatever a person does to a text of the samples, every question about it is answered: nothing throws, no place lies
 * outside the file, and no check of a build that is still there goes missing. Taken back, all is as it was.
 */

/** Milliseconds for a file: machines that run the tests differ, and how long it takes proves nothing. */
const patience = 300_000;

/** Times that a file is edited; a long run sets more. A file of many builds takes as long as many files: it gets half. */
const tries = Number(process.env.FERRULE_TRIES ?? 2);
const manyBuilds = 5;

const rubbish = [
  "",
  "\n",
  "\r\n",
  "\t",
  "}",
  "{",
  ":",
  ";",
  '"',
  "//",
  "///",
  ",",
  "0",
  "-",
  "3,5 kg",
  "12 t",
  "1e999 mm",
  "none",
  "or",
  "from ",
  "remove: ",
  "\npart frame \n",
  "\nbuild x from x {\n",
  "\nbuild kirkgate-55 {\n}\n",
  "waive ",
  "\u0000",
  "\u202e",
  "\ud800",
  "\u{1f6b2}",
  "{".repeat(40),
  "9".repeat(400),
];

interface Change {
  readonly kind: "put" | "cut" | "drop-line" | "repeat-line" | "swap-lines" | "borrow";
  /** Where, as a share of the text. */
  readonly at: number;
  readonly length: number;
  readonly text: string;
}

const changes: fc.Arbitrary<Change[]> = fc.array(
  fc.record({
    kind: fc.constantFrom("put", "put", "cut", "drop-line", "repeat-line", "swap-lines", "borrow"),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.nat(60),
    text: fc.constantFrom(...rubbish),
  }),
  { minLength: 1, maxLength: 4 },
);

function changed(text: string, { kind, at, length, text: piece }: Change): string {
  const offset = Math.floor(at * text.length);
  if (kind === "put") return text.slice(0, offset) + piece + text.slice(offset);
  if (kind === "cut") return text.slice(0, offset) + text.slice(offset + length);
  const lines = text.split("\n");
  const line = Math.min(lines.length - 1, Math.floor(at * lines.length));
  const here = lines[line] ?? "";
  if (kind === "drop-line") lines.splice(line, 1);
  if (kind === "repeat-line") lines.splice(line, 0, here);
  if (kind === "swap-lines") lines.splice(line, 2, lines[line + 1] ?? "", here);
  if (kind === "borrow") {
    const other = sampleFiles[length % sampleFiles.length]?.text.split("\n") ?? [];
    lines.splice(line, 0, ...other.slice(Math.floor(at * other.length), Math.floor(at * other.length) + 3));
  }
  return lines.join("\n");
}

const engine = openSamples();

function findings(path: string): unknown {
  return engine.findings(path).map((finding) => [finding.code, finding.message, engine.range(finding.place)]);
}

/** Asks everything that an editor asks of a file and of a place in it. */
function askEverything(path: string, text: string, offset: number): void {
  const lines = new LineIndex(text);
  const position = lines.position(Math.min(offset, text.length));
  const range = { start: position, end: position };
  for (const { range: found } of diagnostics(engine, path, plainClient)) {
    // A position that is none in the text does not come back as it went.
    expect(lines.position(lines.offset(found.start))).toEqual(found.start);
    expect(lines.position(lines.offset(found.end))).toEqual(found.end);
  }
  completion(engine, path, position, plainClient);
  hover(engine, path, position, plainClient);
  definition(engine, path, position, plainClient);
  references(engine, path, position, { includeDeclaration: true }, plainClient);
  documentHighlights(engine, path, position);
  prepareRename(engine, path, position);
  selectionRanges(engine, path, [position]);
  codeActions(engine, path, { range, diagnostics: [] }, plainClient, () => 1);
  inlayHints(engine, path, range, plainClient);
  documentSymbols(engine, path);
  foldingRanges(engine, path);
  semanticTokens(engine, path);
  formatDocument(text);
  const asked = engine.checks.all.length;
  for (const declaration of engine.file(path)?.declarations ?? []) {
    const counts = engine.report(declaration)?.counts;
    if (!counts) continue;
    const { holds, fails, unknown, waived, notApplicable } = counts;
    expect(holds + fails + unknown + waived + notApplicable, declaration.name).toBe(asked);
  }
}

describe("random edits of", () => {
  test.each(sampleFiles.map(({ path, text }) => [path, text]))(
    "%s: nothing throws, and nothing stays",
    (path, text) => {
      const isLarge = [...text.matchAll(/^build /gm)].length >= manyBuilds;
      const before = isLarge ? undefined : findings(path);
      engine.setOpen(path, true);
      fc.assert(
        fc.property(changes, (sequence) => {
          const edited = sequence.reduce(changed, text);
          engine.update([{ uri: path, text: edited }]);
          askEverything(path, edited, Math.floor((sequence.at(-1)?.at ?? 0) * edited.length));
        }),
        { numRuns: isLarge ? Math.ceil(tries / 2) : tries },
      );
      engine.update([{ uri: path, text }]);
      engine.setOpen(path, false);
      if (before) expect(findings(path)).toEqual(before);
    },
    patience,
  );
});
