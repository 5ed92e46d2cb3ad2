import type { BlockTree, FieldEntry } from "../../grammar/tree.ts";
import { asTyped } from "../values/as-typed.ts";
import { didYouMean, nearestSeveral } from "../values/near.ts";
import type { ReadContext, ValueProblem } from "../values/problems.ts";
import { readValue } from "../values/read.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { familyByName } from "../vocabulary/index.ts";
import { meantBy } from "../vocabulary/synonyms.ts";
import type { Declaration } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import type { Statement } from "./stated.ts";
import { takeOut } from "./take-out.ts";

/** Turns a problem of the syntax or of a value into a finding of the declaration it stands in. */
export function problemFinding(declaration: Declaration, problem: ValueProblem, path = ""): Finding {
  const place = { declaration, span: problem.span };
  const meant = problem.meantCode;
  return {
    code: problem.code,
    severity: problem.severity,
    message: problem.message,
    place,
    path,
    related: [],
    repairs: [
      ...[...(problem.fix ? [problem.fix] : []), ...(problem.otherFixes ?? [])].map(
        ({ title, changes }) => ({ kind: "change-text", title, place, changes }) as const,
      ),
      ...(meant
        ? [{ kind: "near-name", place, name: meant.code, keyword: "standard", kinds: [meant.family] } as const]
        : []),
    ],
    outcome: "fails",
  };
}

/** An error at a span of a declaration, with repairs that change text there. */
export function textFinding(
  declaration: Declaration,
  span: { start: number; end: number },
  code: string,
  message: string,
  options: {
    path?: string;
    severity?: Finding["severity"];
    repairs?: Finding["repairs"];
    related?: Finding["related"];
  } = {},
): Finding {
  return {
    code,
    severity: options.severity ?? "error",
    message,
    place: { declaration, span },
    path: options.path ?? "",
    related: options.related ?? [],
    repairs: options.repairs ?? [],
    outcome: "fails",
  };
}

/** The row of a field by its present or a former name. */
export function fieldByName(fields: Fields, name: string): { name: string; field: Field } | undefined {
  const own = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (own) return { name, field: own };
  for (const [present, field] of Object.entries(fields)) {
    if (field.formerNames?.includes(name)) return { name: present, field };
  }
  return undefined;
}

/** Reads the value of one entry by its field. Problems go to `findings`. */
export function readEntry(
  declaration: Declaration,
  entry: FieldEntry,
  field: Field,
  path: string,
  findings: Finding[],
): Statement {
  const place = { declaration, span: entry.value.span };
  const tokens = asTyped(field.type, entry.value.tokens, declaration.text);
  const result = readValue(field.type, tokens, contextOf(entry, field));
  for (const problem of result.problems) findings.push(problemFinding(declaration, problem, path));
  if (result.isNone) return { state: "none", place };
  if (result.value === undefined) return { state: "unreadable", place };
  return { state: "stated", value: result.value, written: result.written, place };
}

function contextOf(entry: FieldEntry, { type, example }: Field): Partial<ReadContext> {
  const context = { field: entry.path.text, span: entry.value.span };
  if (type.type === "code" || type.type === "codes") {
    const noun = familyByName(type.family)?.noun;
    return noun === undefined ? context : { ...context, expected: `the code of ${noun}` };
  }
  return example === undefined ? context : { ...context, expected: `one, such as ${example}` };
}

/** What the language says before anybody knows the field, and what the reading of the value then says better. */
const saidBetter: Readonly<Record<string, readonly string[]>> = {
  "language/missing-value": ["language/missing-value", "value/missing"],
  "language/decimal-comma": ["value/teeth-list", "value/glued-list", "value/not-teeth"],
  "language/thousands-comma": ["value/teeth-list", "value/glued-list", "value/not-teeth"],
  "language/missing-blank": ["value/teeth-list"],
};

/** Findings without those that another one of the same declaration says again, knowing more of the field. */
export function withoutEchoes(findings: readonly Finding[]): readonly Finding[] {
  if (!findings.some(({ code }) => Object.hasOwn(saidBetter, code))) return findings;
  return findings.filter((finding) => {
    const better = saidBetter[finding.code];
    return !better || !findings.some((other) => better.includes(other.code) && isEcho(finding, other));
  });
}

/** The other one stands behind the colon that lacks a value, or covers the characters in question. */
function isEcho(finding: Finding, other: Finding): boolean {
  if (finding === other || finding.place.declaration !== other.place.declaration) return false;
  const { start, end } = finding.place.span;
  const value = other.place.span;
  return finding.code === "language/missing-value" ? value.start === end : value.start <= start && end <= value.end;
}

