import {
  type CodeActionParams,
  type Connection,
  LSPErrorCodes,
  ResponseError,
  type SemanticTokens,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { codeActions, fixAllKind, workspaceEdit } from "../language-features/code-actions.ts";
import type { CompletionData } from "../language-features/completion/items.ts";
import { completion, completionCharacters, resolveCompletion } from "../language-features/completion.ts";
import { definition } from "../language-features/definition.ts";
import { documentHighlights } from "../language-features/document-highlights.ts";
import { documentSymbols, flatSymbols } from "../language-features/document-symbols.ts";
import { foldingRanges } from "../language-features/folding-ranges.ts";
import { formatDocument, formatLines, formatTyped, formattingCharacters } from "../language-features/formatting.ts";
import { hover } from "../language-features/hover.ts";
import { inlayHints } from "../language-features/inlay-hints.ts";
import { references } from "../language-features/references.ts";
import { prepareRename, rename } from "../language-features/rename.ts";
import { selectionRanges } from "../language-features/selection-ranges.ts";
import { semanticTokens, semanticTokensLegend } from "../language-features/semantic-tokens.ts";
import { workspaceSymbols } from "../language-features/workspace-symbols.ts";
import type { Addresses } from "./addresses.ts";
import type { Client } from "./client-options.ts";
import type { OpenDocuments } from "./documents.ts";
import type { Requests } from "./requests.ts";
import type { Sessions } from "./sessions.ts";

/** What the server can be asked, as the client is told when it connects. */
export const featureCapabilities = {
  hoverProvider: true,
  completionProvider: { triggerCharacters: [...completionCharacters], resolveProvider: true },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  documentSymbolProvider: true,
  workspaceSymbolProvider: true,
  codeActionProvider: { codeActionKinds: ["quickfix", "refactor.rewrite", fixAllKind] },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: {
    firstTriggerCharacter: formattingCharacters[0],
    moreTriggerCharacter: formattingCharacters.slice(1),
  },
  renameProvider: { prepareProvider: true },
  foldingRangeProvider: true,
  selectionRangeProvider: true,
  inlayHintProvider: true,
  semanticTokensProvider: { legend: semanticTokensLegend, full: true, range: true },
};

/** Everything that answers need. */
export interface Answering {
  readonly requests: Requests;
  readonly sessions: Sessions;
  readonly documents: OpenDocuments;
  readonly addresses: Addresses;
  readonly client: Client;
}

/** Connects every feature to its request. Each answer comes from one function that knows no protocol. */
export function answerFeatures(connection: Connection, answering: () => Answering): void {
  const versionOf = (uri: string): number | null => answering().documents.get(uri)?.version ?? null;
  const noTokens: SemanticTokens = { data: [] };

  connection.onHover((parameters, token) => {
    const { requests, client } = answering();
    return requests.inModel("hover", parameters.textDocument, token, ({ engine, uri }) =>
      hover(engine, uri, parameters.position, client.features),
    );
  });

  connection.onCompletion((parameters, token) => {
    const { requests, client } = answering();
    return requests.inModel("completion", parameters.textDocument, token, ({ engine, uri }) =>
      completion(engine, uri, parameters.position, client.features),
    );
  });
  connection.onCompletionResolve(async (item, token) => {
    const { requests, client } = answering();
    const data = item.data as CompletionData | undefined;
    if (!data) return item;
    const resolved = await requests.inModel("completion", { uri: data.uri }, token, ({ engine }) =>
      resolveCompletion(engine, item, client.features),
    );
    return resolved ?? item;
  });

  connection.onDefinition(async (parameters, token) => {
    const { requests, client } = answering();
    const found = await requests.inModel("definition", parameters.textDocument, token, ({ engine, uri }) =>
      definition(engine, uri, parameters.position, client.features),
    );
    if (!Array.isArray(found) || client.links) return found;
    return found.map(({ targetUri, targetSelectionRange }) => ({ uri: targetUri, range: targetSelectionRange }));
  });

  connection.onReferences((parameters, token) => {
    const { requests, client } = answering();
    return requests.inModel("references", parameters.textDocument, token, ({ engine, uri }) =>
      references(engine, uri, parameters.position, parameters.context, client.features),
    );
  });

  connection.onDocumentHighlight((parameters, token) =>
    answering().requests.inModel("highlights", parameters.textDocument, token, ({ engine, uri }) =>
      documentHighlights(engine, uri, parameters.position),
    ),
  );

  connection.onDocumentSymbol((parameters, token) => {
    const { requests, client } = answering();
    return requests.inText("symbols", parameters.textDocument, token, ({ engine, uri }) =>
      client.features.symbolTree ? documentSymbols(engine, uri) : flatSymbols(engine, uri, parameters.textDocument.uri),
    );
  });

  connection.onWorkspaceSymbol((parameters, token) => {
    const { requests, sessions, client } = answering();
    const engines = () => sessions.all.map(({ engine }) => engine);
    return requests.inAll("symbols", token, () => workspaceSymbols(engines(), parameters.query, client.features));
  });

  connection.onCodeAction((parameters, token) => {
    const { requests, client } = answering();
    // A client in a hurry leaves the context out.
    const { diagnostics = [], only } = (parameters as Partial<CodeActionParams>).context ?? {};
    const request = { range: parameters.range, diagnostics, ...(only === undefined ? {} : { only }) };
    return requests.inModel("code actions", parameters.textDocument, token, ({ engine, uri }) =>
      codeActions(engine, uri, request, client.features, versionOf),
    );
  });

  connection.onDocumentFormatting((parameters, token) =>
    answering().requests.inText("formatting", parameters.textDocument, token, ({ text }) => formatDocument(text)),
  );
  connection.onDocumentRangeFormatting((parameters, token) =>
    answering().requests.inText("formatting", parameters.textDocument, token, ({ text }) =>
      formatLines(text, parameters.range),
    ),
  );
  connection.onDocumentOnTypeFormatting((parameters, token) =>
    answering().requests.inText("formatting", parameters.textDocument, token, ({ text }) =>
      formatTyped(text, parameters.position, parameters.ch),
    ),
  );

  connection.onPrepareRename(async (parameters, token) => {
    const target = await answering().requests.inModel("rename", parameters.textDocument, token, ({ engine, uri }) =>
      prepareRename(engine, uri, parameters.position),
    );
    if (!target || target instanceof ResponseError) return target ?? null;
    return target.state === "ready" ? { range: target.range, placeholder: target.placeholder } : refusal(target.reason);
  });
  connection.onRenameRequest(async (parameters, token) => {
    const { requests, client } = answering();
    const result = await requests.inModel("rename", parameters.textDocument, token, ({ engine, uri }) =>
      rename(engine, uri, parameters.position, parameters.newName),
    );
    if (!result || result instanceof ResponseError) return result;
    if (result.state === "refused") return refusal(result.reason);
    const edits = [...result.edits].flatMap(([uri, own]) => own.map(({ range, newText }) => ({ uri, range, newText })));
    const edit: WorkspaceEdit = workspaceEdit({ edits, unfinished: false }, client.features, versionOf);
    return edit;
  });

  connection.onFoldingRanges((parameters, token) =>
    answering().requests.inText("folding", parameters.textDocument, token, ({ engine, uri }) =>
      foldingRanges(engine, uri),
    ),
  );
  connection.onSelectionRanges((parameters, token) =>
    answering().requests.inText("selection", parameters.textDocument, token, ({ engine, uri }) =>
      selectionRanges(engine, uri, parameters.positions),
    ),
  );
  connection.languages.inlayHint.on((parameters, token) => {
    const { requests, client } = answering();
    return requests.inModel("inlay hints", parameters.textDocument, token, ({ engine, uri }) =>
      inlayHints(engine, uri, parameters.range, client.features),
    );
  });

  connection.languages.semanticTokens.on((parameters, token) => {
    const answer = answering().requests.inText("semantic tokens", parameters.textDocument, token, ({ engine, uri }) =>
      semanticTokens(engine, uri),
    );
    return answer ?? noTokens;
  });
  connection.languages.semanticTokens.onRange((parameters, token) => {
    const answer = answering().requests.inText("semantic tokens", parameters.textDocument, token, ({ engine, uri }) =>
      semanticTokens(engine, uri, parameters.range),
    );
    return answer ?? noTokens;
  });
}

function refusal(reason: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, reason);
}
