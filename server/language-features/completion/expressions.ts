import { teethSpellings, unitsOf } from "../../../grammar/units.ts";
import type { Engine } from "../../engine/engine.ts";
import { readStandard } from "../../model/standard.ts";
import { describeType, type ExpressionType, type Names } from "../../rules/expression-type.ts";
import { ruleFunctions } from "../../rules/functions.ts";
import { everyPath, type PathMeaning, pathMeaning } from "../../rules/paths.ts";
import { readRule } from "../../rules/read-rule.ts";
import { writeCode } from "../../values/code.ts";
import { usualUnit } from "../../values/field-units.ts";
import { slotPaths } from "../../vocabulary/index.ts";
import { code, paragraphs, plain } from "../shared/markdown.ts";
import type { Around } from "./context.ts";
import type { Piece } from "./cursor.ts";
import { CompletionItemKind, type Draft, place } from "./items.ts";

/** What an expression of a rule may go on with where it is being typed. */
export function expressionDrafts(
  engine: Engine,
  around: Around,
): { readonly drafts: Draft[]; readonly isCut: boolean } {
  const { cursor, mended } = around;
  const colon = cursor.before.findIndex(({ text }) => text === ":");
  const before = cursor.before.slice(colon + 1);
  const typed = cursor.word.text;
  const locals = new Map(
    [...readRule(mended, engine.workshop, "").locals].map(([name, local]) => [name, local.expression.type]),
  );
  const typeOf = (word: string): ExpressionType | undefined => locals.get(word) ?? pathMeaning(word)?.type;
  const last = before.at(-1);
  if (last && isNumber(last)) return { drafts: unitDrafts(before, typeOf), isCut: false };
  if (isNumber({ kind: "word", text: typed })) {
    const units = unitDrafts(before, typeOf);
    return { drafts: units.map((draft) => behindNumber(draft, typed)), isCut: false };
  }
  if (last && endsOperand(last)) return { drafts: operatorDrafts(), isCut: false };
  const beside = besideOf(before, typeOf);
  const names = beside?.form === "name" || beside?.form === "names" ? nameDrafts(engine, beside.names) : [];
  const paths = pathDrafts(typed, beside);
  return {
    drafts: [
      ...names,
      ...numberDrafts(beside),
      ...[...locals].map(
        ([name, type]): Draft => ({ label: name, kind: CompletionItemKind.Variable, detail: describeType(type) }),
      ),
      ...paths.drafts,
      ...(typed.includes(".") ? [] : [...functionDrafts(), ...wordDrafts(beside, last)]),
    ],
    isCut: paths.isCut,
  };
}

function isNumber({ kind, text }: Pick<Piece, "kind" | "text">): boolean {
  return kind === "word" && /^[-+−]?\d[\d.]*$/.test(text);
}

const operators = new Set(["and", "or", "not", "is", "in", "to", "+", "-", "*", "/"]);

/** Whether an operand is complete, so that an operator follows. */
function endsOperand({ kind, text }: Piece): boolean {
  if (kind === "mark") return text === ")";
  return !operators.has(text);
}

/** What the operand that is being typed is compared with, where it stands right behind `is`, `in`, a comparison or a comma. */
function besideOf(
  before: readonly Piece[],
  typeOf: (word: string) => ExpressionType | undefined,
): ExpressionType | undefined {
  for (let index = before.length - 1; index >= 0; index--) {
    const { kind, text } = before[index]!;
    if (kind === "word" && (text === "and" || text === "or")) return undefined;
    if (text === "(" && before[index - 1]?.text !== "in") return undefined;
    const type = kind === "word" ? typeOf(text) : undefined;
    if (type) return type;
  }
  return undefined;
}

function unitDrafts(before: readonly Piece[], typeOf: (word: string) => ExpressionType | undefined): Draft[] {
  const type = besideOf(before, typeOf);
  if (type?.form !== "number" && type?.form !== "numbers") return [];
  const { dimension, unit, word } = type.shown;
  if (dimension === undefined) return word === undefined ? [] : [unitDraft(word, word === "t" ? "teeth" : "")];
  const usual = usualUnit({ dimension, ...(unit === undefined ? {} : { unit }) });
  return [usual, ...unitsOf(dimension).filter((one) => one !== usual)].map(({ symbol, name }) =>
    unitDraft(symbol, name),
  );
}

function unitDraft(label: string, detail: string): Draft {
  return { label, kind: CompletionItemKind.Unit, detail };
}

function behindNumber(draft: Draft, number: string): Draft {
  const whole = `${number} ${draft.label}`;
  return { ...draft, insert: whole, filter: whole };
}

function operatorDrafts(): Draft[] {
  const rows: readonly (readonly [string, string])[] = [
    ["is", "the same"],
    ["is not", "not the same"],
    ["in", "one of several, inside a range, or an item of a list"],
    ["not in", "none of several, outside of a range"],
    ["<=", "at most"],
    [">=", "at least"],
    ["<", "less than"],
    [">", "more than"],
    ["and", "both are true"],
    ["or", "one of them is true"],
    ["to", "up to, both ends included"],
    ["+", "added up"],
    ["-", "less"],
    ["*", "times"],
    ["/", "divided by"],
  ];
  return rows.map(([label, detail]) => ({
    label,
    kind: CompletionItemKind.Operator,
    insert: `${label} `,
    detail,
    continues: true,
  }));
}

