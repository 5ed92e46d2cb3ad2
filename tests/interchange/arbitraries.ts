import fc from "fast-check";
import { fromBase, unitsOf } from "../../grammar/units.ts";
import { Engine } from "../../server/engine/engine.ts";
import { readWritten } from "../../server/interchange/cells.ts";
import { type Draft, draftText, type OwnEntry } from "../../server/interchange/draft.ts";
import { prelude } from "../../server/standards/index.ts";
import { quote } from "../../server/values/problems.ts";
import type { FieldType } from "../../server/values/types.ts";
import { kindNames, kinds } from "../../server/vocabulary/index.ts";

/** Random sound parts of every kind, with values in every form that their fields take. */

export const today = "2026-11-25";

export function emptyWorkshop(files: Readonly<Record<string, string>> = {}): Engine {
  const engine = new Engine({ today, prelude });
  engine.update(Object.entries(files).map(([uri, text]) => ({ uri, text })));
  engine.complete = true;
  return engine;
}

const codes = (() => {
  const engine = emptyWorkshop();
  const byFamily = new Map<string, string[]>();
  for (const { kind = "", name } of engine.workshop.declared("standard")) {
    byFamily.set(kind, [...(byFamily.get(kind) ?? []), name]);
  }
  return byFamily;
})();

/** Texts that trip tables, spreadsheets and quotes. */
export const trickyText = fc.oneof(
  fc.string({ unit: "grapheme-ascii", maxLength: 20 }),
  fc.constantFrom(
    ...[
      "=1+1",
      '=HYPERLINK("x")',
      "+44 1539",
      "-5",
      "-5+3",
      "@home",
      "'quoted",
      "''",
      "'=x",
      "'-5",
      "-",
      "n/a",
      "?",
      "",
    ],
    ...[
      '29" wheel',
      "a,b;c|d\te",
      '"',
      '""',
      " both ends ",
      "north–country",
      "N·m",
      "＝1",
      "none",
      "1,480.5",
      "\\",
      '\\"',
    ],
  ),
);

/** On one line and without what the language remarks on: those are other tests' business. */
const plainText = trickyText.map((text) => text.replace(/[^\x20-\x7e\u00a1-\u024f\u2010-\u2015＝]/gu, ""));

function number(lowest: number, highest: number): fc.Arbitrary<string> {
  return fc
    .double({ min: lowest, max: highest, noNaN: true })
    .chain((value) => fc.constantFrom(0, 1, 2, 3).map((digits) => String(Number(value.toFixed(digits)))));
}

/** A value of a type as it is written, mostly sound. */
function written(type: FieldType): fc.Arbitrary<string> {
  switch (type.type) {
    case "quantity":
    case "quantities": {
      const [lowest, highest] = "lowest" in type || "highest" in type ? bounds(type) : [0, 1000];
      const measured = fc.constantFrom(...unitsOf(type.dimension)).chain((unit) => {
        const ends = [fromBase(lowest, unit), fromBase(highest, unit)].sort((a, b) => a - b);
        const one = number(ends[0] ?? 0, ends[1] ?? 1);
        if (type.type === "quantities") {
          return fc.array(one, { minLength: 1, maxLength: 3 }).map((all) => `${all.join(", ")} ${unit.symbol}`);
        }
        if (type.role === "exact") return one.map((value) => `${value} ${unit.symbol}`);
        return fc.oneof(
          one.map((value) => `${value} ${unit.symbol}`),
          one.map((value) => `<= ${value} ${unit.symbol}`),
          one.map((value) => `>= ${value} ${unit.symbol}`),
          fc.tuple(one, one).map((both) => `${both.sort((a, b) => Number(a) - Number(b)).join(" to ")} ${unit.symbol}`),
          one.map((value) => `${value} ± 0.05 ${unit.symbol}`),
        );
      });
      return measured;
    }
    case "count":
      return fc
        .integer({ min: type.lowest ?? 0, max: type.highest ?? 300 })
        .map((value) => `${value}${type.unit ? ` ${type.unit}` : ""}`);
    case "number":
      return number(type.lowest ?? 0, type.highest ?? 5);
    case "teeth":
      return fc
        .array(fc.integer({ min: 9, max: 52 }), { minLength: 1, maxLength: 12 })
        .map((all) => `${all.join("-")} t`);
    case "code":
      return fc.constantFrom(...(codes.get(type.family) ?? ["none"]));
    case "codes":
      return fc
        .uniqueArray(fc.constantFrom(...(codes.get(type.family) ?? ["none"])), { minLength: 1, maxLength: 3 })
        .map((all) => all.join(", "));
    case "word":
      return fc.constantFrom(...Object.keys(type.words));
    case "words":
      return fc
        .uniqueArray(fc.constantFrom(...Object.keys(type.words)), { minLength: 1, maxLength: 3 })
        .map((all) => all.join(", "));
    case "text":
      return plainText.map(quote);
    case "yes-no":
      return fc.constantFrom("yes", "no");
    case "date":
      return fc.constantFrom("2027-03-31", "2024-02-29");
    case "money":
      return fc
        .tuple(fc.constantFrom("GBP", "EUR", "JPY"), number(0, 3000))
        .map(([currency, amount]) => `${currency} ${amount}`);
    case "colour":
      return fc.constantFrom("#2f5d50", "darkgreen");
    case "part":
    case "slot":
      return fc.constant("none");
  }
}

