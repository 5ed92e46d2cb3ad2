import type { Installed } from "../../model/assembly.ts";
import type { Repair } from "../../model/finding.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { type Joint, jointTable } from "../../vocabulary/index.ts";
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
import { matingPair, type OneOrMoreCodes, showCode, showCodes } from "./codes.ts";
import { anyFact, anySlot, type End, readEnd } from "./end.ts";
import { swaps } from "./swaps.ts";

/** The words for a joint: what goes before and after the interfaces in a sentence. */
export interface MatingWords {
  /** What the first end's part does with the interface, after its name: "slides onto". */
  readonly one: string;
  /** What the second end's part does with it: "carries". */
  readonly other: string;
  /** What is said of a second end that states `none`, after its name: "takes no front derailleur". */
  readonly nothing: string;
  /** What mends it, after the colon of the message. */
  readonly remedy: string;
}

export interface MatingInstance extends Instance {
  readonly joint: Joint;
  readonly words: MatingWords;
}

/** A joint of the table by its name. */
export function jointNamed(name: string): Joint {
  const found = jointTable.find((joint) => joint.name === name);
  if (!found) throw new Error(`no joint is named ${name}`);
  return found;
}

export type MatingNeeds = {
  readonly onePart: Need<Installed, true>;
  readonly oneCode: Need<OneOrMoreCodes, true>;
  readonly otherPart: Need<Installed, true>;
  readonly otherCode: Need<OneOrMoreCodes, true>;
  /** The fact that stands in where the second end's own is not stated. */
  readonly otherwise?: Need<OneOrMoreCodes, true>;
};

/** The two ends of a joint; an end that has a stand-in reads it where the fact itself is absent. */
export function matingNeeds({ ends: [one, other] }: Joint): MatingNeeds {
  return {
    onePart: anySlot(one.slot),
    oneCode: anyFact(one.slot, one.field),
    otherPart: anySlot(other.slot),
    otherCode: anyFact(other.slot, other.field),
    ...(other.otherwise === undefined ? {} : { otherwise: anyFact<OneOrMoreCodes>(other.slot, other.otherwise) }),
  };
}

export interface MatingFacts {
  readonly onePart: Maybe<Installed>;
  readonly oneCode: Maybe<OneOrMoreCodes>;
  readonly otherPart: Maybe<Installed>;
  readonly otherCode: Maybe<OneOrMoreCodes>;
  readonly otherwise?: Maybe<OneOrMoreCodes>;
}

/** The two ends as the build has them. */
export function matingEnds(
  { ends: [one, other] }: Joint,
  facts: MatingFacts,
): readonly [End<OneOrMoreCodes>, End<OneOrMoreCodes>] {
  const stand = facts.otherwise && facts.otherCode.state === "none" && other.otherwise !== undefined;
  return [
    readEnd(facts.onePart, facts.oneCode, one.field),
    stand && facts.otherwise
      ? readEnd(facts.otherPart, facts.otherwise, other.otherwise ?? other.field)
      : readEnd(facts.otherPart, facts.otherCode, other.field),
  ];
}

export type MatingRow = Omit<Check, "severity" | "since" | "instances" | "needs" | "test"> & {
  readonly severity?: Check["severity"];
  /** One joint of the table, or several that are asked apart. */
  readonly joints: Readonly<Record<string, MatingWords>>;
};

/** A check that the ends of a joint of the table, or of several joints, are made for each other. */
export function matingCheck({ joints, ...row }: MatingRow): Check<MatingInstance, MatingNeeds> {
  const instances = Object.entries(joints).map(([name, words]) => ({ name, joint: jointNamed(name), words }));
  const [first] = instances;
  if (!first) throw new Error(`${row.code} has no joint`);
  // A check of one joint is asked once of the build, so that a waiver of it needs no path.
  const of = (instance: Instance): MatingInstance => (instances.length > 1 ? (instance as MatingInstance) : first);
  return defineCheck<MatingInstance, MatingNeeds>({
    severity: "error",
    since: 1,
    ...row,
    ...(instances.length > 1 ? { instances } : {}),
    needs: (instance) => matingNeeds(of(instance).joint),
    test(facts, instance) {
      const { joint, words } = of(instance);
      return judgeMating(joint, words, ...matingEnds(joint, facts as MatingFacts));
    },
  });
}

/** Whether two ends mate, in three outcomes. */
export function judgeMating(
  joint: Joint,
  words: MatingWords,
  one: End<OneOrMoreCodes>,
  other: End<OneOrMoreCodes>,
  repairs: readonly Repair[] = swaps(joint.ends[0].slot, joint.ends[1].slot),
): Verdict {
  for (const end of [one, other]) {
    if (end.state === "empty") return notApplicable(`${end.slot} is none`);
    if (end.state === "unasked") return notApplicable(`${end.part.subject} has no such interface`);
  }
  if (one.state === "none") return notApplicable(`${one.part.subject} has none`);
  // A part that takes nothing there is wrong with whatever is fitted, whether or not that states its own end.
  if (other.state === "none" && one.state !== "empty" && one.state !== "unasked" && one.part) {
    const fitted: Known = one.state === "known" ? one.fact : one.part;
    return fails(
      `${other.part.subject} ${words.nothing}, but ${one.part.subject} is fitted: leave it out, or exchange one of the two.`,
      one.part,
      [other.fact, ...(fitted === one.part ? [] : [fitted])],
      [{ kind: "leave-empty", slot: joint.ends[0].slot }, ...repairs],
    );
  }
  const unknown = [one, other].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
  if (unknown.length > 0) return cannotTell(...unknown);
  if (one.state !== "known" || other.state !== "known") return notApplicable("there is no such joint here");

  const pair = matingPair(one.fact.value, other.fact.value);
  if (pair) {
    const [a, b] = pair;
    return holds(
      a.code === b.code && a.family === b.family
        ? `${one.part.subject} ${words.one} ${showCode(a)}, and ${other.part.subject} ${words.other} it.`
        : `${one.part.subject} ${words.one} ${showCode(a)}, which goes with the ${showCode(b)} of ${other.part.subject}.`,
    );
  }
  return fails(
    `${one.part.subject} ${words.one} ${showCodes(one.fact.value)}, but ${other.part.subject} ${words.other} ${showCodes(other.fact.value)}: ${words.remedy}`,
    one.part,
    [one.fact, other.fact],
    repairs,
  );
}
