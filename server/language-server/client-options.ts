import { type ClientCapabilities, type InitializeParams, MarkupKind } from "vscode-languageserver";
import { type ClientOptions, markdownHelp, plainHelp } from "../language-features/shared/options.ts";
import type { DisplayUnits } from "../values/show.ts";
import type { InitializationOptions } from "./protocol.ts";

/** What the client said of itself when it connected, as far as the server goes by it. */
export interface Client {
  readonly features: ClientOptions;
  readonly pulls: boolean;
  readonly standardsAsFiles: boolean;
  /** Definitions with the range that they were asked from. */
  readonly links: boolean;
  readonly folders: readonly string[];
  readonly watchesFiles: boolean;
  readonly changesFolders: boolean;
  readonly refreshesDiagnostics: boolean;
  /** Units in which numbers are shown; absent for those that each workshop states. */
  readonly displayUnits?: DisplayUnits;
}

/** Reads what a client says of itself. Whatever it leaves out, or says in a form of its own, has its plainest meaning. */
export function readClient(parameters: InitializeParams, shownUri: (uri: string) => string): Client {
  const capabilities: ClientCapabilities = parameters.capabilities ?? {};
  const options = optionsOf(parameters.initializationOptions);
  const { textDocument, workspace } = capabilities;
  const item = textDocument?.completion?.completionItem;
  const hover = textDocument?.hover?.contentFormat ?? [];
  const isMarkdown = hover.includes(MarkupKind.Markdown);
  return {
    features: {
      snippets: item?.snippetSupport === true,
      insertReplace: item?.insertReplaceSupport === true,
      defaultEditRange: textDocument?.completion?.completionList?.itemDefaults?.includes("editRange") === true,
      ...(options.suggestCommand === undefined ? {} : { suggestCommand: options.suggestCommand }),
      symbolTree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
      documentChanges: workspace?.workspaceEdit?.documentChanges === true,
      snippetEdits: workspace?.workspaceEdit?.snippetEditSupport === true,
      explanationLinks: options.explanations === true,
      shownUri,
      helpText: isMarkdown ? markdownHelp : plainHelp,
    },
    pulls: options.diagnostics === "pull",
    standardsAsFiles: options.standards === "files",
    links: textDocument?.definition?.linkSupport === true,
    folders: foldersOf(parameters),
    watchesFiles: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    changesFolders: workspace?.workspaceFolders === true,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    ...(options.displayUnits ? { displayUnits: options.displayUnits } : {}),
  };
}

function foldersOf({ workspaceFolders, rootUri, rootPath }: InitializeParams): readonly string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  if (typeof rootUri === "string") return [rootUri];
  return typeof rootPath === "string" && rootPath.startsWith("/") ? [`file://${rootPath}`] : [];
}

/** Options come from a person's configuration: each is taken only in the form it should have. */
function optionsOf(given: unknown): InitializationOptions {
  if (typeof given !== "object" || given === null) return {};
  const { diagnostics, displayUnits, explanations, standards, suggestCommand } = given as Record<string, unknown>;
  return {
    ...(diagnostics === "pull" ? { diagnostics } : {}),
    ...(displayUnits === "metric" || displayUnits === "inch" || displayUnits === "both" ? { displayUnits } : {}),
    ...(explanations === true ? { explanations } : {}),
    ...(standards === "files" ? { standards } : {}),
    ...(typeof suggestCommand === "string" && suggestCommand !== "" ? { suggestCommand } : {}),
  };
}
