import { instancesOf } from "../../checks/table.ts";
import type { Engine } from "../../engine/engine.ts";
import { daysFrom } from "../shared/days.ts";
import type { Around } from "./context.ts";
import { CompletionItemKind, type Draft } from "./items.ts";

/** What comes next in a waiver: a check's code, `at` with a path, the reason, `until` with a day. */
export function waiverDrafts(engine: Engine, { cursor, original }: Around): Draft[] {
  const words = cursor.before;
  const last = words.at(-1);
  const report = engine.report(original);
  if (words.length === 1) {
    const failing = new Map<string, string>();
    for (const { code, outcome, message } of report?.findings ?? []) {
      if (outcome !== "unknown" && engine.checks.byCode(code) && !failing.has(code)) failing.set(code, message);
    }
    const rows = [...engine.checks.all].sort((a, b) => Number(failing.has(b.code)) - Number(failing.has(a.code)));
    return rows.map(({ code, title }) => ({
      label: code,
      kind: CompletionItemKind.Event,
      insert: `${code} `,
      description: failing.has(code) ? "fails here" : title,
      detail: failing.get(code) ?? title,
      continues: true,
      data: { of: "check", uri: original.uri, code },
    }));
  }
  const code = words[1]?.text ?? "";
  if (last?.text === "at") {
    const paths = new Set(report?.findings.filter((finding) => finding.code === code).map(({ path }) => path));
    for (const path of report?.assembly.slots.keys() ?? []) paths.add(path);
    return [...paths]
      .filter((path) => path !== "")
      .map((path) => ({ label: path, kind: CompletionItemKind.Reference, insert: `${path} ` }));
  }
  if (last?.text === "until") {
    return daysFrom(engine.today).map(({ day, words: description }) => ({
      label: day,
      kind: CompletionItemKind.Value,
      description,
    }));
  }
  const hasReason = words.some(({ kind }) => kind === "text");
  const has = (word: string): boolean => words.some(({ kind, text }) => kind === "word" && text === word);
  if (hasReason) {
    return has("until")
      ? []
      : [
          {
            label: "until",
            kind: CompletionItemKind.Keyword,
            insert: "until ",
            detail: "the last day on which it counts",
            continues: true,
          },
        ];
  }
  const check = engine.checks.byCode(code);
  const reason: Draft = {
    label: '"reason"',
    kind: CompletionItemKind.Text,
    insert: '""',
    snippet: '"$1"',
    detail: "who took this on, and why",
  };
  if (has("at")) return [reason];
  const at: Draft = {
    label: "at",
    kind: CompletionItemKind.Keyword,
    insert: "at ",
    detail: "the path it is limited to",
    continues: true,
  };
  const isAskedSeveralTimes = check !== undefined && instancesOf(check).length > 1;
  return isAskedSeveralTimes ? [at, reason] : [reason, at];
}
