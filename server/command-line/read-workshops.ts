import { isInside, type LeftOut, listFiles } from "../workshop-files/list.ts";
import { readBytes } from "../workshop-files/read.ts";
import { shownPath, type Target } from "./targets.ts";

/** A file's bytes, or the size of one that is too large to be read. */
export interface ReadFile {
  /** Absolute, links followed; `standard-input.ferrule` for a text that stands for no file. */
  readonly path: string;
  readonly bytes: Buffer | number;
}

/** All files of a workshop, as bytes: nothing is known of their content yet. */
export interface ReadWorkshop {
  /** Absolute; empty for a text of no workshop. */
  readonly folder: string;
  /** In a fixed order. */
  readonly files: readonly ReadFile[];
  /** Paths of the files that were asked for. */
  readonly asked: ReadonlySet<string>;
  /** What was not read, and why; paths as shown. */
  readonly leftOut: readonly LeftOut[];
}

/** Bytes that take the place of a file, or stand alone. */
export interface Given {
  readonly bytes: Buffer;
  /** The file they stand for; absent for a text of no workshop. */
  readonly target?: Target;
}

interface Draft {
  readonly folder: string;
  readonly asked: Target[];
  given?: Given;
}

/** What standard input is called when it stands for no file. */
const standardInput = "standard-input.ferrule";

/**
 * Reads the workshops that targets belong to: every file of each, since parts may stand in any of them.
 * @param shownFrom the folder from which shown paths start.
 */
export function readWorkshops(
  targets: readonly Target[],
  given: Given | undefined,
  shownFrom: string,
): readonly ReadWorkshop[] {
  const drafts = new Map<string, Draft>();
  const draftOf = (folder: string): Draft => {
    const draft = drafts.get(folder) ?? { folder, asked: [] };
    drafts.set(folder, draft);
    return draft;
  };
  for (const target of targets) draftOf(target.root.folder).asked.push(target);
  if (given?.target) {
    const draft = draftOf(given.target.root.folder);
    draft.asked.push(given.target);
    draft.given = given;
  }
  const read: ReadWorkshop[] = [];
  // A workshop below a folder that was asked for is asked for too; it joins the end of the queue.
  for (const draft of drafts.values()) {
    const { workshop, below } = readOne(draft, shownFrom);
    read.push(workshop);
    for (const folder of below) {
      draftOf(folder).asked.push({ root: { folder, by: "workshop-file" }, path: folder, isFolder: true });
    }
  }
  if (given && !given.target) {
    const file = { path: standardInput, bytes: given.bytes };
    read.push({ folder: "", files: [file], asked: new Set([standardInput]), leftOut: [] });
  }
  return read;
}

function readOne(draft: Draft, shownFrom: string): { workshop: ReadWorkshop; below: readonly string[] } {
  const { folder, asked, given } = draft;
  const listing = listFiles(folder);
  const paths = new Set(listing.files);
  for (const target of asked) if (!target.isFolder) paths.add(target.path);
  const leftOut = [...listing.leftOut];
  const files: ReadFile[] = [];
  for (const path of paths) {
    if (path === given?.target?.path) {
      files.push({ path, bytes: given.bytes });
      continue;
    }
    const source = readBytes(path);
    if (source.state === "unreadable") leftOut.push({ path, reason: source.reason, serious: true });
    else files.push({ path, bytes: source.bytes });
  }
  const isAsked = (path: string): boolean =>
    asked.some((target) => (target.isFolder ? isInside(path, target.path) : path === target.path));
  return {
    workshop: {
      folder,
      files,
      asked: new Set(files.map(({ path }) => path).filter(isAsked)),
      leftOut: leftOut.map((left) => ({ ...left, path: shownPath(left.path, shownFrom) })),
    },
    below: listing.workshopsBelow.filter((root) => asked.some((one) => one.isFolder && isInside(root, one.path))),
  };
}
