import type { Span } from "../../grammar/tree.ts";
import type { Declaration, Place } from "../model/declaration.ts";
import type { Finding, Severity } from "../model/finding.ts";
import type { ruleExpectations } from "../vocabulary/rules.ts";
import type { PathMeaning } from "./paths.ts";
import type { Typed } from "./typed-expression.ts";

/** A constraint of the workshop's own, read. */
export interface Rule {
  readonly declaration: Declaration;
  /** Builds to which it applies; every build where it is left out. */
  readonly when: Typed | undefined;
  /** What has to be true, all of it. */
  readonly requirements: readonly Typed[];
  readonly severity: Severity;
  /** What is said of a breach, in pieces: text, and values put in. */
  readonly message: readonly MessagePiece[] | undefined;
  readonly because: string | undefined;
  readonly mend: string | undefined;
  /** The last day on which it applies, `2027-03-31`. */
  readonly until: string | undefined;
  readonly settings: readonly RuleSetting[];
  readonly expectations: readonly Expectation[];
  /** What its expressions name, in the order in which they stand. */
  readonly paths: ReadonlyMap<string, PathMeaning>;
  /** Names given by `let`. */
  readonly locals: ReadonlyMap<string, Local>;
  /** True when something of it cannot be understood: it is then asked of no build. */
  readonly isWrong: boolean;
  readonly findings: readonly Finding[];
  /** The keys looked up, found or not. */
  readonly lookups: readonly string[];
}

export type MessagePiece = { readonly text: string } | { readonly value: Typed };

/** A value that mends a breach, as it would be written into the build. */
export interface RuleSetting {
  readonly meaning: PathMeaning;
  readonly value: string;
}

export type ExpectedOutcome = keyof typeof ruleExpectations;

/** What a rule has to come to for a build that it names. */
export interface Expectation {
  readonly outcome: ExpectedOutcome;
  readonly build: string;
  readonly place: Place;
}

export interface Local {
  readonly name: string;
  readonly expression: Typed;
  /** Where its name stands. */
  readonly span: Span;
}

/** The key under which a change to any rule is announced: every build is asked every rule. */
export const rulesKey = "rules";

/** The code under which a rule's findings stand, and by which it is waived. */
export function ruleCode(name: string): string {
  return `rule/${name}`;
}

/** The name of the rule behind a code; nothing for the code of a check that comes with the program. */
export function ruleName(code: string): string | undefined {
  return code.startsWith("rule/") ? code.slice("rule/".length) : undefined;
}
