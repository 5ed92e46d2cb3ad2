import type { Known } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { type Check, defineCheck, type Instance } from "../define.ts";
import { asList, type OneOrMoreCodes } from "./codes.ts";
import type { End } from "./end.ts";
import {
  jointNamed,
  judgeMating,
  type MatingFacts,
  type MatingNeeds,
  type MatingRow,
  type MatingWords,
  matingEnds,
  matingNeeds,
} from "./mating.ts";

/** Names of the halves by which the two ends mate; an end that is no composite code mates whole. */
export type Halves = readonly [string | undefined, string | undefined];

export type HalfMatingRow = Omit<MatingRow, "joints"> & {
  readonly joint: string;
  readonly words: MatingWords;
  readonly halves: Halves;
};

/** A check that one half of a composite code, such as the fit of `ZS44/28.6`, goes with the other end of a joint. */
export function halfMatingCheck({ joint: name, words, halves, ...row }: HalfMatingRow): Check<Instance, MatingNeeds> {
  const joint = jointNamed(name);
  return defineCheck<Instance, MatingNeeds>({
    severity: "error",
    since: 1,
    ...row,
    needs: () => matingNeeds(joint),
    test(facts) {
      const [one, other] = matingEnds(joint, facts as MatingFacts);
      return judgeMating(joint, words, halfEnd(one, halves[0]), halfEnd(other, halves[1]));
    },
  });
}

/** The same end with one half of its code in place of the whole; a code that leaves that half out is not known there. */
export function halfEnd(end: End<OneOrMoreCodes>, half: string | undefined): End<OneOrMoreCodes> {
  if (half === undefined || end.state !== "known") return end;
  const whole = asList(end.fact.value);
  const found = whole.map((code) => halfCode(code, half));
  const codes = found.filter((code) => code !== undefined);
  if (codes.length === found.length) return { ...end, fact: { ...end.fact, value: codes } };
  return { state: "unknown", part: end.part, unknown: lacksHalf(end.fact, half) };
}

/** A half that is a code; the whole code where it is not written in halves; `undefined` for a half that was left out. */
export function halfCode(code: ResolvedCode, half: string): ResolvedCode | undefined {
  return code.halves ? code.halves.find(({ name }) => name === half)?.code : code;
}

/** A half that is a number, in the base unit. */
export function halfNumber(code: ResolvedCode, half: string): number | undefined {
  return code.halves?.find(({ name }) => name === half)?.value;
}

/** Says that a code was written without one of its halves. */
export function lacksHalf(fact: Known, half: string): { readonly state: "unknown"; readonly missing: readonly [Lack] } {
  const what = `the ${half} in the code ${fact.written} of ${fact.subject} (${fact.path})`;
  return { state: "unknown", missing: [{ path: fact.path, what, place: fact.place }] };
}

type Lack = { readonly path: string; readonly what: string; readonly place: Known["place"] };
