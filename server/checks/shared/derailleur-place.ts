import type { Installed } from "../../model/assembly.ts";
import type { Repair } from "../../model/finding.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { cannotTell, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { showCode } from "./codes.ts";
import { anyFact, anySlot, type End, readEnd } from "./end.ts";
import { swaps } from "./swaps.ts";

/**
 * Where a rear derailleur, or a tensioner in its place, is held: on the eye of a replaceable hanger, on the frame's own
 * hanger, round the axle on the frame end that would take a hanger, or on an adapter that sits on one of these.
 */

type Hung = "drivetrain.rear-derailleur" | "drivetrain.chain-tensioner";
type Codes = Need<ResolvedCode, true>;

export type PlaceNeeds = {
  readonly hung: Need<Installed, true>;
  readonly mount: Codes;
  readonly hanger: Need<Installed, true>;
  readonly hangerOffers: Codes;
  readonly frame: Need<Installed, true>;
  readonly frameOffers: Codes;
  readonly seat: Codes;
  readonly adapter: Need<Installed, true>;
  readonly sitsOn: Codes;
  readonly adapterOffers: Codes;
};

export type PlaceFacts = {
  readonly [K in keyof PlaceNeeds]: PlaceNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

export function placeNeeds(path: Hung): PlaceNeeds {
  return {
    hung: anySlot(path),
    mount: anyFact(path, "mount"),
    hanger: anySlot("drivetrain.hanger"),
    hangerOffers: anyFact("drivetrain.hanger", "derailleur-mount"),
    frame: anySlot("frame"),
    frameOffers: anyFact("frame", "derailleur-mount"),
    seat: anyFact("frame", "hanger-seat"),
    adapter: anySlot("drivetrain.derailleur-adapter"),
    sitsOn: anyFact("drivetrain.derailleur-adapter", "sits-on"),
    adapterOffers: anyFact("drivetrain.derailleur-adapter", "offers"),
  };
}

/** What needs a place: the derailleur, or the adapter it is on. */
interface Sitter {
  readonly part: Known<Installed>;
  readonly code: Known<ResolvedCode>;
}

/** @param noun what hangs there, for a sentence: "derailleur". */
export function judgePlace(facts: PlaceFacts, path: Hung, noun: string): Verdict {
  const hung = readEnd(facts.hung, facts.mount, "mount");
  if (hung.state === "empty") return notApplicable(`${path} is none`);
  if (hung.state === "unknown") return cannotTell(hung.unknown);
  if (hung.state !== "known") return notApplicable(`${hung.part.subject} is not held by a hanger`);

  if (facts.adapter.state === "none") return onBase(facts, { part: hung.part, code: hung.fact }, path, noun);
  const offers = readEnd(facts.adapter, facts.adapterOffers, "offers");
  const sitsOn = readEnd(facts.adapter, facts.sitsOn, "sits-on");
  const lacking = [offers, sitsOn].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
  if (lacking.length > 0) return cannotTell(...lacking);
  if (offers.state !== "known" || sitsOn.state !== "known") {
    return notApplicable("the adapter neither sits on a mount nor offers one");
  }
  if (!mate(hung.fact.value, offers.fact.value)) {
    return fails(
      `${hung.part.subject} needs ${showCode(hung.fact.value)}, but the adapter ${offers.part.subject} offers ${showCode(offers.fact.value)}: fit an adapter that offers ${hung.fact.value.code}, or leave it out.`,
      offers.part,
      [hung.fact, offers.fact],
      [
        ...swaps("drivetrain.derailleur-adapter"),
        { kind: "leave-empty", slot: "drivetrain.derailleur-adapter" },
        ...swaps(path),
      ],
    );
  }
  return onBase(facts, { part: sitsOn.part, code: sitsOn.fact }, path, noun);
}

function onBase(facts: PlaceFacts, sitter: Sitter, path: Hung, noun: string): Verdict {
  // Whatever the hanger: on a frame that has neither a mount nor a seat for one, nothing can hang.
  const takesNothing =
    facts.frameOffers.state === "none" && facts.seat.state === "none" && facts.frame.state === "known";
  if (facts.hanger.state === "unknown" && !takesNothing) return cannotTell(facts.hanger);
  return facts.hanger.state === "known" ? onHanger(facts, sitter, path, noun) : onFrame(facts, sitter, path, noun);
}

function onHanger(facts: PlaceFacts, sitter: Sitter, path: Hung, noun: string): Verdict {
  const hanger = readEnd(facts.hanger, facts.hangerOffers, "derailleur-mount");
  const seat = readEnd(facts.frame, facts.seat, "hanger-seat");
  if (hanger.state === "known" && mate(sitter.code.value, hanger.fact.value)) {
    return holds(`${sitter.part.subject} goes on the ${showCode(hanger.fact.value)} of ${hanger.part.subject}.`);
  }
  if (seat.state === "known" && hanger.state !== "empty" && hanger.part && mate(sitter.code.value, seat.fact.value)) {
    return fails(
      `${sitter.part.subject} sits on the frame itself, ${showCode(sitter.code.value)}, in the place that the hanger ${hanger.part.subject} takes: leave the hanger out, or fit a ${noun} for it.`,
      hanger.part,
      [sitter.code, seat.fact],
      [{ kind: "leave-empty", slot: "drivetrain.hanger" }, ...swaps(path)],
    );
  }
  if (hanger.state === "unknown") return cannotTell(hanger.unknown);
  if (hanger.state === "empty" || hanger.state === "unasked") return notApplicable("there is no hanger");
  const offered = hanger.state === "known" ? showCode(hanger.fact.value) : "nothing for one";
  if (sitsOnFrame(sitter.code.value)) {
    return fails(
      `${sitter.part.subject} sits on the frame itself and needs ${showCode(sitter.code.value)} there, but the build hangs it on ${hanger.part.subject}, which offers ${offered}: fit another ${noun}, or a frame with that seat.`,
      sitter.part,
      [sitter.code, ...(hanger.state === "known" ? [hanger.fact] : []), ...(seat.state === "known" ? [seat.fact] : [])],
      [...swaps(path), ...swaps("frame")],
    );
  }
  return fails(
    `${sitter.part.subject} needs ${showCode(sitter.code.value)}, but the hanger ${hanger.part.subject} offers ${offered}: fit a hanger with ${sitter.code.value.code}, an adapter between them, or another ${noun}.`,
    hanger.part,
    [sitter.code, hanger.fact],
    [...swaps("drivetrain.hanger"), ...adapter(facts), ...swaps(path)],
  );
}

function onFrame(facts: PlaceFacts, sitter: Sitter, path: Hung, noun: string): Verdict {
  const own = readEnd(facts.frame, facts.frameOffers, "derailleur-mount");
  const seat = readEnd(facts.frame, facts.seat, "hanger-seat");
  const needs = `${sitter.part.subject} needs ${showCode(sitter.code.value)}`;
  if (own.state === "known" && mate(sitter.code.value, own.fact.value)) {
    return holds(`${sitter.part.subject} goes on the ${showCode(own.fact.value)} of the frame ${own.part.subject}.`);
  }
  if (seat.state === "known") {
    if (mate(sitter.code.value, seat.fact.value)) {
      return holds(
        `${sitter.part.subject} sits on the ${showCode(seat.fact.value)} of the frame ${seat.part.subject}, in place of a hanger.`,
      );
    }
    // A frame that takes a replaceable hanger offers an eye only by way of one, unless it says otherwise.
    if (own.state !== "known" && sitsOnFrame(sitter.code.value)) {
      return fails(
        `${needs} on the frame itself, but ${seat.part.subject} has ${showCode(seat.fact.value)} there: fit another ${noun} on a hanger for that seat, or a frame with the seat it needs.`,
        sitter.part,
        [sitter.code, seat.fact],
        [...swaps(path), ...swaps("frame")],
      );
    }
    if (own.state !== "known") {
      return fails(
        `${needs}, but no hanger is fitted, and ${seat.part.subject} has only the seat of one, ${showCode(seat.fact.value)}: fit a hanger with ${sitter.code.value.code} for that seat.`,
        sitter.part,
        [sitter.code, seat.fact],
        [{ kind: "insert-part", slot: "drivetrain.hanger" }, ...swaps(path)],
      );
    }
  }
  const lacking = [own, seat].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
  // The frame's own mount settles it by itself where it is stated; only without it does an unstated seat matter.
  if (own.state !== "known" && lacking.length > 0) return cannotTell(...lacking);
  if (own.state === "known") {
    return fails(
      `${needs}, but the frame ${own.part.subject} has ${showCode(own.fact.value)} of its own: fit an adapter that sits on it, or a ${noun} for ${own.fact.value.code}.`,
      sitter.part,
      [sitter.code, own.fact],
      [...adapter(facts), ...swaps(path)],
    );
  }
  if (own.state === "empty" || seat.state === "empty") return notApplicable("frame is none");
  const stated = [own, seat].flatMap((end: End<ResolvedCode>) => (end.state === "none" ? [end.fact] : []));
  return fails(
    `${needs}, but the frame has neither a mount of its own nor a seat for a hanger: it takes no ${noun}.`,
    sitter.part,
    [sitter.code, ...stated],
    [{ kind: "leave-empty", slot: path }, ...swaps("frame")],
  );
}

/** An adapter, unless there is one already. */
function adapter(facts: PlaceFacts): readonly Repair[] {
  return facts.adapter.state === "none"
    ? [{ kind: "insert-part", slot: "drivetrain.derailleur-adapter" }]
    : swaps("drivetrain.derailleur-adapter");
}

/** Whether a mount goes onto the frame end where others have a hanger: no hanger ever offers it. */
function sitsOnFrame({ standard }: ResolvedCode): boolean {
  return standard?.mates.some((mate) => mate.startsWith("hanger-seat/")) ?? false;
}
