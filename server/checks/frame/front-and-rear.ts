import type { Installed } from "../../model/assembly.ts";
import type { Maybe, Need } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

type EndNeeds = {
  readonly part: Need<Installed, true>;
  readonly madeFor: Need<"front" | "rear", true>;
};

const lamps = { front: "a front lamp, which is white", rear: "a rear lamp, which is red" } as const;

const cautions = {
  lamp: "Wrong lamps are taken for a bicycle that goes the other way.",
  mudguard: "A mudguard that jams stops the wheel.",
  rack: "A rack or its load that comes loose stops the wheel.",
} as const;

export default defineCheck({
  code: "frame/front-and-rear",
  title: "Lamps, mudguards and racks are at the end that they are made for",
  severity: "error",
  since: 1,
  safety: true,
  instances: [
    { name: "front lamp", slot: "lighting.front-lamp", end: "front", thing: "lamp" },
    { name: "rear lamp", slot: "lighting.rear-lamp", end: "rear", thing: "lamp" },
    { name: "front mudguard", slot: "carrying.front-mudguard", end: "front", thing: "mudguard" },
    { name: "rear mudguard", slot: "carrying.rear-mudguard", end: "rear", thing: "mudguard" },
    { name: "front rack", slot: "carrying.front-rack", end: "front", thing: "rack" },
    { name: "rear rack", slot: "carrying.rear-rack", end: "rear", thing: "rack" },
  ] as const,
  needs: ({ slot: path, thing }): EndNeeds => ({
    part: anySlot(path),
    madeFor: anyFact(path, thing === "lamp" ? "place" : "wheel"),
  }),
  test({ part, madeFor }: { part: Maybe<Installed>; madeFor: Maybe<"front" | "rear"> }, { slot: path, end, thing }) {
    if (part.state === "none") return notApplicable(`${path} is none`);
    if (part.state === "unknown" || madeFor.state === "unknown") return cannotTell(...unknowns(part, madeFor));
    if (madeFor.state === "none") return notApplicable(`${part.subject} is made for either end`);
    if (madeFor.value === end) return holds(`${part.subject} is made for the ${end}, where the build fits it.`);
    return fails(
      thing === "lamp"
        ? `${part.subject} is ${lamps[madeFor.value]}, but the build fits it at the ${end}: fit ${lamps[end]}.`
        : `${part.subject} is made for the ${madeFor.value} wheel, but the build fits it at the ${end}: fit a ${thing} for the ${end} wheel.`,
      part,
      [madeFor],
      swaps(path),
      { caution: cautions[thing] },
    );
  },
  explanation:
    "A front lamp is white and a rear lamp is red, and who sees the wrong one takes the bicycle to go the other way. " +
    "Mudguards differ in length and in where their stays and clips sit: a rear one at the fork reaches the ground or lacks " +
    "the stays that let go when something jams. A front rack stands on the fork and turns with it, a rear one on the " +
    "frame, and neither goes on the other's eyelets.",
  source: "common practice, no source",
  caution: "A mudguard that jams stops the wheel; wrong lamps are taken for a bicycle that goes the other way.",
  examples: {
    holds: `
part lamp example.lamp "Red lamp" { place: rear }

build example "Red behind" {
  lighting.rear-lamp: example.lamp
}
`,
    fails: `
part lamp example.lamp "Red lamp" { place: rear }

build example "Red in front" {
  lighting.front-lamp: example.lamp
}
`,
  },
});
