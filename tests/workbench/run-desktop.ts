/**
 * Runs `suite/` inside the extension host of a desktop VS Code: the one that VSCODE_EXECUTABLE names, or a downloaded one.
 * Writes { passed, failed, skipped } to the file named by FERRULE_TEST_SUMMARY.
 */
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createInterface } from "node:readline";
import { bundleSuite, copyOfSamples, Report } from "./report.ts";
import { extensionFolder } from "./workbench.ts";

/** What keeps a desktop VS Code from running here, or nothing. */
async function obstacle(): Promise<string | undefined> {
  const named = process.env.VSCODE_EXECUTABLE;
  if (named !== undefined)
    return existsSync(named) ? undefined : `VSCODE_EXECUTABLE names ${named}, which does not exist`;
  try {
    const address = "https://update.code.visualstudio.com/api/releases/stable";
    const { ok, status } = await fetch(address, { signal: AbortSignal.timeout(5_000) });
    return ok ? undefined : `no desktop VS Code here (set VSCODE_EXECUTABLE): its download answers ${status}`;
  } catch {
    return "no desktop VS Code here (set VSCODE_EXECUTABLE), and none can be downloaded";
  }
}

/** A window needs a display; where there is none, a virtual one does. @returns the words to put before a command */
function display(): string[] | undefined {
  if (process.platform !== "linux" || process.env.DISPLAY || process.env.WAYLAND_DISPLAY) return [];
  return existsSync("/usr/bin/xvfb-run") ? ["/usr/bin/xvfb-run", "--auto-servernum"] : undefined;
}

/** The half that runs as a process of its own, so that what VS Code prints can be read. */
async function launch(tests: string, folder: string): Promise<void> {
  const { runTests } = await import("@vscode/test-electron");
  const executable = process.env.VSCODE_EXECUTABLE;
  await runTests({
    ...(executable === undefined ? {} : { vscodeExecutablePath: executable }),
    extensionDevelopmentPath: extensionFolder,
    extensionTestsPath: tests,
    launchArgs: [folder, "--disable-extensions", "--disable-workspace-trust"],
  });
}

async function main(): Promise<void> {
  const report = new Report("desktop workbench");
  const prefix = display();
  const reason =
    (await obstacle()) ??
    (prefix === undefined ? "a desktop VS Code needs a display: set DISPLAY or install xvfb" : undefined);
  if (reason !== undefined || prefix === undefined) {
    report.notRun(reason ?? "no display");
  } else {
    const command = [...prefix, process.execPath, import.meta.filename, await bundleSuite(), copyOfSamples()];
    const child = spawn(command[0] as string, command.slice(1), { stdio: ["ignore", "pipe", "inherit"] });
    for await (const line of createInterface({ input: child.stdout })) report.read(line);
    report.closeSuite();
  }
  report.write();
}

const [tests, folder] = process.argv.slice(2);
if (tests !== undefined && folder !== undefined) {
  await launch(tests, folder).catch((error) => {
    console.error(String(error));
    process.exitCode = 1;
  });
} else {
  await main();
}
