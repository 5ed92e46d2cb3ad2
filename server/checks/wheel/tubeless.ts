import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, lacksDimension, showCode } from "../shared/codes.ts";
import { anySlot } from "../shared/end.ts";
import { isGlued } from "../shared/glued-rim.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/tubeless",
  title: "Without a tube, tyre, rim, tape and valve hold the air",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    construction: fact(ofWheel(wheel, "tyre"), "construction"),
    tube: anySlot(ofWheel(wheel, "tube")),
    valve: anySlot(ofWheel(wheel, "valve")),
    kind: optional(fact(ofWheel(wheel, "rim"), "rim-kind")),
    forbids: optional(fact(ofWheel(wheel, "rim"), "forbids")),
    tape: anySlot(ofWheel(wheel, "rim-tape")),
    airtight: optional(fact(ofWheel(wheel, "rim-tape"), "airtight")),
  }),
  test({ tyre, construction, tube, valve, kind, forbids, tape, airtight }, { wheel }) {
    if (construction.value === "airless" || construction.value === "tubular") {
      return notApplicable(`${tyre.subject} needs no separate tube`);
    }
    if (kind.state === "known" && isGlued(kind.value)) {
      return notApplicable(`${kind.subject} is for tubulars, which is found as such`);
    }
    if (tube.state === "known") return notApplicable(`${tube.subject} holds the air`);
    if (tube.state === "unknown") return cannotTell(tube);
    const path = (name: "tube" | "tyre" | "rim" | "valve" | "rim-tape") => ofWheel(wheel, name);
    const withTube: Repair = { kind: "insert-part", slot: path("tube") };
    if (construction.value === "tube") {
      return fails(
        `${tyre.subject} is made for a tube, and the build has none: it leaks through its sides, and its beads are not made to seal. Fit a tube, or a tyre for use without one.`,
        tyre,
        [construction],
        [withTube, ...swaps(path("tyre"))],
      );
    }
    if (forbids.state === "known" && forbids.value.includes("tubeless-tyre")) {
      return fails(
        `The build has no tube, but the maker of ${forbids.subject} forbids a tyre without one: fit a tube, or another rim.`,
        tyre,
        [forbids],
        [withTube, ...swaps(path("rim"))],
      );
    }
    const tubeless = kind.state === "known" ? dimensionOf<boolean>(kind.value, "tubeless") : undefined;
    if (kind.state === "known" && tubeless === false) {
      return fails(
        `The build has no tube, but ${kind.subject} is ${showCode(kind.value)}, which is not made for that: fit a tube, or a rim for tyres without one.`,
        tyre,
        [kind],
        [withTube, ...swaps(path("rim"))],
        // Rims of before 2021 were marked C although many of them were made for it.
        { severity: "warning" },
      );
    }
    if (airtight.state === "known" && !airtight.value) {
      return fails(
        `The build has no tube, but ${airtight.subject} does not seal the spoke holes: use airtight tape.`,
        tape.state === "known" ? tape : tyre,
        [airtight],
        swaps(path("rim-tape")),
      );
    }
    if (valve.state === "none") {
      return fails(
        `The build has neither a tube nor a tubeless valve for ${tyre.subject}: add a valve, or a tube.`,
        tyre,
        [],
        [{ kind: "insert-part", slot: path("valve") }, withTube],
      );
    }
    if (kind.state === "known" && tubeless === undefined) return cannotTell(lacksDimension(kind.value, "tubeless"));
    const unknown = unknowns(valve, kind, forbids, tape, airtight);
    if (unknown.length > 0) return cannotTell(...unknown);
    const sealed = tape.state === "known" ? `${tape.subject} is airtight` : "the rim has no holes inside";
    return holds(`${tyre.subject} goes without a tube, its rim is made for that, and ${sealed}.`);
  },
  explanation:
    "Without a tube the tyre itself, the seat of the rim, the tape over the spoke holes and a valve with a nut hold the air. " +
    "A tyre made for a tube leaks through its casing, and its beads stretch so that they come off. Rims for it have seats " +
    "that hold the bead when the air is gone. Cloth tape lets air through. Sealant closes small holes and is renewed as " +
    "its maker says. Rims from before 2021 may be marked as plain hooked ones and still be made for it: their maker says so.",
  source: "common practice, no source; tubeless kinds of rim: Wikipedia, ISO 5775 (2021 edition)",
  caution: "A tyre that loses its air at once, or comes off its seat, throws the rider.",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { construction: tubeless-ready }
part rim example.rim "Rim" { rim-kind: tubeless-crotchet }
part valve example.valve "Valve" { valve-kind: presta }
part rim-tape example.tape "Tape" { airtight: yes }

build example "Sealed" {
  front-wheel { tyre: example.tyre; rim: example.rim; valve: example.valve; rim-tape: example.tape }
  rear-wheel.tyre: none
}
`,
    fails: `
part tyre example.tyre "Tyre" { construction: tube }
part rim example.rim "Rim" { rim-kind: tubeless-crotchet }
part valve example.valve "Valve" { valve-kind: presta }
part rim-tape example.tape "Tape" { airtight: yes }

build example "A tyre for a tube, without one" {
  front-wheel { tyre: example.tyre; rim: example.rim; valve: example.valve; rim-tape: example.tape }
  rear-wheel.tyre: none
}
`,
  },
});
