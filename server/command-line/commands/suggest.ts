import type { RankedBy } from "../../engine/ranking.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { printable } from "../../reports/printable.ts";
import { slotSuggestionsJson } from "../../reports/slot-suggestions-json.ts";
import { slotSuggestionsText } from "../../reports/slot-suggestions-text.ts";
import { targetSuggestionsJson } from "../../reports/target-suggestions-json.ts";
import { targetSuggestionsText } from "../../reports/target-suggestions-text.ts";
import { workshopCurrency } from "../../suggest/currency.ts";
import { searchTarget } from "../../suggest/search.ts";
import { suggestParts } from "../../suggest/slot.ts";
import { readTarget, targetNames } from "../../suggest/target.ts";
import { variantName } from "../../suggest/variant.ts";
import { didYouMean, nearestSeveral } from "../../values/near.ts";
import { slotByPath, slotPaths } from "../../vocabulary/index.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { type FoundBuild, findWholeBuild } from "../find-build.ts";
import { UsageProblem } from "../problem.ts";
import { timeLimit } from "../time-limit.ts";
import { wholeNumber } from "../whole-number.ts";

/** Finds parts for a slot of a build, or the changes that bring a build to a target. */
export function run(invocation: Invocation): number {
  const [address, slot, ...more] = invocation.positionals;
  const targets = invocation.values("target");
  const isForTarget = targets.length > 0;
  if (address === undefined || (slot === undefined) !== isForTarget || more.length > 0) {
    throw new UsageProblem("suggest takes a build, and either a slot or targets.", [
      "ferrule suggest FILE#BUILD SLOT",
      'ferrule suggest FILE#BUILD --target "mass <= 11.5 kg"',
    ]);
  }
  for (const option of ["seconds", "keep", "changes"]) {
    if (!isForTarget && invocation.has(option)) throw new UsageProblem(`--${option} goes with --target.`);
  }
  const found = findWholeBuild(address, invocation);
  const { engine } = found.workshop;
  const { text, isFound } = engine.shown(() =>
    slot === undefined ? forTargets(found, targets, invocation) : forSlot(found, slotNamed(slot), invocation),
  );
  invocation.terminal.write(text);
  return isFound ? exitCodes.clean : exitCodes.findings;
}

interface Said {
  readonly text: string;
  /** Whether there is anything to suggest. */
  readonly isFound: boolean;
}

/** How long a search takes at most unless somebody says otherwise. */
const usualSeconds = 10;
const usualAnswers = 3;
const usualMostChanges = 12;

function forTargets({ workshop, build }: FoundBuild, words: readonly string[], invocation: Invocation): Said {
  const { terminal, value, values } = invocation;
  const { engine, pathOf } = workshop;
  const assembly = engine.assemble(build);
  const tolerance = assembly.fields.get("fit.tolerance");
  const targets = words.map((word) => {
    const target = readTarget(word, tolerance?.state === "stated" ? (tolerance.value as number) : undefined);
    if (!("problem" in target)) return target;
    throw new UsageProblem(`--target: ${printable(target.problem)}`, [
      `Words for targets: ${targetNames.join(", ")}; the path of any other worked-out number will do as well.`,
    ]);
  });
  const currency = workshopCurrency(engine);
  const found = searchTarget(engine, assembly, targets, {
    rankedBy: (value("by") ?? "margin") as RankedBy,
    currency,
    limit: wholeNumber("limit", value("limit")) ?? usualAnswers,
    keep: new Set(values("keep").map(slotNamed)),
    mostChanges: wholeNumber("changes", value("changes")) ?? usualMostChanges,
    more: timeLimit(value("seconds"), usualSeconds),
  });
  const isFound = found.solutions.length > 0;
  const file = pathOf(build.uri);
  if (value("format") === "json") {
    const data = targetSuggestionsJson(found, { file, build: build.name, today: engine.today });
    return { text: `${JSON.stringify(data, undefined, 2)}\n`, isFound };
  }
  const text = targetSuggestionsText(found, {
    width: terminal.width,
    paint: terminal.colour ? coloured : plain,
    build: `${file}#${build.name}`,
    assembly,
    currency,
    variant: variantName(assembly, (name) => engine.workshop.build(name) !== undefined),
  });
  return { text, isFound };
}

function forSlot({ workshop, build }: FoundBuild, slot: string, { terminal, value }: Invocation): Said {
  const { engine, pathOf } = workshop;
  const rankedBy = (value("by") ?? "margin") as RankedBy;
  const limit = wholeNumber("limit", value("limit")) ?? Number.POSITIVE_INFINITY;
  const file = pathOf(build.uri);
  const suggestions = suggestParts(engine, engine.assemble(build), slot, rankedBy);
  const isFound = suggestions.suggestions.some(({ verdict }) => verdict !== "does-not-fit");
  if (value("format") === "json") {
    const found = slotSuggestionsJson(suggestions, { file, build: build.name, today: engine.today, limit });
    return { text: `${JSON.stringify(found, undefined, 2)}\n`, isFound };
  }
  const text = slotSuggestionsText(suggestions, `${file}#${build.name}`, {
    width: terminal.width,
    paint: terminal.colour ? coloured : plain,
    limit,
  });
  return { text, isFound };
}

/**
 * The path of a slot, which may be written without its assembly where no other slot has the name.
 * @throws UsageProblem for a word that names none.
 */
export function slotNamed(word: string): string {
  if (slotByPath(word)) return word;
  const ending = slotPaths.filter((path) => path.endsWith(`.${word}`));
  const [only] = ending;
  if (only && ending.length === 1) return only;
  const near = ending.length > 0 ? ending : nearestSlots(word);
  throw new UsageProblem(`There is no slot ${printable(word)}.${didYouMean(near)}`, [
    "A slot is written with its assembly, such as drivetrain.cassette.",
  ]);
}

function nearestSlots(word: string): readonly string[] {
  const names = slotPaths.map((path) => path.slice(path.lastIndexOf(".") + 1));
  const near = new Set(nearestSeveral(word, names));
  const last = slotPaths.filter((path) => near.has(path.slice(path.lastIndexOf(".") + 1)));
  return [...new Set([...nearestSeveral(word, slotPaths), ...last])].slice(0, 4);
}
