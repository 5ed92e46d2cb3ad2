import { nearest } from "../values/near.ts";
import type { Kind } from "../vocabulary/define.ts";
import { commonFields, kindByName, kindNames } from "../vocabulary/index.ts";
import { type Declaration, declarationKey, headerPlace } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { problemFinding, readFields, textFinding } from "./read-fields.ts";
import type { Statement, Statements } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

/** The longest chain of `from` that is followed. */
export const longestDerivation = 64;

/** What a workshop knows of a part: its own facts laid over those of the part it derives from. */
export interface Part {
  readonly declaration: Declaration;
  /** Absent when the kind is not one of the vocabulary. */
  readonly kind: Kind | undefined;
  readonly facts: Statements;
  /** The keys that were looked up to read it, found or not. */
  readonly lookups: readonly string[];
  /** Problems of its own text; those of its base are the base's. */
  readonly findings: readonly Finding[];
}

interface OwnFacts {
  readonly facts: ReadonlyMap<string, Statement>;
  readonly findings: readonly Finding[];
}

/** A declaration's own facts depend on its text alone, so they are kept with it. */
const ownFactsOf = new WeakMap<Declaration, OwnFacts>();

function ownFacts(declaration: Declaration, kind: Kind | undefined): OwnFacts {
  const kept = ownFactsOf.get(declaration);
  if (kept) return kept;
  const { tree } = declaration;
  const findings: Finding[] = tree.problems.map((problem) => problemFinding(declaration, problem));
  const facts = new Map<string, Statement>();
  if (tree.block) {
    readFields(tree.block, {
      declaration,
      fields: kind?.fields ?? commonFields,
      owner: kind?.noun ?? "a part",
      prefix: "",
      free: ["own"],
      into: facts,
      findings: kind ? findings : [],
    });
  }
  const own = { facts, findings };
  ownFactsOf.set(declaration, own);
  return own;
}

/**
 * Reads a part with everything it derives from.
 *
 * Cycles and bases that do not exist or are of another kind are findings of the declaration that names them.
 */
export function readPart(declaration: Declaration, workshop: Workshop): Part {
  const kind = declaration.kind === undefined ? undefined : kindByName(declaration.kind);
  const own = ownFacts(declaration, kind);
  const findings = [...own.findings];
  const lookups: string[] = [];
  const { header } = declaration.tree;
  if (!kind && header.kind) {
    findings.push(unknownKind(declaration, header.kind.text, header.kind.span));
  }
  if (declaration.from === undefined) return { declaration, kind, facts: own.facts, lookups, findings };

  const layers: ReadonlyMap<string, Statement>[] = [own.facts];
  const seen = new Set([declaration]);
  let current = declaration;
  while (current.from !== undefined) {
    const key = declarationKey("part", current.from);
    lookups.push(key);
    const base = workshop.lookup(key);
    const at = current === declaration ? header.from?.span : undefined;
    if (!base) {
      if (at && workshop.complete) {
        findings.push(
          textFinding(declaration, at, "model/unknown-part", `No part is declared with the name ${current.from}.`, {
            repairs: [
              {
                kind: "near-name",
                place: { declaration, span: at },
                name: current.from,
                keyword: "part",
                kinds: kind ? [kind.name] : [],
              },
            ],
          }),
        );
      }
      break;
    }
    if (seen.has(base) || seen.size >= longestDerivation) {
      if (at) {
        const why = seen.has(base)
          ? `${declaration.name} derives from itself, by way of ${current.from}.`
          : `The chain of parts after from is longer than ${longestDerivation}.`;
        findings.push(textFinding(declaration, at, "model/derivation", why));
      } else if (seen.has(base) && base === declaration && header.from) {
        findings.push(
          textFinding(
            declaration,
            header.from.span,
            "model/derivation",
            `${declaration.name} derives from itself, by way of ${declaration.from}.`,
          ),
        );
      }
      break;
    }
    if (at && base.kind !== declaration.kind) {
      findings.push(
        textFinding(
          declaration,
          at,
          "model/derivation",
          `${declaration.name} is declared as ${kind?.noun ?? declaration.kind ?? "a part"}, but ${base.name}, which it derives from, is ${kindByName(base.kind ?? "")?.noun ?? base.kind ?? "a part"}.`,
          { related: [{ message: `${base.name} is declared here`, place: headerPlace(base) }] },
        ),
      );
    }
    seen.add(base);
    layers.unshift(ownFacts(base, base.kind === undefined ? undefined : kindByName(base.kind)).facts);
    current = base;
  }
  const facts = new Map<string, Statement>();
  for (const layer of layers) for (const [name, statement] of layer) facts.set(name, statement);
  return { declaration, kind, facts, lookups, findings };
}

function unknownKind(declaration: Declaration, written: string, span: { start: number; end: number }): Finding {
  const near = nearest(written, kindNames);
  return textFinding(
    declaration,
    span,
    "model/unknown-kind",
    near === undefined
      ? `${written} is not a kind of part.`
      : `${written} is not a kind of part; did you mean ${near}?`,
    {
      repairs:
        near === undefined
          ? []
          : [
              {
                kind: "change-text",
                title: `Write ${near}`,
                place: { declaration, span },
                changes: [{ span, text: near }],
              },
            ],
    },
  );
}
