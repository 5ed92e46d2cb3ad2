/** The extension where a browser runs it. The server is a worker, and files are reached through the editor alone. */
import { type ExtensionContext, Uri } from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { startExtension } from "./extension.ts";

export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, "dist", "server", "worker.js").toString(true);
  await startExtension(context, (options) => {
    let worker: Worker | undefined;
    const end = (): void => worker?.terminate();
    // Transports rather than the worker: an editor's own stand-in for `Worker` is not what the client takes for one.
    const launch = async (): Promise<MessageTransports> => {
      end();
      worker = new Worker(script, { name: "Ferrule language server" });
      return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    return { client: new LanguageClient("ferrule", "Ferrule", launch, options), end };
  });
}
