import type { Assembly } from "../model/assembly.ts";
import type { TargetSuggestions } from "../suggest/search.ts";
import type { Solution } from "../suggest/solution.ts";
import type { Measured, Target } from "../suggest/target.ts";
import { variantText } from "../suggest/variant.ts";
import { showMoney, showQuantity } from "../values/show.ts";
import type { Paint } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { counted } from "./words.ts";

export interface TargetTextOptions {
  readonly width: number;
  readonly paint: Paint;
  /** `FILE#BUILD`. */
  readonly build: string;
  readonly assembly: Assembly;
  readonly currency: string | undefined;
  /** What a variant with the first answer would be called. */
  readonly variant: string;
}

/** The smallest changes that bring a build to its targets, and how far the search went, as a person reads them. */
export function targetSuggestionsText(found: TargetSuggestions, options: TargetTextOptions): string {
  const { width, paint, build, assembly, variant } = options;
  const { targets, before, solutions } = found;
  const lines = [
    paint.strong(printable(build)),
    ...targets.flatMap((target, index) =>
      paragraph(`${target.written}; now ${measuredText(target, before[index])}`, width, "    ", "  "),
    ),
    "",
  ];
  const [best] = solutions;
  if (!best) {
    lines.push(...paragraph(nothingText(found), width, ""));
    if (found.nearest && found.nearest.changes.length + found.nearest.setUps.length > 0) {
      lines.push("", paint.strong("Nearest found"), ...solutionText(found.nearest, found, options));
    }
    return `${lines.join("\n")}\n`;
  }
  if (best.changes.length === 0 && best.setUps.length === 0) {
    lines.push("It is as asked for already.");
    return `${lines.join("\n")}\n`;
  }
  solutions.forEach((solution, index) => {
    lines.push(paint.strong(`${index + 1}. ${counted(solution.changes.length, "part")} exchanged`));
    lines.push(...solutionText(solution, found, options), "");
  });
  lines.push(...paragraph(searchText(found), width, ""), "");
  lines.push("The first of them as a variant:", "", variantText(assembly, best, targets, variant).trimEnd());
  return `${lines.join("\n")}\n`;
}

function solutionText(
  { changes, setUps, values, warnings, opened, mass, unweighed, price, unpriced }: Solution,
  { targets }: TargetSuggestions,
  { width, paint, currency }: TargetTextOptions,
): readonly string[] {
  const named = (part: {
    readonly declaration: { readonly name: string; readonly title?: string | undefined };
  }): string =>
    part.declaration.title === undefined
      ? part.declaration.name
      : `${part.declaration.name} (${part.declaration.title})`;
  const sums = [
    unweighed > 0 ? `at least ${showQuantity(mass, "mass")}` : showQuantity(mass, "mass"),
    ...(currency === undefined ? [] : [`${unpriced > 0 ? "at least " : ""}${showMoney({ currency, amount: price })}`]),
  ];
  return [
    ...changes.flatMap(({ slot, before, after }) =>
      paragraph(
        `${slot}: ${after === "none" ? "none" : named(after)}${before ? `, in place of ${before.declaration.name}` : ""}`,
        width,
        "      ",
        "   ",
      ),
    ),
    ...setUps.flatMap(({ slot, setting, value }) =>
      paragraph(`set ${slot}.${setting} to ${value}`, width, "      ", "   "),
    ),
    ...targets.flatMap((target, index) =>
      paragraph(`${target.name}: ${measuredText(target, values[index])}`, width, "      ", "   "),
    ),
    ...paragraph(`whole bike: ${sums.join(", ")}`, width, "      ", "   "),
    ...warnings.flatMap(({ question, verdict }) => {
      const { name } = question.instance;
      const text = `warning ${question.check.code}${name === "" ? "" : ` (${name})`}: ${verdict.message}`;
      return paragraph(text, width, "      ", "   ").map((line, index) =>
        index === 0 ? line.replace("warning", paint.warning("warning")) : line,
      );
    }),
    ...(opened > 0
      ? [`   ${counted(opened, "check")} cannot be made for want of facts, which could be made before`]
      : []),
  ];
}

/** What a target comes to, or why it comes to nothing. */
function measuredText(target: Target, measured: Measured | undefined): string {
  switch (measured?.state) {
    case "known":
      return target.show(measured.value);
    case "unknown":
      return `not known, for want of ${measured.what.slice(0, 6).join(", ")}${measured.what.length > 6 ? ` and ${measured.what.length - 6} more` : ""}`;
    default:
      return `nothing: ${measured?.reason ?? "it is not worked out"}`;
  }
}

function searchText({ solutions, found, proven, isComplete }: TargetSuggestions): string {
  const size = solutions[0]?.changes.length ?? 0;
  const fewer = size === 0 ? "" : proven >= size ? "No fewer changes do it" : "Best found, search not complete";
  if (proven < size) {
    const tried =
      proven > 0 ? `: that fewer than ${proven} do it is ruled out, but not every larger set was tried` : "";
    return `${fewer}${tried}. --seconds gives more time.`;
  }
  if (isComplete)
    return `${fewer === "" ? "" : `${fewer}. `}${counted(found, "way was", "ways were")} found and compared; these are the best.`;
  return `${fewer}. Best found, search not complete: not every set of ${size} was compared. --seconds gives more time.`;
}

function nothingText({ proven, isComplete }: TargetSuggestions): string {
  if (isComplete) {
    return `No set of up to ${counted(proven - 1, "change")} does it with the parts of these libraries, without a new error.`;
  }
  return proven > 0
    ? `Nothing found, search not complete: that fewer than ${counted(proven, "change")} do it is ruled out. --seconds gives more time.`
    : "Nothing found, search not complete. --seconds gives more time.";
}
