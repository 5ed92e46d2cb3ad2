/** Finds a Chromium that starts on this machine. Nothing is downloaded: one comes inside a package of the registry. */
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";

/** No browser of this machine starts. The message says what was tried and what each attempt lacked. */
export class NoBrowser extends Error {}

const browserArguments = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-dev-shm-usage",
  "--disable-background-networking",
  "--no-first-run",
  // Nothing but our own server: a request to anywhere else fails at once instead of slowly.
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE *.localhost",
];

interface Candidate {
  readonly label: string;
  readonly executablePath: string;
  readonly environment: Record<string, string>;
}

const packages = join(dirname(fileURLToPath(import.meta.url)), "node_modules");

/**
 * Unpacks the browser of the package, with the libraries and fonts it carries for machines that have none.
 * The package unpacks to the temporary folder and takes a half-written file for a whole one, so it is given a folder of
 * its own, which gets its final name only when it is complete.
 */
async function unpackedBrowser(): Promise<string> {
  const folder = join(packages, ".chromium");
  if (existsSync(folder)) return folder;
  const staging = `${folder}-${process.pid}`;
  mkdirSync(staging, { recursive: true });
  const temporary = process.env.TMPDIR;
  process.env.TMPDIR = staging;
  try {
    const { default: packaged, inflate } = await import("@sparticuz/chromium");
    await packaged.executablePath();
    await inflate(join(packages, "@sparticuz", "chromium", "bin", "al2023.tar.br"));
    // Its own list of font folders names places of the machines it was made for.
    writeFileSync(join(staging, "fonts", "fonts.conf"), fontsConfiguration(join(folder, "fonts")));
  } finally {
    if (temporary === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = temporary;
  }
  if (existsSync(folder)) rmSync(staging, { recursive: true });
  else renameSync(staging, folder);
  return folder;
}

function fontsConfiguration(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}</dir>
  <cachedir>${join(folder, "cache")}</cachedir>
</fontconfig>
`;
}

async function candidates(): Promise<Candidate[]> {
  const found: Candidate[] = [];
  const named = process.env.CHROMIUM_EXECUTABLE;
  if (named !== undefined) found.push({ label: "CHROMIUM_EXECUTABLE", executablePath: named, environment: {} });
  if (process.platform === "linux" && process.arch === "x64") {
    const folder = await unpackedBrowser();
    const executablePath = join(folder, "chromium");
    const fonts = existsSync("/etc/fonts/fonts.conf") ? undefined : { FONTCONFIG_PATH: join(folder, "fonts") };
    found.push({ label: "the packaged Chromium", executablePath, environment: { ...fonts } });
    found.push({
      label: "the packaged Chromium with its own libraries",
      executablePath,
      environment: { ...fonts, LD_LIBRARY_PATH: join(folder, "al2023", "lib") },
    });
  }
  for (const path of ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"]) {
    if (existsSync(path)) found.push({ label: path, executablePath: path, environment: {} });
  }
  return found;
}

/** The one line of a browser's failure that says what is missing. */
function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return /error while loading shared libraries: .*/.exec(text)?.[0] ?? text.split("\n", 1)[0] ?? text;
}

/** Starts a headless browser. @throws NoBrowser when none starts */
export async function launchBrowser(): Promise<Browser> {
  const reasons: string[] = [];
  for (const { label, executablePath, environment } of await candidates()) {
    try {
      return await chromium.launch({
        executablePath,
        args: browserArguments,
        env: { ...(process.env as Record<string, string>), ...environment },
      });
    } catch (error) {
      reasons.push(`${label}: ${reasonOf(error)}`);
    }
  }
  throw new NoBrowser(
    reasons.length > 0
      ? `no browser starts here (${reasons.join("; ")})`
      : "no browser here: install Chromium, or name one in CHROMIUM_EXECUTABLE",
  );
}
