import type { Missing } from "../model/need.ts";

/** Why something has no answer, or more than one. */
export type Reason =
  /** Nobody stated it. */
  | { readonly why: "missing"; readonly missing: Missing }
  /** There is none of it in this build, so that the question does not arise. */
  | { readonly why: "absent"; readonly path: string }
  /** It lies somewhere in a range: anywhere (a tolerance), or wherever it is set to (adjustable). */
  | { readonly why: "spread"; readonly role: "tolerance" | "adjustable"; readonly path: string }
  /** There is no such number: a quotient by zero, the least of nothing, a sum of two currencies. */
  | { readonly why: "undefined"; readonly path: string; readonly what: string };

/** True, false, or open for the reasons given. The third value is never taken for one of the others. */
export type Truth =
  | { readonly state: "true" }
  | { readonly state: "false" }
  | { readonly state: "open"; readonly reasons: readonly Reason[] };

export const yes: Truth = { state: "true" };
export const no: Truth = { state: "false" };

export function truth(holds: boolean): Truth {
  return holds ? yes : no;
}

export function open(...reasons: readonly Reason[]): Truth {
  return { state: "open", reasons };
}

export function not(one: Truth): Truth {
  if (one.state === "open") return one;
  return one.state === "true" ? no : yes;
}

/** False as soon as either is, whatever the other may be. */
export function both(one: Truth, other: Truth): Truth {
  if (one.state === "false" || other.state === "false") return no;
  if (one.state === "true") return other;
  if (other.state === "true") return one;
  return open(...one.reasons, ...other.reasons);
}

/** True as soon as either is, whatever the other may be. */
export function either(one: Truth, other: Truth): Truth {
  return not(both(not(one), not(other)));
}

/** Whether two are the same. */
export function same(one: Truth, other: Truth): Truth {
  if (one.state === "open") return other.state === "open" ? open(...one.reasons, ...other.reasons) : one;
  return other.state === "open" ? other : truth(one.state === other.state);
}

/** What a truth comes to for a whole rule. */
export type Decision =
  | { readonly state: "holds" }
  | { readonly state: "fails" }
  | { readonly state: "unknown"; readonly reasons: readonly Reason[] }
  | { readonly state: "absent"; readonly path: string };

/**
 * What follows from a truth. What is not stated leaves it unknown; what there is none of makes it not arise. With
 * nothing else open, a tolerance has to satisfy the rule with every value it may have, and something adjustable with
 * one that it can be set to. Where one setting would have to satisfy two comparisons at once, nothing is claimed.
 */
export function decide(found: Truth): Decision {
  if (found.state === "true") return { state: "holds" };
  if (found.state === "false") return { state: "fails" };
  const { reasons } = found;
  if (reasons.some(({ why }) => why === "missing" || why === "undefined")) return { state: "unknown", reasons };
  const absent = reasons.find((reason) => reason.why === "absent");
  if (absent) return { state: "absent", path: absent.path };
  const spreads = reasons.flatMap((reason) => (reason.why === "spread" ? [reason] : []));
  const isOnce = spreads.length > 0 && new Set(spreads.map(({ path }) => path)).size === spreads.length;
  if (isOnce && spreads.every(({ role }) => role === "tolerance")) return { state: "fails" };
  if (isOnce && spreads.every(({ role }) => role === "adjustable")) return { state: "holds" };
  return { state: "unknown", reasons };
}
