import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evenAtLeast, evenAtMost } from "../../server/calculations/shared/chain-geometry.ts";
import { refusal, run } from "./run.ts";

const ring = fc.integer({ min: 22, max: 60 });
const cog = fc.integer({ min: 9, max: 52 });
const chainstay = fc.double({ min: 390, max: 520, noNaN: true });
const number = (value: unknown): number => value as number;

describe("capacity", () => {
  it("depends on the ends alone, not on their order nor on what lies between", () => {
    fc.assert(
      fc.property(fc.array(ring, { minLength: 1 }), fc.array(cog, { minLength: 1 }), (rings, cogs) => {
        const needed = run("capacity-needed", { rings, cogs })["capacity-needed"];
        const ends = {
          rings: [Math.min(...rings), Math.max(...rings)],
          cogs: [Math.max(...cogs), Math.min(...cogs)],
        };
        expect(run("capacity-needed", ends)["capacity-needed"]).toBe(needed);
      }),
    );
  });
});

describe("chain length", () => {
  it("is symmetric: ring and cog may change places", () => {
    fc.assert(
      fc.property(ring, cog, chainstay, (a, b, stay) => {
        const one = run("chain-length", { rings: [a], cogs: [b], chainstay: stay })["chain-links-exact"];
        const other = run("chain-length", { rings: [b], cogs: [a], chainstay: stay })["chain-links-exact"];
        expect(number(one)).toBeCloseTo(number(other), 9);
      }),
    );
  });

  it("grows with ring, cog, chainstay and allowance", () => {
    fc.assert(
      fc.property(ring, cog, chainstay, (a, b, stay) => {
        const exact = (rings: number, cogs: number, length: number): number =>
          number(run("chain-length", { rings: [rings], cogs: [cogs], chainstay: length })["chain-links-exact"]);
        const here = exact(a, b, stay);
        expect(exact(a + 1, b, stay)).toBeGreaterThan(here);
        expect(exact(a, b + 1, stay)).toBeGreaterThan(here);
        expect(exact(a, b, stay + 1)).toBeGreaterThan(here);
      }),
    );
  });

  it("is needed in even links, at most two more than exact and allowance", () => {
    fc.assert(
      fc.property(ring, cog, chainstay, fc.integer({ min: 0, max: 8 }), (a, b, stay, allowance) => {
        const results = run("chain-length", { rings: [a], cogs: [b], chainstay: stay, allowance });
        const least = number(results["chain-links-exact"]) + allowance;
        expect(number(results["chain-links-needed"]) % 2).toBe(0);
        expect(number(results["chain-links-needed"])).toBeGreaterThanOrEqual(least - 0.05 - 1e-9);
        expect(number(results["chain-links-needed"])).toBeLessThan(least + 1.95 + 1e-9);
      }),
    );
  });

  it("counts a growing rear centre as a longer chainstay and a shrinking one as none", () => {
    const given = { rings: [32], cogs: [51], chainstay: 440, allowance: 2 };
    const longer = run("chain-length", { ...given, chainstay: 455 });
    expect(run("chain-length", { ...given, "rear-centre-growth": 15 })).toEqual(longer);
    expect(run("chain-length", { ...given, "rear-centre-growth": -15 })).toEqual(run("chain-length", given));
  });

  it("rounds whole even lengths to themselves", () => {
    expect([
      evenAtLeast(112),
      evenAtLeast(112.0000000001),
      evenAtLeast(112.05),
      evenAtLeast(112.06),
      evenAtLeast(111),
    ]).toEqual([112, 112, 112, 114, 112]);
    expect([evenAtMost(112), evenAtMost(111.9999999999), evenAtMost(111.99), evenAtMost(113)]).toEqual([
      112, 112, 110, 112,
    ]);
  });
});

describe("slack of a chain", () => {
  it("never hangs at the needed length while the capacity suffices", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(ring, { minLength: 1, maxLength: 3 }),
        fc.uniqueArray(cog, { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 0, max: 12 }),
        (rings, cogs, spare) => {
          const capacity = number(run("capacity-needed", { rings, cogs })["capacity-needed"]) + spare;
          if (capacity === 0) return;
          const common = { rings, cogs, "links-needed": 110, "total-capacity": capacity };
          expect(run("slack-gears", { ...common, links: 110 })["slack-gears"]).toEqual([]);
          const longest = number(run("longest-chain", common)["longest-useful-links"]);
          expect(run("slack-gears", { ...common, links: longest })["slack-gears"]).toEqual([]);
          expect(run("slack-gears", { ...common, links: longest + 2 })["slack-gears"]).not.toEqual([]);
        },
      ),
    );
  });
});

