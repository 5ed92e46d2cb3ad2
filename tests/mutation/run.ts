import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { Script } from "node:vm";
import { bundleTests } from "./bundle.ts";
import { type InstrumenterModule, instrument, type Mutant } from "./instrument.ts";
import { LoadedTests, passes } from "./load.ts";
import { findReach, type KnownTest, type Reach } from "./reach.ts";
import { makeSwitches, type Switches } from "./switches.ts";

/** The packages that are fetched when this is run. */
export interface Tools {
  readonly instrumenter: InstrumenterModule;
  readonly expect: Readonly<Record<string, unknown>>;
  readonly chai: { use(plugin: unknown): unknown; readonly expect: unknown };
}

/** Where the mutants are, and the tests that are to find them. */
const mutated = ["server/checks", "server/calculations"];
const tested = ["tests/checks", "tests/calculations", "tests/published-values", "tests/samples"];
/** Tables and types: there is nothing in them that could be wrong by one operator. */
const leftOut = /(?:^|\/)(?:index|define|table)\.ts$/;

/**
 * Seconds that the tests of one mutant may take, if nothing else is asked for. What many builds reach has thousands of tests, and the one that
 * fails may be the last of them: a mutant whose time is up is counted as surviving, but told apart from the others.
 */
const usualSeconds = 30;

/**
 * Mutation testing in one process: every mutant stands in the code behind a switch; the bundle is loaded anew with one
 * of them switched on, and the tests that reach it are run until one fails.
 * @returns the exit code: 0 when at least nine of ten mutants are found.
 */
export async function run(words: readonly string[], tools: Tools): Promise<number> {
  const root = process.cwd();
  const option = (name: string): string | undefined => {
    const index = words.indexOf(`--${name}`);
    return index < 0 ? undefined : words[index + 1];
  };
  const sample = Number(option("sample") ?? Number.POSITIVE_INFINITY);
  const seed = Number(option("seed") ?? 1);
  const longest = 1000 * Number(option("seconds") ?? usualSeconds);
  const parts = words
    .filter((word, index) => !word.startsWith("--") && !/^--(sample|seed|seconds)$/.test(words[index - 1] ?? ""))
    .map((word) => {
      const [, path = word, line] = /^(.*?)(?::(\d+))?$/.exec(word) ?? [];
      return { path, line: line === undefined ? undefined : Number(line) };
    });

  const files = filesBelow(root, mutated)
    .filter((file) => !leftOut.test(file))
    .filter((file) => parts.length === 0 || parts.some(({ path }) => relative(root, file).includes(path)));
  const testFiles = filesBelow(root, tested).filter((file) => file.endsWith(".test.ts"));
  const { texts, mutants } = await instrument(files, tools.instrumenter);
  const source = await bundleTests(root, testFiles, texts);
  const script = new Script(`(function (require, module, exports, files, metaUrl) {${source}\n})`, {
    filename: "tests.js",
  });
  const switches = makeSwitches();
  const expect = expectation(tools);
  const load = (): LoadedTests => new LoadedTests(script, root, expect);
  const reach = await findReach(load, mutants, switches);
  for (const { file, name } of reach.failing) {
    console.warn(`Left out, since it fails without any mutant: ${file}: ${name}`);
  }

  const isWanted = ({ fileName, location }: Mutant): boolean =>
    parts.length === 0 ||
    parts.some(
      ({ path, line }) =>
        relative(root, fileName).includes(path) && (line === undefined || line === location.start.line + 1),
    );
  const chosen = pick(mutants.filter(isWanted), sample, seed);
  console.log(
    `${mutants.length} mutants in ${files.length} files; ${chosen.length} are tried with ${reach.tests.length} tests.`,
  );
  const survivors: Mutant[] = [];
  const isListed = words.includes("--list");
  const began = performance.now();
  let found = 0;
  let outOfTime = 0;
  for (const [done, mutant] of chosen.entries()) {
    const tests = inOrder(reach, mutant, ownName(root, mutant.fileName));
    const outcome = await isFound(mutant, tests, longest, load, switches);
    if (outcome === true) found++;
    else {
      survivors.push(mutant);
      if (outcome === "out of time") outOfTime++;
      if (isListed) console.log(`${describe(root, mutant)}${outcome === "out of time" ? "  (out of time)" : ""}`);
    }
    if ((done + 1) % 50 === 0) {
      const seconds = (performance.now() - began) / 1000;
      console.log(`${done + 1} of ${chosen.length}, ${found} found, ${seconds.toFixed(0)} s`);
    }
  }
  report(root, chosen.length, found, survivors);
  if (outOfTime > 0) console.log(`${outOfTime} of those that survive ran out of time before every test was tried.`);
  return found >= 0.9 * chosen.length ? 0 : 1;
}

