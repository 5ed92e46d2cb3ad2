import { isDay } from "../engine/waivers.ts";
import { UsageProblem } from "./problem.ts";

/** The day on which waivers are judged: the one given, else this machine's. */
export function dayOf(given: string | undefined, now = new Date()): string {
  if (given !== undefined) {
    if (!isDay(given)) throw new UsageProblem(`--today takes a day such as 2027-03-31; ${given} was given.`);
    return given;
  }
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
