import { readFileSync } from "node:fs";
import { reasonOf } from "../workshop-files/list.ts";
import { decodeSource } from "../workshop-files/read.ts";
import { UsageProblem } from "./problem.ts";

/**
 * All of standard input as text.
 * @throws UsageProblem when it cannot be read or is no UTF-8 text.
 */
export function readStandardInput(): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(0);
  } catch (error) {
    throw new UsageProblem(`Standard input cannot be read: ${reasonOf(error)}.`);
  }
  const source = decodeSource(bytes);
  if (source.state === "read") return source.text;
  if (source.state === "too-large") {
    throw new UsageProblem(`Standard input has ${source.bytes} bytes, more than are read.`);
  }
  throw new UsageProblem(`Standard input cannot be read: ${source.reason}.`);
}
