import type { Span, SyntaxProblem } from "../../grammar/tree.ts";
import { assemble } from "../model/assemble.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Declaration, Place } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { type Part, readPart } from "../model/part.ts";
import { withoutEchoes } from "../model/read-fields.ts";
import { familyKey } from "../model/standard.ts";
import { largestFile, type SourceFile, Workshop } from "../model/workshop.ts";
import { statedByWorkshop } from "../model/workshop-fields.ts";
import { changedRecords } from "../records/keys.ts";
import type { RecordReport } from "../records/report.ts";
import { CheckSet } from "../rules/check-set.ts";
import { readRule } from "../rules/read-rule.ts";
import { type Rule, rulesKey } from "../rules/rule.ts";
import { ruleCheck } from "../rules/rule-check.ts";
import { shownIn } from "../values/display.ts";
import type { DisplayUnits } from "../values/show.ts";
import { type Analysis, analyse } from "./analyse.ts";
import type { BuildReport } from "./build-report.ts";
import { Memo } from "./memo.ts";
import { LineIndex, type Range } from "./positions.ts";
import { isTouched } from "./reads.ts";

/** A text that came, changed, or (without text) went. */
export interface Change {
  readonly uri: string;
  readonly text: string | undefined;
}

export interface EngineOptions {
  /** The day on which waivers are judged, `2026-11-25`. */
  readonly today: string;
  /** The standards that come with the program. */
  readonly prelude?: readonly { readonly uri: string; readonly text: string }[];
  /** Units in which numbers are shown; those that the workshop states when left out. */
  readonly displayUnits?: DisplayUnits;
}

/** An analysis, with what the libraries were when it was worked out. */
interface DatedAnalysis extends Analysis {
  readonly librariesRevision: number;
}

/**
 * One workshop, from texts to findings. It reads nothing by itself and keeps no clock: a host pushes changes in and
 * asks; every answer is on the newest text pushed. What an edit does not reach is not worked out again.
 */
export class Engine {
  readonly workshop = new Workshop();
  readonly #parts = new Memo<Part>();
  readonly #rules = new Memo<Rule>();
  #checks: CheckSet | undefined;
  readonly #analyses = new Memo<DatedAnalysis>((declaration, analysis) => this.#keepReport(declaration, analysis));
  /** The last reports of builds that are being edited, by name. */
  readonly #earlier = new Map<string, DatedAnalysis>();
  readonly #lines = new Map<string, { readonly text: string; readonly index: LineIndex }>();
  readonly #open = new Set<string>();
  readonly #displayUnits: DisplayUnits | undefined;
  #today: string;
  #librariesRevision = 0;
  #revision = 0;

  constructor(options: EngineOptions) {
    this.#today = options.today;
    this.#displayUnits = options.displayUnits;
    for (const { uri, text } of options.prelude ?? []) this.workshop.update(uri, text, true);
  }

  /** Counts changes of any kind: while it stands, every answer stands. */
  get revision(): number {
    return this.#revision;
  }

  /** Counts changes of anything but builds and records: while it stands, what parts and standards say has not changed. */
  get librariesRevision(): number {
    return this.#librariesRevision;
  }

  get today(): string {
    return this.#today;
  }