describe("single-speed chain", () => {
  it("comes back to the length from the distance at which it is taut", () => {
    fc.assert(
      fc.property(ring, cog, chainstay, (a, b, stay) => {
        const results = run("single-speed-chain", { ring: a, cog: b, chainstay: { least: stay, greatest: stay + 30 } });
        const places = results["tension-chainstays"] as readonly number[];
        (results["tension-links"] as readonly number[]).forEach((links, index) => {
          const exact = run("chain-length", { rings: [a], cogs: [b], chainstay: places[index], allowance: 0 });
          expect(number(exact["chain-links-exact"])).toBeCloseTo(links, 7);
        });
      }),
    );
  });

  it("always finds a length within 12.7 mm and a little of adjustment", () => {
    fc.assert(
      fc.property(ring, cog, chainstay, (a, b, stay) => {
        // A little more than the 12.7 mm of equal wheels, since unequal ones lengthen the chain less than twice.
        const results = run("single-speed-chain", {
          ring: a,
          cog: b,
          chainstay: { least: stay, greatest: stay + 13.2 },
        });
        expect((results["tension-links"] as readonly number[]).length).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});

describe("gears", () => {
  it("stand from the lowest to the highest on every ring, and the range spans them", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(ring, { minLength: 1, maxLength: 3 }),
        fc.uniqueArray(cog, { minLength: 1, maxLength: 12 }),
        (rings, cogs) => {
          const results = run("gear-ratios", { rings, cogs });
          const ratios = results["gear-ratios"] as readonly number[];
          expect(ratios.length).toBe(rings.length * cogs.length);
          for (let start = 0; start < ratios.length; start += cogs.length) {
            const onRing = ratios.slice(start, start + cogs.length);
            expect([...onRing].sort((x, y) => x - y)).toEqual(onRing);
          }
          expect(number(results["gear-range"])).toBeCloseTo((100 * Math.max(...ratios)) / Math.min(...ratios), 6);
        },
      ),
    );
  });
});

describe("wheels", () => {
  it("mirror: changing the sides changes only their names", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 12, max: 40, noNaN: true }),
        fc.double({ min: 12, max: 40, noNaN: true }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (drive, other, shift, cross) => {
          const wheel = (right: number, left: number, offset: number) =>
            run("lacing", {
              "flange-diameter-drive-side": 52,
              "flange-diameter-non-drive-side": 52,
              "flange-offset-drive-side": right,
              "flange-offset-non-drive-side": left,
              "effective-rim-diameter": 590,
              "spoke-hole-diameter": 2.5,
              "spoke-holes": 32,
              "cross-drive-side": cross,
              "cross-non-drive-side": cross,
              "hole-offset": offset,
            });
          const [one, mirrored] = [wheel(drive, other, shift), wheel(other, drive, -shift)];
          expect(one["spoke-length-drive-side"]).toBe(mirrored["spoke-length-non-drive-side"]);
          expect(one["tension-ratio"]).toBe(mirrored["tension-ratio"]);
        },
      ),
    );
  });

  it("balance: the pull toward either side is the same", () => {
    const wheel = run("lacing", {
      "flange-diameter-drive-side": 48,
      "flange-diameter-non-drive-side": 57,
      "flange-offset-drive-side": 19,
      "flange-offset-non-drive-side": 34,
      "effective-rim-diameter": 601,
      "spoke-hole-diameter": 2.6,
      "spoke-holes": 28,
      "cross-drive-side": 3,
      "cross-non-drive-side": 2,
    });
    const tensions = run("spoke-tensions", {
      tension: 1150,
      "tension-ratio": wheel["tension-ratio"],
      "tighter-side": wheel["tighter-side"],
      "spoke-holes": 28,
    });
    const pull = (side: string): number =>
      number(tensions[`tension-${side}`]) * Math.sin((number(wheel[`bracing-angle-${side}`]) * Math.PI) / 180);
    expect(pull("drive-side")).toBeCloseTo(pull("non-drive-side"), 6);
  });

  it("make a tyre wider on a wider rim", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 70, noNaN: true }),
        fc.double({ min: 0.4, max: 0.6, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (width, share, more) => {
          const on = width * share;
          const before = run("tyre-width", { "tyre-width": width, "measured-on-rim": on, "rim-width": on });
          const after = run("tyre-width", { "tyre-width": width, "measured-on-rim": on, "rim-width": on + more });
          expect(number(before["tyre-width-on-rim"])).toBeCloseTo(width, 6);
          expect(number(after["tyre-width-on-rim"])).toBeGreaterThan(width);
        },
      ),
    );
  });

  it("need more pressure for more load and less for a wider tyre", () => {
    const start = (load: number, width: number): number =>
      number(
        run("starting-pressure", { "wheel-load": load, "bead-seat": 622, "tyre-width": width, "rim-width": 20 })[
          "pressure-for-drop"
        ],
      );
    expect(start(50_000, 32)).toBeGreaterThan(start(40_000, 32));
    expect(start(50_000, 32)).toBeGreaterThan(start(50_000, 40));
    // Twice the load on the same patch is twice the pressure.
    expect(start(80_000, 32)).toBeCloseTo(2 * start(40_000, 32), 9);
  });
});

