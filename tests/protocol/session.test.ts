import { rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  Hover,
  LocationLink,
  TextEdit,
} from "vscode-languageserver-types";
import { buildOnce } from "../command-line/built.ts";
import { type ClientSettings, codes, Editor, folderWith, removeFolders, usualCapabilities, wrong } from "./client.ts";
import { workshopFiles } from "./workshop.ts";

beforeAll(buildOnce, 120_000);
afterAll(removeFolders);

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

async function start(settings: ClientSettings = {}): Promise<Editor> {
  editor = await Editor.start(settings);
  return editor;
}

/** A workshop on the disk with its build open in the editor. */
async function openWorkshop(settings: ClientSettings = {}): Promise<{ editor: Editor; folder: string; uri: string }> {
  const folder = folderWith(workshopFiles);
  const uri = `${folder}/builds/fellside.ferrule`;
  const started = await start({ folders: [folder], ...settings });
  started.open(uri, workshopFiles["builds/fellside.ferrule"] ?? "");
  return { editor: started, folder, uri };
}

const tooShort = "drivetrain/cage-capacity";
const hasTooShort = (findings: readonly { code?: unknown }[]): boolean =>
  findings.some(({ code }) => code === tooShort);

describe("findings", () => {
  test("come for an open file by themselves, once the library it names has been read", async () => {
    const { editor, uri, folder } = await openWorkshop();
    const findings = await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    const finding = findings.find(({ code }) => code === tooShort);
    expect(finding).toMatchObject({
      source: "ferrule",
      severity: 1,
      range: editor.rangeOf(uri, "corrie.short-12"),
    });
    expect(finding?.message).toContain("42 t");
    expect(finding?.message).toContain("26 t");
    expect(finding?.message).toContain("Caution:");
    const places = finding?.relatedInformation?.map(({ location }) => location.uri);
    expect(places).toContain(`${folder}/parts/drivetrain.ferrule`);
    // What is not known is said, as information and never as wrong.
    const unknown = findings.filter(({ code }) => code === "build/missing-fact");
    expect(unknown.length).toBeGreaterThan(0);
    expect(new Set(unknown.map(({ severity }) => severity))).toEqual(new Set([3]));
    expect(wrong(findings)).toEqual([tooShort, "drivetrain/largest-cog"]);
  });

  test("of the newest text are what an edit storm ends with, and none is ever of an older one than the last", async () => {
    const { editor, uri } = await openWorkshop();
    await editor.findingsWhen(uri, "the first findings", hasTooShort);
    editor.published.length = 0;
    for (let round = 0; round < 60; round++) {
      editor.replace(uri, "corrie.short-12", "corrie.long-12");
      if (round < 59) editor.replace(uri, "corrie.long-12", "corrie.short-12");
    }
    const findings = await editor.current(uri);
    expect(findings.some(({ code }) => code === tooShort)).toBe(false);
    const versions = editor.published.filter((one) => one.uri === uri).map(({ version }) => version ?? 0);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
    expect(versions.at(-1)).toBe(editor.texts.get(uri)?.version);
  });

  test("follow a change of the library in another open file, and one on the disk", async () => {
    const { editor, uri, folder } = await openWorkshop();
    await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    const parts = `${folder}/parts/drivetrain.ferrule`;
    editor.open(parts, workshopFiles["parts/drivetrain.ferrule"] ?? "");
    editor.replace(parts, "total-capacity: 26 t", "total-capacity: 44 t");
    await editor.findingsWhen(uri, "long enough", (findings) => !hasTooShort(findings));
    // Closed without saving, the disk's text counts again.
    editor.close(parts);
    await editor.findingsWhen(uri, "the disk counts again", hasTooShort);
    writeFileSync(
      fileURLToPath(parts),
      (workshopFiles["parts/drivetrain.ferrule"] ?? "").replace("total-capacity: 26 t", "total-capacity: 44 t"),
    );
    editor.changedOnDisk({ uri: parts, type: 2 });
    await editor.findingsWhen(uri, "long enough on the disk", (findings) => !hasTooShort(findings));
  });

  test("of a deleted file and of a renamed one are withdrawn", async () => {
    const { editor, uri, folder } = await openWorkshop();
    await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    const renamed = `${folder}/builds/renamed.ferrule`;
    rmSync(fileURLToPath(uri));
    writeFileSync(fileURLToPath(renamed), editor.text(uri));
    editor.close(uri);
    editor.changedOnDisk({ uri, type: 3 }, { uri: renamed, type: 1 });
    await editor.findingsWhen(uri, "nothing is said of the old name", (findings) => findings.length === 0);
    await editor.findingsWhen(renamed, "the new name has the findings", hasTooShort);
    // The name is free: nothing is declared twice.
    expect(codes(editor.findings.get(renamed)?.diagnostics ?? [])).not.toContain("model/duplicate-name");
    editor.changedOnDisk({ uri: renamed, type: 3 });
    rmSync(fileURLToPath(renamed));
    await editor.findingsWhen(renamed, "nothing is said of a deleted file", (findings) => findings.length === 0);
  });

  test("of everything under a deleted folder are withdrawn", async () => {
    const { editor, uri, folder } = await openWorkshop();
    await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    editor.close(uri);
    rmSync(fileURLToPath(`${folder}/builds`), { recursive: true });
    editor.changedOnDisk({ uri: `${folder}/builds`, type: 3 });
    await editor.findingsWhen(uri, "nothing is said of it", (findings) => findings.length === 0);
  });

  test("of files that nobody opened come too", async () => {
    const folder = folderWith(workshopFiles);
    const editor = await start({ folders: [folder] });
    const closed = `${folder}/builds/fellside.ferrule`;
    const findings = await editor.findingsWhen(closed, "findings of a closed file", hasTooShort);
    expect(wrong(findings)).toEqual([tooShort, "drivetrain/largest-cog"]);
  });
});

