import { fact, optional, setting, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/hose-length",
  title: "The hose or housing is long enough for what is cut from it",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    line: slot(ofBrake(brake, "hose")),
    cut: setting(ofBrake(brake, "hose"), "cut-length"),
    hose: optional(fact(ofBrake(brake, "hose"), "length")),
    housing: optional(fact(ofBrake(brake, "hose"), "housing-length")),
    inner: optional(fact(ofBrake(brake, "hose"), "inner-length")),
  }),
  test({ line, cut, hose, housing, inner }, { brake }) {
    // Each of the two kinds has one of these lengths and answers "none" for the other.
    for (const [supplied, what] of [
      [hose, "long as supplied"],
      [housing, "of housing as supplied"],
      [inner, "of inner cable, which has to pass all of the housing,"],
    ] as const) {
      if (supplied.state !== "known" || atMost(cut.value, supplied.value)) continue;
      const [needs, has] = showPair(cut.value, supplied.value, "length");
      return fails(
        `The build cuts ${line.subject} to ${needs}, but it is ${has} ${what} and too short: fit a longer one.`,
        line,
        [cut, supplied],
        swaps(ofBrake(brake, "hose")),
      );
    }
    const unknown = unknowns(hose, housing, inner);
    if (unknown.length > 0) return cannotTell(...unknown);
    const least = [hose, housing].find((one) => one.state === "known");
    if (least?.state !== "known") return notApplicable(`${line.subject} states no length`);
    const [needs, has] = showPair(cut.value, least.value, "length");
    return holds(`Cut to ${needs} from ${has}.`, (least.value - cut.value) / least.value);
  },
  explanation:
    "A hose or housing is cut to the length that lets the bar turn fully each way without pulling, and no longer. What is " +
    "supplied has to reach that: long rear runs on large or cargo frames need a longer one. Inner cables have to pass the " +
    "whole housing and the bare runs besides. A joined hose is no way out, since every joint can leak.",
  source: "common practice, no source",
  examples: {
    holds: `
part hose example.hose "Hose" { length: 1700 mm }

build example "Long enough" {
  rear-brake.hose: example.hose { cut-length: 1520 mm }
}
`,
    fails: `
part hose example.hose "Hose" { length: 1700 mm }

build example "Too short for a cargo bike" {
  rear-brake.hose: example.hose { cut-length: 2450 mm }
}
`,
  },
});
