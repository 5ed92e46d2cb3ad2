import { reaches } from "../../calculations/shared/chain-geometry.ts";
import { showNumber } from "../../calculations/show.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { optional, setting, worked } from "../../model/need.ts";
import { defineComparison, judged } from "../define.ts";

/** Half-inch pitches that practice adds at least for the derailleur, where its maker may say another figure. */
const leastByPractice = 2;

export default defineComparison({
  code: "record/chain-links",
  title: "The chain has the links that it was specified with, and not too few",
  severity: "warning",
  safety: true,
  restsOn: "spec",
  instances: [{ name: "", path: "drivetrain.chain.links" }],
  needs: () => ({
    stated: optional(setting("drivetrain.chain", "links")),
    exact: optional(worked<number>("drivetrain.chain-links-exact")),
    allowance: optional(worked<number>("drivetrain.chain-allowance")),
  }),
  test(measured: Known<number>, { stated, exact, allowance }) {
    const links = measured.value;
    const expected = stated.state === "known" ? `${stated.value} links` : undefined;
    if (exact.state === "known") {
      const added = Math.min(allowance.state === "known" ? allowance.value : leastByPractice, leastByPractice);
      const least = exact.value + added;
      if (!reaches(links, least)) {
        return judged(
          fails(
            `The chain has ${links} links, but largest ring and largest cog take ${showNumber(exact.value, 2)} round both, and ${added} at least for the derailleur make ${showNumber(least, 2)}: it is too short. Take it off and cut a new one; do not shift into that gear to try.`,
            measured,
            [stated, exact].filter((one) => one.state === "known"),
            [],
            { severity: "error" },
          ),
          expected,
        );
      }
    }
    if (stated.state === "unknown") return judged(cannotTell(stated));
    if (stated.state === "none") return judged(notApplicable("the build states no count of links"));
    const enough =
      exact.state === "known" ? ` It is long enough for ${showNumber(exact.value, 2)} round largest ring and cog.` : "";
    if (links === stated.value) {
      return judged(holds(`The chain has ${links} links, as the build states.${enough}`), expected);
    }
    const more = links > stated.value ? "more" : "fewer";
    return judged(
      fails(
        `The chain has ${links} links, and the build states ${stated.value}: ${Math.abs(links - stated.value)} ${more}.${enough} Count again, pin to pin with the closure link, or write down in the build why it differs.`,
        measured,
        [stated],
      ),
      expected,
    );
  },
  explanation:
    "The links of a chain are counted when it is fitted, the closure link as one. A chain of another count than the one " +
    "specified was cut for another bicycle, or counted wrongly. One that does not reach round the largest ring and the " +
    "largest cog with what the derailleur needs tears the drivetrain the first time somebody shifts there, which is an " +
    "error whatever the specification says.",
  source: "open-belt geometry; two pitches at least for the derailleur: common practice, no source",
  caution:
    "A chain too short for the largest ring with the largest cog tears the derailleur off and can lock the wheel. The derailleur and frame makers' own procedure comes first.",
  examples: {
    holds: `
part frame example.frame "Frame" { chainstay: 415 mm; rear-travel: none }
part crankset example.crank "Crank" { rings: 46-30 t }
part cassette example.cogs "11-36" { cogs: 11-13-15-17-19-21-24-28-32-36 t }
part rear-derailleur example.arm "Arm" { set-up: cable; chain-allowance-double: 2; total-capacity: 41 t }
part chain example.chain "Chain" { links-supplied: 116 }

build example "Double" {
  frame: example.frame
  drivetrain {
    crankset: example.crank
    cassette: example.cogs
    rear-derailleur: example.arm
    chain: example.chain { links: 110 }
  }
}

record "A-1" of example {
  drivetrain.chain.links: 110
}
`,
    fails: `
part chain example.chain "Chain" { links-supplied: 116 }

build example "Counted otherwise" {
  drivetrain.chain: example.chain { links: 110 }
  drivetrain.chainring: none
}

record "A-1" of example {
  drivetrain.chain.links: 112
}
`,
  },
});