describe("two roots", () => {
  test("do not see each other's parts", async () => {
    const one = folderWith(workshopFiles);
    const other = folderWith({
      "workshop.ferrule": `workshop south-yard "South Yard" {\n  language: 1\n  currency: GBP\n}\n`,
      "build.ferrule": `build south "South" {\n  drivetrain { cassette: corrie.wide-10-52 }\n}\n`,
    });
    const editor = await start({ folders: [one, other] });
    const findings = await editor.findingsWhen(`${other}/build.ferrule`, "the part is unknown there", (found) =>
      found.some(({ code }) => code === "model/unknown-part"),
    );
    expect(wrong(findings)).toEqual(["model/unknown-part"]);
    await editor.findingsWhen(`${one}/builds/fellside.ferrule`, "and known here", hasTooShort);
    // A root that leaves the window takes its findings along.
    await editor.connection.sendNotification("workspace/didChangeWorkspaceFolders", {
      event: { added: [], removed: [{ uri: other, name: "other" }] },
    });
    await editor.findingsWhen(`${other}/build.ferrule`, "withdrawn", (found) => found.length === 0);
  });

  test("a workshop inside another is one of its own", async () => {
    const folder = folderWith({
      ...workshopFiles,
      "guest/workshop.ferrule": `workshop guest "Guest" {\n  language: 1\n  currency: EUR\n}\n`,
      "guest/build.ferrule": `build guest "Guest" {\n  drivetrain { cassette: corrie.wide-10-52 }\n}\n`,
    });
    const editor = await start({ folders: [folder] });
    const findings = await editor.findingsWhen(
      `${folder}/guest/build.ferrule`,
      "findings there",
      (found) => found.length > 0,
    );
    expect(wrong(findings)).toContain("model/unknown-part");
    expect(codes(editor.findings.get(`${folder}/workshop.ferrule`)?.diagnostics ?? [])).toEqual([]);
  });
});

