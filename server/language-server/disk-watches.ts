import type { Host, HostWatch } from "./host.ts";
import type { Sessions } from "./sessions.ts";

/**
 * Watches the disk itself, for a client that does not tell of changes: one watch for every folder that was looked
 * through.
 */
export class DiskWatches {
  readonly #host: Host;
  readonly #sessions: Sessions;
  readonly #failed: (what: string, error: unknown) => void;
  readonly #watches = new Map<string, { readonly isDeep: boolean; readonly watch: Promise<HostWatch | undefined> }>();

  constructor(host: Host, sessions: Sessions, failed: (what: string, error: unknown) => void) {
    this.#host = host;
    this.#sessions = sessions;
    this.#failed = failed;
  }

  /** Follows a folder that has just been looked through. */
  async follow(folder: string, isDeep: boolean): Promise<void> {
    const known = this.#watches.get(folder);
    if (known && (known.isDeep || !isDeep)) return;
    this.leave(folder);
    const watch = this.#begin(folder, isDeep);
    this.#watches.set(folder, { isDeep, watch });
    if (await watch) await this.#catchUp(folder, isDeep);
  }

  leave(folder: string): void {
    const known = this.#watches.get(folder);
    this.#watches.delete(folder);
    known?.watch.then((watch) => watch?.stop());
  }

  async #begin(folder: string, isDeep: boolean): Promise<HostWatch | undefined> {
    const what = `The folder ${folder} cannot be watched`;
    try {
      return await this.#host.watch?.(folder, isDeep, {
        changed: (written, removed) => {
          this.#sessions.changedOnDisk(written, removed).catch((error) => this.#failed(what, error));
        },
        failed: (reason) => this.#failed(what, reason),
      });
    } catch (error) {
      this.#failed(what, error);
      return undefined;
    }
  }

  /** Takes in what was written between the looking through and the begin of the watch, which nothing told of. */
  async #catchUp(folder: string, isDeep: boolean): Promise<void> {
    try {
      const present = isDeep ? await this.#host.list(folder) : await this.#host.listFolder(folder);
      const isPresent = new Set(present);
      const gone = this.#sessions.all
        .filter(({ root }) => root === folder)
        .flatMap((session) => [...session.files].filter((uri) => !isPresent.has(uri) && !session.openTexts.has(uri)));
      await this.#sessions.changedOnDisk(present, gone);
    } catch (error) {
      this.#failed(`The folder ${folder} cannot be looked through`, error);
    }
  }
}
