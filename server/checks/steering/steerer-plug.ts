import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, optional, slot, type Unknown } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { both, either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { notThreadless, threadlessNeeds } from "../shared/threadless.ts";
import { unknowns } from "../shared/unknowns.ts";

const nouns: Readonly<Record<string, string>> = {
  "star-nut": "a star nut",
  "expanding-plug": "an expanding plug",
  glued: "a glued sleeve",
};

export default defineCheck({
  code: "steering/steerer-plug",
  title: "What the cap pulls on is allowed in the steerer",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadlessNeeds,
    fork: slot("fork"),
    plug: optional(slot("cockpit.steerer-plug")),
    plugType: optional(fact("cockpit.steerer-plug", "plug-type")),
    headset: optional(slot("headset")),
    supplied: optional(fact("headset", "plug-supplied")),
    allowed: optional(fact("fork", "plug-types")),
    forbids: optional(fact("fork", "forbids")),
    material: optional(fact("fork", "steerer-material")),
  }),
  test({ fork, plug, plugType, headset, supplied, allowed, forbids, material, ...kind }) {
    const other = notThreadless(kind);
    if (other) return notApplicable(other);
    // A plug of its own takes the place of whatever the headset comes with.
    const own = plug.state !== "none";
    const source = own ? plug : headset;
    const stated = own ? plugType : supplied;
    if (source.state === "none") return notApplicable("no plug is stated: it comes with the fork");
    if (source.state === "unknown") return cannotTell(source);
    if (stated.state === "unknown") return cannotTell(stated);
    if (stated.state === "none") return notApplicable("no plug is stated: it comes with the fork");
    const kinds: readonly string[] = Array.isArray(stated.value) ? stated.value : [stated.value as string];
    const names = kinds.map(noun);
    const repairs = own
      ? swaps("cockpit.steerer-plug")
      : [{ kind: "insert-part", slot: "cockpit.steerer-plug" } as const];

    const judged = kinds.map((one) => judge(one, { fork, allowed, forbids, material }));
    const fitting = names.filter((_, index) => judged[index]?.state === "fits");
    if (fitting.length > 0) {
      return holds(
        `${source.subject} ${own ? "is" : "comes with"} ${either(fitting)}, which the steerer of ${fork.subject} takes.`,
      );
    }
    const unknown = judged.flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (unknown.length > 0) return cannotTell(...unknowns(...unknown));
    const cuts = kinds.includes("star-nut") && material.state === "known" && material.value === "carbon";
    const takes = allowed.state === "known" ? either(allowed.value.map(noun)) : "an expanding plug";
    return fails(
      `${source.subject} ${own ? "is" : "comes with"} ${both(names)}, but ${cuts ? `the steerer of ${fork.subject} is carbon, which it cuts` : `the maker of ${fork.subject} does not allow that in its steerer`}: fit ${takes}.`,
      source,
      [stated, ...new Set(judged.flatMap((one) => (one.state === "refused" ? [one.reason] : [])))],
      [...repairs, ...swaps("fork")],
    );
  },
  explanation:
    "The cap pulls on something inside the steerer to bring the bearings together. In metal that is mostly a star nut, " +
    "driven in with a setting tool, whose edges bite. In carbon those edges cut the fibres, and the clamp of the stem would " +
    "crush the empty tube: there goes a plug that expands, of the kind that the fork's maker allows, and it stays in. Many " +
    "headsets come with a star nut, which is then laid aside. A star nut is never driven out of carbon: such a fork is " +
    "inspected by its maker.",
  source: "common practice, no source; the fork maker's own statement decides",
  caution: "A star nut never goes into a carbon steerer: it can break there without warning.",
  examples: {
    holds: `
part fork example.fork "Carbon fork" { steerer-material: carbon; plug-types: expanding-plug }
part headset example.bearings "Bearings" { plug-supplied: star-nut }
part steerer-plug example.plug "Plug" { plug-type: expanding-plug }

build example "The star nut stays in the drawer" {
  fork: example.fork
  headset: example.bearings
  cockpit.steerer-plug: example.plug
}
`,
    fails: `
part fork example.fork "Carbon fork" { steerer-material: carbon; plug-types: expanding-plug }
part headset example.bearings "Bearings" { plug-supplied: star-nut }

build example "A star nut for carbon" {
  fork: example.fork
  headset: example.bearings
  cockpit.steerer-plug: none
}
`,
  },
});

interface Steerer {
  readonly fork: Known<Installed>;
  readonly allowed: Maybe<readonly string[]>;
  readonly forbids: Maybe<readonly string[]>;
  readonly material: Maybe<string>;
}

type Judged = { readonly state: "fits" } | { readonly state: "refused"; readonly reason: Known } | Unknown;

/** Whether one kind of plug may go into a steerer: by its maker's word, else by what the steerer is made of. */
function judge(kind: string, { fork, allowed, forbids, material }: Steerer): Judged {
  if (kind === "star-nut" && forbids.state === "known" && forbids.value.includes("star-nut")) {
    return { state: "refused", reason: forbids };
  }
  if (allowed.state === "known") {
    return allowed.value.includes(kind) ? { state: "fits" } : { state: "refused", reason: allowed };
  }
  if (allowed.state === "none") return { state: "refused", reason: statedNone(fork, allowed) };
  if (material.state === "known" && material.value !== "carbon") return { state: "fits" };
  if (kind === "star-nut" && material.state === "known") return { state: "refused", reason: material };
  return allowed;
}

function noun(kind: string): string {
  return nouns[kind] ?? kind;
}
