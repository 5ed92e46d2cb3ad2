import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { asList, type OneOrMoreCodes, showCode } from "../shared/codes.ts";
import { anyFact, readEnd } from "../shared/end.ts";
import { jointNamed, matingNeeds } from "../shared/mating.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/** What is carried, and the word by which a maker forbids it. */
const instances = [
  { name: "front rack", joint: "front-rack-mount", forbidden: "rack" },
  { name: "rear rack", joint: "rear-rack-mount", forbidden: "rack" },
  { name: "front mudguard", joint: "front-mudguard-mount", forbidden: "mudguard" },
  { name: "rear mudguard", joint: "rear-mudguard-mount", forbidden: "mudguard" },
  { name: "stand", joint: "stand-mount", forbidden: undefined },
  { name: "child seat", joint: "child-seat-mount", forbidden: undefined },
] as const;

type MountNeeds = {
  readonly onePart: Need<Installed, true>;
  readonly oneCode: Need<OneOrMoreCodes, true>;
  readonly otherPart: Need<Installed, true>;
  readonly otherCode: Need<OneOrMoreCodes, true>;
  readonly forbids: Need<readonly string[], true>;
};

export default defineCheck({
  code: "frame/mounts",
  title: "Racks, mudguards and stands have the mounts they need",
  severity: "error",
  since: 1,
  safety: true,
  instances,
  needs: ({ joint }): MountNeeds => ({
    ...matingNeeds(jointNamed(joint)),
    forbids: anyFact(jointNamed(joint).ends[1].slot, "forbids"),
  }),
  test(facts, { name, joint: jointName, forbidden }) {
    const { onePart, oneCode, otherPart, otherCode, forbids } = facts as {
      [K in keyof MountNeeds]: MountNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
    };
    const [carried, holder] = jointNamed(jointName).ends;
    const one = readEnd(onePart, oneCode, carried.field);
    const other = readEnd(otherPart, otherCode, holder.field);
    if (one.state === "empty") return notApplicable(`${carried.slot} is none`);
    if (one.state === "unknown" && !one.part) return cannotTell(one.unknown);
    const part = one.part as Known<Installed>;
    const leave = { kind: "leave-empty", slot: carried.slot } as const;
    if (forbidden && forbids.state === "known" && forbids.value.includes(forbidden)) {
      return fails(
        `${part.subject} is fitted, but the maker of ${forbids.subject} forbids a ${forbidden}: leave it out, or fit another ${holder.slot}.`,
        part,
        [forbids],
        [leave, ...swaps(holder.slot)],
      );
    }
    if (one.state === "none" || one.state === "unasked") return notApplicable(`${part.subject} needs no mounts`);
    if (other.state === "empty" || other.state === "unasked") return notApplicable(`${holder.slot} is none`);
    if (other.state === "none") {
      return fails(
        `${part.subject} is fixed to ${needed(one.state === "known" ? asList(one.fact.value) : [])}, but ${other.part.subject} has no mounts: leave it out, or fit a ${name} that clamps on.`,
        part,
        [other.fact, ...(one.state === "known" ? [one.fact] : [])],
        [leave, ...swaps(carried.slot as SlotPath, holder.slot)],
      );
    }
    const unknown = unknowns(...[one, other].map((end) => (end.state === "unknown" ? end.unknown : undefined)));
    if (one.state !== "known" || other.state !== "known") return cannotTell(...unknown);
    const has = asList(other.fact.value);
    const lacking = asList(one.fact.value).filter((code) => !has.some((mount) => mate(code, mount)));
    if (lacking.length === 0) {
      return holds(
        `${part.subject} is fixed to ${needed(asList(one.fact.value))}, and ${other.part.subject} has ${lacking.length === 0 && asList(one.fact.value).length > 1 ? "all of them" : "it"}.`,
      );
    }
    return fails(
      `${part.subject} is fixed to ${needed(asList(one.fact.value))}, but ${other.part.subject} has ${needed(has)} and not ${needed(lacking)}: fit a ${name} for the mounts that are there.`,
      part,
      [one.fact, other.fact],
      [...swaps(carried.slot, holder.slot), leave],
    );
  },
  explanation:
    "Racks, mudguards and stands are bolted to eyelets, bridges and plates that a frame or fork has or has not. A part that " +
    "needs two kinds of mount is not held by one. Clips and straps in place of a missing eyelet slip under load and swing " +
    "into the wheel. Some makers forbid racks or mudguards although there is a hole, because the stays were not made for the " +
    "load or the tyre leaves no room. What may be loaded is another question.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A rack or mudguard that comes loose can lock the wheel.",
  examples: {
    holds: `
part frame example.town "Town" { accessory-mounts: eyelet-M5, stand-18 }
part stand example.stand "Stand" { mount: stand-18 }

build example "A plate for the stand" {
  frame: example.town
  carrying.stand: example.stand
}
`,
    fails: `
part frame example.fell "Fell" { accessory-mounts: cage-64 }
part rack example.rack "Rack" { mounts: eyelet-M5 }

build example "No eyelets for a rack" {
  frame: example.fell
  carrying.rear-rack: example.rack
}
`,
  },
});

function needed(codes: readonly ResolvedCode[]): string {
  return codes.length > 0 ? both(codes.map(showCode)) : "mounts";
}
