import type { Range, SemanticTokens, SemanticTokensLegend } from "vscode-languageserver-types";
import { lex } from "../../grammar/lexer.ts";
import type { BlockTree, EntryTree, FieldEntry, Span, ValueToken, WaiveEntry } from "../../grammar/tree.ts";
import { teethSpellings, unitBySpelling } from "../../grammar/units.ts";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import { functionByName } from "../rules/functions.ts";
import { pathMeaning } from "../rules/paths.ts";
import type { FieldType } from "../values/types.ts";
import { type Meaning, meaningOfPath } from "./shared/meaning.ts";

const tokenTypes = [
  "comment",
  "keyword",
  "type",
  "class",
  "namespace",
  "property",
  "variable",
  "parameter",
  "enumMember",
  "function",
  "number",
  "unit",
  "string",
  "operator",
] as const;
type TokenType = (typeof tokenTypes)[number];

const tokenModifiers = ["declaration", "documentation", "defaultLibrary", "deprecated"] as const;
type TokenModifier = (typeof tokenModifiers)[number];

/**
 * What the numbers in an answer stand for. `unit` is a type of our own (of `keyword`); codes of standards are
 * `parameter`, names of slots `variable`, checks `function`, names of the vocabulary `defaultLibrary`.
 */
export const semanticTokensLegend: SemanticTokensLegend = {
  tokenTypes: [...tokenTypes],
  tokenModifiers: [...tokenModifiers],
};

interface PlacedToken {
  readonly span: Span;
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

/** The meaning of the words of a file, or of those in a range. Needs the syntax and the vocabulary, not the model. */
export function semanticTokens(engine: Engine, uri: string, range?: Range): SemanticTokens {
  const file = engine.file(uri);
  if (!file) return { data: [] };
  const lines = engine.lines(uri);
  const from = range ? lines.offset(range.start) : 0;
  const to = range ? lines.offset(range.end) : file.text.length;
  const data: number[] = [];
  let last = { line: 0, character: 0 };
  for (const declaration of file.declarations) {
    const { start, text } = declaration;
    if (start + text.length < from || start > to) continue;
    for (const { span, type, modifiers } of tokensOf(declaration)) {
      if (start + span.end < from || start + span.start > to) continue;
      const position = lines.position(start + span.start);
      const bits = modifiers.reduce((all, modifier) => all | (1 << tokenModifiers.indexOf(modifier)), 0);
      data.push(
        position.line - last.line,
        position.line === last.line ? position.character - last.character : position.character,
        span.end - span.start,
        tokenTypes.indexOf(type),
        bits,
      );
      last = position;
    }
  }
  return { data };
}

function tokensOf(declaration: Declaration): PlacedToken[] {
  const collector = new Collector(declaration);
  collector.collect();
  return collector.tokens.sort((a, b) => a.span.start - b.span.start);
}

class Collector {
  readonly tokens: PlacedToken[] = [];
  readonly #declaration: Declaration;

  constructor(declaration: Declaration) {
    this.#declaration = declaration;
  }

  collect(): void {
    const { header, block } = this.#declaration.tree;
    for (const { text, span } of lex(this.#declaration.text).comments) {
      this.#add(span, "comment", /^\/\/\/(?!\/)/.test(text) ? ["documentation"] : []);
    }
    this.#add(header.keywordSpan, "keyword");
    if (header.kind) this.#add(header.kind.span, "type", ["defaultLibrary"]);
    if (header.name) this.#add(header.name.span, header.name.kind === "text" ? "string" : "class", ["declaration"]);
    if (header.title) this.#add(header.title.span, "string");
    for (const [word, token] of [
      ["from", header.from],
      ["of", header.of],
    ] as const) {
      if (!token) continue;
      this.#wordBefore(word, token.span.start);
      this.#add(token.span, "class");
    }
    if (block) this.#block(block, "");
  }

  #add({ start, end }: Span, type: TokenType, modifiers: readonly TokenModifier[] = []): void {
    if (end > start) this.tokens.push({ span: { start, end }, type, modifiers });
  }

