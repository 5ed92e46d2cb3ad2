import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/rotor-limit",
  title: "The rotor is of a size that fork or frame and caliper allow",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    rotor: slot(ofBrake(place.brake, "rotor")),
    diameter: fact(ofBrake(place.brake, "rotor"), "diameter"),
    largest: anyHolderFact<number>(place, "largestRotor"),
    least: anyHolderFact<number>(place, "leastRotor"),
    largestOfCaliper: optional(fact(ofBrake(place.brake, "caliper"), "largest-rotor")),
    smallestOfCaliper: optional(fact(ofBrake(place.brake, "caliper"), "smallest-rotor")),
  }),
  test({ rotor, diameter, largest, least, largestOfCaliper, smallestOfCaliper }, { brake, holder }) {
    const limits: readonly Limit[] = [
      ...limitOf(largest, "most", holder),
      ...limitOf(least, "least", holder),
      ...limitOf(largestOfCaliper, "most", ofBrake(brake, "caliper")),
      ...limitOf(smallestOfCaliper, "least", ofBrake(brake, "caliper")),
    ];
    const passed = limits.filter(({ known, which }) =>
      which === "most" ? greaterThan(diameter.value, known.value) : lessThan(diameter.value, known.value),
    );
    if (passed.length > 0) {
      const said = passed.map(
        ({ known, which }) =>
          `${known.subject} allows ${showPair(known.value, diameter.value, "length")[0]} at ${which}`,
      );
      return fails(
        `${rotor.subject} is ${showPair(diameter.value, passed[0]?.known.value ?? 0, "length")[0]} across, but ${both(said)}: fit a rotor within that.`,
        rotor,
        [diameter, ...passed.map(({ known }) => known)],
        swaps(ofBrake(brake, "rotor"), ...passed.map(({ slot: path }) => path)),
      );
    }
    const unknown = unknowns(largest, least, largestOfCaliper, smallestOfCaliper);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (limits.length === 0) return notApplicable("nothing limits the rotor");
    const room = limits
      .filter(({ which }) => which === "most")
      .map(({ known }) => (known.value - diameter.value) / known.value);
    return holds(
      `${rotor.subject} is ${showQuantity(diameter.value, "length")} across; ${both([...spans(limits)].map(([subject, span]) => `${subject} allows ${showInterval(span, "length")}`))}.`,
      room.length > 0 ? Math.min(...room) : undefined,
    );
  },
  explanation:
    "A larger rotor brakes harder and twists the fork leg or the stay more. Makers name the largest that theirs bears, and a " +
    "larger one may break it or void the guarantee. A rotor below the least that they name is not reached by the caliper on " +
    "the mount, or hits the frame with its carrier. Calipers name their own span: a large rotor meets the caliper's body, " +
    "and a small one leaves part of the pads beside it.",
  source: "the makers' own limits; common practice, no source",
  caution: "A fork or stay overloaded by too large a rotor can break under hard braking.",
  examples: {
    holds: `
part fork example.fork "Fork" { largest-rotor: 185 mm; least-rotor: 165 mm }
part caliper example.caliper "Caliper" { largest-rotor: 205 mm; smallest-rotor: 140 mm }
part rotor example.rotor "Rotor 185" { diameter: 185 mm }

build example "As large as the fork allows" {
  fork: example.fork
  front-brake { caliper: example.caliper; rotor: example.rotor }
  rear-brake.rotor: none
}
`,
    fails: `
part fork example.fork "Fork" { largest-rotor: 185 mm; least-rotor: 165 mm }
part caliper example.caliper "Caliper" { largest-rotor: 205 mm; smallest-rotor: 140 mm }
part rotor example.rotor "Rotor 205" { diameter: 205 mm }

build example "Larger than the fork bears" {
  fork: example.fork
  front-brake { caliper: example.caliper; rotor: example.rotor }
  rear-brake.rotor: none
}
`,
  },
});

interface Limit {
  readonly known: Known<number>;
  readonly which: "most" | "least";
  readonly slot: SlotPath;
}

function limitOf(maybe: Maybe<number>, which: Limit["which"], slot: SlotPath): readonly Limit[] {
  return maybe.state === "known" ? [{ known: maybe, which, slot }] : [];
}

/** The sizes that each part allows, by its name. */
function spans(limits: readonly Limit[]): ReadonlyMap<string, Interval> {
  const bySubject = new Map<string, Interval>();
  for (const { known, which } of limits) {
    const open = bySubject.get(known.subject) ?? {
      least: Number.NEGATIVE_INFINITY,
      greatest: Number.POSITIVE_INFINITY,
    };
    bySubject.set(
      known.subject,
      which === "least" ? { ...open, least: known.value } : { ...open, greatest: known.value },
    );
  }
  return bySubject;
}
