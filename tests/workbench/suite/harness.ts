/**
 * The tests in this folder run inside an extension host, on the desktop or in a browser's worker, so they may use `vscode`
 * and nothing of Node. What each one showed is told on the console, one line of JSON each, which the program outside reads.
 */
import * as vscode from "vscode";

/** What a test may be handed: how to end early, naming what this workbench lacks. */
export interface TestContext {
  /** Ends the test as skipped. @param reason what this workbench lacks, printed beside the test's name */
  skip(reason: string): never;
}

interface Registered {
  readonly name: string;
  readonly body: (context: TestContext) => Promise<void> | void;
  readonly timeout: number;
}

class Skipped extends Error {}

const registered: Registered[] = [];

/** The mark at the start of each console line meant for the program outside. */
const mark = "ferrule-workbench-test ";

/**
 * Registers a test. Tests run one after another in the order of their files and lines.
 * @param timeout milliseconds after which the test has failed
 */
export function test(name: string, body: Registered["body"], timeout = 30_000): void {
  registered.push({ name, body, timeout });
}

async function outcomeOf({ body, timeout }: Registered): Promise<{ outcome: string; detail?: string }> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const expired = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not finished after ${timeout} ms`)), timeout);
  });
  const context: TestContext = {
    skip(reason) {
      throw new Skipped(reason);
    },
  };
  try {
    await Promise.race([Promise.resolve().then(() => body(context)), expired]);
    return { outcome: "passed" };
  } catch (error) {
    if (error instanceof Skipped) return { outcome: "skipped", detail: error.message };
    return { outcome: "failed", detail: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  } finally {
    clearTimeout(timer);
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  }
}

/** Runs every registered test: the extension host calls this and takes a rejection for failure. */
export async function run(): Promise<void> {
  let failed = 0;
  for (const candidate of registered) {
    const started = Date.now();
    const { outcome, detail } = await outcomeOf(candidate);
    if (outcome === "failed") failed += 1;
    console.log(mark + JSON.stringify({ name: candidate.name, outcome, detail, milliseconds: Date.now() - started }));
  }
  console.log(mark + JSON.stringify({ end: registered.length }));
  if (failed > 0) throw new Error(`${failed} of ${registered.length} tests failed`);
}
