import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/hose-kind",
  title: "The brake's line is a hose for fluid, or a cable for brakes",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    line: slot(ofBrake(brake, "hose")),
    actuation: fact(ofBrake(brake, "caliper"), "brake-actuation"),
    serves: optional(fact(ofBrake(brake, "hose"), "serves")),
    housing: optional(fact(ofBrake(brake, "hose"), "housing-kind")),
  }),
  test({ line, actuation, serves, housing }, { brake }) {
    const swap = swaps(ofBrake(brake, "hose"));
    const fluid = actuation.value === "hydraulic";
    if (actuation.value === "rod") return notApplicable("rods need neither hose nor cable");
    if (isKind(line.value, "hose") !== fluid) {
      return fails(
        `${actuation.subject} is moved by ${fluid ? "fluid" : "a cable"}, but ${line.subject} is ${fluid ? "a cable" : "a hose"}: fit ${fluid ? "a hose" : "a brake cable"}.`,
        line,
        [actuation],
        swap,
      );
    }
    if (fluid) return holds(`${line.subject} is a hose, and ${actuation.subject} is moved by fluid.`);
    if (housing.state === "known" && housing.value === "parallel") {
      return fails(
        `${line.subject} has a housing of parallel wires, which is made for shifting and bursts when a brake pulls on it: fit a brake cable with a spiral housing.`,
        line,
        [housing],
        swap,
      );
    }
    if (serves.state === "known" && serves.value !== "brake") {
      return fails(
        `${line.subject} is a cable for ${serves.value === "shift" ? "shifting" : "a dropper post"}, and works a brake here: fit a brake cable, whose inner wire is thicker and whose end holds in a brake lever.`,
        line,
        [serves],
        swap,
      );
    }
    const unknown = unknowns(serves, housing);
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(`${line.subject} is a cable for brakes.`);
  },
  explanation:
    "Fluid needs a hose that bears its pressure. A cable for brakes has a thick inner wire, and a housing wound of one flat " +
    "wire that does not burst. Housing for indexed shifting is made of wires laid lengthways: it does not shorten, but " +
    "under a brake's pull the wires break out at its ends, all at once. The inner wire for shifting is thinner and its end " +
    "does not sit in a brake lever. Braided housing is made for both.",
  source: "common practice, no source",
  caution: "A shift housing bursts under hard braking, and the brake is gone.",
  examples: {
    holds: `
part rim-brake example.brake "Brake" { brake-actuation: cable }
part cable example.cable "Brake cable" { serves: brake; housing-kind: braided }

build example "Made for brakes" {
  front-brake { caliper: example.brake; hose: example.cable }
}
`,
    fails: `
part rim-brake example.brake "Brake" { brake-actuation: cable }
part cable example.cable "Shift cable" { serves: shift; housing-kind: parallel }

build example "From the shifting drawer" {
  front-brake { caliper: example.brake; hose: example.cable }
}
`,
  },
});
