import type { DisplayUnits } from "../values/show.ts";
import { folderOf, type Host, isUnder, workshopFileName } from "./host.ts";
import { WorkshopSession } from "./session.ts";

/** How many files are read between two chances for an edit to be answered. */
const batchSize = 16;

/** What the sessions tell of. */
export interface SessionsListener {
  /** Findings of these files may have changed. */
  changed(session: WorkshopSession, uris: Iterable<string>): void;
  /** These files belong to no workshop any more: nothing is to be said of them. */
  gone(uris: Iterable<string>): void;
  /** Everything under a folder, or only the files in it, was taken in. */
  lookedThrough?(folder: string, isDeep: boolean): void;
  /** The workshop of a folder was let go. */
  left?(folder: string): void;
  /** Something could not be read; nobody is waiting for an answer. */
  failed(what: string, error: unknown): void;
}

/**
 * All workshops of an editor's window. A file belongs to the nearest folder upward with a `workshop.ferrule`, else to
 * the repository or folder that was opened; a text without a folder joins the first workshop of the window.
 */
export class Sessions {
  readonly #host: Host;
  readonly #listener: SessionsListener;
  readonly #displayUnits: DisplayUnits | undefined;
  readonly #sessions = new Map<string, WorkshopSession>();
  /** Folders of the window. */
  readonly #folders = new Set<string>();
  /** Folders whose root is still being asked for; texts under them wait in a place of their own. */
  readonly #unplaced = new Set<string>();
  /** Holds what is open while nobody knows yet which workshop it belongs to: its names are pending, not wrong. */
  readonly #limbo = new WorkshopSession("");
  /** Folders being looked through or looked through; a promise settles when the files are all in. */
  readonly #scans = new Map<string, Promise<void>>();
  #underWay = 0;
  /** For each file the number of its newest reading, so that an older one never overwrites it. */
  readonly #readings = new Map<string, number>();
  #reading = 0;

  /** @param displayUnits units in which numbers are shown; those that each workshop states when left out. */
  constructor(host: Host, listener: SessionsListener, displayUnits?: DisplayUnits) {
    this.#displayUnits = displayUnits;
    this.#host = host;
    this.#listener = listener;
    this.#limbo.engine.complete = false;
  }

  get all(): readonly WorkshopSession[] {
    return [...this.#sessions.values()];
  }

  /** True when every folder asked for so far has been looked through. */
  get isSettled(): boolean {
    return this.#underWay === 0;
  }

  /** Settles when every scan begun so far is complete. */
  async settled(): Promise<void> {
    while (this.#underWay > 0) await Promise.all(this.#scans.values());
  }

  /** The session a file belongs to. */
  of(uri: string): WorkshopSession {
    return this.#around(uri) ?? this.#unplacedSession(uri) ?? this.#homeless(uri) ?? this.#make(folderOf(uri));
  }

  #unplacedSession(uri: string): WorkshopSession | undefined {
    if (isWithoutFolder(uri)) return this.#sessions.size === 0 && this.#unplaced.size > 0 ? this.#limbo : undefined;
    for (const folder of this.#unplaced) if (isUnder(uri, folder)) return this.#limbo;
    return undefined;
  }

  /** The session whose root is nearest above a file. */
  #around(uri: string): WorkshopSession | undefined {
    let best: WorkshopSession | undefined;
    for (const session of this.#sessions.values()) {
      if (isUnder(uri, session.root) && (!best || session.root.length > best.root.length)) best = session;
    }
    return best;
  }

  /** A text that was never saved has no folder; it is meant for the workshop at hand. */
  #homeless(uri: string): WorkshopSession | undefined {
    if (!isWithoutFolder(uri)) return undefined;
    return this.#sessions.values().next().value;
  }

  /** A folder joined the window: takes every workshop in it in. */
  async addFolder(folder: string): Promise<void> {
    this.#folders.add(folder);
    await this.#scan(folder, true);
  }

