/** Work on files, most wanted first, given up when something newer comes. */
export interface PublisherOptions {
  /** Works one file out and sends what was found. */
  publish(uri: string): void;
  /** Works on a file until it is ready to publish or the time is up. @returns true when it is ready. */
  prepare(uri: string, until: number): boolean;
  isOpen(uri: string): boolean;
  /** How long one turn may take before waiting requests get theirs, in milliseconds. */
  readonly slice?: number;
  /** Calls back when pending input has had its turn. */
  later(callback: () => void): void;
  now(): number;
}

/**
 * Sends findings: those of the edited file at once, in the same turn as the edit; those of other files it reaches in
 * the pauses, open files first. A newer edit puts its own file in front; nothing is ever worked out for a text that
 * is no longer the newest, since work is done on what the engine holds when its turn comes.
 */
export class Publisher {
  readonly #options: PublisherOptions;
  readonly #waiting = new Set<string>();
  #scheduled = false;

  constructor(options: PublisherOptions) {
    this.#options = options;
  }

  /** The edited file now, the others when there is time. */
  edited(uri: string, affected: ReadonlySet<string>): void {
    this.#waiting.delete(uri);
    this.#options.publish(uri);
    this.wait(affected, uri);
  }

  /** Files whose findings may have changed. */
  wait(affected: Iterable<string>, except?: string): void {
    for (const uri of affected) if (uri !== except) this.#waiting.add(uri);
    this.#schedule();
  }

  get idle(): boolean {
    return this.#waiting.size === 0;
  }

  #schedule(): void {
    if (this.#scheduled || this.#waiting.size === 0) return;
    this.#scheduled = true;
    this.#options.later(() => this.#turn());
  }

  #turn(): void {
    this.#scheduled = false;
    const end = this.#options.now() + (this.#options.slice ?? 8);
    do {
      const uri = this.#next();
      if (uri === undefined) return;
      if (!this.#options.prepare(uri, end)) break;
      this.#waiting.delete(uri);
      this.#options.publish(uri);
    } while (this.#options.now() < end);
    this.#schedule();
  }

  #next(): string | undefined {
    for (const uri of this.#waiting) if (this.#options.isOpen(uri)) return uri;
    return this.#waiting.values().next().value;
  }
}
