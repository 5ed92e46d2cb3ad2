import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { sweepToe } from "../../server/calculations/shared/toe-sweep.ts";
import { calculate, expectAgree, expectAsPublished, number, type Written } from "./calculate.ts";

const math = create(all ?? {});

describe("trail", () => {
  // Definitions of the Wikipedia article "Bicycle and motorcycle geometry"; numbers worked independently.
  it.each([
    ["336 mm", "73°", "45 mm", "55.66938", "53.23689", "15.56496", "54.192"],
    ["372 mm", "65°", "44 mm", "124.91782", "113.21399", "47.84630", "72.013"],
  ])("radius %s, head angle %s, offset %s", (radius, angle, offset, trail, mechanical, flop, height) => {
    const inputs = { "wheel-radius": radius, "head-angle": angle, "fork-offset": offset };
    expectAsPublished(number("trail", inputs, "trail"), trail);
    expectAsPublished(number("trail", inputs, "mechanical-trail"), mechanical);
    expectAsPublished(number("trail", inputs, "wheel-flop"), flop);
    expectAsPublished(number("trail", inputs, "axis-height-share"), height);
  });

  it("of the benchmark bicycle is 0.08 m", () => {
    // Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1: tilt π/10, front radius 0.35 m, trail 0.08 m.
    const offset = 350 * Math.sin(Math.PI / 10) - 80 * Math.cos(Math.PI / 10);
    expectAsPublished(offset / 1000, "0.0320714");
    const inputs = { "wheel-radius": "350 mm", "head-angle": "72°", "fork-offset": `${offset} mm` };
    expectAsPublished(number("trail", inputs, "trail") / 1000, "0.080000");
    expectAsPublished(number("trail", inputs, "mechanical-trail") / 1000, "0.0760845");
    expectAsPublished(number("trail", inputs, "wheel-flop") / 1000, "0.0235114");
  });

  it("meets the ground where the steering axis does, as mathjs crosses the lines", () => {
    const [radius, angle, offset] = [341, (71.3 * Math.PI) / 180, 49];
    // Axle at (0, radius); a point of the axis lies the offset behind it, square to it.
    const point = [-offset * Math.sin(angle), radius - offset * Math.cos(angle)];
    const along = [Math.cos(angle), -Math.sin(angle)];
    const crossing = math.intersect(
      point,
      math.add(point, math.multiply(along, 1000)) as number[],
      [-1000, 0],
      [1000, 0],
    ) as number[];
    const inputs = { "wheel-radius": "341 mm", "head-angle": "71.3°", "fork-offset": "49 mm" };
    expectAgree(number("trail", inputs, "trail"), crossing[0] as number, 1e-9);
  });

  it("gives the flop factor as the curvature of the wheel's true fall, not the fall at a right angle", () => {
    // A knife-edge wheel: R (1 − √(1 − cos² t sin² d)) − o cos t (1 − cos d), by rotation of axes.
    for (const [radius, head, offset, at30, at90] of [
      [336, 73, 45, "1.84693", "1.52488"],
      [372, 65, 44, "5.90874", "16.25830"],
    ] as const) {
      const t = (head * Math.PI) / 180;
      const fall = (d: number): number =>
        radius * (1 - Math.sqrt(1 - (Math.cos(t) * Math.sin(d)) ** 2)) - offset * Math.cos(t) * (1 - Math.cos(d));
      expectAsPublished(fall(Math.PI / 6), at30);
      expectAsPublished(fall(Math.PI / 2), at90);
      const step = 1e-3;
      const curvature = (fall(step) - 2 * fall(0) + fall(-step)) / step ** 2;
      const inputs = { "wheel-radius": `${radius} mm`, "head-angle": `${head}°`, "fork-offset": `${offset} mm` };
      expectAgree(number("trail", inputs, "wheel-flop"), curvature, 1e-4);
    }
  });
});