  /** Takes in the workshop of a file that lies in no folder of the window. */
  async addLone(uri: string): Promise<void> {
    if (isWithoutFolder(uri)) return;
    const folder = folderOf(uri);
    for (const known of this.#folders) if (isUnder(folder, known)) return;
    if (this.#sessions.has(folder) || !this.#around(uri)) await this.#scan(folder, false);
  }

  /** A folder left the window: its workshops go, but for those with open files. */
  removeFolder(folder: string): void {
    this.#folders.delete(folder);
    this.#scans.delete(folder);
    for (const [root, session] of [...this.#sessions]) {
      const isKept = [...this.#folders].some((other) => isUnder(root, other) || isUnder(other, root));
      if (isKept || !(isUnder(root, folder) || isUnder(folder, root)) || session.openTexts.size > 0) continue;
      this.#sessions.delete(root);
      this.#scans.delete(root);
      this.#listener.left?.(root);
      this.#listener.gone(session.files);
    }
  }

  open(uri: string, text: string): Set<string> {
    return this.of(uri).setOpenText(uri, text);
  }

  /** An editor let a file go: what the disk holds counts again. */
  async close(uri: string): Promise<void> {
    this.of(uri).release(uri);
    const number = this.#begin(uri);
    const contents = isWithoutFolder(uri) ? [] : await this.#read([uri]);
    if (!this.#isNewest(uri, number)) return;
    const session = this.of(uri);
    const content = contents.find((one) => one.uri === uri);
    const affected = session.updateFromDisk([{ uri, content }]);
    if (!content) this.#listener.gone([uri]);
    this.#listener.changed(session, affected);
    this.#leave(session);
  }

  /** A workshop outside of the window is there for the files that were opened from it. */
  #leave(session: WorkshopSession): void {
    const { root } = session;
    const isInWindow = [...this.#folders].some((folder) => isUnder(root, folder) || isUnder(folder, root));
    if (isInWindow || session.openTexts.size > 0 || this.#sessions.get(root) !== session) return;
    this.#sessions.delete(root);
    for (const folder of [...this.#scans.keys()]) {
      if (isUnder(folder, root) && !this.#folders.has(folder)) this.#scans.delete(folder);
    }
    this.#listener.left?.(root);
    this.#listener.gone(session.files);
  }

  /** Files that were made or changed on the disk, and files or folders that went. */
  async changedOnDisk(written: readonly string[], removed: readonly string[]): Promise<void> {
    this.#drop(removed);
    for (const uri of written) if (isWorkshopFile(uri)) this.#make(folderOf(uri));
    for (let start = 0; start < written.length; start += batchSize) {
      const uris = written.slice(start, start + batchSize);
      const numbers = new Map(uris.map((uri) => [uri, this.#begin(uri)]));
      const contents = new Map((await this.#read(uris)).map((content) => [content.uri, content]));
      const bySession = new Map<WorkshopSession, string[]>();
      for (const [uri, number] of numbers) {
        if (!this.#isNewest(uri, number)) continue;
        const session = this.of(uri);
        bySession.set(session, [...(bySession.get(session) ?? []), uri]);
      }
      for (const [session, own] of bySession) {
        const affected = session.updateFromDisk(own.map((uri) => ({ uri, content: contents.get(uri) })));
        this.#listener.gone(own.filter((uri) => !contents.has(uri) && !session.openTexts.has(uri)));
        this.#listener.changed(session, affected);
      }
    }
  }

  /** A folder was moved into the window: takes in what is under its new address. */
  async takeIn(folder: string): Promise<void> {
    try {
      await this.changedOnDisk(await this.#host.list(folder), []);
    } catch (error) {
      this.#listener.failed(`The folder ${folder} cannot be listed`, error);
    }
  }

  /** Takes out files, and everything under folders. */
  #drop(removed: readonly string[]): void {
    for (const session of this.all) {
      const gone = [...session.files].filter((uri) => removed.some((one) => isUnder(uri, one)));
      if (gone.length === 0) continue;
      for (const uri of gone) this.#begin(uri);
      const affected = session.updateFromDisk(gone.map((uri) => ({ uri, content: undefined })));
      this.#listener.gone(gone.filter((uri) => !session.openTexts.has(uri)));
      this.#listener.changed(session, affected);
    }
    for (const uri of removed) if (isWorkshopFile(uri)) this.#dissolve(folderOf(uri));
  }

  async #read(uris: readonly string[]) {
    try {
      return await this.#host.read(uris);
    } catch (error) {
      this.#listener.failed(`${uris.length === 1 ? uris[0] : `${uris.length} files`} cannot be read`, error);
      return [];
    }
  }

  #begin(uri: string): number {
    this.#readings.set(uri, ++this.#reading);
    return this.#reading;
  }

  #isNewest(uri: string, number: number): boolean {
    if (this.#readings.get(uri) !== number) return false;
    this.#readings.delete(uri);
    return true;
  }

  /** A text came into the editor: whatever is being read of it from the disk comes too late. */
  supersede(uri: string): void {
    this.#readings.delete(uri);
  }

  #scan(folder: string, isDeep: boolean): Promise<void> {
    const known = this.#scans.get(folder);
    if (known) return known;
    this.#underWay++;
    const scan = this.#take(folder, isDeep)
      .catch((error) => this.#listener.failed(`The folder ${folder} cannot be looked through`, error))
      .finally(() => {
        this.#underWay--;
      });
    this.#scans.set(folder, scan);
    return scan;
  }

  async #take(folder: string, isDeep: boolean): Promise<void> {
    const { outer, isMarked } = await this.#place(folder);
    const { root } = outer;
    const touched = new Set([outer]);
    try {
      // A file opened by itself, with nothing that marks a workshop, sees the files beside it: what lies deeper may
      // be a whole home directory.
      const isAll = isDeep || isMarked;
      const uris = isAll ? await this.#host.list(root) : await this.#host.listFolder(root);
      for (const uri of uris) {
        if (!isWorkshopFile(uri)) continue;
        const inner = this.#make(folderOf(uri));
        inner.engine.complete = false;
        touched.add(inner);
      }
      for (let start = 0; start < uris.length; start += batchSize) {
        const contents = await this.#read(uris.slice(start, start + batchSize));
        const bySession = new Map<WorkshopSession, { uri: string; content: (typeof contents)[number] }[]>();
        for (const content of contents) {
          // A newer reading of one file is under way: it tells more than this one.
          if (this.#readings.has(content.uri)) continue;
          const session = this.of(content.uri);
          bySession.set(session, [...(bySession.get(session) ?? []), { uri: content.uri, content }]);
        }
        for (const [session, files] of bySession) {
          touched.add(session);
          session.updateFromDisk(files);
        }
        await turn();
      }
      this.#listener.lookedThrough?.(root, isAll);
    } finally {
      for (const session of touched) {
        session.engine.complete = true;
        this.#listener.changed(session, session.files);
      }
    }
  }

  /** Asks for the root of a folder, and hands over to its session what came into the editor meanwhile. */
  async #place(folder: string): Promise<{ readonly outer: WorkshopSession; readonly isMarked: boolean }> {
    this.#unplaced.add(folder);
    let root = { uri: folder, isMarked: false };
    try {
      root = await this.#host.rootOf(folder);
    } finally {
      this.#unplaced.delete(folder);
    }
    const outer = this.#make(root.uri);
    outer.engine.complete = false;
    this.#hand(this.#limbo, outer, (uri) => isUnder(uri, folder) || isWithoutFolder(uri));
    return { outer, isMarked: root.isMarked };
  }

  /** The session of a root. A new one inside a known one takes its files over from it, open ones too. */
  #make(root: string): WorkshopSession {
    const known = this.#sessions.get(root);
    if (known) return known;
    const session = new WorkshopSession(root, this.#displayUnits);
    for (const outer of this.all) {
      if (isUnder(root, outer.root)) this.#hand(outer, session, (uri) => this.#belongs(uri, root));
    }
    this.#sessions.set(root, session);
    return session;
  }

  /** True when no known root lies between a file and a root above it. */
  #belongs(uri: string, root: string): boolean {
    if (!isUnder(uri, root)) return false;
    const nearest = this.#around(uri);
    return !nearest || nearest.root.length <= root.length;
  }

  /** A workshop whose file went is none any more: its files belong to the one around it, if there is one. */
  #dissolve(root: string): void {
    const session = this.#sessions.get(root);
    if (!session || this.#folders.has(root)) return;
    this.#sessions.delete(root);
    const outer = this.#around(root);
    if (outer) this.#hand(session, outer, () => true);
    else this.#sessions.set(root, session);
  }

  #hand(from: WorkshopSession, to: WorkshopSession, isMeant: (uri: string) => boolean): void {
    for (const uri of from.files) {
      if (!isMeant(uri)) continue;
      const open = from.openTexts.get(uri);
      const refused = from.refused.get(uri);
      const text = from.engine.file(uri)?.text;
      if (open !== undefined) to.setOpenText(uri, open);
      else if (refused !== undefined) to.updateFromDisk([{ uri, content: { uri, refused } }]);
      else if (text !== undefined) to.updateFromDisk([{ uri, content: { uri, text } }]);
      from.release(uri);
      this.#listener.changed(from, from.updateFromDisk([{ uri, content: undefined }]));
    }
    this.#listener.changed(to, to.files);
  }
}

function isWorkshopFile(uri: string): boolean {
  return uri.endsWith(`/${workshopFileName}`);
}

/** True for a text that was never saved: `untitled:Untitled-1`. */
function isWithoutFolder(uri: string): boolean {
  return !/^[a-z][a-z0-9+.-]*:\/+[^/]+\//i.test(uri) || uri.startsWith("untitled:");
}

/** Lets waiting messages have their turn. */
function turn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
