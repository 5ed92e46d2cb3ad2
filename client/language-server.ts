import { Disposable, EventEmitter, type LogOutputChannel, window, workspace } from "vscode";
import {
  type BaseLanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
} from "vscode-languageclient";
import type { InitializationOptions } from "../server/language-server/protocol.ts";
import { answerFileRequests } from "./file-requests.ts";
import { documentSchemes, isWorkedOn } from "./schemes.ts";

/** A client with its server, not started yet, and what ends a server that does not end by itself. */
export interface Launched {
  readonly client: BaseLanguageClient;
  end(): void;
}

/** Makes a client of the kind that fits where the extension runs. */
export type Launch = (options: LanguageClientOptions) => Launched;

/** What this client adds to the protocol. */
function initializationOptions(): InitializationOptions {
  const units = workspace.getConfiguration("ferrule").get<string>("displayUnits");
  return {
    diagnostics: "push",
    explanations: true,
    standards: "virtual",
    suggestCommand: "editor.action.triggerSuggest",
    ...(units === "metric" || units === "inch" || units === "both" ? { displayUnits: units } : {}),
  };
}

export type ServerState = "starting" | "running" | "failed";

/** The language server as the rest of the extension sees it: one at a time, which can be started anew. */
export class LanguageServer implements Disposable {
  readonly #launch: Launch;
  readonly #output: LogOutputChannel;
  readonly #stateChanged = new EventEmitter<ServerState>();
  readonly #subscriptions: Disposable;
  #current: Launched | undefined;
  #schemes: readonly string[] = [];
  #state: ServerState = "starting";
  /** Starts and stops follow one another, whatever order they were asked for in. */
  #queue: Promise<void> = Promise.resolve();

  /** Fires with each new state. */
  readonly onDidChangeState = this.#stateChanged.event;

  constructor(launch: Launch, output: LogOutputChannel) {
    this.#launch = launch;
    this.#output = output;
    this.#subscriptions = Disposable.from(
      this.#stateChanged,
      workspace.onDidOpenTextDocument(({ languageId, uri }) => {
        if (languageId === "ferrule" && isWorkedOn(uri.scheme)) this.#cover(uri.scheme);
      }),
      // Units are told once, with the first message.
      workspace.onDidChangeConfiguration((change) => {
        if (this.#current !== undefined && change.affectsConfiguration("ferrule.displayUnits")) void this.restart();
      }),
      workspace.onDidChangeWorkspaceFolders(({ added }) => {
        for (const { uri } of added) this.#cover(uri.scheme);
      }),
    );
  }

  get state(): ServerState {
    return this.#state;
  }

  /** Starts the server. Never rejects: a failure becomes the state, and its cause stands in the output. */
  start(): Promise<void> {
    return this.#next(() => this.#start());
  }

  /** Ends the server, whatever it is doing, and starts a new one that reads everything again. */
  restart(): Promise<void> {
    return this.#next(async () => {
      await this.#stop();
      await this.#start();
    });
  }

  /**
   * Asks the server something that the protocol has no request for.
   * @throws when no server runs or it answers with an error
   */
  async request<Answer>(method: string, parameters: unknown): Promise<Answer> {
    await this.#queue;
    if (this.#current === undefined || this.#state !== "running")
      throw new Error("The language server is not running.");
    return this.#current.client.sendRequest<Answer>(method, parameters);
  }

  async dispose(): Promise<void> {
    this.#subscriptions.dispose();
    await this.#next(() => this.#stop());
  }

  #next(step: () => Promise<void>): Promise<void> {
    this.#queue = this.#queue.then(step);
    return this.#queue;
  }

  #setState(state: ServerState): void {
    if (state === this.#state) return;
    this.#state = state;
    this.#stateChanged.fire(state);
  }

  async #start(): Promise<void> {
    this.#schemes = documentSchemes();
    const launched = this.#launch({
      documentSelector: this.#schemes.map((scheme) => ({ scheme, language: "ferrule" })),
      outputChannel: this.#output,
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      diagnosticCollectionName: "ferrule",
      markdown: { isTrusted: false, supportHtml: false },
      initializationOptions: initializationOptions(),
    });
    const { client } = launched;
    this.#current = launched;
    this.#setState("starting");
    answerFileRequests(client);
    client.onDidChangeState(({ newState }) => {
      if (this.#current !== launched) return;
      if (newState === State.Running) this.#setState("running");
      else if (newState === State.Starting) this.#setState("starting");
      else this.#setState("failed");
    });
    try {
      await client.start();
    } catch (error) {
      this.#output.error(`The language server did not start: ${error instanceof Error ? error.message : error}`);
      this.#setState("failed");
    }
  }

  async #stop(): Promise<void> {
    const launched = this.#current;
    this.#current = undefined;
    if (launched === undefined) return;
    try {
      await launched.client.stop();
    } catch (error) {
      // One that hangs or has ended already cannot say goodbye.
      this.#output.warn(
        `The language server did not end in good order: ${error instanceof Error ? error.message : error}`,
      );
    }
    launched.end();
  }

  /** A client is told once which documents it is for; a file system that was not among them needs a new one. */
  #cover(scheme: string): void {
    if (this.#current === undefined || this.#schemes.includes(scheme)) return;
    this.#output.info(`Starting the language server again to include documents of ${scheme}:`);
    void this.restart();
  }
}

/** Tells of a failure that stopped what a person had asked for. */
export function showFailure(what: string, error: unknown): void {
  void window.showErrorMessage(`${what}: ${error instanceof Error ? error.message : String(error)}`);
}
