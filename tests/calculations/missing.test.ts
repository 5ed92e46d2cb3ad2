import { describe, expect, it } from "vitest";
import { build, parts } from "./bicycle.ts";
import { evaluate, missing, none, value } from "./build.ts";
import { run } from "./run.ts";

/** The bicycle with one text put in another's place, which has to be there. */
function bicycle(...changes: readonly (readonly [from: string, to: string])[]) {
  let text = parts + build;
  for (const [from, to] of changes) {
    expect(text, from).toContain(from);
    text = text.replace(from, to);
  }
  return evaluate(text);
}

const paths = (path: string, ...changes: readonly (readonly [string, string])[]): readonly string[] => [
  ...new Set(missing(bicycle(...changes), path)),
];

describe("what is not stated", () => {
  // A number, what is left out of the bicycle, and the facts that are then asked for.
  it.each<readonly [path: string, left: string, asked: readonly string[]]>([
    ["drivetrain.chain-angles", "ring-spacing: 7.6 mm; ", ["drivetrain.crankset.ring-spacing"]],
    ["drivetrain.chain-angles", "; cog-pitch: 4.4 mm", ["drivetrain.cassette.cog-pitch"]],
    ["drivetrain.chain-angles", "chainline: 48.3 mm; ", ["drivetrain.crankset.chainline"]],
    ["drivetrain.chainline-offset", "chainline: 48.3 mm; ", ["drivetrain.crankset.chainline"]],
    ["drivetrain.chainline-offset", "cog-line: 45.1 mm; ", ["rear-wheel.hub.cog-line"]],
    ["drivetrain.chain-links-needed", "rear-travel: 137 mm; ", ["frame.rear-travel"]],
    ["drivetrain.chain-links-needed", "; rear-centre-growth-full: 11 mm", ["frame.rear-centre-growth-full"]],
    ["drivetrain.gear-speeds", "; cadence: 83 rpm", ["rider.cadence"]],
    ["rear-wheel.spoke-length-drive-side", "  hole-offset: 2 mm; ", ["rear-wheel.rim.hole-offset"]],
    ["rear-wheel.spoke-length-drive-side", "cross: 3; ", ["rear-wheel.spokes.cross"]],
    ["rear-wheel.tyre-width-on-rim", "measured-on-rim: 25 mm; ", ["rear-wheel.tyre.measured-on-rim"]],
    ["front-wheel.greatest-pressure", "; greatest-pressure: 2.9 bar", ["front-wheel.rim.greatest-pressure"]],
    ["front-wheel.least-pressure", "least-pressure: 1.1 bar; ", ["front-wheel.tyre.least-pressure"]],
    ["cockpit.bar-clamp-height", "clamp-height: 39 mm; ", ["cockpit.stem.clamp-height"]],
    ["cockpit.bar-clamp-height", "spacers-below: 12.5 mm; ", ["cockpit.stem.spacers-below"]],
    ["cockpit.hands-forward", "rise: 27 mm; ", ["cockpit.handlebar.rise"]],
    ["cockpit.hands-forward", "back-sweep: 8.5°; ", ["cockpit.handlebar.back-sweep"]],
    ["cockpit.hands-forward", "control-length: 196 mm; ", ["cockpit.handlebar.control-length"]],
    ["cockpit.hands-forward", "length: 132 mm; ", ["cockpit.grips.length"]],
    ["seat.saddle-setback", "seat-tube-offset: 31 mm; ", ["frame.seat-tube-offset"]],
    ["seat.saddle-setback", "setback: 7 mm; ", ["seat.post.setback"]],
    ["seat.saddle-setback", "clamp-to-sitting: 33 mm; ", ["seat.saddle.clamp-to-sitting"]],
    ["seat.saddle-setback", " { rail-position: -9 mm }", ["seat.saddle.rail-position"]],
    ["seat.insertion-for-height", "seat-tube-offset: 31 mm; ", ["frame.seat-tube-offset"]],
    ["seat.insertion-for-height", "setback: 7 mm; ", ["seat.post.setback"]],
    ["seat.highest-saddle", "seat-tube-offset: 31 mm; ", ["frame.seat-tube-offset"]],
    ["seat.highest-saddle", "setback: 7 mm; ", ["seat.post.setback"]],
    ["seat.highest-saddle", "least-post-insertion: 105 mm; ", ["frame.least-post-insertion"]],
    ["seat.saddle-to-tyre", "rear-travel: 137 mm; ", ["frame.rear-travel"]],
    ["seat.saddle-to-tyre", "tail-rise: 19 mm; ", ["seat.saddle.tail-rise"]],
    ["steering.trail-after", "size: 61-622; ", ["front-wheel.tyre.size"]],
    ["geometry.wheelbase", "travel: 143 mm; ", ["fork.travel"]],
    ["steering.head-angle-after", "travel: 143 mm; ", ["fork.travel"]],
    ["bike.all-up-mass", "; mass: 430 g", ["rear-shock.mass"]],
    ["bike.total-mass", "; mass: 430 g", ["rear-shock.mass"]],
    ["bike.total-mass", "seat-tube-offset: 31 mm; ", ["frame.seat-tube-offset"]],
  ])("for %s without «%s»", (path, left, asked) => {
    expect(paths(path, [left, ""])).toEqual(asked);
  });

  it("is asked for once, and together", () => {
    const bare = bicycle(["cross: 3; cross-drive-side: 2; ", ""], ["  hole-offset: 2 mm; ", "  "]);
    expect(missing(bare, "rear-wheel.spoke-length-drive-side")).toEqual([
      "rear-wheel.spokes.cross",
      "rear-wheel.rim.hole-offset",
    ]);
  });

  it("leaves the results that do not need it", () => {
    expect(value(bicycle(["least-pressure: 1.1 bar; ", ""]), "front-wheel.greatest-pressure")).toBe(2.9);
    const noRadius = bicycle(["size: 61-622; ", ""]);
    expect(value(noRadius, "steering.fork-length-difference")).toBeCloseTo(
      Math.sqrt(543 ** 2 - 46 ** 2) - 10 - Math.sqrt(529 ** 2 - 41 ** 2),
      9,
    );
  });

  it("is not asked for where it does not matter", () => {
    // A single ring has no neighbour, a bar that is not swept no grips to sweep, a flat bar no rise.
    const single = bicycle(["rings: 38-26 t; ring-spacing: 7.6 mm; ", "rings: 38 t; "]);
    expect(value(single, "drivetrain.greatest-chain-angle")).toBeGreaterThan(0);
    const straight = bicycle(["back-sweep: 8.5°; control-length: 196 mm; ", "back-sweep: 0°; "]);
    const swept = bicycle();
    expect(
      (value(straight, "cockpit.hands-forward") as number) - (value(swept, "cockpit.hands-forward") as number),
    ).toBeCloseTo(130 * Math.sin((8.5 * Math.PI) / 180), 9);
    const flat = bicycle(["bar: riser; rise: 27 mm; ", "bar: flat; "]);
    expect(
      (value(swept, "cockpit.hands-height") as number) - (value(flat, "cockpit.hands-height") as number),
    ).toBeCloseTo(27, 9);
    expect(missing(bicycle(["bar: riser; rise: 27 mm; ", "bar: swept-back; "]), "cockpit.hands-height")).toEqual([
      "cockpit.handlebar.rise",
    ]);
  });

  it("is not asked of a fork whose travel stays as it comes", () => {
    const asItComes = bicycle(["; travel-set: 133 mm", ""], ["travel: 143 mm; ", ""]);
    expect(value(asItComes, "steering.fork-length-difference")).toBeCloseTo(
      Math.sqrt(543 ** 2 - 46 ** 2) - Math.sqrt(529 ** 2 - 41 ** 2),
      9,
    );
  });

  it("stands in for by the usual share where the position is not known", () => {
    const load = value(bicycle(["rail-position: -9 mm", "tilt: 0°"]), "bike.front-wheel-load") as number;
    const known = value(bicycle(), "bike.front-wheel-load") as number;
    const all = value(bicycle(), "bike.all-up-mass") as number;
    expect(load).toBeCloseTo(0.45 * all, 6);
    expect(Math.abs(load - known)).toBeGreaterThan(100);
  });

  it("is named among what nobody weighed or priced", () => {
    const bike = bicycle(["; mass: 430 g; price: GBP 250.00", ""]);
    expect(value(bike, "bike.unweighed-parts")).toEqual(["rear-shock"]);
    expect(value(bike, "bike.unpriced-parts")).toEqual(["rear-shock"]);
    expect(value(bike, "bike.price-at-least")).toEqual(["GBP 2836.00"]);
    expect(value(bike, "seat.unpriced-parts")).toEqual([]);
  });
});

