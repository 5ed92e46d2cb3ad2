import { mkdirSync, rmdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
// @ts-expect-error A script without types; its one export is used as it is.
import { build } from "../../.scripts/build.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** A program from elsewhere, such as an installed package, to be tested instead of this checkout's. */
const given = process.env.FERRULE_TEST_PROGRAM;

/** The program as it ships. */
export const program = given ?? join(root, "dist", "ferrule.js");

const lock = join(root, "dist", ".building");
/** Milliseconds after which a lock was left behind by somebody who was stopped. */
const stale = 60_000;

/** Builds what ships unless it is up to date. Test files run side by side, so only one of them builds at a time. */
export async function buildOnce(): Promise<void> {
  if (given !== undefined) return;
  mkdirSync(dirname(lock), { recursive: true });
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      const since = statSync(lock, { throwIfNoEntry: false })?.mtimeMs;
      if (since !== undefined && Date.now() - since > stale) rmdirSync(lock);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  try {
    await build();
  } finally {
    rmdirSync(lock);
  }
}
