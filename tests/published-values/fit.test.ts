import { all, create } from "mathjs";
import { describe, it } from "vitest";
import { calculate, expectAgree, expectAsPublished, number, type Written } from "./calculate.ts";

const math = create(all ?? {});

describe("saddle height", () => {
  // Peveler, Bishop, Smith, Richardson and Whitehorn (2005); 1.09 after Hamley and Thomas (1967).
  it.each([
    ["780 mm", "688.740", "850.200", "677.700"],
    ["830 mm", "732.890", "904.700", "732.200"],
  ])("of an inseam of %s", (inseam, axis, pedal, less) => {
    const inputs = { inseam, "crank-length": "172.5 mm" };
    expectAsPublished(number("saddle-height", inputs, "saddle-height-by-crank-axis"), axis);
    expectAsPublished(number("saddle-height", inputs, "saddle-height-by-pedal"), pedal);
    expectAsPublished(number("saddle-height", inputs, "saddle-height-by-pedal-less-crank"), less);
  });
});

describe("crank length", () => {
  // Common practice, disputed.
  it.each([
    ["780 mm", "168.480"],
    ["830 mm", "179.280"],
    ["900 mm", "194.400"],
  ])("of an inseam of %s at most", (inseam, longest) => {
    expectAsPublished(number("crank-length", { inseam }, "crank-length-greatest"), longest);
  });
});

describe("saddle position", () => {
  it("of 733 mm along 73.5° is 702.8149 up and 208.1832 back", () => {
    const inputs = {
      "seat-angle": "73.5°",
      "seat-tube-length": "500 mm",
      "post-length": "350 mm",
      insertion: "117 mm",
      "saddle-height-above-rails": "0 mm",
    };
    expectAsPublished(number("saddle-position", inputs, "saddle-top-height"), "702.8149");
    expectAsPublished(number("saddle-position", inputs, "saddle-setback"), "208.1832");
  });

  it("comes back to the insertion that gives it, whatever the tube and the post", () => {
    for (const [angle, offset, setback, height, insertion] of [
      [71.5, -20, 25, 48, 130],
      [76.2, 35, 0, 61, 95],
      [73, 0, -10, 40, 210],
    ]) {
      const frame = {
        "seat-angle": `${angle}°`,
        "seat-tube-offset": `${offset} mm`,
        "seat-tube-length": "470 mm",
        "post-length": "420 mm",
        "post-setback": `${setback} mm`,
        "saddle-height-above-rails": `${height} mm`,
      };
      const actual = number("saddle-position", { ...frame, insertion: `${insertion} mm` }, "saddle-height-actual");
      const back = number("post-insertion", { ...frame, "saddle-height": `${actual} mm` }, "insertion-for-height");
      expectAgree(back, insertion as number, 1e-9);
    }
  });
});

describe("least insertion of a post", () => {
  // 16 CFR 1512.15(b): two diameters.
  it.each([
    ["27.2 mm", "54.4"],
    ["31.6 mm", "63.2"],
  ])("by the mark of a %s post", (diameter, mark) => {
    const inputs = {
      "seat-angle": "73°",
      "seat-tube-length": "450 mm",
      "post-length": "350 mm",
      "saddle-height-above-rails": "45 mm",
      "post-least-insertion": `${2 * Number.parseFloat(diameter)} mm`,
      "frame-least-insertion": "40 mm",
    };
    expectAsPublished(number("saddle-range", inputs, "least-insertion-needed"), mark);
  });
});

