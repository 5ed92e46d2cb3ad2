import { isUtf8 } from "node:buffer";
import { closeSync, constants, fstatSync, openSync, readFileSync } from "node:fs";
import { largestFile } from "../model/workshop.ts";
import { reasonOf } from "./list.ts";

/** What reading a file came to. A file that is too large to be read is not an error of reading: it is a finding. */
export type SourceText =
  | { readonly state: "read"; readonly text: string; readonly hasByteOrderMark: boolean }
  | { readonly state: "too-large"; readonly bytes: number }
  | { readonly state: "unreadable"; readonly reason: string };

/** UTF-8 takes at most three bytes for a UTF-16 unit, so a file of more bytes is certainly over the limit. */
const mostBytes = largestFile * 3;

const notBlocking = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** Reads a file as UTF-8 text without a byte order mark. Never throws and never waits on a pipe or a device. */
export function readSource(path: string): SourceText {
  let descriptor: number | undefined;
  try {
    descriptor = openSync(path, notBlocking);
    const status = fstatSync(descriptor);
    if (status.isDirectory()) return { state: "unreadable", reason: "it is a folder" };
    if (!status.isFile()) return { state: "unreadable", reason: "it is not a regular file" };
    if (status.size > mostBytes) return { state: "too-large", bytes: status.size };
    return decodeSource(readFileSync(descriptor));
  } catch (error) {
    return { state: "unreadable", reason: reasonOf(error) };
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

/** The text of a file's bytes. Bytes that are not UTF-8 are refused rather than guessed at. */
export function decodeSource(bytes: Buffer): SourceText {
  if (bytes.length > mostBytes) return { state: "too-large", bytes: bytes.length };
  if (bytes.includes(0)) return { state: "unreadable", reason: "it is not a text file" };
  if (!isUtf8(bytes)) return { state: "unreadable", reason: "it is not UTF-8 text; save it as UTF-8" };
  const text = bytes.toString("utf8");
  return text.charCodeAt(0) === 0xfeff
    ? { state: "read", text: text.slice(1), hasByteOrderMark: true }
    : { state: "read", text, hasByteOrderMark: false };
}