describe("front centre and wheelbase", () => {
  const frame: Written = {
    reach: "385 mm",
    stack: "560 mm",
    "head-angle": "73°",
    "head-tube-length": "150 mm",
    "lower-stack": "2 mm",
    "axle-to-crown": "371 mm",
    "fork-offset": "45 mm",
    chainstay: "410 mm",
  };

  it("by rotation of axes, worked independently", () => {
    expectAsPublished(number("wheelbase", frame, "front-axle-forward"), "580.1432");
    expectAsPublished(number("wheelbase", frame, "front-axle-height"), "75.6289");
    expectAsPublished(number("wheelbase", frame, "front-centre"), "585.0521");
    expectAsPublished(number("wheelbase", frame, "wheelbase"), "983.1076");
  });

  it("agrees with mathjs's rotation matrix", () => {
    const t = (73 * Math.PI) / 180;
    const down = 152 + Math.sqrt(371 ** 2 - 45 ** 2);
    // Along and square to the axis, turned so that the axis leans back by 90° − head angle.
    const turned = math.multiply(math.rotationMatrix(Math.PI / 2 - t), [45, -down]) as unknown as {
      toArray(): number[];
    };
    const [forward, up] = (Array.isArray(turned) ? turned : turned.toArray()) as [number, number];
    expectAgree(number("wheelbase", frame, "front-axle-forward"), 385 + forward, 1e-12);
    expectAgree(number("wheelbase", frame, "front-axle-height"), 560 + up, 1e-12);
  });

  it("stands as the fork-length formula says when the fork grows", () => {
    // Two independent ways to the same bicycle: a longer fork on the chart, and the formula for a change.
    const drop = number("wheelbase", frame, "front-axle-height");
    const level = { ...frame, "bottom-bracket-drop": `${drop} mm` };
    const before = number("wheelbase", level, "wheelbase");
    const along = Math.sqrt(371 ** 2 - 45 ** 2) + 20;
    const longer = { ...level, "axle-to-crown": `${Math.hypot(along, 45)} mm` };
    const change: Written = {
      wheelbase: `${before} mm`,
      "head-angle": "73°",
      "fork-length-change": "20 mm",
      chainstay: "410 mm",
      "bottom-bracket-drop": `${drop} mm`,
    };
    expectAgree(
      number("wheelbase", longer, "wheelbase"),
      number("fork-length-effect", change, "wheelbase-after"),
      1e-9,
    );
    expectAgree(
      number("wheelbase", longer, "actual-head-angle"),
      number("fork-length-effect", change, "head-angle-after"),
      1e-9,
    );
    const wheels = { "front-wheel-radius": "340 mm", "rear-wheel-radius": "340 mm" };
    const rise =
      number("wheelbase", { ...longer, ...wheels }, "crank-axis-height") -
      number("wheelbase", { ...level, ...wheels }, "crank-axis-height");
    expectAgree(rise, number("fork-length-effect", change, "crank-axis-rise"), 1e-9);
  });
});

describe("effect of fork length", () => {
  it.each([
    ["1000 mm", "73°", 405, 70, "71.91066", "1006.0293", "7.7123"],
    ["1200 mm", "65°", 434, 35, "64.14066", "1208.5883", "6.5130"],
  ])("of 20 mm more on %s at %s", (wheelbase, head, x, drop, after, longer, rise) => {
    const inputs = {
      wheelbase,
      "head-angle": head,
      "fork-length-change": "20 mm",
      chainstay: `${Math.hypot(x, drop)} mm`,
      "bottom-bracket-drop": `${drop} mm`,
      "wheel-radius": "336 mm",
      "fork-offset": "45 mm",
    };
    const results = calculate("fork-length-effect", inputs);
    expectAsPublished(results["head-angle-after"] as number, after);
    expectAsPublished(results["wheelbase-after"] as number, longer);
    expectAsPublished(results["crank-axis-rise"] as number, rise);
    if (head === "73°") {
      expectAsPublished(results["trail-before"] as number, "55.6694");
      expectAsPublished(results["trail-after"] as number, "62.4127");
    }
  });

  it("is about half a degree for ten millimetres, as builders measure", () => {
    // Frame builders' forum measurement: half a degree and 3 mm of trail; atan(10 ÷ 1000) is 0.573°.
    const inputs = {
      wheelbase: "1000 mm",
      "head-angle": "73°",
      "fork-length-change": "10 mm",
      chainstay: "411 mm",
      "bottom-bracket-drop": "70 mm",
      "wheel-radius": "336 mm",
      "fork-offset": "45 mm",
    };
    expect(number("fork-length-effect", inputs, "frame-turn")).toBeCloseTo(0.55, 1);
    const results = calculate("fork-length-effect", inputs);
    expect((results["trail-after"] as number) - (results["trail-before"] as number)).toBeCloseTo(3.4, 0);
  });
});

