/**
 * Where a workshop's files come from. The engine reads nothing; a host lists and reads, asynchronously, and the
 * sessions push what comes into the engine. On the desktop the host reads the disk; in a browser editor it asks the
 * client's file system. Changes are told by the client.
 */
export interface Host {
  /**
   * The root of the workshop that a folder belongs to: the nearest folder upward with a `workshop.ferrule`, else the
   * repository, else the folder itself. All as URIs without a slash at the end.
   */
  rootOf(folder: string): Promise<WorkshopRoot>;
  /** Every `.ferrule` file under a root, also in nested folders; nothing outside the root, also not through links. */
  list(root: string): Promise<readonly string[]>;
  /** The files that stand in a folder itself. */
  listFolder(folder: string): Promise<readonly string[]>;
  /** What files hold; one that does not exist is left out. */
  read(uris: readonly string[]): Promise<readonly FileContent[]>;
  /**
   * Tells of files that are written or go, for a client that does not; settles when every change from then on is told.
   * A host that cannot has no such method.
   * @param isDeep whether folders inside are watched too.
   */
  watch?(folder: string, isDeep: boolean, listener: WatchListener): Promise<HostWatch>;
}

/** What a watched folder tells, as URIs. */
export interface WatchListener {
  changed(written: readonly string[], removed: readonly string[]): void;
  failed(reason: string): void;
}

export interface HostWatch {
  stop(): void;
}

export interface WorkshopRoot {
  readonly uri: string;
  /** True when a `workshop.ferrule` or a repository marks it; false when it is merely the folder that was asked for. */
  readonly isMarked: boolean;
}

/** The text of a file, or why it was not taken in, in words for a person. */
export type FileContent =
  | { readonly uri: string; readonly text: string }
  | { readonly uri: string; readonly refused: string };

/** The file whose folder is a workshop's root. */
export const workshopFileName = "workshop.ferrule";

export const fileExtension = ".ferrule";

/** The folder of a URI, without a slash at the end. */
export function folderOf(uri: string): string {
  return uri.slice(0, Math.max(0, uri.lastIndexOf("/")));
}

/** True when a URI is the folder itself or lies under it. */
export function isUnder(uri: string, folder: string): boolean {
  return uri === folder || uri.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
}
