import { isNamedAgain } from "../../calculations/shared/every-part.ts";
import type { Installed } from "../../model/assembly.ts";
import { buildField, type Maybe, type Need, optional } from "../../model/need.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { sufficientRating } from "../shared/category-cover.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { ratedParts } from "../shared/rated-parts.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Parts that drop the rider when they break. */
const carrying: ReadonlySet<SlotPath> = new Set<SlotPath>([
  "frame",
  "fork",
  "cockpit.stem",
  "cockpit.handlebar",
  "seat.post",
  "drivetrain.crankset",
  "front-wheel.hub",
  "front-wheel.rim",
  "rear-wheel.hub",
  "rear-wheel.rim",
]);

/** Parts that what is carried does not load: they bear the rider, or only move the chain. */
const riderOnly: ReadonlySet<SlotPath> = new Set<SlotPath>([
  "drivetrain.rear-derailleur",
  "drivetrain.front-derailleur",
  "drivetrain.cassette",
  "drivetrain.chain",
  "drivetrain.chainring",
  "drivetrain.rear-controller",
  "drivetrain.pedals",
  "seat.saddle",
]);

type CategoryNeeds = {
  readonly part: Need<Installed, true>;
  readonly rated: Need<readonly string[], true>;
  readonly use: Need<string, true>;
};

export default defineCheck({
  code: "frame/category",
  title: "The parts are rated for what the bicycle is used for",
  severity: "error",
  since: 1,
  safety: true,
  instances: ratedParts,
  needs: ({ slot: path }): CategoryNeeds => ({
    part: anySlot(path),
    rated: anyFact(path, "categories"),
    use: optional(buildField("category")) as Need<string, true>,
  }),
  test(
    { part, rated, use }: { part: Maybe<Installed>; rated: Maybe<readonly string[]>; use: Maybe<string> },
    { slot: path },
  ) {
    // Frame and fork decide what a bicycle is for; of the rest, few makers say it.
    const asked = path === "frame" || path === "fork";
    if (part.state === "none") return notApplicable(`${path} is none`);
    if (part.state === "unknown") return asked ? cannotTell(part) : notApplicable(`${path} has no part yet`);
    if (isNamedAgain(path, part.value.part)) return notApplicable(`${part.subject} is asked as the hub that it is too`);
    if (rated.state === "none") return notApplicable(`the maker of ${part.subject} rates it for no use`);
    if (rated.state === "unknown") return asked ? cannotTell(rated) : notApplicable(`${part.subject} states no uses`);
    if (use.state === "none") return notApplicable("the build states no use");
    if (use.state === "unknown") return path === "frame" ? cannotTell(use) : notApplicable("the build states no use");
    const uses = both(rated.value);
    const enough = sufficientRating(rated.value, use.value, !riderOnly.has(path));
    if (enough === use.value) return holds(`${part.subject} is rated for ${uses}.`);
    if (enough && use.value === "cargo" && riderOnly.has(path)) {
      return holds(`${part.subject} is rated for ${uses}, and what a cargo bicycle carries does not load it.`);
    }
    if (enough) return holds(`${part.subject} is rated for ${uses}, and ${enough} takes in ${use.value}.`);
    return fails(
      `The bicycle is for ${use.value}, but the maker of ${part.subject} rates it for ${uses}: fit one that is rated for ${use.value}, or keep the bicycle to that use.`,
      part,
      [use, rated],
      [
        ...swaps(path),
        ...(asked && rated.value[0] ? [{ kind: "set-field", field: "category", value: rated.value[0] } as const] : []),
      ],
      carrying.has(path) ? {} : { severity: "warning" },
    );
  },
  explanation:
    "Makers test their parts for a use: a smooth road, rough ground, jumps, loads. A part that is rated for rougher use " +
    "serves a smoother one, so that a mountain bar may go on a gravel bike, but not a road bar on a mountain bike. Carrying " +
    "loads, jumping, and racing on a track are uses of their own, save that a load does not reach derailleurs, chain, cogs, " +
    "pedals and saddle. Parts that drop the rider when they break are an error " +
    "here, the others a warning. Frame and fork have to say what they are for; other parts are compared where they do.",
  source: "common practice, no source; the ratings are the makers' own",
  caution:
    "A part that is ridden harder than it was tested for breaks without warning. The part makers' ratings come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { categories: mountain }
part fork example.fork "Fork" { categories: mountain, downhill }
part handlebar example.bar "Bar" { categories: downhill }

build example "Rated for as much, or more" {
  category: mountain
  frame: example.fell
  fork: example.fork
  cockpit.handlebar: example.bar
}
`,
    fails: `
part frame example.fell "Fell" { categories: mountain }
part fork example.fork "Fork" { categories: mountain }
part stem example.light "Light stem" { categories: road, touring }

build example "A road stem on rough ground" {
  category: mountain
  frame: example.fell
  fork: example.fork
  cockpit.stem: example.light
}
`,
  },
});
