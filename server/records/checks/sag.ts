import { cannotTell, fails, holds } from "../../checks/define.ts";
import { anyFact, anySetting } from "../../checks/shared/end.ts";
import { unknowns } from "../../checks/shared/unknowns.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { usualTolerance } from "../../vocabulary/index.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin } from "../tolerance.ts";

const ends = [
  { name: "fork", slot: "fork", maker: "fork", path: "fork.sag", of: "travel", travels: "travel" },
  {
    name: "rear shock",
    slot: "rear-shock",
    maker: "frame",
    path: "rear-shock.sag",
    of: "stroke",
    travels: "rear-travel",
  },
] as const;

type SagNeeds = {
  readonly aim: Need<number, true>;
  /** The range of who decides: the fork's own maker, and for a rear shock the frame's. */
  readonly range: Need<Interval, true>;
  readonly own: Need<Interval, true>;
  /** How far it can go at all; `none` for a rigid fork. */
  readonly travel: Need<number, true>;
};

/** How far sag may lie from the aim; the same for every sag. */
const tolerance = usualTolerance("ratio");

export default defineComparison({
  code: "record/sag",
  title: "The suspension sags as far as its maker asks, and as it was specified",
  severity: "warning",
  restsOn: "spec",
  instances: ends,
  needs: ({ slot, maker, travels }): SagNeeds => ({
    aim: anySetting(slot, "sag"),
    range: anyFact(maker, "sag-range"),
    own: anyFact(slot, "sag-range"),
    travel: anyFact(maker, travels),
  }),
  test(measured: Known<number>, facts, { of, name, maker, travels }) {
    const { aim, range, own, travel } = facts as {
      readonly aim: Maybe<number>;
      readonly range: Maybe<Interval>;
      readonly own: Maybe<Interval>;
      readonly travel: Maybe<number>;
    };
    const decides = range.state === "known" ? range : own.state === "known" ? own : undefined;
    const is = showQuantity(measured.value, "ratio");
    const expected = decides ? showInterval(decides.value, "ratio") : undefined;
    if (travel.state === "none") {
      return judged(
        fails(
          `The ${name} is said to sag by ${is}, and the ${maker} of the build states ${travels}: none, so it is rigid: another ${maker} is fitted, or this was measured on another bicycle.`,
          measured,
          [],
        ),
        "no sag",
      );
    }
    if (decides && !inside(measured.value, decides.value)) {
      const deep = measured.value > decides.value.greatest;
      return judged(
        fails(
          `The ${name} sags by ${is} of its ${of}, and ${decides.subject} asks for ${expected}: ${deep ? "raise" : "lower"} the pressure, or fit a ${deep ? "stiffer" : "softer"} coil.`,
          measured,
          [decides],
        ),
        expected,
      );
    }
    if (aim.state === "known" && !isWithin(tolerance, measured.value, aim.value)) {
      const [sags, wanted] = showPair(measured.value, aim.value, "ratio");
      return judged(
        fails(
          `The ${name} sags by ${sags} of its ${of}, and the build aims at ${wanted}${decides ? `; ${decides.subject} allows ${expected}` : ""}: set it anew, or write the rider's wish into the build.`,
          measured,
          decides ? [aim, decides] : [aim],
          [],
          decides ? { severity: "information" } : {},
        ),
        wanted,
      );
    }
    const unknown = decides ? unknowns(aim) : unknowns(aim, range, own);
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    if (!decides && aim.state !== "known") {
      return judged({ outcome: "notApplicable", reason: "neither maker nor build states a sag" });
    }
    const asked = decides ? `; ${decides.subject} asks for ${expected}` : "";
    const aimed =
      aim.state === "known" ? `, and the build aims at ${showPair(aim.value, measured.value, "ratio")[0]}` : "";
    return judged(holds(`The ${name} sags by ${is} of its ${of}${asked}${aimed}.`), expected);
  },
  explanation:
    "Sag is measured with the rider on the bicycle in riding clothes, after the suspension was worked a few times. The " +
    "maker's range decides: the fork's for the front, and for the rear the frame's, whose leverage it is, else the " +
    "shock's. Inside that range the build's own aim is the rider's, and two points of a hundred are as near as a rule and " +
    "a ring read.",
  source: "the makers' own ranges; two points from the aim: common practice, no source",
  caution: "The greatest pressure of the spring is never exceeded to reach a sag.",
  examples: {
    holds: `
part fork example.fork "Fork" { travel: 130 mm; sag-range: 15 to 20 % }

build example "Sag" {
  fork: example.fork { sag: 18 % }
}

record "A-1" of example {
  fork.sag: 17 %
}
`,
    fails: `
part fork example.fork "Fork" { travel: 130 mm; sag-range: 15 to 20 % }

build example "Sag" {
  fork: example.fork { sag: 18 % }
}

record "A-1" of example {
  fork.sag: 27 %
}
`,
  },
});
