import { dirname } from "node:path";
import type { ReadWorkshop } from "../read-workshops.ts";

/** Folders beyond which none is watched. */
const mostFolders = 64;

/**
 * The folders in which files of workshops lie, each by itself. A workshop without a file that says so may be a whole
 * home folder: to watch all below it would use up what the system lends a user for watching, and only what is
 * watched can be worked out before it is asked for.
 */
export function watchedFolders(workshops: readonly ReadWorkshop[]): readonly string[] {
  const folders = new Set<string>();
  for (const { folder, files } of workshops) {
    // What came from standard input lies nowhere.
    if (folder !== "") for (const { path } of files) folders.add(dirname(path));
  }
  return folders.size <= mostFolders ? [...folders] : [];
}