function bounds(type: Extract<FieldType, { type: "quantity" | "quantities" }>): [number, number] {
  const lowest = type.lowest ?? Math.min(0, (type.highest ?? 0) - 100);
  return [lowest, type.highest ?? lowest + 1000];
}

/** The canonical spelling of a value; `undefined` where the random one is out of bounds or not sound. */
function canonical(type: FieldType, text: string): string | undefined {
  if (type.type === "text") return text;
  const read = readWritten(type, text);
  return "written" in read ? read.written : undefined;
}

const key = fc.constantFrom("bin", "stand", "row", "colour-code", "note");
const ownValue = fc.oneof(plainText.map(quote), fc.constantFrom("12", "12 mm", "A3", "yes", "a, b"));
const ownEntries: fc.Memo<readonly OwnEntry[]> = fc.memo((depth) =>
  fc.uniqueArray(
    depth > 1
      ? fc.oneof(
          { weight: 3, arbitrary: fc.record({ key, written: ownValue }) },
          fc.record({ key, entries: ownEntries(depth - 1).filter((entries) => entries.length > 0) }),
        )
      : fc.record({ key, written: ownValue }),
    { maxLength: 3, selector: (entry) => entry.key },
  ),
);

const documentation = fc
  .array(
    plainText.map((line) => line.trim()),
    { minLength: 1, maxLength: 3 },
  )
  .map((lines) => lines.join("\n"))
  .filter((text) => text.trim() === text && text !== "");

function partOfKind(kind: string, name: string): fc.Arbitrary<Draft> {
  const fields = Object.entries(kinds.get(kind)?.fields ?? {});
  const facts = fc
    .shuffledSubarray(fields, { maxLength: 10 })
    .chain((chosen) =>
      fc.tuple(
        ...chosen.map(([fact, { type }]) =>
          fc
            .oneof({ weight: 8, arbitrary: written(type) }, fc.constant("none"))
            .map((text) => [fact, canonical(type, text)] as const),
        ),
      ),
    );
  return fc
    .record({
      title: fc.option(plainText, { nil: undefined }),
      documentation: fc.option(documentation, { nil: undefined }),
      facts,
      own: ownEntries(2),
    })
    .map(
      ({ title, documentation: lines, facts: stated, own }): Draft => ({
        keyword: "part",
        kind,
        name,
        ...(title === undefined ? {} : { title }),
        ...(lines === undefined ? {} : { documentation: lines }),
        facts: new Map(stated.filter((fact): fact is readonly [string, string] => fact[1] !== undefined)),
        ...(own.length > 0 ? { own } : {}),
      }),
    );
}

/** Several parts of several kinds, the last of them derived from the first where they are of one kind. */
export const parts: fc.Arbitrary<readonly Draft[]> = fc
  .array(fc.constantFrom(...kindNames), { minLength: 1, maxLength: 5 })
  .chain((names) => fc.tuple(...names.map((kind, index) => partOfKind(kind, `maker.part-${index}`))))
  .map((drafts) => {
    const last = drafts.at(-1);
    const base = drafts.find((draft) => draft !== last && draft.kind === last?.kind);
    return last && base ? [...drafts.slice(0, -1), { ...last, from: base.name }] : drafts;
  });

/** The text of a library; every draft has to be one that can be written. */
export function libraryText(drafts: readonly Draft[]): string {
  return drafts
    .map((draft) => {
      const text = draftText(draft);
      if (text === undefined) throw new Error(`${JSON.stringify(draft)} cannot be written`);
      return text;
    })
    .join("\n");
}

/** A draft as plain data, its facts in one order. */
export function comparable({ facts, ...rest }: Draft): unknown {
  return { ...rest, facts: Object.fromEntries([...facts].sort(([a], [b]) => (a < b ? -1 : 1))) };
}

/** The same, where the order of the workshop's own data does not matter either: in a table it is that of the columns. */
export function comparableInTable({ own, ...draft }: Draft): unknown {
  return [comparable(draft), inOrder(own ?? [])];
}

function inOrder(own: readonly OwnEntry[]): unknown {
  return [...own]
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ key: name, written: value, entries }) => [name, value, entries ? inOrder(entries) : undefined]);
}
