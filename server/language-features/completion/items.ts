import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  InsertTextFormat,
  type Range,
} from "vscode-languageserver-types";
import type { ClientOptions } from "../shared/options.ts";

/** What an item can be asked about later, when a person looks at it. */
export type CompletionData =
  | {
      readonly of: "part";
      readonly uri: string;
      readonly name: string;
      readonly build?: string;
      readonly slot?: string;
    }
  | { readonly of: "standard"; readonly uri: string; readonly family: string; readonly code: string }
  | { readonly of: "check"; readonly uri: string; readonly code: string };

/** An item before it is put into the client's form. The order of the drafts is the order of the list. */
export interface Draft {
  readonly label: string;
  readonly kind: CompletionItemKind;
  /** What is inserted; the label when left out. */
  readonly insert?: string;
  /** What is inserted by a client that knows places to fill in (`$1`, `${1:text}`, `$0`). */
  readonly snippet?: string;
  /** Behind the label, such as a title. */
  readonly description?: string;
  /** One line beside the list. */
  readonly detail?: string;
  /** In Markdown. */
  readonly documentation?: string;
  /** What the typed letters are compared with, when not the label. */
  readonly filter?: string;
  /** True when the list should be opened again behind it, for a value. */
  readonly continues?: boolean;
  /** Sorted behind everything that is not. */
  readonly isLast?: boolean;
  readonly isPreselected?: boolean;
  readonly data?: CompletionData;
}

/** The list in the client's form: every item replaces the word that is being typed. */
export function completionList(
  drafts: readonly Draft[],
  ranges: { readonly insert: Range; readonly replace: Range },
  client: ClientOptions,
  isIncomplete = false,
): CompletionList {
  const shared = client.defaultEditRange;
  return {
    isIncomplete,
    ...(shared ? { itemDefaults: { editRange: client.insertReplace ? { ...ranges } : ranges.insert } } : {}),
    items: drafts.map((draft, index) => item(draft, index, ranges, client)),
  };
}

function item(
  draft: Draft,
  index: number,
  ranges: { readonly insert: Range; readonly replace: Range },
  client: ClientOptions,
): CompletionItem {
  const useSnippet = client.snippets && draft.snippet !== undefined;
  const newText = (useSnippet ? draft.snippet : draft.insert) ?? draft.label;
  const edit = client.insertReplace ? { newText, ...ranges } : { newText, range: ranges.insert };
  return {
    label: draft.label,
    kind: draft.kind,
    sortText: `${draft.isLast ? "1" : "0"}${String(index).padStart(6, "0")}`,
    ...(client.defaultEditRange ? { textEditText: newText } : { textEdit: edit }),
    ...(useSnippet ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    ...(draft.description === undefined ? {} : { labelDetails: { description: draft.description } }),
    ...(draft.detail === undefined ? {} : { detail: draft.detail }),
    ...(draft.documentation === undefined ? {} : { documentation: client.helpText(draft.documentation) }),
    ...(draft.filter === undefined ? {} : { filterText: draft.filter }),
    ...(draft.isPreselected ? { preselect: true } : {}),
    ...(draft.continues && client.suggestCommand !== undefined
      ? { command: { title: "Suggest a value", command: client.suggestCommand } }
      : {}),
    ...(draft.data === undefined ? {} : { data: draft.data }),
  };
}

/** A place to fill in, with a text in it, as snippets write it. */
export function place(number: number, text: string): string {
  return `\${${number}:${text.replace(/[\\$}]/g, "\\$&")}}`;
}

export { CompletionItemKind };
