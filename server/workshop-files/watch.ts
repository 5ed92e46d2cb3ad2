import { type FSWatcher, watch } from "chokidar";
import { isSkippedFolder, reasonOf } from "./list.ts";
import { fileExtension } from "./root.ts";

/** What happened on the disk since the last time something was told; absolute paths. */
export interface FileChanges {
  /** Files of the language that were made or written. */
  readonly written: readonly string[];
  /** Files of the language, and folders, that went. */
  readonly removed: readonly string[];
}

/** A folder that is being watched. */
export interface FolderWatch {
  /** Settles when every change from now on is told; also when watching turned out to be impossible. */
  readonly ready: Promise<void>;
  stop(): Promise<void>;
}

/** What watching tells. */
export interface WatchListener {
  changed(changes: FileChanges): void;
  /** Something cannot be watched; why, in words for a person. What else there is goes on being watched. */
  failed(reason: string): void;
}

/** Milliseconds without news after which what came is told: saving one file can be several events. */
const quiet = 40;
/** Milliseconds after which what came is told even when more keeps coming, as when a repository is checked out. */
const longest = 400;

/**
 * Watches the `.ferrule` files under a folder. Folders that are not read are not watched either, and links are not
 * followed.
 * @param folder absolute.
 * @param isDeep whether folders inside are watched too.
 */
export function watchFolder(folder: string, isDeep: boolean, listener: WatchListener): FolderWatch {
  const written = new Set<string>();
  const removed = new Set<string>();
  let since = 0;
  let timer: NodeJS.Timeout | undefined;
  const tell = (): void => {
    timer = undefined;
    const changes = { written: [...written], removed: [...removed] };
    written.clear();
    removed.clear();
    listener.changed(changes);
  };
  const later = (): void => {
    const now = performance.now();
    if (timer === undefined) since = now;
    else clearTimeout(timer);
    timer = setTimeout(tell, Math.min(quiet, Math.max(0, since + longest - now)));
  };

  const watcher: FSWatcher = watch(folder, {
    ignoreInitial: true,
    followSymlinks: false,
    ...(isDeep ? {} : { depth: 0 }),
    ignored: (path, status) => {
      if (path === folder) return false;
      const name = path.slice(Math.max(path.lastIndexOf("/"), path.lastIndexOf("\\")) + 1);
      return isSkippedFolder(name) || (status !== undefined && !status.isDirectory() && !name.endsWith(fileExtension));
    },
  });
  watcher.on("all", (event, path) => {
    if (event === "addDir") return;
    if (event === "unlink" || event === "unlinkDir") {
      removed.add(path);
      written.delete(path);
    } else {
      written.add(path);
      removed.delete(path);
    }
    later();
  });
  const ready = new Promise<void>((resolve) => {
    watcher.on("ready", resolve);
    watcher.on("error", (error) => {
      listener.failed(reasonOf(error));
      resolve();
    });
  });
  return {
    ready,
    stop() {
      clearTimeout(timer);
      return watcher.close();
    },
  };
}
