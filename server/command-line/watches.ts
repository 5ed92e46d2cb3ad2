import { type FolderWatch, watchFolder } from "../workshop-files/watch.ts";

/** The watches of the folders that workshops lie in. */
export class Watches {
  readonly #watches = new Map<string, FolderWatch>();
  readonly #changed: () => void;
  readonly #failed: (reason: string) => void;
  readonly #isDeep: boolean;

  /**
   * @param failed told why something cannot be watched, in words for a person.
   * @param isDeep whether folders inside are watched too.
   */
  constructor(changed: () => void, failed: (reason: string) => void, isDeep = true) {
    this.#changed = changed;
    this.#failed = failed;
    this.#isDeep = isDeep;
  }

  /**
   * Watches these folders and no others.
   * @returns true when one was not watched before.
   */
  async follow(folders: readonly string[]): Promise<boolean> {
    for (const [folder, watch] of this.#watches) {
      if (folders.includes(folder)) continue;
      this.#watches.delete(folder);
      await watch.stop();
    }
    const begun = folders.filter((folder) => !this.#watches.has(folder));
    for (const folder of begun) {
      const watch = watchFolder(folder, this.#isDeep, {
        changed: this.#changed,
        failed: this.#failed,
      });
      this.#watches.set(folder, watch);
    }
    await Promise.all(begun.map((folder) => this.#watches.get(folder)?.ready));
    return begun.length > 0;
  }

  async stop(): Promise<void> {
    await Promise.all([...this.#watches.values()].map((watch) => watch.stop()));
    this.#watches.clear();
  }
}
