import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { BlockTree, FieldEntry, Span } from "../../grammar/tree.ts";
import type { Check, Verdict } from "../../server/checks/define.ts";
import { Engine } from "../../server/engine/engine.ts";
import { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { prelude } from "../../server/standards/index.ts";
import type { Field, Fields } from "../../server/vocabulary/define.ts";
import { buildFields, kindByName, slotByPath } from "../../server/vocabulary/index.ts";

/**
 * A check's two examples show one way to hold and one to fail. Here every fact in them is left out, stated to be none,
 * moved a little and exchanged for another of its kind, one at a time; what the check then says is kept, so that a
 * change of its behaviour anywhere near its examples is seen by whoever makes it.
 */
export interface Variation {
  /** "cogs of example.wide left out". */
  readonly name: string;
  readonly text: string;
  /** What was done to the example, and to which part or fact of it. */
  readonly subject: string;
  readonly edits: readonly Edit[];
  /** Set where a fact or part is left out whose omission leaves it unknown, by the vocabulary. */
  readonly isUnknownWithout?: boolean;
}

/** A stretch of the example, and what stands there instead. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly by: string;
}

/** An example with some of its text exchanged. */
export function varied(
  example: string,
  name: string,
  subject: string,
  edits: readonly Edit[],
  isUnknownWithout = false,
): Variation {
  return { name, subject, edits, text: edited(example, edits), ...(isUnknownWithout ? { isUnknownWithout } : {}) };
}

function edited(example: string, edits: readonly Edit[]): string {
  let text = example;
  for (const { start, end, by } of [...edits].sort((a, b) => b.start - a.start)) {
    text = `${text.slice(0, start)}${by}${text.slice(end)}`;
  }
  return text;
}

/** Two variations at once; nothing where they are of the same thing, or one takes away what the other changes. */
export function both(example: string, one: Variation, other: Variation): Variation | undefined {
  if (one.subject === other.subject) return undefined;
  const isApart = one.edits.every((first) =>
    other.edits.every(
      (second) => first.end <= second.start || second.end <= first.start || (isInsertion(first) && isInsertion(second)),
    ),
  );
  if (!isApart) return undefined;
  return varied(example, `${one.name}, and ${other.name}`, `${one.subject}, ${other.subject}`, [
    ...one.edits,
    ...other.edits,
  ]);
}

function isInsertion({ start, end }: Edit): boolean {
  return start === end;
}

/** The name of the example itself among its variations. */
export const asItStands = "as it stands";

/** All variations of one example, in the order of its text. */
export function variationsOf(example: string): readonly Variation[] {
  const found: Variation[] = [varied(example, asItStands, "", [])];
  for (const chunk of split(example)) {
    if (chunk.keyword !== "part" && chunk.keyword !== "build") continue;
    const text = example.slice(chunk.start, chunk.end);
    const tree = parseDeclaration(text);
    const owner = tree.header.name?.text ?? chunk.keyword;
    const kind = chunk.keyword === "part" ? kindByName(tree.header.kind?.text ?? "") : undefined;
    const put = (name: string, subject: string, span: Span, by: string, isUnknownWithout?: boolean): void => {
      const edit = { start: chunk.start + span.start, end: chunk.start + span.end, by };
      found.push(varied(example, name, subject, [edit], isUnknownWithout));
    };
    for (const { path, entry, field } of entriesOf(tree.block, "", kind?.fields)) {
      const what = `${path} of ${owner}`;
      put(`${what} left out`, what, entry.span, "", isUnknown(path, field));
      if (entry.value.tokens[0]?.text !== "none") put(`${what}: none`, what, valueAndBlock(entry), "none");
      for (const other of otherValues(text.slice(entry.value.span.start, entry.value.span.end), field)) {
        put(`${what}: ${other}`, what, entry.value.span, other);
      }
    }
  }
  const mirrored = mirror(example);
  if (mirrored !== example) {
    const whole = { start: 0, end: example.length, by: mirrored };
    found.push(varied(example, "front and rear exchanged", "the ends", [whole]));
  }
  return found;
}

interface VariedEntry {
  readonly path: string;
  readonly entry: FieldEntry;
  readonly field: Field | undefined;
}

export function entriesOf(
  block: BlockTree | undefined,
  prefix: string,
  fields: Fields | undefined,
): readonly VariedEntry[] {
  return (block?.entries ?? []).flatMap((entry): readonly VariedEntry[] => {
    if (entry.form === "waive") return [];
    const path = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
    const settings = slotByPath(path)?.settings;
    if (entry.form === "group") return entriesOf(entry.block, path, settings);
    const name = path.slice(path.lastIndexOf(".") + 1);
    const field = fields && Object.hasOwn(fields, name) ? fields[name] : undefined;
    return [{ path, entry, field }, ...entriesOf(entry.block, path, settings)];
  });
}

/** A value with the block behind it: nothing can be set of a part that is not there. */
function valueAndBlock({ value, block }: FieldEntry): Span {
  return { start: value.span.start, end: block?.span.end ?? value.span.end };
}

/** What the vocabulary says of leaving a fact, setting, field or slot out. */
function isUnknown(path: string, field: Field | undefined): boolean {
  const slot = slotByPath(path);
  if (slot) return slot.omitted === "unknown" && slot.noneWhen === undefined;
  const row = field ?? (Object.hasOwn(buildFields, path) ? (buildFields as Fields)[path] : undefined);
  return row !== undefined && (row.omitted ?? "unknown") === "unknown";
}

/** Most other words that are tried in the place of one. */
const mostWords = 3;

function otherValues(written: string, field: Field | undefined): readonly string[] {
  if (written === "yes") return ["no"];
  if (written === "no") return ["yes"];
  if (field?.type.type === "word") {
    return Object.keys(field.type.words)
      .filter((word) => word !== written)
      .slice(0, mostWords);
  }
  if (field?.type.type === "code" || field?.type.type === "codes") {
    const { family } = field.type;
    const codes = standardsOf(family).filter((code) => code !== written);
    return codes.slice(0, 2);
  }
  if (field === undefined || !/\d/.test(written)) return [];
  // The first number of the value a little less and more, and by a good part; the last of several too.
  const numbers = [...written.matchAll(/\d+(?:\.\d+)?/g)];
  const [first] = numbers;
  const last = numbers.at(-1);
  const moved = (match: RegExpExecArray | RegExpMatchArray | undefined, by: (value: number) => number): string[] => {
    if (match?.index === undefined) return [];
    const value = Number(by(Number(match[0])).toFixed(3));
    return value < 0 ? [] : [`${written.slice(0, match.index)}${value}${written.slice(match.index + match[0].length)}`];
  };
  const ways: readonly ((value: number) => number)[] = [
    (value) => value - 1,
    (value) => value + 1,
    (value) => Math.round(value * 0.8),
    (value) => Math.round(value * 1.25),
  ];
  const found = ways.flatMap((by) => moved(first, by));
  if (last !== first) found.push(...ways.slice(0, 2).flatMap((by) => moved(last, by)));
  return [...new Set(found)].filter((other) => other !== written);
}

/** The front of a bike said of its rear, and the other way round. */
function mirror(example: string): string {
  return example.replace(/\b(front|rear)(?=-(?:wheel|brake)\b)/g, (side) => (side === "front" ? "rear" : "front"));
}

const uri = "memory:///workshop/example.ferrule";
let shared: Engine | undefined;

function engineWith(text: string): Engine {
  if (!shared) {
    shared = new Engine({ today: "2026-11-25", prelude });
    shared.complete = true;
  }
  shared.update([{ uri, text }]);
  return shared;
}

export function standardsOf(family: string): readonly string[] {
  return [...engineWith("").workshop.declared("standard", family)].map(({ name }) => name).sort();
}

/** What a check says of each of its instances in a text, those that do not apply left out. */
export function answers(
  check: Check,
  text: string,
): readonly { readonly instance: string; readonly verdict: Verdict }[] {
  return evaluationOf(text)?.check(check).instances ?? [];
}

/** What the build `example` of a text comes to, whatever slips there are in it. */
export function evaluationOf(text: string): BuildEvaluation | undefined {
  const engine = engineWith(text);
  const build = engine.workshop.lookup("build example");
  return build && new BuildEvaluation(engine.assemble(build), engine.workshop);
}

/** A verdict on one line: outcome, and whatever a person or the editor goes by. */
export function verdictLine(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "holds":
      return `holds${verdict.margin === undefined ? "" : ` by ${Number(verdict.margin.toFixed(4))}`}: ${verdict.message}`;
    case "fails": {
      const severity = verdict.severity === undefined ? "" : ` as ${verdict.severity}`;
      const repairs = verdict.repairs.map((repair) => {
        const on = "slot" in repair ? ` ${repair.slot}` : "";
        const value = "value" in repair ? ` ${repair.value}` : "";
        return `${repair.kind}${on}${value}`;
      });
      const related = verdict.related.map(({ message }) => message);
      return [
        `fails${severity} at ${verdict.at.path}: ${verdict.message}`,
        ...related.map((message) => `      beside ${message}`),
        ...repairs.map((repair) => `      mends ${repair}`),
      ].join("\n");
    }
    case "unknown":
      return `unknown: ${verdict.missing.map(({ path }) => path).join(", ")}`;
    case "notApplicable":
      return `does not apply: ${verdict.reason}`;
  }
}
