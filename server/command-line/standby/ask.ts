import type { CheckAnswer } from "../check-answer.ts";
import { heard, packQuestion, type Question, type StandbyState, unpackAnswer, unpackState } from "./message.ts";
import { socketAt } from "./place.ts";

/**
 * How long a standby may take, in milliseconds: to say that it heard, a little longer than what it does unasked may
 * keep it; and to answer, for which it takes no longer than the asker would itself (one that dies is noticed at once).
 */
const patience = { toHear: 600, toAnswer: 600_000 } as const;

/** Why there is no reply: nobody stands by, or somebody who has no time. */
export type NoReply = "nobody" | "busy";

/**
 * Asks the standby at a path to check. Whatever goes wrong, there is no answer, and the asker works it out as if
 * nobody stood by.
 */
export async function askForCheck(
  path: string,
  question: Extract<Question, { wanted: "check" }>,
): Promise<CheckAnswer | NoReply> {
  const reply = await ask(path, question);
  return typeof reply === "string" ? reply : (unpackAnswer(reply) ?? "busy");
}

/** What the standby at a path says of itself, and with `end` the last that it says. */
export async function askForState(path: string, wanted: "state" | "end"): Promise<StandbyState | NoReply> {
  const reply = await ask(path, { wanted });
  return typeof reply === "string" ? reply : (unpackState(reply) ?? "busy");
}

async function ask(path: string, question: Question): Promise<Buffer | NoReply> {
  if (socketAt(path) === undefined) return "nobody";
  const message = packQuestion(question);
  if (!message) return "busy";
  const { connect } = await import("node:net");
  return new Promise((resolve) => {
    const chunks: Buffer[] = [];
    const socket = connect(path);
    let timer: NodeJS.Timeout | undefined;
    const settle = (reply: Buffer | NoReply): void => {
      clearTimeout(timer);
      socket.destroy();
      resolve(reply);
    };
    const wait = (milliseconds: number): void => {
      clearTimeout(timer);
      timer = setTimeout(() => settle("busy"), milliseconds);
    };
    socket.on("error", ({ code }: NodeJS.ErrnoException) => {
      settle(code === "ECONNREFUSED" || code === "ENOENT" ? "nobody" : "busy");
    });
    socket.on("data", (chunk: Buffer) => {
      if (chunks.length === 0) {
        if (chunk[0] !== heard) return settle("busy");
        wait(patience.toAnswer);
      }
      chunks.push(chunk);
    });
    socket.on("end", () => settle(chunks.length === 0 ? "busy" : Buffer.concat(chunks).subarray(1)));
    wait(patience.toHear);
    socket.end(message);
  });
}
