import type { Code } from "../values/types.ts";
import type { Family } from "../vocabulary/define.ts";
import { familyByName } from "../vocabulary/index.ts";
import { type Declaration, declarationKey } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { problemFinding, readFields, textFinding } from "./read-fields.ts";
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

/** A code that a declared standard stands behind. */
export interface ResolvedCode extends Code {
  readonly standard: Standard;
}

const standards = new WeakMap<Declaration, Standard>();

/** Reads a standard; what it says depends on its own text alone. */
export function readStandard(declaration: Declaration): Standard {
  const kept = standards.get(declaration);
  if (kept) return kept;
  const { tree } = declaration;
  const family = declaration.kind === undefined ? undefined : familyByName(declaration.kind);
  const findings: Finding[] = tree.problems.map((problem) => problemFinding(declaration, problem));
  const dimensions = new Map<string, Statement>();
  if (!family && tree.header.kind) {
    findings.push(
      textFinding(
        declaration,
        tree.header.kind.span,
        "model/unknown-family",
        `${tree.header.kind.text} is not a family of interfaces.`,
      ),
    );
  }
  if (tree.block && family) {
    readFields(tree.block, {
      declaration,
      fields: family.fields,
      owner: `a standard of the family ${family.name}`,
      prefix: "",
      free: ["own"],
      into: dimensions,
      findings,
    });
  }
  const standard: Standard = {
    declaration,
    family,
    code: declaration.name,
    dimensions,
    aliases: codesOf(dimensions.get("aliases")),
    mates: codesOf(dimensions.get("mates")).map((mate) => {
      const family = mate.slice(0, mate.indexOf("/"));
      return familyByName(family) ? mate : `${declaration.kind ?? ""}/${mate}`;
    }),
    findings,
  };
  standards.set(declaration, standard);
  return standard;
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
  return found && { family: code.family, code: found.code, standard: found };
}

/** Whether two interfaces mate: one and the same, or either names the other among its mates. */
export function mate(one: ResolvedCode, other: ResolvedCode): boolean {
  if (one.family === other.family && one.code === other.code) return true;
  return names(one, other) || names(other, one);
}

function names(one: ResolvedCode, other: ResolvedCode): boolean {
  return one.standard.mates.some(
    (mate) =>
      mate === `${other.family}/${other.code}` ||
      other.standard.aliases.some((alias) => mate === `${other.family}/${alias}`),
  );
}
