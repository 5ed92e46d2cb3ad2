import { realpathSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join, relative, sep } from "node:path";
import { URI } from "vscode-uri";
import { isInside, listFiles } from "../workshop-files/list.ts";
import { decodeSource, readBytes } from "../workshop-files/read.ts";
import { findRoot } from "../workshop-files/root.ts";
import { watchFolder } from "../workshop-files/watch.ts";
import {
  type FileContent,
  fileExtension,
  type Host,
  type HostWatch,
  type WatchListener,
  type WorkshopRoot,
} from "./host.ts";

/**
 * Reads the disk. Files keep the address of the folder they were asked for under, so that a workshop opened by way of
 * a link stays at the address that the editor knows; what a link leads to outside the root is never read.
 */
export class NodeHost implements Host {
  /** Roots as asked for, with the folder that each really is. */
  readonly #roots = new Map<string, string>();

  async rootOf(folder: string): Promise<WorkshopRoot> {
    const path = pathOf(folder);
    if (path === undefined) return { uri: folder, isMarked: false };
    // Upward along the address that the editor knows, not along that of what a link leads to.
    const { folder: root, by } = findRoot(path);
    return by === "folder" ? { uri: folder, isMarked: false } : { uri: uriOf(root), isMarked: true };
  }

  async list(root: string): Promise<readonly string[]> {
    const path = pathOf(root);
    const real = path === undefined ? undefined : realPath(path);
    if (path === undefined || real === undefined) return [];
    this.#roots.set(root, real);
    const uris: string[] = [];
    const folders = [real];
    for (let next = folders.shift(); next !== undefined; next = folders.shift()) {
      const listing = listFiles(next);
      for (const file of listing.files) uris.push(uriOf(join(path, relative(real, file))));
      // A workshop inside another is one of its own, and is taken in beside it.
      folders.push(...listing.workshopsBelow);
      await turn();
    }
    return uris;
  }

  async listFolder(folder: string): Promise<readonly string[]> {
    const path = pathOf(folder);
    const real = path === undefined ? undefined : realPath(path);
    if (path === undefined || real === undefined) return [];
    this.#roots.set(folder, real);
    try {
      const entries = await readdir(path, { withFileTypes: true });
      return entries
        .filter((entry) => entry.isFile() && entry.name.endsWith(fileExtension) && entry.name !== fileExtension)
        .map((entry) => uriOf(join(path, entry.name)));
    } catch {
      return [];
    }
  }

  async read(uris: readonly string[]): Promise<readonly FileContent[]> {
    const contents: FileContent[] = [];
    for (const uri of uris) {
      const path = pathOf(uri);
      const real = path === undefined ? undefined : realPath(path);
      if (real === undefined || !this.#isAllowed(real)) continue;
      contents.push({ uri, ...contentOf(real) });
    }
    return contents;
  }

  async watch(folder: string, isDeep: boolean, listener: WatchListener): Promise<HostWatch> {
    const path = pathOf(folder);
    const real = path === undefined ? undefined : realPath(path);
    if (path === undefined || real === undefined) return { stop: () => undefined };
    const uris = (paths: readonly string[]): string[] => paths.map((one) => uriOf(join(path, relative(real, one))));
    const watch = watchFolder(real, isDeep, {
      changed: ({ written, removed }) => listener.changed(uris(written), uris(removed)),
      failed: (reason) => listener.failed(reason),
    });
    await watch.ready;
    return { stop: () => void watch.stop() };
  }

  #isAllowed(real: string): boolean {
    for (const root of this.#roots.values()) if (isInside(real, root)) return true;
    return false;
  }
}

/** The text of a file, or why it was not taken in. A file that vanished in between is as good as one without text. */
function contentOf(path: string): { readonly text: string } | { readonly refused: string } {
  const read = readBytes(path);
  if (read.state === "too-large") {
    return { refused: `This file has ${read.bytes} bytes, more than are read. Split it into several.` };
  }
  const source = read.state === "read" ? decodeSource(read.bytes) : read;
  return source.state === "text" ? { text: source.text } : { refused: `This file was not read: ${source.reason}.` };
}

/** The path of a file's URI; `undefined` for any other scheme and for what is no address. */
function pathOf(uri: string): string | undefined {
  try {
    const parsed = URI.parse(uri, true);
    return parsed.scheme === "file" ? parsed.fsPath : undefined;
  } catch {
    return undefined;
  }
}

function uriOf(path: string): string {
  const uri = URI.file(path).toString();
  return uri.endsWith("/") && path !== sep ? uri.slice(0, -1) : uri;
}

function realPath(path: string): string | undefined {
  try {
    return realpathSync(path);
  } catch {
    return undefined;
  }
}

function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
