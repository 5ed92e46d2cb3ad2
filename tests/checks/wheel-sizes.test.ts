import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

function outcome(text: string, code: string): string {
  return checkText(text).outcome(code);
}

function message(text: string, code: string): string {
  const found = checkText(text).of(code);
  expect(found).toHaveLength(1);
  return found[0]?.message ?? "";
}

/** A front wheel in a fork, and no rear one. */
function front(pieces: Pieces): string {
  return compose({ "rear-wheel.rim": "none", "rear-wheel.tyre": "none", "rear-wheel.tube": "none", ...pieces });
}

describe("bead seats of tyre and rim", () => {
  const seats = (tyre: string, rim: string): string =>
    front({ "front-wheel.tyre": part("tyre", tyre), "front-wheel.rim": part("rim", rim) });

  it.each([
    ["size: 47-622", "bead-seat: 622", "holds"],
    ["size: 47-507", "bead-seat: 507", "holds"],
    // 26 x 1.5 against 26 x 1 1/2, 26 x 1 3/8 against 26 x 1.375, 20 in of three kinds: trade glossaries.
    ["size: 40-559", "bead-seat: 584", "fails"],
    ["size: 37-590", "bead-seat: 559", "fails"],
    ["size: 28-451", "bead-seat: 406", "fails"],
    ["size: 32-630", "bead-seat: 622", "fails"],
    ["size: 47-622", "inner-width: 19 mm", "unknown"],
    ["construction: tube", "bead-seat: 622", "unknown"],
  ])("%s on %s: %s", (tyre, rim, expected) => {
    expect(outcome(seats(tyre, rim), "wheel/tyre-seat")).toBe(expected);
  });

  it("names both seats, with the caution", () => {
    const text = seats("size: 32-630", "bead-seat: 622");
    expect(message(text, "wheel/tyre-seat")).toContain("seats on 630");
    expect(message(text, "wheel/tyre-seat")).toContain("rim has 622");
    const [finding] = checkText(text).of("wheel/tyre-seat");
    expect(finding).toMatchObject({ severity: "error", path: "front-wheel.tyre" });
    expect(finding?.caution).toContain("comes off under pressure");
    expect(finding?.repairs).toEqual([
      { kind: "swap-part", slot: "front-wheel.tyre" },
      { kind: "swap-part", slot: "front-wheel.rim" },
    ]);
  });
});

describe("wheels in fork and frame", () => {
  const held = (rim: string, fork: string, tyre?: string): string =>
    front({
      fork: part("fork", fork),
      "front-wheel.rim": part("rim", rim),
      "front-wheel.tyre": tyre === undefined ? undefined : part("tyre", tyre),
    });

  it.each([
    ["bead-seat: 622", "bead-seats: 622", undefined, "holds"],
    ["bead-seat: 584", "bead-seats: 584, 622", undefined, "holds"],
    ["bead-seat: 584", "bead-seats: 622", undefined, "fails"],
    ["bead-seat: 584", "bead-seats: 622", "size: 50-584", "fails"],
    // The tyre is for this fork, so it is the rim that is wrong, and tyre and rim are found not to go together.
    ["bead-seat: 584", "bead-seats: 622", "size: 50-622", "notApplicable"],
    ["bead-seat: 622", "bead-seats: 622", "size: 50-584", "holds"],
    ["bead-seat: 584", "bead-seats: 622", "size: 50-559", "fails"],
    ["bead-seat: 584", "axle: 15x110", undefined, "unknown"],
  ])("rim %s, fork %s, tyre %s: %s", (rim, fork, tyre, expected) => {
    expect(outcome(held(rim, fork, tyre), "wheel/wheel-size")).toBe(expected);
  });

  it("names both sizes", () => {
    expect(message(held("bead-seat: 584", "bead-seats: 559, 622"), "wheel/wheel-size")).toContain(
      "but fork takes 559 (Bead seat 559 mm",
    );
  });

  const pair = (frontSeat: number, rearSeat: number, frame = "", takes = ""): string =>
    compose({
      frame: part("frame", `rear-bead-seats: ${takes === "" ? "584, 622" : takes}${frame}`),
      fork: part("fork", "bead-seats: 584, 622"),
      "front-wheel.rim": part("rim", `bead-seat: ${frontSeat}`),
      "rear-wheel.rim": part("rim", `bead-seat: ${rearSeat}`),
    });

  it.each([
    [622, 622, "", "holds", undefined],
    [622, 622, "; mixed-wheels: no", "holds", undefined],
    [622, 584, "; mixed-wheels: yes", "holds", undefined],
    [622, 584, "; mixed-wheels: no", "fails", "error"],
    [622, 584, "", "fails", "warning"],
    [622, 584, "; mixed-wheels: none", "fails", "warning"],
  ])("%d in front and %d behind with frame%s: %s %s", (one, other, frame, expected, severity) => {
    const text = pair(one, other, frame);
    expect(outcome(text, "wheel/matching-diameters")).toBe(expected);
    expect(checkText(text).of("wheel/matching-diameters")[0]?.severity).toBe(severity);
  });

  it("leaves a wheel that the frame does not take to the check of its size", () => {
    const text = pair(622, 584, "", "622");
    expect(outcome(text, "wheel/wheel-size")).toBe("fails");
    expect(outcome(text, "wheel/matching-diameters")).toBe("notApplicable");
  });

  it("names both wheels and what mends it", () => {
    const text = pair(622, 584);
    expect(message(text, "wheel/matching-diameters")).toMatch(
      /^rim in front has the bead seat 622 .*, and rim behind 584 .*, but the frame does not say that it allows that: fit two wheels of one size/,
    );
    expect(checkText(text).of("wheel/matching-diameters")[0]).toMatchObject({ path: "rear-wheel.rim" });
    expect(checkText(text).of("wheel/matching-diameters")[0]?.repairs).toContainEqual({
      kind: "state-fact",
      slot: "frame",
      fact: "mixed-wheels",
    });
    expect(message(pair(622, 584, "; mixed-wheels: no"), "wheel/matching-diameters")).toContain(
      "frame allows no mixed wheels",
    );
  });
});

