import { commands, type Disposable, type LogOutputChannel, Position, Range, Uri, window, workspace } from "vscode";
import { type ListedStandard, standardsRequest } from "../server/language-server/protocol.ts";
import { type LanguageServer, showFailure } from "./language-server.ts";

/** Registers the commands of package.json, each under its name there. */
export function registerCommands(server: LanguageServer, output: LogOutputChannel): Disposable[] {
  return [
    commands.registerCommand("ferrule.restartServer", () => server.restart()),
    commands.registerCommand("ferrule.showOutput", () => output.show()),
    commands.registerCommand("ferrule.newFile", newFile),
    commands.registerCommand("ferrule.openStandard", () => openStandard(server)),
  ];
}

async function newFile(): Promise<void> {
  await window.showTextDocument(await workspace.openTextDocument({ language: "ferrule" }));
}

/** Lets a person find one of the standards that come with the server and opens it. */
async function openStandard(server: LanguageServer): Promise<void> {
  try {
    const choices = server.request<readonly ListedStandard[]>(standardsRequest, {}).then((standards) =>
      standards.map((standard) => ({
        label: standard.code,
        description: standard.family,
        detail: standard.title ?? "",
        standard,
      })),
    );
    const chosen = await window.showQuickPick(choices, {
      title: "Built-in standards",
      placeHolder: "A code, a family or a dimension: 12x148, freehub-body, 31.8 mm",
      matchOnDescription: true,
      matchOnDetail: true,
    });
    if (chosen === undefined) return;
    const { uri, line } = chosen.standard;
    const at = new Position(line, 0);
    await window.showTextDocument(Uri.parse(uri), { selection: new Range(at, at) });
  } catch (error) {
    showFailure("The standards cannot be shown", error);
  }
}
