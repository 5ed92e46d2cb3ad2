import { type SpawnSyncOptions, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach } from "vitest";
import { program } from "./built.ts";

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const folders: string[] = [];

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder of its own with these files, gone after the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "ferrule-")));
  folders.push(folder);
  for (const [path, content] of Object.entries(files)) {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
  return folder;
}

/** Runs the program as a person or a build server would. Nothing is remembered unless a test says where. */
export function ferrule(
  folder: string,
  words: readonly string[],
  options: { readonly input?: string | Uint8Array; readonly environment?: NodeJS.ProcessEnv } = {},
): Ran {
  const settings: SpawnSyncOptions = {
    cwd: folder,
    env: { PATH: process.env.PATH, HOME: folder, FERRULE_CACHE: "off", TZ: "UTC", ...options.environment },
    maxBuffer: 64 * 1024 * 1024,
    timeout: 30_000,
    ...(options.input === undefined ? { stdio: ["ignore", "pipe", "pipe"] } : { input: options.input }),
  };
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], settings);
  return { code: status, out: String(stdout), err: String(stderr) };
}
