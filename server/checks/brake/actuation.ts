import { ofWheel } from "../../calculations/shared/wheels.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakeAtWheel, brakeAtWheelNeeds } from "../shared/brake-at-wheel.ts";
import { brakeActuationNeeds } from "../shared/brake-pair.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

const by: Readonly<Record<string, string>> = { cable: "pulls a cable", hydraulic: "pushes fluid", rod: "moves a rod" };
const moved: Readonly<Record<string, string>> = { cable: "a cable", hydraulic: "fluid", rod: "a rod" };

export default defineCheck({
  code: "brake/actuation",
  title: "Lever and brake are moved by the same thing",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakeActuationNeeds(place),
    ...brakeAtWheelNeeds(place),
    lever: anySlot(ofBrake(place.brake, "lever")),
    hubPull: anyFact<string>(ofWheel(place.wheel, "hub"), "brake-pull"),
  }),
  test({ leverActuation, brakeActuation, lever, caliper, drum, hubPull }, { brake, wheel }) {
    const atWheel = brakeAtWheel({ caliper, drum });
    if (lever.state === "none" || atWheel.state === "none")
      return notApplicable("there is no lever, or no brake at the wheel");
    if (atWheel.state === "unknown") return cannotTell(...unknowns(lever, atWheel, leverActuation));
    if (atWheel.where === "hub") {
      if (hubPull.state === "none") return notApplicable(`the brake in ${atWheel.brake.subject} has no pull`);
      const missing = unknowns(lever, leverActuation, hubPull);
      if (missing.length > 0) return cannotTell(...missing);
      if (leverActuation.state !== "known" || hubPull.state !== "known" || lever.state !== "known")
        return notApplicable("nothing is stated to move one of the two");
      const pulls = leverActuation.value;
      if (pulls === "cable")
        return holds(`${lever.subject} pulls a cable, and the brake in ${hubPull.subject} is moved by it.`);
      return fails(
        `${lever.subject} ${by[pulls]}, but the brake in ${hubPull.subject} is moved by a cable: fit a lever for a cable, or another brake.`,
        lever,
        [leverActuation, hubPull],
        swaps(ofBrake(brake, "lever"), ofWheel(wheel, "hub")),
      );
    }
    const unknown = unknowns(lever, leverActuation, brakeActuation);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (leverActuation.state !== "known" || brakeActuation.state !== "known" || lever.state !== "known") {
      return notApplicable("nothing is stated to move one of the two");
    }
    const [pulls, needs] = [leverActuation.value, brakeActuation.value];
    if (pulls === needs) return holds(`${lever.subject} ${by[pulls]}, and ${brakeActuation.subject} is moved by it.`);
    return fails(
      `${lever.subject} ${by[pulls]}, but ${brakeActuation.subject} is moved by ${moved[needs]}: fit a lever for ${moved[needs]}, or another brake.`,
      lever,
      [leverActuation, brakeActuation],
      swaps(ofBrake(brake, "lever"), ofBrake(brake, "caliper")),
    );
  },
  explanation:
    "A lever either pulls a cable or pushes fluid through a hose, and so does the brake at the other end. A lever for cable " +
    "has no cylinder, and a caliper for fluid has no arm that a cable could pull. Brakes that are pulled by cable and have " +
    "fluid inside count as cable brakes, and so does a drum or roller brake in the hub that says how much cable it needs. " +
    "Whether the pull or the volume suits is asked apart.",
  source: "common practice, no source",
  caution: "Each brake is squeezed hard for ten seconds alone, and looked over for leaks, before anyone rides.",
  examples: {
    holds: `
part brake-lever example.lever "Lever" { brake-actuation: rod }
part rim-brake example.brake "Stirrup" { brake-actuation: rod }

build example "A rod from hand to rim" {
  front-brake { lever: example.lever; caliper: example.brake }
  rear-brake { lever: none; caliper: none }
}
`,
    fails: `
part brake-lever example.lever "Lever" { brake-actuation: cable }
part caliper example.caliper "Caliper" { brake-actuation: hydraulic }

build example "A cable for a piston" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
  },
});
