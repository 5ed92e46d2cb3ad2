import type { Repair } from "../../model/finding.ts";
import type { Known } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { Joint, JointEnd } from "../../vocabulary/index.ts";
import {
  type Check,
  cannotTell,
  defineCheck,
  fails,
  holds,
  type Instance,
  notApplicable,
  type Verdict,
} from "../define.ts";
import type { OneOrMoreCodes } from "./codes.ts";
import { asList } from "./codes.ts";
import type { End } from "./end.ts";
import { halfNumber, lacksHalf } from "./half-mating.ts";
import { jointNamed, type MatingFacts, type MatingNeeds, matingEnds, matingNeeds } from "./mating.ts";
import { swaps } from "./swaps.ts";

/** The words for a joint of two diameters: what goes before the numbers in a sentence, and what mends it. */
export interface SizeWords {
  /** What the first end's part does, after its name: "is". */
  readonly one: string;
  /** What the second end's part does: "clamps". */
  readonly other: string;
  /** What is said of a second end that states `none`, after its name: "has a clamp of its own". */
  readonly nothing: string;
  /** What mends it, from both sizes as shown. */
  remedy(one: string, other: string): string;
  /** How far the two may differ, in millimetres, and still be called the same size. */
  readonly tolerance: number;
}

export type SizeRow = Omit<Check, "severity" | "since" | "instances" | "needs" | "test"> & {
  readonly joints: Readonly<Record<string, SizeWords>>;
};

interface SizeInstance extends Instance {
  readonly joint: Joint;
  readonly words: SizeWords;
}

/** A check that the ends of a joint of the table, or of several joints, are of one diameter. */
export function sizeCheck({ joints, ...row }: SizeRow): Check<SizeInstance, MatingNeeds> {
  const instances = Object.entries(joints).map(([name, words]) => ({ name, joint: jointNamed(name), words }));
  const [first] = instances;
  if (!first) throw new Error(`${row.code} has no joint`);
  const of = (instance: Instance): SizeInstance => (instances.length > 1 ? (instance as SizeInstance) : first);
  return defineCheck<SizeInstance, MatingNeeds>({
    severity: "error",
    since: 1,
    ...row,
    ...(instances.length > 1 ? { instances } : {}),
    needs: (instance) => matingNeeds(of(instance).joint),
    test(facts, instance) {
      const { joint, words } = of(instance);
      const [one, other] = matingEnds(joint, facts as MatingFacts);
      return judgeSizes(joint, words, sizeEnd(one, joint.ends[0]), sizeEnd(other, joint.ends[1]));
    },
  });
}

/** Whether two diameters are the same, in three outcomes. */
export function judgeSizes(
  joint: Joint,
  words: SizeWords,
  one: End<number>,
  other: End<number>,
  repairs: readonly Repair[] = swaps(joint.ends[0].slot, joint.ends[1].slot),
): Verdict {
  for (const end of [one, other]) {
    if (end.state === "empty") return notApplicable(`${end.slot} is none`);
    if (end.state === "unasked") return notApplicable(`${end.part.subject} has no such diameter`);
  }
  if (one.state === "none") return notApplicable(`${one.part.subject} has none`);
  if (other.state === "none" && one.state !== "empty" && one.state !== "unasked" && one.part) {
    return fails(
      `${other.part.subject} ${words.nothing}, but ${one.part.subject} is fitted: ${words.remedy(one.state === "known" ? showQuantity(one.fact.value, "length") : "none", "none")}`,
      one.part,
      [other.fact],
      [{ kind: "leave-empty", slot: joint.ends[0].slot }, ...repairs],
    );
  }
  const unknown = [one, other].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
  if (unknown.length > 0) return cannotTell(...unknown);
  if (one.state !== "known" || other.state !== "known") return notApplicable("there is no such joint here");

  const [a, b] = showPair(one.fact.value, other.fact.value, "length");
  if (atMost(Math.abs(one.fact.value - other.fact.value), words.tolerance)) {
    return holds(`${one.part.subject} ${words.one} ${a}, and ${other.part.subject} ${words.other} ${b}.`);
  }
  return fails(
    `${one.part.subject} ${words.one} ${a}, but ${other.part.subject} ${words.other} ${b}: ${words.remedy(a, b)}`,
    one.part,
    [one.fact, other.fact],
    repairs,
  );
}

/** The diameter that an end states: a number, or the half of a code that is one. */
export function sizeEnd(end: End<unknown>, { half }: JointEnd): End<number> {
  if (end.state !== "known") return end;
  if (typeof end.fact.value === "number") return { ...end, fact: end.fact as Known<number> };
  if (half === undefined) return { state: "unasked", part: end.part };
  const [code] = asList(end.fact.value as OneOrMoreCodes);
  const size = code && halfNumber(code, half);
  if (size === undefined) return { state: "unknown", part: end.part, unknown: lacksHalf(end.fact, half) };
  return { ...end, fact: { ...end.fact, value: size } };
}
