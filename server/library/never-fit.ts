import { placesOf, standsTwice } from "../calculations/shared/every-part.ts";
import { ofWheel } from "../calculations/shared/wheels.ts";
import type { CheckInstance } from "../checks/table.ts";
import { type Candidate, isSetting, SlotJudge } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import { BuildEvaluation } from "../engine/evaluate.ts";
import { byFit } from "../engine/ranking.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Part } from "../model/part.ts";
import { mate, type ResolvedCode, resolveCode } from "../model/standard.ts";
import type { Code } from "../values/types.ts";
import { type Joint, type JointEnd, jointTable, slotByPath, slotPaths, slotsTaking } from "../vocabulary/index.ts";
import { isTemplate } from "./bill-of-materials.ts";

/** An interface of a part for which the libraries have nothing to join it to. */
export interface LonelyInterface {
  /** The fact that states it. */
  readonly fact: string;
  readonly written: string;
  /** The joints in which it could stand, in words. */
  readonly joints: readonly string[];
  /** How many parts of the libraries state an interface at the other end of one of them. */
  readonly others: number;
}

/** A part that goes with nothing in the workshop. */
export interface NeverFitting {
  readonly declaration: Declaration;
  /** Interfaces for which no other part of the libraries is made, nor any adapter. */
  readonly lonely: readonly LonelyInterface[];
  /**
   * Set where it fits none of the builds: in every slot of every build that takes its kind some check fails as an
   * error, other than one that another set-up would mend. The nearest miss is said.
   */
  readonly fitsNone?: {
    readonly builds: number;
    readonly build: string;
    readonly slot: string;
    readonly reason: string;
  };
}

export interface NeverFittingParts {
  readonly parts: readonly NeverFitting[];
  /** How many builds there are, templates aside, and how many were asked before the time was up. */
  readonly builds: number;
  readonly asked: number;
}

/**
 * The parts of these files that fit no build, or to which nothing in the libraries can be joined.
 * @param more whether there is still time; where there is not, parts that were not found to fit anywhere are left open
 * and only those builds are counted that were asked.
 */
export function neverFittingParts(engine: Engine, uris: readonly string[], more: () => boolean): NeverFittingParts {
  const parts = uris
    .flatMap((uri) => engine.file(uri)?.declarations ?? [])
    .filter((declaration) => declaration.keyword === "part" && engine.workshop.lookup(declaration.key) === declaration);
  const builds = [...engine.workshop.declared("build")].filter((build) => !isTemplate(engine, build));
  const { asked, misses } = missesOf(engine, parts, builds, more);
  const partners = new Partners(engine);
  const found = parts.flatMap((declaration): NeverFitting[] => {
    const lonely = partners.lonelyInterfaces(engine.part(declaration));
    const miss = asked > 0 ? misses.get(declaration) : undefined;
    if (lonely.length === 0 && !miss) return [];
    return [{ declaration, lonely, ...(miss ? { fitsNone: { builds: asked, ...reasonOf(miss) } } : {}) }];
  });
  return { parts: found, builds: builds.length, asked };
}

interface Miss {
  readonly build: string;
  readonly slot: string;
  readonly candidate: Candidate;
}

/** What comes nearest to fitting, of each part that fits no build. A part that fits one is not asked of another. */
function missesOf(
  engine: Engine,
  parts: readonly Declaration[],
  builds: readonly Declaration[],
  more: () => boolean,
): { readonly asked: number; readonly misses: ReadonlyMap<Declaration, Miss> } {
  const bySlot = new Map<string, Set<Declaration>>();
  for (const declaration of parts) {
    for (const { path } of slotsTaking(declaration.kind ?? "")) {
      const known = bySlot.get(path);
      if (known) known.add(declaration);
      else bySlot.set(path, new Set([declaration]));
    }
  }
  const misses = new Map<Declaration, Miss>();
  const fits = (declaration: Declaration): void => {
    misses.delete(declaration);
    for (const open of bySlot.values()) open.delete(declaration);
  };
  // Most parts stand in some build already, and fit there: that is seen from the build as it is.
  for (const build of builds) {
    if (!more()) return { asked: 0, misses };
    for (const declaration of fittingIn(engine, engine.assemble(build))) fits(declaration);
  }
  let asked = 0;
  for (const build of builds) {
    const assembly = engine.assemble(build);
    const base = new BuildEvaluation(assembly, engine.workshop);
    for (const [slot, open] of bySlot) {
      if (open.size === 0) continue;
      if (!more()) return { asked, misses };
      const judging = lacedJudge(engine, assembly, slot, base);
      for (const declaration of open) {
        const part = engine.part(declaration);
        const candidate = standsTwice(declaration.kind)
          ? asWholeWheel(engine, assembly, slot, part)
          : judging.judge(part);
        if (candidate.errors === candidate.setUps) {
          fits(declaration);
          continue;
        }
        const known = misses.get(declaration);
        if (!known || byFit(candidate, known.candidate) < 0)
          misses.set(declaration, { build: build.name, slot, candidate });
      }
    }
    asked++;
  }
  return { asked, misses };
}

