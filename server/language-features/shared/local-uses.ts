import type { Span } from "../../../grammar/tree.ts";
import type { Declaration } from "../../model/declaration.ts";
import type { Workshop } from "../../model/workshop.ts";
import { readRule } from "../../rules/read-rule.ts";
import type { Local } from "../../rules/rule.ts";
import { ruleWords } from "../../rules/words.ts";
import type { Meaning } from "./meaning.ts";

/** Every place of a rule where a name that it gives itself stands, the one where it is given first. */
export function localUses(workshop: Workshop, rule: Declaration, local: Local): readonly Span[] {
  const spans = ruleWords(readRule(rule, workshop, "")).flatMap((word) =>
    word.what === "local" && word.local.name === local.name ? [word.span] : [],
  );
  const isGiven = (span: Span): boolean => span.start === local.span.start;
  return [local.span, ...spans.filter((span) => !isGiven(span))].sort((one, other) => one.start - other.start);
}

/** The name given by the rule itself that a meaning is of. */
export function localOf(meaning: Meaning | undefined): Local | undefined {
  return meaning?.what === "local" ? meaning.local : undefined;
}