describe("what means nothing for a bicycle", () => {
  it.each<readonly [path: string, from: string, to: string, reason: RegExp]>([
    ["cockpit.spacers-needed", "; grip-stack: 712 mm", "", /grip-stack/],
    [
      "drivetrain.primary-ratio",
      "cog-line: 45.1 mm; ",
      "cog-line: 45.1 mm; gears: 8; lowest-gear: 0.5; gear-range: 3; ",
      /more than one ring/,
    ],
    ["drivetrain.lowest-ratio", "cog-line: 45.1 mm; ", "cog-line: 45.1 mm; gears: 8; ", /hub changes gear/],
    [
      "rear-wheel.spoke-length-drive-side",
      "flange-offset-right: 21 mm; spoke-head: elbow",
      "flange-offset-right: 21 mm; spoke-head: straight",
      /straight-pull/,
    ],
    [
      "rear-wheel.spoke-length-drive-side",
      "cross-drive-side: 2; lacing: even; tension: 1190 N",
      "lacing: paired",
      /only an even lacing/,
    ],
    ["seat.saddle-setback", "insertion: 187 mm", "insertion: 440 mm", /deeper than it is long/],
    ["front-brake.caliper-shift", "native-rotor: 181 mm", "native-rotor: 220 mm", /cannot take a smaller/],
  ])("%s with «%s» made «%s»", (path, from, to, reason) => {
    expect(none(bicycle([from, to]), path)).toMatch(reason);
  });

  it("is a difference of rings where there are none", () => {
    const bare = [
      ["rings: 38-26 t; ", "rings: none; "],
      ["crankset: kestle.arm;", "crankset: kestle.arm; chainring: none;"],
    ] as const;
    expect(none(bicycle(...bare), "drivetrain.front-difference")).toMatch(/no ring is fitted/);
  });

  it("is no longer a single primary ratio with two cogs", () => {
    const gears = "cog-line: 45.1 mm; gears: 8; lowest-gear: 0.5; gear-range: 3; ";
    const ring = ["rings: 38-26 t; ring-spacing: 7.6 mm; ", "rings: 38 t; "] as const;
    const hub = ["cog-line: 45.1 mm; ", gears] as const;
    expect(none(bicycle(ring, hub), "drivetrain.primary-ratio")).toMatch(/more than one ring or sprocket/);
    const one = bicycle(ring, hub, ["cogs: 11-13-16-20-25-31-38-46 t", "cogs: 19 t"]);
    expect(value(one, "drivetrain.primary-ratio")).toBe(2);
  });

  it("is the start of a tyre whose kept pressure is told", () => {
    const lines = (bike: ReturnType<typeof bicycle>): readonly string[] =>
      bike.working("front-wheel.starting-pressure");
    const kept = lines(bicycle(["greatest-pressure: 3.1 bar", "greatest-pressure: 1.2 bar"]));
    expect(kept).toContain("Kept inside the limits: 1.2 bar");
    const free = run("starting-pressure", {
      "wheel-load": 45_000,
      "bead-seat": 622,
      "tyre-width": 40,
      "rim-width": 22,
    });
    expect(free["starting-pressure"]).toBe(free["pressure-for-drop"]);
    expect(lines(bicycle(["rider { mass: 74 kg", "rider { mass: 84 kg"])).some((line) => line.startsWith("Kept"))).toBe(
      false,
    );
  });
});
