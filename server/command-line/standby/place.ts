import { lstatSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { cacheFolder } from "../cache-folder.ts";
import { programDigest } from "../version.ts";

const prefix = "standby-";
const suffix = ".socket";

/** Bytes that the path of a socket may have: systems cut it off after 104 to 108, the last of them a nought. */
const longestPath = 103;

/**
 * Where the standby of this program listens, one for each program and each Node; nothing where there is to be none:
 * without a cache folder, for a program run from its sources, and on Windows, whose pipes are open to every user.
 */
export function socketPath(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  if (process.platform === "win32" || programDigest === "" || environment.FERRULE_STANDBY === "off") return undefined;
  const folder = cacheFolder(environment);
  if (folder === undefined) return undefined;
  const path = join(folder, `${prefix}${programDigest}-${process.versions.node}${suffix}`);
  return Buffer.byteLength(path) <= longestPath ? path : undefined;
}

/** Where any standby of this user may listen, that of another version of the program too. */
export function everySocketPath(environment: NodeJS.ProcessEnv = process.env): readonly string[] {
  const folder = cacheFolder(environment);
  if (folder === undefined) return [];
  try {
    return readdirSync(folder)
      .filter((name) => name.startsWith(prefix) && name.endsWith(suffix))
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}

/** Which socket lies at a path, so that one can be told from another put in its place; nothing when none of ours does. */
export function socketAt(path: string): string | undefined {
  try {
    const status = lstatSync(path, { bigint: true });
    const isOwn = status.isSocket() && Number(status.uid) === process.getuid?.();
    // The number of one that is gone is often given to the next.
    return isOwn ? `${status.dev}:${status.ino}:${status.birthtimeNs}` : undefined;
  } catch {
    return undefined;
  }
}
