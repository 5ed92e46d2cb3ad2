import { describe, expect, it } from "vitest";
import { screwThread } from "../../server/checks/shared/screw-thread.ts";
import { checkText } from "./check-text.ts";
import { compose, part } from "./compose.ts";

const code = "wheel/axle-nut-thread";

const wheel = (nuts: string, hub: string): string =>
  compose({
    "front-wheel.axle": "none",
    "rear-wheel.hub": part("hub", hub),
    "rear-wheel.axle": part("axle-nuts", nuts),
  });

const threads = (nuts: string, axle: string): string =>
  wheel(`thread: "${nuts}"`, `axle-fastening: nutted; axle-thread: "${axle}"`);

describe(code, () => {
  it.each([
    ["M10 x 1", "M10x1", "holds", undefined],
    ["10 x 1 mm", "M10 × 1.0", "holds", undefined],
    ["3/8 x 26 tpi", "3/8 in x 26", "holds", undefined],
    // 9.525 mm and 0.977 mm: written in another way, the same thread.
    ["3/8 x 24 tpi", "9.5 x 24 tpi", "holds", undefined],
    ["M9 x 1", "M10 x 1", "fails", "error"],
    ["M10 x 1", "M9 x 1", "fails", "error"],
    ["5/16 x 24 tpi", "M8 x 1", "fails", "error"],
    ["3/8 x 24 tpi", "3/8 x 26 tpi", "fails", "error"],
    ["M10 x 1.25", "M10 x 1", "fails", "error"],
    ["M10 x 26", "M10 x 1", "fails", "warning"],
    ["M10", "M10 x 1", "unknown", undefined],
    ["M10", "M10", "holds", undefined],
    ["M9", "M10 x 1", "fails", "error"],
    ["coarse", "Coarse", "holds", undefined],
    ["coarse", "M10 x 1", "unknown", undefined],
  ])("nuts of %s on an axle of %s: %s %s", (nuts, axle, outcome, severity) => {
    const text = checkText(threads(nuts, axle));
    expect(text.instance(code, "rear")).toBe(outcome);
    expect(text.of(code)[0]?.severity).toBe(severity);
  });

  it.each([
    ['thread: "M10 x 1"', "axle-fastening: nutted", "unknown", ["rear-wheel.hub.axle-thread"]],
    ["spanner: 15 mm", 'axle-fastening: nutted; axle-thread: "M10 x 1"', "unknown", ["rear-wheel.axle.thread"]],
    ["spanner: 15 mm", "axle-fastening: nutted", "unknown", ["rear-wheel.axle.thread", "rear-wheel.hub.axle-thread"]],
    ["spanner: 15 mm", "axle-fastening: quick-release", "notApplicable", []],
    ['thread: "M9 x 1"', 'axle-fastening: bolted; axle-thread: "M10 x 1"', "fails", []],
    ['thread: "M9 x 1"', 'axle-thread: "M10 x 1"', "fails", []],
    ["thread: none", 'axle-fastening: nutted; axle-thread: "M10 x 1"', "notApplicable", []],
    ['thread: "M9 x 1"', "axle-fastening: nutted; axle-thread: none", "notApplicable", []],
  ])("nuts with %s on a hub with %s: %s", (nuts, hub, outcome, missing) => {
    const text = checkText(wheel(nuts, hub));
    expect(text.instance(code, "rear")).toBe(outcome);
    expect(text.missing(code)).toEqual(missing);
  });

  it("asks nothing of a skewer", () => {
    const text = compose({
      "rear-wheel.axle": "none",
      "front-wheel.hub": part("hub", 'axle-thread: "M9 x 1"'),
      "front-wheel.axle": part("quick-release", "wheel: front"),
    });
    expect(checkText(text).outcome(code)).toBe("notApplicable");
  });

  it("names both threads and what is wrong with them", () => {
    const said = (nuts: string, axle: string) => checkText(threads(nuts, axle)).of(code)[0]?.message;
    expect(said("M9 x 1", "M10 x 1")).toBe(
      "axle have the thread M9 x 1, but the axle of hub has M10 x 1: they are too small to go on. Fit nuts of M10 x 1.",
    );
    expect(said("M10 x 1", "M9 x 1")).toMatch(/too large, and hold by nothing but the crests/);
    expect(said("3/8 x 24", "3/8 x 26")).toMatch(/go on for a turn or two, jam and strip/);
    expect(said("M10 x 26", "M10 x 1")).toMatch(/nearly alike.*try them by hand/);
    const text = checkText(threads("M10", "M10 x 1"));
    expect(text.row(code).missing[0]?.what).toBe(
      'the thread of axle with its pitch, such as "M10 x 1" or "3/8 x 26 tpi"',
    );
  });
});

describe("a screw thread as the trade writes it", () => {
  it.each([
    ["M10 x 1", 10, 1],
    ["M9.5x1,0", 9.5, 1],
    ["M 10 * 1.25 mm", 10, 1.25],
    ["10 x 26 tpi", 10, 25.4 / 26],
    ["10 x 26", 10, 25.4 / 26],
    ["3/8 x 26 tpi", 9.525, 25.4 / 26],
    ['5/16"-24', 7.9375, 25.4 / 24],
    ["5/16 inch × 24", 7.9375, 25.4 / 24],
    ["3/8", 9.525, undefined],
    ["M10", 10, undefined],
  ])("%s", (text, diameter, pitch) => {
    const thread = screwThread(text);
    expect(thread?.diameter).toBeCloseTo(diameter, 9);
    if (pitch === undefined) expect(thread?.pitch).toBeUndefined();
    else expect(thread?.pitch).toBeCloseTo(pitch, 9);
  });

  it.each(["", "fine", "M", "x 1", "M10 x", "3/0 x 24", "0 x 1", "M10 x 0", "10 x 1 x 2"])("'%s' is none", (text) => {
    expect(screwThread(text)).toBeUndefined();
  });
});
