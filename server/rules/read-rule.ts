import type { EntryTree, ExpressionTree, FieldEntry, GroupEntry } from "../../grammar/tree.ts";
import { type Declaration, declarationKey } from "../model/declaration.ts";
import type { Finding, Severity } from "../model/finding.ts";
import { problemFinding, readEntry, repeated, unknownField } from "../model/read-fields.ts";
import type { Workshop } from "../model/workshop.ts";
import { nearestSeveral } from "../values/near.ts";
import { readValue } from "../values/read.ts";
import { ruleEntries, ruleExpectations } from "../vocabulary/rules.ts";
import { Inference } from "./infer.ts";
import { localNameProblem } from "./local-name.ts";
import { readMessage } from "./message.ts";
import { everyPath, type PathMeaning, pathMeaning } from "./paths.ts";
import { Problems } from "./problems.ts";
import type { Expectation, ExpectedOutcome, Local, MessagePiece, Rule, RuleSetting } from "./rule.ts";
import { isWrong, pathsOf, type Typed } from "./typed-expression.ts";

type EntryName = keyof typeof ruleEntries;

/** Reads a rule. Never fails: what cannot be understood is a finding, and the rule is then asked of no build. */
export function readRule(declaration: Declaration, workshop: Workshop, today: string): Rule {
  const reader = new RuleReader(declaration, workshop, today);
  for (const entry of declaration.tree.block?.entries ?? []) reader.read(entry);
  return reader.finish();
}

/** The names that an entry gives by `let`, whether or not they can be read. */
function namesGiven(entry: EntryTree): readonly string[] {
  if (entry.form === "waive" || entry.path.text !== "let") return [];
  if (entry.form === "group")
    return entry.block.entries.flatMap((one) => (one.form === "field" ? [one.path.text] : []));
  const { expression } = entry;
  const left = expression?.form === "operation" && expression.operator === "=" ? expression.left : undefined;
  return left?.form === "operand" ? left.tokens.slice(0, 1).map(({ text }) => text) : [];
}

class RuleReader {
  readonly #declaration: Declaration;
  readonly #workshop: Workshop;
  readonly #findings: Finding[];
  readonly #problems: Problems;
  readonly #lookups: string[] = [];
  readonly #locals = new Map<string, Local>();
  readonly #names = new Map<string, Typed>();
  readonly #inference: Inference;
  readonly #seen = new Map<string, Pick<FieldEntry, "path" | "span">>();
  readonly #requirements: Typed[] = [];
  readonly #settings: RuleSetting[] = [];
  readonly #expectations: Expectation[] = [];
  #when: Typed | undefined;
  #severity: Severity = "error";
  #message: readonly MessagePiece[] | undefined;
  readonly #texts = new Map<EntryName, string>();
  /** True when something that decides about builds was written and cannot be read. */
  #isUnreadable: boolean;

