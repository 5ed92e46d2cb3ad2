import {
  type Connection,
  type DiagnosticServerCancellationData,
  ErrorCodes,
  type InitializeResult,
  LSPErrorCodes,
  ResponseError,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { checkHover } from "../language-features/hover/checks.ts";
import { codeOfExplanation } from "../language-features/shared/options.ts";
import { Addresses } from "./addresses.ts";
import { readClient } from "./client-options.ts";
import { DiskWatches } from "./disk-watches.ts";
import { OpenDocuments } from "./documents.ts";
import { type Answering, answerFeatures, featureCapabilities } from "./feature-requests.ts";
import { Findings } from "./findings.ts";
import { fileExtension, type Host } from "./host.ts";
import {
  type ExplanationTextParameters,
  explanationTextRequest,
  type StandardTextParameters,
  standardsRequest,
  standardTextRequest,
} from "./protocol.ts";
import { Publisher } from "./publisher.ts";
import { Requests } from "./requests.ts";
import { localDay } from "./session.ts";
import { Sessions, type SessionsListener } from "./sessions.ts";
import { listStandards, standardText } from "./standard-documents.ts";
import { takeChanges, watchedOperations, watchFiles } from "./watching.ts";

/** What differs between the places where the server runs. */
export interface Surroundings {
  readonly host: Host;
  readonly version?: string;
  /** Copies the built-in standards to the disk, for editors that open nothing else: each address with its copy. */
  copyStandards?(): ReadonlyMap<string, string>;
  /** Calls back when pending messages have had their turn, and not before so many milliseconds. */
  later(callback: () => void, milliseconds: number): void;
}

/** Everything that exists once a client has connected. */
interface Running extends Answering {
  readonly findings: Findings;
  readonly publisher: Publisher;
}

/** Serves one client over a connection until it ends. */
export function serve(connection: Connection, surroundings: Surroundings): void {
  let running: Running | undefined;
  let isShutDown = false;
  const now = (): Running => {
    if (isShutDown) throw new ResponseError(ErrorCodes.InvalidRequest, "The server was shut down.");
    if (!running) throw new ResponseError(ErrorCodes.ServerNotInitialized, "The server waits for `initialize` first.");
    return running;
  };

  connection.onInitialize((parameters): InitializeResult => {
    if (running) throw new ResponseError(ErrorCodes.InvalidRequest, "The server is initialized already.");
    const addresses = new Addresses();
    const client = readClient(parameters, (uri) => addresses.shown(uri));
    if (client.standardsAsFiles) {
      for (const [own, copy] of surroundings.copyStandards?.() ?? []) addresses.pair(own, addresses.own(copy));
    }
    running = start(connection, surroundings, addresses, client);
    const { version } = surroundings;
    return {
      serverInfo: { name: "Ferrule", ...(version === undefined ? {} : { version }) },
      capabilities: {
        positionEncoding: "utf-16",
        textDocumentSync: {
          openClose: true,
          change: TextDocumentSyncKind.Incremental,
          save: { includeText: false },
        },
        ...featureCapabilities,
        // One way or the other, so that no finding is ever shown twice.
        ...(client.pulls
          ? {
              diagnosticProvider: {
                identifier: "ferrule",
                interFileDependencies: true,
                workspaceDiagnostics: true,
              },
            }
          : {}),
        workspace: {
          workspaceFolders: { supported: true, changeNotifications: true },
          fileOperations: { didRename: watchedOperations, didDelete: watchedOperations, didCreate: watchedOperations },
        },
      },
    };
  });

  connection.onInitialized(() => {
    const { client, requests, sessions, addresses } = now();
    requests.take("start", async () => {
      const scans = client.folders.map((folder) => sessions.addFolder(addresses.own(folder)));
      if (client.watchesFiles) await watchFiles(connection);
      if (client.changesFolders) {
        connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
          for (const { uri } of removed) sessions.removeFolder(addresses.own(uri));
          for (const { uri } of added) requests.take("folder", () => sessions.addFolder(addresses.own(uri)));
        });
      }
      await Promise.all(scans);
    });
  });

  takeTexts(connection, now);
  takeFileChanges(connection, now);
  answerFeatures(connection, now);

  connection.languages.diagnostics.on(async (parameters, token) => {
    const { requests, findings } = now();
    const { uri } = parameters.textDocument;
    const report = await requests.inModel("findings", { uri }, token, () =>
      findings.report(uri, parameters.previousResultId),
    );
    return report instanceof ResponseError ? askAgain() : (report ?? { kind: "full", items: [] });
  });
  connection.languages.diagnostics.onWorkspace(async (parameters, token) => {
    const { requests, findings } = now();
    const report = await requests.inAll("findings", token, () =>
      findings.reportAll(parameters.previousResultIds, token),
    );
    return report instanceof ResponseError ? askAgain() : (report ?? { items: [] });
  });

  connection.onRequest(standardsRequest, () => listStandards());
  connection.onRequest(standardTextRequest, ({ uri }: StandardTextParameters) =>
    typeof uri === "string" ? standardText(uri) : null,
  );
  connection.onRequest(explanationTextRequest, ({ uri }: ExplanationTextParameters) => {
    const code = typeof uri === "string" ? codeOfExplanation(uri) : undefined;
    return code === undefined ? null : checkHover(code);
  });
  connection.onShutdown(() => {
    isShutDown = true;
  });
  connection.listen();
}

