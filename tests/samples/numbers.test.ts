import { describe, expect, test } from "vitest";
import { openSamples, reportOf } from "./workshop.ts";

/*
 * Numbers of the samples worked out here once more, by formulas that are not the program's own code. The inputs are
 * those of the samples, which are invented; the source of each formula stands beside it.
 */

const engine = openSamples();

function worked(build: string, path: string): unknown {
  const quantity = reportOf(engine, build).evaluation.quantity(path);
  if (quantity?.state !== "known") throw new Error(`${build}/${path} is not worked out: ${JSON.stringify(quantity)}`);
  return quantity.value;
}

/** Chain length by the approximate formula of Machinery's Handbook (from memory), in half-inch pitches. */
function handbookPitches(ring: number, cog: number, centres: number): number {
  const k = centres / 12.7;
  return 2 * k + (ring + cog) / 2 + ((ring - cog) / (2 * Math.PI)) ** 2 / k;
}

describe("the gravel bike, 46-30 with 11-36", () => {
  test("total capacity is the difference of the rings and of the cogs (common practice)", () => {
    // (46 - 30) + (36 - 11) = 16 + 25
    expect(worked("ulpha-54", "drivetrain.capacity-needed")).toBe(41);
  });

  test("chain length agrees with the handbook's approximate formula", () => {
    const exact = worked("ulpha-54", "drivetrain.chain-links-exact");
    expect(exact).toBeCloseTo(handbookPitches(46, 36, 430), 2);
    // By hand: 2 x 33.858 + 41 + 2.533 / 33.858 = 108.792; with the two of the derailleur 110.792, so 112.
    expect(exact).toBeCloseTo(108.792, 2);
    expect(worked("ulpha-54", "drivetrain.chain-links-needed")).toBe(112);
  });

  test("gear inches are wheel diameter in inches times ring by cog (Wikipedia, Gear inches)", () => {
    // Over a tyre 38 mm high on a bead seat of 622 mm: 698 mm = 27.4803 in.
    const inches = worked("ulpha-54", "drivetrain.gear-inches") as readonly number[];
    expect(Math.min(...inches)).toBeCloseTo((27.4803 * 30) / 36, 3);
    expect(Math.max(...inches)).toBeCloseTo((27.4803 * 46) / 11, 2);
  });
});

describe("the hardtail", () => {
  test("one ring of 32 with 10-52: 42 teeth, and 114 links where 116 are cut", () => {
    expect(worked("fellside-l", "drivetrain.capacity-needed")).toBe(42);
    // By hand: 2 x 33.701 + 42 + 10.132 / 33.701 = 109.702; with the four of the derailleur 113.702.
    expect(handbookPitches(32, 52, 428)).toBeCloseTo(109.702, 3);
    expect(worked("fellside-l", "drivetrain.chain-links-exact")).toBeCloseTo(109.702, 2);
    expect(worked("fellside-l", "drivetrain.chain-links-needed")).toBe(114);
    expect(worked("fellside-l", "drivetrain.surplus-links")).toBe(2);
  });

  test("spoke lengths by the formula of the Wikipedia article Spoke, and as the build states them", () => {
    const length = (offset: number, circle: number, rim: number, hole: number): number =>
      Math.sqrt(
        offset ** 2 +
          (circle / 2) ** 2 +
          (rim / 2) ** 2 -
          2 * (circle / 2) * (rim / 2) * Math.cos(((360 * 3) / 16) * (Math.PI / 180)),
      ) -
      hole / 2;
    const { slots } = reportOf(engine, "fellside-l").assembly;
    for (const [wheel, drive, other] of [
      ["front-wheel", length(38, 52, 603, 2.6), length(27.5, 52, 603, 2.6)],
      ["rear-wheel", length(22, 56, 603, 2.6), length(36.5, 54, 603, 2.6)],
    ] as const) {
      expect(worked("fellside-l", `${wheel}.spoke-length-drive-side`)).toBeCloseTo(drive, 6);
      expect(worked("fellside-l", `${wheel}.spoke-length-non-drive-side`)).toBeCloseTo(other, 6);
      const stated = slots.get(`${wheel}.spokes`)?.settings.get("length-drive-side");
      expect(stated?.state === "stated" && Math.abs(Number(stated.value) - drive) < 1).toBe(true);
    }
  });
});

describe("full suspension", () => {
  test("the chain is sized at the longest rear centre: 438 mm and 11 mm of growth", () => {
    expect(worked("torver-m", "drivetrain.chain-links-exact")).toBeCloseTo(handbookPitches(32, 52, 449), 2);
    expect(worked("torver-m", "drivetrain.chain-allowance")).toBe(2);
    expect(worked("torver-m", "drivetrain.chain-links-needed")).toBe(116);
  });
});

describe("one gear", () => {
  test("100 links are taut where the handbook's formula for the centre distance says", () => {
    // C = (p / 8) (2L - N - n + sqrt((2L - N - n)^2 - (8 / pi^2) (N - n)^2)), Machinery's Handbook (from memory).
    const sum = 2 * 100 - 44 - 18;
    const centres = (12.7 / 8) * (sum + Math.sqrt(sum ** 2 - (8 / Math.PI ** 2) * (44 - 18) ** 2));
    expect(centres).toBeGreaterThan(425);
    expect(centres).toBeLessThan(445);
    const lengths = worked("kirkgate-55", "drivetrain.tension-links") as readonly number[];
    const stays = worked("kirkgate-55", "drivetrain.tension-chainstays") as readonly number[];
    expect(stays[lengths.indexOf(100)]).toBeCloseTo(centres, 1);
  });
});

describe("three rings", () => {
  test("44-32-22 with 11-34 asks for 45 teeth, all that the cage takes up", () => {
    expect(worked("wasdale-56", "drivetrain.capacity-needed")).toBe(22 + 23);
    expect(worked("wasdale-56", "drivetrain.spare-capacity")).toBe(0);
  });
});
