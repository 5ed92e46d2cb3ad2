import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { isKind } from "../shared/kind.ts";
import { rearCount, rearCountNeeds } from "../shared/rear-count.ts";
import { swaps } from "../shared/swaps.ts";

/** Chains for five to eight speeds have one width over the pins, and their closure links too. */
const widest = 8;

/** Millimetres by which the published widths of a chain and of a link made for it differ at most. */
const tolerable = 0.25;

function alike(one: number, other: number): boolean {
  return Math.max(one, widest) === Math.max(other, widest);
}

export default defineCheck({
  code: "drivetrain/closure-link",
  title: "The closure link is there and made for the chain",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    closure: optional(fact("drivetrain.chain", "closure")),
    chainSpeeds: optional(fact("drivetrain.chain", "speeds")),
    chainFamily: optional(fact("drivetrain.chain", "drive-family")),
    link: optional(slot("drivetrain.closure-link")),
    linkSpeeds: optional(fact("drivetrain.closure-link", "speeds")),
    linkFamily: optional(fact("drivetrain.closure-link", "drive-family")),
    chainWidth: optional(fact("drivetrain.chain", "outer-width")),
    linkWidth: optional(fact("drivetrain.closure-link", "outer-width")),
    ...rearCountNeeds,
    cassetteFamily: optional(fact("drivetrain.cassette", "drive-family")),
  }),
  test(facts) {
    const { chain, closure, chainSpeeds, chainFamily, link, linkSpeeds, linkFamily, cassetteFamily } = facts;
    if (isKind(chain.value, "belt")) return notApplicable("a belt is one closed loop");
    if (link.state === "none") {
      if (closure.state === "unknown") return cannotTell(closure);
      if (closure.state === "known" && closure.value === "closure-link") {
        return fails(
          `${chain.subject} is closed by a closure link, but drivetrain.closure-link is none: nothing joins its ends. Add a closure link made for it.`,
          chain,
          [closure],
          [{ kind: "insert-part", slot: "drivetrain.closure-link" }],
        );
      }
      return notApplicable("the chain is closed without a closure link");
    }
    if (link.state === "unknown") return cannotTell(link);

    if (chainFamily.state === "known" && linkFamily.state === "known" && !mate(chainFamily.value, linkFamily.value)) {
      // Link and cogs agree, so the chain is the wrong one: one fault, found once.
      if (
        cassetteFamily.state === "known" &&
        mate(linkFamily.value, cassetteFamily.value) &&
        !mate(chainFamily.value, cassetteFamily.value)
      ) {
        return notApplicable(`${chain.subject} goes with neither the link nor the cogs, which is found as such`);
      }
      return fails(
        `${link.subject} closes chains of ${showCode(linkFamily.value)}, but ${chain.subject} is of ${showCode(chainFamily.value)}: fit the closure link made for this chain.`,
        link,
        [linkFamily, chainFamily],
        swaps("drivetrain.closure-link"),
      );
    }
    if (chainSpeeds.state === "known" && linkSpeeds.state === "known" && !alike(chainSpeeds.value, linkSpeeds.value)) {
      const count = rearCount(facts);
      if (count.state === "known" && count.value > 1 && alike(count.value, linkSpeeds.value)) {
        return notApplicable(
          `link and cogs are for ${linkSpeeds.value} speeds; that the chain is not is found as such`,
        );
      }
      const fault = linkSpeeds.value < chainSpeeds.value ? "too wide" : "too narrow";
      return fails(
        `${link.subject} closes chains for ${linkSpeeds.value} speeds, but ${chain.subject} is made for ${chainSpeeds.value}: it is ${fault} for it. Fit a closure link for ${chainSpeeds.value} speeds.`,
        link,
        [linkSpeeds, chainSpeeds],
        swaps("drivetrain.closure-link"),
      );
    }
    const { chainWidth, linkWidth } = facts;
    if (chainWidth.state === "known" && linkWidth.state === "known") {
      const apart = Math.abs(chainWidth.value - linkWidth.value);
      if (!atMost(apart, tolerable)) {
        const [of, has] = showPair(linkWidth.value, chainWidth.value, "length");
        const fault = linkWidth.value > chainWidth.value ? "too wide" : "too narrow";
        return fails(
          `${link.subject} is ${of} wide over its pins, but ${chain.subject} is ${has}: it is ${fault} for it. Fit the closure link made for this chain.`,
          link,
          [linkWidth, chainWidth],
          swaps("drivetrain.closure-link"),
        );
      }
    }
    const unknown = [chainFamily, linkFamily, chainSpeeds, linkSpeeds].filter((one) => one.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(`${link.subject} closes chains like ${chain.subject}.`);
  },
  explanation:
    "A closure link is two outer plates with a pin each, and it has to be as wide as the chain it closes and of the same " +
    "family. Too wide, its pins rub on the next cog and the plates spread; too narrow, it does not seat, or binds and is " +
    "bent open. Either way it parts under load, when the rider stands on the pedals. A chain whose maker closes it with " +
    "such a link has to have one in the build; one that is pinned, or comes with a spring clip, has none. Widths for " +
    "five to eight speeds are one.",
  source: "common practice, no source; the chain maker says which closure link belongs to it",
  caution:
    "A closure link that opens under load throws the rider. It is seated by loading the pedal with the rear brake held, and both halves are looked at before anyone rides; the chain maker's instructions come first.",
  examples: {
    holds: `
part chain example.chain "Chain" { speeds: 10; drive-family: 10-speed; closure: closure-link }
part closure-link example.link "Link for ten" { speeds: 10; drive-family: 10-speed }

build example "Link of the chain's width" {
  drivetrain {
    chain: example.chain
    closure-link: example.link
  }
}
`,
    fails: `
part chain example.chain "Chain" { speeds: 10; drive-family: 10-speed; closure: closure-link }
part closure-link example.link "Link for nine" { speeds: 9; drive-family: 9-speed }

build example "Link for a wider chain" {
  drivetrain {
    chain: example.chain
    closure-link: example.link
  }
}
`,
  },
});
