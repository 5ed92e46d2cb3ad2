import { describe, expect, it } from "vitest";
import check from "../../server/checks/seat/saddle-to-tyre.ts";
import { checkText } from "./check-text.ts";

const code = "seat/saddle-to-tyre";
const text = check.examples.holds;

function changed(from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`the example does not say ${from}`);
  return text.replace(from, to);
}
const gap = (written: string): number => {
  const worked = checkText(written).report.evaluation.quantity("seat.saddle-to-tyre");
  if (worked?.state !== "known" || typeof worked.value !== "number") throw new Error("the gap is not known");
  return worked.value;
};

/** The example with a taller tyre, so that the gap is what is wanted. */
function withGap(wanted: number): string {
  return changed("measured-height: 57 mm", `measured-height: ${57 + gap(text) - wanted} mm`);
}

describe(code, () => {
  it.each([
    [10.01, "holds", undefined],
    [9.9, "fails", "warning"],
    [0.1, "fails", "warning"],
    [-0.1, "fails", "error"],
  ] as const)("%s mm: %s", (wanted, outcome, severity) => {
    const { outcome: of, of: found } = checkText(withGap(wanted));
    expect(of(code)).toBe(outcome);
    expect(found(code)[0]?.severity).toBe(severity);
  });
  it("grows by what the dropper drops less, and what the wheel rises less", () => {
    expect(gap(changed("dropper-travel: 125 mm", "dropper-travel: 100 mm"))).toBeGreaterThan(gap(text) + 15);
    expect(gap(changed("rear-travel: 120 mm", "rear-travel: 100 mm"))).toBeGreaterThan(gap(text) + 10);
    expect(
      gap(changed("rear-travel: 120 mm", "rear-travel: 120 mm\n  rear-centre-growth-full: 20 mm")),
    ).toBeGreaterThan(gap(text));
  });
  it("takes the wheel where it is at the end of the travel, and not where the chainstay is longest", () => {
    const travel = "rear-travel: 120 mm";
    const full = (mm: number): number => gap(changed(travel, `${travel}\n  rear-centre-growth-full: ${mm} mm`));
    const both = changed(travel, `${travel}\n  rear-centre-growth-full: 20 mm; rear-centre-growth-bottomed: 8 mm`);
    expect(gap(both)).toBeCloseTo(full(8), 9);
    expect(full(8)).toBeLessThan(full(20));
  });
  it("counts the dropper as it is set", () => {
    const set = changed("insertion: 200 mm", "insertion: 200 mm; travel-set: 100 mm");
    // Less drop of the same post: the saddle stands lower, and comes down to where it was.
    expect(gap(set)).toBeCloseTo(gap(text), 6);
  });
  it("is asked only where something moves, and asks for what it lacks", () => {
    expect(checkText(changed("rear-travel: 120 mm", "rear-travel: none")).outcome(code)).toBe("holds");
    expect(
      checkText(
        changed("rear-travel: 120 mm", "rear-travel: none").replace("dropper-travel: 125 mm", "dropper-travel: none"),
      ).outcome(code),
    ).toBe("notApplicable");
    expect(checkText(changed("clamp-to-tail: 125 mm; ", "")).missing(code)).toEqual(["seat.saddle.clamp-to-tail"]);
  });
});
