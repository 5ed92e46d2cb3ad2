import { centreDistanceFor, chainLoop, evenAtLeast, reaches } from "../../calculations/shared/chain-geometry.ts";
import { showNumber } from "../../calculations/show.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, inside, isSingle } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings } from "../shared/fitted-rings.ts";
import { isKind } from "../shared/kind.ts";
import { either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/single-speed-tension",
  title: "The chain of a bike without a derailleur can be made taut",
  severity: "error",
  since: 1,
  needs: () => ({
    ...fittedRingNeeds,
    chain: slot("drivetrain.chain"),
    frame: slot("frame"),
    derailleur: optional(slot("drivetrain.rear-derailleur")),
    tensioner: optional(slot("drivetrain.chain-tensioner")),
    takesUp: optional(fact("drivetrain.chain-tensioner", "total-capacity")),
    links: optional(setting("drivetrain.chain", "links")),
    cogs: optional(fact("drivetrain.cassette", "cogs")),
    dropout: optional(fact("frame", "dropout")),
    chainstay: optional(fact("frame", "chainstay")),
    shortest: optional(worked<number>("drivetrain.single-speed-links-least")),
    longest: optional(worked<number>("drivetrain.single-speed-links-greatest")),
    lengths: optional(worked<readonly number[]>("drivetrain.tension-links")),
  }),
  test(facts) {
    const {
      chain,
      frame,
      derailleur,
      tensioner,
      takesUp,
      links,
      cogs,
      dropout,
      chainstay,
      shortest,
      longest,
      lengths,
    } = facts;
    if (isKind(chain.value, "belt")) return notApplicable("a belt drives the wheel");
    if (derailleur.state === "known") return notApplicable(`${derailleur.subject} takes up the slack`);
    const unknown = [derailleur, tensioner, chainstay, shortest, longest, lengths].filter(
      (one) => one.state === "unknown",
    );
    if (unknown.length > 0) return cannotTell(...unknown);
    const rings = fittedRings(facts);
    if (
      shortest.state !== "known" ||
      longest.state !== "known" ||
      lengths.state !== "known" ||
      chainstay.state !== "known" ||
      cogs.state !== "known" ||
      rings.state !== "known"
    ) {
      return notApplicable("there is not one ring and one cog with a chain between them");
    }
    const ring = rings.rings[0];
    const gear = `${ring.teeth} t with ${cogs.value.join("-")} t`;
    const others: readonly Known[] = [chainstay, ring.fact, cogs];

    if (tensioner.state === "known") {
      if (links.state === "unknown") return cannotTell(links);
      if (links.state === "none") return notApplicable("no chain is cut");
      if (!reaches(links.value, shortest.value)) {
        return fails(
          `The chain is cut to ${links.value} links, but ${gear} at ${showInterval(chainstay.value, "length")} takes at least ${showNumber(shortest.value, 2)} links round both: it does not reach. Cut a new one to ${evenAtLeast(longest.value)} links.`,
          links,
          others,
          [cut(evenAtLeast(longest.value))],
        );
      }
      const slack = 2 * (links.value - longest.value);
      if (takesUp.state === "known" && !atMost(slack, takesUp.value)) {
        const shorter = evenAtLeast(longest.value);
        const taken = 2 * (shorter - longest.value);
        // The shortest whole chain that reaches may itself hang farther than the arm takes up.
        const cutHelps = shorter < links.value && atMost(taken, takesUp.value);
        return fails(
          `The chain is cut to ${links.value} links, ${showNumber(links.value - longest.value, 2)} more than ${gear} takes, which is ${showNumber(slack, 1)} t of slack, but ${takesUp.subject} takes up ${takesUp.value} t: ${cutHelps ? `take out links, to ${shorter}` : `no shorter chain of whole links is taut enough, so fit a tensioner that takes up ${Math.ceil(slack)} t, or another ring or cog`}.`,
          links,
          [takesUp, ...others],
          cutHelps ? [cut(shorter)] : swaps("drivetrain.chain-tensioner"),
          { severity: "warning" },
        );
      }
      return holds(`${tensioner.subject} takes up the chain of ${links.value} links round ${gear}.`);
    }

    const reach = showInterval(chainstay.value, "length");
    const vertical = dropout.state === "known" && dropout.value === "vertical";
    if (vertical && !isSingle(chainstay.value)) {
      return fails(
        `Nothing makes the chain round ${gear} taut: the dropouts of ${frame.subject} are vertical and give the axle one place, whatever the chainstay of ${reach} says. Fit a chain tensioner, or a frame with sliding dropouts, track ends or an eccentric; or state the dropouts that it has.`,
        frame,
        [dropout, ...others],
        [{ kind: "insert-part", slot: "drivetrain.chain-tensioner" }, ...swaps("frame")],
      );
    }
    const mends: Repair[] = [
      ...swaps("drivetrain.cassette", ring.slot),
      { kind: "insert-part", slot: "drivetrain.chain-tensioner" },
    ];
    if (links.state !== "known") {
      if (lengths.value.length > 0) {
        // Some length will do; whether the one that is cut will is not known until it is stated.
        if (links.state === "unknown") return cannotTell(links);
        return holds(
          `Round ${gear}, ${either(lengths.value.map((length) => `${length} links`))} can be made taut with ${reach} of chainstay.`,
        );
      }
      return fails(
        `No whole chain length round ${gear} is taut with ${reach} of chainstay, which takes ${span(shortest.value, longest.value)} links${vertical ? ", and the dropouts are vertical" : ""}: fit another ring or cog, or a chain tensioner.`,
        frame,
        [...others, ...(dropout.state === "known" ? [dropout] : [])],
        mends,
      );
    }
    const taut = centreDistanceFor(chainLoop(ring.teeth, cogs.value[0] ?? 1), links.value);
    if (taut !== undefined && inside(taut, chainstay.value)) {
      return holds(
        `${links.value} links round ${gear} are taut with a chainstay of ${showQuantity(taut, "length")}, and it can be set to ${reach}.`,
        (chainstay.value.greatest - taut) / chainstay.value.greatest,
      );
    }
    const nearest = [...lengths.value].sort((a, b) => Math.abs(a - links.value) - Math.abs(b - links.value))[0];
    const needs =
      taut === undefined ? "do not reach round both" : `are taut with a chainstay of ${showQuantity(taut, "length")}`;
    const remedy =
      nearest === undefined ? "fit another ring or cog, or a chain tensioner" : `cut it to ${nearest} links`;
    return fails(
      `${links.value} links round ${gear} ${needs}, but the chainstay of ${frame.subject} can be set to ${reach} only${vertical ? ", because its dropouts are vertical" : ""}: ${remedy}.`,
      links,
      [...others, ...(dropout.state === "known" ? [dropout] : [])],
      nearest === undefined ? mends : [cut(nearest), ...mends],
    );
  },
  explanation:
    "Without a derailleur nothing swings to take up slack: the rear axle slides, or the cranks move in an eccentric, until " +
    "the chain is taut. But a chain changes length by two links at a time, or by one with a half link, and two links are " +
    "about 12.7 mm of axle movement. So one of the whole lengths has to fall inside the adjustment. With vertical dropouts " +
    "and no eccentric hardly any ring and cog do that, and a tensioner is needed; then the chain has to reach, and not " +
    "hang farther than the arm takes up. A slack chain comes off, and on a fixed wheel or coaster brake takes the brake " +
    "with it.",
  source: "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived",
  caution: "A chain that comes off a fixed wheel or a coaster brake takes the brake with it.",
  examples: {
    holds: `
part frame example.frame "Frame" { chainstay: 405 to 425 mm; dropout: track-end }
part crankset example.crank "Crank" { rings: 46 t }
part sprocket example.cog "Cog 17" { cogs: 17 t }
part chain example.chain "Chain" { links-supplied: 112 }

build example "The axle slides far enough" {
  frame: example.frame
  drivetrain {
    rear-derailleur: none
    crankset: example.crank
    cassette: example.cog
    chain: example.chain { links: 98 }
    closure-link: none
  }
}
`,
    fails: `
part frame example.frame "Frame" { chainstay: 405 to 409 mm; dropout: sliding }
part crankset example.crank "Crank" { rings: 46 t }
part sprocket example.cog "Cog 17" { cogs: 17 t }
part chain example.chain "Chain" { links-supplied: 112 }

build example "A chain two links too long for the slots" {
  frame: example.frame
  drivetrain {
    rear-derailleur: none
    crankset: example.crank
    cassette: example.cog
    chain: example.chain { links: 100 }
    closure-link: none
  }
}
`,
  },
});

function cut(value: number): Repair {
  return { kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: String(value) };
}

function span(least: number, greatest: number): string {
  const [from, to] = [showNumber(least, 2), showNumber(greatest, 2)];
  return from === to ? from : `${from} to ${to}`;
}
