import { type Dirent, readdirSync, realpathSync, statSync } from "node:fs";
import { join, sep } from "node:path";
import { fileExtension, workshopFileName } from "./root.ts";

/** A file or folder that was left alone, and why, in words for a person. */
export interface LeftOut {
  readonly path: string;
  readonly reason: string;
  /** True when its content may have mattered, so that results without it are not to be trusted. */
  readonly serious: boolean;
}

export interface Listing {
  /** Absolute paths in a fixed order, links followed, each once. */
  readonly files: readonly string[];
  /** Folders below that are workshops of their own; their files belong to them and are not listed. */
  readonly workshopsBelow: readonly string[];
  readonly leftOut: readonly LeftOut[];
}

/** Folders inside each other that are followed; deeper ones are reported. */
export const deepestFolder = 64;

/** True for folders that hold no sources of a workshop: installed packages and what begins with a dot. */
export function isSkippedFolder(name: string): boolean {
  return name === "node_modules" || name.startsWith(".");
}

/** True when a path lies in a folder or is it. Both absolute, with links followed. */
export function isInside(path: string, folder: string): boolean {
  return path === folder || path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
}

/**
 * Every `.ferrule` file of the workshop whose root is `root`.
 *
 * Nothing outside the root is listed, also not through links: a link to a file counts when the file lies under the
 * root, and a link to a folder is never followed (what it leads to inside the root is found by its own name).
 * @param root absolute, with links followed.
 */
export function listFiles(root: string): Listing {
  const files: string[] = [];
  const workshopsBelow: string[] = [];
  const leftOut: LeftOut[] = [];
  const linked: string[] = [];

  const walk = (folder: string, depth: number): void => {
    let entries: Dirent[];
    try {
      entries = readdirSync(folder, { withFileTypes: true });
    } catch (error) {
      leftOut.push({ path: folder, reason: reasonOf(error), serious: true });
      return;
    }
    if (folder !== root && entries.some((entry) => entry.name === workshopFileName && !entry.isDirectory())) {
      workshopsBelow.push(folder);
      return;
    }
    entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    for (const entry of entries) {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) {
        if (isSkippedFolder(entry.name)) continue;
        if (depth < deepestFolder) walk(path, depth + 1);
        else leftOut.push({ path, reason: `it lies more than ${deepestFolder} folders deep`, serious: true });
      } else if (!entry.name.endsWith(fileExtension) || entry.name === fileExtension) {
        // A name that is only the extension is a hidden file.
        if (entry.isSymbolicLink() && !isSkippedFolder(entry.name)) leftOut.push(...foreignFolder(path, root));
      } else if (entry.isFile()) files.push(path);
      else if (entry.isSymbolicLink()) linked.push(path);
      else leftOut.push({ path, reason: "it is not a regular file", serious: true });
    }
  };
  walk(root, 0);

  if (linked.length > 0) {
    const known = new Set(files);
    for (const path of linked) {
      const target = followLink(path, root);
      if ("reason" in target) leftOut.push(target);
      else if (!known.has(target.path)) {
        known.add(target.path);
        files.push(target.path);
      }
    }
  }
  return { files, workshopsBelow, leftOut };
}

/** Where a link leads, when that is a regular file under the root. */
function followLink(path: string, root: string): { readonly path: string } | LeftOut {
  try {
    const target = realpathSync(path);
    if (!isInside(target, root)) {
      return { path, reason: "it is a link that leads out of the workshop's folder", serious: true };
    }
    if (!statSync(target).isFile()) return { path, reason: "it is a link to something that is no file", serious: true };
    return { path: target };
  } catch (error) {
    return { path, reason: reasonOf(error), serious: true };
  }
}

/** A link to a folder outside of the root: nobody said that there are sources in it, but somebody may think so. */
function foreignFolder(path: string, root: string): readonly LeftOut[] {
  try {
    const target = realpathSync(path);
    if (isInside(target, root) || !statSync(target).isDirectory()) return [];
    return [
      { path, reason: "it is a link to a folder outside of the workshop's, which is not followed", serious: false },
    ];
  } catch {
    return [];
  }
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: "permission is denied",
  EPERM: "permission is denied",
  ENOENT: "it does not exist",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is not a folder",
  ELOOP: "its links lead round in a circle",
  ENAMETOOLONG: "its name is too long",
  EMFILE: "too many files are open",
  ENFILE: "too many files are open",
  EIO: "the disk gave an error",
  ENOSPC: "the disk is full",
  EROFS: "the disk is read-only",
  EBUSY: "it is in use",
  ERR_INVALID_ARG_VALUE: "it is not a path",
};

/** What a failed file operation comes to, in words for a person. */
export function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown } | undefined)?.code;
  if (typeof code === "string") return reasons[code] ?? code;
  return error instanceof Error ? error.message : String(error);
}
