import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import {
  beltLoop,
  centreDistanceFor,
  chainLoop,
  chainPitchRadius,
  loopLength,
} from "../../server/calculations/shared/chain-geometry.ts";
import { calculate, expectAgree, expectAsPublished, number, refused } from "./calculate.ts";

const math = create(all ?? {});

describe("pitch diameter of a sprocket", () => {
  // Machine-design textbook notes, chain drives part 3: pitch ÷ sin(180° ÷ teeth).
  it.each([
    [11, "45.07821"],
    [17, "69.11583"],
    [34, "137.64198"],
    [50, "202.25983"],
  ])("of %i teeth is %s mm", (teeth, published) => {
    expectAsPublished(2 * chainPitchRadius(teeth), published);
  });
});

describe("chain length", () => {
  it.each([
    ["20 t", "20 t", "254 mm", 60, 60],
    ["50 t", "34 t", "410 mm", 106.767896, 108],
    ["32 t", "51 t", "438 mm", 110.741689, 112],
  ])("round %s and %s at %s is exact", (rings, cogs, chainstay, exact, even) => {
    const inputs = { rings, cogs, chainstay, allowance: "0" };
    expectAgree(number("chain-length", inputs, "chain-links-exact"), exact);
    expect(number("chain-length", inputs, "chain-links-needed")).toBe(even);
  });

  it.each([
    ["50-34 t", "11-34 t", "410 mm", 110, 110],
    ["32 t", "10-51 t", "438 mm", 114, 114],
  ])("%s with %s at %s by the big-big rule and by the inch rule", (rings, cogs, chainstay, needed, rough) => {
    // Common practice, no source.
    const inputs = { rings, cogs, chainstay, allowance: "2" };
    expect(number("chain-length", inputs, "chain-links-needed")).toBe(needed);
    expect(number("chain-length", inputs, "chain-rule-of-thumb")).toBe(rough);
  });

  it("reads a chainstay in inches", () => {
    const inches = number("chain-length", { rings: "50 t", cogs: "34 t", chainstay: "16.14 in" }, "chain-links-exact");
    expectAgree(inches, loopLength(chainLoop(50, 34), 16.14 * 25.4).pitches);
  });

  it("lies close to the handbook's approximation, which is a little short", () => {
    // Machinery's Handbook (from memory): L = 2K + (N + n)/2 + ((N − n)/2π)² ÷ K.
    for (const [ring, cog, centre, approximate] of [
      [50, 34, 410, 106.767792],
      [32, 51, 438, 110.741519],
    ] as const) {
      const k = centre / 12.7;
      expectAgree(2 * k + (ring + cog) / 2 + ((ring - cog) / (2 * Math.PI)) ** 2 / k, approximate);
      const exact = loopLength(chainLoop(ring, cog), centre).pitches;
      expect(exact).toBeGreaterThan(approximate);
      expect(exact - approximate).toBeLessThan(0.001);
    }
  });

  it("agrees with the stored worked example of 20 and 63 teeth at 36 pitches: 114.8", () => {
    // Engineering text after the handbook's formulas; K = 36 inferred.
    expectAsPublished(loopLength(chainLoop(63, 20), 36 * 12.7).pitches, "114.8");
  });

  it("agrees with that example's inverse: 114 pitches are taut at 35.6 pitches", () => {
    const distance = centreDistanceFor(chainLoop(63, 20), 114);
    expectAsPublished((distance as number) / 12.7, "35.6");
  });

  it("agrees with the length of the curve, measured along it by numbers", () => {
    // Independent: the loop as a curve, its length integrated by Simpson's rule with mathjs numbers.
    const [ring, cog, centre] = [44, 16, 407.3];
    const [big, small] = [chainPitchRadius(ring), chainPitchRadius(cog)];
    const tilt = math.asin((big - small) / centre) as number;
    // A chain on a sprocket lies in chords: along the arc every pitch is 2 r sin(π ÷ teeth).
    const arc = (radius: number, teeth: number, from: number, to: number): number => {
      const steps = 20_000;
      let sum = 0;
      for (let step = 0; step < steps; step++) {
        const [a, b] = [from + ((to - from) * step) / steps, from + ((to - from) * (step + 1)) / steps];
        sum += math.hypot(radius * (math.cos(b) - math.cos(a)), radius * (math.sin(b) - math.sin(a))) as number;
      }
      return sum / (radius * ((2 * Math.PI) / teeth));
    };
    const touch = (x: number, radius: number, side: 1 | -1): [number, number] => [
      x + radius * Math.sin(tilt),
      side * radius * Math.cos(tilt),
    ];
    const [x1, y1] = touch(0, big, 1);
    const [x2, y2] = touch(centre, small, 1);
    const run = math.distance([x1, y1], [x2, y2]) as number;
    const pitches =
      (2 * run) / 12.7 +
      arc(big, ring, Math.PI / 2 - tilt, (3 * Math.PI) / 2 + tilt) +
      arc(small, cog, -Math.PI / 2 + tilt, Math.PI / 2 - tilt);
    expectAgree(loopLength(chainLoop(ring, cog), centre).pitches, pitches, 1e-7);
  });

  it("refuses a ring and a cog that would touch", () => {
    expect(refused("chain-length", { rings: "50 t", cogs: "51 t", chainstay: "200 mm" })).toMatch(/touch/);
  });
});