describe("a file without a folder", () => {
  test("that was never saved is checked by itself", async () => {
    const editor = await start();
    const uri = "untitled:Untitled-1";
    editor.open(uri, `${workshopFiles["parts/drivetrain.ferrule"]}\n${workshopFiles["builds/fellside.ferrule"]}`);
    expect(wrong(await editor.current(uri))).toEqual([tooShort, "drivetrain/largest-cog"]);
    editor.close(uri);
    await editor.findingsWhen(uri, "withdrawn", (findings) => findings.length === 0);
  });

  test("that was never saved sees the parts of the workshop at hand", async () => {
    const folder = folderWith(workshopFiles);
    const editor = await start({ folders: [folder] });
    const uri = "untitled:Untitled-1";
    editor.open(uri, `build draft "Draft" {\n  drivetrain { cassette: corrie.wide-10-52 }\n}\n`);
    await editor.findingsWhen(`${folder}/builds/fellside.ferrule`, "the folder is read", hasTooShort);
    editor.type(uri, 0, 0, "\n");
    expect(wrong(await editor.current(uri))).toEqual([]);
  });

  test("opened alone sees the files beside it, and nothing deeper", async () => {
    const folder = folderWith({
      "beside.ferrule": `part cassette beside.one "One" { speeds: 12 }\n`,
      "deeper/far.ferrule": `part cassette deeper.far "Far" { speeds: 12 }\n`,
      "alone.ferrule": `build a "A" {\n  drivetrain { cassette: beside.one }\n}\nbuild b "B" {\n  drivetrain { cassette: deeper.far }\n}\n`,
    });
    const editor = await start();
    const uri = `${folder}/alone.ferrule`;
    editor.open(
      uri,
      `build a "A" {\n  drivetrain { cassette: beside.one }\n}\nbuild b "B" {\n  drivetrain { cassette: deeper.far }\n}\n`,
    );
    const findings = await editor.findingsWhen(uri, "one name is unknown", (found) =>
      wrong(found).includes("model/unknown-part"),
    );
    const unknown = findings.filter(({ code }) => code === "model/unknown-part");
    expect(unknown.map(({ message }) => String(message).includes("deeper.far"))).toEqual([true]);
  });
});

