import { existsSync } from "node:fs";
import { dirname, join } from "node:path";

/** The file whose folder is a workshop's root. */
export const workshopFileName = "workshop.ferrule";

/** What every file of the language is called after its last dot. */
export const fileExtension = ".ferrule";

/** The folder whose files see each other, and what made it the root. */
export interface Root {
  readonly folder: string;
  readonly by: "workshop-file" | "repository" | "folder";
}

/**
 * The root of the workshop that a folder belongs to: the nearest folder upward with a `workshop.ferrule`, else the
 * git repository it lies in, else the folder itself.
 * @param folder absolute, with links followed.
 */
export function findRoot(folder: string): Root {
  let repository: string | undefined;
  let current = folder;
  for (;;) {
    if (existsSync(join(current, workshopFileName))) return { folder: current, by: "workshop-file" };
    // A repository's `.git` is a folder, or a file in a linked working tree.
    if (repository === undefined && existsSync(join(current, ".git"))) repository = current;
    const above = dirname(current);
    if (above === current) break;
    current = above;
  }
  return repository === undefined ? { folder, by: "folder" } : { folder: repository, by: "repository" };
}
