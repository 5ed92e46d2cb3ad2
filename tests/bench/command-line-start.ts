import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { generateWorkshop } from "./generate-workshop.ts";

/** Runs of each program; they take turns, so that whatever else the machine does slows all of them alike. */
const turns = 31;

interface Contender {
  readonly label: string;
  readonly words: readonly string[];
  /** Where the program keeps what it may forget; `off` for nowhere. */
  readonly cache: string;
}

/**
 * How long the command line takes on one build of a library of 120 parts, beside an empty Node program: again with
 * nothing changed, after an edit, and on a machine where it keeps nothing.
 */
export async function run(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ferrule-bench-"));
  try {
    const workshop = join(folder, "workshop");
    for (const [path, text] of generateWorkshop({ parts: 120, builds: 4, buildsPerFile: 1, partsPerFile: 30 })) {
      const file = join(workshop, path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
    const program = join(process.cwd(), "dist", "ferrule.js");
    const cache = join(folder, "cache");
    const build = join("builds", "builds-001.ferrule");
    const contenders: readonly Contender[] = [
      { label: "an empty Node program", words: ["-e", "0"], cache: "off" },
      { label: "ferrule check, nothing changed since", words: [program, "check", build], cache },
      { label: "ferrule check, something changed", words: [program, "check", "--no-cache", build], cache },
      { label: "ferrule check, keeping nothing", words: [program, "check", build], cache: "off" },
    ];
    const medians = measure(contenders, workshop);
    console.log(`Command line on one build of a library of 120 parts (median of ${turns} runs each, taking turns):`);
    const empty = medians[0] ?? Number.NaN;
    contenders.forEach(({ label }, index) => {
      const median = medians[index] ?? Number.NaN;
      const ratio = index === 0 ? "" : `  ${(median / empty).toFixed(2)} times`;
      console.log(`  ${label.padEnd(38)} ${median.toFixed(1).padStart(7)} ms${ratio}`);
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The median of each contender's times, in milliseconds, after one run that does not count. */
function measure(contenders: readonly Contender[], folder: string): number[] {
  const times: number[][] = contenders.map(() => []);
  for (let turn = 0; turn <= turns; turn++) {
    contenders.forEach(({ words, cache, label }, index) => {
      const started = performance.now();
      const { status, stderr } = spawnSync(process.execPath, words, {
        cwd: folder,
        env: { ...process.env, FERRULE_CACHE: cache },
        stdio: ["ignore", "ignore", "pipe"],
        encoding: "utf8",
      });
      if (status !== 0) throw new Error(`${label} ended with ${status}: ${stderr}`);
      if (turn > 0) times[index]?.push(performance.now() - started);
    });
  }
  return times.map((list) => list.sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN);
}
