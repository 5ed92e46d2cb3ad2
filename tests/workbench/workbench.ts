/** A real VS Code workbench: served from a package, opened in a headless browser, driven as a person would. */
import { type ChildProcess, fork } from "node:child_process";
import { closeSync, mkdirSync, openSync, readdirSync } from "node:fs";
import { createServer } from "node:net";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, FrameLocator, Page } from "playwright-core";
import { launchBrowser } from "./browser.ts";
import type { ServeSettings } from "./serve.ts";

const here = dirname(fileURLToPath(import.meta.url));

/** The project's root, which is also the extension's folder. */
export const extensionFolder = dirname(dirname(here));

/** Where logs and pictures of failures go. */
export const outputFolder = join(here, "output");

/** The themes a view must be legible in, by what the workbench calls them. */
export const themes = {
  light: "Light Modern",
  dark: "Dark Modern",
  "high-contrast": "Default High Contrast",
  "high-contrast-light": "Default High Contrast Light",
} as const;

export interface StartSettings {
  /** The folder to open. The workbench keeps changes in its own memory: nothing on disk is written. */
  readonly folder: string;
  /** The folder of the extension under test; this project's by default. */
  readonly extension?: string;
  /** A bundled test module to run inside the extension host, at or below the extension's folder. */
  readonly tests?: string;
  /** Size of the window in CSS pixels; 1280 by 800 by default. */
  readonly width?: number;
  readonly height?: number;
  /** Physical pixels for each CSS pixel, 1 by default. */
  readonly scale?: number;
  readonly theme?: keyof typeof themes;
  /** Further settings of the workbench, by their full names. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Called with each console line of the extension host while `tests` run. */
  readonly onLog?: (line: string) => void;
}

/** Settings that keep the first screen quiet and off the network. */
const quietSettings = {
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.enableExperiments": false,
  "workbench.layoutControl.enabled": false,
  "window.commandCenter": false,
  "security.workspace.trust.enabled": false,
  "telemetry.telemetryLevel": "off",
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "chat.disableAIFeatures": true,
  "editor.minimap.enabled": false,
  "update.showReleaseNotes": false,
};

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}

async function startServer(settings: ServeSettings): Promise<ChildProcess> {
  mkdirSync(outputFolder, { recursive: true });
  const log = openSync(join(outputFolder, "server.log"), "a");
  const child = fork(join(here, "serve.ts"), [JSON.stringify(settings)], { stdio: ["ignore", log, log, "ipc"] });
  closeSync(log);
  await new Promise<void>((resolve, reject) => {
    child.once("message", () => resolve());
    child.once("exit", (code) =>
      reject(new Error(`the workbench's server ended (exit code ${code}); see ${outputFolder}/server.log`)),
    );
  });
  return child;
}

/** A workbench in a browser. Stop it when done, whatever happened. */
export class Workbench {
  readonly page: Page;
  /** What the page reported as errors, oldest first. */
  readonly errors: string[] = [];
  /** Settles with the exit code of the tests that run inside the extension host. */
  readonly testsEnded: Promise<number>;
  readonly #browser: Browser;
  readonly #server: ChildProcess;
  #endTests: (code: number) => void = () => {};

  private constructor(browser: Browser, page: Page, server: ChildProcess) {
    this.#browser = browser;
    this.page = page;
    this.#server = server;
    this.testsEnded = new Promise((resolve) => {
      this.#endTests = resolve;
    });
  }

  /**
   * Opens a folder in a workbench that runs an extension.
   * @throws NoBrowser when no browser starts on this machine
   */
  static async start(settings: StartSettings): Promise<Workbench> {
    const browser = await launchBrowser();
    let server: ChildProcess | undefined;
    try {
      const port = await freePort();
      server = await startServer({
        port,
        folder: settings.folder,
        extension: settings.extension ?? extensionFolder,
        tests: settings.tests,
        presets: {
          ...quietSettings,
          "workbench.colorTheme": themes[settings.theme ?? "light"],
          ...settings.settings,
        },
      });
      const context = await browser.newContext({
        viewport: { width: settings.width ?? 1280, height: settings.height ?? 800 },
        deviceScaleFactor: settings.scale ?? 1,
        reducedMotion: "reduce",
      });
      const workbench = new Workbench(browser, await context.newPage(), server);
      await workbench.#open(`http://localhost:${port}/`, settings);
      return workbench;
    } catch (error) {
      await browser.close();
      server?.kill();
      throw error;
    }
  }

