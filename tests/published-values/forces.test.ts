import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { calculate, expectAgree, expectAsPublished, number, refused } from "./calculate.ts";

const math = create(all ?? {});

describe("suspension", () => {
  // Trade magazines of 2023 quote the ratios with one decimal.
  it.each([
    ["90 mm", "42.5 mm", "2.117647", "2.1"],
    ["160 mm", "57 mm", "2.807018", "2.8"],
    ["150 mm", "55 mm", "2.727273", "2.7"],
  ])("leverage of %s on %s", (travel, stroke, exact, quoted) => {
    const leverage = number("leverage", { "rear-travel": travel, stroke }, "leverage");
    expectAsPublished(leverage, exact);
    expectAsPublished(leverage, quoted);
  });

  it("sag of 30 % of 55 mm is 16.5 mm, and the same share at the wheel", () => {
    const inputs = { sag: "30 %", stroke: "55 mm", "rear-travel": "150 mm" };
    expectAsPublished(number("shock-sag", inputs, "shock-sag"), "16.500");
    expectAgree(number("shock-sag", inputs, "rear-wheel-sag") / 150, 0.3);
  });

  it("coil for 520 N at a leverage of 2.7 and 19.5 mm of sag", () => {
    const inputs = { "wheel-load": "520 N", leverage: "2.7", "shock-sag": "19.5 mm" };
    expectAsPublished(number("spring-rate", inputs, "spring-rate"), "72.00000");
    expectAsPublished(number("spring-rate", inputs, "spring-rate-inch"), "411.1306");
    expectAsPublished(number("spring-rate", inputs, "wheel-rate"), "9.87654");
    expectAgree(number("spring-rate", inputs, "spring-rate-inch"), math.unit(72, "N/mm").toNumber("lbf/inch"), 1e-9);
  });

  it.each([
    ["0 mm", "0 mm", "0.00000", "0"],
    ["20 mm", "60 mm", "19.68102", "1.54969"],
  ])("growth of the rear centre about a pivot at %s, %s", (forward, up, growth, pitches) => {
    const inputs = {
      "pivot-forward": forward,
      "pivot-up": up,
      "axle-back": "430 mm",
      "axle-up": "35 mm",
      "rear-travel": "140 mm",
    };
    expectAsPublished(number("chain-growth", inputs, "growth-full"), growth);
    expectAsPublished(number("chain-growth", inputs, "growth-pitches"), pitches);
    expectAgree(number("chain-growth", inputs, "loop-growth"), 2 * number("chain-growth", inputs, "growth-greatest"));
  });

  it("turns the arm as mathjs's rotation matrix does", () => {
    const [pivot, axle] = [
      [35, 85],
      [-420, 20],
    ] as const;
    // Halving finds the turn at which the axle has risen by the travel.
    const turned = (angle: number): number[] => {
      const moved = math.multiply(math.rotationMatrix(angle), [axle[0] - pivot[0], axle[1] - pivot[1]]) as unknown as {
        toArray(): number[];
      };
      const arm = Array.isArray(moved) ? (moved as number[]) : moved.toArray();
      return [pivot[0] + (arm[0] as number), pivot[1] + (arm[1] as number)];
    };
    let [low, high] = [-1, 0];
    for (let halving = 0; halving < 80; halving++) {
      const middle = (low + high) / 2;
      if ((turned(middle)[1] as number) - axle[1] > 150) low = middle;
      else high = middle;
    }
    const growth = (math.norm(turned(low)) as number) - Math.hypot(...axle);
    const inputs = {
      "pivot-forward": "35 mm",
      "pivot-up": "85 mm",
      "axle-back": "420 mm",
      "axle-up": "20 mm",
      "rear-travel": "150 mm",
    };
    expectAgree(number("chain-growth", inputs, "growth-full"), growth, 1e-9);
  });
});

