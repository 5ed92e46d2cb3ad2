import { type Disposable, type TextDocumentContentProvider, type Uri, workspace } from "vscode";
import type { LanguageServer } from "./language-server.ts";
import { standardScheme } from "./schemes.ts";

/** Shows the standards that come with the server as documents to read: where "go to definition" of a code leads. */
export function registerStandardDocuments(server: LanguageServer): Disposable {
  const provider: TextDocumentContentProvider = {
    provideTextDocumentContent: async (uri: Uri) => {
      const text = await server.request<string | null>("ferrule/standardText", { uri: uri.toString() });
      if (text === null) throw new Error(`No standards of that name come with Ferrule: ${uri.path}`);
      return text;
    },
  };
  return workspace.registerTextDocumentContentProvider(standardScheme, provider);
}
