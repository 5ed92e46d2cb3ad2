import { notThreadless, threadlessNeeds } from "../../calculations/shared/threadless.ts";
import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, optional, slot, type Unknown } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { both, either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
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
    forkOwn: optional(fact("fork", "plug-supplied")),
    allowed: optional(fact("fork", "plug-types")),
    forbids: optional(fact("fork", "forbids")),
    material: optional(fact("fork", "steerer-material")),
  }),
  test({ fork, plug, plugType, headset, supplied, forkOwn, allowed, forbids, material, ...kind }) {
    const other = notThreadless(kind);
    if (other) return notApplicable(other);
    const steerer: Steerer = { fork, allowed, forbids, material };
    // A plug of its own takes the place of whatever fork and headset come with.
    const own = plug.state !== "none";
    if (!own && forkOwn.state === "known") {
      const right = forkOwn.value.find((one) => !cutsFibres(one, steerer));
      if (right) {
        const aside =
          supplied.state === "known" && supplied.value.includes("star-nut") && cutsFibres("star-nut", steerer)
            ? ` The star nut that comes with ${supplied.subject} is not used.`
            : "";
        return holds(`${fork.subject} comes with ${noun(right)} for its steerer.${aside}`);
      }
    }
    const comesWithFork = !own && forkOwn.state === "known";
    const source = own ? plug : comesWithFork ? fork : headset;
    const stated = own ? plugType : comesWithFork ? forkOwn : supplied;
    if (source.state === "none") return notApplicable(`${source.path} is none`);
    if (source.state === "unknown") return cannotTell(source);
    if (stated.state === "unknown") return cannotTell(stated);
    if (stated.state === "none") {
      if (own || forkOwn.state === "known") return notApplicable(`${source.subject} states no kind of plug`);
      if (forkOwn.state === "unknown") return cannotTell(forkOwn);
      return fails(
        `The cap has nothing to pull on: neither ${fork.subject} nor ${headset.state === "known" ? headset.subject : "the headset"} comes with a plug, and none is fitted. Fit ${taken(steerer)}.`,
        fork,
        [statedNone(fork, forkOwn)],
        [{ kind: "insert-part", slot: "cockpit.steerer-plug" }],
      );
    }
    const kinds: readonly string[] = Array.isArray(stated.value) ? stated.value : [stated.value as string];
    const names = kinds.map(noun);
    const repairs = own
      ? swaps("cockpit.steerer-plug")
      : [{ kind: "insert-part", slot: "cockpit.steerer-plug" } as const];

    const judged = kinds.map((one) => judge(one, steerer));
    const fitting = names.filter((_, index) => judged[index]?.state === "fits");
    if (fitting.length > 0) {
      return holds(
        `${source.subject} ${own ? "is" : "comes with"} ${either(fitting)}, which the steerer of ${fork.subject} takes.`,
      );
    }
    const unknown = judged.flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (unknown.length > 0) return cannotTell(...unknowns(...unknown));
    const cuts = kinds.includes("star-nut") && material.state === "known" && material.value === "carbon";
    return fails(
      `${source.subject} ${own ? "is" : "comes with"} ${both(names)}, but ${cuts ? `the steerer of ${fork.subject} is carbon, which it cuts` : `the maker of ${fork.subject} does not allow that in its steerer`}: fit ${taken(steerer)}.`,
      source,
      [stated, ...new Set(judged.flatMap((one) => (one.state === "refused" ? [one.reason] : [])))],
      [...repairs, ...swaps("fork")],
    );
  },
  explanation:
    "The cap pulls on something inside the steerer to bring the bearings together. In metal that is mostly a star nut, " +
    "driven in with a setting tool, whose edges bite. In carbon those edges cut the fibres, and the clamp of the stem would " +
    "crush the empty tube: there goes a plug that expands, of the kind that the fork's maker allows, and it stays in. Many " +
    "headsets come with a star nut, which is then laid aside; a fork with a carbon steerer often comes with its own plug. " +
    "A star nut is never driven out of carbon: such a fork is inspected by its maker.",
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

/** Whether it is a star nut where none may go, whoever supplies it. */
function cutsFibres(kind: string, { forbids, material }: Steerer): boolean {
  if (kind !== "star-nut") return false;
  if (forbids.state === "known" && forbids.value.includes("star-nut")) return true;
  return material.state === "known" && material.value === "carbon";
}

/** What the steerer takes, for a sentence that says what to fit. */
function taken({ allowed, material }: Steerer): string {
  if (allowed.state === "known") return either(allowed.value.map(noun));
  return material.state === "known" && material.value !== "carbon"
    ? "a star nut or an expanding plug"
    : "an expanding plug";
}

function noun(kind: string): string {
  return nouns[kind] ?? kind;
}
