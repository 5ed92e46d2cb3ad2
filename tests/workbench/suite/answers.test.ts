import { expect } from "chai";
import * as vscode from "vscode";
import { isFault, libraryPath, withDraft } from "./draft.ts";
import { test } from "./harness.ts";
import { eventually, findingsOf, openFile, positionOf } from "./workspace.ts";

/** Waits until the server has read the draft, so that its answers are on all of it. */
async function checked(document: vscode.TextDocument): Promise<void> {
  await findingsOf(document.uri, "the draft is checked", (found) => found.some(isFault));
}

/** The text of every hover at some words. */
async function hoverAt(document: vscode.TextDocument, words: string): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    "vscode.executeHoverProvider",
    document.uri,
    positionOf(document, words).translate(0, 1),
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === "string" ? content : content.value))
    .join("\n");
}

test("hovering over the part at fault shows the comparison and its working", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const text = await hoverAt(document, "draft.medium");
    expect(text).to.include("Draft medium cage");
    for (const number of ["35 t", "39 t", "16", "23"]) expect(text).to.include(number);
  }));

test("hovering over a field says what it is and in which unit", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const library = await openFile(libraryPath);
    expect(await hoverAt(library.document, "total-capacity")).to.match(/capacity/i);
    expect(await hoverAt(library.document, "12x148")).to.include("148 mm");
  }));

test("the definition of a code is the standard that comes with the server, to be read and not written", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const library = await openFile(libraryPath);
    const found = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      "vscode.executeDefinitionProvider",
      library.document.uri,
      positionOf(library.document, "12x148").translate(0, 2),
    );
    const [first] = found;
    if (first === undefined) throw new Error("no definition");
    const { uri, range } = "targetUri" in first ? { uri: first.targetUri, range: first.targetRange } : first;
    expect(uri.scheme).to.equal("ferrule-standard");
    const standard = await vscode.workspace.openTextDocument(uri);
    expect(standard.languageId).to.equal("ferrule");
    expect(standard.lineAt(range.start.line).text + standard.getText(range)).to.include("standard axle 12x148");
    await vscode.window.showTextDocument(standard);
    const symbols = await eventually("a standard has an outline", async () => {
      const given = await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
        "vscode.executeDocumentSymbolProvider",
        uri,
      );
      return given !== undefined && given.length > 0 && given;
    });
    expect(symbols.map(({ name }) => name).join("\n")).to.include("12x148");
    expect(vscode.languages.getDiagnostics(uri)).to.have.length(0);
  }));

test("the definition of a part is its declaration in the library", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const [first] = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
      "vscode.executeDefinitionProvider",
      document.uri,
      positionOf(document, "draft.medium").translate(0, 2),
    );
    if (first === undefined) throw new Error("no definition");
    expect(("targetUri" in first ? first.targetUri : first.uri).path).to.match(new RegExp(`/${libraryPath}$`));
  }));

test("completion of a slot offers the part that fits before the one that does not", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
      "vscode.executeCompletionItemProvider",
      document.uri,
      positionOf(document, "draft.medium"),
    );
    const names = [...items]
      .sort((one, other) => ((one.sortText ?? labelOf(one)) < (other.sortText ?? labelOf(other)) ? -1 : 1))
      .map(labelOf)
      .filter((label) => label.startsWith("draft."));
    expect(names).to.include("draft.long").and.to.include("draft.medium");
    expect(names.indexOf("draft.long")).to.be.lessThan(names.indexOf("draft.medium"));
  }));

function labelOf({ label }: vscode.CompletionItem): string {
  return typeof label === "string" ? label : label.label;
}

test("the outline of a build holds its assemblies and slots", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
      "vscode.executeDocumentSymbolProvider",
      document.uri,
    );
    const names = (level: readonly vscode.DocumentSymbol[]): string[] =>
      level.flatMap(({ name, children }) => [name, ...names(children)]);
    expect(names(symbols).join("\n"))
      .to.match(/draft/)
      .and.to.match(/drivetrain/)
      .and.to.match(/rear-derailleur/);
  }));

test("semantic colours tell keywords, parts and numbers apart", () =>
  withDraft(async ({ document }) => {
    await checked(document);
    const library = (await openFile(libraryPath)).document;
    const legend = await vscode.commands.executeCommand<vscode.SemanticTokensLegend>(
      "vscode.provideDocumentSemanticTokensLegend",
      library.uri,
    );
    const tokens = await vscode.commands.executeCommand<vscode.SemanticTokens>(
      "vscode.provideDocumentSemanticTokens",
      library.uri,
    );
    const types = new Map<string, string>();
    let line = 0;
    let character = 0;
    for (let index = 0; index < tokens.data.length; index += 5) {
      const [down = 0, right = 0, length = 0, type = 0] = tokens.data.subarray(index, index + 4);
      line += down;
      character = down === 0 ? character + right : right;
      types.set(library.lineAt(line).text.slice(character, character + length), legend.tokenTypes[type] ?? "");
    }
    const kinds = ["part", "draft.medium", "total-capacity", "12x148"].map((word) => types.get(word));
    expect(kinds).to.not.include(undefined);
    expect(new Set(kinds).size).to.equal(kinds.length);
  }));
