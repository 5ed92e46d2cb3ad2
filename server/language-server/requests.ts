import { type CancellationToken, type Connection, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import type { Engine } from "../engine/engine.ts";
import type { Addresses } from "./addresses.ts";
import type { OpenDocuments } from "./documents.ts";
import type { Sessions } from "./sessions.ts";

/** The file that a request is about. */
export interface RequestedFile {
  readonly engine: Engine;
  /** The address used inside. */
  readonly uri: string;
  readonly text: string;
}

/** How long a request waits for the first look through the folders, in milliseconds; then it is answered as far as known. */
const longestWait = 4000;

/**
 * The one way in which requests are answered. Messages come in the order in which they were sent, so an answer given
 * at once is on the newest text. One that has to wait is refused when the text has moved on, and a failure is logged
 * and answered with nothing: the next request finds the server as it was.
 */
export class Requests {
  readonly #connection: Connection;
  readonly #addresses: Addresses;
  readonly #documents: OpenDocuments;
  readonly #sessions: Sessions;

  constructor(connection: Connection, addresses: Addresses, documents: OpenDocuments, sessions: Sessions) {
    this.#connection = connection;
    this.#addresses = addresses;
    this.#documents = documents;
    this.#sessions = sessions;
  }

  /** Answers from the syntax of one file. */
  inText<Answer>(
    name: string,
    document: { readonly uri: string },
    token: CancellationToken,
    work: (file: RequestedFile) => Answer,
  ): Answer | null | ResponseError<void> {
    if (token.isCancellationRequested) return cancelled();
    try {
      const file = this.#file(document.uri);
      return file ? file.engine.shown(() => work(file)) : null;
    } catch (error) {
      return this.#failed(name, error);
    }
  }

  /** Answers from the resolved model: waits for the first look through the folders, so that no name is missing. */
  async inModel<Answer>(
    name: string,
    document: { readonly uri: string },
    token: CancellationToken,
    work: (file: RequestedFile) => Answer,
  ): Promise<Answer | null | ResponseError<void>> {
    if (!this.#sessions.isSettled) {
      const uri = this.#addresses.own(document.uri);
      const version = this.#documents.get(uri)?.version;
      await this.#settle();
      if (this.#documents.get(uri)?.version !== version) return outdated();
    }
    return this.inText(name, document, token, work);
  }

  /** Answers from all workshops. */
  async inAll<Answer>(
    name: string,
    token: CancellationToken,
    work: () => Answer | Promise<Answer>,
  ): Promise<Answer | null | ResponseError<void>> {
    if (!this.#sessions.isSettled) await this.#settle();
    if (token.isCancellationRequested) return cancelled();
    try {
      return await work();
    } catch (error) {
      return this.#failed(name, error);
    }
  }

  /** Takes a notification in; what goes wrong is logged. */
  take(name: string, work: () => void | Promise<void>): void {
    try {
      Promise.resolve(work()).catch((error) => this.#failed(name, error));
    } catch (error) {
      this.#failed(name, error);
    }
  }

  #file(clientUri: string): RequestedFile | undefined {
    const uri = this.#addresses.own(clientUri);
    const { engine } = this.#sessions.of(uri);
    const text = engine.file(uri)?.text ?? this.#documents.get(uri)?.getText();
    return text === undefined ? undefined : { engine, uri, text };
  }

  async #settle(): Promise<void> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const limit = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, longestWait);
    });
    await Promise.race([this.#sessions.settled(), limit]);
    clearTimeout(timer);
  }

  #failed(name: string, error: unknown): null {
    const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
    this.#connection.console.error(`${name} failed, which is a fault of Ferrule and not of the file: ${said}`);
    return null;
  }
}

function cancelled(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, "The request was cancelled.");
}

function outdated(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.ContentModified, "The text has changed since the request was made.");
}
