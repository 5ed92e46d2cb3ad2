import { parseDeclaration } from "../../grammar/parse.ts";
import { type DimensionName, fromBase, unitBySpelling } from "../../grammar/units.ts";
import { eachPartOnce } from "../calculations/shared/every-part.ts";
import { showResult } from "../calculations/show.ts";
import { calculationOfQuantity, type Quantity, quantities } from "../calculations/table.ts";
import { massOf, priceOf } from "../engine/candidates.ts";
import type { BuildEvaluation } from "../engine/evaluate.ts";
import { factsRead, numberTouched } from "../engine/reads.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Need, Needs, OfSlot } from "../model/need.ts";
import type { Part } from "../model/part.ts";
import { didYouMean, nearestSeveral } from "../values/near.ts";
import { readValue } from "../values/read.ts";
import { showMoney, showQuantity } from "../values/show.ts";
import type { FieldType, Interval, MoneyInterval } from "../values/types.ts";
import { isInterval } from "../values/write.ts";

/** What a build comes to in a target. */
export type Measured =
  | { readonly state: "known"; readonly value: number }
  /** Which facts are missing, and the slots whose parts lack them. */
  | { readonly state: "unknown"; readonly what: readonly string[]; readonly slots: readonly string[] }
  | { readonly state: "none"; readonly reason: string };

/** What a part adds to a sum over the whole bike. */
export type Contribution = (part: Part | undefined) => number | undefined;

/** A number of a build and the range in which it is to lie. */
export interface Target {
  /** As it was asked for. */
  readonly written: string;
  /** What the number is called: `mass`, `lowest-development`, or its path. */
  readonly name: string;
  readonly interval: Interval;
  measure(evaluation: BuildEvaluation): Measured;
  /** Whether another part in a slot can change the number. */
  touches(slot: string): boolean;
  /** The facts of a slot's part that the number rests on. */
  facts(slot: string): Iterable<string>;
  show(value: number): string;
  /** Set for a sum over all parts. */
  readonly contribution?: Contribution;
  /** Whether settings go into it, so that setting up otherwise can change it. */
  readonly readsSettings: boolean;
  /** Field of a build that states the same as an aim: its check knows what to set otherwise. */
  readonly aim?: string;
}

/** Words for worked-out numbers that builders aim at, and the field of a build that states such an aim. */
const named: Readonly<Record<string, { readonly path: string; readonly aim?: string }>> = {
  "lowest-ratio": { path: "drivetrain.lowest-ratio" },
  "highest-ratio": { path: "drivetrain.highest-ratio" },
  "lowest-development": { path: "drivetrain.lowest-development" },
  "highest-development": { path: "drivetrain.highest-development" },
  "gear-range": { path: "drivetrain.gear-range" },
  "grip-reach": { path: "cockpit.hands-forward", aim: "fit.grip-reach" },
  "grip-stack": { path: "cockpit.hands-height", aim: "fit.grip-stack" },
  "saddle-height": { path: "seat.saddle-height-actual", aim: "fit.saddle-height" },
  "saddle-setback": { path: "seat.saddle-setback", aim: "fit.saddle-setback" },
};

/** The words by which a target can be named; the path of any other worked-out number will do as well. */
export const targetNames: readonly string[] = ["mass", "price", ...Object.keys(named)];

const form = /^\s*([a-z][a-z0-9.-]*)(?:\s*:\s*|\s+|(?=[<>=\u2264\u2265]))(.+?)\s*$/s;

/**
 * Reads a target such as `mass <= 11.5 kg`, `lowest-development <= 1.5 m` or `grip-reach 450 to 460 mm`.
 * @param tolerance how far a position may lie from a single number, in millimetres, where the build says so.
 */
export function readTarget(written: string, tolerance: number | undefined): Target | { readonly problem: string } {
  const [, name = "", limits = ""] = form.exec(written) ?? [];
  if (name === "") return { problem: `${written} is no target; write a name and a limit, such as mass <= 11.5 kg` };
  if (name === "mass") return massTarget(written, limits);
  if (name === "price") return priceTarget(written, limits);
  const row = Object.hasOwn(named, name) ? named[name] : { path: name };
  const quantity = row && calculationOfQuantity(row.path);
  const result = quantity?.calculation.results[quantity.result];
  if (!row || !quantity || !result || result.list) {
    const known = [...targetNames, ...quantities.map(({ path }) => path)];
    return { problem: `there is no number ${name} to aim at.${didYouMean(nearestSeveral(name, known))}` };
  }
  const unit = unitBySpelling(result.unit);
  const type: FieldType = unit
    ? { type: "quantity", dimension: unit.dimension, role: "allowed", unit: unit.symbol }
    : { type: "number", role: "allowed" };
  const read = readLimits(type, unit ? limits : limits.replace(/\s*(?:t|links|pitches)$/, ""), name);
  if ("problem" in read) return read;
  const inUnit = (value: number): number => (unit && Number.isFinite(value) ? fromBase(value, unit) : value);
  let interval: Interval = { least: inUnit(read.least), greatest: inUnit(read.greatest) };
  if (interval.least === interval.greatest) {
    const isPosition = row.aim !== undefined && unit?.symbol === "mm";
    if (!isPosition || tolerance === undefined) {
      return { problem: `${name} is to lie in a range: write such as ${name} <= ${limits}, or ${limits} ± something` };
    }
    interval = { least: interval.least - tolerance, greatest: interval.greatest + tolerance };
  }
  return {
    written: written.trim(),
    name,
    interval,
    ...(row.aim === undefined ? {} : { aim: row.aim }),
    measure: (evaluation) => measureQuantity(evaluation, quantity),
    touches: (slot) => numberTouched(quantity.path, slot),
    facts: (slot) => factsRead(quantity.inBuild.needs, slot),
    show: (value) => showResult(result, value),
    readsSettings: readsSettings(quantity.inBuild.needs, new Set()),
  };
}

