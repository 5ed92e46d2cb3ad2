import type { Failure } from "../checks/define.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Finding, Repair, Severity, WrittenSetting } from "../model/finding.ts";
import { slotByPath } from "../vocabulary/index.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { withSetting } from "./set-settings.ts";

/** How many settings are written for one repair: a mechanic who has to touch more sets the bike up anew. */
const mostSettings = 3;

/** A repair with what came of trying it on the build. */
export interface JudgedRepair {
  readonly repair: Repair;
  /** What is set: the setting of the repair, and what has to be set with it in the same slot. */
  readonly settings: readonly WrittenSetting[];
  /** False where the finding stays, or where something else begins to fail or can no longer be answered. */
  readonly isSafe: boolean;
  /** Checks that hold now and would fail. */
  readonly fails: readonly string[];
}

/** What fails, or cannot be told, of the checks that read a slot. */
interface Answers {
  readonly failing: ReadonlyMap<string, { readonly severity: Severity; readonly failure: Failure }>;
  readonly open: ReadonlySet<string>;
}

/**
 * Tries repairs that set something, or leave a part out, on the build. Where a setting alone makes another check fail
 * (a lower stack of spacers, and the steerer ends too high), what that check would set in the same slot is set with it.
 * What changes nothing is left out, and so is a value with which something fails where another value will do.
 */
