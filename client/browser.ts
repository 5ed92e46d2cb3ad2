/** The extension where a browser runs it. The server is a worker, and files are reached through the editor alone. */
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { startExtension } from "./extension.ts";

export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, "dist", "server", "worker.js").toString(true);
  await startExtension(context, (options) => {
    let worker: Worker | undefined;
    const launch = async (): Promise<Worker> => {
      worker?.terminate();
      worker = new Worker(script, { name: "Ferrule language server" });
      return worker;
    };
    return { client: new LanguageClient("ferrule", "Ferrule", launch, options), end: () => worker?.terminate() };
  });
}
