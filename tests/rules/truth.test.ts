import { describe, expect, it } from "vitest";
import { both, decide, either, no, not, open, type Reason, same, type Truth, yes } from "../../server/rules/truth.ts";

const place = undefined as never;
const missing: Reason = { why: "missing", missing: { path: "a", what: "a", place } };
const absent: Reason = { why: "absent", path: "b" };
const maybe = open(missing);
const all = { yes, no, maybe } as const;
const nameOf = (truth: Truth): string => (truth.state === "open" ? "maybe" : truth.state === "true" ? "yes" : "no");

/** Kleene's strong logic of three values (S. C. Kleene, "Introduction to Metamathematics", 1952, section 64). */
describe("tables of truth", () => {
  it.each([
    ["yes", "yes", "yes", "yes", "yes"],
    ["yes", "no", "no", "yes", "no"],
    ["yes", "maybe", "maybe", "yes", "maybe"],
    ["no", "yes", "no", "yes", "no"],
    ["no", "no", "no", "no", "yes"],
    ["no", "maybe", "no", "maybe", "maybe"],
    ["maybe", "yes", "maybe", "yes", "maybe"],
    ["maybe", "no", "no", "maybe", "maybe"],
    ["maybe", "maybe", "maybe", "maybe", "maybe"],
  ] as const)("%s and/or/same %s", (one, other, and, or, alike) => {
    expect(nameOf(both(all[one], all[other]))).toBe(and);
    expect(nameOf(either(all[one], all[other]))).toBe(or);
    expect(nameOf(same(all[one], all[other]))).toBe(alike);
  });

  it("of not", () => {
    expect([yes, no, maybe].map(not).map(nameOf)).toEqual(["no", "yes", "maybe"]);
  });

  it("keep every reason, in order, and lose those that no longer matter", () => {
    expect(both(open(missing), open(absent))).toEqual(open(missing, absent));
    expect(either(open(missing), open(absent))).toEqual(open(missing, absent));
    expect(both(yes, open(absent))).toEqual(open(absent));
    expect(not(open(missing))).toEqual(open(missing));
  });
});

describe("what follows from a truth", () => {
  const tolerance = (path: string): Reason => ({ why: "spread", role: "tolerance", path });
  const adjustable = (path: string): Reason => ({ why: "spread", role: "adjustable", path });
  const undefinedNumber: Reason = { why: "undefined", path: "", what: "a quotient" };
  it.each<[string, Truth, string]>([
    ["yes", yes, "holds"],
    ["no", no, "fails"],
    ["not stated", open(missing), "unknown"],
    ["no such number", open(undefinedNumber), "unknown"],
    ["none of it", open(absent), "absent"],
    ["not stated beside none of it", open(absent, missing), "unknown"],
    ["a tolerance has to satisfy it with every value", open(tolerance("a")), "fails"],
    ["something that can be set has to satisfy it with one", open(adjustable("a")), "holds"],
    ["two that can be set, each by itself", open(adjustable("a"), adjustable("b")), "holds"],
    ["one setting for two comparisons is not claimed", open(adjustable("a"), adjustable("a")), "unknown"],
    ["one tolerance in two comparisons is not claimed", open(tolerance("a"), tolerance("a")), "unknown"],
    ["a tolerance and a setting", open(tolerance("a"), adjustable("b")), "unknown"],
    ["a tolerance and something not stated", open(tolerance("a"), missing), "unknown"],
    ["a tolerance and something there is none of", open(tolerance("a"), absent), "absent"],
    ["no reason at all", open(), "unknown"],
  ])("%s", (_, truth, state) => {
    expect(decide(truth).state).toBe(state);
  });
});
