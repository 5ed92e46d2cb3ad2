import type { Span } from "../../grammar/tree.ts";
import { nearest } from "../values/near.ts";
import type { Kind } from "../vocabulary/define.ts";
import { commonFields, kindByName, kindNames } from "../vocabulary/index.ts";
import { BlockStatements } from "./block-statements.ts";
import { type Declaration, declarationKey, headerPlace } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { problemFinding, textFinding } from "./read-fields.ts";
import type { Statements } from "./stated.ts";
import { LayeredStatements } from "./statements.ts";
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

/** A declaration's own facts depend on its text alone, so they are kept with it. */
const ownFactsOf = new WeakMap<Declaration, BlockStatements>();

function ownFacts(declaration: Declaration, kind: Kind | undefined): BlockStatements {
  const kept = ownFactsOf.get(declaration);
  if (kept) return kept;
  const own = new BlockStatements({
    declaration,
    fields: kind?.fields ?? commonFields,
    owner: kind?.noun ?? "a part",
  });
  ownFactsOf.set(declaration, own);
  return own;
}

/** A problem with the base of a part, shown at the name after `from`. */
type BaseProblem = (at: Span) => Finding;

/**
 * Reads a part with everything it derives from. Its facts and findings are read when they are asked for: a build needs
 * a few facts of each of its parts, and no findings.
 *
 * Cycles and bases that do not exist or are of another kind are findings of the declaration that names them.
 */
export function readPart(declaration: Declaration, workshop: Workshop): Part {
  const kind = declaration.kind === undefined ? undefined : kindByName(declaration.kind);
  const own = ownFacts(declaration, kind);
  const lookups: string[] = [];
  const problems: BaseProblem[] = [];
  const bases = declaration.from === undefined ? [] : basesOf(declaration, kind, workshop, lookups, problems);
  let findings: readonly Finding[] | undefined;
  return {
    declaration,
    kind,
    facts: bases.length === 0 ? own : new LayeredStatements([...bases, own]),
    lookups,
    get findings() {
      findings ??= findingsOf(declaration, kind, own, problems);
      return findings;
    },
  };
}

function findingsOf(
  declaration: Declaration,
  kind: Kind | undefined,
  own: BlockStatements,
  ofBases: readonly BaseProblem[],
): readonly Finding[] {
  const { header, problems } = declaration.readTree();
  const at = header.from?.span;
  return [
    ...problems.map((problem) => problemFinding(declaration, problem)),
    ...(kind ? own.findings : []),
    ...(!kind && header.kind ? [unknownKind(declaration, header.kind.text, header.kind.span)] : []),
    ...(at ? ofBases.map((problem) => problem(at)) : []),
  ];
}

/**
 * The own facts of everything that a part derives from, furthest first.
 * @param lookups receives the keys looked up.
 * @param problems receives what is wrong with the base that the declaration itself names.
 */
function basesOf(
  declaration: Declaration,
  kind: Kind | undefined,
  workshop: Workshop,
  lookups: string[],
  problems: BaseProblem[],
): readonly BlockStatements[] {
  const bases: BlockStatements[] = [];
  const seen = new Set([declaration]);
  let current = declaration;
  while (current.from !== undefined) {
    const name = current.from;
    const key = declarationKey("part", name);
    lookups.push(key);
    const base = workshop.lookup(key);
    const isOwn = current === declaration;
    if (!base) {
      if (isOwn && workshop.complete) {
        problems.push((at) =>
          textFinding(declaration, at, "model/unknown-part", `No part is declared with the name ${name}.`, {
            repairs: [
              {
                kind: "near-name",
                place: { declaration, span: at },
                name,
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
      const isCircle = seen.has(base);
      if (isOwn || (isCircle && base === declaration)) {
        const why = isCircle
          ? `${declaration.name} derives from itself${declaration.from === declaration.name ? "" : `, by way of ${declaration.from}`}.`
          : `The chain of parts after from is longer than ${longestDerivation}.`;
        problems.push((at) => textFinding(declaration, at, "model/derivation", why));
      }
      break;
    }
    if (isOwn && base.kind !== declaration.kind) {
      problems.push((at) =>
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
    bases.unshift(ownFacts(base, base.kind === undefined ? undefined : kindByName(base.kind)));
    current = base;
  }
  return bases;
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
