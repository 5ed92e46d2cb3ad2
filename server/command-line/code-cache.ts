import {
  closeSync,
  fstatSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { cacheFolder } from "./cache-folder.ts";
import { programDigest } from "./version.ts";

/** A program unpacked, with what V8 made of it. */
export interface UnpackedProgram {
  /** In ASCII. */
  readonly source: string;
  readonly code: Buffer;
}

const prefix = "code-";

/** Before the source and the code: the bytes of each. */
const headerLength = 8;

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
    const start = headerLength + kept.readUInt32LE(0);
    if (start + kept.readUInt32LE(4) !== kept.length) return undefined;
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
  try {
    const file = fileOf(folder, command);
    const aside = `${file}.${process.pid}`;
    const lengths = Buffer.alloc(headerLength);
    lengths.writeUInt32LE(source.length, 0);
    lengths.writeUInt32LE(code.length, 4);
    writeFileSync(aside, Buffer.concat([lengths, Buffer.from(source, "latin1"), code]), { mode: 0o600 });
    for (const name of readdirSync(folder)) {
      const path = join(folder, name);
      const isForeign = name.startsWith(prefix) && !name.startsWith(ownPrefix());
      // What somebody who was stopped left half-written.
      const isLeftover = path.startsWith(`${file}.`) && path !== aside;
      if (isForeign || isLeftover) unlinkSync(path);
    }
    renameSync(aside, file);
  } catch {
    // The next run unpacks and compiles again.
  }
}
