import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { type Mend, mends } from "../../server/engine/repairs.ts";
import { prelude } from "../../server/standards/index.ts";

const today = "2026-11-25";
/** Milliseconds for a property: machines that run the tests differ, and how long it takes proves nothing. */
const patience = 300_000;
/** The builds of the samples that serve here: variants and alternates, one gear, a gear hub, two rings, a draft with faults. */
const served = ["fellside", "kirkgate", "fleetwith", "ulpha", "fellside-draft"];
/** Every file of the samples but the other builds, which would take ten times as long and try no more. */
const samples: ReadonlyMap<string, string> = new Map(
  readdirSync("samples", { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ferrule"))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => [relative("samples", file).replaceAll("\\", "/"), readFileSync(file, "utf8")] as const)
    .filter(([path]) => !/^(?:builds|wrong)\//.test(path) || served.some((name) => path.endsWith(`/${name}.ferrule`))),
);

/** Everything an engine says of its files, in plain data. */
function everything(engine: Engine): unknown {
  const uris = [...engine.workshop.files.keys()].filter((uri) => !uri.startsWith("ferrule-standard:")).sort();
  return uris.map((uri) => ({
    uri,
    stray: engine.fileProblems(uri).map(({ code, span }) => ({ code, range: engine.fileRange(uri, span) })),
    findings: engine.findings(uri).map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      message: finding.message,
      outcome: finding.outcome,
      path: finding.path,
      uri: finding.place.declaration.uri,
      range: engine.range(finding.place),
      related: finding.related.map(({ message, place }) => ({
        message,
        uri: place.declaration.uri,
        range: engine.range(place),
      })),
    })),
    counts: engine.file(uri)?.declarations.map((declaration) => engine.report(declaration)?.counts),
    records: engine.file(uri)?.declarations.map((declaration) => {
      const record = engine.record(declaration);
      return (
        record && {
          builtTo: record.builtTo,
          rows: record.rows.map(({ comparison, measured, outcome, verdict, expected }) => [
            `${comparison.code} ${measured.path} ${measured.written} ${outcome}`,
            expected,
            verdict.outcome === "unknown"
              ? verdict.missing.map(({ what }) => what)
              : { ...verdict, at: undefined, related: undefined },
          ]),
        }
      );
    }),
  }));
}

/** Every repair of every finding. */
function repairs(engine: Engine, texts: ReadonlyMap<string, string>): readonly Mend[] {
  return [...texts.keys()].flatMap((uri) =>
    (engine.file(uri)?.declarations ?? []).flatMap((declaration) =>
      engine.findingsOf(declaration).flatMap((finding) => mends(engine, declaration, finding)),
    ),
  );
}

function fresh(texts: ReadonlyMap<string, string>): Engine {
  const engine = new Engine({ today, prelude });
  engine.update([...texts].map(([uri, text]) => ({ uri, text })));
  return engine;
}

/** An edit: of a file (by its number), from a share of its length, so many characters away, and a text put in. */
type Edit =
  | {
      readonly kind: "change";
      readonly file: number;
      readonly share: number;
      readonly removed: number;
      readonly text: string;
    }
  | { readonly kind: "delete"; readonly file: number }
  | { readonly kind: "restore"; readonly file: number }
  /** A house rule put into the file of them: every build is asked it. */
  | { readonly kind: "rule"; readonly text: string; readonly share: number }
  /** A record put into a file of its own, or in the place of the one that stands there. */
  | { readonly kind: "record"; readonly text: string; readonly file: number }
  | { readonly kind: "copy"; readonly file: number };

const pieces = fc.constantFrom(
  "",
  "\n",
  " ",
  "x",
  "}",
  "{",
  ":",
  '"',
  "none",
  "0",
  "12 t",
  "part cassette corrie.wide-10-52 {\n}\n",
  "build x {\n",
  "\n// remark\n",
  "from ",
  "corrie.long-12",
  'standard hanger-seat coaxial-12 "Ours" {\n}\n',
  "  mass: 1 kg\n",
  "\ud800",
);
const rules = fc.constantFrom(
  'rule light "Light" {\n  require: sum(frame.mass, fork.mass) <= 3 kg\n}\n',
  "rule light {\n  when: category is mountain\n  require: frame.mass <= 2 kg\n  expect { holds: fellside-l; fails: fellside-m }\n}\n",
  "rule cogs {\n  require: drivetrain.cassette is corrie.wide-10-52\n}\n",
  "rule driver {\n  require: drivetrain.cassette.freehub is coaxial-12\n  expect { unknown: x }\n}\n",
  "rule wrong {\n  require: frame.mass <= 2 mm\n}\n",
);
const records = fc.constantFrom(
  'record "FL-0030" of fellside-l {\n  date: 2026-11-21\n  by: "J."\n  drivetrain.chain.links: 114\n}\n',
  'record "FL-0031" of fellside-m {\n  date: 2026-11-19\n  drivetrain.cassette: corrie.wide-11-50\n  drivetrain.chain-gap: 9 mm\n}\n',
  'record "FL-0032" of fellside-l {\n  date: 2026-11-01\n  by: "J."\n  spec: c0ffee\n  rear-wheel.tension.drive-side: 1180, 700, 1190 N\n  rear-wheel.tension.non-drive-side: 720, 730 N\n}\n',
  'record "X-1" of x {\n  date: 2027-01-01\n  torque.stem-bar: 5 N·m\n}\n',
);
const edits: fc.Arbitrary<Edit[]> = fc.array(
  fc.oneof(
    {
      weight: 3,
      arbitrary: fc.record({
        kind: fc.constant("rule" as const),
        text: rules,
        share: fc.constantFrom(0, 1),
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({ kind: fc.constant("record" as const), text: records, file: fc.nat(1) }),
    },
    {
      weight: 8,
      arbitrary: fc.record({
        kind: fc.constant("change" as const),
        file: fc.nat(99),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        removed: fc.nat(40),
        text: pieces,
      }),
    },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant("delete" as const), file: fc.nat(99) }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant("restore" as const), file: fc.nat(99) }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant("copy" as const), file: fc.nat(99) }) },
  ),
  { minLength: 1, maxLength: 6 },
);

