import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, type Need, optional, slot, type Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, lacksDimension } from "../shared/codes.ts";
import { bandTolerance, clampForm } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Parts round the bar; `middle` for those that may also sit on its thick middle beside the stem. */
const places = [
  { slot: "rear-brake.lever", field: "mount", middle: false },
  { slot: "front-brake.lever", field: "mount", middle: false },
  { slot: "drivetrain.rear-controller", field: "mount", middle: true },
  { slot: "drivetrain.front-controller", field: "mount", middle: true },
  { slot: "seat.remote", field: "mount", middle: true },
  { slot: "cockpit.remote", field: "mount", middle: true },
  { slot: "lighting.bell", field: "mount", middle: true },
  { slot: "cockpit.grips", field: "inside-diameter", middle: false },
] as const;

type Place = (typeof places)[number];

type PlaceNeeds = Record<`part ${Place["slot"]}`, Need<Installed, true>> &
  Record<`own ${Place["slot"]}`, Need<ResolvedCode | number, true>> &
  Record<`clamp ${Place["slot"]}`, Need<string, true>>;

type PlaceFacts = {
  readonly [K in keyof PlaceNeeds]: PlaceNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

const placeNeeds = Object.fromEntries(
  places.flatMap(({ slot: path, field }) => [
    [`part ${path}`, anySlot(path)],
    [`own ${path}`, anyFact(path, field)],
    [`clamp ${path}`, anySetting(path, "clamp")],
  ]),
) as unknown as PlaceNeeds;

/** A part that clamps the bar, and the diameter it is for. */
interface Clamping {
  readonly place: Place;
  readonly part: Known<Installed>;
  readonly fact: Known;
  readonly fits: number;
}

export default defineCheck({
  code: "cockpit/control-diameter",
  title: "Levers, controls and grips fit the diameter of the bar",
  severity: "error",
  since: 1,
  needs: () => ({
    ...placeNeeds,
    bar: slot("cockpit.handlebar"),
    diameter: fact("cockpit.handlebar", "control-diameter"),
    middleDiameter: optional(fact("cockpit.handlebar", "clamp-diameter")),
  }),
  test({ bar, diameter, middleDiameter, ...rest }) {
    const unknown: Unknown[] = [];
    const wrong: Clamping[] = [];
    const right: Clamping[] = [];
    for (const place of places) {
      const found = clamping(rest as unknown as PlaceFacts, place);
      if (found === undefined) continue;
      if ("missing" in found) unknown.push(found);
      else if (atMost(Math.abs(found.fits - diameter.value), bandTolerance)) right.push(found);
      else if (place.middle && middleDiameter.state === "unknown") unknown.push(middleDiameter);
      else if (
        place.middle &&
        middleDiameter.state === "known" &&
        atMost(Math.abs(found.fits - middleDiameter.value), bandTolerance)
      ) {
        right.push(found);
      } else wrong.push(found);
    }
    const is = showQuantity(diameter.value, "length");
    const [first, ...others] = wrong;
    if (first) {
      const list = both(
        wrong.map(
          ({ part, place, fits }) =>
            `${part.subject} (${place.slot}) is for ${showPair(fits, diameter.value, "length")[0]}`,
        ),
      );
      // One part too many is exchanged by itself; where several agree with each other, the bar is the odd one out.
      const several = others.length > 0;
      return fails(
        `${list}, but ${bar.subject} is ${showPair(first.fits, diameter.value, "length")[1]} where controls go: fit ${several ? "a bar for them, or parts" : first.place.field === "mount" ? "a control with a band" : "grips"} for ${is}${several ? "" : ", or another bar"}.`,
        several ? bar : first.part,
        [...wrong.map((one) => one.fact), diameter],
        several
          ? swaps("cockpit.handlebar", ...wrong.map(({ place }) => place.slot))
          : swaps(first.place.slot, "cockpit.handlebar"),
      );
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    if (right.length === 0) return notApplicable("nothing is clamped round the bar");
    return holds(
      `${both(right.map(({ part }) => part.subject))} fit ${bar.subject}, which is ${is} where controls go.`,
    );
  },
  explanation:
    "Flat bars are 22.2 mm thick where hands and controls go, and drop bars 23.8 mm. A band for the thicker bar cannot be " +
    "tightened on the thinner one, and the other way round it has to be bent open and cracks, or scores the bar so that " +
    "it breaks later. Shims for this exist only where the control's maker supplies them. Bells and remotes may also sit " +
    "on the thick middle beside the stem, if their band fits there. A control that shares a lever's clamp is asked about " +
    "with that clamp.",
  source: "trade glossaries for 22.2 and 23.8 mm; common practice, no source",
  caution: "A brake lever that turns on the bar cannot be relied on; a bar scored by a clamp breaks without warning.",
  examples: {
    holds: `
part handlebar example.flat "Flat 760" { control-diameter: 22.2 mm }
part brake-lever example.stop "Stop" { mount: band-22.2 }

build example "A lever on a flat bar" {
  cockpit { handlebar: example.flat; grips: none }
  rear-brake.lever: example.stop { side: right }
  front-brake.lever: example.stop { side: left }
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: none
}
`,
    fails: `
part handlebar example.drop "Drop 42" { control-diameter: 23.8 mm; clamp-diameter: 31.8 mm }
part brake-lever example.stop "Stop" { mount: band-22.2 }

build example "A flat-bar lever on a drop bar" {
  cockpit.handlebar: example.drop
  rear-brake.lever: example.stop { side: right }
}
`,
  },
});

/** What a place on the bar asks of it; undefined when it asks nothing. */
function clamping(facts: PlaceFacts, place: Place): Clamping | Unknown | undefined {
  const end = readEnd(facts[`part ${place.slot}`], facts[`own ${place.slot}`], place.field);
  if (end.state === "unknown") return end.unknown;
  if (end.state !== "known") return undefined;
  const clamp = facts[`clamp ${place.slot}`];
  if (clamp.state === "unknown") return clamp;
  if (clamp.state === "known") return undefined;
  const { value } = end.fact;
  if (typeof value === "number") return { place, part: end.part, fact: end.fact, fits: value };
  const form = clampForm(value);
  if (form === undefined) return lacksDimension(value, "form");
  if (form !== "band") return undefined;
  const band = dimensionOf<number>(value, "diameter");
  return band === undefined ? lacksDimension(value, "diameter") : { place, part: end.part, fact: end.fact, fits: band };
}
