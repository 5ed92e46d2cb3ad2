import { type ExtensionContext, window } from "vscode";
import { registerCommands } from "./commands.ts";
import { LanguageServer, type Launch } from "./language-server.ts";
import { registerServerDocuments } from "./server-documents.ts";
import { registerStatus } from "./status.ts";

/**
 * What both entry points share: everything the extension does, given a way to launch the server.
 *
 * A server that does not start is shown in the status and can be started again from there; everything else stays usable.
 */
export async function startExtension(context: ExtensionContext, launch: Launch): Promise<void> {
  const output = window.createOutputChannel("Ferrule", { log: true });
  const server = new LanguageServer(launch, output);
  context.subscriptions.push(
    output,
    server,
    registerStatus(server),
    registerServerDocuments(server),
    ...registerCommands(server, output),
  );
  await server.start();
}