describe("bar clamp", () => {
  const frame: Written = {
    reach: "385 mm",
    stack: "560 mm",
    "head-angle": "73°",
    "upper-stack": "15 mm",
    "stem-clamp-height": "40 mm",
    "stem-length": "100 mm",
  };

  it.each([
    ["20 mm", "-6°", "11", "467.08227", "631.67766"],
    ["10 mm", "-6°", "11", "470.00599", "622.11461"],
    ["20 mm", "6°", "23", "460.97004", "651.66987"],
  ])("with %s of spacers and a stem of %s", (spacers, angle, slope, x, y) => {
    const inputs = { ...frame, "spacers-below": spacers, "stem-angle": angle };
    expectAsPublished(number("bar-position", inputs, "stem-inclination"), slope);
    expectAsPublished(number("bar-position", inputs, "bar-clamp-forward"), x);
    expectAsPublished(number("bar-position", inputs, "bar-clamp-height"), y);
  });

  it("moves 2.92372 mm forward and 9.56305 mm down for 10 mm of spacer taken out", () => {
    const at = (spacers: string, result: string): number =>
      number("bar-position", { ...frame, "spacers-below": spacers, "stem-angle": "-6°" }, result);
    expectAsPublished(at("10 mm", "bar-clamp-forward") - at("20 mm", "bar-clamp-forward"), "2.92372");
    expectAsPublished(at("10 mm", "bar-clamp-height") - at("20 mm", "bar-clamp-height"), "-9.56305");
  });

  it("agrees with mathjs's rotation matrix", () => {
    const matrix = math.rotationMatrix(((90 - 73) * Math.PI) / 180);
    // Square to the axis and up along it, before turning: the stem's reach and rise.
    const stem = [120 * Math.cos((8 * Math.PI) / 180), 45 + 120 * Math.sin((8 * Math.PI) / 180)];
    const turned = math.multiply(matrix, stem) as unknown as { toArray(): number[] };
    const [forward, up] = (Array.isArray(turned) ? turned : turned.toArray()) as [number, number];
    const inputs = { ...frame, "stem-length": "120 mm", "spacers-below": "10 mm", "stem-angle": "8°" };
    expectAgree(number("bar-position", inputs, "bar-clamp-forward"), 385 + forward, 1e-12);
    expectAgree(number("bar-position", inputs, "bar-clamp-height"), 560 + up, 1e-12);
  });

  it("lies 71.1372 mm below a saddle of 733 mm at 73.5°", () => {
    const inputs = {
      "saddle-top-height": "702.8149 mm",
      "bar-clamp-height": "631.67766 mm",
      "saddle-setback": "208.1832 mm",
      "bar-clamp-forward": "467.08227 mm",
    };
    expectAsPublished(number("saddle-to-bar-drop", inputs, "saddle-drop"), "71.1372");
  });
});

describe("stem solutions", () => {
  it("solve the two equations as mathjs solves them", () => {
    for (const [angle, forward, up] of [
      [-6, 471, 640],
      [10, 452, 655],
      [-17, 480, 615],
    ] as const) {
      const t = (73 * Math.PI) / 180;
      const i = ((17 + angle) * Math.PI) / 180;
      // forward = reach − U cos t + L cos i; up = stack + U sin t + L sin i.
      const solved = math.lusolve(
        [
          [-Math.cos(t), Math.cos(i)],
          [Math.sin(t), Math.sin(i)],
        ],
        [forward - 385, up - 560],
      ) as number[][];
      const results = calculate("stem-solutions", {
        reach: "385 mm",
        stack: "560 mm",
        "head-angle": "73°",
        "upper-stack": "15 mm",
        "stem-clamp-height": "40 mm",
        "target-forward": `${forward} mm`,
        "target-height": `${up} mm`,
        "stem-angles": `${angle}°`,
      });
      expectAgree((results["exact-spacers"] as number[])[0] as number, (solved[0]?.[0] as number) - 35, 1e-9);
      expectAgree((results["exact-stem-lengths"] as number[])[0] as number, solved[1]?.[0] as number, 1e-9);
    }
  });

  it("name a best stem that no other at hand beats", () => {
    const given: Written = {
      reach: "400 mm",
      stack: "590 mm",
      "head-angle": "71°",
      "upper-stack": "12 mm",
      "stem-clamp-height": "38 mm",
    };
    const results = calculate("stem-solutions", {
      ...given,
      "target-forward": "470 mm",
      "target-height": "652 mm",
      "stem-angles": "-10, -6, 0, 6°",
      "stem-lengths": "70, 80, 90, 100 mm",
      "greatest-spacers": "20 mm",
    });
    let least = Number.POSITIVE_INFINITY;
    for (const angle of [-10, -6, 0, 6]) {
      for (const length of [70, 80, 90, 100]) {
        for (let spacers = 0; spacers <= 20; spacers += 2.5) {
          const clamp = calculate("bar-position", {
            ...given,
            "stem-length": `${length} mm`,
            "stem-angle": `${angle}°`,
            "spacers-below": `${spacers} mm`,
          });
          const miss = Math.hypot(
            (clamp["bar-clamp-forward"] as number) - 470,
            (clamp["bar-clamp-height"] as number) - 652,
          );
          least = Math.min(least, miss);
        }
      }
    }
    expectAgree(results["best-miss"] as number, least, 1e-9);
  });
});

describe("adapters", () => {
  // Common practice, no source.
  it.each([
    ["140 mm", "160 mm", "10.0"],
    ["160 mm", "180 mm", "10.0"],
    ["160 mm", "203 mm", "21.5"],
  ])("from %s to %s move the caliper", (native, rotor, shift) => {
    expectAsPublished(number("rotor-adapter", { "native-rotor": native, rotor }, "caliper-shift"), shift);
  });

  it("differ by 1.5 mm between 200 and 203", () => {
    const shift = (rotor: string): number =>
      number("rotor-adapter", { "native-rotor": "160 mm", rotor }, "caliper-shift");
    expectAsPublished(shift("203 mm") - shift("200 mm"), "1.5");
  });
});
