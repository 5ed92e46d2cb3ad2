import type { Candidate } from "../../engine/candidates.ts";
import type { Engine } from "../../engine/engine.ts";
import { rankCandidates } from "../../engine/ranking.ts";
import type { Declaration } from "../../model/declaration.ts";
import { showMoney, showQuantity, showShare } from "../../values/show.ts";
import type { Money } from "../../values/types.ts";
import { slotByPath } from "../../vocabulary/index.ts";
import type { Around } from "./context.ts";
import { CompletionItemKind, type Draft } from "./items.ts";

/** A ranking with everything it rests on beside the libraries. */
interface KeptRanking {
  readonly slot: string;
  /** The build's text without what is being typed. */
  readonly text: string;
  readonly bases: readonly Declaration[];
  readonly revision: number;
  readonly candidates: readonly Candidate[];
}

/** How many rankings are kept for a workshop: as many as a person goes back and forth between. */
const mostKept = 8;

const keptRankings = new WeakMap<Engine, KeptRanking[]>();

/**
 * The parts for a slot of a build that is being typed, those that fit first. While only the part's own name changes
 * the ranking stays, so that every further letter is answered from what the first one worked out.
 */
export function rankedParts(engine: Engine, { mended }: Around, slot: string): readonly Candidate[] {
  const assembly = engine.assemble(mended);
  const bases = assembly.layers.filter((layer) => layer !== mended);
  const kept = keptRankings.get(engine) ?? [];
  keptRankings.set(engine, kept);
  const found = kept.find(
    (one) =>
      one.slot === slot &&
      one.text === mended.text &&
      one.revision === engine.librariesRevision &&
      one.bases.length === bases.length &&
      one.bases.every((base, index) => base === bases[index]),
  );
  if (found) return found.candidates;
  const candidates = rankCandidates(engine, assembly, slot);
  kept.unshift({ slot, text: mended.text, bases, revision: engine.librariesRevision, candidates });
  kept.length = Math.min(kept.length, mostKept);
  return candidates;
}

/** How many parts one answer holds; further letters narrow the rest down. */
export const mostParts = 400;

export interface PartList {
  readonly drafts: readonly Draft[];
  /** True when further letters may bring parts that are not in the list. */
  readonly isCut: boolean;
}

/** Parts for a slot: those that fit first with their room, then the open questions, those that do not fit last. */
export function slotPartDrafts(engine: Engine, around: Around, slot: string): PartList {
  if ((slotByPath(slot)?.kinds.length ?? 0) === 0) return anyPartDrafts(engine, around.cursor.word.text);
  const ranked = rankedParts(engine, around, slot);
  const typed = around.cursor.word.text;
  const matching = ranked.length > mostParts ? ranked.filter(({ part }) => matches(part.declaration, typed)) : ranked;
  return {
    drafts: matching.slice(0, mostParts).map((candidate, index) => partDraft(candidate, around, slot, index === 0)),
    isCut: ranked.length > mostParts,
  };
}

/** A slot of the workshop's own takes anything, so nothing is ranked. */
function anyPartDrafts(engine: Engine, typed: string): PartList {
  const drafts: Draft[] = [];
  let isCut = false;
  for (const declaration of engine.workshop.declared("part")) {
    if (!matches(declaration, typed)) continue;
    if (drafts.length >= mostParts) {
      isCut = true;
      break;
    }
    drafts.push(plainPartDraft(declaration));
  }
  return { drafts, isCut };
}

/** A part where no build says what has to fit. */
export function plainPartDraft(declaration: Declaration): Draft {
  const { name, title, uri, kind } = declaration;
  return {
    label: name,
    kind: CompletionItemKind.Class,
    filter: filterOf(declaration),
    data: { of: "part", uri, name },
    ...(title === undefined ? {} : { description: title }),
    ...(kind === undefined ? {} : { detail: kind }),
  };
}

function partDraft(candidate: Candidate, { original }: Around, slot: string, isFirst: boolean): Draft {
  const { declaration } = candidate.part;
  const { name, title, uri } = declaration;
  return {
    label: name,
    kind: CompletionItemKind.Class,
    filter: filterOf(declaration),
    description: verdictOf(candidate),
    detail: detailOf(candidate, title),
    isLast: !fits(candidate),
    isPreselected: isFirst && fits(candidate),
    data: { of: "part", uri, name, build: original.name, slot },
  };
}

/** A name is found by the words of its title too. */
function filterOf({ name, title }: Declaration): string {
  return title === undefined ? name : `${name} ${title}`;
}

function matches(declaration: Declaration, typed: string): boolean {
  const text = filterOf(declaration).toLowerCase();
  let next = 0;
  const wanted = typed.toLowerCase();
  for (const letter of text) if (letter === wanted[next]) next++;
  return next === wanted.length;
}

function fits({ errors, setUps }: Candidate): boolean {
  return errors === setUps;
}

function verdictOf({ errors, setUps, failures, unknown, margin }: Candidate): string {
  if (errors > setUps) return "does not fit";
  if (errors > 0) return "fits, with a change";
  if (failures.length > 0) return "fits, with a warning";
  if (unknown.length > 0) return `${unknown.length === 1 ? "1 open question" : `${unknown.length} open questions`}`;
  if (margin >= 1) return "fits";
  return margin < 0.005 ? "fits, nothing to spare" : `fits, ${showShare(margin, 0)} to spare`;
}

/** The first reason against it, or what it is, weighs and costs. */
function detailOf({ failures, part, mass }: Candidate, title: string | undefined): string {
  const [first] = failures;
  if (first) return `${first.code}: ${first.message}`;
  const price = part.facts.get("price");
  return [
    title,
    mass === undefined ? undefined : showQuantity(mass, "mass", { unit: "g" }),
    price?.state === "stated" ? showMoney(price.value as Money) : undefined,
  ]
    .filter((each) => each !== undefined)
    .join(" · ");
}
