import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { Finding, Repair } from "../model/finding.ts";
import { textFinding } from "../model/read-fields.ts";
import type { RecordRow } from "./judge.ts";
import type { RecordText } from "./read-record.ts";
import { isSameDigest } from "./spec-digest.ts";

/**
 * Which specification a bicycle was built to.
 * - `current`: the one that the build has today.
 * - `moved-on`: another one. All that is kept of it is its digest, so that nothing can be compared with it.
 * - `not-stated`: the record does not say; it is taken for today's.
 * - `unreadable`: what stands there is no digest; it is taken for today's.
 */
export interface BuiltTo {
  readonly state: "current" | "moved-on" | "not-stated" | "unreadable";
  /** As written in the record. */
  readonly written?: string;
  /** The digest of the build as it stands today. */
  readonly today: string;
}

export function builtTo({ spec }: RecordText, today: string): BuiltTo {
  if (!spec) return { state: "not-stated", today };
  const { written, isDigest } = spec;
  if (!isDigest) return { state: "unreadable", written, today };
  return { state: isSameDigest(written, today) ? "current" : "moved-on", written, today };
}

/** What is to be said of it, with the digest of today to be put in its place. */
export function builtToFindings(
  text: RecordText,
  { state, written, today }: BuiltTo,
  rows: readonly RecordRow[],
): readonly Finding[] {
  const { declaration, spec } = text;
  const build = declaration.of ?? "";
  switch (state) {
    case "current":
      return [];
    case "unreadable": {
      const place = spec?.place ?? headerPlace(declaration);
      return [
        textFinding(
          declaration,
          place.span,
          "record/spec-unreadable",
          `${written} is no digest of a specification, which is six digits from 0 to 9 and a to f at least. That of ${build} is ${today} today.`,
          { path: "spec", repairs: [writeToday(text, today)] },
        ),
      ];
    }
    case "moved-on":
      return [
        {
          ...textFinding(
            declaration,
            spec?.place.span ?? declaration.headerSpan,
            "record/spec-moved-on",
            `This bicycle was built to ${written}, and ${build} is ${today} today: the recipe has moved on. ${agreement(rows)} If the bicycle was brought up to it, write ${today}.`,
            { path: "spec", severity: "information", repairs: [writeToday(text, today)] },
          ),
          outcome: "unknown",
        },
      ];
    case "not-stated":
      return [
        {
          ...textFinding(
            declaration,
            declaration.headerSpan,
            "record/no-spec",
            `This record does not say which specification the bicycle was built to, so it is compared with ${build} as it stands. Write spec: ${today} to be told when the recipe moves on.`,
            { path: "spec", severity: "information", repairs: [writeToday(text, today)] },
          ),
          outcome: "unknown",
        },
      ];
  }
}

/** How what was measured looks beside today's recipe, for what it is worth. */
function agreement(rows: readonly RecordRow[]): string {
  const old = rows.filter(({ outcome, comparison }) => outcome === "unknown" && comparison.restsOn === "spec");
  const count = (outcome: string): number => old.filter(({ verdict }) => verdict.outcome === outcome).length;
  const [agree, differ] = [count("holds"), count("fails")];
  if (agree + differ === 0) return "Nothing that was measured rests on it.";
  return `What was measured cannot be compared with a specification of which only the digest is kept; beside today's, ${agree} of ${agree + differ} measurements agree.`;
}

function writeToday(text: RecordText, today: string): Repair {
  const { declaration, spec } = text;
  const title = `Write the digest of today: spec: ${today}`;
  if (spec) return { kind: "change-text", title, place: spec.place, changes: [{ span: spec.place.span, text: today }] };
  const at = insertion(declaration, `spec: ${today}`);
  return { kind: "change-text", title, place: headerPlace(declaration), changes: at ? [at] : [] };
}

/** A line for what a record says of itself, behind the last of them, else at the beginning of the block. */
function insertion(declaration: Declaration, line: string) {
  const { block } = declaration.tree;
  if (!block) return undefined;
  const about = block.entries.filter((entry) => entry.form === "field" && ["date", "by"].includes(entry.path.text));
  const after = about.at(-1)?.span.end ?? block.span.start + 1;
  if (block.oneLine) {
    return { span: { start: after, end: after }, text: about.length > 0 ? `; ${line}` : ` ${line};` };
  }
  // Behind a remark at the end of that line.
  const end = declaration.text.indexOf("\n", after);
  const at = end < 0 ? after : end;
  return { span: { start: at, end: at }, text: `\n  ${line}` };
}