function apply(texts: Map<string, string>, edit: Edit): { uri: string; text: string | undefined } {
  if (edit.kind === "rule") {
    const home = texts.get("rules.ferrule") ?? "";
    const text = edit.share === 0 ? `${edit.text}\n${home}` : `${home}\n${edit.text}`;
    texts.set("rules.ferrule", text);
    return { uri: "rules.ferrule", text };
  }
  if (edit.kind === "record") {
    const uri = `records/made-${edit.file}.ferrule`;
    texts.set(uri, edit.text);
    return { uri, text: edit.text };
  }
  const names = [...samples.keys()];
  const uri = names[edit.file % names.length] ?? "";
  const original = samples.get(uri) ?? "";
  if (edit.kind === "delete") {
    texts.delete(uri);
    return { uri, text: undefined };
  }
  if (edit.kind === "copy") {
    // Every name in it is then declared twice.
    const copy = `copy-of-${uri}`;
    texts.set(copy, original);
    return { uri: copy, text: original };
  }
  const before = edit.kind === "restore" ? original : (texts.get(uri) ?? original);
  const at = edit.kind === "change" ? Math.floor(edit.share * before.length) : 0;
  const text = edit.kind === "change" ? before.slice(0, at) + edit.text + before.slice(at + edit.removed) : before;
  texts.set(uri, text);
  return { uri, text };
}

describe("the engine", () => {
  it(
    "says after any sequence of edits what a fresh one says of the same texts",
    () => {
      fc.assert(
        fc.property(edits, fc.boolean(), fc.boolean(), (sequence, looksBetween, isOpen) => {
          const texts = new Map(samples);
          const engine = fresh(texts);
          // What is known of builds in open files serves again after an edit.
          if (isOpen) for (const uri of samples.keys()) engine.setOpen(uri, true);
          if (looksBetween) everything(engine);
          for (const edit of sequence) {
            const change = apply(texts, edit);
            engine.update([change]);
            // Asking in between fills the caches that the next edit has to invalidate.
            if (looksBetween) for (const uri of texts.keys()) engine.findings(uri);
          }
          expect(everything(engine)).toEqual(everything(fresh(texts)));
        }),
        { numRuns: 25 },
      );
    },
    patience,
  );

  it(
    "names every file whose findings an edit changes",
    () => {
      fc.assert(
        fc.property(edits, (sequence) => {
          const texts = new Map(samples);
          const engine = fresh(texts);
          const codes = (uri: string): string =>
            JSON.stringify(engine.findings(uri).map(({ code, message }) => [code, message]));
          for (const edit of sequence) {
            const before = new Map([...texts.keys()].map((uri) => [uri, codes(uri)]));
            const affected = engine.update([apply(texts, edit)]);
            for (const uri of texts.keys()) {
              if (!affected.has(uri)) expect(codes(uri)).toBe(before.get(uri) ?? codes(uri));
            }
          }
        }),
        { numRuns: 15 },
      );
    },
    patience,
  );

  it(
    "says the same whatever the order in which the files come",
    () => {
      fc.assert(
        fc.property(fc.shuffledSubarray([...samples.keys()], { minLength: samples.size }), (order) => {
          const engine = new Engine({ today, prelude });
          for (const uri of order) engine.update([{ uri, text: samples.get(uri) }]);
          expect(everything(engine)).toEqual(everything(fresh(samples)));
        }),
        { numRuns: 8 },
      );
    },
    patience,
  );

  it(
    "works out a repair for any finding of any damaged text, the same as a fresh one does, inside its file",
    () => {
      fc.assert(
        fc.property(edits, (sequence) => {
          const texts = new Map(samples);
          const engine = fresh(texts);
          for (const edit of sequence) {
            // What was found in the libraries is kept: it has to be let go when it may be found no more.
            repairs(engine, texts);
            engine.update([apply(texts, edit)]);
          }
          const worked = repairs(engine, texts);
          for (const { edits } of worked) {
            for (const { uri, range } of edits) {
              const lines = engine.lines(uri);
              expect(lines.offset(range.start)).toBeLessThanOrEqual(lines.offset(range.end));
              expect(lines.position(lines.offset(range.end))).toEqual(range.end);
            }
          }
          expect(worked).toEqual(repairs(fresh(texts), texts));
        }),
        { numRuns: 10 },
      );
    },
    patience,
  );
});
