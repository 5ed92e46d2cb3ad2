import { fact, type Known, type Maybe, optional, type Unknown } from "../../model/need.ts";

/** What moves a derailleur or the gears of a hub. */
export type Actuation = "cable" | "electronic" | "hydraulic" | "rod";

export type KnownActuation = Known<Actuation> | Unknown | { readonly state: "none" };

/** What {@link rearDerailleurActuation} reads. */
export const rearActuationNeeds = {
  derailleurSetUp: optional(fact("drivetrain.rear-derailleur", "set-up")),
  derailleurPower: optional(fact("drivetrain.rear-derailleur", "power")),
};

export interface RearActuationFacts {
  readonly derailleurSetUp: Maybe<"cable" | "electronic" | "direct-mount">;
  readonly derailleurPower: Maybe<string>;
}

/**
 * What moves a rear derailleur. Its set-up says so by itself, except for a direct mount, which exists both ways: there
 * its power says it, and `power: none` means a cable.
 */
export function rearDerailleurActuation({ derailleurSetUp, derailleurPower }: RearActuationFacts): KnownActuation {
  if (derailleurSetUp.state !== "known")
    return derailleurSetUp.state === "unknown" ? derailleurSetUp : { state: "none" };
  const { value } = derailleurSetUp;
  if (value !== "direct-mount") return { ...derailleurSetUp, value };
  if (derailleurPower.state === "unknown") return derailleurPower;
  if (derailleurPower.state === "known") return { ...derailleurPower, value: "electronic" };
  return { ...derailleurSetUp, value: "cable" };
}

/** "is worked by cable", for a sentence. */
export function workedBy(actuation: Actuation): string {
  const words = {
    cable: "by cable",
    electronic: "electronically",
    hydraulic: "by fluid",
    rod: "by rod",
  } as const;
  return words[actuation];
}