/** A hub or rim by itself in place of a wheel bought whole: the other half of that wheel goes with it, and is left open. */
function lacedJudge(engine: Engine, assembly: Assembly, slot: string, base: BuildEvaluation): SlotJudge {
  const others = placesOf(assembly.slots, slot).filter((place) => place !== slot);
  if (others.length === 0) return new SlotJudge(engine, assembly, slot, base);
  const slots = new Map([...assembly.slots].filter(([path]) => !others.includes(path)));
  return new SlotJudge(engine, { ...assembly, slots }, slot);
}

/** A wheel bought whole in both of its places and in place of what was laced. */
function asWholeWheel(engine: Engine, assembly: Assembly, slot: string, part: Part): Candidate {
  const wheel = slot.startsWith("front-wheel.") ? "front-wheel" : "rear-wheel";
  const slots = new Map(assembly.slots);
  for (const name of ["spokes", "nipples"]) slots.delete(ofWheel(wheel, name));
  return new SlotJudge(engine, { ...assembly, slots }, [ofWheel(wheel, "hub"), ofWheel(wheel, "rim")]).judge(part);
}

/** The parts of a build at which no check fails that another set-up would not mend. */
function fittingIn(engine: Engine, assembly: Assembly): readonly Declaration[] {
  const evaluation = new BuildEvaluation(assembly, engine.workshop);
  const verdicts = new Map<CheckInstance, boolean>();
  const fails = (asked: CheckInstance): boolean => {
    const known = verdicts.get(asked);
    if (known !== undefined) return known;
    const { check, instance } = asked;
    const verdict = evaluation.ask(check, instance);
    const isWrong =
      verdict.outcome === "fails" && (verdict.severity ?? check.severity) === "error" && !isSetting(verdict.at.path);
    verdicts.set(asked, isWrong);
    return isWrong;
  };
  return [...assembly.slots].flatMap(([slot, { part }]) =>
    part && !engine.checks.reading(slot).some(fails) ? [part.declaration] : [],
  );
}

function reasonOf({ build, slot, candidate }: Miss): {
  readonly build: string;
  readonly slot: string;
  readonly reason: string;
} {
  const failure = candidate.failures.find(({ severity, isSetUp }) => severity === "error" && !isSetUp);
  return { build, slot, reason: failure ? `${failure.code}: ${failure.message}` : "" };
}

/** One interface of a part in one joint. */
interface Asked {
  readonly joint: Joint;
  readonly fact: string;
  readonly written: string;
  readonly isHeld: boolean;
  /** What states an interface at the other end, the part itself too where it could stand at both. */
  readonly partners: readonly Partner[];
}

interface Partner {
  readonly code: ResolvedCode;
  readonly owner: Declaration;
}

/** Which parts of the libraries are made for each other, joint by joint of the table. */
class Partners {
  readonly #engine: Engine;
  /** The interfaces that some part of a slot's kinds states in a fact, by `SLOT FACT`. */
  readonly #codes = new Map<string, readonly Partner[]>();

  constructor(engine: Engine) {
    this.#engine = engine;
  }

