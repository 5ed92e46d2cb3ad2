/** Work on files, most wanted first, given up when something newer comes. */
export interface PublisherOptions {
  /** Works one file out and sends what was found. */
  publish(uri: string): void;
  /** Works on a file until it is ready to publish or the time is up. @returns true when it is ready. */
  prepare(uri: string, until: number): boolean;
  isOpen(uri: string): boolean;
  /** Calls back when pending input has had its turn, and not before so many milliseconds. */
  later(callback: () => void, milliseconds: number): void;
  /** Milliseconds, from anywhere. */
  now(): number;
}

/** How long one turn may take before waiting requests get theirs, in milliseconds. */
const slice = 6;

/** How long somebody who types is left alone before other files are worked on, in milliseconds. */
const pause = 60;

/**
 * A file whose answers take longer than this, in milliseconds, so many times running is not worked out for every
 * letter any more. Once alone may be the machine's doing.
 */
const longestAnswer = 60;
const mostSlowAnswers = 2;

/**
 * Sends findings: those of the edited file at once, in the same turn as the edit; those of other files it reaches in
 * the pauses, open files first. A newer edit puts its own file in front; nothing is ever worked out for a text that
 * is no longer the newest, since work is done on what the engine holds when its turn comes.
 */
export class Publisher {
  readonly #options: PublisherOptions;
  readonly #waiting = new Set<string>();
  /** How many answers of a file were slow, running. */
  readonly #slow = new Map<string, number>();
  /** Time spent on a file that is not ready yet, in milliseconds. */
  readonly #spent = new Map<string, number>();
  #scheduled = false;
  #lastEdit = Number.NEGATIVE_INFINITY;

  constructor(options: PublisherOptions) {
    this.#options = options;
  }

  /** A file came into the editor: its findings now, the others when there is time. */
  opened(uri: string, affected: Iterable<string>): void {
    this.#options.publish(uri);
    this.wait(affected);
    this.#waiting.delete(uri);
  }

  /** The edited file now, unless that takes long; the others when there is time. */
  edited(uri: string, affected: Iterable<string>): void {
    const start = this.#options.now();
    this.#lastEdit = start;
    this.wait(affected);
    if ((this.#slow.get(uri) ?? 0) >= mostSlowAnswers) {
      this.wait([uri]);
      return;
    }
    this.#waiting.delete(uri);
    this.#options.publish(uri);
    this.#judge(uri, this.#options.now() - start);
  }

  /** Files whose findings may have changed. */
  wait(affected: Iterable<string>): void {
    for (const uri of affected) this.#waiting.add(uri);
    this.#schedule();
  }

  /** Files of which nothing is to be said any more. */
  forget(uri: string): void {
    this.#waiting.delete(uri);
    this.#slow.delete(uri);
    this.#spent.delete(uri);
  }

  get isIdle(): boolean {
    return this.#waiting.size === 0;
  }

  #judge(uri: string, took: number): void {
    if (took > longestAnswer) this.#slow.set(uri, (this.#slow.get(uri) ?? 0) + 1);
    else this.#slow.delete(uri);
  }

  #schedule(): void {
    if (this.#scheduled || this.#waiting.size === 0) return;
    this.#scheduled = true;
    const quiet = this.#options.now() - this.#lastEdit;
    this.#options.later(() => this.#turn(), quiet < pause ? pause - quiet : 0);
  }

  #turn(): void {
    this.#scheduled = false;
    const start = this.#options.now();
    // An edit in the meantime: its writer is left alone a little longer.
    if (start - this.#lastEdit < pause) {
      this.#schedule();
      return;
    }
    const end = start + slice;
    do {
      const uri = this.#next();
      if (uri === undefined) return;
      const begun = this.#options.now() - (this.#spent.get(uri) ?? 0);
      if (!this.#options.prepare(uri, end)) {
        this.#spent.set(uri, this.#options.now() - begun);
        break;
      }
      this.#waiting.delete(uri);
      this.#spent.delete(uri);
      this.#options.publish(uri);
      this.#judge(uri, this.#options.now() - begun);
    } while (this.#options.now() < end);
    this.#schedule();
  }

  #next(): string | undefined {
    for (const uri of this.#waiting) if (this.#options.isOpen(uri)) return uri;
    return this.#waiting.values().next().value;
  }
}
