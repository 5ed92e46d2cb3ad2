import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { anyFact, anySetting } from "../../checks/shared/end.ts";
import { unknowns } from "../../checks/shared/unknowns.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { usualTolerance } from "../../vocabulary/index.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin } from "../tolerance.ts";

const tolerance = usualTolerance("pressure");

export default defineComparison({
  code: "record/air-pressure",
  title: "The air spring is inflated within its limit, and as it was specified",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: [
    { name: "fork", slot: "fork", path: "fork.air-pressure" },
    { name: "rear shock", slot: "rear-shock", path: "rear-shock.air-pressure" },
  ],
  needs: ({ slot }): { readonly aim: Need<number, true>; readonly most: Need<number, true> } => ({
    aim: anySetting(slot, "air-pressure"),
    most: anyFact(slot, "greatest-air-pressure"),
  }),
  test(measured: Known<number>, facts, { name }) {
    const { aim, most } = facts as { readonly aim: Maybe<number>; readonly most: Maybe<number> };
    const expected = aim.state === "known" ? showQuantity(aim.value, "pressure") : undefined;
    if (most.state === "known" && !atMost(measured.value, most.value)) {
      const [is, bears] = showPair(measured.value, most.value, "pressure");
      return judged(
        fails(
          `The air spring of the ${name} holds ${is}, but ${most.subject} bears ${bears} at most: let air out with a shock pump.`,
          measured,
          [most],
        ),
        expected,
      );
    }
    if (aim.state === "known" && !isWithin(tolerance, measured.value, aim.value)) {
      const [is, wanted] = showPair(measured.value, aim.value, "pressure");
      return judged(
        fails(
          `The air spring of the ${name} holds ${is}, and the build states ${wanted}: set it anew by its sag, or write the rider's own pressure into the build.`,
          measured,
          [aim],
          [],
          { severity: "warning", caution: "" },
        ),
        expected,
      );
    }
    const unknown = unknowns(aim, most);
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    if (aim.state !== "known" && most.state !== "known") {
      return judged(notApplicable(`nothing states a pressure for the ${name}`));
    }
    const is = showQuantity(measured.value, "pressure");
    const stated = expected === undefined ? "" : `, and the build states ${expected}`;
    const bears =
      most.state === "known" ? `; ${most.subject} bears ${showPair(most.value, measured.value, "pressure")[0]}` : "";
    return judged(
      holds(
        `The air spring of the ${name} holds ${is}${stated}${bears}.`,
        most.state === "known" ? (most.value - measured.value) / most.value : undefined,
      ),
      expected,
    );
  },
  explanation:
    "An air spring is set by its sag, and its pressure is written down so that it can be found again. Above the greatest " +
    "pressure that its maker states, seals and the can itself give way. A shock pump loses some air when it is unscrewed, " +
    "so that the same pump reads a little less afterwards; a tenth of a bar or a twentieth of it is as near as pumps agree.",
  source: "the spring maker's own limit; 5 % from the aim: common practice, no source",
  caution: "An air spring is let down before anything of it is opened.",
  examples: {
    holds: `
part fork example.fork "Fork" { travel: 130 mm; greatest-air-pressure: 9 bar }

build example "Air" {
  fork: example.fork { air-pressure: 5.6 bar }
}

record "A-1" of example {
  fork.air-pressure: 5.5 bar
}
`,
    fails: `
part fork example.fork "Fork" { travel: 130 mm; greatest-air-pressure: 9 bar }

build example "Air" {
  fork: example.fork { air-pressure: 5.6 bar }
}

record "A-1" of example {
  fork.air-pressure: 9.6 bar
}
`,
  },
});
