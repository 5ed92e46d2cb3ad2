import {
  type CancellationToken,
  type Connection,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentDiagnosticReport,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { diagnosticSource, diagnostics } from "../language-features/diagnostics.ts";
import type { Addresses } from "./addresses.ts";
import type { Client } from "./client-options.ts";
import type { OpenDocuments } from "./documents.ts";
import type { Sessions } from "./sessions.ts";

/** What the client is told of a file's findings, whichever way it is told. */
export class Findings {
  readonly #connection: Connection;
  readonly #client: Client;
  readonly #addresses: Addresses;
  readonly #documents: OpenDocuments;
  readonly #sessions: Sessions;
  /** Files that the client holds findings of. */
  readonly #told = new Set<string>();
  /** For a client that asks: the last answer of each file, and its number. */
  readonly #answers = new Map<string, { readonly id: string; readonly text: string }>();
  #lastAnswer = 0;
  #refresh: ReturnType<typeof setTimeout> | undefined;

  constructor(
    connection: Connection,
    client: Client,
    addresses: Addresses,
    documents: OpenDocuments,
    sessions: Sessions,
  ) {
    this.#connection = connection;
    this.#client = client;
    this.#addresses = addresses;
    this.#documents = documents;
    this.#sessions = sessions;
  }

  /** Sends the findings of a file; to a client that asks for them, the word that there may be others. */
  publish(uri: string): void {
    if (this.#client.pulls) {
      this.#askToRefresh();
      return;
    }
    const document = this.#documents.get(uri);
    const found = this.#of(uri);
    if (found.length === 0 && !document && !this.#told.has(uri)) return;
    if (found.length === 0) this.#told.delete(uri);
    else this.#told.add(uri);
    void this.#connection.sendDiagnostics({
      uri: this.#addresses.shown(uri),
      ...(document ? { version: document.version } : {}),
      diagnostics: found,
    });
  }

  /** A file went: nothing is to be said of it any more. */
  clear(uri: string): void {
    this.#answers.delete(uri);
    if (this.#client.pulls) {
      this.#askToRefresh();
      return;
    }
    if (!this.#told.delete(uri)) return;
    void this.#connection.sendDiagnostics({ uri: this.#addresses.shown(uri), diagnostics: [] });
  }

  /** The answer to a client that asks for one file; short when it has it already. */
  report(clientUri: string, previous: string | undefined): DocumentDiagnosticReport {
    const { id, items } = this.#answer(this.#addresses.own(clientUri), previous);
    return items ? { kind: "full", resultId: id, items } : { kind: "unchanged", resultId: id };
  }

  /** The answer to a client that asks for everything, worked out in slices so that others get theirs. */
  async reportAll(
    previous: readonly { readonly uri: string; readonly value: string }[],
    token: CancellationToken,
  ): Promise<WorkspaceDiagnosticReport> {
    const known = new Map(previous.map(({ uri, value }) => [this.#addresses.own(uri), value]));
    const items: WorkspaceDocumentDiagnosticReport[] = [];
    let turn = Date.now();
    const seen = new Set<string>();
    for (const session of this.#sessions.all) {
      for (const uri of session.files) {
        if (token.isCancellationRequested) return { items };
        if (Date.now() - turn > 8) {
          await new Promise((resolve) => setTimeout(resolve, 0));
          turn = Date.now();
        }
        seen.add(uri);
        const { id, items: found } = this.#answer(uri, known.get(uri));
        const common = {
          uri: this.#addresses.shown(uri),
          version: this.#documents.get(uri)?.version ?? null,
          resultId: id,
        };
        items.push(found ? { ...common, kind: "full", items: found } : { ...common, kind: "unchanged" });
      }
    }
    for (const uri of known.keys()) {
      if (!seen.has(uri)) items.push({ uri: this.#addresses.shown(uri), version: null, kind: "full", items: [] });
    }
    return { items };
  }

  #answer(uri: string, previous: string | undefined): { readonly id: string; readonly items?: Diagnostic[] } {
    const items = this.#of(uri);
    const text = JSON.stringify(items);
    const kept = this.#answers.get(uri);
    if (kept?.text === text) return kept.id === previous ? { id: kept.id } : { id: kept.id, items };
    const id = String(++this.#lastAnswer);
    this.#answers.set(uri, { id, text });
    return { id, items };
  }

  #of(uri: string): Diagnostic[] {
    const session = this.#sessions.of(uri);
    if (session.engine.file(uri)?.builtIn) return [];
    const refused = session.refused.get(uri);
    const start = { line: 0, character: 0 };
    const unread: Diagnostic[] =
      refused === undefined
        ? []
        : [
            {
              range: { start, end: start },
              severity: DiagnosticSeverity.Error,
              code: "language/unread-file",
              source: diagnosticSource,
              message: refused,
            },
          ];
    return [...unread, ...diagnostics(session.engine, uri, this.#client.features)];
  }

  #askToRefresh(): void {
    if (!this.#client.refreshesDiagnostics || this.#refresh !== undefined) return;
    this.#refresh = setTimeout(() => {
      this.#refresh = undefined;
      this.#connection.languages.diagnostics.refresh();
    }, 150);
  }
}
