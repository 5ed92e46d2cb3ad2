import { tyreSize } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { buildField, fact, type Known, type Maybe, type Need, optional, slot, worked } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { roomFor } from "../shared/tyre-room.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, wheelPlaces } from "../shared/wheel-places.ts";

/** How far a width worked out from the label may pass a limit before it means anything. */
const fromLabel = 0.5;

const mudguards = { front: "carrying.front-mudguard", rear: "carrying.rear-mudguard" } as const;

/** Facts that only a frame has; a fork answers that it has none. */
function ofFrame(holder: "fork" | "frame", field: "stay-gap" | "widest-tyre-with-mudguard"): Need<number, true> {
  return anyFact(holder, field);
}

export default defineCheck({
  code: "wheel/tyre-clearance",
  title: "The tyre clears fork, frame and mudguards",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    tyre: slot(ofWheel(place.wheel, "tyre")),
    size: fact(ofWheel(place.wheel, "tyre"), "size"),
    measured: optional(fact(ofWheel(place.wheel, "tyre"), "measured-width")),
    width: optional(worked<number>(`${place.wheel}.tyre-width-on-rim`)),
    radius: optional(worked<number>(`${place.wheel}.wheel-radius`)),
    holder: slot(place.holder),
    widest: anyHolderFact<number>(place, "widestTyre"),
    tallest: anyHolderFact<number>(place, "tallestTyre"),
    gap: ofFrame(place.holder, "stay-gap"),
    guard: anySlot(mudguards[place.name]),
    underGuard: optional(fact(mudguards[place.name], "widest-tyre")),
    withGuard: ofFrame(place.holder, "widest-tyre-with-mudguard"),
    asked: optional(buildField("ground.mud-allowance")),
    category: optional(buildField("category")),
  }),
  test(facts, place) {
    const { tyre, size, measured, width, radius, widest, tallest, gap, guard, asked, category } = facts;
    if (width.state === "none") return notApplicable("no width can be worked out for this tyre and rim");
    const estimated = measured.state !== "known";
    const guarded = guard.state === "known";

    // A maker's widest tyre counts its own allowance in; only a bare gap needs one added.
    const room = asked.state === "known" ? asked.value : roomFor(category);
    const byGap = gap.state === "known" && (asked.state === "known" || widest.state !== "known");
    const limits: Limit[] = [
      ...limitOf(widest, "takes tyres of", place.holder),
      ...(guarded ? limitOf(facts.underGuard, "covers tyres of", mudguards[place.name]) : []),
      ...(guarded ? limitOf(facts.withGuard, "with a mudguard takes tyres of", place.holder) : []),
      ...(byGap && room !== undefined
        ? [{ known: gap, most: gap.value - 2 * room, says: gapWords(gap, room), holder: place.holder, soft: true }]
        : []),
    ];
    if (width.state === "known") {
      const passed = limits.filter(({ most }) => greaterThan(width.value, most + (estimated ? fromLabel : 0)));
      const hard = passed.filter(({ most, soft }) => !soft || greaterThan(width.value, most + 2 * (room ?? 0)));
      if (passed.length > 0) {
        const [is] = showPair(width.value, Math.min(...passed.map(({ most }) => most)), "length", { digits: 1 });
        const label = tyreSize(size.value)?.width;
        const labelFits = estimated && label !== undefined && passed.every(({ most }) => !greaterThan(label, most));
        return fails(
          `${tyre.subject} ${estimated ? "comes to" : "measures"} ${is} on its rim, but ${both(passed.map(({ says }) => says))} at most: fit a narrower tyre${labelFits ? ", or measure it on that rim and state measured-width" : ""}.`,
          tyre,
          [width, ...passed.map(({ known }) => known)],
          swaps(ofWheel(place.wheel, "tyre"), ...passed.map(({ holder }) => holder)),
          hard.length === 0 || labelFits ? { severity: "warning" } : {},
        );
      }
    }
    if (radius.state === "known" && tallest.state === "known" && greaterThan(radius.value, tallest.value)) {
      const [is, most] = showPair(radius.value, tallest.value, "length", { digits: 1 });
      return fails(
        `${tyre.subject} stands ${is} from the axle, but ${tallest.subject} clears ${most} at most: fit a lower tyre.`,
        tyre,
        [radius, tallest],
        swaps(ofWheel(place.wheel, "tyre"), place.holder),
      );
    }
    const unknown = unknowns(
      width,
      ...(byGap ? [] : [widest]),
      // How tall a tyre is matters only where somebody says how tall it may be.
      ...(tallest.state === "known" ? [radius] : []),
      guard,
      ...(guarded ? [facts.underGuard, facts.withGuard] : []),
      ...(byGap && room === undefined ? [category] : []),
    );
    if (unknown.length > 0) return cannotTell(...unknown);
    const [least] = [...limits].sort((a, b) => a.most - b.most);
    if (!least || width.state !== "known") return notApplicable("nothing limits the tyre there");
    const [is] = showPair(width.value, least.most, "length", { digits: 1 });
    return holds(
      `${tyre.subject} ${estimated ? "comes to" : "measures"} ${is} on its rim, and ${both(limits.map(({ says }) => says))}.`,
      Math.max(0, (least.most - width.value) / least.most),
    );
  },
  explanation:
    "A tyre needs room at both sides and above for mud and stones, for a wheel that runs a little out of true, and for a " +
    "frame that flexes. What counts is its width on the rim that it is fitted to: the same tyre measures more on a wider " +
    "rim, and some measure more than their label. The widest tyre that a fork's or frame's maker allows has that room " +
    "counted in; where only the gap between the stays is known, 4 mm a side are kept for racing and 6 mm for other uses, " +
    "or what the build asks for. Mudguards take their own room. A sprung fork's arch comes down to the tyre when it is " +
    "fully compressed.",
  source:
    "makers' limits; 4 mm for racing bicycles: EN 14781 as quoted in a forum; 6 mm for other bicycles: from memory; width on the rim by membrane geometry",
  caution: "A tyre that jams in the fork stops the front wheel dead.",
  examples: {
    holds: `
part fork example.fork "Fork" { widest-tyre: 57 mm }
part rim example.rim "Rim" { inner-width: 25 mm }
part tyre example.tyre "Tyre" { size: 54-584; measured-width: 53 mm; measured-on-rim: 25 mm }

build example "Room in the fork" {
  fork: example.fork
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel.tyre: none
}
`,
    fails: `
part fork example.fork "Fork" { widest-tyre: 57 mm }
part rim example.rim "Rim" { inner-width: 35 mm }
part tyre example.tyre "Tyre" { size: 57-584; measured-width: 56 mm; measured-on-rim: 25 mm }

build example "Wider on a wider rim" {
  fork: example.fork
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel.tyre: none
}
`,
  },
});

interface Limit {
  readonly known: Known<number>;
  /** Greatest width of the tyre, in millimetres. */
  readonly most: number;
  /** For a sentence, with its figure: "Fork takes tyres of 57 mm". */
  readonly says: string;
  readonly holder: SlotPath;
  /** Passed, it takes room that is kept free, and the tyre may still turn. */
  readonly soft?: boolean;
}

function limitOf(known: Maybe<number>, verb: string, holder: SlotPath): readonly Limit[] {
  if (known.state !== "known") return [];
  return [
    { known, most: known.value, says: `${known.subject} ${verb} ${showQuantity(known.value, "length")}`, holder },
  ];
}

function gapWords(gap: Known<number>, room: number): string {
  return `${gap.subject} has ${showQuantity(gap.value, "length")} between its stays and so, with ${showQuantity(room, "length")} kept free at either side, room for ${showQuantity(gap.value - 2 * room, "length")}`;
}