  async #open(address: string, settings: StartSettings): Promise<void> {
    const { page } = this;
    page.on("pageerror", (error) => this.errors.push(String(error)));
    page.on("console", (message) => {
      if (message.type() === "error") this.errors.push(message.text());
    });
    if (settings.tests !== undefined) {
      await page.exposeFunction("codeAutomationLog", (_type: string, values: unknown[]) => {
        settings.onLog?.(values.map((value) => (typeof value === "string" ? value : JSON.stringify(value))).join(" "));
      });
      await page.exposeFunction("codeAutomationExit", (code: number) => this.#endTests(code));
    }
    await page.goto(address, { waitUntil: "domcontentloaded" });
    await page.waitForSelector(".monaco-workbench .part.statusbar", { timeout: 60_000 });
    // The folder's own rows come once its file system is there; a file opened before that would not be found.
    const firstSight = readdirSync(settings.folder).length > 0 ? ".monaco-list-row" : ".monaco-list";
    await page.waitForSelector(`.explorer-folders-view ${firstSight}`, { timeout: 60_000 });
  }

  /** Ends the browser and the server. */
  async stop(): Promise<void> {
    await this.#browser.close();
    const ended = new Promise((resolve) => this.#server.once("exit", resolve));
    if (this.#server.exitCode === null) {
      this.#server.kill();
      await ended;
    }
  }

  /** Takes a picture of the window. @param path of the PNG file */
  async screenshot(path: string): Promise<void> {
    mkdirSync(dirname(path), { recursive: true });
    await this.page.screenshot({ path, animations: "disabled", caret: "hide" });
  }

  /**
   * Runs a command by its identifier, inside the page. A string argument that holds `://` arrives as a URI.
   * @returns what the command returned, when that can be sent as JSON
   */
  async execute(command: string, ...values: unknown[]): Promise<unknown> {
    const source = new URL("/static/build/out/vs/workbench/workbench.web.main.internal.js", this.page.url()).href;
    return this.page.evaluate(
      async ([module, identifier, given]) => {
        const { commands, URI } = await import(module);
        const revived = given.map((value) =>
          typeof value === "string" && value.includes("://") ? URI.parse(value) : value,
        );
        const result = await commands.executeCommand(identifier, ...revived);
        return result === undefined ? undefined : JSON.parse(JSON.stringify(result));
      },
      [source, command, values] as const,
    );
  }

  /** Runs a command by its title in the command palette, for example `View: Toggle Zen Mode`. */
  async command(title: string): Promise<void> {
    await this.page.keyboard.press("F1");
    const input = this.page.locator(".quick-input-widget input[type=text]");
    await input.waitFor({ state: "visible" });
    await input.fill(`>${title}`);
    await this.page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first().click();
  }

  /** Opens a file in an editor. @param path from the open folder, with `/` between folders */
  async openFile(path: string): Promise<void> {
    await this.execute("vscode.open", `vscode-test-web://mount/${path}`);
    await this.page.locator(".tabs-container .tab.active", { hasText: path.split("/").at(-1) ?? path }).waitFor();
    await this.page.locator(".editor-instance .view-lines .view-line").first().waitFor();
  }

  /** Closes every editor without saving. */
  async closeEditors(): Promise<void> {
    const tabs = this.page.locator(".tabs-container .tab");
    for (let left = await tabs.count(); left > 0; left = await tabs.count()) {
      await this.execute("workbench.action.revertAndCloseActiveEditor");
    }
  }

  /** Shows the Problems view and returns its rows as text, files and findings in the order shown. */
  async problems(): Promise<string[]> {
    const view = this.page.locator(".markers-panel");
    if (!(await view.isVisible())) await this.execute("workbench.actions.view.problems");
    await view.waitFor();
    return view
      .locator(".monaco-list-row")
      .evaluateAll((rows) => rows.map((row) => (row.getAttribute("aria-label") ?? "").trim()));
  }

  /**
   * Asks again and again until the answer is neither undefined nor false.
   * @param question says what was being waited for when it never comes
   */
  async until<Answer>(
    question: string,
    ask: () => Promise<Answer | undefined | false>,
    milliseconds = 20_000,
  ): Promise<Answer> {
    const end = Date.now() + milliseconds;
    for (;;) {
      const answer = await ask();
      if (answer !== undefined && answer !== false) return answer;
      if (Date.now() > end) throw new Error(`${question}: not so after ${milliseconds} ms`);
      await this.page.waitForTimeout(50);
    }
  }

  /** Waits until at least one finding is underlined in the open file. */
  async waitForFindings(): Promise<void> {
    await this.page.locator(".editor-instance .cdr[class*=squiggly-]").first().waitFor({ timeout: 30_000 });
  }

  /** Puts the cursor before the first occurrence of some words of the open file, scrolled into view. */
  async reveal(words: string): Promise<void> {
    // Commands rather than keys: a key that comes before the editor has the focus goes elsewhere.
    await this.execute("workbench.action.focusActiveEditorGroup");
    await this.execute("cursorTop");
    await this.execute("editor.actions.findWithArgs", { searchString: words, isCaseSensitive: true });
    await this.execute("editor.action.nextMatchFindAction");
    // The count is hidden where the editor is narrow, and still tells whether there was anything to go to.
    const count = this.page.locator(".editor-instance .find-widget .matchesCount").first();
    await this.until(`"${words}" is found in the open file`, async () =>
      /^\d+ of /.test((await count.textContent()) ?? ""),
    );
    await this.execute("closeFindWidget");
    await this.execute("cursorLeft");
  }

  /** Asks for the hover of some words of the open file. @returns the text that appears */
  async hover(words: string): Promise<string> {
    await this.reveal(words);
    await this.execute("editor.action.showHover", { focus: "noAutoFocus" });
    const hover = this.page
      .locator(".monaco-hover:not(.hidden)", { has: this.page.locator(".hover-contents") })
      .first();
    await hover.waitFor({ timeout: 15_000 });
    return (await hover.innerText()).replaceAll("\u00a0", " ");
  }

  /** The quick fixes offered at some words of the open file, with their menu left open. @returns their titles */
  async quickFixes(words: string): Promise<string[]> {
    await this.reveal(words);
    await this.execute("editor.action.quickFix");
    const rows = this.page.locator(".action-widget .monaco-list-row.action");
    await rows.first().waitFor({ timeout: 15_000 });
    return (await rows.allInnerTexts()).map((title) => title.replaceAll("\u00a0", " ").trim());
  }

  /** Takes the quick fix whose title holds some words, from the menu that `quickFixes` left open. */
  async takeQuickFix(title: string): Promise<void> {
    const rows = this.page.locator(".action-widget .monaco-list-row.action");
    const wanted = this.page.locator(".action-widget .monaco-list-row.action.focused", { hasText: title });
    for (let presses = await rows.count(); presses > 0 && !(await wanted.isVisible()); presses -= 1) {
      await this.page.keyboard.press("ArrowDown");
    }
    if (!(await wanted.isVisible())) throw new Error(`no quick fix "${title}" among: ${await rows.allInnerTexts()}`);
    await this.page.keyboard.press("Enter");
    await rows.first().waitFor({ state: "detached" });
  }

  /** The text of the open editor as far as it is drawn on the screen. */
  async visibleText(): Promise<string> {
    // The lines stand in the page in no particular order; each is placed by its style.
    const drawn = await this.page
      .locator(".editor-instance .view-line")
      .evaluateAll((lines) =>
        (lines as HTMLElement[]).map((line) => ({ top: Number.parseFloat(line.style.top), text: line.innerText })),
      );
    return drawn
      .sort((one, other) => one.top - other.top)
      .map(({ text }) => text.replaceAll("\u00a0", " "))
      .join("\n");
  }

  /** The document inside the webview that is in front. */
  webview(): FrameLocator {
    return this.page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
  }
}
