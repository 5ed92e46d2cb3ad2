import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";

/** Cranks with rings of their own, and rings in slots of their own beside them. */
const bike = (sold: string, outer?: number, middle?: number, inner?: number): string => `
part crankset a.crank "Crank" { rings: ${sold} }
part chainring a.outer "Outer" { teeth: ${outer ?? 40} t }
part chainring a.middle "Middle" { teeth: ${middle ?? 40} t }
part chainring a.inner "Inner" { teeth: ${inner ?? 40} t }
build example "One" {
  drivetrain {
    crankset: a.crank
    chainring: ${outer === undefined ? "none" : "a.outer"}
    middle-chainring: ${middle === undefined ? "none" : "a.middle"}
    inner-chainring: ${inner === undefined ? "none" : "a.inner"}
  }
}
`;

describe("drivetrain/ring-order", () => {
  const code = "drivetrain/ring-order";
  it.each([
    ["48-36-26 t", undefined, undefined, undefined, "holds"],
    // The list of what the cranks are sold with may be written in any order.
    ["26-36-48 t", undefined, undefined, undefined, "holds"],
    ["48-36-26 t", undefined, 50, undefined, "fails"],
    ["48-36-26 t", undefined, undefined, 38, "fails"],
    ["48-36-26 t", undefined, undefined, 35, "holds"],
    ["46-30 t", 50, undefined, undefined, "holds"],
    ["46-30 t", 29, undefined, undefined, "fails"],
    ["46-30 t", undefined, undefined, 46, "fails"],
    ["none", 48, undefined, 34, "holds"],
    ["none", 34, undefined, 48, "fails"],
    ["none", 48, 48, 34, "fails"],
    ["none", 48, 38, undefined, "holds"],
    ["none", undefined, 38, 48, "fails"],
    ["none", 40, undefined, undefined, "notApplicable"],
    ["40 t", undefined, undefined, undefined, "notApplicable"],
    ["none", undefined, undefined, undefined, "notApplicable"],
  ] as const)("%s, with %s, %s and %s fitted: %s", (sold, outer, middle, inner, outcome) => {
    expect(checkText(bike(sold, outer, middle, inner)).outcome(code)).toBe(outcome);
  });
  it("points to the ring that is too large for its place", () => {
    const [found] = checkText(bike("48-36-26 t", undefined, 50)).of(code);
    expect(found).toMatchObject({ path: "drivetrain.middle-chainring", severity: "error" });
    expect(found?.message).toContain("middle ring of 50 t (Middle) is larger than the outer one of 48 t (Crank)");
  });
});

describe("drivetrain/ring-replaced", () => {
  const code = "drivetrain/ring-replaced";
  it.each([
    ["42 t", 42, undefined, "fails"],
    ["46-30 t", undefined, 28, "fails"],
    ["46-30 t", undefined, undefined, "holds"],
    ["none", 46, 30, "notApplicable"],
  ] as const)("%s sold, %s and %s fitted: %s", (sold, outer, inner, outcome) => {
    expect(checkText(bike(sold, outer, undefined, inner)).outcome(code)).toBe(outcome);
  });
  it("only tells, and names what is replaced where", () => {
    const [found] = checkText(bike("46-30 t", undefined, undefined, 28)).of(code);
    expect(found).toMatchObject({ path: "drivetrain.inner-chainring", severity: "information" });
    expect(found?.message).toContain("Inner (28 t) as the inner ring");
  });
});
