import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { unknowns } from "./unknowns.ts";

/** Everything that may make the light's current: a dynamo outside a hub, or one inside either hub. */
export const dynamoNeeds = {
  outside: optional(slot("lighting.dynamo")),
  outsideVoltage: optional(fact("lighting.dynamo", "dynamo-voltage")),
  outsidePower: optional(fact("lighting.dynamo", "dynamo-power")),
  outsideConnector: optional(fact("lighting.dynamo", "connector")),
  frontHub: optional(slot("front-wheel.hub")),
  frontVoltage: optional(fact("front-wheel.hub", "dynamo-voltage")),
  frontPower: optional(fact("front-wheel.hub", "dynamo-power")),
  frontConnector: optional(fact("front-wheel.hub", "connector")),
  rearHub: optional(slot("rear-wheel.hub")),
  rearVoltage: optional(fact("rear-wheel.hub", "dynamo-voltage")),
  rearPower: optional(fact("rear-wheel.hub", "dynamo-power")),
  rearConnector: optional(fact("rear-wheel.hub", "connector")),
};

export interface DynamoFacts {
  readonly outside: Maybe<Installed>;
  readonly outsideVoltage: Maybe<number>;
  readonly outsidePower: Maybe<number>;
  readonly outsideConnector: Maybe<ResolvedCode>;
  readonly frontHub: Maybe<Installed>;
  readonly frontVoltage: Maybe<number>;
  readonly frontPower: Maybe<number>;
  readonly frontConnector: Maybe<ResolvedCode>;
  readonly rearHub: Maybe<Installed>;
  readonly rearVoltage: Maybe<number>;
  readonly rearPower: Maybe<number>;
  readonly rearConnector: Maybe<ResolvedCode>;
}

export interface Dynamo {
  readonly slot: SlotPath;
  readonly part: Known<Installed>;
  readonly voltage: Maybe<number>;
  readonly power: Maybe<number>;
  readonly connector: Maybe<ResolvedCode>;
}

/** The bicycle's dynamo, what is missing to tell, or none. */
export function dynamoOf(facts: DynamoFacts): Dynamo | "none" | "unknown" {
  const { outside, frontHub, rearHub } = facts;
  if (outside.state === "known") {
    const { outsideVoltage: voltage, outsidePower: power, outsideConnector: connector } = facts;
    return { slot: "lighting.dynamo", part: outside, voltage, power, connector };
  }
  // A hub that states a voltage has a dynamo; one that states none has not.
  if (frontHub.state === "known" && facts.frontVoltage.state === "known") {
    const { frontVoltage: voltage, frontPower: power, frontConnector: connector } = facts;
    return { slot: "front-wheel.hub", part: frontHub, voltage, power, connector };
  }
  if (rearHub.state === "known" && facts.rearVoltage.state === "known") {
    const { rearVoltage: voltage, rearPower: power, rearConnector: connector } = facts;
    return { slot: "rear-wheel.hub", part: rearHub, voltage, power, connector };
  }
  return unknowns(outside, frontHub, rearHub).length > 0 ? "unknown" : "none";
}