describe("answers", () => {
  test("worked-out numbers are shown in the units that the client asks for", async () => {
    const folder = folderWith({});
    const text = 'part tyre a.tyre "Tyre" { size: 57-622 }\nbuild b "B" {\n  rear-wheel.tyre: a.tyre\n}\n';
    const shown = async (options: object): Promise<string> => {
      const uri = `${folder}/b.ferrule`;
      const started = await start({ folders: [folder], options });
      started.open(uri, text);
      const hover = await started.at<Hover>("textDocument/hover", uri, started.positionOf(uri, "a.tyre\n", 3));
      await started.stop();
      return (hover.contents as { value: string }).value;
    };
    expect(await shown({})).toContain("2312.2 mm");
    expect(await shown({ displayUnits: "inch" })).toContain("91.03 in");
    // Options come from a person's configuration; one that means nothing is as good as none.
    expect(await shown({ displayUnits: "furlongs" })).toContain("2312.2 mm");
  });

  test("hover shows the comparison with the working and where each side was stated", async () => {
    const { editor, uri } = await openWorkshop();
    const hover = await editor.at<Hover>("textDocument/hover", uri, editor.positionOf(uri, "corrie.short-12", 3));
    const { value } = hover.contents as { value: string };
    expect(value).toContain("Capacity needed 42 t");
    expect(value).toContain("Cogs: 52 t − 10 t = 42 t");
    expect(value).toMatch(/total-capacity`: 26 t \(Corrie short 12, \[drivetrain\.ferrule:29\]\(file:.*#L29\)\)/);
  });

  test("completion puts the part that fits first and the one that does not last, with the reason", async () => {
    const { editor, uri } = await openWorkshop();
    await editor.findingsWhen(uri, "the folder is read", hasTooShort);
    editor.replace(uri, "corrie.short-12", "");
    const position = editor.positionOf(uri, "rear-derailleur: ", "rear-derailleur: ".length);
    const list = await editor.at<CompletionList>("textDocument/completion", uri, position);
    const sorted = [...list.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
    const names = sorted.map(({ label }) => label);
    expect(names[0]).toBe("corrie.long-12");
    expect(names.at(-1)).toBe("corrie.short-12");
    expect(sorted.at(-1)?.detail).toContain("26 t");
    const item = sorted[0] as CompletionItem;
    const resolved = await editor.request<CompletionItem>("completionItem/resolve", item);
    expect((resolved.documentation as { value: string }).value).toContain("Corrie long 12");
    const { newText, range } = item.textEdit as TextEdit;
    editor.apply({ changes: { [uri]: [{ range, newText }] } });
    expect(editor.text(uri)).toBe(
      workshopFiles["builds/fellside.ferrule"]?.replace("corrie.short-12", "corrie.long-12"),
    );
  });

  test("definition leads from a part to its library, and from a code to the standard that comes with Ferrule", async () => {
    const { editor, uri, folder } = await openWorkshop();
    const parts = `${folder}/parts/drivetrain.ferrule`;
    const [link] = await editor.at<LocationLink[]>(
      "textDocument/definition",
      uri,
      editor.positionOf(uri, "corrie.wide", 2),
    );
    expect(link?.targetUri).toBe(parts);
    expect(link?.originSelectionRange).toEqual(editor.rangeOf(uri, "corrie.wide-10-52"));
    editor.open(parts, workshopFiles["parts/drivetrain.ferrule"] ?? "");
    const [standard] = await editor.at<LocationLink[]>(
      "textDocument/definition",
      parts,
      editor.positionOf(parts, "stepped-driver", 2),
    );
    expect(standard?.targetUri).toMatch(/^ferrule-standard:/);
    const text = await editor.request<string>("ferrule/standardText", { uri: standard?.targetUri });
    const line = text.split("\n")[standard?.targetSelectionRange.start.line ?? -1];
    expect(line).toContain("standard freehub-body stepped-driver");
    expect(await editor.request("ferrule/standardText", { uri: "ferrule-standard:/nothing.ferrule" })).toBeNull();
    const listed = await editor.request<{ code: string; line: number; uri: string }[]>("ferrule/standards", {});
    expect(listed.find(({ code }) => code === "stepped-driver")).toMatchObject({
      uri: standard?.targetUri,
      line: standard?.targetSelectionRange.start.line,
    });
  });

  test("a quick fix applied leaves the finding gone and nothing new wrong", async () => {
    const { editor, uri } = await openWorkshop();
    const findings = await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    const finding = findings.find(({ code }) => code === tooShort);
    if (!finding) throw new Error("no finding");
    const actions = await editor.request<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri },
      range: finding.range,
      context: { diagnostics: [finding] },
    });
    const preferred = actions.find(
      ({ isPreferred, diagnostics }) => isPreferred && diagnostics?.some(({ code }) => code === tooShort),
    );
    expect(preferred?.title).toContain("Corrie long 12");
    expect(preferred?.diagnostics?.[0]).toEqual(finding);
    editor.apply(preferred?.edit ?? {});
    expect(wrong(await editor.current(uri))).toEqual([]);
  });

  test("formatting makes the text canonical, and a broken declaration is left as it is", async () => {
    const { editor, uri } = await openWorkshop();
    editor.replace(uri, "  category: mountain", "category:    mountain");
    const format = async (): Promise<void> => {
      const edits = await editor.request<TextEdit[]>("textDocument/formatting", {
        textDocument: { uri },
        options: { tabSize: 4, insertSpaces: true },
      });
      editor.apply({ changes: { [uri]: edits } });
    };
    await format();
    expect(editor.text(uri)).toBe(workshopFiles["builds/fellside.ferrule"]);
    editor.replace(uri, "category: mountain", "category:    ");
    const broken = editor.text(uri);
    await format();
    expect(editor.text(uri)).toBe(broken);
  });

  test("a client without links, Markdown, trees or document changes gets the plain forms", async () => {
    const { editor, uri, folder } = await openWorkshop({ capabilities: {} });
    const hover = await editor.at<Hover>("textDocument/hover", uri, editor.positionOf(uri, "corrie.short-12", 3));
    expect(hover.contents).toMatchObject({ kind: "plaintext" });
    const { value } = hover.contents as { value: string };
    expect(value).not.toMatch(/\*\*|\]\(|`/);
    const places = await editor.at<{ uri: string }[]>(
      "textDocument/definition",
      uri,
      editor.positionOf(uri, "corrie.wide", 2),
    );
    expect(places.map((place) => place.uri)).toEqual([`${folder}/parts/drivetrain.ferrule`]);
    const symbols = await editor.request<{ name: string; location?: object }[]>("textDocument/documentSymbol", {
      textDocument: { uri },
    });
    expect(symbols[0]).toMatchObject({ name: "fellside-l", location: { uri } });
    const findings = await editor.findingsWhen(uri, "the cage is too short", hasTooShort);
    const actions = await editor.request<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri },
      range: findings.find(({ code }) => code === tooShort)?.range,
      context: { diagnostics: [] },
    });
    expect(Object.keys(actions[0]?.edit ?? {})).toEqual(["changes"]);
  });

  test("an unknown request, one for an unknown file and one before anything is open do no harm", async () => {
    const editor = await start();
    await expect(editor.request("textDocument/nothing", {})).rejects.toThrow();
    const nowhere = "file:///nowhere/at-all.ferrule";
    expect(await editor.at("textDocument/hover", nowhere, { line: 3, character: 9 })).toBeNull();
    expect(await editor.at("textDocument/completion", nowhere, { line: 0, character: 0 })).toBeNull();
    editor.open("untitled:x", "part");
    expect(await editor.at("textDocument/hover", "untitled:x", { line: 99, character: 99 })).toBeNull();
  });
});

