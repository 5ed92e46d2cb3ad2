import type { Check, Verdict } from "../checks/define.ts";
import { type CheckInstance, instancesOf, needsOf } from "../checks/table.ts";
import { withPart } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import { type Alike, BuildEvaluation } from "../engine/evaluate.ts";
import { isTouched } from "../engine/reads.ts";
import { withSetting } from "../engine/with-setting.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Repair, Severity } from "../model/finding.ts";
import type { Need } from "../model/need.ts";
import type { Part } from "../model/part.ts";
import type { CheckSet } from "../rules/check-set.ts";
import { slotByPath, slotPaths } from "../vocabulary/index.ts";

/** A check that fails in a build, with its answer. */
export interface Failure {
  readonly question: CheckInstance;
  readonly severity: Severity;
  readonly verdict: Extract<Verdict, { outcome: "fails" }>;
}

/** A setting that was changed so that a check holds again. */
export interface SetUp {
  readonly slot: string;
  readonly setting: string;
  /** As it would be written. */
  readonly value: string;
}

/** Part of the slot, or nothing in it. */
export type Change = Part | "none";

/** What fails in a build and what cannot be answered, by the question asked. */
interface Answers {
  readonly failing: ReadonlyMap<CheckInstance, Failure>;
  readonly open: ReadonlySet<CheckInstance>;
}

/** A build with some of its parts exchanged. Its checks are made when somebody asks. */
export class BuildState {
  readonly assembly: Assembly;
  readonly evaluation: BuildEvaluation;
  readonly changes: ReadonlyMap<string, Change>;
  readonly setUps: readonly SetUp[];
  readonly engine: Engine;
  readonly #from: { readonly state: BuildState; readonly slot: string } | undefined;
  #answers: Answers | undefined;

  private constructor(
    engine: Engine,
    assembly: Assembly,
    moves: Pick<BuildState, "changes" | "setUps">,
    from?: { readonly state: BuildState; readonly slot: string },
  ) {
    const alike: Alike | undefined = from && { evaluation: from.state.evaluation, slot: from.slot };
    this.engine = engine;
    this.assembly = assembly;
    this.evaluation = new BuildEvaluation(assembly, engine.workshop, alike);
    this.changes = moves.changes;
    this.setUps = moves.setUps;
    this.#from = from;
  }

  /** A build as it stands. */
  static of(engine: Engine, assembly: Assembly): BuildState {
    return new BuildState(engine, assembly, { changes: new Map(), setUps: [] });
  }

  /** The build as it stood before anything was changed. */
  get start(): BuildState {
    return this.#from ? this.#from.state.start : this;
  }

  get questions(): Questions {
    return Questions.of(this.engine);
  }

