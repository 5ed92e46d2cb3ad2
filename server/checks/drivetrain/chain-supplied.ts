import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/chain-supplied",
  title: "The chain as sold is long enough for the cut",
  severity: "error",
  since: 1,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    supplied: fact("drivetrain.chain", "links-supplied"),
    links: optional(setting("drivetrain.chain", "links")),
    needed: optional(worked<number>("drivetrain.chain-links-needed")),
    closureLink: optional(slot("drivetrain.closure-link")),
    closure: optional(fact("drivetrain.chain", "closure")),
  }),
  test({ chain, supplied, links, needed, closureLink, closure }) {
    const wanted = links.state === "known" ? links : needed;
    if (wanted.state === "unknown") return cannotTell(...[links, needed].filter((one) => one.state === "unknown"));
    if (wanted.state === "none") {
      return links.state === "unknown" ? cannotTell(links) : notApplicable("no length is stated or worked out");
    }
    // A closure link, or the link of a spring clip, is one of the links and does not come off the strip.
    const own = closureLink.state === "known" || stated(closure) === "spring-clip";
    const open = !own && closureLink.state === "unknown";
    const strip = own ? wanted.value - 1 : wanted.value;
    const ends = own ? ` (${wanted.value} with the closure link)` : "";
    if (strip <= supplied.value) {
      return holds(
        `A strip of ${strip} links is cut${ends}, and ${supplied.subject} comes with ${supplied.value}.`,
        (supplied.value - strip) / supplied.value,
      );
    }
    if (open && strip - 1 <= supplied.value) return cannotTell(closureLink);
    const extra = links.state === "known" && needed.state === "known" && needed.value < links.value;
    return fails(
      `A strip of ${strip} links is needed${ends}, but ${supplied.subject} comes with ${supplied.value}: ${strip - supplied.value} too few. Fit a chain sold longer or by the reel; pieces are joined only where the maker of the chain allows a second closure.`,
      chain,
      wanted === links ? [supplied, wanted] : [supplied],
      [
        ...swaps("drivetrain.chain"),
        ...(extra
          ? [{ kind: "set-setting", slot: "drivetrain.chain", setting: "links", value: String(needed.value) } as const]
          : []),
      ],
    );
  },
  explanation:
    "Chains come in fixed lengths, and a wide cassette on a long rear end can need more than the box holds. The strip " +
    "that is cut holds one link fewer than the finished chain when a closure link joins it, and as many when a pin does. " +
    "The length stated in the build counts, or the worked-out one where none is stated. A second " +
    "closure is a second weak place: pieces are joined only where the chain's maker allows it, as on bicycles longer than any " +
    "box holds, and never worn links with new ones.",
  source: "common practice, no source",
  examples: {
    holds: `
part chain example.chain "Chain" { links-supplied: 118; closure: closure-link }
part closure-link example.link "Link" { reusable: yes }

build example "Long enough with its closure link" {
  drivetrain {
    chain: example.chain { links: 118 }
    closure-link: example.link
  }
}
`,
    fails: `
part chain example.chain "Chain" { links-supplied: 114; closure: closure-link }
part closure-link example.link "Link" { reusable: yes }

build example "Two links short" {
  drivetrain {
    chain: example.chain { links: 118 }
    closure-link: example.link
  }
}
`,
  },
});
