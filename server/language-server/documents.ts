import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Addresses } from "./addresses.ts";

/** The texts that the editor has open, each at its newest version. */
export class OpenDocuments {
  readonly #documents = new Map<string, TextDocument>();
  readonly #addresses: Addresses;

  constructor(addresses: Addresses) {
    this.#addresses = addresses;
  }

  open(uri: string, version: number, text: string): TextDocument {
    const own = this.#addresses.opened(uri);
    const document = TextDocument.create(own, "ferrule", version, text);
    this.#documents.set(own, document);
    return document;
  }

  /**
   * Applies what was typed. @returns the document as it is now; `undefined` when it was never opened.
   */
  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): TextDocument | undefined {
    const document = this.#documents.get(this.#addresses.own(uri));
    if (!document) return undefined;
    return TextDocument.update(document, [...changes], version);
  }

  close(uri: string): void {
    this.#documents.delete(this.#addresses.own(uri));
  }

  /** By the address used inside. */
  get(own: string): TextDocument | undefined {
    return this.#documents.get(own);
  }

  has(own: string): boolean {
    return this.#documents.has(own);
  }
}
