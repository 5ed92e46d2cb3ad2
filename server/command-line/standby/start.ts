import { accessSync, constants, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/**
 * Whether a check that was just worked out is to leave a standby behind. By itself only where a person sits, who is
 * likely to check again: never on a build server, in a hook of git or at a pipe.
 * @param isAttended whether a person sits there, which is costly to find out.
 */
export function wantsStandby(environment: NodeJS.ProcessEnv, isAttended: () => boolean): boolean {
  const { FERRULE_STANDBY, CI } = environment;
  if (FERRULE_STANDBY === "on") return true;
  return FERRULE_STANDBY !== "off" && (CI === undefined || CI === "" || CI === "false") && isAttended();
}

/**
 * Starts a standby that outlives this process. When one listens already it ends by itself.
 * @param socket where it is to listen.
 * @param paths what it takes in at once, so that the first question is answered quickly too.
 * @param folder where relative ones start.
 * @returns false when it could not listen, or there is no room for another process: the next check is as slow as this.
 */
export async function startStandby(socket: string, paths: readonly string[], folder: string): Promise<boolean> {
  const { spawn } = await import("node:child_process");
  // Room for what a check leaves behind, so that it is cleared away seldom.
  const words = ["--max-semi-space-size=32", __filename, "standby", "--serve", "--", ...paths];
  try {
    // Of a cache that is only read from every check would start one in vain.
    accessSync(dirname(socket), constants.W_OK);
    // What is asked of Node for a command, such as to open a port for a debugger, is not meant for what stays behind.
    const { NODE_OPTIONS: _, ...env } = process.env;
    const child = spawn(process.execPath, words, { cwd: folder, env, detached: true, stdio: "ignore" });
    child.on("error", () => undefined);
    child.unref();
    return child.pid !== undefined;
  } catch {
    // Some reasons are thrown, such as paths so long that these words do not fit beside them any more.
    return false;
  }
}

/** Says once on each machine that a process stays behind. */
export function sayOnce(socket: string, warn: (text: string) => void): void {
  try {
    // Fails when it is there already, or when many checks at once are about to say it.
    writeFileSync(join(dirname(socket), "standby-told"), "", { flag: "wx" });
    warn(
      "ferrule: a standby was started, which answers the next checks sooner and ends after ten minutes without one. " +
        "ferrule standby says more; with FERRULE_STANDBY=off none is started. This is said once.\n",
    );
  } catch {
    // Who cannot keep that it was said is not told at every check.
  }
}
