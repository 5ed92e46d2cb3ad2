import { lstatSync, mkdirSync, unlinkSync } from "node:fs";
import { join, resolve } from "node:path";

/**
 * The folder for what may be forgotten at any time, absolute; nothing when there is to be none.
 *
 * Compiled code is kept there, so it counts only when it belongs to this user and nobody else may write to it.
 * `FERRULE_CACHE` names another folder, or says `off`.
 */
export function cacheFolder(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  const wanted = environment.FERRULE_CACHE;
  if (wanted === "off") return undefined;
  const named = wanted === undefined || wanted === "" ? usualFolder(environment) : wanted;
  if (named === undefined) return undefined;
  try {
    const folder = resolve(named);
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const status = lstatSync(folder);
    if (!status.isDirectory()) return undefined;
    // Where files have no owners (Windows) the folder lies in the user's own profile.
    const user = process.getuid?.();
    return user === undefined || (status.uid === user && (status.mode & 0o022) === 0) ? folder : undefined;
  } catch {
    return undefined;
  }
}

/** Removes a file of that folder, if it is there and can be removed. */
export function forget(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // Another run has removed it, or it is none of ours.
  }
}

function usualFolder(environment: NodeJS.ProcessEnv): string | undefined {
  const { HOME, XDG_CACHE_HOME, LOCALAPPDATA } = environment;
  if (process.platform === "win32") return LOCALAPPDATA ? join(LOCALAPPDATA, "ferrule", "cache") : undefined;
  if (XDG_CACHE_HOME?.startsWith("/")) return join(XDG_CACHE_HOME, "ferrule");
  if (!HOME?.startsWith("/")) return undefined;
  return process.platform === "darwin" ? join(HOME, "Library", "Caches", "ferrule") : join(HOME, ".cache", "ferrule");
}
