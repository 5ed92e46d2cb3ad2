import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type { Diagnostic, Position, Range, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { LineIndex } from "../../server/engine/positions.ts";

/** The program as it ships; the benchmark bundles this file, so nothing here goes by where the file stands. */
const program = process.env.FERRULE_TEST_PROGRAM ?? join(process.cwd(), "dist", "ferrule.js");

/** What a client says of itself in these tests, unless a test says otherwise: what a common editor can do. */
export const usualCapabilities = {
  workspace: {
    workspaceFolders: true,
    didChangeWatchedFiles: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true },
    diagnostics: { refreshSupport: true },
  },
  textDocument: {
    hover: { contentFormat: ["markdown", "plaintext"] },
    completion: { completionItem: { snippetSupport: true } },
    definition: { linkSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
  },
};

export interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: Diagnostic[];
}

export interface ClientSettings {
  readonly folders?: readonly string[];
  readonly capabilities?: object;
  readonly options?: object;
}

/** An editor, as far as the server can tell: a process over standard input and output, and texts with versions. */
export class Editor {
  readonly connection: MessageConnection;
  readonly child: ChildProcess;
  /** Everything sent unasked, in order. */
  readonly published: Published[] = [];
  /** The latest findings of each file. */
  readonly findings = new Map<string, Published>();
  readonly log: string[] = [];
  readonly registered: { readonly method: string; readonly registerOptions?: unknown }[] = [];
  readonly texts = new Map<string, { version: number; text: string }>();
  capabilities: Record<string, unknown> = {};
  refreshes = 0;
  /** Set when the process ends. */
  ended: { readonly code: number | null } | undefined;
  readonly #waiting = new Set<() => void>();

  constructor(environment: NodeJS.ProcessEnv = {}) {
    this.child = spawn(process.execPath, [program, "serve", "--stdio"], {
      env: { PATH: process.env.PATH, FERRULE_CACHE: "off", ...environment },
      stdio: ["pipe", "pipe", "pipe"],
    });
    const { stdin, stdout, stderr } = this.child;
    if (!stdin || !stdout || !stderr) throw new Error("no pipes to the server");
    stderr.on("data", (data) => this.log.push(`stderr: ${data}`));
    this.child.on("close", (code) => {
      this.ended = { code };
      this.#wake();
    });
    this.connection = createMessageConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
    this.connection.onNotification("textDocument/publishDiagnostics", (parameters: Published) => {
      this.published.push(parameters);
      this.findings.set(parameters.uri, parameters);
      this.#wake();
    });
    this.connection.onNotification("window/logMessage", ({ message }: { message: string }) => {
      this.log.push(message);
      this.#wake();
    });
    this.connection.onRequest("client/registerCapability", ({ registrations }) => {
      this.registered.push(...registrations);
      this.#wake();
      return null;
    });
    this.connection.onRequest("workspace/diagnostic/refresh", () => {
      this.refreshes++;
      this.#wake();
      return null;
    });
    this.connection.onError(() => undefined);
    this.connection.listen();
  }

  /** Connects as a client of these settings. */
  static async start(settings: ClientSettings = {}, environment: NodeJS.ProcessEnv = {}): Promise<Editor> {
    const editor = new Editor(environment);
    await editor.initialize(settings);
    return editor;
  }

  async initialize({ folders = [], capabilities = usualCapabilities, options }: ClientSettings): Promise<void> {
    const answer = await this.connection.sendRequest<{ capabilities: Record<string, unknown> }>("initialize", {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: folders.map((uri) => ({ uri, name: uri.slice(uri.lastIndexOf("/") + 1) })),
      capabilities,
      ...(options === undefined ? {} : { initializationOptions: options }),
    });
    this.capabilities = answer.capabilities;
    await this.connection.sendNotification("initialized", {});
  }

  async stop(): Promise<void> {
    if (!this.ended) {
      try {
        await this.connection.sendRequest("shutdown");
        await this.connection.sendNotification("exit");
        await this.until("the server has ended", () => this.ended !== undefined, 5000);
      } catch {
        this.child.kill("SIGKILL");
      }
    }
    this.connection.dispose();
  }

  request<Answer>(method: string, parameters: unknown): Promise<Answer> {
    return this.connection.sendRequest<Answer>(method, parameters);
  }

  /** Asks about a place of an open text. */
  at<Answer>(method: string, uri: string, position: Position, more: object = {}): Promise<Answer> {
    return this.request<Answer>(method, { textDocument: { uri }, position, ...more });
  }