describe("single-speed chain", () => {
  it("finds the distance at which a whole length is taut, as mathjs finds it", () => {
    const results = calculate("single-speed-chain", { ring: "44 t", cog: "16 t", chainstay: "395 to 420 mm" });
    const [links, places] = [results["tension-links"] as number[], results["tension-chainstays"] as number[]];
    expect(links.length).toBe(2);
    links.forEach((count, index) => {
      const loop = chainLoop(44, 16);
      // Newton's method on mathjs's own arithmetic, from the handbook's approximate centre distance.
      const approximate =
        (12.7 / 8) * (2 * count - 60 + Math.sqrt((2 * count - 60) ** 2 - (8 / Math.PI ** 2) * (44 - 16) ** 2));
      let centre = approximate;
      for (let turn = 0; turn < 8; turn++) {
        const a = math.asin(math.divide(loop.frontRadius - loop.rearRadius, centre) as number) as number;
        const length =
          (2 * centre * (math.cos(a) as number)) / 12.7 + 44 * (0.5 + a / Math.PI) + 16 * (0.5 - a / Math.PI);
        centre -= ((length - count) * 12.7) / (2 * (math.cos(a) as number));
      }
      expectAgree(places[index] as number, centre, 1e-9);
      expect(Math.abs(approximate - centre)).toBeLessThan(0.02);
    });
  });
});

describe("chain wear", () => {
  // Common practice, no source.
  it("marks 0.5 % over twelve inches at 306.324 mm", () => {
    expectAsPublished(
      number("chain-wear", { pitches: "24", "wear-limit": "0.5 %" }, "chain-length-at-limit"),
      "306.324",
    );
  });
  it("marks 0.75 % over ten inches at 255.905 mm", () => {
    expectAsPublished(
      number("chain-wear", { pitches: "20", "wear-limit": "0.75 %" }, "chain-length-at-limit"),
      "255.905",
    );
  });
});

describe("belt length", () => {
  it("is the wheel's whole circumference and two runs for equal wheels", () => {
    const inputs = { ring: "32 t", sprocket: "32 t", chainstay: "440 to 462 mm", pitch: "11 mm" };
    expect(number("belt-length", inputs, "belt-teeth-least")).toBeCloseTo(112, 9);
    expect(number("belt-length", inputs, "belt-teeth-greatest")).toBeCloseTo(116, 9);
  });

  it("goes to and fro between teeth and distance", () => {
    const inputs = { ring: "55 t", sprocket: "22 t", chainstay: "430 to 460 mm", "belt-teeth": "122" };
    const distance = number("belt-length", inputs, "belt-chainstay");
    expectAgree(loopLength(beltLoop(55, 22, 11), distance).pitches, 122, 1e-12);
  });
});