function start(
  connection: Connection,
  { host, later }: Surroundings,
  addresses: Addresses,
  client: ReturnType<typeof readClient>,
): Running {
  const documents = new OpenDocuments(addresses);
  const failed = (what: string, error: unknown): void => {
    connection.console.warn(`${what}: ${error instanceof Error ? error.message : String(error)}`);
  };
  const listener: SessionsListener = {
    changed(_session, uris) {
      publisher.wait(uris);
    },
    gone(uris) {
      for (const uri of uris) {
        publisher.forget(uri);
        findings.clear(uri);
      }
    },
    lookedThrough(folder, isDeep) {
      watches?.follow(folder, isDeep);
    },
    left(folder) {
      watches?.leave(folder);
    },
    failed,
  };
  const sessions = new Sessions(host, listener, client.displayUnits);
  const watches = client.watchesFiles ? undefined : new DiskWatches(host, sessions, failed);
  const findings = new Findings(connection, client, addresses, documents, sessions);
  const requests = new Requests(connection, addresses, documents, sessions);
  const publisher = new Publisher({
    publish: (uri) => requests.take("findings", () => findings.publish(uri)),
    // One that asks has its findings worked out when it asks.
    prepare: (uri, until) => client.pulls || sessions.of(uri).engine.prepare(uri, () => performance.now() < until),
    isOpen: (uri) => documents.has(uri),
    later,
    now: () => performance.now(),
  });
  return { requests, sessions, documents, addresses, client, findings, publisher };
}

/** The texts that the editor has open. */
function takeTexts(connection: Connection, now: () => Running): void {
  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    const { requests, documents, sessions, publisher } = now();
    requests.take("open", async () => {
      refreshDay(now());
      const document = documents.open(uri, version, text);
      sessions.supersede(document.uri);
      const placed = sessions.addLone(document.uri);
      publisher.opened(document.uri, sessions.open(document.uri, document.getText()));
      await placed;
    });
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    const { requests, documents, sessions, publisher } = now();
    requests.take("edit", () => {
      const document = documents.change(uri, version, contentChanges);
      if (document) publisher.edited(document.uri, sessions.open(document.uri, document.getText()));
    });
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    const { requests, documents, sessions, addresses } = now();
    requests.take("close", () => {
      documents.close(uri);
      return sessions.close(addresses.own(uri));
    });
  });
  connection.onDidSaveTextDocument(() => {
    const { requests } = now();
    requests.take("save", () => refreshDay(now()));
  });
}

/** The answer to one that asked for findings of a text that has moved on. */
function askAgain(): ResponseError<DiagnosticServerCancellationData> {
  return new ResponseError(LSPErrorCodes.ServerCancelled, "The text has changed since.", { retriggerRequest: true });
}

/** What happens to files outside of the editor, or by its own hand without a text being opened. */
function takeFileChanges(connection: Connection, now: () => Running): void {
  const { workspace } = connection;
  connection.onDidChangeWatchedFiles((parameters) => {
    const { requests, sessions, addresses } = now();
    requests.take("changes", () => {
      refreshDay(now());
      return takeChanges(parameters, sessions, addresses);
    });
  });
  const take = (name: string, written: readonly string[], removed: readonly string[]): void => {
    const { requests, sessions, addresses } = now();
    requests.take(name, async () => {
      const own = written.map((uri) => addresses.own(uri));
      const files = own.filter((uri) => uri.endsWith(fileExtension));
      await sessions.changedOnDisk(
        files,
        removed.map((uri) => addresses.own(uri)),
      );
      for (const folder of own) if (!folder.endsWith(fileExtension)) await sessions.takeIn(folder);
    });
  };
  workspace.onDidRenameFiles(({ files }) => {
    take(
      "rename",
      files.map(({ newUri }) => newUri),
      files.map(({ oldUri }) => oldUri),
    );
  });
  workspace.onDidDeleteFiles(({ files }) =>
    take(
      "deletion",
      [],
      files.map(({ uri }) => uri),
    ),
  );
  workspace.onDidCreateFiles(({ files }) =>
    take(
      "creation",
      files.map(({ uri }) => uri),
      [],
    ),
  );
}

/** Waivers end at midnight: a server that runs for days follows the calendar. */
function refreshDay({ sessions, publisher }: Running): void {
  const today = localDay();
  for (const session of sessions.all) {
    if (session.engine.today === today) continue;
    session.engine.today = today;
    publisher.wait(session.files);
  }
}
