import { pathToFileURL } from "node:url";
import { type Change, Engine } from "../engine/engine.ts";
import type { ReportedWorkshop } from "../reports/collect.ts";
import { prelude } from "../standards/index.ts";
import { isInside, type LeftOut, listFiles } from "../workshop-files/list.ts";
import { readSource } from "../workshop-files/read.ts";
import { shownPath, type Target } from "./targets.ts";

/** A text that takes the place of a file, or stands alone. */
export interface GivenText {
  readonly text: string;
  /** The file it stands for; absent for a text of no workshop. */
  readonly target?: Target;
}

/** A workshop read from the disk, with the files in it that were asked for. */
export interface LoadedWorkshop extends ReportedWorkshop {
  /** What was not read, and why. */
  readonly leftOut: readonly LeftOut[];
}

interface Draft {
  readonly folder: string;
  readonly asked: Target[];
  given?: GivenText;
}

/** What standard input is called when it stands for no file. */
const standardInput = "standard-input.ferrule";

/**
 * Reads the workshops that targets belong to: every file of each, since parts may stand in any of them.
 * @param folder where shown paths start.
 */
export function load(
  targets: readonly Target[],
  given: GivenText | undefined,
  today: string,
  folder: string,
): readonly LoadedWorkshop[] {
  const drafts = new Map<string, Draft>();
  const draftOf = (root: string): Draft => {
    const draft = drafts.get(root) ?? { folder: root, asked: [] };
    drafts.set(root, draft);
    return draft;
  };
  for (const target of targets) draftOf(target.root.folder).asked.push(target);
  if (given?.target) {
    const draft = draftOf(given.target.root.folder);
    draft.asked.push(given.target);
    draft.given = given;
  }
  const loaded: LoadedWorkshop[] = [];
  // A workshop below a folder that was asked for is asked for too; it joins the end of the queue.
  for (const draft of drafts.values()) {
    loaded.push(
      loadOne(draft, today, folder, (below) => {
        draftOf(below).asked.push({ root: { folder: below, by: "workshop-file" }, path: below, isFolder: true });
      }),
    );
  }
  if (given && !given.target) loaded.push(alone(given.text, today));
  return loaded.filter((workshop) => workshop.uris.length > 0 || workshop.leftOut.length > 0 || loaded.length === 1);
}

function loadOne(draft: Draft, today: string, folder: string, below: (root: string) => void): LoadedWorkshop {
  const listing = listFiles(draft.folder);
  const leftOut = [...listing.leftOut];
  const tooLarge = new Map<string, number>();
  const names = new Map<string, string>();
  const changes: Change[] = [];
  const replaced = draft.given?.target?.path;
  const files = [
    ...new Set([...listing.files, ...draft.asked.filter(({ isFolder }) => !isFolder).map(({ path }) => path)]),
  ];
  for (const path of files) {
    if (path === replaced) continue;
    const uri = pathToFileURL(path).href;
    const source = readSource(path);
    if (source.state === "unreadable") {
      leftOut.push({ path, reason: source.reason, serious: true });
      continue;
    }
    names.set(path, uri);
    if (source.state === "too-large") tooLarge.set(uri, source.bytes);
    else changes.push({ uri, text: source.text });
  }
  if (draft.given && replaced !== undefined) {
    const uri = pathToFileURL(replaced).href;
    names.set(replaced, uri);
    changes.push({ uri, text: draft.given.text });
  }
  for (const root of listing.workshopsBelow) {
    if (draft.asked.some(({ path, isFolder }) => isFolder && isInside(root, path))) below(root);
  }
  const engine = new Engine({ today, prelude });
  engine.update(changes);
  const paths = new Map([...names].map(([path, uri]) => [uri, shownPath(path, folder)]));
  const isAsked = (path: string): boolean =>
    draft.asked.some((target) => (target.isFolder ? isInside(path, target.path) : path === target.path));
  return {
    engine,
    uris: [...names].filter(([path]) => isAsked(path)).map(([, uri]) => uri),
    pathOf: (uri) => paths.get(uri) ?? uri,
    tooLarge,
    leftOut: leftOut.map((left) => ({ ...left, path: shownPath(left.path, folder) })),
  };
}

/** A text by itself: no workshop around it but the standards that come with the program. */
function alone(text: string, today: string): LoadedWorkshop {
  const engine = new Engine({ today, prelude });
  engine.update([{ uri: standardInput, text }]);
  return { engine, uris: [standardInput], pathOf: (uri) => uri, leftOut: [] };
}