function readLimits(type: FieldType, limits: string, name: string): Interval | { readonly problem: string } {
  const tree = parseDeclaration(`build target {\n  target: ${limits.replace(/[\r\n{};]/g, " ")}\n}\n`);
  const entry = tree.block?.entries[0];
  if (entry?.form !== "field") return { problem: `${limits} is no limit of ${name}` };
  const { value, problems } = readValue(type, entry.value.tokens, { field: name, span: entry.value.span });
  const wrong = problems.find(({ severity }) => severity === "error");
  if (wrong || value === undefined) return { problem: wrong?.message ?? `${limits} is no limit of ${name}` };
  if (typeof value === "number") return { least: value, greatest: value };
  return isInterval(value) ? value : { problem: `${limits} is no limit of ${name}` };
}

function measureQuantity(evaluation: BuildEvaluation, { path }: Quantity): Measured {
  const worked = evaluation.quantity(path);
  if (worked?.state === "known" && typeof worked.value === "number") return { state: "known", value: worked.value };
  if (worked?.state === "unknown") {
    const { missing } = worked;
    return { state: "unknown", what: missing.map(({ what }) => what), slots: missing.map(slotOf) };
  }
  return { state: "none", reason: worked?.state === "none" ? worked.reason : `${path} means nothing here` };
}

function readsSettings(needs: Needs, seen: Set<string>): boolean {
  return (Object.values(needs) as Need[]).some((need) => {
    if (need.kind === "setting" || need.kind === "every-setting" || need.kind === "fact-of-named") return true;
    if (need.kind !== "worked" || seen.has(need.quantity)) return false;
    seen.add(need.quantity);
    const quantity = calculationOfQuantity(need.quantity);
    return quantity !== undefined && readsSettings(quantity.inBuild.needs, seen);
  });
}

/** The slot whose part would state a missing fact; the path itself where a part is missing. */
function slotOf({ path }: { readonly path: string }): string {
  return path.slice(0, Math.max(0, path.lastIndexOf("."))) || path;
}

function massTarget(written: string, limits: string): Target | { readonly problem: string } {
  const read = readLimits(
    { type: "quantity", dimension: "mass" satisfies DimensionName, role: "allowed", unit: "kg" },
    limits,
    "mass",
  );
  if ("problem" in read) return read;
  return sumTarget({
    written,
    name: "mass",
    interval: read,
    fact: "mass",
    contribution: (part) => (part ? massOf(part) : 0),
    show: (value) => showQuantity(value, "mass"),
    lacking: (installed) => `mass of ${labelOf(installed)}`,
  });
}

function priceTarget(written: string, limits: string): Target | { readonly problem: string } {
  const read = readLimits({ type: "money", role: "allowed" }, limits, "price");
  if ("problem" in read) return read;
  if (!("currency" in read)) return { problem: `${limits} names no currency` };
  const { currency } = read as MoneyInterval;
  return sumTarget({
    written,
    name: "price",
    interval: read,
    fact: "price",
    contribution: (part) => {
      if (!part) return 0;
      const price = priceOf(part);
      // No rate of exchange is known here: a price in another currency is as good as none.
      return price?.currency === currency ? price.amount : undefined;
    },
    show: (amount) => showMoney({ currency, amount }),
    lacking: (installed) => `price of ${labelOf(installed)} in ${currency}`,
  });
}

interface Sum {
  readonly written: string;
  readonly name: string;
  readonly interval: Interval;
  readonly fact: string;
  readonly contribution: Contribution;
  show(value: number): string;
  lacking(installed: Installed): string;
}

function sumTarget({ written, name, interval, fact, contribution, show, lacking }: Sum): Target {
  return {
    written: written.trim(),
    name,
    interval: { least: interval.least, greatest: interval.greatest },
    contribution,
    measure: ({ assembly }) => {
      let sum = 0;
      const what: string[] = [];
      const slots: string[] = [];
      for (const { slot, installed } of pieces(assembly)) {
        const own = installed.part && contribution(installed.part);
        if (own === undefined) {
          what.push(lacking(installed));
          slots.push(slot);
        } else sum += own;
      }
      return what.length > 0 ? { state: "unknown", what, slots } : { state: "known", value: sum };
    },
    touches: () => true,
    facts: () => [fact],
    show,
    readsSettings: false,
  };
}

/** What stands in a build, each piece once. */
export function pieces(assembly: Assembly): readonly { readonly slot: string; readonly installed: Installed }[] {
  const rows = [...assembly.slots]
    .filter(([, { state }]) => state !== "none")
    .map(([slot, installed]) => ({ slot, installed, fact: { state: "unknown", missing: [] } }) satisfies OfSlot);
  return eachPartOnce(rows);
}

function labelOf({ part, name }: Installed): string {
  return part?.declaration.label ?? name;
}

/** How far a number lies outside a range, as a share of the limit it misses; 0 inside. */
export function distance({ interval }: Target, measured: Measured): number {
  if (measured.state !== "known")
    return unmeasured * (measured.state === "unknown" ? Math.max(1, measured.slots.length) : 1);
  const { least, greatest } = interval;
  const { value } = measured;
  if (value > greatest) return (value - greatest) / Math.max(Math.abs(greatest), tiny);
  return value < least ? (least - value) / Math.max(Math.abs(least), tiny) : 0;
}

/** A build that cannot be measured is further off than any that can. */
const unmeasured = 1e6;
const tiny = 1e-9;
