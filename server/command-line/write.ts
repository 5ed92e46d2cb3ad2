import { writeSync } from "node:fs";

const closed = new Set<number>();
let failed = false;

/** True when something could not be written although its reader was there, as on a full disk. */
export function outputFailed(): boolean {
  return failed;
}

/** A pause without a timer, for a pipe whose reader is slower than we are. */
function pause(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}

/**
 * Writes a text to an open file, all of it, before returning. When the reader has gone away the rest is dropped in
 * silence: it asked for no more.
 */
export function writeAll(descriptor: number, text: string): void {
  if (closed.has(descriptor) || text === "") return;
  const bytes = Buffer.from(text, "utf8");
  let written = 0;
  while (written < bytes.length) {
    try {
      written += writeSync(descriptor, bytes, written);
    } catch (error) {
      const { code } = error as { code?: string };
      if (code === "EAGAIN") {
        pause(5);
        continue;
      }
      closed.add(descriptor);
      // A full disk is no reader that went away: results that are not there must not look like success.
      if (code !== "EPIPE" && code !== "EOF") failed = true;
      return;
    }
  }
}