  /** A word of the language that stands before something else, such as `from` before a base. */
  #wordBefore(word: string, end: number): void {
    const at = this.#declaration.text.lastIndexOf(word, end - 1);
    if (at >= 0) this.#add({ start: at, end: at + word.length }, "keyword");
  }

  #block(block: BlockTree, prefix: string): void {
    for (const entry of block.entries) this.#entry(entry, prefix);
  }

  #entry(entry: EntryTree, prefix: string): void {
    if (entry.form === "waive") {
      this.#waive(entry);
      return;
    }
    let path = prefix;
    let meaning: Meaning | undefined;
    const isOwnData = prefix === "own" || prefix.endsWith(".own");
    for (const segment of entry.path.segments) {
      path = path === "" ? segment.text : `${path}.${segment.text}`;
      meaning = isOwnData ? undefined : meaningOfPath(this.#declaration, path, segment.span);
      this.#key(segment, meaning);
    }
    if (entry.form === "field") this.#value(entry, meaning);
    if (entry.block) this.#block(entry.block, isOwnData ? prefix : path);
  }

  #key({ text, span }: { readonly text: string; readonly span: Span }, meaning: Meaning | undefined): void {
    switch (meaning?.what) {
      case "group":
        this.#add(span, text === "remove" || text === "own" ? "keyword" : "namespace", ["defaultLibrary"]);
        break;
      case "slot":
        this.#add(span, "variable", ["defaultLibrary"]);
        break;
      case "field":
        this.#add(span, "property", meaning.at.name === text ? ["defaultLibrary"] : ["defaultLibrary", "deprecated"]);
        break;
      case "rule-entry":
        this.#add(span, "keyword");
        break;
      default:
        this.#add(span, "property");
    }
  }

  #value(entry: FieldEntry, meaning: Meaning | undefined): void {
    const type = meaning?.what === "field" ? meaning.at.field.type : undefined;
    for (const token of entry.value.tokens) {
      const found = meaning?.what === "slot" ? referenceType(token) : valueType(token, type, entry);
      if (found) this.#add(token.span, found);
    }
  }

  #waive(entry: WaiveEntry): void {
    this.#add({ start: entry.span.start, end: entry.span.start + "waive".length }, "keyword");
    if (entry.code) this.#add(entry.code.span, "function");
    if (entry.at) {
      this.#wordBefore("at", entry.at.span.start);
      for (const segment of entry.at.segments) this.#add(segment.span, "variable");
    }
    if (entry.reason) this.#add(entry.reason.span, "string");
    if (entry.until) {
      this.#wordBefore("until", entry.until.span.start);
      this.#add(entry.until.span, "number");
    }
  }
}

function referenceType({ kind, text }: ValueToken): TokenType | undefined {
  if (kind === "text") return "string";
  if (kind !== "word") return undefined;
  return text === "none" || text === "or" ? "keyword" : "class";
}

const wordsOfExpressions = new Set(["and", "or", "not", "is", "in", "to"]);

function valueType(token: ValueToken, type: FieldType | undefined, entry: FieldEntry): TokenType | undefined {
  if (token.kind === "text") return "string";
  if (token.kind === "comparison") return "operator";
  if (token.kind !== "word") return undefined;
  const { text } = token;
  if (text === "none") return "keyword";
  if (entry.expression && wordsOfExpressions.has(text)) return "keyword";
  if (entry.expression && functionByName(text)) return "function";
  if (entry.expression && pathMeaning(text)) return "variable";
  switch (type?.type) {
    case "word":
    case "words":
    case "yes-no":
      return "enumMember";
    case "code":
    case "codes":
      return "parameter";
    case "part":
      return "class";
    case "slot":
      return "variable";
    case "text":
      return "string";
    case "colour":
      return "enumMember";
    default:
      return plainType(text);
  }
}

function plainType(text: string): TokenType | undefined {
  if (/^[-+−±]?\d/.test(text)) return "number";
  if (unitBySpelling(text) || teethSpellings.includes(text) || /^[A-Z]{3}$/.test(text)) return "unit";
  if (/^(?:[-+*/±−–]|\+\/-|to)$/.test(text)) return "operator";
  return /^[a-z][\w-]*(?:\.[\w-]+)+$/.test(text) ? "variable" : undefined;
}
