import type { CheckAnswer, CheckSettings } from "../check-answer.ts";
import type { ReadFile, ReadWorkshop } from "../read-workshops.ts";

/** What a standby is asked. Files come as bytes: it reads none itself, so its answer is one to what the asker saw. */
export type Question =
  | {
      readonly wanted: "check";
      readonly settings: CheckSettings;
      readonly workshops: readonly ReadWorkshop[];
      /** The program for which the answer is to be remembered; absent when it is not. */
      readonly keptFor?: string;
    }
  | { readonly wanted: "state" | "end" };

/** What a standby says of itself. */
export interface StandbyState {
  readonly process: number;
  readonly version: string;
  /** Checks that it answered. */
  readonly answered: number;
  /** Workshops that it holds. */
  readonly workshops: number;
  /** Memory that it takes, in bytes. */
  readonly memory: number;
  /** Seconds without a question after which it ends. */
  readonly patience: number;
}

/** The first byte of every reply, sent at once: who does not see it soon asks a standby that has no time. */
export const heard = 0x06;

/** Bytes of a question beyond which it is not asked. */
export const mostBytes = 64 * 1024 * 1024;

const headerLength = 8;

/** A message is the lengths of its two halves, JSON that says what it is, and bytes that belong to it. */
function pack(what: unknown, contents: readonly Buffer[]): Buffer {
  const json = Buffer.from(JSON.stringify(what), "utf8");
  const lengths = Buffer.alloc(headerLength);
  lengths.writeUInt32LE(json.length, 0);
  lengths.writeUInt32LE(
    contents.reduce((sum, content) => sum + content.length, 0),
    4,
  );
  return Buffer.concat([lengths, json, ...contents]);
}

/** The halves of a message; nothing when it is not whole. */
function unpack(message: Buffer): { readonly what: unknown; readonly contents: Buffer } | undefined {
  if (message.length < headerLength) return undefined;
  const length = message.readUInt32LE(0);
  if (message.length !== headerLength + length + message.readUInt32LE(4)) return undefined;
  try {
    const what: unknown = JSON.parse(message.toString("utf8", headerLength, headerLength + length));
    return { what, contents: message.subarray(headerLength + length) };
  } catch {
    return undefined;
  }
}

interface PackedWorkshop extends Omit<ReadWorkshop, "files" | "asked"> {
  /** Path and number of bytes; a file too large to be read has none in the message. */
  readonly files: readonly (readonly [path: string, length: number, isTooLarge: boolean])[];
  readonly asked: readonly string[];
}

/** @returns nothing for a question too large to be asked. */
export function packQuestion(question: Question): Buffer | undefined {
  if (question.wanted !== "check") return pack(question, []);
  const files = question.workshops.flatMap((workshop) => workshop.files);
  const contents = files.flatMap(({ bytes }) => (typeof bytes === "number" ? [] : [bytes]));
  if (contents.reduce((sum, { length }) => sum + length, 0) > mostBytes) return undefined;
  const workshops: readonly PackedWorkshop[] = question.workshops.map((workshop) => ({
    ...workshop,
    asked: [...workshop.asked],
    files: workshop.files.map(({ path, bytes }) =>
      typeof bytes === "number" ? [path, bytes, true] : [path, bytes.length, false],
    ),
  }));
  return pack({ ...question, workshops }, contents);
}

/** @returns nothing for what is no whole question. Who asks is the same program, so its parts are taken as they come. */
export function unpackQuestion(message: Buffer): Question | undefined {
  const unpacked = unpack(message);
  if (!unpacked) return undefined;
  const question = unpacked.what as Question | null;
  if (question?.wanted !== "check") return question ?? undefined;
  let start = 0;
  const take = ([path, length, isTooLarge]: PackedWorkshop["files"][number]): ReadFile => {
    if (isTooLarge) return { path, bytes: length };
    start += length;
    return { path, bytes: unpacked.contents.subarray(start - length, start) };
  };
  const workshops = (question.workshops as unknown as readonly PackedWorkshop[]).map((workshop) => ({
    ...workshop,
    asked: new Set(workshop.asked),
    files: workshop.files.map(take),
  }));
  return start === unpacked.contents.length ? { ...question, workshops } : undefined;
}

/** What is packed of an answer beside the text of its pieces. */
interface PackedAnswer extends Omit<CheckAnswer, "pieces"> {
  /** Bytes of each piece. Together they may be more than one string can hold. */
  readonly lengths: readonly number[];
}

export function packAnswer({ pieces, exitCode, leftOut }: CheckAnswer): Buffer {
  const contents = pieces.map((piece) => Buffer.from(piece, "utf8"));
  const what: PackedAnswer = { exitCode, leftOut, lengths: contents.map(({ length }) => length) };
  return pack(what, contents);
}

/** @returns nothing for what is no whole answer. */
export function unpackAnswer(message: Buffer): CheckAnswer | undefined {
  const unpacked = unpack(message);
  const what = unpacked?.what as Partial<PackedAnswer> | null | undefined;
  if (!unpacked || typeof what?.exitCode !== "number" || !Array.isArray(what.leftOut)) return undefined;
  if (!Array.isArray(what.lengths)) return undefined;
  let start = 0;
  const pieces = what.lengths.map((length: number) => {
    start += length;
    return unpacked.contents.toString("utf8", start - length, start);
  });
  if (start !== unpacked.contents.length) return undefined;
  return { pieces, exitCode: what.exitCode, leftOut: what.leftOut };
}

export function packState(state: StandbyState): Buffer {
  return pack(state, []);
}

/** @returns nothing for what is no whole state. */
export function unpackState(message: Buffer): StandbyState | undefined {
  const state = unpack(message)?.what as StandbyState | undefined;
  return typeof state?.process === "number" ? state : undefined;
}