  set today(day: string) {
    if (day === this.#today) return;
    this.#today = day;
    this.#librariesRevision++;
    this.#revision++;
    this.#forgetRules();
    this.#analyses.clear();
  }

  /** While false, names that are not found are pending rather than wrong: the first scan of the root is under way. */
  get complete(): boolean {
    return this.workshop.complete;
  }

  set complete(complete: boolean) {
    if (complete === this.workshop.complete) return;
    this.workshop.complete = complete;
    this.#librariesRevision++;
    this.#revision++;
    this.#parts.clear();
    this.#forgetRules();
    this.#analyses.clear();
  }

  /**
   * Takes changes in.
   * @returns the files whose findings may have changed, the changed ones included.
   */
  update(changes: readonly Change[]): Set<string> {
    this.#revision++;
    const affected = new Set<string>();
    const keys = new Set<string>();
    for (const { uri, text } of changes) {
      if (this.workshop.files.get(uri)?.builtIn) continue;
      affected.add(uri);
      const before = new Set(this.workshop.files.get(uri)?.declarations);
      const changed = this.workshop.update(uri, text);
      for (const key of changed) {
        keys.add(key);
        if (key.startsWith("standard ")) keys.add(familyKey(key.split(" ")[1] ?? ""));
      }
      const fresh = (this.workshop.files.get(uri)?.declarations ?? []).filter((kept) => !before.delete(kept));
      for (const key of changedRecords(this.workshop, changed, [...before], fresh)) keys.add(key);
      for (const gone of before) {
        this.#parts.drop(gone);
        this.#rules.drop(gone);
        this.#analyses.drop(gone);
      }
      if (text === undefined) this.#lines.delete(uri);
    }
    if ([...keys].some((key) => !/^(build|record|records of) /.test(key))) this.#librariesRevision++;
    this.#parts.invalidate(keys);
    // Every build is asked every rule.
    if (this.#rules.invalidate(keys).size > 0 || [...keys].some((key) => key.startsWith("rule "))) {
      keys.add(rulesKey);
      this.#checks = undefined;
    }
    for (const declaration of this.#analyses.invalidate(keys)) affected.add(declaration.uri);
    return affected;
  }

  /** Says which files are open in an editor: their trees are kept, those of closed files are let go after use. */
  setOpen(uri: string, open: boolean): void {
    if (open) this.#open.add(uri);
    else this.#open.delete(uri);
    if (this.#open.size === 0) this.#earlier.clear();
  }

  isOpen(uri: string): boolean {
    return this.#open.has(uri);
  }

  /** What is known of a build in an open file serves again after the next letter, as far as it does not differ. */
  #keepReport(declaration: Declaration, analysis: DatedAnalysis): void {
    if (!analysis.report || !this.#open.has(declaration.uri)) return;
    this.#earlier.set(declaration.key, analysis);
  }

  #earlierReport({ key }: Declaration): BuildReport | undefined {
    const earlier = this.#earlier.get(key);
    this.#earlier.delete(key);
    return earlier?.librariesRevision === this.#librariesRevision ? earlier.report : undefined;
  }

  file(uri: string): SourceFile | undefined {
    return this.workshop.files.get(uri);
  }

  /** Everything to be said of a file, in the order of the text. */
  findings(uri: string): readonly Finding[] {
    const file = this.workshop.files.get(uri);
    if (!file) return [];
    const findings: Finding[] = [];
    for (const declaration of file.declarations) findings.push(...this.#analysis(declaration).findings);
    return findings;
  }

  /** Everything to be said of one declaration. */
  findingsOf(declaration: Declaration): readonly Finding[] {
    return this.#analysis(declaration).findings;
  }

  /** Problems of a file's text that belong to no declaration, with offsets in the file. */
  fileProblems(uri: string): readonly SyntaxProblem[] {
    const file = this.workshop.files.get(uri);
    if (!file) return [];
    if (file.text.length > largestFile) {
      return [
        {
          code: "language/file-too-large",
          severity: "error",
          message: `This file has ${file.text.length} characters; at most ${largestFile} are read. Split it into several.`,
          span: { start: 0, end: 0 },
        },
      ];
    }
    return this.workshop.strayProblems(file).map(({ start, problem: { code, severity, message, span, fix } }) => {
      const moved = (of: Span): Span => ({ start: of.start + start, end: of.end + start });
      const changes = fix?.changes.map((change) => ({ ...change, span: moved(change.span) }));
      return { code, severity, message, span: moved(span), ...(fix && changes ? { fix: { ...fix, changes } } : {}) };
    });
  }

  /** The report of a build; `undefined` when the declaration is not a build. */
  report(declaration: Declaration): BuildReport | undefined {
    return declaration.keyword === "build" ? this.#analysis(declaration).report : undefined;
  }

  /** The report of a record; `undefined` when the declaration is not a record. */
  record(declaration: Declaration): RecordReport | undefined {
    return declaration.keyword === "record" ? this.#analysis(declaration).record : undefined;
  }

  part(declaration: Declaration): Part {
    return this.#parts.get(declaration, () => {
      const part = readPart(declaration, this.workshop);
      if (!declaration.builtIn && !this.#open.has(declaration.uri)) declaration.forgetTree();
      return part;
    });
  }

  /** A house rule as it is read. */
  rule(declaration: Declaration): Rule {
    return this.#rules.get(declaration, () => {
      const rule = readRule(declaration, this.workshop, this.#today);
      if (!this.#open.has(declaration.uri)) declaration.forgetTree();
      return rule;
    });
  }

  /** Everything that is asked of builds: the checks that come with the program and the rules that can be read. */
  get checks(): CheckSet {
    if (!this.#checks) {
      const names = new Map<string, Rule>();
      for (const { key } of this.workshop.declared("rule")) {
        // Of two declarations with one name only the first counts.
        const counting = this.workshop.lookup(key);
        if (counting) names.set(key, this.rule(counting));
      }
      const rules = [...names.entries()].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, rule]) => rule);
      this.#checks = new CheckSet(
        rules.filter(({ isWrong }) => !isWrong).map((rule) => ruleCheck(rule, this.#today)),
        isTouched,
      );
    }
    return this.#checks;
  }