  lonelyInterfaces(part: Part): readonly LonelyInterface[] {
    // The first end is what is fitted; what it is fitted to may well have places to spare.
    const asked = jointTable.flatMap((joint) => this.#ask(part, joint, ...joint.ends));
    const held = new Set(asked.filter(({ isHeld }) => isHeld).map(({ fact }) => fact));
    const heldJoints = new Set(asked.filter(({ isHeld }) => isHeld).map(({ joint }) => joint.name));
    const lonely = new Map<string, Asked[]>();
    for (const one of asked) {
      const { joint, fact } = one;
      // One interface stands in several joints, and a part can be held in two ways: one partner is enough.
      if (held.has(fact) || (joint.orElse !== undefined && heldJoints.has(joint.orElse))) continue;
      lonely.set(fact, [...(lonely.get(fact) ?? []), one]);
    }
    return [...lonely].map(([fact, joints]) => ({
      fact,
      written: joints[0]?.written ?? "",
      joints: joints.map(({ joint }) => joint.title),
      others: othersThan(
        part.declaration,
        joints.flatMap(({ partners }) => partners),
      ).size,
    }));
  }

  #ask(part: Part, joint: Joint, end: JointEnd, other: JointEnd): readonly Asked[] {
    // Halves of codes and sizes are compared in other ways; they are asked in builds alone.
    if (!joint.family || [end, other].some(({ half, sizeOf }) => half !== undefined || sizeOf !== undefined)) return [];
    if (!slotByPath(end.slot)?.kinds.includes(part.kind?.name ?? "")) return [];
    const statement =
      part.facts.get(end.field) ?? (end.otherwise === undefined ? undefined : part.facts.get(end.otherwise));
    if (statement?.state !== "stated") return [];
    const codes = this.#resolved(statement.value);
    const partners = this.#partners(other.slot, [
      other.field,
      ...(other.otherwise === undefined ? [] : [other.otherwise]),
    ]);
    const hasOthers = partners.some(({ owner }) => owner !== part.declaration);
    // Where the libraries state nothing at the other end, nothing can be said; halves are for the checks of builds.
    if (codes.length === 0 || !hasOthers || codes.some(({ halves }) => halves)) return [];
    const isHeld =
      codes.some((code) =>
        partners.some((partner) => partner.owner !== part.declaration && mate(code, partner.code)),
      ) ||
      this.#byAdapter(codes, joint, end) ||
      this.#byShare(codes, joint, end);
    return [{ joint, fact: end.field, isHeld, written: statement.written, partners }];
  }

  /** Whether an adapter of the libraries takes the interface on its side of the joint. */
  #byAdapter(codes: readonly ResolvedCode[], { adapter, adapterEnds, ends }: Joint, end: JointEnd): boolean {
    const field = adapterEnds?.[ends[0] === end ? 0 : 1].field;
    if (adapter === undefined || field === undefined) return false;
    return this.#partners(adapter, [field]).some((partner) => codes.some((code) => mate(code, partner.code)));
  }

  /** Whether some part offers the interface in the other end's place, as a brake lever offers a clamp. */
  #byShare(codes: readonly ResolvedCode[], { shared, ends }: Joint, end: JointEnd): boolean {
    if (!shared || ends[0] !== end) return false;
    return slotPaths.some((slot) =>
      this.#partners(slot, [shared.offers]).some((partner) => codes.some((code) => mate(code, partner.code))),
    );
  }

  #partners(slot: string, fields: readonly string[]): readonly Partner[] {
    const key = `${slot} ${fields.join(" ")}`;
    const kept = this.#codes.get(key);
    if (kept) return kept;
    const found = (slotByPath(slot)?.kinds ?? []).flatMap((kind) =>
      [...this.#engine.workshop.declared("part", kind)].flatMap((owner) =>
        fields.flatMap((field) => {
          const statement = this.#engine.part(owner).facts.get(field);
          if (statement?.state !== "stated") return [];
          return this.#resolved(statement.value).map((code) => ({ code, owner }));
        }),
      ),
    );
    this.#codes.set(key, found);
    return found;
  }

  #resolved(value: unknown): readonly ResolvedCode[] {
    const codes = (Array.isArray(value) ? value : [value]).filter(
      (one): one is Code => typeof one === "object" && one !== null && "family" in one && "code" in one,
    );
    return codes.flatMap((code) => resolveCode(code, this.#engine.workshop, []) ?? []);
  }
}

function othersThan(declaration: Declaration, partners: readonly Partner[]): ReadonlySet<Declaration> {
  const others = new Set(partners.map(({ owner }) => owner));
  others.delete(declaration);
  return others;
}