describe("toe clearance", () => {
  const inputs = (front: number, lateral: number): Written => ({
    "front-axle-forward": `${Math.sqrt(front ** 2 - 70 ** 2)} mm`,
    "bottom-bracket-drop": "70 mm",
    "head-angle": "72.5°",
    "fork-offset": "45 mm",
    "wheel-radius": "336 mm",
    "tyre-width": "28 mm",
    "crank-length": "170 mm",
    "pedal-lateral": `${lateral} mm`,
  });

  // 89 mm by 16 CFR 1512.17(d), 100 mm by JIS D 9301:2019 clause 5.6.2; gaps worked independently.
  it.each([
    [590, "87.2053"],
    [600, "97.2752"],
  ])("straight ahead with a front centre of %i mm", (front, gap) => {
    expectAsPublished(number("toe-clearance", inputs(front, 110), "toe-clearance-straight"), gap);
  });

  it("swept with a level crank is about 109 mm at 110 mm and 118 to 119 mm at 130 mm from the centre plane", () => {
    // Worked independently by scanning rays against the turned torus: 109.33 and 118.64 mm.
    expect(number("toe-clearance", inputs(590, 110), "toe-clearance-level")).toBeCloseTo(109.33, 1);
    expect(number("toe-clearance", inputs(590, 130), "toe-clearance-level")).toBeCloseTo(118.64, 1);
  });

  it("agrees with the tyre as a cloud of points", () => {
    // Independent: points of the torus, turned by a rotation matrix of mathjs; the least gap near the pedal's line.
    const setting = {
      forward: Math.sqrt(590 ** 2 - 70 ** 2),
      drop: 70,
      headAngle: 72.5,
      offset: 45,
      radius: 336,
      width: 28,
      crank: 170,
      lateral: 110,
    };
    const head = (72.5 * Math.PI) / 180;
    const ring = 336 - 14;
    const onAxis = [setting.forward - 45 * Math.sin(head), 0, 70 - 45 * Math.cos(head)];
    let least = Number.POSITIVE_INFINITY;
    for (let steer = -32; steer <= -12; steer += 0.5) {
      const matrix = (
        math.rotationMatrix((steer * Math.PI) / 180, math.matrix([-Math.cos(head), 0, Math.sin(head)])) as {
          toArray(): number[][];
        }
      ).toArray() as [number[], number[], number[]];
      for (let around = 90; around <= 230; around += 0.25) {
        for (let tube = 0; tube < 360; tube += 3) {
          const [a, b] = [(around * Math.PI) / 180, (tube * Math.PI) / 180];
          const out = ring + 14 * Math.cos(b);
          const local = [
            setting.forward + out * Math.cos(a) - (onAxis[0] as number),
            14 * Math.sin(b),
            70 + out * Math.sin(a) - (onAxis[2] as number),
          ] as const;
          const y =
            (matrix[1][0] as number) * local[0] +
            (matrix[1][1] as number) * local[1] +
            (matrix[1][2] as number) * local[2];
          if (Math.abs(y - 110) > 0.7) continue;
          const x =
            (matrix[0][0] as number) * local[0] +
            (matrix[0][1] as number) * local[1] +
            (matrix[0][2] as number) * local[2];
          const z =
            (matrix[2][0] as number) * local[0] +
            (matrix[2][1] as number) * local[1] +
            (matrix[2][2] as number) * local[2];
          const up = (onAxis[2] as number) + z;
          if (Math.abs(up) >= 170) continue;
          // The crank angle at which the pedal stands at this height, in front.
          least = Math.min(least, (onAxis[0] as number) + x - Math.sqrt(170 ** 2 - up ** 2));
        }
      }
    }
    expect(Math.abs((sweepToe(setting)?.clearance ?? 0) - least)).toBeLessThan(0.6);
  });
});

describe("lean", () => {
  // At least 25° by 16 CFR 1512.17(c); angles worked independently.
  it.each([
    ["270 mm", "170 mm", "173 mm", "32 mm", "26.16625", "26.67235", true],
    ["262 mm", "175 mm", "178 mm", "28 mm", "22.02306", "22.33651", false],
  ])("crank axis %s, crank %s", (height, crank, edge, tyre, knife, round, passes) => {
    const inputs = {
      "crank-axis-height": height,
      "crank-length": crank,
      "pedal-underside": "15 mm",
      "pedal-outer-edge": edge,
      "tyre-radius": `${Number.parseFloat(tyre) / 2} mm`,
    };
    expectAsPublished(number("lean-clearance", inputs, "lean-angle-knife-edge"), knife);
    expectAsPublished(number("lean-clearance", inputs, "lean-angle"), round);
    expect(number("lean-clearance", inputs, "lean-angle") >= 25).toBe(passes);
  });

  it("is the angle at which a rolling tyre and the pedal touch one plane, as found by halving", () => {
    const [height, edge, q] = [81, 169, 19];
    // Lowest point of the pedal corner and of the tyre's circle, in a bicycle leant by the angle.
    const gap = (lean: number): number => {
      const corner = height * Math.cos(lean) - edge * Math.sin(lean);
      const tyre = q * Math.cos(lean) - q;
      return corner - tyre;
    };
    let [low, high] = [0, Math.PI / 3];
    for (let halving = 0; halving < 80; halving++) {
      const middle = (low + high) / 2;
      if (gap(middle) > 0) low = middle;
      else high = middle;
    }
    const inputs = {
      "crank-axis-height": `${height + 170 + 15} mm`,
      "crank-length": "170 mm",
      "pedal-underside": "15 mm",
      "pedal-outer-edge": `${edge} mm`,
      "tyre-radius": `${q} mm`,
    };
    expectAgree(number("lean-clearance", inputs, "lean-angle"), (low * 180) / Math.PI, 1e-9);
  });
});

describe("effective top tube", () => {
  it.each([
    ["385 mm", "560 mm", "73.5°", "550.8796"],
    ["450 mm", "620 mm", "76°", "604.5834"],
  ])("reach %s, stack %s, %s", (reach, stack, angle, length) => {
    const inputs = { reach, stack, "seat-angle": angle };
    expectAsPublished(number("effective-top-tube", inputs, "effective-top-tube"), length);
  });
});
