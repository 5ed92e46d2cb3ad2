import type { Installed } from "../../model/assembly.ts";
import type { Maybe, Need } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, type Instance, notApplicable } from "../define.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { axlesDiffer, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";
import { isOtherSize } from "../shared/thru-axle.ts";
import { anyHolderFact, type WheelPlace, wheelPlaces } from "../shared/wheel-places.ts";

type End = "front" | "rear";
type Thing = "hub" | "thru axle" | "lamp" | "mudguard" | "rack";

interface EndInstance extends Instance {
  readonly slot: SlotPath;
  readonly end: End;
  readonly thing: Thing;
}

type EndNeeds = {
  readonly part: Need<Installed, true>;
  readonly madeFor: Need<End, true>;
  /** Of a hub: the rim, which may be the same wheel bought whole, and the axles by which hub and holder meet. */
  readonly rim?: Need<Installed, true>;
  readonly rimMadeFor?: Need<End, true>;
  readonly hubAxle?: Need<ResolvedCode, true>;
  readonly fitted?: Need<ResolvedCode, true>;
  /** Of a thru axle: its size. */
  readonly size?: Need<ResolvedCode, true>;
  /** Of hub and thru axle: the axle that fork or frame takes. */
  readonly takes?: Need<ResolvedCode, true>;
};

type EndFacts = {
  readonly [K in keyof EndNeeds]: EndNeeds[K] extends Need<infer Value, true> | undefined ? Maybe<Value> : never;
};

const lamps = { front: "a front lamp, which is white", rear: "a rear lamp, which is red" } as const;

const cautions: Readonly<Record<Thing, string>> = {
  hub: "A wheel whose hub is not made for its place is not held there, and can come out while riding.",
  "thru axle": "A wheel whose axle is not screwed home can come out while riding.",
  lamp: "Wrong lamps are taken for a bicycle that goes the other way.",
  mudguard: "A mudguard that jams stops the wheel.",
  rack: "A rack or its load that comes loose stops the wheel.",
};

const instances: readonly EndInstance[] = [
  { name: "front hub", slot: "front-wheel.hub", end: "front", thing: "hub" },
  { name: "rear hub", slot: "rear-wheel.hub", end: "rear", thing: "hub" },
  { name: "front thru axle", slot: "front-wheel.axle", end: "front", thing: "thru axle" },
  { name: "rear thru axle", slot: "rear-wheel.axle", end: "rear", thing: "thru axle" },
  { name: "front lamp", slot: "lighting.front-lamp", end: "front", thing: "lamp" },
  { name: "rear lamp", slot: "lighting.rear-lamp", end: "rear", thing: "lamp" },
  { name: "front mudguard", slot: "carrying.front-mudguard", end: "front", thing: "mudguard" },
  { name: "rear mudguard", slot: "carrying.rear-mudguard", end: "rear", thing: "mudguard" },
  { name: "front rack", slot: "carrying.front-rack", end: "front", thing: "rack" },
  { name: "rear rack", slot: "carrying.rear-rack", end: "rear", thing: "rack" },
];

export default defineCheck<EndInstance, EndNeeds>({
  code: "frame/front-and-rear",
  title: "Hubs, thru axles, lamps, mudguards and racks are at the end that they are made for",
  severity: "error",
  since: 1,
  safety: true,
  instances,
  needs: ({ slot: path, end, thing }) => {
    const own = { part: anySlot(path), madeFor: anyFact<End>(path, thing === "lamp" ? "place" : "wheel") };
    const place = wheelPlaces.find(({ name }) => name === end) as WheelPlace;
    if (thing === "thru axle") {
      return { ...own, size: anyFact<ResolvedCode>(path, "axle"), takes: anyHolderFact<ResolvedCode>(place, "axle") };
    }
    if (thing !== "hub") return own;
    const rim = `${place.wheel}.rim` as const;
    return { ...own, rim: anySlot(rim), rimMadeFor: anyFact<End>(rim, "wheel"), ...fittedAxleNeeds(place) };
  },
  test(facts, { slot: path, end, thing }) {
    const { part, madeFor } = ofWhole(facts as EndFacts);
    if (part.state === "none") return notApplicable(`${path} is none`);
    if (part.state === "unknown") return cannotTell(part);
    if (thing === "thru axle" && !isKind(part.value, "thru-axle")) {
      return notApplicable(`${part.subject} is no thru axle`);
    }
    if (madeFor.state === "unknown") return cannotTell(madeFor);
    if (madeFor.state === "none") return notApplicable(`${part.subject} is made for either end`);
    if (madeFor.value === end) return holds(`${part.subject} is made for the ${end}, where the build fits it.`);
    if (foundByAxle(facts as EndFacts)) return notApplicable("its axle is found not to fit");
    return fails(
      thing === "lamp"
        ? `${part.subject} is ${lamps[madeFor.value]}, but the build fits it at the ${end}: fit ${lamps[end]}.`
        : isKind(part.value, "built-wheel")
          ? `${part.subject} is a ${madeFor.value} wheel, but the build fits it at the ${end}: fit a ${end} wheel.`
          : `${part.subject} is made for the ${madeFor.value} wheel, but the build fits it at the ${end}: fit a ${thing} for the ${end} wheel.`,
      part,
      [madeFor],
      swaps(part.path as SlotPath),
      { caution: cautions[thing] },
    );
  },
  explanation:
    "A front hub carries no cogs and is narrower than a rear one, and a thru axle is as long as its own wheel asks. Where " +
    "their sizes are stated and differ from those of fork or frame, that is found as such; this is about those that are " +
    "of one size, or of none that anybody stated. A skewer is asked about together with its span. " +
    "A front lamp is white and a rear lamp is red, and who sees the wrong one takes the bicycle to go the other way. " +
    "Mudguards differ in length and in where their stays and clips sit: a rear one at the fork reaches the ground or lacks " +
    "the stays that let go when something jams. A front rack stands on the fork and turns with it, a rear one on the " +
    "frame, and neither goes on the other's eyelets.",
  source: "common practice, no source",
  caution:
    "A wheel that is not held as it is made for can come out while riding; a mudguard that jams stops it; wrong lamps are " +
    "taken for a bicycle that goes the other way.",
  examples: {
    holds: `
part hub example.hub "Rear hub" { wheel: rear }
part lamp example.lamp "Red lamp" { place: rear }

build example "Both behind" {
  front-wheel { hub: none; axle: none }
  rear-wheel { hub: example.hub; axle: none }
  lighting.rear-lamp: example.lamp
}
`,
    fails: `
part hub example.hub "Rear hub" { wheel: rear }
part lamp example.lamp "Red lamp" { place: rear }

build example "A rear hub in front" {
  front-wheel { hub: example.hub; axle: none }
  rear-wheel { hub: none; axle: none }
  lighting.rear-lamp: example.lamp
}
`,
  },
});

/** The hub's own answer, or that of a wheel bought whole of which only the rim's place was filled in. */
function ofWhole({ part, madeFor, rim, rimMadeFor }: EndFacts): Pick<EndFacts, "part" | "madeFor"> {
  const isWhole = rim?.state === "known" && isKind(rim.value, "built-wheel");
  return isWhole && rimMadeFor && part.state !== "known" ? { part: rim, madeFor: rimMadeFor } : { part, madeFor };
}

/** Whether fork or frame is known to take another size of hub or thru axle, which is found as such. */
function foundByAxle({ hubAxle, fitted, size, takes }: EndFacts): boolean {
  if (!takes) return false;
  return hubAxle && fitted ? axlesDiffer({ hubAxle, fitted, takes }) : size !== undefined && isOtherSize(size, takes);
}
