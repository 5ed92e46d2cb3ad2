import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Maybe, optional, slot } from "../../model/need.ts";
import type { KindName } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact } from "../shared/codes.ts";
import { fittedAxle, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** What holds an axle of each kind, and how it is called in a sentence. */
const holders: Readonly<Record<string, { readonly kind: KindName; readonly axle: string; readonly holder: string }>> = {
  through: { kind: "thru-axle", axle: "is for a thru axle", holder: "a thru axle" },
  "quick-release": { kind: "quick-release", axle: "has a hollow axle for a skewer", holder: "a quick-release skewer" },
  nutted: { kind: "axle-nuts", axle: "has an axle for nuts", holder: "axle nuts" },
  bolted: { kind: "axle-nuts", axle: "has an axle for bolts", holder: "axle bolts" },
};

const called: Partial<Record<KindName, string>> = {
  "thru-axle": "a thru axle",
  "quick-release": "a quick-release skewer",
  "axle-nuts": "a pair of axle nuts",
};

export default defineCheck({
  code: "wheel/axle-fastening",
  title: "The wheel is held by what its hub is made for",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...fittedAxleNeeds(place),
    holder: slot(ofWheel(place.wheel, "axle")),
    hub: slot(ofWheel(place.wheel, "hub")),
    stated: optional(fact(ofWheel(place.wheel, "hub"), "axle-fastening")),
  }),
  test({ holder, hub, stated, hubAxle, fitted }, place) {
    const axle = fittedAxle({ hubAxle, fitted });
    const byStandard = axle.state === "known" ? dimensionFact<string>(axle.value, "fastening") : undefined;
    // Open dropouts of one width take skewers and nuts alike; only a thru axle is told by its size.
    const told = byStandard?.value === "through" ? byStandard : undefined;
    const changed = fitted.state === "known" ? byStandard : undefined;
    const fastening: Maybe<string> = changed ?? (stated.state === "known" ? stated : (told ?? stated));
    if (fastening.state === "none") return notApplicable(`${hub.subject} states no way of fastening`);
    if (fastening.state === "unknown") return cannotTell(fastening);
    const right = holders[fastening.value];
    if (!right) return notApplicable(`${hub.subject} is carried on one side`);
    if (isKind(holder.value, right.kind))
      return holds(`${hub.subject} ${right.axle}, and ${holder.subject} holds it so.`);
    const kind = holder.value.part?.kind?.name as KindName | undefined;
    return fails(
      `${hub.subject} ${right.axle}, but ${holder.subject} is ${(kind && called[kind]) ?? "something else"}: fit ${right.holder}.`,
      holder,
      [fastening],
      swaps(ofWheel(place.wheel, "axle"), ofWheel(place.wheel, "hub")),
    );
  },
  explanation:
    "A thru axle is pushed through dropouts and hub and screwed in. A skewer with a cam passes through a hollow axle in " +
    "open dropouts. A solid axle has threads outside, on which nuts go. None of them does another's work: a skewer in a " +
    "hub for a thru axle leaves the wheel loose on a thin rod, and nuts have nothing to go on at a hollow axle.",
  source: "common practice, no source",
  caution: "A wheel that is not held as its hub is made for can come out while riding.",
  examples: {
    holds: `
part hub example.hub "Front nutted" { axle-fastening: nutted }
part axle-nuts example.nuts "Nuts" { spanner: 15 mm }

build example "Nuts on a solid axle" {
  front-wheel { hub: example.hub; axle: example.nuts }
  rear-wheel.axle: none
}
`,
    fails: `
part hub example.hub "Front nutted" { axle-fastening: nutted }
part quick-release example.skewer "Skewer" { wheel: front }

build example "A skewer for a solid axle" {
  front-wheel { hub: example.hub; axle: example.skewer }
  rear-wheel.axle: none
}
`,
  },
});
