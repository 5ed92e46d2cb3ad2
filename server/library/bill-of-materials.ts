import { eachPartOnce } from "../calculations/shared/every-part.ts";
import { massOf, priceOf } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { OfSlot } from "../model/need.ts";
import { omittedSlot } from "../model/omission.ts";
import type { Part } from "../model/part.ts";
import type { Money } from "../values/types.ts";
import { slotByPath, slotPaths } from "../vocabulary/index.ts";

/** A build to be listed, in its workshop. */
export interface ListedBuild {
  readonly engine: Engine;
  readonly declaration: Declaration;
}

/** One part with how often it is needed. */
export interface BillLine {
  readonly part: Part;
  readonly quantity: number;
  /** How many each build takes, by the build's name. */
  readonly builds: ReadonlyMap<string, number>;
  /** Where it goes, each place once. */
  readonly slots: readonly string[];
  /** In grams, of one; absent when not stated. */
  readonly mass: number | undefined;
  /** Of one; absent when not stated. */
  readonly price: Money | undefined;
}

/** A place of a build of which something is not known. */
export interface BillGap {
  readonly build: string;
  readonly slot: string;
  /** The name that no library declares; absent where no part is named at all. */
  readonly name?: string;
}

/** What one build, a set of variants or a whole fleet is made of. What is not known is named, never counted as zero. */
export interface BillOfMaterials {
  readonly builds: readonly string[];
  /** In the order of the slots of a build. */
  readonly lines: readonly BillLine[];
  /** Names that no library declares. */
  readonly undeclared: readonly BillGap[];
  /** Places where every whole bike has something, and nothing is named. */
  readonly open: readonly BillGap[];
  /** Places that name several parts, of which the first is counted. */
  readonly alternates: readonly { readonly build: string; readonly slot: string; readonly names: readonly string[] }[];
  /** Sum of the masses that are known, in grams. */
  readonly mass: number;
  /** Parts without a stated mass: the sum is then a least mass. */
  readonly unweighed: readonly string[];
  /** Sums of the prices that are known, one for each currency: they are never added up. */
  readonly prices: readonly Money[];
  readonly unpriced: readonly string[];
}

/** Lists what builds are made of. */
export function billOfMaterials(builds: readonly ListedBuild[]): BillOfMaterials {
  const lines = new Map<Declaration, Draft>();
  const undeclared: BillGap[] = [];
  const open: BillGap[] = [];
  const alternates: { build: string; slot: string; names: readonly string[] }[] = [];
  for (const { engine, declaration } of builds) {
    const assembly = engine.assemble(declaration);
    const build = declaration.name;
    for (const [slot, installed] of pieces(assembly)) {
      const { part, name } = installed;
      if (installed.alternates.length > 0) {
        alternates.push({ build, slot, names: [name, ...installed.alternates.map((other) => other.name)] });
      }
      if (!part) undeclared.push({ build, slot, name });
      else count(lines, part, build, slot);
    }
    for (const slot of openSlots(assembly)) open.push({ build, slot });
  }
  const listed = [...lines.values()].sort((a, b) => a.order - b.order || (a.name < b.name ? -1 : 1));
  return {
    builds: builds.map(({ declaration }) => declaration.name),
    lines: listed.map(({ part, builds: of, slots }) => ({
      part,
      quantity: [...of.values()].reduce((sum, quantity) => sum + quantity, 0),
      builds: of,
      slots: [...slots],
      mass: massOf(part),
      price: priceOf(part),
    })),
    undeclared,
    open,
    alternates,
    ...sums(listed),
  };
}

interface Draft {
  readonly part: Part;
  readonly name: string;
  /** Place of its first slot among all slots. */
  readonly order: number;
  readonly builds: Map<string, number>;
  readonly slots: Set<string>;
}

const slotOrder = new Map<string, number>(slotPaths.map((path, index) => [path, index]));

function count(lines: Map<Declaration, Draft>, part: Part, build: string, slot: string): void {
  const known = lines.get(part.declaration) ?? {
    part,
    name: part.declaration.name,
    order: slotOrder.get(slot) ?? slotPaths.length,
    builds: new Map<string, number>(),
    slots: new Set<string>(),
  };
  lines.set(part.declaration, known);
  known.builds.set(build, (known.builds.get(build) ?? 0) + 1);
  known.slots.add(slot);
}

/** What stands in the slots of a build, each piece once: a lever with its control built in is one. */
function pieces(assembly: Assembly): readonly (readonly [string, Installed])[] {
  const place = headerPlace(assembly.declaration);
  const rows: OfSlot[] = [...assembly.slots]
    .filter(([, { state }]) => state !== "none")
    .map(([slot, installed]) => ({
      slot,
      installed,
      fact: { state: "unknown", missing: [{ path: slot, what: slot, place }] },
    }));
  return eachPartOnce(rows as never).map(({ slot, installed }) => [slot, installed] as const);
}

function openSlots({ slots }: Assembly): readonly string[] {
  return slotPaths.filter((path) => {
    const row = slotByPath(path);
    return row?.omitted === "unknown" && !slots.has(path) && omittedSlot(row, slots) !== "none";
  });
}

function sums(lines: readonly Draft[]): Pick<BillOfMaterials, "mass" | "unweighed" | "prices" | "unpriced"> {
  let mass = 0;
  const unweighed: string[] = [];
  const unpriced: string[] = [];
  const prices = new Map<string, number>();
  for (const { part, name, builds } of lines) {
    const quantity = [...builds.values()].reduce((sum, one) => sum + one, 0);
    const each = massOf(part);
    if (each === undefined) unweighed.push(name);
    else mass += each * quantity;
    const price = priceOf(part);
    if (price === undefined) unpriced.push(name);
    // Whole millionths add up exactly, which fractions of ten would not.
    else prices.set(price.currency, (prices.get(price.currency) ?? 0) + Math.round(price.amount * 1e6) * quantity);
  }
  return {
    mass,
    unweighed,
    unpriced,
    prices: [...prices].map(([currency, millionths]) => ({ currency, amount: millionths / 1e6 })),
  };
}

/** These builds and all that derive from them, directly or not, each once. */
export function withVariants(engine: Engine, builds: readonly Declaration[]): readonly Declaration[] {
  const found = new Set(builds);
  const byBase = new Map<string, Declaration[]>();
  for (const build of engine.workshop.declared("build")) {
    if (build.from !== undefined) byBase.set(build.from, [...(byBase.get(build.from) ?? []), build]);
  }
  for (const build of found) for (const variant of byBase.get(build.name) ?? []) found.add(variant);
  return [...found];
}

/** Whether a build is a base for others and not a whole bike. */
export function isTemplate(engine: Engine, build: Declaration): boolean {
  const template = engine.assemble(build).fields.get("template");
  return template?.state === "stated" && template.value === true;
}
