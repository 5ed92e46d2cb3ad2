import { type MarkupContent, MarkupKind } from "vscode-languageserver-types";
import { withoutMarks } from "./markdown.ts";

/**
 * What a client can show and take, as far as it changes what a feature answers. The plainest client is the default;
 * whatever a client says of itself only adds to it.
 */
export interface ClientOptions {
  /** Items that are inserted with places to fill in. */
  readonly snippets: boolean;
  /** Completion items that insert over one range and replace over another. */
  readonly insertReplace: boolean;
  /** One range to edit for a whole list of completions. */
  readonly defaultEditRange: boolean;
  /** A command of the client that opens the list of completions again, after a field's name was inserted. */
  readonly suggestCommand?: string;
  /** Symbols of a document as a tree. */
  readonly symbolTree: boolean;
  /** Edits by document and version. */
  readonly documentChanges: boolean;
  /** Edits with places to fill in. */
  readonly snippetEdits: boolean;
  /** Where a check's code leads to, for clients that can open it. */
  readonly explanationLinks: boolean;
  /** The address under which the client can open a file: built-in standards may have another one there. */
  shownUri(uri: string): string;
  /** Help written in Markdown, in a form the client shows. */
  helpText(markdown: string): MarkupContent;
}

export function markdownHelp(value: string): MarkupContent {
  return { kind: MarkupKind.Markdown, value };
}

export function plainHelp(markdown: string): MarkupContent {
  return { kind: MarkupKind.PlainText, value: withoutMarks(markdown) };
}

export const plainClient: ClientOptions = {
  snippets: false,
  insertReplace: false,
  defaultEditRange: false,
  symbolTree: false,
  documentChanges: false,
  snippetEdits: false,
  explanationLinks: false,
  shownUri: (uri) => uri,
  helpText: plainHelp,
};

/** Where the explanation of a check is read from. */
export const explanationScheme = "ferrule-explanation";

/** The address of a check's explanation, as a document to read. */
export function explanationUri(code: string): string {
  return `${explanationScheme}:/${code}.md`;
}

/** The code that an explanation's address stands for; `undefined` for any other address. */
export function codeOfExplanation(uri: string): string | undefined {
  const start = `${explanationScheme}:/`;
  return uri.startsWith(start) && uri.endsWith(".md") ? uri.slice(start.length, -".md".length) : undefined;
}
