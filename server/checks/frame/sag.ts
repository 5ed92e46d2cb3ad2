import type { Maybe, Need, Unknown } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySetting } from "../shared/end.ts";
import { decidingSag } from "../shared/sag-range.ts";

const ends = [
  { name: "fork", slot: "fork", maker: "fork", of: "travel" },
  { name: "rear shock", slot: "rear-shock", maker: "frame", of: "stroke" },
] as const;

type SagNeeds = {
  readonly moves: Need<unknown, true>;
  readonly spring: Need<string, true>;
  readonly sag: Need<number, true>;
  /** The range of who decides: the fork's own maker, and for a rear shock the frame's. */
  readonly range: Need<Interval, true>;
  readonly own: Need<Interval, true>;
};

export default defineCheck({
  code: "frame/sag",
  title: "The suspension sags as far as its maker asks",
  severity: "warning",
  since: 1,
  instances: ends,
  needs: ({ slot: path, maker }): SagNeeds => ({
    moves: path === "fork" ? anyFact("fork", "travel") : anyFact("rear-shock", "size"),
    spring: anyFact(path, "spring"),
    sag: anySetting(path, "sag"),
    range: anyFact(maker, "sag-range"),
    own: anyFact(path, "sag-range"),
  }),
  test(facts, { slot: path, of }) {
    const { moves, spring, sag, range, own } = facts as {
      moves: Maybe;
      spring: Maybe<string>;
      sag: Maybe<number>;
      range: Maybe<Interval>;
      own: Maybe<Interval>;
    };
    if (moves.state === "none")
      return notApplicable(path === "fork" ? "the fork is rigid" : "the frame has no rear shock");
    const decides = decidingSag(range, own);
    const unknown = [moves, sag, decides].flatMap((one): readonly Unknown[] => (one?.state === "unknown" ? [one] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (sag.state !== "known" || decides?.state !== "known")
      return notApplicable("neither maker states a range of sag");
    const [is, asks] = [showQuantity(sag.value, "ratio"), showInterval(decides.value, "ratio")];
    if (inside(sag.value, decides.value)) {
      return holds(`${is} of ${of} at sag, and ${decides.subject} asks for ${asks}.`);
    }
    const more = sag.value > decides.value.greatest;
    const nearest = showQuantity(more ? decides.value.greatest : decides.value.least, "ratio");
    return fails(
      `The ${path === "fork" ? "fork" : "rear shock"} is to sag by ${is} of its ${of}, but ${decides.subject} asks for ${asks}: ${mend(spring, more)}, until it is ${nearest}.`,
      sag,
      [sag, decides],
      [{ kind: "set-setting", slot: path, setting: "sag", value: nearest }],
    );
  },
  explanation:
    "Sag is how far the suspension sinks under the rider at rest, as a share of a fork's travel or a shock's stroke. With too " +
    "little the wheel leaves the ground over dips, and with too much the bike sits low, strikes its pedals and uses up its " +
    "travel. The maker of a frame states it for the rear, since the leverage is the frame's, and the maker of a fork for the " +
    "front. It is measured with the rider in riding clothes, after the suspension was worked a few times.",
  source: "common practice, no source; the makers' own ranges decide",
  caution: "The greatest pressure of the spring is never exceeded to reach a sag.",
  examples: {
    holds: `
part frame example.fell "Fell" { rear-travel: 120 mm; sag-range: 25 to 30 % }
part fork example.fork "Fork" { travel: none }
part rear-shock example.shock "Shock" { size: 190x45 }

build example "Sag inside the frame's range" {
  frame: example.fell
  fork: example.fork
  rear-shock: example.shock { sag: 27 % }
}
`,
    fails: `
part fork example.fork "Fork" { travel: 120 mm; sag-range: 15 to 20 % }

build example "Far too soft" {
  fork: example.fork { sag: 28 % }
}
`,
  },
});

/** What makes a spring stiffer or softer, by what springs it. */
function mend(spring: Maybe<string>, stiffer: boolean): string {
  const [pressure, other] = stiffer ? ["raise the pressure", "a stiffer"] : ["lower the pressure", "a softer"];
  const kind = spring.state === "known" ? spring.value : undefined;
  if (kind === "air") return pressure;
  if (kind === "coil" || kind === "elastomer") return `fit ${other} ${kind}`;
  return `${pressure}, or fit ${other} coil`;
}
