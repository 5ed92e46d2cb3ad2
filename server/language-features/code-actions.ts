import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type Range,
  type TextDocumentEdit,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver-types";
import { tokenAt } from "../../grammar/navigation.ts";
import type { Engine } from "../engine/engine.ts";
import { type Mend, mends } from "../engine/repairs.ts";
import { conversions } from "../values/convert.ts";
import { type DiagnosticData, diagnostic } from "./diagnostics.ts";
import { type ShownFinding, shownFindingsOf } from "./shared/findings.ts";
import { meaningAt } from "./shared/meaning.ts";
import type { ClientOptions } from "./shared/options.ts";
import { locate, rangeOf, touch } from "./shared/place.ts";

/** What a client asks for: findings it shows in a range, and the kinds of actions it wants. */
export interface CodeActionRequest {
  readonly range: Range;
  readonly diagnostics: readonly Diagnostic[];
  /** Kinds wanted, `quickfix` for all that begin so; everything when absent. */
  readonly only?: readonly string[];
}

/** The version under which a client knows a document; `null` for one that it has not open. */
export type VersionOf = (uri: string) => number | null;

/** The kind of the action that mends everything in a file that can be mended without a choice. */
export const fixAllKind = `${CodeActionKind.SourceFixAll}.ferrule`;

/** Repairs of the findings in a range, and other units for a quantity there. Needs the resolved model. */
export function codeActions(
  engine: Engine,
  uri: string,
  request: CodeActionRequest,
  client: ClientOptions,
  versionOf: VersionOf,
): CodeAction[] {
  const wants = (kind: string): boolean =>
    request.only?.some((wanted) => kind === wanted || kind.startsWith(`${wanted}.`)) ?? kind !== fixAllKind;
  const actions: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) actions.push(...quickFixes(engine, uri, request, client, versionOf));
  if (wants(CodeActionKind.RefactorRewrite)) {
    actions.push(...unitConversions(engine, uri, request.range, client, versionOf));
  }
  if (wants(fixAllKind)) actions.push(...fixAll(engine, uri, client, versionOf));
  return actions;
}

function quickFixes(
  engine: Engine,
  uri: string,
  { range, diagnostics }: CodeActionRequest,
  client: ClientOptions,
  versionOf: VersionOf,
): CodeAction[] {
  const lines = engine.lines(uri);
  const from = lines.offset(range.start);
  const to = lines.offset(range.end);
  const actions: CodeAction[] = [];
  for (const problem of engine.fileProblems(uri)) {
    if (problem.fix === undefined || problem.span.end < from || problem.span.start > to) continue;
    const edits = problem.fix.changes.map(({ span, text }) => ({
      uri,
      range: engine.fileRange(uri, span),
      newText: text,
    }));
    const mended = diagnostics.filter(({ code }) => code === problem.code);
    actions.push(
      action({ title: problem.fix.title, preferred: true, unfinished: false, edits }, mended, client, versionOf),
    );
  }
  for (const declaration of engine.file(uri)?.declarations ?? []) {
    if (declaration.start > to || declaration.start + declaration.text.length < from) continue;
    for (const shown of shownFindingsOf(engine, declaration)) {
      if (!touch(engine.range(shown.place), range)) continue;
      const mended = [knownTo(diagnostics, shown) ?? diagnostic(engine, shown, client)];
      for (const mend of keptMends(engine, shown)) actions.push(action(mend, mended, client, versionOf));
    }
  }
  return actions;
}

/** The client's own copy of a finding, by the key that it carries. */
function knownTo(diagnostics: readonly Diagnostic[], { key }: ShownFinding): Diagnostic | undefined {
  return diagnostics.find((one) => (one.data as Partial<DiagnosticData> | undefined)?.key === key);
}

/** Repairs that rank a library are worked out once while nothing they rest on changes; clients ask at every step. */
const worked = new WeakMap<ShownFinding["finding"], { readonly revision: number; readonly mends: readonly Mend[] }>();

function keptMends(engine: Engine, { declaration, finding }: ShownFinding): readonly Mend[] {
  const kept = worked.get(finding);
  if (kept && kept.revision === engine.revision) return kept.mends;
  const found = mends(engine, declaration, finding);
  worked.set(finding, { revision: engine.revision, mends: found });
  return found;
}

