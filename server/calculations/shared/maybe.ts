import type { Maybe, Missing } from "../../model/need.ts";

/** The value of a fact that is known; `undefined` for one that is unknown or stated to be absent. */
export function stated<Value>(fact: Maybe<Value>): Value | undefined {
  return fact.state === "known" ? fact.value : undefined;
}

/** Everything that is missing from these facts. What is stated to be absent is not missing. */
export function missingOf(...facts: readonly Maybe[]): readonly Missing[] {
  return facts.flatMap((fact) => (fact.state === "unknown" ? fact.missing : []));
}
