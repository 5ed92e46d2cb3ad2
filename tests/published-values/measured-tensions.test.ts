import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { calculate, expectAgree, expectAsPublished, number, refused } from "./calculate.ts";

const math = create(all ?? {});

const spread = (tensions: string) => ({ tensions, "spread-tolerance": "20 %" });

describe("spread of measured spoke tensions", () => {
  // Common practice, no source: within 10 % is good, 20 % is the limit; the set and its mean worked by hand.
  const good = "1000, 1040, 980, 1010, 960, 1020, 990, 1000 N";

  it("mean 1000.0 N, largest deviation 4.000 %", () => {
    expectAsPublished(number("tension-spread", spread(good), "mean-tension"), "1000.0");
    expectAsPublished(number("tension-spread", spread(good), "greatest-deviation"), "4.000");
    expect(calculate("tension-spread", spread(good))["uneven-spokes"]).toEqual([]);
  });

  it("a set with one spoke of 780 N does not pass", () => {
    const bad = good.replace("1010", "780");
    expect(calculate("tension-spread", spread(bad))["uneven-spokes"]).toEqual([4]);
  });

  it("agrees with the mean and the extremes of mathjs, whatever the unit", () => {
    const kilograms = [104.5, 98.2, 101.7, 110.3, 95.9];
    const newtons = kilograms.map((one) => one * 9.80665);
    const results = calculate("tension-spread", spread(`${kilograms.join(", ")} kgf`));
    expectAgree(Number(results["mean-tension"]), math.mean(newtons));
    expectAgree(Number(results["lowest-tension"]), math.min(newtons));
    expectAgree(Number(results["highest-tension"]), math.max(newtons));
    expectAgree(
      Number(results["greatest-deviation"]),
      (100 * (math.max(newtons) - math.mean(newtons))) / math.mean(newtons),
    );
  });

  it("finds spokes of another tension by their places, however few are even", () => {
    for (let bad = 0; bad < 8; bad++) {
      const tensions = Array.from({ length: 8 }, (_, index) => (index === bad ? 600 : 1000));
      expect(calculate("tension-spread", spread(`${tensions.join(", ")} N`))["uneven-spokes"]).toEqual([bad + 1]);
    }
    // Their mean is 966.7 N, of which the two good ones are 24 % more and the bad one 48 % less.
    expect(calculate("tension-spread", spread("1200, 1200, 500 N"))["uneven-spokes"]).toEqual([3]);
  });

  it("refuses spokes without tension", () => {
    expect(refused("tension-spread", spread("1000, 0, 900 N"))).toBe("tension 2 must be more than zero.");
  });
});

describe("balance of measured spoke tensions", () => {
  // Flanges 37 and 18 mm from the middle, holes on 45 mm, rim of 600 mm, 16 a side, three crossings.
  const wheel = {
    "flange-diameter-drive-side": "45 mm",
    "flange-diameter-non-drive-side": "45 mm",
    "flange-offset-drive-side": "18 mm",
    "flange-offset-non-drive-side": "37 mm",
    "effective-rim-diameter": "600 mm",
    "spoke-hole-diameter": "2.6 mm",
    "spoke-holes": "32",
    "cross-drive-side": "3",
    "cross-non-drive-side": "3",
  };
  const ratio = number("lacing", wheel, "tension-ratio");
  const sides = (drive: string, nonDrive: string) => ({
    "mean-drive-side": drive,
    "mean-non-drive-side": nonDrive,
    "tension-ratio": `${ratio} %`,
    "tighter-side": "drive-side",
  });

  it("1200 N on the drive side ask for 587.334 N on the other", () => {
    // Statics, worked independently by script: bracing angles of 3.5259° and 7.21841°.
    expectAsPublished(number("tension-balance", sides("1200 N", "587 N"), "expected-slacker-tension"), "587.334");
    expectAgree(ratio / 100, Math.sin((3.5259 * Math.PI) / 180) / Math.sin((7.21841 * Math.PI) / 180), 1e-5);
  });

  it("pulls equally on both sides at the expected tension: tension times the sine of the bracing angle", () => {
    const [flat, steep] = [
      number("lacing", wheel, "bracing-angle-drive-side"),
      number("lacing", wheel, "bracing-angle-non-drive-side"),
    ];
    for (const drive of [900, 1050, 1200]) {
      const other = number("tension-balance", sides(`${drive} N`, "500 N"), "expected-slacker-tension");
      expectAgree(drive * Math.sin((flat * Math.PI) / 180), other * Math.sin((steep * Math.PI) / 180));
    }
  });

  it("a tenth too much is 10 % off, a tenth too little -10 %", () => {
    expectAgree(number("tension-balance", sides("1000 N", `${ratio * 11} N`), "off-balance"), 10);
    expectAgree(number("tension-balance", sides("1000 N", `${ratio * 9} N`), "off-balance"), -10);
  });
});
