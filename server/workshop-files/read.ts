import { isUtf8 } from "node:buffer";
import { closeSync, constants, fstatSync, openSync, readFileSync } from "node:fs";
import { reasonOf } from "./list.ts";

/** What reading a file came to. A file that is too large to be read is not an error of reading: it is a finding. */
export type SourceBytes =
  | { readonly state: "read"; readonly bytes: Buffer }
  | { readonly state: "too-large"; readonly bytes: number }
  | { readonly state: "unreadable"; readonly reason: string };

/** What the bytes of a file come to as text. */
export type SourceText =
  | { readonly state: "text"; readonly text: string; readonly hasByteOrderMark: boolean }
  | { readonly state: "unreadable"; readonly reason: string };

/**
 * The largest file that is looked into. UTF-8 takes at most three bytes for a UTF-16 unit, so a larger one is
 * certainly over the limit that the model sets for a text.
 */
export const mostBytes = 24 * 1024 * 1024;

const notWaiting = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/**
 * The bytes of a file. Never throws and never waits on a pipe or a device.
 * @param most bytes of a file that is read; what a source may have when left out.
 */
export function readBytes(path: string, most: number = mostBytes): SourceBytes {
  let descriptor: number | undefined;
  try {
    descriptor = openSync(path, notWaiting);
    const status = fstatSync(descriptor);
    if (status.isDirectory()) return { state: "unreadable", reason: "it is a folder" };
    if (!status.isFile()) return { state: "unreadable", reason: "it is not a regular file" };
    if (status.size > most) return { state: "too-large", bytes: status.size };
    const bytes = readFileSync(descriptor);
    return bytes.length > most ? { state: "too-large", bytes: bytes.length } : { state: "read", bytes };
  } catch (error) {
    return { state: "unreadable", reason: reasonOf(error) };
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

/** The text of a file's bytes, without a byte order mark. Bytes that are not UTF-8 are refused, not guessed at. */
export function decodeSource(bytes: Buffer): SourceText {
  if (bytes.includes(0)) return { state: "unreadable", reason: "it is not a text file" };
  if (!isUtf8(bytes)) return { state: "unreadable", reason: "it is not UTF-8 text; save it as UTF-8" };
  const text = bytes.toString("utf8");
  return text.charCodeAt(0) === 0xfeff
    ? { state: "text", text: text.slice(1), hasByteOrderMark: true }
    : { state: "text", text, hasByteOrderMark: false };
}
