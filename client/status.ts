import { type Disposable, LanguageStatusSeverity, languages } from "vscode";
import type { LanguageServer } from "./language-server.ts";

/** Says beside the language's name whether the server is at work, and offers to start it again. */
export function registerStatus(server: LanguageServer): Disposable {
  const item = languages.createLanguageStatusItem("ferrule.server", { language: "ferrule" });
  item.name = "Ferrule language server";
  item.command = { title: "Restart", command: "ferrule.restartServer", tooltip: "Restart the language server" };
  const show = (): void => {
    item.busy = server.state === "starting";
    item.severity = server.state === "failed" ? LanguageStatusSeverity.Error : LanguageStatusSeverity.Information;
    item.text = {
      starting: "Ferrule: language server starting",
      running: "Ferrule: language server running",
      failed: "Ferrule: language server not running",
    }[server.state];
  };
  show();
  const listener = server.onDidChangeState(show);
  return {
    dispose: () => {
      listener.dispose();
      item.dispose();
    },
  };
}