describe("tubes and valves", () => {
  const inner = (tube: string, tyre: string, rim = "valve-hole: 8.5 mm"): string =>
    front({
      "front-wheel.tube": part("tube", tube),
      "front-wheel.tyre": part("tyre", tyre),
      "front-wheel.rim": part("rim", rim),
      "front-wheel.valve": "none",
    });
  const sized = "bead-seats: 559, 571; tyre-widths: 37 to 57 mm";

  it.each([
    ["size: 47-559", "holds"],
    ["size: 37-559", "holds"],
    ["size: 57-571", "holds"],
    ["size: 36-559", "fails"],
    ["size: 58-559", "fails"],
    ["size: 47-584", "fails"],
  ])("a tube for 37 to 57 mm on 559 or 571 in %s: %s", (tyre, expected) => {
    expect(outcome(inner(sized, tyre), "wheel/tube-size")).toBe(expected);
  });

  it("says what becomes of the tube", () => {
    expect(message(inner(sized, "size: 32-559"), "wheel/tube-size")).toBe(
      "tube is for tyres 37 to 57 mm wide, but tyre is 32 mm: it folds in so narrow a tyre and is pinched. Fit a tube for 32-559.",
    );
    expect(message(inner(sized, "size: 62-559"), "wheel/tube-size")).toContain(
      "62 mm: it is stretched thin in so wide a tyre",
    );
    expect(message(inner(sized, "size: 47-584"), "wheel/tube-size")).toContain("but tyre has 584");
  });

  it("a tube for the rim in a tyre that does not fit the rim is not the tube's fault", () => {
    const text = inner(sized, "size: 47-584", "bead-seat: 559; valve-hole: 8.5 mm");
    expect(outcome(text, "wheel/tyre-seat")).toBe("fails");
    expect(outcome(text, "wheel/tube-size")).toBe("notApplicable");
  });

  it("cannot tell without the tube's range", () => {
    expect(checkText(inner("bead-seats: 559", "size: 47-559")).missing("wheel/tube-size")).toEqual([
      "front-wheel.tube.tyre-widths",
    ]);
  });

  it.each([
    ["presta", 6.5, "holds", undefined],
    ["presta", 6.8, "holds", undefined],
    ["presta", 8.5, "fails", "warning"],
    ["car", 8.5, "holds", undefined],
    ["car", 8.2, "holds", undefined],
    ["car", 8.1, "fails", "error"],
    ["car", 6.5, "fails", "error"],
  ])("a %s valve in a hole of %d mm: %s %s", (kind, hole, expected, severity) => {
    const text = inner(`valve-kind: ${kind}`, "size: 47-559", `valve-hole: ${hole} mm`);
    expect(outcome(text, "wheel/valve-hole")).toBe(expected);
    expect(checkText(text).instance("wheel/valve-hole", "front tube")).toBe(expected);
    expect(checkText(text).instance("wheel/valve-hole", "front valve")).toBe("notApplicable");
    expect(checkText(text).of("wheel/valve-hole")[0]?.severity).toBe(severity);
  });

  it("names the hole that is needed and the one that is there", () => {
    expect(message(inner("valve-kind: car", "size: 47-559", "valve-hole: 6.5 mm"), "wheel/valve-hole")).toContain(
      "needs a hole of 8.5 mm, but that of rim is 6.5 mm",
    );
    expect(message(inner("valve-kind: presta", "size: 47-559"), "wheel/valve-hole")).toContain("reducing sleeve");
  });

  it("asks a tubeless valve likewise", () => {
    const text = front({
      "front-wheel.valve": part("valve", "valve-kind: car"),
      "front-wheel.rim": part("rim", "valve-hole: 6.5 mm"),
    });
    expect(checkText(text).instance("wheel/valve-hole", "front valve")).toBe("fails");
    expect(checkText(text).of("wheel/valve-hole")[0]?.path).toBe("front-wheel.valve");
  });
});
