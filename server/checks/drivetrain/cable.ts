import { fact, optional, setting, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { rearActuationNeeds, rearDerailleurActuation } from "../shared/actuation.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const purposes: Readonly<Record<string, string>> = { brake: "brakes", dropper: "a dropper post", shift: "shifting" };

export default defineCheck({
  code: "drivetrain/cable",
  title: "The cable of a derailleur or gear hub is one for shifting, and long enough",
  severity: "error",
  since: 1,
  instances: [
    { name: "rear", path: "drivetrain.rear-cable", moves: "drivetrain.rear-derailleur" },
    { name: "front", path: "drivetrain.front-cable", moves: "drivetrain.front-derailleur" },
  ] as const,
  needs: ({ path, moves }) => ({
    ...rearActuationNeeds,
    derailleur: optional(slot(moves)),
    frontActuation: optional(fact("drivetrain.front-derailleur", "actuation")),
    hub: optional(slot("rear-wheel.hub")),
    hubActuation: optional(fact("rear-wheel.hub", "actuation")),
    line: slot(path),
    serves: optional(fact(path, "serves")),
    cut: optional(setting(path, "housing-cut")),
    housing: optional(fact(path, "housing-length")),
    inner: optional(fact(path, "inner-length")),
  }),
  test({ line, serves, cut, housing, inner, derailleur, frontActuation, hub, hubActuation, ...facts }, { name, path }) {
    if (isKind(line.value, "wire")) {
      const ofDerailleur = name === "front" ? frontActuation : rearDerailleurActuation(facts);
      const [moved, actuation] =
        derailleur.state === "none" && name === "rear" ? [hub, hubActuation] : [derailleur, ofDerailleur];
      if (moved.state === "unknown") return cannotTell(moved);
      if (moved.state === "none") return notApplicable(`${line.subject} is a wire`);
      if (actuation.state === "unknown") return cannotTell(actuation);
      if (actuation.state === "none" || actuation.value !== "cable") return notApplicable(`${line.subject} is a wire`);
      return fails(
        `${line.subject} is an electric lead, but ${moved.subject} is worked by cable, and a lead pulls nothing: fit a cable and housing for shifting.`,
        line,
        [actuation],
        swaps(path),
      );
    }
    if (serves.state === "known" && serves.value !== "shift") {
      return fails(
        `${line.subject} is a cable for ${purposes[serves.value] ?? serves.value}, but the build shifts with it: housing that is not for shifting gives under each click, and the nipple of another inner does not seat in the controller. Fit a cable and housing for shifting.`,
        line,
        [serves],
        swaps(path),
      );
    }
    for (const [supplied, what] of [
      [housing, "of housing as supplied"],
      [inner, "of inner cable, which has to pass all of the housing,"],
    ] as const) {
      if (cut.state !== "known" || supplied.state !== "known" || atMost(cut.value, supplied.value)) continue;
      const [needs, has] = showPair(cut.value, supplied.value, "length");
      return fails(
        `The build cuts ${needs} of housing from ${line.subject}, but it is ${has} ${what} and too short: fit a longer one.`,
        line,
        [cut, supplied],
        swaps(path),
      );
    }
    const unknown = unknowns(serves, cut, housing, inner);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (cut.state !== "known" || housing.state !== "known") return holds(`${line.subject} is a cable for shifting.`);
    const [needs, has] = showPair(cut.value, housing.value, "length");
    return holds(
      `${line.subject} is a cable for shifting, its housing cut to ${needs} from ${has}.`,
      (housing.value - cut.value) / housing.value,
    );
  },
  explanation:
    "Housing for indexed shifting has wires that run along it, so that it keeps its length when the bar turns; that of " +
    "brakes is wound, bears more and shortens as it bends, which spoils the indexing. Inners differ too: one for brakes is " +
    "thicker and has a larger nipple, which does not go into a shift lever. What is supplied has to reach: all pieces of " +
    "housing together, and the inner through them and over the bare runs besides. An electric lead in a cable's place " +
    "moves nothing.",
  source: "common practice, no source",
  examples: {
    holds: `
part cable example.line "Shift line" { serves: shift; housing-length: 1800 mm; inner-length: 2100 mm }

build example "Long enough" {
  drivetrain { rear-cable: example.line { housing-cut: 1400 mm }; front-cable: none }
}
`,
    fails: `
part cable example.line "Shift line" { serves: shift; housing-length: 1800 mm; inner-length: 2100 mm }

build example "Too short for a cargo bike" {
  drivetrain { rear-cable: example.line { housing-cut: 2300 mm }; front-cable: none }
}
`,
  },
});
