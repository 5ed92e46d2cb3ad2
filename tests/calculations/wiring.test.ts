import { describe, expect, it } from "vitest";

import type { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { build, parts } from "./bicycle.ts";
import { evaluate, value } from "./build.ts";
import { run } from "./run.ts";

/**
 * Which facts of a build feed which calculation. No two facts of these builds are the same number, so that one taken
 * for another (front for rear, left for right, below for above) changes a result.
 */
type Inputs = Readonly<Record<string, unknown>>;

function expectFed(bike: BuildEvaluation, assembly: string, calculation: string, inputs: Inputs): void {
  const results = Object.entries(run(calculation, inputs)).filter(([, result]) => result !== undefined);
  expect(results.length).toBeGreaterThan(0);
  for (const [name, expected] of results) {
    const actual = value(bike, `${assembly}.${name}`);
    const pairs = [expected].flat().map((one, index) => [one, [actual].flat()[index]] as const);
    expect([actual].flat().length, name).toBe(pairs.length);
    for (const [one, other] of pairs) {
      if (typeof one !== "number") expect(other, name).toBe(one);
      else expect(Math.abs((other as number) - one), `${name}: ${other} against ${one}`).toBeLessThan(1e-6);
    }
  }
}

describe("a bicycle of which no two numbers are the same", () => {
  const bike = evaluate(parts + build);
  const rings = [38, 26];
  const cogs = [11, 13, 16, 20, 25, 31, 38, 46];
  const [frontRadius, rearRadius] = [311 + 61, 292 + 54];
  const circumference = 2 * Math.PI * rearRadius;
  const work = (calculation: string, inputs: Inputs, result: string): number =>
    run(calculation, inputs)[result] as number;
  const chain: Inputs = { rings, cogs, chainstay: 439, "rear-centre-growth": 11, allowance: 3 };
  // Set to 133 of the 143 mm of travel that it comes with.
  const fork = Math.sqrt(543 ** 2 - 46 ** 2) - 10;
  const stands: Inputs = {
    reach: 447,
    stack: 623,
    "head-angle": 65.5,
    "head-tube-length": 113,
    "lower-stack": 10.5,
    "axle-to-crown": Math.hypot(fork, 46),
    "fork-offset": 46,
    chainstay: 435,
    "bottom-bracket-drop": 27,
    "front-wheel-radius": frontRadius,
    "rear-wheel-radius": rearRadius,
  };
  // Set to 158 of 173 mm of travel, and cut by 5 mm.
  const post = 447 - 15;
  const seat: Inputs = {
    "seat-angle": 71.5,
    "seat-tube-offset": 31,
    "seat-tube-length": 421,
    "post-length": post,
    "post-setback": 7,
    "saddle-height-above-rails": 48,
  };
  const saddle: Inputs = { ...seat, insertion: 187, "saddle-shift": 33 - 9 };
  const stem: Inputs = {
    reach: 447,
    stack: 623,
    "head-angle": 65.5,
    "upper-stack": 14.5,
    "spacers-below": 12.5,
    "stem-clamp-height": 39,
    "stem-length": 47,
    "stem-angle": -8,
  };
  const [clampForward, clampHeight] = [
    work("bar-position", stem, "bar-clamp-forward"),
    work("bar-position", stem, "bar-clamp-height"),
  ];
  const hands: Inputs = {
    "bar-clamp-forward": clampForward,
    "bar-clamp-height": clampHeight,
    rise: 27,
    "back-sweep": 8.5,
    "grip-distance": 196 - 66,
  };
  const handsHeight = clampHeight + 27;
  const [setback, saddleTop] = [
    work("saddle-position", saddle, "saddle-setback"),
    work("saddle-position", saddle, "saddle-top-height"),
  ];
  const headAngle = work("wheelbase", stands, "actual-head-angle");
  const frontLimits = { "tyre-greatest": 3.1, "rim-greatest": 2.9, "rim-kind-greatest": 5, "tyre-least": 1.1 };
  const rearLimits = { "tyre-greatest": 3.2, "rim-greatest": 3.4, "rim-kind-greatest": 5, "tyre-least": 1.3 };
  const frontLacing: Inputs = {
    "flange-diameter-drive-side": 47,
    "flange-diameter-non-drive-side": 58,
    "flange-offset-drive-side": 33,
    "flange-offset-non-drive-side": 24,
    "effective-rim-diameter": 601,
    "spoke-hole-diameter": 2.5,
    "spoke-holes": 28,
    "cross-drive-side": 2,
    "cross-non-drive-side": 3,
    "hole-offset": -1.5,
  };
  const rearLacing: Inputs = {
    "flange-diameter-drive-side": 56,
    "flange-diameter-non-drive-side": 51,
    "flange-offset-drive-side": 21,
    "flange-offset-non-drive-side": 35,
    "effective-rim-diameter": 563,
    "spoke-hole-diameter": 2.7,
    "spoke-holes": 32,
    "cross-drive-side": 2,
    "cross-non-drive-side": 3,
    "hole-offset": 2,
  };
  const frontWidth = { "tyre-width": 61, "rim-width": 31 };
  const rearWidth = { "tyre-width": 56.5, "measured-on-rim": 25, "rim-width": 28 };
  const tensions = (lacing: Inputs, tension: number): Inputs => ({
    tension,
    "tension-ratio": work("lacing", lacing, "tension-ratio"),
    "tighter-side": run("lacing", lacing)["tighter-side"],
    "spoke-holes": lacing["spoke-holes"],
  });
  const bikeMass =
    3010 +
    2020 +
    430 +
    140 +
    310 +
    420 +
    260 +
    610 +
    380 +
    120 +
    180 +
    340 +
    520 +
    490 +
    210 +
    210 +
    910 +
    870 +
    150 +
    290;
  const allMass = bikeMass + 95 + 640 + 270 + 190 + 160;

  it.each<readonly [assembly: string, calculation: string, inputs: Inputs]>([
    ["drivetrain", "front-difference", { rings }],
    ["drivetrain", "capacity-needed", { rings, cogs }],
    ["drivetrain", "cog-steps", { cogs }],
    ["drivetrain", "gear-ratios", { rings, cogs }],
    ["drivetrain", "gear-developments", { rings, cogs, "wheel-circumference": circumference }],
    ["drivetrain", "gear-speeds", { rings, cogs, "wheel-circumference": circumference, cadence: 83 }],
    ["drivetrain", "gain-ratios", { rings, cogs, "wheel-circumference": circumference, "crank-length": 167.5 }],
    ["drivetrain", "chain-length", chain],
    [
      "drivetrain",
      "longest-chain",
      { rings, cogs, "links-needed": work("chain-length", chain, "chain-links-needed"), "total-capacity": 53 },
    ],
    [
      "drivetrain",
      "slack-gears",
      {
        rings,
        cogs,
        links: 118,
        "links-needed": work("chain-length", chain, "chain-links-needed"),
        "total-capacity": 53,
      },
    ],
    ["drivetrain", "chainline-offset", { chainline: 48.3, "cog-line": 45.1 }],
    [
      "drivetrain",
      "chain-angle",
      { rings, cogs, chainline: 48.3, "ring-spacing": 7.6, "cog-line": 45.1, "cog-pitch": 4.4, chainstay: 431 },
    ],
    ["drivetrain", "indexing-error", { "pull-per-click": 3.7, "actuation-ratio": 1.13, "cog-pitch": 4.4, clicks: 7 }],
    ["front-wheel", "wheel-size", { "bead-seat": 622, "tyre-width": 61 }],
    ["rear-wheel", "wheel-size", { "bead-seat": 584, "tyre-width": 56.5, "tyre-height": 54 }],
    ["front-wheel", "tyre-width", frontWidth],
    ["rear-wheel", "tyre-width", rearWidth],
    ["front-wheel", "pressure-limits", frontLimits],
    ["rear-wheel", "pressure-limits", rearLimits],
    ["front-wheel", "lacing", frontLacing],
    ["rear-wheel", "lacing", rearLacing],
    ["front-wheel", "spoke-tensions", tensions(frontLacing, 1060)],
    ["rear-wheel", "spoke-tensions", tensions(rearLacing, 1190)],
    ["front-brake", "rotor-adapter", { "native-rotor": 181, rotor: 203 }],
    ["rear-brake", "rotor-adapter", { "native-rotor": 161, rotor: 183 }],
    ["geometry", "effective-top-tube", { reach: 447, stack: 623, "seat-angle": 76.25 }],
    ["geometry", "wheelbase", stands],
    [
      "geometry",
      "lean-clearance",
      {
        "crank-axis-height": work("wheelbase", stands, "crank-axis-height"),
        "crank-length": 167.5,
        "pedal-underside": 11,
        "pedal-outer-edge": 171 / 2 + 103,
        "tyre-radius": work("tyre-width", rearWidth, "tyre-width-on-rim") / 2,
      },
    ],
    ["steering", "trail", { "wheel-radius": frontRadius, "head-angle": headAngle, "fork-offset": 46 }],
    [
      "steering",
      "steerer-stack",
      {
        "lower-stack": 10.5,
        "head-tube-length": 113,
        "upper-stack": 14.5,
        "spacers-below": 12.5,
        "stem-clamp-height": 39,
        "spacers-above": 4,
      },
    ],
    ["steering", "steerer-length", { "steerer-stack": 10.5 + 113 + 14.5 + 12.5 + 39 + 4, "cap-gap": 2.5 }],
    ["cockpit", "bar-position", stem],
    ["cockpit", "hand-position", hands],
    [
      "cockpit",
      "spacers-for-height",
      { "hands-height": handsHeight, "wanted-height": 712, "spacers-below": 12.5, "head-angle": 65.5 },
    ],
    [
      "cockpit",
      "saddle-to-bar-drop",
      {
        "saddle-top-height": saddleTop,
        "bar-clamp-height": clampHeight,
        "saddle-setback": setback,
        "bar-clamp-forward": clampForward,
      },
    ],
    ["seat", "saddle-position", saddle],
    [
      "seat",
      "saddle-range",
      { ...seat, "post-least-insertion": 93, "frame-least-insertion": 105, "greatest-insertion": 242 },
    ],
    ["seat", "post-insertion", { ...seat, "saddle-height": 726 }],
    ["seat", "saddle-height", { inseam: 845, "crank-length": 167.5 }],
    ["seat", "crank-length", { inseam: 845 }],
    [
      "seat",
      "saddle-to-tyre",
      {
        "rails-back": setback - 33,
        "rails-up": saddleTop - 48,
        "rails-to-tail": 134,
        "tail-rise": 19,
        "dropper-travel": 158,
        "seat-angle": 71.5,
        chainstay: 431,
        "bottom-bracket-drop": 27,
        "rear-travel": 137,
        "growth-full": 11,
        "wheel-radius": rearRadius,
      },
    ],
    [
      "seat",
      "rider-centre",
      {
        "rider-height": 1790,
        "saddle-setback": setback,
        "saddle-top-height": saddleTop,
        "hands-forward": work("hand-position", hands, "hands-forward"),
        "hands-height": handsHeight,
        "crank-length": 167.5,
      },
    ],
    ["suspension", "leverage", { "rear-travel": 137, stroke: 52.5 }],
    ["suspension", "shock-sag", { sag: 29, stroke: 52.5, "rear-travel": 137 }],
    ["suspension", "fork-sag", { sag: 17, travel: 133, "head-angle": 65.5 }],
  ])("%s: %s", (assembly, calculation, inputs) => {
    expectFed(bike, assembly, calculation, inputs);
  });

  it("feeds the toe clearance with the wheel as the bicycle stands", () => {
    // The chart's axle, turned by the frame's tilt, by a rotation of complex numbers.
    const axle = [work("wheelbase", stands, "front-axle-forward"), work("wheelbase", stands, "front-axle-height")];
    const tilt = (work("wheelbase", stands, "frame-tilt") * Math.PI) / 180;
    const [distance, slope] = [
      Math.hypot(axle[0] as number, axle[1] as number),
      Math.atan2(axle[1] as number, axle[0] as number),
    ];
    expectFed(bike, "geometry", "toe-clearance", {
      "front-axle-forward": distance * Math.cos(slope + tilt),
      "bottom-bracket-drop": distance * Math.sin(slope + tilt),
      "head-angle": headAngle,
      "fork-offset": 46,
      "wheel-radius": frontRadius,
      "tyre-width": work("tyre-width", frontWidth, "tyre-width-on-rim"),
      "crank-length": 167.5,
      "pedal-lateral": 171 / 2 + 103 / 2,
    });
  });

  it("feeds the effect of the fork with the chart's fork and the one fitted", () => {
    const chart = { ...stands, "axle-to-crown": 529, "fork-offset": 41 };
    const rearAxle = Math.sqrt(435 ** 2 - 27 ** 2);
    expectFed(bike, "steering", "fork-length-effect", {
      wheelbase: work("wheelbase", chart, "front-axle-forward") + rearAxle,
      "head-angle": 65.5,
      "fork-length-change": fork - Math.sqrt(529 ** 2 - 41 ** 2),
      chainstay: 435,
      "bottom-bracket-drop": 27,
      "wheel-radius": frontRadius,
      "fork-offset": 46,
    });
  });

  it("weighs and prices every assembly by itself", () => {
    for (const [assembly, mass, price] of [
      ["drivetrain", 310 + 420 + 260 + 610 + 380 + 120, "390.00"],
      ["front-brake", 190, "35.00"],
      ["rear-brake", 160, "33.00"],
      ["cockpit", 150 + 290 + 95, "135.00"],
      ["seat", 640 + 270, "265.00"],
      ["front-wheel", 180 + 520 + 210 + 910, "192.00"],
      ["rear-wheel", 340 + 490 + 210 + 870, "236.00"],
    ] as const) {
      expect(value(bike, `${assembly}.mass-at-least`), assembly).toBe(mass);
      expect(value(bike, `${assembly}.price-at-least`), assembly).toEqual([`GBP ${price}`]);
    }
    expect(value(bike, "bike.mass-at-least")).toBe(allMass);
    expect(value(bike, "bike.price-at-least")).toEqual(["GBP 3086.00"]);
    expect(value(bike, "rear-wheel.heaviest-part")).toBe("rear-wheel.tyre");
    expect(value(bike, "bike.heaviest-part")).toBe("frame");
  });

  it("balances rider and parts, and loads the wheels and tyres by it", () => {
    const tilt = (work("wheelbase", stands, "frame-tilt") * Math.PI) / 180;
    const rearAxle = [-Math.sqrt(435 ** 2 - 27 ** 2), 27] as const;
    const frontAxle = [
      work("wheelbase", stands, "front-axle-forward"),
      work("wheelbase", stands, "front-axle-height"),
    ] as const;
    const rider = {
      "rider-height": 1790,
      "saddle-setback": setback,
      "saddle-top-height": saddleTop,
      "hands-forward": work("hand-position", hands, "hands-forward"),
      "hands-height": handsHeight,
      "crank-length": 167.5,
    };
    const grip = [rider["hands-forward"], handsHeight] as const;
    const [angle, tube] = [(71.5 * Math.PI) / 180, 421];
    const seatTube = [
      31 * Math.sin(angle) - tube * Math.cos(angle),
      31 * Math.cos(angle) + tube * Math.sin(angle),
    ] as const;
    const headTube = [447, 623] as const;
    const middle = (...points: readonly (readonly [number, number])[]): readonly [number, number] => [
      points.reduce((sum, [x]) => sum + x, 0) / points.length,
      points.reduce((sum, [, y]) => sum + y, 0) / points.length,
    ];
    const crank = [0, 0] as const;
    const masses: readonly (readonly [number, readonly [number, number]])[] = [
      [
        74_000,
        [work("rider-centre", rider, "rider-centre-forward"), work("rider-centre", rider, "rider-centre-height")],
      ],
      [3010, middle(crank, headTube, seatTube)],
      [2020, middle(frontAxle, headTube)],
      [430, middle(crank, seatTube)],
      [140, headTube],
      [310 + 420, rearAxle],
      [260 + 610 + 380, crank],
      [120 + 150 + 290 + 95, grip],
      [640 + 270, [-setback, saddleTop]],
      [190 + 180 + 520 + 210 + 910, frontAxle],
      [160 + 340 + 490 + 210 + 870, rearAxle],
    ];
    // Nose up by the tilt about the crank axis, then set on the ground behind.
    const turned = ([x, y]: readonly [number, number]): readonly [number, number] => [
      x * Math.cos(tilt) - y * Math.sin(tilt),
      x * Math.sin(tilt) + y * Math.cos(tilt),
    ];
    const [behind, above] = turned(rearAxle);
    const total = masses.reduce((sum, [mass]) => sum + mass, 0);
    const [forward, height] = [0, 1].map(
      (at) => masses.reduce((sum, [mass, place]) => sum + mass * (turned(place)[at] as number), 0) / total,
    ) as [number, number];
    const centre = { forward: forward - behind, height: height - above + rearRadius };
    expect(value(bike, "bike.total-mass")).toBeCloseTo(total / 1000, 9);
    expect(total).toBe(74_000 + allMass);
    expect(value(bike, "bike.centre-forward")).toBeCloseTo(centre.forward, 6);
    expect(value(bike, "bike.centre-height")).toBeCloseTo(centre.height, 6);
    const loads = {
      mass: total,
      wheelbase: work("wheelbase", stands, "wheelbase"),
      "centre-forward": centre.forward,
      "centre-height": centre.height,
    };
    expectFed(bike, "bike", "wheel-loads", loads);
    const riding = {
      "rider-mass": 74_000,
      "kit-mass": 6300,
      "bike-mass": allMass,
      "front-share": work("wheel-loads", loads, "front-share"),
    };
    expectFed(bike, "bike", "riding-load", riding);
    for (const [wheel, seatDiameter, width, rim, limits] of [
      ["front-wheel", 622, frontWidth, 31, frontLimits],
      ["rear-wheel", 584, rearWidth, 28, rearLimits],
    ] as const) {
      expectFed(bike, wheel, "starting-pressure", {
        "wheel-load": work("riding-load", riding, `${wheel}-load`),
        "bead-seat": seatDiameter,
        "tyre-width": work("tyre-width", width, "tyre-width-on-rim"),
        "rim-width": rim,
        "least-pressure": limits["tyre-least"],
        "greatest-pressure": work("pressure-limits", limits, "greatest-pressure"),
      });
    }
  });
});
