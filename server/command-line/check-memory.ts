import { readdirSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { cacheFolder, forget } from "./cache-folder.ts";
import type { CheckAnswer, CheckSettings } from "./check-answer.ts";
import type { ReadWorkshop } from "./read-workshops.ts";
import { programDigest } from "./version.ts";

/** Answers that are kept; the oldest go first. */
const mostAnswers = 32;
/** Bytes of files beyond which nothing is remembered. */
const mostBytes = 16 * 1024 * 1024;

const prefix = "check-";

/** What an answer is called, and one that was left half-written: other files may lie in a folder that somebody named. */
const names = /^check-[0-9a-f]{16}(?:\.\d+)?$/;

/** What an answer was given to. */
interface Question {
  readonly program: string;
  readonly settings: CheckSettings;
  /** Every file of every workshop: its path, its size, and whether it was asked for. */
  readonly files: readonly (readonly [path: string, size: number, asked: boolean])[];
}

/**
 * Remembers the answers of earlier checks.
 *
 * An answer counts only for the same program, the same settings, the same list of files and the same bytes in each of
 * them: they are kept with it and compared one by one, so that no edit can go unnoticed. Nothing here is ever needed:
 * what cannot be read or written is left aside.
 */
export class CheckMemory {
  readonly #file: string;
  readonly #question: string;
  readonly #contents: readonly Buffer[];

  private constructor(folder: string, question: Question, contents: readonly Buffer[]) {
    this.#question = JSON.stringify(question);
    this.#contents = contents;
    // Of the files only the first few that were asked for: a name need not tell everything apart.
    const asked = question.files.filter((file) => file[2]).slice(0, 4);
    this.#file = join(
      folder,
      `${prefix}${fingerprint(JSON.stringify([question.settings, asked.map(([path]) => path)]))}`,
    );
  }

  /**
   * The memory for one question; nothing when it cannot be kept.
   * @param program what tells the program from any other; empty for one that is not to be told.
   */
  static open(
    settings: CheckSettings,
    workshops: readonly ReadWorkshop[],
    program = programDigest,
  ): CheckMemory | undefined {
    if (program === "") return undefined;
    const contents: Buffer[] = [];
    const files: [string, number, boolean][] = [];
    let size = 0;
    for (const workshop of workshops) {
      // What could not be read may be readable next time.
      if (workshop.leftOut.some(({ serious }) => serious)) return undefined;
      for (const { path, bytes } of workshop.files) {
        if (typeof bytes === "number") return undefined;
        contents.push(bytes);
        files.push([path, bytes.length, workshop.asked.has(path)]);
        size += bytes.length;
      }
    }
    if (size > mostBytes) return undefined;
    const folder = cacheFolder();
    return folder === undefined ? undefined : new CheckMemory(folder, { program, settings, files }, contents);
  }

  /** The answer given before, when everything is as it was then. */
  recall(): CheckAnswer | undefined {
    try {
      const kept = readFileSync(this.#file);
      const lengths = [kept.readUInt32LE(0), kept.readUInt32LE(4)] as const;
      let start = 8;
      const take = (length: number): Buffer => {
        start += length;
        return kept.subarray(start - length, start);
      };
      if (take(lengths[0]).toString("utf8") !== this.#question) return undefined;
      const answer = take(lengths[1]).toString("utf8");
      for (const content of this.#contents) if (!take(content.length).equals(content)) return undefined;
      if (start !== kept.length) return undefined;
      const { text, exitCode } = JSON.parse(answer) as { readonly text?: unknown; readonly exitCode?: unknown };
      return typeof text === "string" && typeof exitCode === "number"
        ? { pieces: [text], exitCode, leftOut: [] }
        : undefined;
    } catch {
      return undefined;
    }
  }

  /** Keeps an answer, unless something that matters could not be read. */
  remember({ pieces, exitCode, leftOut }: CheckAnswer): void {
    if (leftOut.some(({ serious }) => serious)) return;
    if (pieces.reduce((length, piece) => length + piece.length, 0) > mostBytes) return;
    const text = pieces.join("");
    const aside = `${this.#file}.${process.pid}`;
    try {
      const question = Buffer.from(this.#question, "utf8");
      const answer = Buffer.from(JSON.stringify({ text, exitCode }), "utf8");
      const lengths = Buffer.alloc(8);
      lengths.writeUInt32LE(question.length, 0);
      lengths.writeUInt32LE(answer.length, 4);
      writeFileSync(aside, Buffer.concat([lengths, question, answer, ...this.#contents]), { mode: 0o600 });
      renameSync(aside, this.#file);
      forgetOldest(join(this.#file, ".."));
    } catch {
      // A full or read-only disk: the next check is as slow as this one, and leaves nothing half-written.
      forget(aside);
    }
  }
}

function forgetOldest(folder: string): void {
  const answers = readdirSync(folder).filter((name) => names.test(name));
  if (answers.length <= mostAnswers) return;
  const byAge = answers
    .map((name) => ({ path: join(folder, name), time: statSync(join(folder, name)).mtimeMs }))
    .sort((a, b) => a.time - b.time);
  for (const { path } of byAge.slice(0, answers.length - mostAnswers)) unlinkSync(path);
}

/** A short name for a text (FNV-1a, 32 bits, twice); two texts of one name only take turns in one file. */
function fingerprint(text: string): string {
  let forward = 0x811c9dc5;
  let backward = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) {
    forward = Math.imul(forward ^ text.charCodeAt(at), 0x01000193);
    backward = Math.imul(backward ^ text.charCodeAt(text.length - 1 - at), 0x01000193);
  }
  return (forward >>> 0).toString(16).padStart(8, "0") + (backward >>> 0).toString(16).padStart(8, "0");
}
