import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
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

/** The target for the 95th percentile, in milliseconds: one frame of a display. */
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
    await quiet(editor);
    const settled = performance.now() - start;
    const times = await type(editor, uri);
    const completion = await rank(editor, uri);
    const [p50, p95, most] = [percentile(times, 0.5), percentile(times, 0.95), percentile(times, 1)];
    const lines = text.split("\n").length;
    console.log(
      `  ${size.parts} parts, ${size.builds} builds, ${lines} lines: ${p50} ms median, ${p95} ms 95th percentile ` +
        `(target ${target}), ${most} ms longest`,
    );
    console.log(
      `    first findings of the open file after ${Math.round(opened)} ms, of all ${size.builds} builds after ` +
        `${(settled / 1000).toFixed(1)} s; parts ranked for a slot: ${completion}`,
    );
  } finally {
    await editor.stop();
  }
}

/** Settles when the server has said nothing for a while: the rest of the workshop is worked out. */
async function quiet(editor: Editor): Promise<void> {
  for (let known = -1; known !== editor.published.length; ) {
    known = editor.published.length;
    await pause(1500);
  }
}

/** Types a word and takes it back, over and over, somewhere in every build of the file; waits for each answer. */
async function type(editor: Editor, uri: string): Promise<number[]> {
  const times: number[] = [];
  const words = [" spacers", "x", "\n    ", "2"];
  for (let count = 0; count < warmUp + measured; ) {
    const text = editor.text(uri);
    // After the end of some line, which is where people type.
    const at = text.indexOf("\n", Math.floor((text.length * ((count * 7) % 97)) / 97));
    if (at < 0) continue;
    const word = words[count % words.length] ?? "x";
    for (const letter of word) count += await stroke(editor, uri, at + word.indexOf(letter), 0, letter, times, count);
    for (let left = word.length; left > 0; left--) {
      count += await stroke(editor, uri, at + left - 1, 1, "", times, count);
    }
    if (editor.text(uri) !== text) throw new Error("the text did not come back to what it was");
  }
  return times;
}

async function stroke(
  editor: Editor,
  uri: string,
  at: number,
  removed: number,
  insert: string,
  times: number[],
  count: number,
): Promise<1> {
  const start = performance.now();
  editor.type(uri, at, at + removed, insert);
  await editor.current(uri);
  if (count >= warmUp) times.push(performance.now() - start);
  await pause(4);
  return 1;
}

/** Asks for the parts of a slot several times, each time as if a letter had been typed elsewhere in the build. */
async function rank(editor: Editor, uri: string): Promise<string> {
  const times: number[] = [];
  let count = 0;
  for (let round = 0; round < 12; round++) {
    const position = editor.positionOf(uri, "cassette: ", "cassette: ".length);
    editor.replace(uri, "category: mountain", round % 2 === 0 ? "category: gravel" : "category: mountain");
    if (round % 2 === 1) editor.replace(uri, "category: gravel", "category: mountain");
    await editor.current(uri);
    const start = performance.now();
    const list = await editor.at<CompletionList>("textDocument/completion", uri, position);
    times.push(performance.now() - start);
    count = list.items.length;
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
