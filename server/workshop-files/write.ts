import {
  closeSync,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  linkSync,
  openSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { decodeSource } from "./read.ts";

/** Says that a file was left as it is, and why, in words for a person. */
export class FileNotReplaced extends Error {}

/** The state of a file before it is read, to be sure later that nobody wrote to it in between. */
export function stateOf(path: string): Stats {
  return statSync(path);
}

/**
 * Puts a new text in a file's place so that the old one or the new one is there at every moment: it is written to a
 * file beside it, brought to the disk, and renamed. The file's permissions and owner are kept.
 * @param path of the file itself, not of a link to it.
 * @param before its state when its text was read.
 * @throws FileNotReplaced, or what the file system says; the file is then as it was and nothing is left beside it.
 */
export function replaceFile(path: string, text: string, before: Stats): void {
  refuseUnreadable(text);
  if (before.isDirectory()) throw new FileNotReplaced("it is a folder");
  // A rename asks only the folder for permission; the file's own word counts as well.
  if ((before.mode & 0o222) === 0) throw new FileNotReplaced("it is read-only");
  const aside = asideOf(path);
  let descriptor: number | undefined;
  try {
    // `wx`: never through something that already stands there.
    descriptor = openSync(aside, "wx", 0o600);
    writeWhole(descriptor, text);
    keepOwner(descriptor, before);
    fchmodSync(descriptor, before.mode & 0o7777);
    fsyncSync(descriptor);
    closeSync(descriptor);
    descriptor = undefined;
    if (!isSame(before, statSync(path))) throw new FileNotReplaced("somebody wrote to it in the meantime");
    renameSync(aside, path);
  } catch (error) {
    if (descriptor !== undefined) closeSync(descriptor);
    try {
      unlinkSync(aside);
    } catch {
      // It was never made.
    }
    throw error;
  }
}

/** What would not be read back is not written, least of all in the place of something that can be read. */
function refuseUnreadable(text: string): void {
  const bytes = Buffer.from(text, "utf8");
  const source = decodeSource(bytes);
  if (source.state === "unreadable")
    throw new FileNotReplaced(`what was to be written cannot be read: ${source.reason}`);
  if (/\p{Cs}/u.test(text)) throw new FileNotReplaced("what was to be written holds half a character");
}

/** A name beside a file that nothing else has. */
function asideOf(path: string): string {
  return join(dirname(path), `.${basename(path).slice(0, 60)}.${process.pid}-${Date.now().toString(36)}.tmp`);
}

function writeWhole(descriptor: number, text: string): void {
  const bytes = Buffer.from(text, "utf8");
  let written = 0;
  while (written < bytes.length) written += writeSync(descriptor, bytes, written);
}

/** Only the superuser may give files away; anyone else owns what they write. */
function keepOwner(descriptor: number, { uid, gid }: Stats): void {
  const now = fstatSync(descriptor);
  if (now.uid === uid && now.gid === gid) return;
  try {
    fchownSync(descriptor, uid, gid);
  } catch {
    // The text matters more than whose it is.
  }
}

function isSame(a: Stats, b: Stats): boolean {
  return a.ino === b.ino && a.size === b.size && a.mtimeMs === b.mtimeMs;
}

/**
 * Makes a new file, all of it or nothing: it is written to a file beside it, brought to the disk, and given its name.
 * @throws FileNotReplaced when something has the name already; nothing is ever written over.
 */
export function createFile(path: string, text: string): void {
  refuseUnreadable(text);
  const aside = asideOf(path);
  let descriptor: number | undefined;
  try {
    descriptor = openSync(aside, "wx", 0o666);
    writeWhole(descriptor, text);
    fsyncSync(descriptor);
    closeSync(descriptor);
    descriptor = undefined;
    giveName(aside, path);
  } catch (error) {
    if (descriptor !== undefined) closeSync(descriptor);
    if ((error as { code?: string }).code !== "EEXIST") throw error;
    const isFolder = statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
    throw new FileNotReplaced(isFolder ? "a folder has that name" : "it is there already");
  } finally {
    try {
      unlinkSync(aside);
    } catch {
      // It was never made, or has its new name alone.
    }
  }
}

/** Gives a file a further name, never taking one that is in use. */
function giveName(aside: string, path: string): void {
  try {
    linkSync(aside, path);
  } catch (error) {
    const { code } = error as { code?: string };
    // Some file systems have no second names; there the name is looked at first.
    if (code !== "EPERM" && code !== "ENOTSUP" && code !== "EOPNOTSUPP" && code !== "ENOSYS") throw error;
    if (statSync(path, { throwIfNoEntry: false })) throw new FileNotReplaced("it is there already");
    renameSync(aside, path);
  }
}
