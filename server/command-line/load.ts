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

/**
 * Puts the files of a workshop into an engine. Nothing is parsed yet: the engine reads a declaration when it is asked
 * for it.
 * @param shownFrom the folder from which shown paths start.
 * @param displayUnits units in which numbers are shown; those that the workshop states when left out.
 */
export function load(
  workshop: ReadWorkshop,
  today: string,
  shownFrom: string,
  displayUnits?: DisplayUnits,
): LoadedWorkshop {
  const leftOut: LeftOut[] = [];
  const tooLarge = new Map<string, number>();
  const shown = new Map<string, string>();
  const changes: Change[] = [];
  const uris: string[] = [];
  for (const { path, bytes } of workshop.files) {
    const uri = workshop.folder === "" ? path : pathToFileURL(path).href;
    const name = workshop.folder === "" ? path : shownPath(path, shownFrom);
    if (typeof bytes === "number") tooLarge.set(uri, bytes);
    else {
      const source = decodeSource(bytes);
      if (source.state === "unreadable") {
        leftOut.push({ path: name, reason: source.reason, serious: true });
        continue;
      }
      changes.push({ uri, text: source.text });
    }
    shown.set(uri, name);
    if (workshop.asked.has(path)) uris.push(uri);
  }
  const engine = new Engine({ today, prelude, ...(displayUnits ? { displayUnits } : {}) });
  engine.update(changes);
  return { engine, uris, pathOf: (uri) => shown.get(uri) ?? uri, tooLarge, leftOut };
}
