import { type Change, Engine } from "../engine/engine.ts";
import { prelude } from "../standards/index.ts";
import type { DisplayUnits } from "../values/show.ts";
import type { FileContent } from "./host.ts";

/** The day by this machine's calendar, `2026-11-25`. */
export function localDay(now = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** One workshop: its root, its engine, and which of its texts are open in the editor. */
export class WorkshopSession {
  readonly root: string;
  readonly engine: Engine;
  /** Texts as the editor has them; they beat the disk. */
  readonly openTexts = new Map<string, string>();
  /** Files that were not taken in, with why. */
  readonly refused = new Map<string, string>();

  /** @param displayUnits units in which numbers are shown; those that the workshop states when left out. */
  constructor(root: string, displayUnits?: DisplayUnits, today = localDay()) {
    this.root = root;
    this.engine = new Engine({ today, prelude, ...(displayUnits ? { displayUnits } : {}) });
  }

  /** Takes an open text in. @returns the files whose findings may have changed. */
  setOpenText(uri: string, text: string): Set<string> {
    this.openTexts.set(uri, text);
    this.engine.setOpen(uri, true);
    return this.engine.update([{ uri, text }]);
  }

  /** An editor let a file go: its last text stays until somebody says what the disk holds, and no longer beats it. */
  release(uri: string): void {
    this.openTexts.delete(uri);
    this.engine.setOpen(uri, false);
  }

  /** What files hold now; those that are open are left alone, since open text counts. */
  updateFromDisk(files: readonly { readonly uri: string; readonly content: FileContent | undefined }[]): Set<string> {
    const changes: Change[] = [];
    for (const { uri, content } of files) {
      if (this.openTexts.has(uri)) continue;
      if (content && "refused" in content) this.refused.set(uri, content.refused);
      else this.refused.delete(uri);
      changes.push({ uri, text: content && "text" in content ? content.text : undefined });
    }
    return changes.length === 0 ? new Set() : this.engine.update(changes);
  }

  /** Every file that something may be said of. */
  get files(): ReadonlySet<string> {
    const files = new Set(this.refused.keys());
    for (const [uri, { builtIn }] of this.engine.workshop.files) if (!builtIn) files.add(uri);
    return files;
  }
}
