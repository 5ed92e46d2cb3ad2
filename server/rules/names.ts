import type { ValueToken } from "../../grammar/tree.ts";
import { declarationKey } from "../model/declaration.ts";
import { resolveCode } from "../model/standard.ts";
import type { Workshop } from "../model/workshop.ts";
import { nearestSeveral } from "../values/near.ts";
import { listOf } from "../values/problems.ts";
import { readValue } from "../values/read.ts";
import { kindByName, slotByPath, slotPaths } from "../vocabulary/index.ts";
import type { Names } from "./expression-type.ts";
import type { Problems } from "./problems.ts";
import type { RunValue } from "./run-value.ts";

/** What names are looked up in. */
export interface NameContext {
  readonly workshop: Workshop;
  /** Receives the keys looked up, found or not. */
  readonly lookups: string[];
  readonly problems: Problems;
}

/** A name as a value, or nothing when it has a finding. */
type NameValue = Extract<RunValue, { form: "name" }> | undefined;

/** How many words of a set a message lists. */
const mostListed = 20;

/** Reads a name that is compared with names of a kind; `of` is what it is compared with, for the message. */
export function readName(names: Names, token: ValueToken, of: string, context: NameContext): NameValue {
  switch (names.of) {
    case "word":
      return wordOf(names.words, token, of, context.problems);
    case "code":
      return codeOf(names.family, token, context);
    case "part":
      return partOf(names.kinds, token, of, context);
    case "slot":
      return slotOf(token, of, context.problems);
    case "text":
      return textOf(token, of, context.problems);
    case "day":
    case "colour":
      return readAs(names.of === "day" ? "date" : "colour", token, of, context.problems);
  }
}

function wordOf(
  words: Readonly<Record<string, string>>,
  { text, span }: ValueToken,
  of: string,
  problems: Problems,
): NameValue {
  if (Object.hasOwn(words, text)) return { form: "name", name: text };
  const all = Object.keys(words);
  const listed = all.length <= mostListed ? listOf(all) : `${all.slice(0, mostListed).join(", ")} and others`;
  problems.reportNear(
    span,
    "expression/unknown-word",
    `${of} is never ${problems.text(span)}: it is one of ${listed}.`,
    nearestSeveral(text, all),
  );
  return undefined;
}

/** A code by its own name or an alias: what is compared is the standard behind it. */
function codeOf(family: string, { text, span }: ValueToken, { workshop, lookups, problems }: NameContext): NameValue {
  const code = { family, code: text };
  const resolved = resolveCode(code, workshop, lookups);
  if (resolved) return { form: "name", name: resolved.code };
  if (!workshop.complete) return { form: "name", name: text };
  const place = { declaration: problems.declaration, span };
  problems.report(
    span,
    "model/unknown-standard",
    `No standard of the family ${family} is declared with the code ${text}.`,
    [{ kind: "near-name", place, name: text, keyword: "standard", kinds: [family] }],
  );
  return undefined;
}

function partOf(kinds: readonly string[], { text, span }: ValueToken, of: string, context: NameContext): NameValue {
  const { workshop, lookups, problems } = context;
  lookups.push(declarationKey("part", text));
  const part = workshop.part(text);
  if (!part) {
    if (!workshop.complete) return { form: "name", name: text };
    const place = { declaration: problems.declaration, span };
    problems.report(span, "model/unknown-part", `No part is declared with the name ${text}.`, [
      { kind: "near-name", place, name: text, keyword: "part", kinds },
    ]);
    return undefined;
  }
  if (kinds.length > 0 && part.kind !== undefined && !kinds.includes(part.kind)) {
    const noun = (kind: string): string => kindByName(kind)?.noun ?? kind;
    const wanted = kinds.map(noun).join(" or ");
    problems.report(
      span,
      "model/wrong-kind",
      `${of} is ${wanted}; ${text} is ${noun(part.kind)}, so the two are never the same.`,
    );
    return undefined;
  }
  return { form: "name", name: text };
}

function slotOf({ text, span }: ValueToken, of: string, problems: Problems): NameValue {
  if (slotByPath(text)) return { form: "name", name: text };
  problems.reportNear(
    span,
    "model/unknown-slot",
    `${of} names a slot; there is none called ${problems.text(span)}.`,
    nearestSeveral(text, slotPaths),
  );
  return undefined;
}

function textOf({ kind, text, span }: ValueToken, of: string, problems: Problems): NameValue {
  if (kind === "text") return { form: "name", name: text };
  problems.report(span, "value/unquoted-text", `${of} is a text, and texts stand in quotes: "${text}".`, [
    problems.write(span, `"${text}"`),
  ]);
  return undefined;
}

function readAs(type: "date" | "colour", token: ValueToken, of: string, problems: Problems): NameValue {
  const reading = readValue({ type }, [token], { field: of, span: token.span });
  for (const problem of reading.problems) problems.add(problem);
  return typeof reading.value === "string" ? { form: "name", name: reading.value } : undefined;
}