function nameDrafts(engine: Engine, names: Names): Draft[] {
  switch (names.of) {
    case "word":
      return Object.entries(names.words).map(([label, detail]) => ({
        label,
        kind: CompletionItemKind.EnumMember,
        detail,
      }));
    case "code":
      return [...engine.workshop.declared("standard", names.family)]
        .filter((declaration) => engine.workshop.lookup(declaration.key) === declaration)
        .map((declaration) => ({
          label: declaration.name,
          kind: CompletionItemKind.Interface,
          insert: writeCode(declaration.name),
          filter: [declaration.name, ...readStandard(declaration).aliases, declaration.title ?? ""].join(" "),
          ...(declaration.title === undefined ? {} : { description: declaration.title }),
        }));
    case "part":
      return names.kinds
        .flatMap((kind) => [...engine.workshop.declared("part", kind)])
        .sort((one, other) => (one.name < other.name ? -1 : 1))
        .map(({ name, title }) => ({
          label: name,
          kind: CompletionItemKind.Class,
          ...(title === undefined ? {} : { description: title }),
        }));
    case "slot":
      return slotPaths.map((label) => ({ label, kind: CompletionItemKind.Reference }));
    case "day":
      return [{ label: "today", kind: CompletionItemKind.Constant, detail: "the day on which the builds are checked" }];
    default:
      return [];
  }
}

/** An example with the unit that is wanted. */
function numberDrafts(beside: ExpressionType | undefined): Draft[] {
  if (beside?.form !== "number") return [];
  const { dimension, unit, word } = beside.shown;
  const symbol =
    dimension === undefined ? word : usualUnit({ dimension, ...(unit === undefined ? {} : { unit }) }).symbol;
  if (symbol === undefined || teethSpellings.includes(symbol)) return [];
  return [
    {
      label: `0 ${symbol}`,
      kind: CompletionItemKind.Value,
      insert: `0 ${symbol}`,
      snippet: `${place(1, "0")} ${symbol}`,
      detail: "a number of your own",
    },
  ];
}

/** How many paths one answer holds; further letters narrow the rest down. */
const mostPaths = 200;

/**
 * Paths one step at a time: what stands under what is typed already. Letters that begin no name are looked for in all
 * paths, so that `spacers` finds cockpit.stem.spacers-below.
 */
export function pathDrafts(
  typed: string,
  beside: ExpressionType | undefined,
): { readonly drafts: Draft[]; readonly isCut: boolean } {
  const dot = typed.lastIndexOf(".");
  const prefix = dot < 0 ? "" : typed.slice(0, dot + 1);
  const steps = new Map<string, boolean>();
  for (const path of everyPath()) {
    if (!path.startsWith(prefix)) continue;
    const next = path.indexOf(".", prefix.length);
    const step = next < 0 ? path : path.slice(0, next);
    steps.set(step, (steps.get(step) ?? false) || next >= 0);
  }
  const drafts: Draft[] = [];
  for (const [step, goesOn] of steps) {
    const meaning = pathMeaning(step);
    if (meaning) drafts.push(pathDraft(meaning, beside));
    if (goesOn) drafts.push(groupDraft(step));
  }
  const begins = [...steps.keys()].some((step) => step.startsWith(typed));
  const found = typed.length >= 3 && !begins ? everyPath().filter((path) => path.includes(typed)) : [];
  const more = found.filter((path) => !steps.has(path)).flatMap((path) => pathMeaning(path) ?? []);
  return {
    drafts: [...drafts, ...more.slice(0, mostPaths).map((meaning) => pathDraft(meaning, beside))],
    // What is found by its middle depends on every letter.
    isCut: typed === "" || more.length > 0 || !begins,
  };
}

function groupDraft(step: string): Draft {
  return {
    label: `${step}.`,
    kind: CompletionItemKind.Module,
    insert: `${step}.`,
    detail: "what stands under it",
    continues: true,
  };
}

/** What cannot be compared with what stands on the other side comes last. */
function pathDraft({ path, type, what, description }: PathMeaning, beside: ExpressionType | undefined): Draft {
  const isOther = beside !== undefined && describeType(beside) !== describeType(type);
  return {
    label: path,
    kind: what === "slot" ? CompletionItemKind.Field : CompletionItemKind.Property,
    detail: description,
    documentation: paragraphs(plain(description), `${code(path)} is ${plain(describeType(type))}.`),
    ...(isOther ? { isLast: true } : {}),
  };
}

function functionDrafts(): Draft[] {
  return ruleFunctions.map(({ name, written, description }) => ({
    label: name,
    kind: CompletionItemKind.Function,
    insert: `${name}(`,
    snippet: `${name}($1)`,
    description: written,
    detail: description,
  }));
}

function wordDrafts(beside: ExpressionType | undefined, last: Piece | undefined): Draft[] {
  const words: Draft[] = [];
  if (last?.text === "is" || last?.text === "not" || last?.text === "in") {
    words.push({ label: "none", kind: CompletionItemKind.Keyword, detail: "there is none" });
  }
  if (beside === undefined && last?.text !== "not") {
    words.push({
      label: "not",
      kind: CompletionItemKind.Keyword,
      insert: "not ",
      detail: "the opposite",
      continues: true,
    });
  }
  if (beside?.form === "truth") {
    words.push({ label: "yes", kind: CompletionItemKind.Value }, { label: "no", kind: CompletionItemKind.Value });
  }
  return words;
}