  constructor(declaration: Declaration, workshop: Workshop, today: string) {
    this.#declaration = declaration;
    this.#workshop = workshop;
    this.#findings = declaration.tree.problems.map((problem) => problemFinding(declaration, problem));
    // What was read of a line that is wrong in part is not what its writer wanted to be asked.
    this.#isUnreadable = declaration.tree.problems.some(({ severity }) => severity === "error");
    this.#problems = new Problems(declaration, this.#findings);
    this.#inference = new Inference({
      workshop,
      lookups: this.#lookups,
      problems: this.#problems,
      today,
      locals: this.#names,
      given: new Set((declaration.tree.block?.entries ?? []).flatMap(namesGiven)),
    });
  }

  read(entry: EntryTree): void {
    if (entry.form === "waive") {
      this.#problems.report(entry.span, "language/misplaced-waive", "A waive stands in a build, not here.");
      return;
    }
    const written = entry.path.text;
    if (written === "own") return;
    if (!Object.hasOwn(ruleEntries, written)) {
      const names = Object.keys(ruleEntries);
      this.#findings.push(unknownField(this.#declaration, entry.path.span, written, names, "a rule", ""));
      // It may be a misspelt `require` or `when`.
      this.#isUnreadable = true;
      return;
    }
    const name = written as EntryName;
    const earlier = this.#seen.get(name);
    if (earlier && name !== "let" && name !== "require") {
      this.#findings.push(repeated(this.#declaration, entry, earlier, ""));
      return;
    }
    this.#seen.set(name, entry);
    if (ruleEntries[name].form === "block" || name === "let") this.#block(name, entry);
    else this.#value(name, entry);
  }

  finish(): Rule {
    const { header } = this.#declaration.tree;
    if (!this.#seen.has("require") && header.name) {
      this.#problems.report(
        header.name.span,
        "expression/no-requirement",
        `This rule requires nothing. Write what has to be true of a build, as in require: ${ruleEntries.require.example}`,
      );
    }
    const conditions = [...(this.#when ? [this.#when] : []), ...this.#requirements];
    const paths = new Map<string, PathMeaning>();
    for (const condition of conditions) pathsOf(condition, paths);
    for (const piece of this.#message ?? []) if ("value" in piece) pathsOf(piece.value, paths);
    return {
      declaration: this.#declaration,
      when: this.#when,
      requirements: this.#requirements,
      severity: this.#severity,
      message: this.#message,
      because: this.#texts.get("because"),
      mend: this.#texts.get("mend"),
      until: this.#texts.get("until"),
      settings: this.#settings,
      expectations: this.#expectations,
      paths,
      locals: this.#locals,
      isWrong: this.#isUnreadable || this.#requirements.length === 0 || conditions.some(isWrong),
      findings: this.#findings,
      lookups: this.#lookups,
    };
  }

  #value(name: EntryName, entry: FieldEntry | GroupEntry): void {
    const row = ruleEntries[name];
    const example = row.form === "field" ? ("example" in row.field ? row.field.example : "...") : row.example;
    if (entry.form === "group" || entry.block) {
      const at = entry.form === "group" ? entry.path.span : (entry.block?.span ?? entry.span);
      this.#problems.report(at, "language/not-a-group", `${name} takes a value, not a block: ${name}: ${example}`);
      if (entry.form === "group") {
        this.#isUnreadable = true;
        return;
      }
    }
    if (row.form === "expression") {
      // Without a tree there is a problem of the syntax.
      if (!entry.expression) this.#isUnreadable = true;
      else if (name === "when") this.#when = this.#inference.condition(entry.expression);
      else this.#requirements.push(this.#inference.condition(entry.expression));
      return;
    }
    if (row.form === "field") this.#field(name, entry);
  }

  #field(name: EntryName, entry: FieldEntry): void {
    const row = ruleEntries[name];
    if (row.form !== "field") return;
    const statement = readEntry(this.#declaration, entry, row.field, name, this.#findings);
    if (statement.state !== "stated") {
      // A rule whose last day cannot be read does not end.
      return;
    }
    const value = String(statement.value);
    if (name === "severity") this.#severity = value as Severity;
    else if (name === "message") {
      const token = entry.value.tokens[0];
      if (token) this.#message = readMessage(token, value, this.#names, this.#problems);
    } else this.#texts.set(name, value);
  }

  #block(name: EntryName, entry: FieldEntry | GroupEntry): void {
    if (name === "let") {
      if (entry.form === "field") this.#definition(entry.expression, entry);
      else for (const inner of entry.block.entries) this.#namedDefinition(inner);
      return;
    }
    const row = ruleEntries[name];
    if (entry.form !== "group") {
      const example = row.form === "block" ? row.example : "";
      this.#problems.report(entry.value.span, "language/not-a-value", `${name} takes a block: ${example}`);
      return;
    }
    for (const inner of entry.block.entries) {
      if (inner.form === "waive") {
        this.#problems.report(inner.span, "language/misplaced-waive", "A waive stands in a build, not here.");
      } else if (name === "set") this.#setting(inner, "");
      else this.#expectation(inner);
    }
  }

  /** `let: total = a + b`. */
  #definition(tree: ExpressionTree | undefined, entry: FieldEntry): void {
    if (!tree) {
      this.#isUnreadable = true;
      return;
    }
    const token = tree.form === "operation" && tree.left.form === "operand" ? tree.left.tokens : [];
    const [name] = token;
    if (tree.form !== "operation" || tree.operator !== "=" || token.length !== 1 || name?.kind !== "word") {
      this.#isUnreadable = true;
      this.#problems.report(
        entry.value.span,
        "expression/definition",
        `A name is given with =, as in let: ${ruleEntries.let.example}`,
      );
      return;
    }
    this.#define(name.text, name.span, tree.right);
  }

  /** `let { total: a + b }`. */
  #namedDefinition(entry: EntryTree): void {
    if (entry.form === "field" && entry.expression) this.#define(entry.path.text, entry.path.span, entry.expression);
    else {
      this.#isUnreadable = true;
      if (entry.form === "waive") return;
      if (entry.form === "group") {
        this.#problems.report(
          entry.path.span,
          "language/not-a-group",
          `${entry.path.text} takes an expression, not a block.`,
        );
      }
    }
  }

  #define(name: string, span: Local["span"], tree: ExpressionTree): void {
    const taken = this.#locals.has(name)
      ? `${name} is given twice; each name stands for one thing.`
      : localNameProblem(name);
    if (taken !== undefined) {
      this.#isUnreadable = true;
      this.#problems.report(span, "expression/definition", taken);
      return;
    }
    const expression = this.#inference.infer(tree);
    this.#locals.set(name, { name, expression, span });
    this.#names.set(name, expression);
  }

  #setting(entry: FieldEntry | GroupEntry, prefix: string): void {
    const path = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
    if (entry.form === "group") {
      for (const inner of entry.block.entries) if (inner.form !== "waive") this.#setting(inner, path);
      return;
    }
    const meaning = pathMeaning(path);
    if (!meaning) {
      const near = nearestSeveral(path, everyPath());
      this.#problems.reportNear(
        entry.path.span,
        "expression/unknown-path",
        `No build has anything called ${path}.`,
        near,
      );
      return;
    }
    if (meaning.what === "fact" || meaning.what === "number") {
      const why = meaning.what === "fact" ? "is a fact of the part" : "is worked out";
      this.#problems.report(
        entry.path.span,
        "expression/not-settable",
        `${path} ${why}, and cannot be written into a build. A rule sets how a part is installed, a field of the build, or which part is fitted.`,
      );
      return;
    }
    const { tokens, span } = entry.value;
    if (meaning.field) {
      const reading = readValue(meaning.field.type, tokens, { field: entry.path.text, span });
      for (const problem of reading.problems) this.#problems.add(problem);
      if (reading.value !== undefined || reading.isNone) this.#settings.push({ meaning, value: reading.written });
      return;
    }
    const [token] = tokens;
    if (token?.kind !== "word" || tokens.length > 1) {
      this.#problems.report(span, "value/one-name", `${path} takes the name of one part, or none.`);
      return;
    }
    if (token.text !== "none") this.#declaredPart(token.text, token.span, path, meaning);
    this.#settings.push({ meaning, value: token.text });
  }

  #declaredPart(name: string, span: Local["span"], path: string, { type }: PathMeaning): void {
    this.#lookups.push(declarationKey("part", name));
    if (this.#workshop.part(name) || !this.#workshop.complete) return;
    const kinds = type.form === "name" && type.names.of === "part" ? type.names.kinds : [];
    const place = { declaration: this.#declaration, span };
    this.#problems.report(span, "model/unknown-part", `No part is declared with the name ${name}, for ${path}.`, [
      { kind: "near-name", place, name, keyword: "part", kinds },
    ]);
  }

  #expectation(entry: FieldEntry | GroupEntry): void {
    const written = entry.path.text;
    if (!Object.hasOwn(ruleExpectations, written)) {
      const near = nearestSeveral(written, Object.keys(ruleExpectations));
      const words = Object.keys(ruleExpectations).join(", ");
      const message = `A rule holds, fails, is unknown or not applicable for a build: ${words}; ${written} is none of them.`;
      this.#problems.reportNear(entry.path.span, "language/unknown-field", message, near);
      return;
    }
    if (entry.form === "group") {
      this.#problems.report(
        entry.path.span,
        "language/not-a-group",
        `${written} takes names of builds: ${written}: fellside-l`,
      );
      return;
    }
    for (const token of entry.value.tokens) {
      if (token.kind === "comma") continue;
      const place = { declaration: this.#declaration, span: token.span };
      this.#expectations.push({ outcome: written as ExpectedOutcome, build: token.text, place });
    }
  }
}
