import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { isKind } from "../../checks/shared/kind.ts";
import { fact, type Known, optional, slot } from "../../model/need.ts";
import { lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { most, toleranceAt } from "../tolerance.ts";

const path = "drivetrain.chain-wear";
/** From how many speeds on a chain and its cogs are of the narrow sort. */
const narrowFrom = 11;

export default defineComparison({
  code: "record/chain-wear",
  title: "The chain is not worn out",
  severity: "warning",
  safety: true,
  restsOn: "spec",
  instances: [{ name: "", path }],
  needs: () => ({
    chain: slot("drivetrain.chain"),
    limit: optional(fact("drivetrain.chain", "wear-limit")),
    speeds: optional(fact("drivetrain.chain", "speeds")),
  }),
  test(measured: Known<number>, { chain, limit, speeds }) {
    const stated = limit.state === "known";
    if (isKind(chain.value, "belt")) return judged(notApplicable("a belt does not wear by lengthening"));
    if (!stated && speeds.state !== "known") {
      return judged(cannotTell(...[limit, speeds].flatMap((one) => (one.state === "unknown" ? [one] : []))));
    }
    const narrow = speeds.state === "known" && speeds.value >= narrowFrom;
    const bound = stated ? limit.value : most(toleranceAt(path, narrow ? "narrow" : "wide"));
    const [is, at] = showPair(measured.value, bound, "ratio");
    const who = stated
      ? `${limit.subject} is replaced at ${at}`
      : `a chain for ${speeds.state === "known" ? speeds.value : ""} speeds is replaced at ${at} by common practice, since its maker states no limit`;
    const expected = `less than ${at}`;
    if (lessThan(measured.value, bound))
      return judged(holds(`The chain is ${is} longer than when new; ${who}.`), expected);
    return judged(
      fails(
        `The chain is ${is} longer than when new, and ${who}: replace it with its closure link, and look at cogs and rings, which wear with it.`,
        measured,
        [stated ? limit : chain],
        [],
        stated ? { severity: "error" } : {},
      ),
      expected,
    );
  },
  explanation:
    "A chain lengthens as its pins and plates wear, and a longer one climbs the teeth and wears them to its own pitch. " +
    "Replaced in time it costs a chain; too late it costs cassette and rings as well. The maker's own limit counts; where " +
    "none is stated, practice is 0.5 % for eleven speeds and more and 0.75 % for fewer. Wear is measured over a foot or " +
    "more of taut chain, without the play of the rollers.",
  source: "the chain maker's own figure; 0.5 and 0.75 % by speeds: common practice, no source",
  caution: "A worn chain jumps or parts under load, and a rider who stands on the pedals falls.",
  examples: {
    holds: `
part chain example.chain "Chain" { speeds: 12; wear-limit: 0.5 % }

build example "Chain" {
  drivetrain.chain: example.chain
}

record "A-1" of example {
  drivetrain.chain-wear: 0.2 %
}
`,
    fails: `
part chain example.chain "Chain" { speeds: 9 }

build example "Chain" {
  drivetrain.chain: example.chain
}

record "A-1" of example {
  drivetrain.chain-wear: 0.8 %
}
`,
  },
});
