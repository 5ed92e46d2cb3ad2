import { pathToFileURL } from "node:url";
import { type Change, Engine } from "../engine/engine.ts";
import type { ReportedWorkshop } from "../reports/collect.ts";
import { prelude } from "../standards/index.ts";
import type { DisplayUnits } from "../values/show.ts";
import type { LeftOut } from "../workshop-files/list.ts";
import { decodeSource } from "../workshop-files/read.ts";
import type { ReadWorkshop } from "./read-workshops.ts";
import { shownPath } from "./targets.ts";

/** A workshop with its engine, and the files in it that were asked for. */
export interface LoadedWorkshop extends ReportedWorkshop {
  /** Files that turned out to be no text. */
  readonly leftOut: readonly LeftOut[];
}

/** Engines that already hold a workshop, by its folder, each with the bytes of the files that it took in. */
export type KeptEngines = Map<string, { readonly engine: Engine; readonly taken: ReadonlyMap<string, Buffer> }>;

/**
 * Puts the files of a workshop into an engine. Nothing is parsed yet: the engine reads a declaration when it is asked
 * for it.
 * @param shownFrom the folder from which shown paths start.
 * @param displayUnits units in which numbers are shown; those that the workshop states when left out.
 * @param kept engines of an earlier check, which take in only what changed; the one of this workshop is put in.
 */
export function load(
  workshop: ReadWorkshop,
  today: string,
  shownFrom: string,
  displayUnits?: DisplayUnits,
  kept?: KeptEngines,
): LoadedWorkshop {
  const before = kept?.get(workshop.folder);
  const taken = new Map<string, Buffer>();
  const leftOut: LeftOut[] = [];
  const tooLarge = new Map<string, number>();
  const shown = new Map<string, string>();
  const changes: Change[] = [];
  const uris: string[] = [];
  for (const { path, bytes } of workshop.files) {
    const uri = workshop.folder === "" ? path : pathToFileURL(path).href;
    const name = workshop.folder === "" ? path : shownPath(path, shownFrom);
    if (typeof bytes === "number") tooLarge.set(uri, bytes);
    else if (before?.taken.get(uri)?.equals(bytes)) taken.set(uri, bytes);
    else {
      const source = decodeSource(bytes);
      if (source.state === "unreadable") {
        leftOut.push({ path: name, reason: source.reason, serious: true });
        continue;
      }
      changes.push({ uri, text: source.text });
      taken.set(uri, bytes);
    }
    shown.set(uri, name);
    if (workshop.asked.has(path)) uris.push(uri);
  }
  for (const uri of before?.taken.keys() ?? []) if (!taken.has(uri)) changes.push({ uri, text: undefined });
  const engine = before?.engine ?? new Engine({ today, prelude, ...(displayUnits ? { displayUnits } : {}) });
  engine.today = today;
  engine.update(changes);
  kept?.set(workshop.folder, { engine, taken });
  return { engine, uris, pathOf: (uri) => shown.get(uri) ?? uri, tooLarge, leftOut };
}
