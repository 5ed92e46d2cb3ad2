import type { DisplayUnits } from "../values/show.ts";

/**
 * What server and client say to each other beside the Language Server Protocol. A client that knows none of it is
 * served as well as any other; each of these is asked for, or answered, only where both sides know it.
 */

/** What a client may say of itself in `initializationOptions`; anything it leaves out has its plainest meaning. */
export interface InitializationOptions {
  /** `pull`: the client asks for findings; `push` (the default): they are sent unasked. Never both. */
  readonly diagnostics?: "push" | "pull";
  /** True when the client shows `ferrule-explanation:` documents, whose text it asks for. */
  readonly explanations?: boolean;
  /**
   * `virtual` (the default): built-in standards are `ferrule-standard:` documents, whose text the client asks for.
   * `files`: they are read-only copies on the disk, for editors that open nothing else.
   */
  readonly standards?: "virtual" | "files";
  /** Units in which numbers are shown; those that each workshop states when left out. */
  readonly displayUnits?: DisplayUnits;
  /** A command of the client that opens the list of completions, run after a field's name was inserted. */
  readonly suggestCommand?: string;
}

/** Client to server: the text of a built-in standard's file; `null` when there is none. */
export const standardTextRequest = "ferrule/standardText";
export interface StandardTextParameters {
  readonly uri: string;
}

/** Client to server: every standard that comes with the program. */
export const standardsRequest = "ferrule/standards";
export interface ListedStandard {
  readonly uri: string;
  /** Zero-based line of its declaration. */
  readonly line: number;
  readonly family: string;
  readonly code: string;
  readonly title?: string;
}

/** Client to server: the explanation of a check as Markdown, by the address of its document; `null` when there is none. */
export const explanationTextRequest = "ferrule/explanationText";
export interface ExplanationTextParameters {
  readonly uri: string;
}

/** Server to client: the root of the workshop that a folder belongs to. */
export const rootOfRequest = "ferrule/rootOf";
export interface RootOfParameters {
  readonly folder: string;
}

/** Server to client: every `.ferrule` file under a root. */
export const listRequest = "ferrule/list";
export interface ListParameters {
  readonly root: string;
}

/** Server to client: the texts of files; one that cannot be read is left out. */
export const readRequest = "ferrule/read";
export interface ReadParameters {
  readonly uris: readonly string[];
}
export interface ReadText {
  readonly uri: string;
  readonly text: string;
}
