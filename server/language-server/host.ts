/**
 * Where a workshop's files come from. The engine reads nothing; a host lists, reads and watches, asynchronously, and
 * the session pushes what comes into the engine. On the desktop the host reads the disk; in a browser editor it asks
 * the client's file system.
 */
export interface Host {
  /**
   * The root of the workshop that a folder belongs to: the nearest folder upward with a `workshop.ferrule`, else the
   * folder itself. All as URIs without a slash at the end.
   */
  rootOf(folder: string): Promise<string>;
  /** Every `.ferrule` file under a root, also in nested folders; nothing outside the root, also not through links. */
  list(root: string): Promise<readonly string[]>;
  /** The texts of files; one that cannot be read is left out and reported by the caller as missing. */
  read(uris: readonly string[]): Promise<readonly { readonly uri: string; readonly text: string }[]>;
}

/** The file whose folder is a workshop's root. */
export const workshopFileName = "workshop.ferrule";

/** The folder of a URI, without a slash at the end. */
export function folderOf(uri: string): string {
  return uri.slice(0, Math.max(0, uri.lastIndexOf("/")));
}

/** True when a URI is the folder itself or lies under it. */
export function isUnder(uri: string, folder: string): boolean {
  return uri === folder || uri.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
}
