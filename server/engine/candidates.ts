import type { Verdict } from "../checks/define.ts";
import { checksReading } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { Part } from "../model/part.ts";
import { slotByPath } from "../vocabulary/index.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";

/** What a part would do in a slot of a build. */
export interface Candidate {
  readonly part: Part;
  /** Checks that would fail there and their messages, errors first. */
  readonly failures: readonly {
    readonly code: string;
    readonly instance: string;
    readonly message: string;
    readonly severity: string;
  }[];
  /** Checks that could not be made for want of facts. */
  readonly unknown: readonly string[];
  readonly holds: number;
  /** The least room left in any check that has a measure, as a share of its limit; 1 when none has. */
  readonly margin: number;
  /** In grams; unknown masses sort last. */
  readonly mass: number | undefined;
}

/** The assembly with another part in a slot. Settings stay where the slot keeps its kind of part. */
export function withPart(assembly: Assembly, path: string, part: Part): Assembly {
  const slot = slotByPath(path);
  if (!slot) return assembly;
  const before = assembly.slots.get(path);
  const installed: Installed = {
    slot,
    state: "part",
    name: part.declaration.name,
    part,
    place: before?.place ?? headerPlace(assembly.declaration),
    settings: before?.settings ?? new Map(),
    alternates: [],
  };
  return { ...assembly, slots: new Map(assembly.slots).set(path, installed) };
}

/** All parts of the libraries that may go into a slot, by kind. */
export function* partsFor(engine: Engine, path: string): Iterable<Declaration> {
  for (const kind of slotByPath(path)?.kinds ?? []) {
    for (const declaration of engine.workshop.declared("part", kind)) {
      // Of two declarations with one name only the first counts.
      if (engine.workshop.part(declaration.name) === declaration) yield declaration;
    }
  }
}

/** Judges one part in a slot by the checks that read the slot. */
export function judge(engine: Engine, assembly: Assembly, path: string, part: Part): Candidate {
  const evaluation = new BuildEvaluation(withPart(assembly, path, part), engine.workshop);
  const failures: Candidate["failures"][number][] = [];
  const unknown: string[] = [];
  let holds = 0;
  let margin = 1;
  for (const { check, instance } of checksReading(path)) {
    const verdict: Verdict = evaluation.ask(check, instance);
    if (verdict.outcome === "fails") {
      const severity = verdict.severity ?? check.severity;
      failures.push({ code: check.code, instance: instance.name, message: verdict.message, severity });
    } else if (verdict.outcome === "unknown") unknown.push(check.code);
    else if (verdict.outcome === "holds") {
      holds++;
      if (verdict.margin !== undefined && verdict.margin < margin) margin = verdict.margin;
    }
  }
  failures.sort((a, b) => gravity(b.severity) - gravity(a.severity));
  const mass = part.facts.get("mass");
  return {
    part,
    failures,
    unknown,
    holds,
    margin,
    mass: mass?.state === "stated" && typeof mass.value === "number" ? mass.value : undefined,
  };
}

function gravity(severity: string): number {
  return severity === "error" ? 2 : severity === "warning" ? 1 : 0;
}

/** The better candidate first: fewest errors, then warnings, then open questions, then margin, mass and name. */
export function byFit(one: Candidate, other: Candidate): number {
  const grave = (candidate: Candidate, severity: string): number =>
    candidate.failures.filter((failure) => failure.severity === severity).length;
  return (
    grave(one, "error") - grave(other, "error") ||
    grave(one, "warning") - grave(other, "warning") ||
    one.unknown.length - other.unknown.length ||
    other.margin - one.margin ||
    (one.mass ?? Number.POSITIVE_INFINITY) - (other.mass ?? Number.POSITIVE_INFINITY) ||
    (one.part.declaration.name < other.part.declaration.name ? -1 : 1)
  );
}

/** Every part of the libraries for a slot, those that fit first. */
export function rankCandidates(engine: Engine, assembly: Assembly, path: string): readonly Candidate[] {
  const candidates: Candidate[] = [];
  for (const declaration of partsFor(engine, path)) {
    candidates.push(judge(engine, assembly, path, engine.part(declaration)));
  }
  return candidates.sort(byFit);
}
