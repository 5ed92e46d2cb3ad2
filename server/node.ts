import { Console } from "node:console";
import { chmodSync, mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  type Connection,
  type ConnectionOptions,
  createConnection,
  LSPErrorCodes,
  ProposedFeatures,
} from "vscode-languageserver/node";
import { URI } from "vscode-uri";
import { ClientHost, MixedHost } from "./language-server/client-host.ts";
import { NodeHost } from "./language-server/node-host.ts";
import { serve } from "./language-server/server.ts";
import { prelude } from "./standards/index.ts";

/**
 * The language server in a process of its own: over standard input and output for any editor, or over the channel of
 * a process that an extension has forked.
 */

/** A request that was cancelled before its turn is answered at once and never begun. */
const options: ConnectionOptions = {
  connectionStrategy: {
    cancelUndispatched: (message) => ({
      jsonrpc: "2.0",
      id: "id" in message ? (message.id as number) : null,
      error: { code: LSPErrorCodes.RequestCancelled, message: "The request was cancelled." },
    }),
  },
};

/** Serves an editor on standard input and output. The process ends when the editor says so or goes away. */
export async function startStdio(version?: string): Promise<void> {
  // Standard output belongs to the protocol: nothing else may write there.
  globalThis.console = new Console(process.stderr, process.stderr);
  start(createConnection(ProposedFeatures.all, process.stdin, process.stdout, options), version);
}

function start(connection: Connection, version?: string): void {
  // Whatever goes wrong in one answer, the next request finds the server running.
  const report = (error: unknown): void => {
    const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
    connection.console.error(`A fault of Ferrule: ${said}`);
  };
  process.removeAllListeners("uncaughtException");
  process.on("uncaughtException", report);
  process.on("unhandledRejection", report);
  serve(connection, {
    host: new MixedHost(new NodeHost(), new ClientHost(connection)),
    ...(version === undefined ? {} : { version }),
    copyStandards,
    later: (callback, milliseconds) => {
      if (milliseconds > 0) setTimeout(callback, milliseconds);
      else setImmediate(callback);
    },
  });
}

/** Read-only copies of the built-in standards in a folder for temporary files, one set for each user. */
function copyStandards(): ReadonlyMap<string, string> {
  const copies = new Map<string, string>();
  try {
    const owner = typeof process.getuid === "function" ? `-${process.getuid()}` : "";
    const folder = join(tmpdir(), `ferrule-standards${owner}`);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    for (const { uri, text } of prelude) {
      const path = join(folder, uri.slice(uri.lastIndexOf("/") + 1));
      makeWritable(path);
      writeFileSync(path, text);
      chmodSync(path, 0o400);
      copies.set(uri, URI.file(path).toString());
    }
  } catch {
    // Without copies the standards keep their own addresses, which this editor may not be able to open.
  }
  return copies;
}

function makeWritable(path: string): void {
  try {
    chmodSync(path, 0o600);
  } catch {
    // It is not there yet.
  }
}

// Forked by an extension: the channel is there, and nobody calls.
if (process.argv.includes("--node-ipc") && process.send !== undefined) {
  start(createConnection(ProposedFeatures.all, options));
}