describe("steering", () => {
  it("has less trail with more offset and a steeper head", () => {
    const trail = (angle: number, offset: number): number =>
      number(run("trail", { "wheel-radius": 340, "head-angle": angle, "fork-offset": offset }).trail);
    expect(trail(72, 50)).toBeLessThan(trail(72, 45));
    expect(trail(73, 45)).toBeLessThan(trail(72, 45));
  });

  it("puts the bar where the spacers for a height say", () => {
    const frame = { reach: 400, stack: 600, "head-angle": 70, "upper-stack": 10, "stem-clamp-height": 40 };
    const stem = { "stem-length": 80, "stem-angle": -6 };
    const now = run("bar-position", { ...frame, ...stem, "spacers-below": 12 });
    const change = run("spacers-for-height", {
      "hands-height": now["bar-clamp-height"],
      "wanted-height": number(now["bar-clamp-height"]) + 17,
      "spacers-below": 12,
      "head-angle": 70,
    });
    const then = run("bar-position", { ...frame, ...stem, "spacers-below": change["spacers-needed"] });
    expect(number(then["bar-clamp-height"])).toBeCloseTo(number(now["bar-clamp-height"]) + 17, 9);
    expect(number(then["bar-clamp-forward"])).toBeCloseTo(
      number(now["bar-clamp-forward"]) - number(change["hands-move-back"]),
      9,
    );
  });

  it("gains toe clearance with a longer front centre and loses it with a longer crank", () => {
    const clearance = (forward: number, crank: number): number =>
      number(
        run("toe-clearance", {
          "front-axle-forward": forward,
          "bottom-bracket-drop": 70,
          "head-angle": 72,
          "fork-offset": 45,
          "wheel-radius": 340,
          "tyre-width": 35,
          "crank-length": crank,
          "pedal-lateral": 118,
        })["toe-clearance"],
      );
    expect(clearance(600, 170)).toBeGreaterThan(clearance(590, 170));
    expect(clearance(590, 165)).toBeGreaterThan(clearance(590, 175));
  });
});

describe("nonsense", () => {
  it.each([
    ["chain-length", { rings: [], cogs: [11], chainstay: 410 }, /rings names no tooth count/],
    ["chain-length", { rings: [50], cogs: [34], chainstay: 0 }, /chainstay must be more than zero/],
    ["chain-angle", { rings: [50, 34], cogs: [11], chainline: 44, "cog-line": 44, chainstay: 410 }, /ring-spacing/],
    ["wheel-loads", { mass: 90_000, wheelbase: 0, "centre-forward": 10 }, /wheelbase must be more than zero/],
    ["rotor-adapter", { "native-rotor": 180, rotor: 160 }, /180 mm rotor cannot take a smaller one of 160 mm/],
    ["pressure-limits", { "tyre-greatest": 5, "rim-greatest": 4, "tyre-least": 4.5 }, /4\.5 bar or more/],
    [
      "single-speed-chain",
      { ring: 44, cog: 16, chainstay: { least: 420, greatest: 400 } },
      /shorter than the shortest/,
    ],
    ["bolt-circle", { bolts: 5 }, /Give either/],
    [
      "lean-clearance",
      { "crank-axis-height": 170, "crank-length": 175, "pedal-underside": 10, "pedal-outer-edge": 170 },
      /upright/,
    ],
    ["trail", { "wheel-radius": 340, "head-angle": 90, "fork-offset": 45 }, /head-angle must lie between/],
    ["price", { prices: "a hundred pounds" }, /is no price/],
  ])("is refused by %s", (name, inputs, reason) => {
    expect(refusal(name, inputs)).toMatch(reason);
  });
});