/** Where a block's fields are read to. */
export interface FieldsReading {
  readonly declaration: Declaration;
  readonly fields: Fields;
  /** What the block belongs to, for messages: "a cassette", "the settings of drivetrain.chain". */
  readonly owner: string;
  /** The path in front of the field names. */
  readonly prefix: string;
  /** Groups whose content is not checked, such as `own`. */
  readonly free?: readonly string[];
  readonly into: Map<string, Statement>;
  readonly findings: Finding[];
}

/** Reads a block of plain fields: unknown names, repeated names and unreadable values become findings. */
export function readFields(block: BlockTree, reading: FieldsReading): void {
  const { declaration, fields, owner, prefix, into, findings } = reading;
  const seen = new Map<string, FieldEntry>();
  for (const entry of block.entries) {
    if (entry.form === "waive") {
      findings.push(
        textFinding(declaration, entry.span, "language/misplaced-waive", "A waive stands in a build, not here.", {
          path: prefix,
        }),
      );
      continue;
    }
    const written = entry.path.text;
    const path = prefix === "" ? written : `${prefix}.${written}`;
    if (reading.free?.includes(written)) continue;
    const row = fieldByName(fields, written);
    if (!row) {
      findings.push(unknownField(declaration, entry.path.span, written, Object.keys(fields), owner, path));
      continue;
    }
    if (entry.form === "group" || entry.block) {
      const at = entry.form === "group" ? entry.path.span : (entry.block?.span ?? entry.span);
      findings.push(
        textFinding(
          declaration,
          at,
          "language/not-a-group",
          `${written} takes a value, not a block: ${written}: ${row.field.example ?? "..."}`,
          { path },
        ),
      );
      if (entry.form === "group") continue;
    }
    if (entry.form !== "field") continue;
    if (row.name !== written) {
      const place = { declaration, span: entry.path.span };
      findings.push(
        textFinding(declaration, entry.path.span, "language/former-name", `${written} is now called ${row.name}.`, {
          path,
          severity: "warning",
          repairs: [
            {
              kind: "change-text",
              title: `Write ${row.name}`,
              place,
              changes: [{ span: entry.path.span, text: row.name }],
            },
          ],
        }),
      );
    }
    const earlier = seen.get(row.name);
    if (earlier) {
      findings.push(repeated(declaration, entry, earlier, path));
      continue;
    }
    seen.set(row.name, entry);
    into.set(row.name, readEntry(declaration, entry, row.field, path, findings));
  }
}

/** The finding for something said twice in one block. */
export function repeated(
  declaration: Declaration,
  entry: Pick<FieldEntry, "path" | "span">,
  earlier: Pick<FieldEntry, "path" | "span">,
  path: string,
): Finding {
  const { text } = declaration;
  const written = ({ span }: Pick<FieldEntry, "span">): string => text.slice(span.start, span.end);
  const isSame = written(entry) === written(earlier);
  const without = (one: Pick<FieldEntry, "span">, title: string) =>
    ({
      kind: "change-text",
      title,
      place: { declaration, span: entry.path.span },
      changes: [{ span: takeOut(text, one.span), text: "" }],
    }) as const;
  return textFinding(
    declaration,
    entry.path.span,
    "language/repeated",
    `${entry.path.text} is already stated in this block; one of the two must go. The first one counts.`,
    {
      path,
      related: [{ message: "first stated here", place: { declaration, span: earlier.path.span } }],
      repairs: [
        without(entry, `Take the second ${entry.path.text} out, which does not count`),
        ...(isSame ? [] : [without(earlier, `Take the first ${entry.path.text} out, so that this one counts`)]),
      ],
    },
  );
}

/** The finding for a name that no row of the vocabulary has. */
export function unknownField(
  declaration: Declaration,
  span: { start: number; end: number },
  written: string,
  known: readonly string[],
  owner: string,
  path: string,
): Finding {
  const meant = meantBy(written, known);
  const near = meant.length > 0 ? meant : nearestSeveral(written, known);
  return textFinding(
    declaration,
    span,
    "language/unknown-field",
    near.length === 0
      ? `${written} is not a field of ${owner}. The shop's own data goes into a block named own.`
      : `${written} is not a field of ${owner}.${didYouMean(near)}`,
    {
      path,
      repairs: near.map((name) => ({
        kind: "change-text",
        title: `Write ${name}`,
        place: { declaration, span },
        changes: [{ span, text: name }],
      })),
    },
  );
}