describe("bolts", () => {
  // Stress areas: ISO 898-1, from memory; the tables print 8.78, 14.2, 20.1 and 36.6 mm².
  it.each([
    ["4 mm", "0.7 mm", "8.77870", "3818.73"],
    ["5 mm", "0.8 mm", "14.18252", "6169.39"],
    ["6 mm", "1 mm", "20.12333", "8753.65"],
    ["8 mm", "1.25 mm", "36.60846", "15924.68"],
  ])("M%s of pitch %s in class 8.8 to 75 % of proof", (diameter, pitch, area, preload) => {
    const inputs = { "bolt-diameter": diameter, "thread-pitch": pitch, "proof-stress": "580 MPa" };
    expectAsPublished(number("bolt-preload", inputs, "stress-area"), area);
    expectAsPublished(number("bolt-preload", inputs, "preload"), preload);
  });

  it.each([
    ["5 N·m", "5 mm", "0.20", "5000.0"],
    ["5 N·m", "5 mm", "0.15", "6666.67"],
  ])("%s on M%s at K %s clamps", (torque, diameter, friction, force) => {
    const inputs = { torque, "bolt-diameter": diameter, "friction-factor": friction };
    expectAsPublished(number("clamp-force", inputs, "clamp-force"), force);
  });

  // Fastener dealers' tables: torque for 75 % of proof, dry and oiled, printed in whole pound-force inches.
  it.each([
    ["M5", "5 mm", "0.8 mm", "54 in-lb", "0.20"],
    ["M5", "5 mm", "0.8 mm", "41 in-lb", "0.15"],
    ["M6", "6 mm", "1 mm", "92 in-lb", "0.20"],
    ["M6", "6 mm", "1 mm", "69 in-lb", "0.15"],
    ["M8", "8 mm", "1.25 mm", "225 in-lb", "0.20"],
  ])("%s of class 8.8 agrees with the dealers' table to two in a hundred", (_, diameter, pitch, torque, friction) => {
    const clamp = number(
      "clamp-force",
      { torque, "bolt-diameter": diameter, "friction-factor": friction },
      "clamp-force",
    );
    const preload = number(
      "bolt-preload",
      { "bolt-diameter": diameter, "thread-pitch": pitch, "proof-stress": "580 MPa" },
      "preload",
    );
    expectAgree(clamp, preload, 0.02);
  });

  it("turns 40 N·m into 32 on a wrench of 200 mm with 50 mm more in line", () => {
    const inputs = { "torque-wanted": "40 N·m", "wrench-length": "200 mm", extension: "50 mm" };
    expectAsPublished(number("wrench-extension", inputs, "wrench-setting"), "32.000");
  });

  it.each([
    ["5", "110 mm", "64.65638"],
    ["5", "130 mm", "76.41208"],
    ["5", "144 mm", "84.64108"],
    ["4", "104 mm", "73.53911"],
    ["4", "110 mm", "77.78175"],
    ["6", "44 mm", "22.0000"],
  ])("%s bolts on %s are apart", (bolts, circle, apart) => {
    expectAsPublished(number("bolt-circle", { bolts, "bolt-circle": circle }, "adjacent-bolts"), apart);
    const back = number("bolt-circle", { bolts, "adjacent-distance": `${apart} mm` }, "bolt-circle-diameter");
    expectAgree(back, Number.parseFloat(circle), 1e-6);
  });

  it("skip one of six on 44 mm at 38.10512 mm", () => {
    expectAsPublished(number("bolt-circle", { bolts: "6", "bolt-circle": "44 mm" }, "next-but-one-bolts"), "38.10512");
  });
});

describe("loads", () => {
  // Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1; their gravity is 9.81 m/s².
  const benchmark = {
    masses: "2, 85, 4, 3 kg",
    forward: "0, 300, 900, 1020 mm",
    heights: "300, 900, 700, 350 mm",
  };

  it("centre of mass of the benchmark bicycle", () => {
    const centre = calculate("centre-of-mass", benchmark);
    expectAsPublished(centre["total-mass"] as number, "94");
    expectAsPublished((centre["centre-forward"] as number) / 1000, "0.3421277");
    expectAsPublished((centre["centre-height"] as number) / 1000, "0.8611702");
    // The paper's gravity stiffness, from memory: -80.95 kg m.
    expectAsPublished(((centre["centre-height"] as number) / 1000) * (centre["total-mass"] as number), "80.9500");
  });

  it("loads of the benchmark bicycle", () => {
    const centre = calculate("centre-of-mass", benchmark);
    const loads = calculate("wheel-loads", {
      mass: "94 kg",
      wheelbase: "1.02 m",
      "centre-forward": `${centre["centre-forward"]} mm`,
      "centre-height": `${centre["centre-height"]} mm`,
    });
    expectAsPublished(loads["front-share"] as number, "33.54193");
    const toPaper = 9.81 / 9.80665;
    expectAsPublished((loads["front-force"] as number) * toPaper, "309.3035");
    expectAsPublished((loads["rear-force"] as number) * toPaper, "612.8365");
    expectAsPublished((loads["pitch-over-share"] as number) / 100, "0.787153");
    expectAsPublished((loads["pitch-over-deceleration"] as number) * toPaper, "7.72197");
    // A quarter of the mass in front, TBIS 4210-2:2018: the centre at 255 mm or more.
    expectAsPublished(loads["centre-for-quarter"] as number, "255.0");
  });

  it("share 90 kg as 40.5 and 49.5 kg", () => {
    // Common practice, no source: about 45 to 55.
    const loads = calculate("riding-load", { "rider-mass": "75 kg", "kit-mass": "3 kg", "bike-mass": "12 kg" });
    expectAsPublished((loads["front-wheel-load"] as number) / 1000, "40.50");
    expectAsPublished((loads["rear-wheel-load"] as number) / 1000, "49.50");
  });

  it("refuse a centre behind the rear wheel", () => {
    expect(refused("wheel-loads", { mass: "80 kg", wheelbase: "1 m", "centre-forward": "-10 mm" })).toMatch(/tip/);
  });
});
