import { type Change, Engine } from "../engine/engine.ts";
import { prelude } from "../standards/index.ts";
import { folderOf, type Host, isUnder, workshopFileName } from "./host.ts";

/** How many files are read between two chances for an edit to be answered. */
const batchSize = 250;

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

  constructor(root: string, today = localDay()) {
    this.root = root;
    this.engine = new Engine({ today, prelude });
  }

  /** Takes an open text in. @returns the files whose findings may have changed. */
  setOpenText(uri: string, text: string): Set<string> {
    this.openTexts.set(uri, text);
    this.engine.setOpen(uri, true);
    return this.engine.update([{ uri, text }]);
  }

  /** An editor let a file go: from now on the disk's text counts; `undefined` when the file is gone. */
  closeText(uri: string, textOnDisk: string | undefined): Set<string> {
    this.openTexts.delete(uri);
    this.engine.setOpen(uri, false);
    return this.engine.update([{ uri, text: textOnDisk }]);
  }

  /** Changes on disk; those of open files are left for later, since open text counts. */
  updateFromDisk(changes: readonly Change[]): Set<string> {
    return this.engine.update(changes.filter(({ uri }) => !this.openTexts.has(uri)));
  }
}

/**
 * All workshops of an editor's window. A file belongs to the nearest folder upward with a `workshop.ferrule`, else to
 * the folder that was opened.
 */
export class Sessions {
  readonly #host: Host;
  readonly #sessions = new Map<string, WorkshopSession>();
  /** Folders being looked through; a folder's promise settles when its files are all in. */
  readonly #scans = new Map<string, Promise<void>>();
  readonly #changed: (session: WorkshopSession, uris: ReadonlySet<string>) => void;

  /** @param changed told of files whose findings may have changed by what came from the disk. */
  constructor(host: Host, changed: (session: WorkshopSession, uris: ReadonlySet<string>) => void) {
    this.#host = host;
    this.#changed = changed;
  }

  get all(): readonly WorkshopSession[] {
    return [...this.#sessions.values()];
  }

  /** The session a file belongs to; one of its own folder when no scanned root holds it. */
  of(uri: string): WorkshopSession {
    let best: WorkshopSession | undefined;
    for (const session of this.#sessions.values()) {
      if (isUnder(uri, session.root) && (!best || session.root.length > best.root.length)) best = session;
    }
    return best ?? this.#make(folderOf(uri));
  }

  /** Looks through a folder and takes every workshop in it in. Asking twice scans once. */
  scan(folder: string): Promise<void> {
    const known = this.#scans.get(folder);
    if (known) return known;
    const scan = this.#scan(folder);
    this.#scans.set(folder, scan);
    return scan;
  }

  /** Settles when every scan begun so far is complete. */
  async settled(): Promise<void> {
    await Promise.all(this.#scans.values());
  }

  /** Drops a folder that left the window; sessions with open files stay. @returns the files to clear. */
  forget(folder: string): readonly string[] {
    this.#scans.delete(folder);
    const gone: string[] = [];
    for (const [root, session] of this.#sessions) {
      if (!isUnder(root, folder) || session.openTexts.size > 0) continue;
      gone.push(...session.engine.workshop.files.keys());
      this.#sessions.delete(root);
    }
    return gone;
  }

  async #scan(folder: string): Promise<void> {
    const root = await this.#host.rootOf(folder);
    const outer = this.#make(root);
    outer.engine.complete = false;
    const uris = await this.#host.list(root);
    for (const uri of uris) {
      if (uri.endsWith(`/${workshopFileName}`)) this.#make(folderOf(uri)).engine.complete = false;
    }
    const touched = new Set([outer]);
    for (let start = 0; start < uris.length; start += batchSize) {
      const texts = await this.#host.read(uris.slice(start, start + batchSize));
      const bySession = new Map<WorkshopSession, Change[]>();
      for (const { uri, text } of texts) {
        const session = this.of(uri);
        touched.add(session);
        const changes = bySession.get(session);
        if (changes) changes.push({ uri, text });
        else bySession.set(session, [{ uri, text }]);
      }
      for (const [session, changes] of bySession) session.updateFromDisk(changes);
      await new Promise((resolve) => setTimeout(resolve, 0));
    }
    for (const session of touched) {
      session.engine.complete = true;
      this.#changed(session, new Set(session.engine.workshop.files.keys()));
    }
  }

  /**
   * A new root inside a known one takes its files over from it, open ones too.
   */
  #make(root: string): WorkshopSession {
    const known = this.#sessions.get(root);
    if (known) return known;
    const session = new WorkshopSession(root);
    for (const outer of this.#sessions.values()) {
      if (!isUnder(root, outer.root)) continue;
      for (const [uri, file] of [...outer.engine.workshop.files]) {
        if (file.builtIn || !isUnder(uri, root)) continue;
        const open = outer.openTexts.get(uri);
        if (open === undefined) session.updateFromDisk([{ uri, text: file.text }]);
        else session.setOpenText(uri, open);
        outer.closeText(uri, undefined);
      }
    }
    this.#sessions.set(root, session);
    return session;
  }
}
