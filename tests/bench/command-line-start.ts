import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { generateWorkshop } from "./generate-workshop.ts";

/** Runs of each program; they take turns, so that whatever else the machine does slows all of them alike. */
const turns = 31;

/** Milliseconds between an edit and the next check: as quick as a hand is. Every other run waits as long. */
const moment = 150;

interface Contender {
  readonly label: string;
  readonly words: readonly string[];
  /** Where the program keeps what it may forget; `off` for nowhere. */
  readonly cache: string;
  /** Whether something is changed in the build a moment before each run. */
  readonly isAfterEdit?: boolean;
  /** Whether a standby may answer. */
  readonly standby?: "on" | "off";
}

/**
 * How long the command line takes on one build of a library of 120 parts, beside an empty Node program: again with
 * nothing changed, after an edit with and without a standby, and on a machine where it keeps nothing.
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
    const check = [program, "check", build];
    const contenders: readonly Contender[] = [
      { label: "an empty Node program", words: ["-e", "0"], cache: "off" },
      { label: "nothing changed since", words: check, cache },
      { label: "after an edit, a standby running", words: check, cache, isAfterEdit: true, standby: "on" },
      { label: "after an edit, no standby", words: check, cache, isAfterEdit: true },
      { label: "keeping nothing", words: check, cache: "off" },
    ];
    const edit = editsOf(join(workshop, build));
    const medians = measure(contenders, workshop, edit);
    console.log(`Command line on one build of a library of 120 parts (median of ${turns} runs each, taking turns):`);
    const empty = medians[0] ?? Number.NaN;
    contenders.forEach(({ label }, index) => {
      const median = medians[index] ?? Number.NaN;
      const ratio = index === 0 ? "" : `  ${(median / empty).toFixed(2)} times`;
      console.log(`  ${label.padEnd(38)} ${median.toFixed(1).padStart(7)} ms${ratio}`);
    });
    spawnSync(process.execPath, [program, "standby", "--stop"], { env: { ...process.env, FERRULE_CACHE: cache } });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Changes a setting of the build, to another value each time, so that nothing of it is remembered. */
function editsOf(file: string): () => void {
  const text = readFileSync(file, "utf8");
  const written = "steerer-length: 190 mm";
  if (!text.includes(written)) throw new Error(`the build does not state ${written}`);
  let edits = 0;
  return () => {
    edits += 1;
    writeFileSync(file, text.replace(written, `steerer-length: ${190 + edits / 10} mm`));
  };
}

function wait(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}

/** The median of each contender's times, in milliseconds, after one run that does not count. */
function measure(contenders: readonly Contender[], folder: string, edit: () => void): number[] {
  const times: number[][] = contenders.map(() => []);
  for (let turn = 0; turn <= turns; turn++) {
    contenders.forEach(({ words, cache, label, isAfterEdit, standby = "off" }, index) => {
      if (isAfterEdit) edit();
      wait(moment);
      const started = performance.now();
      const { status, stderr } = spawnSync(process.execPath, words, {
        cwd: folder,
        env: { ...process.env, FERRULE_CACHE: cache, FERRULE_STANDBY: standby },
        stdio: ["ignore", "ignore", "pipe"],
        encoding: "utf8",
      });
      if (status !== 0) throw new Error(`${label} ended with ${status}: ${stderr}`);
      if (turn > 0) times[index]?.push(performance.now() - started);
    });
  }
  return times.map((list) => list.sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN);
}
