import { closeSync, fstatSync, openSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { cacheFolder, forget } from "./cache-folder.ts";
import { programDigest } from "./version.ts";

/** A program unpacked, with what V8 made of it. */
export interface UnpackedProgram {
  /** In ASCII. */
  readonly source: string;
  readonly code: Buffer;
}

const prefix = "code-";

/** What a file of any version of this program is called: others may lie in a folder that somebody named. */
const names = /^code-[0-9a-f]{16}-[\w.]+(?:-[\w.]+)*$/;

/** Before the source and the code: the sum of all that follows, and the bytes of each of them. */
const headerLength = 12;
const sumLength = 4;

/** What the files of this program and this V8 begin with. */
function ownPrefix(): string {
  return `${prefix}${programDigest}-${process.versions.v8}-${process.arch}-`;
}

/** One file for each command: only what a run used is kept compiled, and each uses something else. */
function fileOf(folder: string, command: string): string {
  return join(folder, `${ownPrefix()}${command}`);
}

/** The program as it was unpacked and compiled before for a command; V8 still looks whether the code fits. */
export function cachedProgram(command: string): UnpackedProgram | undefined {
  const folder = cacheFolder();
  if (folder === undefined) return undefined;
  let descriptor: number | undefined;
  try {
    descriptor = openSync(fileOf(folder, command), "r");
    const status = fstatSync(descriptor);
    const user = process.getuid?.();
    const isOwn = user === undefined || (status.uid === user && (status.mode & 0o022) === 0);
    if (!isOwn || !status.isFile()) return undefined;
    const kept = readFileSync(descriptor);
    const start = headerLength + kept.readUInt32LE(4);
    if (start + kept.readUInt32LE(8) !== kept.length) return undefined;
    if (kept.readInt32LE(0) !== sum(kept.subarray(sumLength))) return undefined;
    return { source: kept.toString("latin1", headerLength, start), code: kept.subarray(start) };
  } catch {
    return undefined;
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

/** Keeps a program for the next run of a command, and lets go of other programs. */
export function keepProgram(command: string, { source, code }: UnpackedProgram): void {
  const folder = cacheFolder();
  if (folder === undefined) return;
  const file = fileOf(folder, command);
  const aside = `${file}.${process.pid}`;
  try {
    const header = Buffer.alloc(headerLength);
    header.writeUInt32LE(source.length, 4);
    header.writeUInt32LE(code.length, 8);
    const kept = Buffer.concat([header, Buffer.from(source, "latin1"), code]);
    kept.writeInt32LE(sum(kept.subarray(sumLength)), 0);
    writeFileSync(aside, kept, { mode: 0o600 });
    for (const name of readdirSync(folder)) {
      const path = join(folder, name);
      const isForeign = names.test(name) && !name.startsWith(ownPrefix());
      // What somebody who was stopped left half-written.
      const isLeftover = path.startsWith(`${file}.`) && path !== aside;
      if (isForeign || isLeftover) forget(path);
    }
    renameSync(aside, file);
  } catch {
    // The next run unpacks and compiles again.
    forget(aside);
  }
}

/**
 * A sum in which every change of a single word shows (FNV-1a by words of 32 bits, then the last few bytes): V8 looks at
 * the length of what it is given and no further, and a machine that loses its power may leave noughts in a file.
 */
function sum(bytes: Buffer): number {
  const words = new Int32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2);
  let sum = 0x811c9dc5;
  for (let at = 0; at < words.length; at++) sum = Math.imul(sum ^ (words[at] as number), 0x01000193);
  for (let at = words.length << 2; at < bytes.length; at++) sum = Math.imul(sum ^ (bytes[at] as number), 0x01000193);
  return sum | 0;
}