describe("cancelling", () => {
  test("a request that is cancelled before its turn is answered as cancelled, and the next one is answered", async () => {
    const { editor, uri } = await openWorkshop();
    await editor.findingsWhen(uri, "the folder is read", hasTooShort);
    const position = editor.positionOf(uri, "corrie.short-12", 3);
    const { CancellationTokenSource } = await import("vscode-jsonrpc/node");
    const outcomes = await Promise.all(
      Array.from({ length: 20 }, async () => {
        const source = new CancellationTokenSource();
        const answer = editor.connection.sendRequest(
          "textDocument/hover",
          { textDocument: { uri }, position },
          source.token,
        );
        source.cancel();
        return answer.then(
          () => "answered",
          (error: { code?: number }) => error.code,
        );
      }),
    );
    expect(outcomes).toContain(-32800);
    expect(outcomes.every((outcome) => outcome === "answered" || outcome === -32800)).toBe(true);
    expect(await editor.at("textDocument/hover", uri, position)).not.toBeNull();
  });
});

describe("clients that ask for findings", () => {
  const pulling = { options: { diagnostics: "pull" } };

  test("are told nothing unasked, and get the same findings", async () => {
    const { editor, uri } = await openWorkshop(pulling);
    expect(editor.capabilities).toHaveProperty("diagnosticProvider.workspaceDiagnostics", true);
    const report = await editor.request<{ kind: string; resultId: string; items: { code: string }[] }>(
      "textDocument/diagnostic",
      { textDocument: { uri } },
    );
    expect(report.kind).toBe("full");
    expect(report.items.some(({ code }) => code === tooShort)).toBe(true);
    const again = await editor.request<{ kind: string }>("textDocument/diagnostic", {
      textDocument: { uri },
      previousResultId: report.resultId,
    });
    expect(again.kind).toBe("unchanged");
    editor.replace(uri, "corrie.short-12", "corrie.long-12");
    const mended = await editor.request<{ kind: string; items: { code: string }[] }>("textDocument/diagnostic", {
      textDocument: { uri },
      previousResultId: report.resultId,
    });
    expect(mended.kind).toBe("full");
    expect(mended.items.some(({ code }) => code === tooShort)).toBe(false);
    await editor.until("asked to look again", () => editor.refreshes > 0);
    expect(editor.published).toEqual([]);
  });

  test("get the whole workspace at once", async () => {
    const { editor, folder } = await openWorkshop(pulling);
    const all = await editor.request<{ items: { uri: string; items: unknown[] }[] }>("workspace/diagnostic", {
      previousResultIds: [],
    });
    expect(all.items.map(({ uri }) => uri.slice(folder.length + 1)).sort()).toEqual(Object.keys(workshopFiles).sort());
  });

  test("are the only ones that are offered asking", async () => {
    const editor = await start({ capabilities: usualCapabilities });
    expect(editor.capabilities).not.toHaveProperty("diagnosticProvider");
  });
});

describe("standards as files", () => {
  test("are given to an editor that opens nothing else", async () => {
    const { editor, folder } = await openWorkshop({ options: { standards: "files" } });
    const parts = `${folder}/parts/drivetrain.ferrule`;
    editor.open(parts, workshopFiles["parts/drivetrain.ferrule"] ?? "");
    const [standard] = await editor.at<LocationLink[]>(
      "textDocument/definition",
      parts,
      editor.positionOf(parts, "stepped-driver", 2),
    );
    const copy = standard?.targetUri ?? "";
    expect(copy).toMatch(/^file:.*freehub-bodies\.ferrule$/);
    const { readFileSync } = await import("node:fs");
    const text = readFileSync(fileURLToPath(copy), "utf8");
    expect(text.split("\n")[standard?.targetSelectionRange.start.line ?? -1]).toContain("stepped-driver");
    // Opened, the copy is the standard itself and not a second declaration of it.
    editor.open(copy, text);
    expect(await editor.current(copy)).toEqual([]);
    const position = editor.positionOf(copy, "stepped-driver", 2);
    expect(await editor.at("textDocument/hover", copy, position)).not.toBeNull();
  });
});
