import type { CompletionItem, CompletionList, Position } from "vscode-languageserver-types";
import { judge } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import { contextAt } from "./completion/context.ts";
import { headerDrafts, keywordDrafts } from "./completion/header.ts";
import { type CompletionData, completionList, type Draft } from "./completion/items.ts";
import { keyDrafts } from "./completion/keys.ts";
import { messageNameDrafts } from "./completion/message-names.ts";
import { valueDrafts } from "./completion/values.ts";
import { waiverDrafts } from "./completion/waivers.ts";
import { checkHover } from "./hover/checks.ts";
import { partHover, standardHover } from "./hover/declarations.ts";
import { bullets, code, paragraphs, plain } from "./shared/markdown.ts";
import type { ClientOptions } from "./shared/options.ts";

/** Characters behind which the list opens by itself. */
export const completionCharacters = [" ", ":", ".", "/", "{", ";"] as const;

/**
 * What can be written at a position. The line that is being typed is read by itself, and the declaration around it as
 * if that line were whole. Needs the resolved model.
 */
export function completion(engine: Engine, uri: string, position: Position, client: ClientOptions): CompletionList {
  const lines = engine.lines(uri);
  const offset = lines.offset(position);
  const listOf = (drafts: readonly Draft[], from: number, to: number, isCut: boolean): CompletionList => {
    const start = lines.position(from);
    const ranges = { insert: { start, end: position }, replace: { start, end: lines.position(to) } };
    return completionList(drafts, ranges, client, isCut);
  };
  const context = contextAt(engine, uri, offset);
  if (!context) {
    const names = messageNameDrafts(engine, uri, offset);
    return listOf(names?.drafts ?? [], names?.start ?? offset, names?.end ?? offset, names?.isCut ?? false);
  }
  const { word } = context.cursor;
  let drafts: readonly Draft[];
  let isCut = false;
  let from = word.start;
  switch (context.where) {
    case "top":
      drafts = context.cursor.before.length === 0 ? keywordDrafts(engine) : [];
      break;
    case "header":
      drafts = headerDrafts(engine, context);
      break;
    case "key":
      drafts = context.cursor.before.length === 0 ? keyDrafts(engine, context) : [];
      break;
    case "waive":
      drafts = waiverDrafts(engine, context);
      break;
    case "value": {
      const list = valueDrafts(engine, context);
      drafts = list.drafts;
      isCut = list.isCut ?? false;
      from = list.from ?? from;
      break;
    }
  }
  return listOf(drafts, from, word.end, isCut);
}

/** Adds what a person reads beside an item when looking at it. Needs the resolved model. */
export function resolveCompletion(engine: Engine, item: CompletionItem, client: ClientOptions): CompletionItem {
  const data = item.data as CompletionData | undefined;
  const help = data && helpOf(engine, data, client);
  return help === undefined || help === "" ? item : { ...item, documentation: client.helpText(help) };
}

function helpOf(engine: Engine, data: CompletionData, client: ClientOptions): string | undefined {
  switch (data.of) {
    case "check":
      return checkHover(data.code, engine.checks.byCode(data.code));
    case "standard": {
      const standard = engine.workshop.lookup(`standard ${data.family} ${data.code}`);
      return standard && standardHover(engine, standard, client);
    }
    case "part": {
      const part = engine.workshop.part(data.name);
      return part && paragraphs(fitText(engine, data), partHover(engine, part, client));
    }
  }
}

/** Everything that speaks against a part in a slot, and what is open. */
function fitText(engine: Engine, data: Extract<CompletionData, { of: "part" }>): string {
  const build = data.build === undefined ? undefined : engine.workshop.build(data.build);
  const part = engine.workshop.part(data.name);
  const report = build && engine.report(build);
  if (!report || !part || data.slot === undefined) return "";
  const { failures, unknown, holds } = judge(engine, report.assembly, data.slot, engine.part(part));
  const open = [...new Set(unknown)];
  return paragraphs(
    bullets(failures.map(({ code: check, message }) => `✗ ${code(check)} ${plain(message)}`)),
    open.length === 0 ? undefined : `? Cannot be checked: ${open.map(code).join(", ")}.`,
    failures.length + open.length === 0
      ? `✓ ${holds === 1 ? "One check holds" : `${holds} checks hold`} with it.`
      : undefined,
  );
}
