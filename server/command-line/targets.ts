import { globSync, lstatSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { isInside, isSkippedFolder, reasonOf } from "../workshop-files/list.ts";
import { fileExtension, findRoot, type Root } from "../workshop-files/root.ts";
import { UsageProblem } from "./problem.ts";

/** What a person asked for on the command line, by the workshop it belongs to. */
export interface Target {
  readonly root: Root;
  /** Absolute, links followed: a file, or a folder whose files are meant. */
  readonly path: string;
  readonly isFolder: boolean;
}

/** The roots found so far, so that a folder is looked up once. */
export class Roots {
  readonly #known = new Map<string, Root>();

  of(folder: string): Root {
    const known = this.#known.get(folder) ?? findRoot(folder);
    this.#known.set(folder, known);
    return known;
  }
}

const globCharacters = /[*?[\]{}]/;

/**
 * Finds what the words after a command name: files, folders, and patterns.
 * @param folder where relative ones start; absolute, links followed.
 * @throws UsageProblem for a word that names nothing that can be read.
 */
export function findTargets(words: readonly string[], folder: string, roots: Roots): readonly Target[] {
  const targets = words.flatMap((word) => {
    if (word === "") throw new UsageProblem("An empty path was given.");
    const path = resolve(folder, word);
    if (lstatSync(path, { throwIfNoEntry: false }) || !globCharacters.test(word)) return [targetOf(path, word, roots)];
    const matches = matching(word, folder);
    if (matches.length === 0) throw new UsageProblem(`No ${fileExtension} file matches ${word}.`);
    return matches.map((match) => targetOf(resolve(folder, match), match, roots));
  });
  const seen = new Set<string>();
  return targets.filter(({ path }) => !seen.has(path) && seen.add(path));
}

/** Files that a pattern matches; what lies in skipped folders only when the pattern itself says so. */
function matching(pattern: string, folder: string): string[] {
  const named = new Set(pattern.split(/[\\/]/));
  return globSync(pattern, { cwd: folder })
    .filter((match) => match.endsWith(fileExtension) && basename(match) !== fileExtension)
    .filter((match) =>
      match
        .split(sep)
        .slice(0, -1)
        .every((part) => part === "." || part === ".." || named.has(part) || !isSkippedFolder(part)),
    )
    .sort();
}

/** @throws UsageProblem when it is not there, is no Ferrule file, or is a link out of its workshop. */
function targetOf(path: string, written: string, roots: Roots): Target {
  try {
    const real = realpathSync(path);
    const status = statSync(real);
    if (status.isDirectory()) return { root: roots.of(real), path: real, isFolder: true };
    if (!status.isFile()) throw new UsageProblem(`${written} cannot be read: it is not a regular file.`);
    if (!path.endsWith(fileExtension)) {
      throw new UsageProblem(`${written} is not a ${fileExtension} file.`, [
        `To read another file as Ferrule: ferrule check - --as NAME${fileExtension} < ${written}`,
      ]);
    }
    // A link is judged by where it stands: it must not lead out of that workshop.
    const root = roots.of(realpathSync(dirname(path)));
    if (!isInside(real, root.folder)) {
      throw new UsageProblem(
        `${written} cannot be read: it is a link that leads out of the workshop's folder ${root.folder}.`,
      );
    }
    return { root: roots.of(dirname(real)), path: real, isFolder: false };
  } catch (error) {
    if (error instanceof UsageProblem) throw error;
    throw new UsageProblem(`${written} cannot be read: ${reasonOf(error)}.`);
  }
}

/**
 * A file that need not be there, named by `--as`: where it would stand.
 * @throws UsageProblem when its folder is not there or it is not named like a Ferrule file.
 */
export function placeOf(written: string, folder: string, roots: Roots): Target {
  const path = resolve(folder, written);
  if (!path.endsWith(fileExtension))
    throw new UsageProblem(`--as takes a ${fileExtension} file; ${written} was given.`);
  try {
    const real = realpathSync(dirname(path));
    return { root: roots.of(real), path: join(real, basename(path)), isFolder: false };
  } catch (error) {
    throw new UsageProblem(`The folder of ${written} cannot be read: ${reasonOf(error)}.`);
  }
}

/** A path as reports show it: from the folder the command runs in, with slashes. */
export function shownPath(path: string, folder: string): string {
  const shown = relative(folder, path);
  return sep === "/" ? shown || "." : shown.replaceAll(sep, "/") || ".";
}
