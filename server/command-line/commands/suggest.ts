import type { RankedBy } from "../../engine/candidates.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { printable } from "../../reports/printable.ts";
import { slotSuggestionsJson } from "../../reports/slot-suggestions-json.ts";
import { slotSuggestionsText } from "../../reports/slot-suggestions-text.ts";
import { suggestParts } from "../../suggest/slot.ts";
import { didYouMean, nearestSeveral } from "../../values/near.ts";
import { slotByPath, slotPaths } from "../../vocabulary/index.ts";
import type { Invocation } from "../commands.ts";
import { exitCodes } from "../exit-codes.ts";
import { type FoundBuild, findWholeBuild } from "../find-build.ts";
import { UsageProblem } from "../problem.ts";
import { wholeNumber } from "../whole-number.ts";

/** Finds parts for a slot of a build, or the changes that bring a build to a target. */
export function run(invocation: Invocation): number {
  const [address, slot, ...more] = invocation.positionals;
  if (address === undefined || slot === undefined || more.length > 0) {
    throw new UsageProblem("suggest takes a build and a slot: ferrule suggest FILE#BUILD SLOT");
  }
  const found = findWholeBuild(address, invocation);
  invocation.terminal.write(forSlot(found, slotNamed(slot), invocation));
  return exitCodes.clean;
}

function forSlot({ workshop, build }: FoundBuild, slot: string, { terminal, value }: Invocation): string {
  const { engine, pathOf } = workshop;
  const rankedBy = (value("by") ?? "margin") as RankedBy;
  const limit = wholeNumber("limit", value("limit")) ?? Number.POSITIVE_INFINITY;
  const file = pathOf(build.uri);
  return engine.shown(() => {
    const suggestions = suggestParts(engine, engine.assemble(build), slot, rankedBy);
    if (value("format") === "json") {
      const found = slotSuggestionsJson(suggestions, { file, build: build.name, today: engine.today, limit });
      return `${JSON.stringify(found, undefined, 2)}\n`;
    }
    return slotSuggestionsText(suggestions, `${file}#${build.name}`, {
      width: terminal.width,
      paint: terminal.colour ? coloured : plain,
      limit,
    });
  });
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
