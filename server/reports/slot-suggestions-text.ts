import type { Candidate, CandidateFailure, Tightest } from "../engine/candidates.ts";
import type { Missing } from "../model/need.ts";
import type { SlotSuggestion, SlotSuggestions, SlotVerdict } from "../suggest/slot.ts";
import { showMoney, showQuantity, showShare } from "../values/show.ts";
import { slotByPath } from "../vocabulary/index.ts";
import type { Paint } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { counted, severityWords } from "./words.ts";

/** How suggestions are written. */
export interface SuggestionOptions {
  readonly width: number;
  readonly paint: Paint;
  /** How many parts of each heading are written out. */
  readonly limit: number;
}

const headings: Readonly<Record<SlotVerdict, (count: string) => string>> = {
  fits: (count) => `Fits: ${count}`,
  "set-up": (count) => `Fits once something is set otherwise: ${count}`,
  "does-not-fit": (count) => `Does not fit: ${count}`,
};

const ranking: Readonly<Record<SlotSuggestions["rankedBy"], string>> = {
  margin: "fewest warnings first, then fewest open questions, then most room left",
  mass: "fewest warnings first, then fewest open questions, then the lightest",
  price: "fewest warnings first, then fewest open questions, then the cheapest",
};

/** Every part for a slot as a person reads it: those that fit with their margins, the others with the reason. */
export function slotSuggestionsText(found: SlotSuggestions, build: string, options: SuggestionOptions): string {
  const { paint, width } = options;
  const { slot, current, suggestions, standing, missingAnyway, rankedBy } = found;
  const now = current ? (current.state === "none" ? "none" : current.name) : "nothing yet";
  const lines = [`${paint.strong(printable(`${build}  ${slot}`))}  ${paint.quiet(printable(`now: ${now}`))}`];
  if (suggestions.length === 0) {
    const none =
      slotByPath(slot)?.kinds.length === 0
        ? `${slot} is a slot of your own and takes a part of any kind: name one there, and the others of its kind are compared.`
        : `No library has a part for ${slot}.`;
    lines.push(...paragraph(none, width, "  "));
    return `${lines.join("\n")}\n`;
  }
  for (const verdict of ["fits", "set-up", "does-not-fit"] as const) {
    const group = suggestions.filter((one) => one.verdict === verdict);
    if (group.length === 0 && verdict !== "fits") continue;
    const heading = headings[verdict](group.length === 0 ? "no part" : counted(group.length, "part"));
    lines.push("", paint.strong(heading), ...(group.length > 1 ? paragraph(ranking[rankedBy], width, "  ") : []));
    for (const one of group.slice(0, options.limit)) lines.push(...suggestionText(one, options));
    if (group.length > options.limit) lines.push(`  and ${counted(group.length - options.limit, "further part")}`);
  }
  if (standing.length > 0) {
    lines.push("", paint.strong("Fails whatever is put there"));
    for (const { code, instance, message } of standing) {
      lines.push(...paragraph(`${named(code, instance)}: ${message}`, width, "    ", "  "));
    }
  }
  if (missingAnyway.length > 0) {
    lines.push("", paint.strong("Not stated, so that checks stay open whatever is put there"));
    lines.push(...missingAnyway.flatMap(({ what }) => paragraph(what, width, "    ", "  ")));
  }
  return `${lines.join("\n")}\n`;
}

function suggestionText({ candidate, missing }: SlotSuggestion, { paint, width }: SuggestionOptions): string[] {
  const { name, title } = candidate.part.declaration;
  const facts = [title, massText(candidate), priceText(candidate)].filter((word) => word !== undefined);
  return [
    `  ${paint.strong(printable(name))}  ${printable(facts.join("  "))}`,
    ...candidate.failures.flatMap((failure) => failureText(failure, paint, width)),
    ...(candidate.tightest ? tightestText(candidate.tightest, width) : []),
    ...(missing.length > 0
      ? labelled(
          `${counted(missing.length, "fact")} not stated: ${missing.map((one: Missing) => one.what).join("; ")}`,
          width,
        )
      : []),
  ];
}

function failureText({ code, instance, severity, message }: CandidateFailure, paint: Paint, width: number): string[] {
  const word = severityWords[severity];
  return labelled(`${word} ${named(code, instance)}: ${message}`, width, (line) =>
    line.replace(word, paint[severity](word)),
  );
}

function tightestText({ code, instance, margin, message }: Tightest, width: number): string[] {
  return labelled(`least room: ${showShare(margin, 0)} in ${named(code, instance)}: ${message}`, width);
}

/** A paragraph under a part, its further lines set in. */
function labelled(text: string, width: number, first: (line: string) => string = (line) => line): string[] {
  return paragraph(text, width, "        ", "      ").map((line, index) => (index === 0 ? first(line) : line));
}

function named(code: string, instance: string): string {
  return instance === "" ? code : `${code} (${instance})`;
}

function massText({ mass }: Candidate): string {
  return mass === undefined ? "mass not stated" : showQuantity(mass, "mass", { unit: "g" });
}

function priceText({ price }: Candidate): string {
  return price === undefined ? "price not stated" : showMoney(price);
}