  #forgetRules(): void {
    this.#rules.clear();
    this.#checks = undefined;
  }

  /**
   * Works the findings of a file out, declaration by declaration, as long as `more` says so.
   * @returns true when nothing of the file is left to do.
   */
  prepare(uri: string, more: () => boolean): boolean {
    for (const declaration of this.workshop.files.get(uri)?.declarations ?? []) {
      if (this.#analyses.has(declaration)) continue;
      if (!more()) return false;
      this.#analysis(declaration);
    }
    return true;
  }

  /** The language number the workshop states; 1 when it states none. */
  get languageNumber(): number {
    const workshop = this.workshop.lookup("workshop");
    if (!workshop) return 1;
    const value = statedByWorkshop(workshop).get("language");
    return value?.state === "stated" && typeof value.value === "number" ? value.value : 1;
  }

  /** Units in which numbers are shown: asked for by the reader, else by the workshop, else metric. */
  get displayUnits(): DisplayUnits {
    if (this.#displayUnits) return this.#displayUnits;
    const workshop = this.workshop.lookup("workshop");
    const stated = workshop && statedByWorkshop(workshop).get("units");
    return stated?.state === "stated" ? (stated.value as DisplayUnits) : "metric";
  }

  /** Does some work for a reader of this workshop: numbers are shown in its units. */
  shown<Answer>(work: () => Answer): Answer {
    return shownIn(this.displayUnits, work);
  }

  /** Line and column of a stretch of a declaration. */
  range(place: Place): Range {
    return this.fileRange(place.declaration.uri, {
      start: place.declaration.start + place.span.start,
      end: place.declaration.start + place.span.end,
    });
  }

  fileRange(uri: string, span: Span): Range {
    const index = this.lines(uri);
    return { start: index.position(span.start), end: index.position(span.end) };
  }

  lines(uri: string): LineIndex {
    const text = this.workshop.files.get(uri)?.text ?? "";
    const kept = this.#lines.get(uri);
    if (kept?.text === text) return kept.index;
    const index = new LineIndex(text);
    this.#lines.set(uri, { text, index });
    return index;
  }

  /** The declaration at an offset of a file. */
  declarationAt(uri: string, offset: number): Declaration | undefined {
    const declarations = this.workshop.files.get(uri)?.declarations ?? [];
    let low = 0;
    let high = declarations.length - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const declaration = declarations[middle];
      if (!declaration) return undefined;
      if (offset < declaration.start) high = middle - 1;
      else if (offset > declaration.start + declaration.text.length) low = middle + 1;
      else {
        // At the border of two the later one is meant: its keyword is being typed.
        const next = declarations[middle + 1];
        return next && next.start === offset ? next : declaration;
      }
    }
    return undefined;
  }

  /** An assembled build, checked or not. */
  assemble(declaration: Declaration): Assembly {
    return assemble(declaration, { workshop: this.workshop, part: (other) => this.part(other) });
  }

  #analysis(declaration: Declaration): DatedAnalysis {
    return this.#analyses.get(declaration, () => {
      const analysed = analyse(this, declaration, () => this.#earlierReport(declaration));
      const findings = withoutEchoes(analysed.findings);
      const analysis = { ...analysed, findings, librariesRevision: this.#librariesRevision };
      if (!declaration.builtIn && !this.#open.has(declaration.uri)) declaration.forgetTree();
      return analysis;
    });
  }
}