function action(mend: Mend, mended: readonly Diagnostic[], client: ClientOptions, versionOf: VersionOf): CodeAction {
  return {
    title: mend.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [...mended],
    ...(mend.preferred ? { isPreferred: true } : {}),
    edit: workspaceEdit(mend, client, versionOf),
  };
}

/** A repair as an edit of documents; where a client knows places to fill in, the cursor ends up in the gap. */
export function workspaceEdit(
  mend: Pick<Mend, "edits" | "unfinished">,
  client: ClientOptions,
  versionOf: VersionOf,
): WorkspaceEdit {
  const byFile = new Map<string, TextEdit[]>();
  for (const { uri, range, newText } of mend.edits) {
    const edits = byFile.get(uri);
    if (edits) edits.push({ range, newText });
    else byFile.set(uri, [{ range, newText }]);
  }
  if (!client.documentChanges) {
    return { changes: Object.fromEntries([...byFile].map(([uri, edits]) => [client.shownUri(uri), edits])) };
  }
  const documentChanges = [...byFile].map(
    ([uri, edits]): TextDocumentEdit => ({
      textDocument: { uri: client.shownUri(uri), version: versionOf(uri) },
      edits:
        client.snippetEdits && mend.unfinished
          ? edits.map(({ range, newText }) => ({ range, snippet: { kind: "snippet", value: withGap(newText) } }))
          : edits,
    }),
  );
  return { documentChanges };
}

/** A text with the place where a person's word is missing: between empty quotes, or behind an empty field's colon. */
function withGap(text: string): string {
  const escaped = text.replace(/[\\$}]/g, "\\$&");
  if (escaped.includes('""')) return escaped.replace('""', '"$0"');
  if (/:[ ]?(?=\n|$| ?\\\})/.test(escaped)) return escaped.replace(/:[ ]?(?=\n|$| ?\\\})/, ": $0");
  return escaped;
}

/** A quantity in the other units of its dimension. */
function unitConversions(
  engine: Engine,
  uri: string,
  range: Range,
  client: ClientOptions,
  versionOf: VersionOf,
): CodeAction[] {
  const located = locate(engine, uri, range.start);
  if (!located || located.declaration.builtIn) return [];
  const { declaration, offset } = located;
  const meaning = meaningAt(engine.workshop, declaration, offset);
  if (meaning?.what !== "value" || !tokenAt(declaration.tree, offset)) return [];
  return conversions(meaning.at.field.type, meaning.entry.value.tokens).map(({ title, changes }) => ({
    title,
    kind: CodeActionKind.RefactorRewrite,
    edit: workspaceEdit(
      {
        unfinished: false,
        edits: changes.map(({ span, text }) => ({ uri, range: rangeOf(engine, declaration, span), newText: text })),
      },
      client,
      versionOf,
    ),
  }));
}

/**
 * Everything in a file that is merely written in another way than Ferrule's: repairs of text that have one likeliest
 * form. What asks for a choice between parts, or for a fact, is left to a person.
 */
function fixAll(engine: Engine, uri: string, client: ClientOptions, versionOf: VersionOf): CodeAction[] {
  const edits: Mend["edits"][number][] = [];
  for (const declaration of engine.file(uri)?.declarations ?? []) {
    for (const { finding } of shownFindingsOf(engine, declaration)) {
      const [first] = finding.repairs;
      if (first?.kind !== "change-text" || finding.repairs.length > 1 || !isSpelling(finding.code)) continue;
      const own = first.changes.map(({ span, text }) => ({
        uri: first.place.declaration.uri,
        range: rangeOf(engine, first.place.declaration, span),
        newText: text,
      }));
      // Of two repairs of one place the first is made; the other shows again afterwards if it still holds.
      if (own.every((edit) => edits.every((other) => !overlap(edit, other)))) edits.push(...own);
    }
  }
  if (edits.length === 0) return [];
  return [
    {
      title: "Write everything in Ferrule's own way",
      kind: fixAllKind,
      edit: workspaceEdit({ unfinished: false, edits }, client, versionOf),
    },
  ];
}

/** Findings of the text and its values, as against those of what it means. */
function isSpelling(code: string): boolean {
  return code.startsWith("language/") || code.startsWith("value/");
}

function overlap(one: Mend["edits"][number], other: Mend["edits"][number]): boolean {
  return one.uri === other.uri && touch(one.range, other.range);
}
