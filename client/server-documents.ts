import { Disposable, type TextDocumentContentProvider, type Uri, workspace } from "vscode";
import { explanationTextRequest, standardTextRequest } from "../server/language-server/protocol.ts";
import type { LanguageServer } from "./language-server.ts";
import { explanationScheme, standardScheme } from "./schemes.ts";

/**
 * Shows what the server holds as documents to read: the standards that come with it, where "go to definition" of a code
 * leads, and the explanations of checks, where the code of a finding leads.
 */
export function registerServerDocuments(server: LanguageServer): Disposable {
  return Disposable.from(
    workspace.registerTextDocumentContentProvider(standardScheme, asking(server, standardTextRequest)),
    workspace.registerTextDocumentContentProvider(explanationScheme, asking(server, explanationTextRequest)),
  );
}

function asking(server: LanguageServer, request: string): TextDocumentContentProvider {
  return {
    provideTextDocumentContent: async (uri: Uri) => {
      const text = await server.request<string | null>(request, { uri: uri.toString() });
      if (text === null) throw new Error(`Nothing of that name comes with Ferrule: ${uri.path}`);
      return text;
    },
  };
}
