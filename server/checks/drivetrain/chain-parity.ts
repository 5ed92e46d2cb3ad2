import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/chain-parity",
  title: "The chain closes at its number of links",
  severity: "error",
  since: 1,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    links: optional(setting("drivetrain.chain", "links")),
    cranked: optional(fact("drivetrain.chain", "half-link")),
    halfLink: optional(fact("drivetrain.closure-link", "half-link")),
    derailleur: optional(slot("drivetrain.rear-derailleur")),
    needed: optional(worked<number>("drivetrain.chain-links-needed")),
  }),
  test({ chain, links, cranked, halfLink, derailleur, needed }) {
    if (isKind(chain.value, "belt")) return notApplicable("a belt is one closed loop");
    if (links.state === "unknown") return cannotTell(links);
    if (links.state === "none") return notApplicable("no chain is cut");
    const even = links.value % 2 === 0;
    if (cranked.state === "unknown") return cannotTell(cranked);
    if (cranked.state === "known" && cranked.value) {
      return holds(`Every link of ${chain.subject} is cranked, so it closes at ${links.value} links.`);
    }
    const withHalfLink = halfLink.state === "known" && halfLink.value;
    if (!even && halfLink.state === "unknown") return cannotTell(halfLink);

    const cut = (value: number) =>
      ({ kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: String(value) }) as const;
    if (even && withHalfLink) {
      return fails(
        `The chain is cut to ${links.value} links, an even number, but ${halfLink.subject} is a cranked half link, with which the number is odd. Cut it to ${links.value + 1} or ${links.value - 1} links, or close it with a whole link.`,
        links,
        [halfLink],
        [cut(links.value + 1), ...swaps("drivetrain.closure-link")],
      );
    }
    if (even) return holds(`The chain is cut to ${links.value} links, an even number, so inner and outer ends meet.`);

    // The worked-out length where it is next to this one; else the next longer, which can still be shortened.
    const near =
      needed.state === "known" && Math.abs(needed.value - links.value) === 1 ? needed.value : links.value + 1;
    if (!withHalfLink) {
      return fails(
        `The chain is cut to ${links.value} links, an odd number, so two inner or two outer ends meet and it cannot be closed: cut it to ${near} links, a closure link counted.`,
        links,
        [],
        // Which of the two the rest of the drivetrain takes is found when the repair is worked out.
        [cut(near), cut(2 * links.value - near)],
      );
    }
    if (derailleur.state === "unknown") return cannotTell(derailleur);
    if (derailleur.state === "none") {
      return holds(`The chain is cut to ${links.value} links, and a cranked half link closes it.`);
    }
    return fails(
      `The chain is cut to ${links.value} links and closed with a cranked half link, but ${derailleur.subject} is fitted: half links are for bikes without a derailleur. Cut it to ${near} links and close it with a whole link.`,
      links,
      [halfLink, derailleur],
      swaps("drivetrain.closure-link"),
    );
  },
  explanation:
    "Inner and outer links take turns, so a chain closes only where the total, with the closure link counted as one " +
    "outer link, is even. With a closure link the strip that is cut is therefore odd; with a joining pin it is even. A " +
    "cranked half link, inner at one end and outer at the other, makes an odd total close, and chains made of cranked " +
    "links close at any count. Half links stand wider than the rest and are for bikes without a derailleur only.",
  source:
    "even pitches unless a cranked link is used: machine-design textbooks on chain drives; the rest common practice, no source",
  caution: "A chain closed with ends that do not belong together parts under load.",
  examples: {
    holds: `
part chain example.chain "Chain" { links-supplied: 116; closure: pin }

build example "An even number" {
  drivetrain.chain: example.chain { links: 108 }
}
`,
    fails: `
part chain example.chain "Chain" { links-supplied: 116; closure: pin }

build example "An odd number" {
  drivetrain.chain: example.chain { links: 107 }
}
`,
  },
});
