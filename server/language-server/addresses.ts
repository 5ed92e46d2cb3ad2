import { URI } from "vscode-uri";

/**
 * The same file under several spellings of its address: editors differ in what they escape. Inside, every file has one
 * spelling; to the client each goes out as the client itself wrote it.
 */
export class Addresses {
  readonly #toClient = new Map<string, string>();
  readonly #fromClient = new Map<string, string>();

  /** The one spelling of a client's address. */
  own(uri: string): string {
    const known = this.#fromClient.get(uri);
    if (known !== undefined) return known;
    return canonical(uri);
  }

  /** Remembers how the client writes the address of a file it has open. */
  opened(uri: string): string {
    const own = this.own(uri);
    if (own !== uri) this.pair(own, uri);
    return own;
  }

  /** Two addresses of one file, inside and at the client. */
  pair(own: string, shown: string): void {
    this.#toClient.set(own, shown);
    this.#fromClient.set(shown, own);
  }

  /** The address as the client writes it. */
  shown(own: string): string {
    return this.#toClient.get(own) ?? own;
  }
}

function canonical(uri: string): string {
  try {
    const parsed = URI.parse(uri, true).toString();
    return parsed.length > 1 && parsed.endsWith("/") ? parsed.slice(0, -1) : parsed;
  } catch {
    return uri;
  }
}
