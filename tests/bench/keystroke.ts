import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import type { CompletionList } from "vscode-languageserver-types";
import { Editor } from "../protocol/client.ts";
import { generateWorkshop, type WorkshopSize } from "./generate-workshop.ts";

/** Keystrokes measured for each size, after some that are not. */
const measured = 400;
const warmUp = 120;

/** Workshops of 2,000 and of 20,000 parts; the file typed in has about 1,000 lines in both. */
const sizes: readonly WorkshopSize[] = [
  { parts: 2000, builds: 100 },
  { parts: 20_000, builds: 1000 },
];

/** The target for the 95th percentile of the server's own work, in milliseconds: one frame of a display. */
const target = 16;

/**
 * How long it takes over standard input and output from a keystroke to the findings of the newest text, as the editor
 * sees it, and how long a list of completions takes that ranks the parts for a slot.
 */
export async function run(): Promise<void> {
  console.log(
    `\nFrom a keystroke to published findings, over standard input and output (${measured} keystrokes each):`,
  );
  for (const size of sizes) {
    const folder = mkdtempSync(join(tmpdir(), "ferrule-bench-"));
    try {
      await measure(folder, size);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}

async function measure(folder: string, size: WorkshopSize): Promise<void> {
  const files = generateWorkshop(size);
  for (const [path, text] of files) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  const root = pathToFileURL(folder).href;
  const path = "builds/builds-001.ferrule";
  const uri = `${root}/${path}`;
  const text = files.get(path) ?? "";
  const start = performance.now();
  const editor = await Editor.start({ folders: [root] });
  try {
    editor.open(uri, text);
    await editor.current(uri);
    const opened = performance.now() - start;
    await quiet(editor, [...files.keys()].filter((name) => name.startsWith("builds/")).length);
    const settled = performance.now() - start - 1000;
    const strokes = await type(editor, uri);
    const completion = await rank(editor, uri);
    const lines = text.split("\n").length;
    const own = strokes.flatMap((stroke) => stroke.own ?? []);
    console.log(`  ${size.parts} parts, ${size.builds} builds, ${lines} lines in the file:`);
    console.log(`    as the editor sees it        ${summary(strokes.map(({ wall }) => wall))}`);
    if (own.length > 0)
      console.log(`    the server's own work of it  ${summary(own)} (target for the 95th: ${target} ms)`);
    console.log(
      `    first findings of the open file after ${Math.round(opened)} ms, of all ${size.builds} builds after ` +
        `${(settled / 1000).toFixed(1)} s; parts ranked for a slot in ${completion}`,
    );
  } finally {
    await editor.stop();
  }
}

/** Settles when every build has been worked out and the server has said nothing for a while. */
async function quiet(editor: Editor, buildFiles: number): Promise<void> {
  const worked = (): number => [...editor.findings.keys()].filter((uri) => uri.includes("/builds/")).length;
  await editor.until("every build is worked out", () => worked() >= buildFiles, 300_000);
  for (let known = -1; known !== editor.published.length; ) {
    known = editor.published.length;
    await pause(1000);
  }
}

interface Stroke {
  /** Milliseconds from sending the edit to holding the findings. */
  readonly wall: number;
  /** Milliseconds of processor time that the server's main thread took, where the system tells. */
  readonly own?: number;
}

/** Types a word and takes it back, over and over, somewhere in every build of the file; waits for each answer. */
async function type(editor: Editor, uri: string): Promise<Stroke[]> {
  const strokes: Stroke[] = [];
  const words = [" spacers", "x", "\n    mass: 3", "2"];
  for (let round = 0; strokes.length < warmUp + measured; round++) {
    const text = editor.text(uri);
    // After the end of some line, which is where people type.
    const at = text.indexOf("\n", Math.floor((text.length * ((round * 7) % 97)) / 97));
    if (at < 0) continue;
    const word = words[round % words.length] ?? "x";
    for (let index = 0; index < word.length; index++) {
      strokes.push(await stroke(editor, uri, at + index, 0, word[index] ?? ""));
    }
    for (let left = word.length; left > 0; left--) strokes.push(await stroke(editor, uri, at + left - 1, 1, ""));
    if (editor.text(uri) !== text) throw new Error("the text did not come back to what it was");
  }
  return strokes.slice(warmUp);
}

async function stroke(editor: Editor, uri: string, at: number, removed: number, insert: string): Promise<Stroke> {
  const before = processorTime(editor);
  const start = performance.now();
  editor.type(uri, at, at + removed, insert);
  await editor.current(uri);
  const wall = performance.now() - start;
  const after = processorTime(editor);
  await pause(4);
  return { wall, ...(before === undefined || after === undefined ? {} : { own: after - before }) };
}

/** Milliseconds that the server's main thread has run so far; on Linux only. Other programs do not count into it. */
function processorTime({ child }: Editor): number | undefined {
  try {
    const [nanoseconds] = readFileSync(`/proc/${child.pid}/task/${child.pid}/schedstat`, "utf8").split(" ");
    return Number(nanoseconds) / 1e6;
  } catch {
    return undefined;
  }
}

function summary(times: readonly number[]): string {
  return `${percentile(times, 0.5)} ms median, ${percentile(times, 0.95)} ms 95th percentile, ${percentile(times, 1)} ms longest`;
}

/** Asks for the parts of a slot several times, each time after something else in the build has changed. */
async function rank(editor: Editor, uri: string): Promise<string> {
  const times: number[] = [];
  let count = 0;
  for (let round = 0; round < 12; round++) {
    editor.replace(uri, "category: mountain", `category: mountain // ${round}`);
    await editor.current(uri);
    const position = editor.positionOf(uri, "cassette: ", "cassette: ".length);
    const start = performance.now();
    const list = await editor.at<CompletionList>("textDocument/completion", uri, position);
    times.push(performance.now() - start);
    count = list.items.length;
    editor.replace(uri, `category: mountain // ${round}`, "category: mountain");
    await pause(20);
  }
  return `${percentile(times.slice(3), 0.5)} ms median (${count} in the answer)`;
}

function percentile(times: readonly number[], share: number): string {
  const sorted = [...times].sort((a, b) => a - b);
  const index = Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1));
  return (sorted[index] ?? Number.NaN).toFixed(1);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
