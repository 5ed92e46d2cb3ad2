import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { seeded } from "../bench/random.ts";
import { buildOnce } from "../command-line/built.ts";
import { Editor, folderWith, removeFolders } from "./client.ts";
import { workshopFiles } from "./workshop.ts";

beforeAll(buildOnce, 120_000);
afterAll(removeFolders);

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

const samples = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "samples");

/**
 * Every text of the samples, or of the workshop of these tests where there are none; but of the builds that are wrong on
 * purpose one file only, since every edit of a library has all that are open checked again.
 */
function sampleTexts(): ReadonlyMap<string, string> {
  if (!existsSync(samples)) return new Map(Object.entries(workshopFiles));
  const names = readdirSync(samples, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ferrule"))
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => !name.startsWith("wrong/") || name === "wrong/fellside-draft.ferrule");
  return new Map(names.map((name) => [name, readFileSync(join(samples, name), "utf8")]));
}

/** What people, and worse, put into a text: marks without partners, half words, other languages, rubbish. */
const pieces = [
  "{",
  "}",
  ";",
  ":",
  '"',
  "//",
  "///",
  "\n",
  "\r\n",
  "\t",
  " ",
  "part",
  "\npart cassette ",
  "\nbuild x from x {",
  "build fellside-l {\n",
  "waive ",
  "from ",
  "remove: ",
  "or",
  "none",
  "12.5 kg",
  "3,5 kg",
  "±",
  "10-12-14 t",
  "drivetrain.cassette",
  "\u0000",
  "\u202e",
  "\ud800",
  "\u{1f6b2}",
  "[a, b]",
  "'x'",
  "= true",
  "{".repeat(40),
  "\u00e9".repeat(30),
  "<script>",
  "`*_[x](y)",
];

/** Edits are few in a usual run, so that it is quick; a long run sets how many. */
const edits = Number(process.env.FERRULE_EDITS ?? 400);

const requests = [
  ["textDocument/hover", {}],
  ["textDocument/completion", {}],
  ["textDocument/definition", {}],
  ["textDocument/references", { context: { includeDeclaration: true } }],
  ["textDocument/documentHighlight", {}],
  ["textDocument/prepareRename", {}],
  ["textDocument/onTypeFormatting", { ch: "}", options: { tabSize: 2, insertSpaces: true } }],
] as const;

const wholeTextRequests = [
  ["textDocument/formatting", { options: { tabSize: 2, insertSpaces: true } }],
  ["textDocument/documentSymbol", {}],
  ["textDocument/semanticTokens/full", {}],
  ["textDocument/foldingRange", {}],
] as const;

test(`${edits} random edits of every kind never stop the server from answering`, { timeout: 600_000 }, async () => {
  const texts = sampleTexts();
  const folder = folderWith(Object.fromEntries(texts));
  editor = await Editor.start({ folders: [folder] });
  const running = editor;
  const random = seeded(20261125);
  const uris = [...texts.keys()].map((name) => `${folder}/${name}`);
  for (const [name, text] of texts) running.open(`${folder}/${name}`, text);
  let answered = 0;
  for (let count = 0; count < edits; count++) {
    const uri = random.pick(uris);
    const text = running.text(uri);
    const start = random.number(0, text.length);
    const isRemoval = random.number(0, 2) === 0;
    const end = isRemoval ? Math.min(text.length, start + random.number(0, 40)) : start;
    // A text that only grows would soon be nothing like one that a person writes.
    const insert = isRemoval && text.length > 200 ? "" : random.pick(pieces);
    running.type(uri, start, end, insert);
    if (count % 25 === 0) {
      const [method, more] = random.pick(requests);
      const position = { line: random.number(0, 60), character: random.number(0, 60) };
      await running.at(method, uri, position, more).catch(allowRefusal);
      answered++;
    }
    if (count % 100 === 0) {
      const [method, more] = random.pick(wholeTextRequests);
      await running.request(method, { textDocument: { uri }, ...more });
      answered++;
    }
  }
  expect(running.ended).toBeUndefined();
  expect(answered).toBeGreaterThanOrEqual(edits / 25);
  expect(running.log.filter((line) => /fault|failed/i.test(line))).toEqual([]);
  // After all that a text without a fault has no finding of the text.
  const uri = `${folder}/fresh.ferrule`;
  running.open(uri, `part cassette fresh.one "Fresh" {\n  speeds: 12\n}\n`);
  expect((await running.current(uri)).map(({ code }) => code)).toEqual([]);
});

/** A rename or the like may be refused; that is an answer. */
function allowRefusal(error: { readonly code?: number }): void {
  if (error.code === undefined || error.code === -32603) throw error;
}

test("texts that are no texts are answered like any other", async () => {
  editor = await Editor.start();
  const texts = [
    "",
    "\u0000\u0001\u0002",
    "{".repeat(5000),
    '"'.repeat(2001),
    `part ${"x".repeat(100_000)}`,
    "\ufeff",
    "\r\r\r",
  ];
  for (const [index, text] of texts.entries()) {
    const uri = `untitled:odd-${index}`;
    editor.open(uri, text);
    await editor.current(uri);
    for (const [method, more] of requests) {
      await editor.at(method, uri, { line: 0, character: 3 }, more).catch(allowRefusal);
    }
    for (const [method, more] of wholeTextRequests) await editor.request(method, { textDocument: { uri }, ...more });
    editor.close(uri);
  }
  expect(editor.log.filter((line) => /fault|failed/i.test(line))).toEqual([]);
});

test("edits that fit no text, and messages without what they need, do not end the server", async () => {
  editor = await Editor.start();
  const uri = "untitled:odd";
  const change = (range: object, version: number) =>
    editor?.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges: [{ range, text: "x" }],
    });
  await change({ start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, 1);
  editor.open(uri, "part cassette x {\n}\n");
  await change({ start: { line: 900, character: 9 }, end: { line: 9000, character: 9 } }, 2);
  await change({ start: { line: 1, character: 900 }, end: { line: 0, character: 2 } }, 3);
  await editor.connection.sendNotification("textDocument/didOpen", {});
  await editor.connection.sendNotification("workspace/didChangeWatchedFiles", {});
  await editor.request("textDocument/hover", {}).catch(() => undefined);
  expect(await editor.request("textDocument/documentSymbol", { textDocument: { uri } })).not.toBeUndefined();
  expect(editor.ended).toBeUndefined();
});

test("a message out of turn is refused by its proper code, and the next one is answered", async () => {
  const folder = folderWith(workshopFiles);
  const uri = `${folder}/builds/fellside.ferrule`;
  editor = await Editor.start({ folders: [folder] });
  const { connection } = editor;
  editor.open(uri, workshopFiles["builds/fellside.ferrule"] ?? "");
  const invalid = -32600;
  await expect(connection.sendRequest("initialize", { capabilities: {} })).rejects.toMatchObject({ code: invalid });
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  await expect(
    connection.sendRequest("textDocument/codeAction", { textDocument: { uri }, range }),
  ).resolves.toBeInstanceOf(Array);
  await connection.sendRequest("shutdown");
  await expect(
    connection.sendRequest("textDocument/hover", { textDocument: { uri }, position: range.start }),
  ).rejects.toMatchObject({ code: invalid });
});