  open(uri: string, text: string): void {
    this.texts.set(uri, { version: 1, text });
    void this.connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "ferrule", version: 1, text },
    });
  }

  /** Types over a stretch of an open text, by offsets. */
  type(uri: string, start: number, end: number, insert: string): number {
    const held = this.texts.get(uri);
    if (!held) throw new Error(`${uri} is not open`);
    const lines = new LineIndex(held.text);
    const range = { start: lines.position(start), end: lines.position(end) };
    held.text = held.text.slice(0, start) + insert + held.text.slice(end);
    held.version++;
    void this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: held.version },
      contentChanges: [{ range, text: insert }],
    });
    return held.version;
  }

  /** Replaces a word of an open text by another. */
  replace(uri: string, before: string, after: string): number {
    const at = this.text(uri).indexOf(before);
    if (at < 0) throw new Error(`${before} does not occur`);
    return this.type(uri, at, at + before.length, after);
  }

  close(uri: string): void {
    this.texts.delete(uri);
    void this.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
  }

  /** Tells of a change on the disk, as the editor's watcher would. 1 made, 2 changed, 3 gone. */
  changedOnDisk(...changes: readonly { readonly uri: string; readonly type: 1 | 2 | 3 }[]): void {
    void this.connection.sendNotification("workspace/didChangeWatchedFiles", { changes });
  }

  text(uri: string): string {
    return this.texts.get(uri)?.text ?? "";
  }

  /** The place just before the first occurrence of some words, or so many characters into it. */
  positionOf(uri: string, words: string, into = 0): Position {
    const at = this.text(uri).indexOf(words);
    if (at < 0) throw new Error(`${words} does not occur`);
    return new LineIndex(this.text(uri)).position(at + into);
  }

  rangeOf(uri: string, words: string): Range {
    return { start: this.positionOf(uri, words), end: this.positionOf(uri, words, words.length) };
  }

  /** Applies a server's edit to the open texts and tells the server. */
  apply({ changes, documentChanges }: WorkspaceEdit): void {
    const byFile = new Map<string, TextEdit[]>(Object.entries(changes ?? {}));
    for (const change of documentChanges ?? []) {
      if (!("textDocument" in change)) continue;
      const { uri, version } = change.textDocument;
      const held = this.texts.get(uri);
      if (held && version !== null && version !== held.version) throw new Error(`an edit for version ${version}`);
      byFile.set(uri, change.edits as TextEdit[]);
    }
    for (const [uri, edits] of byFile) {
      const lines = new LineIndex(this.text(uri));
      const offsets = edits
        .map(({ range, newText }) => ({ start: lines.offset(range.start), end: lines.offset(range.end), newText }))
        .sort((a, b) => b.start - a.start);
      for (const { start, end, newText } of offsets) this.type(uri, start, end, newText);
    }
  }

  /** The findings of a text once they are those of its newest version. */
  async current(uri: string): Promise<Diagnostic[]> {
    const version = this.texts.get(uri)?.version;
    await this.until(`findings of version ${version} of ${uri}`, () => this.findings.get(uri)?.version === version);
    return this.findings.get(uri)?.diagnostics ?? [];
  }

  /** The findings of a file once they satisfy a condition. */
  async findingsWhen(
    uri: string,
    question: string,
    condition: (findings: readonly Diagnostic[]) => boolean,
  ): Promise<readonly Diagnostic[]> {
    await this.until(question, () => {
      const known = this.findings.get(uri);
      return known !== undefined && condition(known.diagnostics);
    });
    return this.findings.get(uri)?.diagnostics ?? [];
  }

  /** Waits until something is so; looks again whenever the server says anything. */
  async until(question: string, condition: () => boolean, milliseconds = 15_000): Promise<void> {
    const end = Date.now() + milliseconds;
    while (!condition()) {
      const left = end - Date.now();
      if (left <= 0) throw new Error(`${question}: not so after ${milliseconds} ms. ${this.log.join("\n")}`);
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, Math.min(left, 100));
        this.#waiting.add(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    }
  }

  #wake(): void {
    for (const waiting of this.#waiting) waiting();
    this.#waiting.clear();
  }
}

const folders: string[] = [];

/** A folder of its own with these files. @returns its address without a slash at the end. */
export function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "ferrule-protocol-")));
  folders.push(folder);
  for (const [path, content] of Object.entries(files)) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  return pathToFileURL(folder).href;
}

/** Removes every folder that was made. */
export function removeFolders(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** The codes of findings, with how often each occurs. */
export function codes(findings: readonly Diagnostic[]): string[] {
  return findings.map(({ code }) => String(code)).sort();
}

/** Findings that say something is wrong, as against what cannot be checked. */
export function wrong(findings: readonly Diagnostic[]): string[] {
  return codes(findings.filter(({ data }) => (data as { outcome?: string } | undefined)?.outcome !== "unknown"));
}
