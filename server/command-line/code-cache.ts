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

const prefix = "code-";

/** One file for each program and each V8 that compiled it. */
function fileOf(folder: string): string {
  return join(folder, `${prefix}${programDigest}-${process.versions.v8}-${process.arch}`);
}

/** The program as V8 compiled it before; it still looks whether that fits. */
export function cachedCode(): Buffer | undefined {
  const folder = cacheFolder();
  if (folder === undefined) return undefined;
  let descriptor: number | undefined;
  try {
    descriptor = openSync(fileOf(folder), "r");
    const status = fstatSync(descriptor);
    const user = process.getuid?.();
    const isOwn = user === undefined || (status.uid === user && (status.mode & 0o022) === 0);
    return isOwn && status.isFile() ? readFileSync(descriptor) : undefined;
  } catch {
    return undefined;
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

/** Keeps compiled code for the next run, and lets go of that of other programs. */
export function keepCode(code: Buffer): void {
  const folder = cacheFolder();
  if (folder === undefined) return;
  try {
    const file = fileOf(folder);
    const aside = `${file}.${process.pid}`;
    writeFileSync(aside, code, { mode: 0o600 });
    for (const name of readdirSync(folder)) {
      if (name.startsWith(prefix) && join(folder, name) !== aside) unlinkSync(join(folder, name));
    }
    renameSync(aside, file);
  } catch {
    // The next run compiles again.
  }
}
