import { dirname } from "node:path";
import { printable } from "../../reports/printable.ts";
import { cacheFolder } from "../cache-folder.ts";
import type { Invocation } from "../command.ts";
import { localDay } from "../day.ts";
import { exitCodes } from "../exit-codes.ts";
import { isUsageProblem, UsageProblem } from "../problem.ts";
import { readWorkshops } from "../read-workshops.ts";
import { askForState, type NoReply } from "../standby/ask.ts";
import { letGoOfInherited } from "../standby/inherited.ts";
import type { StandbyState } from "../standby/message.ts";
import { everySocketPath } from "../standby/place.ts";
import { Standby } from "../standby/serve.ts";
import { startStandby } from "../standby/start.ts";
import { findTargets, Roots } from "../targets.ts";
import { wholeNumber } from "../whole-number.ts";

/** Seconds without a question after which a standby ends. */
const usualPatience = 600;
const longestPatience = 86_400;

/** Milliseconds: how long a standby may take to come up and to go, and how often is looked for it. */
const pauses = { toComeUp: 10_000, toGo: 5000, toLook: 50 } as const;

/**
 * Says whether a standby answers checks; starts one, ends it, or is one.
 * @param path where this program's listens, which only its entry point knows; nothing where there is to be none.
 */
export async function run(invocation: Invocation, path: string | undefined): Promise<number> {
  const { terminal, positionals, has, value } = invocation;
  const ways = ["start", "stop", "serve"].filter(has);
  if (ways.length > 1) throw new UsageProblem(`standby takes one of --${ways.join(" and --")} at a time.`);
  const [way] = ways;
  if (positionals.length > 0 && (way === undefined || way === "stop")) {
    throw new UsageProblem("standby takes paths with --start and --serve only: what is to be taken in at once.");
  }
  if (has("seconds") && way !== "serve") throw new UsageProblem("--seconds goes with --serve.");
  const patience = wholeNumber("seconds", value("seconds"), longestPatience) ?? usualPatience;
  if (way === "stop") return stop(terminal.write);
  if (path === undefined) {
    if (way !== undefined) throw new UsageProblem(`No standby can be started here: ${reasonForNone()}.`);
    terminal.write(`No standby is asked here: ${reasonForNone()}.\n`);
    return exitCodes.clean;
  }
  if (way === "serve") return serve(path, patience, invocation);
  const state = await (way === "start" ? start(path, invocation) : askForState(path, "state"));
  if (way === "start" && state === "nobody") {
    throw new UsageProblem("No standby could be started.", [
      `It listens in the cache folder, ${printable(dirname(path))}, which may be full or not to be written to (FERRULE_CACHE names another).`,
    ]);
  }
  terminal.write(`${said(state)}\n`);
  return exitCodes.clean;
}

function reasonForNone(): string {
  const { FERRULE_STANDBY, FERRULE_CACHE } = process.env;
  if (process.platform === "win32") return "not on Windows, where every user could ask it";
  if (FERRULE_STANDBY === "off") return "FERRULE_STANDBY=off";
  if (FERRULE_CACHE === "off") return "it listens in the cache folder, and FERRULE_CACHE=off";
  const folder = cacheFolder();
  if (folder === undefined) {
    return "it listens in the cache folder, and there is none that is yours alone (FERRULE_CACHE names another)";
  }
  return `it listens in the cache folder, and the path of ${printable(folder)} is too long (FERRULE_CACHE names another)`;
}

function said(state: StandbyState | NoReply): string {
  if (state === "nobody") return "No standby is running. Checks are worked out from the start.";
  if (state === "busy") return "A standby is running and has no time to say more: it is at work on a workshop.";
  const { answered, workshops, memory, patience } = state;
  const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? "" : "s"}`;
  return (
    `A standby is running: process ${state.process}, ferrule ${state.version}, ${counted(answered, "check")} answered, ` +
    `${counted(workshops, "workshop")} held in ${Math.round(memory / 1024 ** 2)} MB. It ends after ` +
    `${counted(patience, "second")} without a question.`
  );
}

async function start(path: string, { positionals, folder }: Invocation): Promise<StandbyState | NoReply> {
  const before = await askForState(path, "state");
  if (before !== "nobody") return before;
  // A path that is not there is said here, where somebody reads it.
  findTargets(positionals, folder, new Roots());
  if (!(await startStandby(path, positionals, folder))) return "nobody";
  const end = performance.now() + pauses.toComeUp;
  let state = await askForState(path, "state");
  // While it takes in what it was told to, it has no time either.
  while (typeof state === "string" && performance.now() < end) {
    await pause(pauses.toLook);
    state = await askForState(path, "state");
  }
  return state;
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Waits until a process is gone, for a while: it has something to put away, as in a cache that is about to be removed. */
async function gone(processNumber: number): Promise<void> {
  const end = performance.now() + pauses.toGo;
  while (performance.now() < end) {
    try {
      process.kill(processNumber, 0);
    } catch {
      return;
    }
    await pause(pauses.toLook);
  }
}

/** Ends every standby of this user, those of other versions of the program too. */
async function stop(write: (text: string) => void): Promise<number> {
  let found = false;
  let exitCode: number = exitCodes.clean;
  for (const path of everySocketPath()) {
    const state = await askForState(path, "end");
    if (state === "nobody") continue;
    found = true;
    if (state === "busy") exitCode = exitCodes.usage;
    else await gone(state.process);
    write(
      state === "busy"
        ? "A standby has no time to listen: it is at work on a workshop. Try again.\n"
        : `The standby, process ${state.process}, has ended.\n`,
    );
  }
  if (!found) write("No standby is running.\n");
  return exitCode;
}

async function serve(path: string, patience: number, { positionals, folder, terminal }: Invocation): Promise<number> {
  process.title = "ferrule standby";
  letGoOfInherited();
  const standby = new Standby(path, patience);
  if (!(await standby.listen())) {
    terminal.warn("ferrule: another standby is running, or none can listen there.\n");
    return exitCodes.usage;
  }
  const end = (): void => standby.end();
  process.once("SIGINT", end);
  process.once("SIGTERM", end);
  try {
    if (positionals.length > 0) {
      const read = readWorkshops(findTargets(positionals, folder, new Roots()), undefined, folder);
      await standby.takeIn(read, folder, localDay());
    }
  } catch (error) {
    // Gone since: there is nothing to be taken in.
    if (!isUsageProblem(error)) throw error;
  }
  // So that no folder is kept from being removed or unmounted; what is named from here stays where it is.
  process.env.FERRULE_CACHE = dirname(path);
  process.chdir("/");
  await standby.ended;
  return exitCodes.clean;
}
