import { stated } from "../../calculations/shared/maybe.ts";
import type { Installed } from "../../model/assembly.ts";
import { buildField, fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakeAtWheel } from "../shared/brake-at-wheel.ts";
import { anySlot } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "brake/two-brakes",
  title: "There are two brakes that work by themselves",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    frame: slot("frame"),
    category: optional(buildField("category")),
    frontLever: anySlot("front-brake.lever"),
    frontBrake: anySlot("front-brake.caliper"),
    frontDrum: optional(fact("front-wheel.hub", "drum-brake")),
    rearLever: anySlot("rear-brake.lever"),
    rearBrake: anySlot("rear-brake.caliper"),
    rearDrum: optional(fact("rear-wheel.hub", "drum-brake")),
    coaster: optional(fact("rear-wheel.hub", "coaster-brake")),
    fixed: optional(fact("drivetrain.cassette", "fixed")),
  }),
  test(facts) {
    const { frame, category, coaster, fixed } = facts;
    if (stated(category) === "track") {
      return notApplicable("a bicycle for the track has none, and is not for the road");
    }
    const front = handBrake("front", facts.frontLever, facts.frontBrake, facts.frontDrum);
    const rear = handBrake("rear", facts.rearLever, facts.rearBrake, facts.rearDrum);
    const back: Own =
      coaster.state === "known" && coaster.value
        ? { state: "is", known: coaster, said: `the coaster brake in ${coaster.subject}` }
        : otherThan(coaster);
    // A cog that turns with the wheel brakes it by the legs; some laws count it as one of the two.
    const legs: Own =
      fixed.state === "known" && fixed.value
        ? { state: "is", known: fixed, said: `the fixed cog ${fixed.subject}` }
        : otherThan(fixed);
    const brakes = [front, rear, back, legs];
    const sure = brakes.flatMap((one) => (one.state === "is" ? [one] : []));
    if (sure.length >= 2) return holds(`It is braked by ${both(sure.map(({ said }) => said))}.`);
    const open = brakes.flatMap((one) => (one.state === "open" ? [one] : []));
    if (open.length > 0 && sure.length + open.length >= 2) {
      return cannotTell(...unknowns(...open.flatMap(({ lacks }) => lacks), category));
    }
    const [only] = sure;
    const idle = [front, rear].flatMap((one) => (one.state === "is not" && one.why ? [one.why] : []));
    return fails(
      `The build has ${only ? `one brake only, ${only.said}` : "no brake"}${idle.length > 0 ? ` (${both(idle)})` : ""}: a bicycle for the road has two that work by themselves, so that one is left when the other fails. Fit ${only ? "a second" : "two"}.`,
      only?.known ?? frame,
      [],
      [
        ...(front.state === "is"
          ? []
          : [
              { kind: "insert-part", slot: "front-brake.caliper" } as const,
              { kind: "insert-part", slot: "front-brake.lever" } as const,
            ]),
        ...(rear.state === "is"
          ? []
          : [
              { kind: "insert-part", slot: "rear-brake.caliper" } as const,
              { kind: "insert-part", slot: "rear-brake.lever" } as const,
            ]),
      ],
      // Bikes for tricks are ridden with one, off the road.
      only && stated(category) === "bmx" ? { severity: "warning" } : {},
    );
  },
  explanation:
    "Cables break and hoses leak, and then the other brake has to stop the bicycle. So every bicycle that is ridden on the road " +
    "has two brakes, each with its own lever and line, or one of them worked by the pedals. Most laws ask for one at each " +
    "wheel. Some let a fixed cog count as the brake of the rear wheel. A brake without a lever, and a lever without a brake, " +
    "do not count. Bicycles for the track have none and are not ridden elsewhere.",
  source:
    "road traffic law of most countries, and 16 CFR 1512.5 for the United States (from memory); the law where it is ridden decides",
  caution: "The law where the bicycle is ridden comes first.",
  examples: {
    holds: `
part frame example.frame "Frame" { size: "54" }
part brake-lever example.lever "Lever" { brake-actuation: cable }
part rim-brake example.brake "Brake" { brake-actuation: cable }
part hub example.hub "Coaster hub" { coaster-brake: yes }

build example "Hand in front, pedals behind" {
  frame: example.frame
  front-brake { lever: example.lever; caliper: example.brake }
  rear-brake { lever: none; caliper: none }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part frame example.frame "Frame" { size: "54" }
part brake-lever example.lever "Lever" { brake-actuation: cable }
part rim-brake example.brake "Brake" { brake-actuation: cable }
part hub example.hub "Hub" { wheel: rear }
part sprocket example.cog "Cog" { cogs: 18 t; fixed: no }

build example "One brake" {
  frame: example.frame
  front-brake { lever: example.lever; caliper: example.brake }
  rear-brake { lever: none; caliper: none }
  rear-wheel.hub: example.hub
  drivetrain.cassette: example.cog
}
`,
  },
});

/** Whether something brakes: it does, it does not, or nobody said. */
type Own =
  | { readonly state: "is"; readonly known: Known; readonly said: string }
  | { readonly state: "is not"; readonly why?: string }
  | { readonly state: "open"; readonly lacks: readonly Maybe[] };

/** What a fact comes to that does not say that there is such a brake. */
function otherThan(fact: Maybe): Own {
  return fact.state === "unknown" ? { state: "open", lacks: [fact] } : { state: "is not" };
}

/** A brake that a hand works: a lever, and something at the wheel that it works. */
function handBrake(name: string, lever: Maybe<Installed>, caliper: Maybe<Installed>, drum: Maybe<boolean>): Own {
  const atWheel = brakeAtWheel({ caliper, drum });
  if (atWheel.state === "none") {
    return { state: "is not", ...(lever.state === "known" ? { why: `${lever.subject} works no brake` } : {}) };
  }
  if (lever.state === "none") {
    return {
      state: "is not",
      ...(atWheel.state === "known" ? { why: `the ${name} brake ${atWheel.brake.subject} has no lever` } : {}),
    };
  }
  if (atWheel.state === "unknown" || lever.state === "unknown") return { state: "open", lacks: [lever, caliper, drum] };
  return { state: "is", known: atWheel.brake, said: `${atWheel.brake.subject} at the ${name} wheel` };
}
