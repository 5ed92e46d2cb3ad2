import { mkdirSync, realpathSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { Roots } from "../../server/command-line/targets.ts";
import { NodeHost } from "../../server/language-server/node-host.ts";
import { buildOnce } from "../command-line/built.ts";
import { Editor, folderWith, removeFolders, usualCapabilities, wrong } from "./client.ts";
import { workshopFiles } from "./workshop.ts";

beforeAll(buildOnce, 120_000);
afterAll(removeFolders);

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

const path = (uri: string): string => fileURLToPath(uri);
const hasTooShort = (findings: readonly { code?: unknown }[]): boolean =>
  findings.some(({ code }) => code === "drivetrain/cage-capacity");

describe("the disk", () => {
  const names = (uris: readonly string[], root: string): string[] =>
    uris.map((uri) => uri.slice(root.length + 1)).sort();

  test("is listed without what is installed, hidden or of another kind", async () => {
    const root = folderWith({
      "workshop.ferrule": "",
      "parts/a.ferrule": "",
      "deep/er/still/b.ferrule": "",
      "node_modules/x/c.ferrule": "",
      ".git/d.ferrule": "",
      ".ferrule": "",
      "e.txt": "",
    });
    const host = new NodeHost();
    expect(names(await host.list(root), root)).toEqual([
      "deep/er/still/b.ferrule",
      "parts/a.ferrule",
      "workshop.ferrule",
    ]);
    expect(await host.rootOf(`${root}/deep/er`)).toEqual({ uri: root, isMarked: true });
  });

  test.each([
    ["a workshop's file", { "workshop.ferrule": "", "builds/a.ferrule": "" }, ""],
    [
      "a workshop's file in a repository",
      { "shop/workshop.ferrule": "", ".git/HEAD": "", "shop/builds/a.ferrule": "" },
      "shop",
    ],
    [
      "a workshop's file above a repository",
      { "workshop.ferrule": "", "builds/.git/HEAD": "", "builds/a.ferrule": "" },
      "",
    ],
    ["a repository alone", { ".git/HEAD": "", "builds/a.ferrule": "" }, ""],
    ["a linked working tree", { ".git": "gitdir: elsewhere\n", "builds/a.ferrule": "" }, ""],
    ["one repository in another", { ".git/HEAD": "", "inner/.git/HEAD": "", "inner/builds/a.ferrule": "" }, "inner"],
    ["nothing", { "builds/a.ferrule": "" }, "builds"],
  ])("has the root that the command line has: marked by %s", async (_, files, root) => {
    const folder = folderWith(files);
    const opened = Object.keys(files)
      .find((file) => file.endsWith("a.ferrule"))
      ?.replace("/a.ferrule", "");
    const wanted = root === "" ? folder : `${folder}/${root}`;
    expect((await new NodeHost().rootOf(`${folder}/${opened}`)).uri).toBe(wanted);
    expect(new Roots().of(realpathSync(path(`${folder}/${opened}`))).folder).toBe(realpathSync(path(wanted)));
  });

  test("is never read outside of the root, also not through links", async () => {
    const outside = folderWith({ "secret.ferrule": "part cassette secret.one { }\n", "far/b.ferrule": "" });
    const root = folderWith({ "workshop.ferrule": "", "a.ferrule": "part cassette own.one { }\n" });
    symlinkSync(path(`${outside}/secret.ferrule`), path(`${root}/link.ferrule`));
    symlinkSync(path(outside), path(`${root}/folder`));
    symlinkSync(path(`${root}/a.ferrule`), path(`${root}/again.ferrule`));
    const host = new NodeHost();
    expect(names(await host.list(root), root)).toEqual(["a.ferrule", "workshop.ferrule"]);
    // Nor when somebody asks for it by name.
    const asked = [
      `${root}/link.ferrule`,
      `${root}/folder/secret.ferrule`,
      `${outside}/secret.ferrule`,
      `${root}/a.ferrule`,
    ];
    expect((await host.read(asked)).map(({ uri }) => uri)).toEqual([`${root}/a.ferrule`]);
  });

  test("keeps the address under which a folder was opened, also when that is a link", async () => {
    const real = folderWith(workshopFiles);
    const home = folderWith({});
    symlinkSync(path(real), path(`${home}/shortcut`));
    const opened = `${home}/shortcut`;
    const host = new NodeHost();
    const listed = await host.list(opened);
    expect(names(listed, opened)).toEqual(Object.keys(workshopFiles).sort());
    expect(await host.read(listed)).toHaveLength(listed.length);
    editor = await Editor.start({ folders: [opened] });
    const uri = `${opened}/builds/fellside.ferrule`;
    editor.open(uri, workshopFiles["builds/fellside.ferrule"] ?? "");
    const findings = await editor.findingsWhen(uri, "one and the same file", hasTooShort);
    expect(wrong(findings)).not.toContain("model/duplicate-name");
  });

  test("says of a file that is no text, or too large, why it was not read", async () => {
    const root = folderWith({ "workshop.ferrule": "" });
    writeFileSync(path(`${root}/bytes.ferrule`), Buffer.from([0xff, 0xfe, 0x00, 0x41]));
    mkdirSync(path(`${root}/folder.ferrule`));
    editor = await Editor.start({ folders: [root] });
    const findings = await editor.findingsWhen(`${root}/bytes.ferrule`, "a finding", (found) => found.length > 0);
    expect(findings[0]).toMatchObject({ code: "language/unread-file", severity: 1 });
    writeFileSync(path(`${root}/bytes.ferrule`), "part cassette fine.one { }\n");
    editor.changedOnDisk({ uri: `${root}/bytes.ferrule`, type: 2 });
    await editor.findingsWhen(`${root}/bytes.ferrule`, "gone", (found) =>
      found.every(({ code }) => code !== "language/unread-file"),
    );
  });
});

describe("the editor's own file operations", () => {
  test("are asked for: files of the language, and deletions of anything", async () => {
    editor = await Editor.start({ folders: [folderWith(workshopFiles)] });
    const running = editor;
    await running.until("watching", () => running.registered.length > 0);
    expect(running.registered).toContainEqual(
      expect.objectContaining({
        method: "workspace/didChangeWatchedFiles",
        registerOptions: { watchers: [{ globPattern: "**/*.ferrule" }, { globPattern: "**/*", kind: 4 }] },
      }),
    );
  });

  test("a renamed folder takes its findings along", async () => {
    const root = folderWith(workshopFiles);
    editor = await Editor.start({ folders: [root] });
    const before = `${root}/builds/fellside.ferrule`;
    await editor.findingsWhen(before, "the first findings", hasTooShort);
    renameSync(path(`${root}/builds`), path(`${root}/bikes`));
    await editor.connection.sendNotification("workspace/didRenameFiles", {
      files: [{ oldUri: `${root}/builds`, newUri: `${root}/bikes` }],
    });
    await editor.findingsWhen(before, "nothing under the old name", (found) => found.length === 0);
    const findings = await editor.findingsWhen(`${root}/bikes/fellside.ferrule`, "all under the new one", hasTooShort);
    expect(wrong(findings)).not.toContain("model/duplicate-name");
  });

  test("a workshop that comes or goes inside another parts or joins what each sees", async () => {
    const root = folderWith(workshopFiles);
    editor = await Editor.start({ folders: [root] });
    const build = `${root}/builds/fellside.ferrule`;
    await editor.findingsWhen(build, "the first findings", hasTooShort);
    const file = `${root}/builds/workshop.ferrule`;
    writeFileSync(path(file), `workshop other "Other" {\n  language: 1\n  currency: GBP\n}\n`);
    editor.changedOnDisk({ uri: file, type: 1 });
    await editor.findingsWhen(build, "its parts are out of sight", (found) =>
      wrong(found).includes("model/unknown-part"),
    );
    rmSync(path(file));
    editor.changedOnDisk({ uri: file, type: 3 });
    await editor.findingsWhen(build, "and in sight again", hasTooShort);
  });
});

describe("a client that does not tell of changes on the disk", () => {
  const unwatched = {
    ...usualCapabilities,
    workspace: { ...usualCapabilities.workspace, didChangeWatchedFiles: undefined },
  };
  const wrongBuild = workshopFiles["builds/fellside.ferrule"] ?? "";

  test("has them seen by the server itself: what is written, made, moved and removed", async () => {
    const root = folderWith({ ...workshopFiles, "node_modules/x/a.ferrule": "part" });
    editor = await Editor.start({ folders: [root], capabilities: unwatched });
    const file = `${root}/builds/fellside.ferrule`;
    await editor.findingsWhen(file, "the wrong build to be found", hasTooShort);
    expect(editor.registered.filter(({ method }) => method === "workspace/didChangeWatchedFiles")).toEqual([]);

    writeFileSync(path(file), "build other { }\n");
    await editor.findingsWhen(file, "the mended file", (found) => !hasTooShort(found));
    mkdirSync(path(`${root}/new/er`), { recursive: true });
    writeFileSync(path(`${root}/new/er/b.ferrule`), wrongBuild);
    await editor.findingsWhen(`${root}/new/er/b.ferrule`, "the new file", hasTooShort);
    renameSync(path(`${root}/new`), path(`${root}/moved`));
    await editor.findingsWhen(`${root}/moved/er/b.ferrule`, "the moved file", hasTooShort);
    await editor.findingsWhen(`${root}/new/er/b.ferrule`, "the old address", (found) => found.length === 0);
    rmSync(path(`${root}/moved`), { recursive: true });
    await editor.findingsWhen(`${root}/moved/er/b.ferrule`, "the removed file", (found) => found.length === 0);
  });

  test("and open text still beats the disk", async () => {
    const root = folderWith(workshopFiles);
    editor = await Editor.start({ folders: [root], capabilities: unwatched });
    const file = `${root}/builds/fellside.ferrule`;
    await editor.findingsWhen(file, "the wrong build to be found", hasTooShort);
    editor.open(file, wrongBuild);
    await editor.current(file);
    writeFileSync(path(file), "");
    // A change elsewhere that is seen shows that the one above was, too.
    writeFileSync(path(`${root}/builds/other.ferrule`), "build");
    await editor.findingsWhen(`${root}/builds/other.ferrule`, "the other file", (found) => found.length > 0);
    expect(hasTooShort(await editor.current(file))).toBe(true);
    editor.close(file);
    await editor.findingsWhen(file, "what the disk holds", (found) => !hasTooShort(found));
  });

  test("a lone file sees what changes beside it, until it is closed", async () => {
    const root = folderWith(workshopFiles);
    editor = await Editor.start({ capabilities: unwatched });
    const file = `${root}/builds/fellside.ferrule`;
    editor.open(file, wrongBuild);
    await editor.findingsWhen(file, "the wrong build to be found", hasTooShort);
    const parts = path(`${root}/parts/drivetrain.ferrule`);
    renameSync(parts, `${parts}.txt`);
    await editor.findingsWhen(file, "names without a part", (found) => !hasTooShort(found) && found.length > 0);
    renameSync(`${parts}.txt`, parts);
    await editor.findingsWhen(file, "the parts are back", hasTooShort);
  });
});

describe("a file system that only the client reaches", () => {
  test("is asked for by requests, and texts that come before the answers wait for their workshop", async () => {
    const root = "memory:/shop";
    const texts = new Map(Object.entries(workshopFiles).map(([name, text]) => [`${root}/${name}`, text]));
    editor = new Editor();
    const asked: string[] = [];
    editor.connection.onRequest("ferrule/rootOf", async ({ folder }: { folder: string }) => {
      asked.push("rootOf");
      await new Promise((resolve) => setTimeout(resolve, 100));
      return folder;
    });
    editor.connection.onRequest("ferrule/list", ({ root: of }: { root: string }) => {
      asked.push("list");
      return [...texts.keys()].filter((uri) => uri.startsWith(`${of}/`));
    });
    editor.connection.onRequest("ferrule/read", ({ uris }: { uris: string[] }) => {
      asked.push("read");
      return uris.flatMap((uri) => {
        const text = texts.get(uri);
        return text === undefined ? [] : [{ uri, text }];
      });
    });
    await editor.initialize({ folders: [root] });
    const uri = `${root}/builds/fellside.ferrule`;
    editor.open(uri, texts.get(uri) ?? "");
    // Before the workshop is known a name is pending, not wrong.
    expect(wrong(await editor.current(uri))).toEqual([]);
    const findings = await editor.findingsWhen(uri, "the library is there", hasTooShort);
    expect(wrong(findings)).toEqual(["drivetrain/cage-capacity", "drivetrain/largest-cog"]);
    expect(asked[0]).toBe("rootOf");
    expect(asked).toContain("list");
    editor.close(uri);
    texts.set(uri, (texts.get(uri) ?? "").replace("corrie.short-12", "corrie.long-12"));
    editor.changedOnDisk({ uri, type: 2 });
    await editor.findingsWhen(uri, "mended there", (found) => wrong(found).length === 0);
  });

  test("of a client that answers none of them leaves what is open", async () => {
    editor = await Editor.start({ folders: ["memory:/shop"] });
    const uri = "memory:/shop/a.ferrule";
    editor.open(uri, `${workshopFiles["parts/drivetrain.ferrule"]}\n${workshopFiles["builds/fellside.ferrule"]}`);
    await editor.findingsWhen(uri, "checked by itself", hasTooShort);
  });
});
