import { readFileSync } from "node:fs";
import { reasonOf } from "../workshop-files/list.ts";
import { mostBytes } from "../workshop-files/read.ts";
import { UsageProblem } from "./problem.ts";

/**
 * All of standard input.
 * @throws UsageProblem when it cannot be read or is larger than what is read.
 */
export function readStandardInput(): Buffer {
  let bytes: Buffer;
  try {
    bytes = readFileSync(0);
  } catch (error) {
    throw new UsageProblem(`Standard input cannot be read: ${reasonOf(error)}.`);
  }
  if (bytes.length > mostBytes) {
    throw new UsageProblem(`Standard input has ${bytes.length} bytes; at most ${mostBytes} are read.`);
  }
  return bytes;
}
