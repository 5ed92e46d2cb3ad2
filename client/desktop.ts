/** The extension where Node runs it: on the desktop, on a remote machine, in a container. The server is a process of its own. */
import type { ExtensionContext } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { startExtension } from "./extension.ts";

export async function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath("dist/server/node.js");
  await startExtension(context, (options) => {
    const client = new LanguageClient(
      "ferrule",
      "Ferrule",
      {
        run: { module, transport: TransportKind.ipc },
        debug: { module, transport: TransportKind.ipc, options: { execArgv: ["--nolazy", "--inspect=6009"] } },
      },
      options,
    );
    // A process that does not end when it is asked to is ended by the client itself.
    return { client, end: () => {} };
  });
}
