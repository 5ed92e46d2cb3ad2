import { ofWheel } from "../../calculations/shared/wheels.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakeAtWheel, brakeAtWheelNeeds } from "../shared/brake-at-wheel.ts";
import { brakeActuationNeeds, movedOtherwise } from "../shared/brake-pair.ts";
import { anyFact, anySlot, type End, readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

const pulls = { short: "short pull", road: "the pull of drop-bar levers", long: "long pull" } as const;

type Pull = keyof typeof pulls;

/** How much a lever of one pull does at a brake for another. */
function effect(lever: Pull, brake: Pull): string {
  const order: readonly Pull[] = ["short", "road", "long"];
  return order.indexOf(lever) < order.indexOf(brake)
    ? "the lever comes to the bar before the brake is on"
    : "the brake takes up too soon and has to be squeezed with far more force";
}

export default defineCheck({
  code: "brake/cable-pull",
  title: "The lever pulls as much cable as the brake needs",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakeActuationNeeds(place),
    ...brakeAtWheelNeeds(place),
    lever: anySlot(ofBrake(place.brake, "lever")),
    leverPull: anyFact<Pull>(ofBrake(place.brake, "lever"), "brake-pull"),
    brakePull: anyFact<Pull>(ofBrake(place.brake, "caliper"), "brake-pull"),
    hub: anySlot(ofWheel(place.wheel, "hub")),
    hubPull: anyFact<Pull>(ofWheel(place.wheel, "hub"), "brake-pull"),
  }),
  test({ lever, leverPull, caliper, brakePull, hub, drum, hubPull, ...actuation }, { brake, wheel }) {
    if (movedOtherwise(actuation, "cable")) return notApplicable("lever or brake is not moved by a cable");
    const atWheel = brakeAtWheel({ caliper, drum });
    const isInHub = atWheel.state === "known" && atWheel.where === "hub";
    const one = readEnd(lever, leverPull, "brake-pull");
    const other: End<Pull> =
      atWheel.state === "unknown"
        ? { state: "unknown", part: undefined, unknown: atWheel }
        : isInHub
          ? readEnd(hub, hubPull, "brake-pull")
          : readEnd(caliper, brakePull, "brake-pull");
    if (one.state === "empty" || other.state === "empty")
      return notApplicable("there is no lever, or no brake at the wheel");
    if (one.state === "none" || other.state === "none") return notApplicable("lever or brake has no pull");
    const unknown = unknowns(...[one, other].map((end) => (end.state === "unknown" ? end.unknown : undefined)));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (one.state !== "known" || other.state !== "known") return notApplicable("lever or brake has no pull");
    const [pulled, needed] = [one.fact.value, other.fact.value];
    if (pulled === needed)
      return holds(`${one.part.subject} has ${pulls[pulled]}, and ${other.part.subject} needs that.`);
    const near = pulled !== "long" && needed !== "long";
    return fails(
      `${one.part.subject} has ${pulls[pulled]}, but ${other.part.subject} needs ${pulls[needed]}: ${effect(pulled, needed)}. Fit a lever of ${pulls[needed]}, or a brake for the lever.`,
      one.part,
      [one.fact, other.fact],
      swaps(ofBrake(brake, "lever"), isInHub ? ofWheel(wheel, "hub") : ofBrake(brake, "caliper")),
      // Older and newer drop-bar levers lie close enough to brake, if not well.
      near ? { severity: "warning" } : {},
    );
  },
  explanation:
    "Brake levers pull either a little cable with much force or twice as much with half the force. Direct-pull arms and " +
    "flat-bar disc brakes need the long pull; cantilevers and road calipers the short one; present drop-bar levers lie " +
    "between, and have disc brakes made for them; of drum and roller brakes their maker says it. A lever of short pull on a long-pull brake comes to the bar before the " +
    "brake is on. The other way round the brake feels hard and hardly brakes. Small adapters at the brake exist; they are " +
    "declared with it as one part.",
  source: "common practice, no source: long and short differ by roughly two to one",
  caution:
    "A lever of the wrong pull brakes too little, or bottoms on the bar. Each brake is tested alone before anyone rides.",
  examples: {
    holds: `
part brake-lever example.lever "Drop lever" { brake-actuation: cable; brake-pull: road }
part caliper example.caliper "Disc for drop bars" { brake-actuation: cable; brake-pull: road }

build example "Made for drop bars" {
  front-brake { lever: example.lever; caliper: example.caliper }
  rear-brake { lever: none; caliper: none }
}
`,
    fails: `
part brake-lever example.lever "Drop lever" { brake-actuation: cable; brake-pull: road }
part rim-brake example.arms "Direct-pull arms" { brake-actuation: cable; brake-pull: long }

build example "Too little cable" {
  front-brake { lever: example.lever; caliper: example.arms }
  rear-brake { lever: none; caliper: none }
}
`,
  },
});
