import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from "vscode-languageserver/browser";
import { ClientHost } from "./language-server/client-host.ts";
import { serve } from "./language-server/server.ts";

/** The language server in a worker of a browser editor: every file is reached by way of the client. */

/** What a worker's own scope offers, as far as it is used here; the project's types are those of Node. */
const scope = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(scope),
  new BrowserMessageWriter(scope),
);

serve(connection, {
  host: new ClientHost(connection),
  later: (callback, milliseconds) => setTimeout(callback, milliseconds),
});