/** The name under which the examples of a check or calculation are tested: `drivetrain/speeds`, `chain-length`. */
function ownName(root: string, file: string): string {
  const path = relative(root, file).replace(/\.ts$/, "");
  return path.startsWith("server/checks/") ? path.slice("server/checks/".length) : (path.split("/").at(-1) ?? path);
}

/**
 * The tests that may find a mutant: those that bear its file's name, then those that come by the mutant itself, then
 * the others; the quickest first.
 */
function inOrder(reach: Reach, mutant: Mutant, own: string): readonly KnownTest[] {
  const files = reach.filesFor(mutant);
  const isOwn = ({ name }: KnownTest): boolean =>
    name.startsWith(own) || name.includes(`${own} >`) || name.includes(`${own}:`);
  const tests = reach.tests.filter(({ file }) => files.has(file));
  const rank = new Map(tests.map((test) => [test, isOwn(test) ? 0 : reach.comesBy(test, mutant) ? 1 : 2]));
  return tests.sort(
    (one, other) => (rank.get(one) ?? 2) - (rank.get(other) ?? 2) || one.milliseconds - other.milliseconds,
  );
}

async function isFound(
  mutant: Mutant,
  tests: readonly KnownTest[],
  longest: number,
  load: () => LoadedTests,
  switches: Switches,
): Promise<boolean | "out of time"> {
  switches.activeMutant = mutant.id;
  switches.hitLimit = 2_000_000;
  try {
    const loaded = load();
    const until = performance.now() + longest;
    for (const { file, place } of tests) {
      // What is counted is whether one test goes on for ever, not how many tests there are.
      switches.hitCount = 0;
      const test = loaded.testsOf(file)[place];
      // With a mutant fewer tests may be there: that is noticed.
      if (!test || !(await passes(test))) return true;
      if (performance.now() > until) return "out of time";
    }
    return false;
  } catch {
    return true;
  } finally {
    switches.activeMutant = undefined;
  }
}

/** Where tests keep what was said, by the folder in which they keep it. */
const snapshotsIn: Readonly<Record<string, string>> = {
  variations: "tests/checks",
  pairs: "tests/checks",
  facts: "tests/calculations",
  workings: "tests/calculations",
};
const snapshots = new Map<string, string>();

interface ChaiStatic {
  readonly Assertion: { addMethod(name: string, method: (this: { _obj: string }, name: string) => void): void };
}

function expectation({ chai, expect }: Tools): unknown {
  for (const plugin of ["JestExtend", "JestChaiExpect", "JestAsymmetricMatchers"]) chai.use(expect[plugin]);
  chai.use(({ Assertion }: ChaiStatic) => {
    Assertion.addMethod("toMatchFileSnapshot", function (this: { _obj: string }, name: string) {
      const kept = snapshots.get(name) ?? readFileSync(join(snapshotsIn[name.split("/")[0] ?? ""] ?? "", name), "utf8");
      snapshots.set(name, kept);
      if (this._obj !== kept) throw new Error(`${name} differs`);
    });
  });
  return chai.expect;
}

function filesBelow(root: string, folders: readonly string[]): string[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
      .map((entry) => join(entry.parentPath, entry.name))
      .sort(),
  );
}

/** So many of the mutants, the same ones for the same seed. */
function pick(mutants: readonly Mutant[], count: number, seed: number): readonly Mutant[] {
  if (count >= mutants.length) return mutants;
  let state = seed >>> 0;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return mutants
    .map((mutant) => ({ mutant, at: random() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, count)
    .map(({ mutant }) => mutant);
}

/** The text between two places, lines and columns from nought. */
function stretch(text: string, { start, end }: Mutant["location"]): string {
  const lines = text.split("\n");
  return lines
    .slice(start.line, end.line + 1)
    .map((line, index, all) =>
      line.slice(index === 0 ? start.column : 0, index === all.length - 1 ? end.column : undefined),
    )
    .join("\n");
}

/** Where a mutant stands, and what it makes of what is written there. */
function describe(root: string, { fileName, location, mutatorName, replacement }: Mutant): string {
  const oneLine = (text: string): string => text.replace(/\s+/g, " ").slice(0, 90);
  const original = stretch(readFileSync(fileName, "utf8"), location);
  const place = `${relative(root, fileName)}:${location.start.line + 1}`;
  return `${place}  ${mutatorName}: ${oneLine(original)}  ->  ${oneLine(replacement)}`;
}

function report(root: string, count: number, found: number, survivors: readonly Mutant[]): void {
  const byFile = new Map<string, number>();
  for (const { fileName } of survivors) byFile.set(fileName, (byFile.get(fileName) ?? 0) + 1);
  for (const [file, left] of [...byFile].sort((a, b) => b[1] - a[1]).slice(0, 20)) {
    console.log(`${String(left).padStart(4)} survive in ${relative(root, file)}`);
  }
  console.log(
    `${count} mutants, ${found} found (${((100 * found) / Math.max(1, count)).toFixed(1)} %), ${survivors.length} survive.`,
  );
}