  /** What fails and what is open, with whatever is set up and exchanged. */
  get answers(): Answers {
    this.#answers ??= this.#from
      ? ask(this.questions.touchedBy(this.#from.slot), this, this.#from.state.answers)
      : ask(this.questions.all, this, { failing: new Map(), open: new Set() });
    return this.#answers;
  }

  /** Failures that the build as it stands has not, in the order of the table of checks. */
  fresh(severity: Severity): readonly Failure[] {
    const before = this.start.answers.failing;
    return [...this.answers.failing.values()]
      .filter((one) => one.severity === severity && !wasSo(before, one, severity))
      .sort((a, b) => this.questions.order(a.question) - this.questions.order(b.question));
  }

  /** The state with another part, or none, in a slot. */
  withChange(slot: string, change: Change): BuildState {
    const assembly = change === "none" ? withNone(this.assembly, slot) : withPart(this.assembly, slot, change);
    const moves = { changes: new Map(this.changes).set(slot, change), setUps: this.setUps };
    return new BuildState(this.engine, assembly, moves, { state: this, slot });
  }

  /** The state with a setting written otherwise; `undefined` where that cannot be. */
  withSetUp(setUp: SetUp): BuildState | undefined {
    const { slot, setting, value } = setUp;
    const assembly = withSetting(this.assembly, slot, setting, value);
    if (!assembly) return undefined;
    const others = this.setUps.filter((one) => one.slot !== slot || one.setting !== setting);
    const moves = { changes: this.changes, setUps: [...others, setUp] };
    return new BuildState(this.engine, assembly, moves, { state: this, slot });
  }
}

/** Whether a check failed before, and as gravely. */
function wasSo(before: Answers["failing"], { question }: Failure, severity: Severity): boolean {
  const earlier = before.get(question);
  return earlier !== undefined && (severity !== "error" || earlier.severity === "error");
}

function withNone(assembly: Assembly, path: string): Assembly {
  const slot = slotByPath(path);
  const before = assembly.slots.get(path);
  if (!slot || !before) return assembly;
  const { place } = before;
  const none: Installed = { slot, state: "none", name: "none", place, settings: new Map(), alternates: [] };
  return { ...assembly, slots: new Map(assembly.slots).set(path, none) };
}

/** Puts questions to a build; whatever is not asked keeps its answer. */
function ask(asked: readonly CheckInstance[], { evaluation, engine }: BuildState, before: Answers): Answers {
  const language = engine.languageNumber;
  const failing = new Map(before.failing);
  const open = new Set(before.open);
  for (const question of asked) {
    const { check, instance } = question;
    const verdict = evaluation.ask(check, instance);
    failing.delete(question);
    open.delete(question);
    if (verdict.outcome === "unknown") open.add(question);
    if (verdict.outcome !== "fails") continue;
    failing.set(question, { question, verdict, severity: severityOf(check, verdict, language) });
  }
  return { failing, open };
}

function severityOf(check: Check, { severity }: Failure["verdict"], language: number): Severity {
  const own = severity ?? check.severity;
  // A check that came after the workshop's language number never breaks a build.
  return own === "error" && check.since > language ? "warning" : own;
}

/** Everything that is asked of a workshop's builds, its house rules included, and by which slots it is decided. */
export class Questions {
  readonly all: readonly CheckInstance[];
  readonly #order: ReadonlyMap<CheckInstance, number>;
  readonly #bySlot = new Map<string, readonly CheckInstance[]>();
  readonly #slots = new Map<CheckInstance, readonly string[]>();

  private constructor({ all }: CheckSet) {
    this.all = all.flatMap((check) => instancesOf(check).map((instance) => ({ check, instance })));
    this.#order = new Map(this.all.map((question, index) => [question, index]));
  }

  static readonly #known = new WeakMap<CheckSet, Questions>();

  static of({ checks }: Engine): Questions {
    const known = Questions.#known.get(checks) ?? new Questions(checks);
    Questions.#known.set(checks, known);
    return known;
  }

  /** The place of a question in the table. */
  order(question: CheckInstance): number {
    return this.#order.get(question) ?? this.all.length;
  }

  /** The questions whose answers may change when another part stands in a slot, or the same one is set up otherwise. */
  touchedBy(slot: string): readonly CheckInstance[] {
    const kept = this.#bySlot.get(slot);
    if (kept) return kept;
    const found = this.all.filter(({ check, instance }) =>
      (Object.values(needsOf(check, instance)) as Need[]).some((need) => isTouched(need, slot)),
    );
    this.#bySlot.set(slot, found);
    return found;
  }

  /** The slots that decide the answer to a question. */
  slotsOf(question: CheckInstance): readonly string[] {
    const kept = this.#slots.get(question);
    if (kept) return kept;
    const found = slotPaths.filter((slot) => this.touchedBy(slot).includes(question));
    this.#slots.set(question, found);
    return found;
  }
}

/** The settings that a check itself offers to change. */
export function setUpsOf(repairs: readonly Repair[]): readonly SetUp[] {
  return repairs.flatMap((repair) =>
    repair.kind === "set-setting" ? [{ slot: repair.slot, setting: repair.setting, value: repair.value }] : [],
  );
}
