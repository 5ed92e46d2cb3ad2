/**
 * The syntax tree of one declaration.
 *
 * A file is split into declarations first (split.ts) and each is parsed on its own, so every offset here counts
 * UTF-16 units from the start of the declaration's own text. A line inserted above a declaration therefore changes
 * nothing in its tree, and an unchanged declaration keeps its tree.
 */

/** A half-open range of UTF-16 offsets, from the start of the declaration's text. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** The words that begin a declaration when they stand first on a line and a word or text follows. */
export const declarationKeywords = ["workshop", "part", "build", "standard", "rule", "record"] as const;
export type DeclarationKeyword = (typeof declarationKeywords)[number];

/** What the lexer made of a run of characters inside a value or a header. */
export type ValueTokenKind = "word" | "text" | "comma" | "comparison" | "bracket";

/** One token of a value. The field's type gives it meaning later; here it only has a spelling and a place. */
export interface ValueToken {
  readonly kind: ValueTokenKind;
  /**
   * The characters as written; for text, the content between the quotes with `\"` and `\\` undone. Where a habit was
   * mended while reading (`3,5`, `≤`, an invisible character), what was meant, which need not be as long as its span.
   */
  readonly text: string;
  readonly span: Span;
}

/** A name written with dots, such as `cockpit.stem.spacers-below`. */
export interface PathTree {
  readonly segments: readonly { readonly text: string; readonly span: Span }[];
  readonly text: string;
  readonly span: Span;
}

/** Everything after the colon on one line, up to `{`, `;`, `}` or the line's end. */
export interface ValueTree {
  /** One list of tokens per alternate; `a or b` gives two, anything else gives one. Never empty of lists. */
  readonly alternates: readonly (readonly ValueToken[])[];
  /** All tokens in order, the `or` words included. */
  readonly tokens: readonly ValueToken[];
  readonly span: Span;
}

/** `key: value` with or without a block of settings after it. */
export interface FieldEntry {
  readonly form: "field";
  readonly path: PathTree;
  readonly value: ValueTree;
  readonly block?: BlockTree;
  /** Present for the entries of a rule that hold an expression (`when`, `require`, `let`). */
  readonly expression?: ExpressionTree;
  readonly span: Span;
}

/** `key { ... }`: an assembly, a group of facts, or (inside a variant) settings that amend an inherited slot. */
export interface GroupEntry {
  readonly form: "group";
  readonly path: PathTree;
  readonly block: BlockTree;
  readonly span: Span;
}

/** `waive CODE at PATH "reason" until DATE`. */
export interface WaiveEntry {
  readonly form: "waive";
  readonly code?: ValueToken;
  readonly at?: PathTree;
  readonly reason?: ValueToken;
  readonly until?: ValueToken;
  readonly span: Span;
}

export type EntryTree = FieldEntry | GroupEntry | WaiveEntry;

export interface BlockTree {
  readonly entries: readonly EntryTree[];
  /** From `{` to just after `}`, or to where the block was taken to end: the end of the text when it is still open there. */
  readonly span: Span;
  /**
   * Where a further entry would be written: after the last entry or comment, or just after `{` when there is neither.
   * A new entry is `\n` and its indentation there, or `; ` in a one-line block.
   */
  readonly insertAt: number;
  /** True when the block opens and closes on one line. */
  readonly oneLine: boolean;
}

/** An expression of a rule. An operand keeps its tokens: `12.5 kg` and `cockpit.stem` differ only by meaning. */
export type ExpressionTree =
  | { readonly form: "operand"; readonly tokens: readonly ValueToken[]; readonly span: Span }
  | {
      readonly form: "operation";
      readonly operator:
        | "or"
        | "and"
        | "is"
        | "is not"
        | "in"
        | "not in"
        | "<"
        | "<="
        | ">"
        | ">="
        | "="
        | "+"
        | "-"
        | "*"
        | "/"
        | "to";
      readonly operatorSpan: Span;
      readonly left: ExpressionTree;
      readonly right: ExpressionTree;
      readonly span: Span;
    }
  | { readonly form: "not"; readonly operand: ExpressionTree; readonly span: Span }
  | {
      readonly form: "call";
      readonly name: ValueToken;
      readonly arguments: readonly ExpressionTree[];
      readonly span: Span;
    };

/** The first line of a declaration. Which members are present depends on the keyword; an omitted one is a problem. */
export interface HeaderTree {
  readonly keyword: DeclarationKeyword;
  readonly keywordSpan: Span;
  /** The kind of a part (`cassette`) or the family of a standard (`axle`). */
  readonly kind?: ValueToken;
  /** The name; for a record, its serial as text. */
  readonly name?: ValueToken;
  /** The title in quotes. */
  readonly title?: ValueToken;
  /** The base after `from`. */
  readonly from?: ValueToken;
  /** The build after `of`, for a record. */
  readonly of?: ValueToken;
  readonly span: Span;
}

export interface DeclarationTree {
  readonly header: HeaderTree;
  /** The `///` lines above it, without their marks, joined by line feeds; empty when there are none. */
  readonly documentation: string;
  /** Absent when the header has no block. */
  readonly block?: BlockTree;
  readonly problems: readonly SyntaxProblem[];
  /** From the keyword to the end of its last line with content. */
  readonly span: Span;
}

/** A replacement of a stretch of the declaration's text. */
export interface TextChange {
  readonly span: Span;
  readonly text: string;
}

/** What stands where something else was expected. Nothing ever matches on the message; the code is stable. */
export interface SyntaxProblem {
  /** `language/...`, such as `language/missing-colon`. */
  readonly code: string;
  readonly message: string;
  readonly span: Span;
  readonly severity: "error" | "warning";
  readonly fix?: { readonly title: string; readonly changes: readonly TextChange[] };
}

/** One declaration as the splitter sees it, without parsing: enough to index a workshop's names. */
export interface Chunk {
  /** Offsets in the file. `start` includes the comment lines that belong to the declaration. */
  readonly start: number;
  readonly end: number;
  /** Absent for a stretch of text that belongs to no declaration (before the first one). */
  readonly keyword?: DeclarationKeyword;
  /** Second word of the header for parts and standards. */
  readonly kind?: string;
  readonly name?: string;
  readonly title?: string;
  readonly from?: string;
  readonly of?: string;
}
