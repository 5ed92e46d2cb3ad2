import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need, Unknown } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySlot, hasFact } from "../shared/end.ts";
import { type Condition, type Idle, idleParts } from "../shared/idle-parts.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

type ConditionNeeds = Record<string, Need<Installed, true> | Need<unknown, true>> & {
  readonly part: Need<Installed, true>;
};

export default defineCheck({
  code: "build/unused-part",
  title: "Nothing is fitted that the build has no use for",
  severity: "information",
  since: 1,
  instances: idleParts,
  needs: ({ slot: path, when }: Idle): ConditionNeeds => ({
    part: anySlot(path),
    ...Object.fromEntries(
      when.flatMap((condition) => [
        [`part ${condition.slot}`, anySlot(condition.slot)],
        ...("fact" in condition
          ? [[`fact ${condition.slot}.${condition.fact}`, anyFact(condition.slot, condition.fact)]]
          : []),
      ]),
    ),
  }),
  test(facts, { slot: path, when, because, instead, unmountable }) {
    const { part } = facts;
    // A place that is still open holds nothing that could be idle; that it is open is said by itself.
    if (part.state === "unknown") return notApplicable(`no part is chosen for ${path} yet`);
    if (part.state === "none") return notApplicable(`${path} is none`);
    const answers = when.map((condition) => isMet(condition, facts as unknown as Record<string, Maybe>));
    // One condition that is not met is enough for the part to be of use, whatever the others are.
    if (answers.some(({ met }) => met === false)) return holds(`${part.subject} is of use where it is fitted.`);
    const unknown = answers.flatMap(({ unknown: one }) => (one ? [one] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    return fails(
      `${part.subject} (${path}) has 0 uses in this build: ${because}. ${instead}`,
      part,
      answers.flatMap(({ fact }) => (fact ? [fact] : [])),
      [{ kind: "leave-empty", slot: path }, ...swaps(...new Set(when.map(({ slot }) => slot)))],
      unmountable ? { severity: "warning" } : {},
    );
  },
  explanation:
    "A part that nothing in the build asks for is usually left over from the build that it was copied from: the remote of " +
    "a dropper on a bike with a rigid post, a shock for a frame without travel, a rotor beside rim brakes. It costs, it " +
    "weighs, and now and then it is in the way. Or it stands there rightly, and what it belongs to is the part that is " +
    "wrong. So both are named.",
  source: "common practice, no source",
  examples: {
    holds: `
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm; control: cable }
part remote example.thumb "Thumb" { serves: dropper }

build example "A remote with something to do" {
  seat { post: example.drop; remote: example.thumb }
}
`,
    fails: `
part seatpost example.post "Rigid post" { dropper-travel: none }
part remote example.thumb "Thumb" { serves: dropper }

build example "A remote with nothing to do" {
  seat { post: example.post; remote: example.thumb }
}
`,
  },
});

interface Answer {
  readonly met?: boolean;
  readonly unknown?: Unknown;
  /** What it was seen from. */
  readonly fact?: Known;
}

function isMet(condition: Condition, facts: Readonly<Record<string, Maybe>>): Answer {
  const part = facts[`part ${condition.slot}`] as Maybe<Installed> | undefined;
  if (!part) return { met: false };
  if (part.state === "unknown") return { unknown: part };
  if (!("fact" in condition)) {
    if (condition.is === "absent") return { met: part.state === "none" };
    const met = part.state === "known" && (condition.is === "present" || isKind(part.value, condition.is.kind));
    return met && part.state === "known" ? { met, fact: part } : { met };
  }
  const absent = condition.is.includes("none");
  if (part.state === "none") return { met: absent };
  const fact = facts[`fact ${condition.slot}.${condition.fact}`];
  if (!hasFact(part.value, condition.fact) || !fact || fact.state === "none")
    return { met: absent, ...(absent ? { fact: part } : {}) };
  if (fact.state === "unknown") return { unknown: fact };
  const met = condition.is.includes(String(fact.value));
  return met ? { met, fact } : { met };
}
