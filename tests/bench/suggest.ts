import { Engine } from "../../server/engine/engine.ts";
import { prelude } from "../../server/standards/index.ts";
import { searchTarget, type TargetSuggestions } from "../../server/suggest/search.ts";
import { suggestParts } from "../../server/suggest/slot.ts";
import { readTarget } from "../../server/suggest/target.ts";
import { generateWorkshop } from "./generate-workshop.ts";

const parts = 20_000;
/** Seconds of computing that each search is given. */
const seconds = 5;

const slots = ["drivetrain.cassette", "drivetrain.chain", "rear-wheel.hub", "rear-wheel.tyre", "frame"];
const targets = [
  ["lowest-development <= 1.45 m"],
  ["mass <= 12 kg"],
  ["mass <= 11 kg"],
  ["mass <= 10 kg"],
  ["price <= GBP 8000"],
  ["mass <= 11.5 kg", "price <= GBP 9000"],
];

/** How long it takes to judge every part for a slot, and how far searches for targets get, on a library of 20,000 parts. */
export async function run(): Promise<void> {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([...generateWorkshop({ parts, builds: 2 })].map(([uri, text]) => ({ uri, text })));
  const build = engine.workshop.build("hardtail-0");
  if (!build) throw new Error("the generated workshop has no build hardtail-0");
  const assembly = engine.assemble(build);
  console.log(`\nsuggest, on a library of ${parts} parts (process time):`);
  const reading = timed(() => {
    for (const part of engine.workshop.declared("part")) engine.part(part);
  });
  console.log(`  reading every part once: ${Math.round(reading.milliseconds)} ms`);
  for (const slot of slots) {
    const { milliseconds, result } = timed(() => suggestParts(engine, assembly, slot, "margin"));
    const fitting = result.suggestions.filter(({ verdict }) => verdict === "fits").length;
    console.log(
      `  ${slot}: ${result.suggestions.length} parts judged in ${Math.round(milliseconds)} ms, ${fitting} fit`,
    );
  }
  for (const words of targets) {
    const read = words.map((word) => readTarget(word, undefined));
    const sound = read.flatMap((target) => ("problem" in target ? [] : [target]));
    const start = process.cpuUsage();
    const more = (): boolean => process.cpuUsage(start).user / 1e6 < seconds;
    const options = {
      rankedBy: "margin",
      currency: "GBP",
      limit: 3,
      keep: new Set<string>(),
      mostChanges: 12,
    } as const;
    const { milliseconds, result } = timed(() => searchTarget(engine, assembly, sound, { ...options, more }));
    console.log(`  ${words.join(", ")}: ${(milliseconds / 1000).toFixed(1)} s, ${said(result)}`);
  }
}

function said({ solutions, found, proven, isComplete }: TargetSuggestions): string {
  const [best] = solutions;
  if (!best)
    return isComplete ? `proved that no ${proven - 1} changes do it` : `nothing found, fewer than ${proven} ruled out`;
  const size = best.changes.length;
  const smallest = proven >= size ? "the fewest" : `fewer than ${proven} ruled out`;
  return `${size} changes (${smallest}), ${found} ways compared${isComplete ? ", all there are" : ""}`;
}

function timed<Result>(work: () => Result): { readonly milliseconds: number; readonly result: Result } {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return { milliseconds: (user + system) / 1000, result };
}