export function judged(
  engine: Engine,
  assembly: Assembly,
  finding: Finding,
  repairs: readonly Repair[],
): readonly JudgedRepair[] {
  const before = new BuildEvaluation(assembly, engine.workshop);
  const found: JudgedRepair[] = [];
  for (const repair of repairs) {
    if (repair.kind === "set-setting") {
      if (isWritten(assembly, repair)) continue;
      const trial = new Trial(engine, before, repair.slot, finding);
      const changed = withSetting(assembly, repair);
      // Where nothing stands in the slot, there is nothing to try it on.
      const settings = changed ? trial.completed(repair) : [repair];
      const breaks = changed && !settings ? trial.breaks(changed) : [];
      found.push({
        repair,
        settings: settings ?? [repair],
        isSafe: settings !== undefined,
        fails: settings ? [] : breaks,
      });
    } else if (repair.kind === "leave-empty") {
      const trial = new Trial(engine, before, repair.slot, finding);
      const changed = withoutPart(assembly, repair.slot);
      found.push({
        repair,
        settings: [],
        isSafe: trial.isMended(changed, "nothing open"),
        fails: trial.breaks(changed),
      });
    } else found.push({ repair, settings: [], isSafe: true, fails: [] });
  }
  const seen = new Set<string>();
  return found.filter((one) => {
    if (isBettered(one, found)) return false;
    // Two halves of one repair come to the same.
    const key = one.settings
      .map(({ slot, setting, value }) => `${slot}.${setting}: ${value}`)
      .sort()
      .join("; ");
    if (key === "") return true;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function isBettered({ repair, isSafe }: JudgedRepair, among: readonly JudgedRepair[]): boolean {
  return (
    !isSafe &&
    repair.kind === "set-setting" &&
    among.some(
      ({ repair: other, isSafe: isOtherSafe }) =>
        isOtherSafe && other.kind === "set-setting" && other.slot === repair.slot && other.setting === repair.setting,
    )
  );
}

/** Whether a check that does not fail now would fail with a setting written so. */
export function beginsToFail(engine: Engine, assembly: Assembly, set: WrittenSetting): boolean {
  const changed = withSetting(assembly, set);
  if (!changed) return false;
  const trial = new Trial(engine, new BuildEvaluation(assembly, engine.workshop), set.slot);
  return !trial.isMended(changed);
}

/** One slot of a build, in which something is changed to see what comes of it. */
class Trial {
  readonly #engine: Engine;
  readonly #build: BuildEvaluation;
  readonly #slot: string;
  readonly #before: Answers;
  /** The failures that are to go: those of the finding. */
  readonly #asked: readonly string[];

  constructor(engine: Engine, build: BuildEvaluation, slot: string, finding?: Finding) {
    this.#engine = engine;
    this.#build = build;
    this.#slot = slot;
    this.#before = this.#answers(build);
    const ofCode = [...this.#before.failing].filter(([key]) => finding && key.startsWith(`${finding.code} `));
    const there = ofCode.filter(([, { failure }]) => failure.at.path === finding?.path);
    this.#asked = (there.length > 0 ? there : ofCode).map(([key]) => key);
  }

  /** A setting with what has to be set beside it in its slot; `undefined` where that does not mend the finding. */
  completed(first: WrittenSetting): readonly WrittenSetting[] | undefined {
    let settings: readonly WrittenSetting[] = [first];
    for (;;) {
      const changed = this.#with(settings);
      if (!changed) return undefined;
      const after = this.#answers(this.#evaluation(changed));
      const troubles = this.#troubles(after);
      if (troubles.length === 0) return settings;
      if (settings.length === mostSettings) return undefined;
      const more = troubles
        .flatMap(({ repairs }) => repairs)
        .flatMap((repair) => (repair.kind === "set-setting" && repair.slot === this.#slot ? [repair] : []))
        .map((repair) => merged(settings, repair))
        .filter((one) => !isSame(one, settings));
      const complete = more.find((one) => {
        const build = this.#with(one);
        return build !== undefined && this.isMended(build);
      });
      const next = complete ?? more.find((one) => one.length > settings.length);
      if (!next) return undefined;
      if (complete) return complete;
      settings = next;
    }
  }

  /** Whether the finding is gone, and nothing fails that did not fail, or fails worse. */
  isMended(changed: Assembly, asked?: "nothing open"): boolean {
    const after = this.#answers(this.#evaluation(changed));
    if (this.#troubles(after).length > 0) return false;
    return asked === undefined || [...after.open].every((key) => this.#before.open.has(key));
  }

  /** The codes of checks that did not fail and would. */
  breaks(changed: Assembly): readonly string[] {
    const { failing } = this.#answers(this.#evaluation(changed));
    const begun = [...failing.keys()].filter((key) => !this.#before.failing.has(key));
    return [...new Set(begun.map((key) => key.slice(0, key.indexOf(" "))))];
  }

  #troubles(after: Answers): readonly Failure[] {
    return [...after.failing].flatMap(([key, { severity, failure }]) => {
      const earlier = this.#before.failing.get(key);
      const isNew = !earlier || (severity === "error" && earlier.severity === "warning");
      return isNew || this.#asked.includes(key) ? [failure] : [];
    });
  }

  #with(settings: readonly WrittenSetting[]): Assembly | undefined {
    return settings.reduce<Assembly | undefined>(
      (assembly, setting) => assembly && withSetting(assembly, setting),
      this.#build.assembly,
    );
  }

  #evaluation(changed: Assembly): BuildEvaluation {
    return new BuildEvaluation(changed, this.#engine.workshop, { evaluation: this.#build, slot: this.#slot });
  }

  /** What is only told is no reason to do without a repair. */
  #answers(evaluation: BuildEvaluation): Answers {
    const failing = new Map<string, { readonly severity: Severity; readonly failure: Failure }>();
    const open = new Set<string>();
    for (const { check, instance } of this.#engine.checks.reading(this.#slot)) {
      const verdict = evaluation.ask(check, instance);
      const key = `${check.code} ${instance.name}`;
      if (verdict.outcome === "unknown") open.add(key);
      if (verdict.outcome !== "fails") continue;
      const severity = verdict.severity ?? check.severity;
      if (severity !== "information") failing.set(key, { severity, failure: verdict });
    }
    return { failing, open };
  }
}

/** The last value for a setting counts; it stands where the setting stood first. */
function merged(settings: readonly WrittenSetting[], set: WrittenSetting): readonly WrittenSetting[] {
  const { slot, setting, value } = set;
  const isThere = settings.some((one) => one.setting === setting);
  return isThere
    ? settings.map((one) => (one.setting === setting ? { slot, setting, value } : one))
    : [...settings, { slot, setting, value }];
}

function isSame(one: readonly WrittenSetting[], other: readonly WrittenSetting[]): boolean {
  return one.length === other.length && one.every(({ value }, index) => value === other[index]?.value);
}

/** Whether the build says so already. */
function isWritten(assembly: Assembly, set: WrittenSetting): boolean {
  const there = assembly.slots.get(set.slot)?.settings.get(set.setting);
  const wanted = withSetting(assembly, set)?.slots.get(set.slot)?.settings.get(set.setting);
  if (there?.state === "none") return wanted?.state === "none";
  if (there?.state !== "stated" || wanted?.state !== "stated") return false;
  return JSON.stringify(there.value) === JSON.stringify(wanted.value);
}

function withoutPart(assembly: Assembly, path: string): Assembly {
  const before = assembly.slots.get(path);
  const slot = before?.slot ?? slotByPath(path);
  if (!slot) return assembly;
  const place = before?.place ?? { declaration: assembly.declaration, span: { start: 0, end: 0 } };
  const empty: Installed = { slot, state: "none", name: "none", place, settings: new Map(), alternates: [] };
  return { ...assembly, slots: new Map(assembly.slots).set(path, empty) };
}
