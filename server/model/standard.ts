import type { DeclarationTree } from "../../grammar/tree.ts";
import type { Code } from "../values/types.ts";
import type { Family } from "../vocabulary/define.ts";
import { compositeHalves, familyByName } from "../vocabulary/index.ts";
import { BlockStatements } from "./block-statements.ts";
import { type Declaration, declarationKey } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { problemFinding, textFinding } from "./read-fields.ts";
import type { Statement, Statements } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

/** A mating interface: its dimensions, what it mates with, other names for it, and where it is published. */
export interface Standard {
  readonly declaration: Declaration;
  readonly family: Family | undefined;
  readonly code: string;
  readonly dimensions: Statements;
  readonly aliases: readonly string[];
  /** Interfaces it mates with besides its own kind, as `FAMILY/CODE`. */
  readonly mates: readonly string[];
  readonly findings: readonly Finding[];
}

/** One half of a composite code such as `57-622`: a number in the base unit, or a code of another family. */
export interface ResolvedHalf {
  readonly name: string;
  readonly value?: number;
  readonly code?: ResolvedCode;
}

/** A code that is known: a declared standard stands behind it, or it says all by itself. */
export interface ResolvedCode extends Code {
  /** Absent for a code whose halves are both numbers, such as `210x55`: there is nothing more to declare. */
  readonly standard?: Standard;
  /** For a code written in two halves; the standard is then that of the half that has one. */
  readonly halves?: readonly ResolvedHalf[];
}

const standards = new WeakMap<Declaration, Standard>();

/** Reads a standard; what it says depends on its own text alone. Its values are read when they are asked for. */
export function readStandard(declaration: Declaration): Standard {
  const kept = standards.get(declaration);
  if (kept) return kept;
  const standard = new DeclaredStandard(declaration);
  standards.set(declaration, standard);
  return standard;
}

class DeclaredStandard implements Standard {
  readonly declaration: Declaration;
  readonly family: Family | undefined;
  readonly code: string;
  readonly dimensions: BlockStatements;
  #aliases: readonly string[] | undefined;
  #mates: readonly string[] | undefined;
  #findings: readonly Finding[] | undefined;

  constructor(declaration: Declaration) {
    this.declaration = declaration;
    this.family = declaration.kind === undefined ? undefined : familyByName(declaration.kind);
    this.code = declaration.name;
    this.dimensions = new BlockStatements({
      declaration,
      fields: this.family?.fields ?? {},
      owner: `a standard of the family ${this.family?.name}`,
    });
  }

  get aliases(): readonly string[] {
    this.#aliases ??= codesOf(this.dimensions.get("aliases"));
    return this.#aliases;
  }

  get mates(): readonly string[] {
    this.#mates ??= codesOf(this.dimensions.get("mates")).map((mate) => {
      const family = mate.slice(0, mate.indexOf("/"));
      return familyByName(family) ? mate : `${this.declaration.kind ?? ""}/${mate}`;
    });
    return this.#mates;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= this.#findingsOf(this.declaration.readTree());
    return this.#findings;
  }

  #findingsOf({ header: { kind }, problems }: DeclarationTree): readonly Finding[] {
    const { declaration, family, dimensions } = this;
    const ofText = problems.map((problem) => problemFinding(declaration, problem));
    if (family) return [...ofText, ...dimensions.findings];
    const unknown = `${kind?.text} is not a family of interfaces.`;
    return kind ? [...ofText, textFinding(declaration, kind.span, "model/unknown-family", unknown)] : ofText;
  }
}

function codesOf(statement: Statement | undefined): readonly string[] {
  if (statement?.state !== "stated" || !Array.isArray(statement.value)) return [];
  return (statement.value as readonly Code[]).map(({ code }) => code);
}

/** The key under which a change to any standard of a family is announced. */
export function familyKey(family: string): string {
  return `family ${family}`;
}

/**
 * The standard a code stands for, by its own name or an alias.
 * @param lookups receives the keys looked up.
 */
export function resolveCode(code: Code, workshop: Workshop, lookups: string[]): ResolvedCode | undefined {
  const key = declarationKey("standard", code.code, code.family);
  lookups.push(key);
  const direct = workshop.lookup(key);
  if (direct) return { family: code.family, code: direct.name, standard: readStandard(direct) };
  lookups.push(familyKey(code.family));
  let found: Standard | undefined;
  for (const declaration of workshop.declared("standard", code.family)) {
    const standard = readStandard(declaration);
    if (!standard.aliases.includes(code.code)) continue;
    // Two standards with one alias: the one whose name comes first, so that the answer never depends on load order.
    if (!found || standard.code < found.code) found = standard;
  }
  if (found) return { family: code.family, code: found.code, standard: found };
  return composite(code, workshop, lookups);
}

/** A code in two halves needs no standard of its own; those of its halves stand behind it. */
function composite(code: Code, workshop: Workshop, lookups: string[]): ResolvedCode | undefined {
  const family = familyByName(code.family);
  const written = family && compositeHalves(family, code.code);
  if (!written) return undefined;
  const halves: ResolvedHalf[] = [];
  for (const { half, text, value } of written) {
    if (text === undefined) continue;
    if (!("family" in half)) {
      halves.push({ name: half.name, ...(value === undefined ? {} : { value }) });
      continue;
    }
    const resolved = resolveCode({ family: half.family, code: text }, workshop, lookups);
    if (!resolved) return undefined;
    halves.push({ name: half.name, code: resolved });
  }
  const standard = halves.find((half) => half.code)?.code?.standard;
  return { family: code.family, code: code.code, halves, ...(standard ? { standard } : {}) };
}

/** Whether two interfaces mate: one and the same, or either names the other among its mates. */
export function mate(one: ResolvedCode, other: ResolvedCode): boolean {
  if (one.family === other.family && one.code === other.code) return true;
  // Composites are compared half by half by the checks that know what each half means.
  if (one.halves || other.halves) return false;
  return names(one, other) || names(other, one);
}

function names(one: ResolvedCode, other: ResolvedCode): boolean {
  if (!one.standard) return false;
  return one.standard.mates.some(
    (mate) =>
      mate === `${other.family}/${other.code}` ||
      other.standard?.aliases.some((alias) => mate === `${other.family}/${alias}`),
  );
}
