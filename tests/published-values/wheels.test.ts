import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { casingLength, flatWidth, sectionOf } from "../../server/calculations/shared/tyre-section.ts";
import { expectAgree, expectAsPublished, number, refused, type Written } from "./calculate.ts";

const math = create(all ?? {});

const spoke = (offset: string, flange: string, rim: string, hole: string, spokes: string, cross: string): Written => ({
  "flange-offset": offset,
  "flange-diameter": flange,
  "effective-rim-diameter": rim,
  "spoke-hole-diameter": hole,
  spokes,
  cross,
});

describe("spoke length", () => {
  // Inputs of the first case from the Wikipedia article "Spoke"; lengths worked independently by script.
  it.each([
    ["30 mm", "39 mm", "602 mm", "2.2 mm", "18", "3", "292.1776"],
    ["30 mm", "39 mm", "602 mm", "2.2 mm", "18", "2", "286.8039"],
    ["30 mm", "39 mm", "602 mm", "2.2 mm", "18", "0", "281.9941"],
    ["37 mm", "45 mm", "600 mm", "2.6 mm", "16", "3", "293.1640"],
    ["18 mm", "45 mm", "600 mm", "2.6 mm", "16", "3", "291.3842"],
  ])("offset %s, flange %s, rim %s, hole %s, %s a side, %s-cross: %s mm", (d, flange, rim, hole, n, k, published) => {
    expectAsPublished(number("spoke-length", spoke(d, flange, rim, hole, n, k), "spoke-length"), published);
  });

  it("grows by 0.49655 mm for a millimetre more of effective rim diameter", () => {
    const at = (rim: string): number =>
      number("spoke-length", spoke("30 mm", "39 mm", rim, "2.2 mm", "18", "3"), "spoke-length");
    expectAsPublished(at("603 mm") - at("602 mm"), "0.49655");
  });

  it("is the distance between two points in space, as mathjs measures it", () => {
    for (const [offset, flange, rim, hole, n, k] of [
      [31.5, 58, 588.4, 2.5, 14, 3],
      [16.2, 52, 541, 2.7, 12, 2],
      [22, 67, 604, 2.4, 18, 4],
    ] as const) {
      const angle = (2 * Math.PI * k) / n;
      const head = [flange / 2, 0, offset];
      const end = [(rim / 2) * Math.cos(angle), (rim / 2) * Math.sin(angle), 0];
      const length = (math.distance(head, end) as number) - hole / 2;
      const inputs = spoke(`${offset} mm`, `${flange} mm`, `${rim} mm`, `${hole} mm`, `${n}`, `${k}`);
      expectAgree(number("spoke-length", inputs, "spoke-length"), length, 1e-12);
    }
  });

  // By definition: 360° × crossings ÷ spokes of a side.
  it.each([
    [36, 3, "60.0000"],
    [36, 4, "80.0000"],
    [32, 3, "67.5000"],
    [32, 2, "45.0000"],
    [28, 3, "77.1429"],
    [24, 2, "60.0000"],
    [20, 2, "72.0000"],
  ])("lacing angle of %i holes, %i-cross", (holes, cross, angle) => {
    const inputs = spoke("30 mm", "45 mm", "600 mm", "2.6 mm", `${holes / 2}`, `${cross}`);
    expectAsPublished(number("spoke-length", inputs, "lacing-angle"), angle);
  });

  it("knows the tangent: 85.6988° for 22.5 on 300 mm", () => {
    expectAsPublished((Math.acos(22.5 / 300) * 180) / Math.PI, "85.6988");
    const past = (spokes: string, cross: string): unknown =>
      number("spoke-length", spoke("30 mm", "45 mm", "600 mm", "2.6 mm", spokes, cross), "lacing-angle") > 85.6988;
    expect(past("16", "3")).toBe(false);
    expect(past("12", "3")).toBe(true);
  });

  it("refuses crossings that lead behind the axle", () => {
    expect(refused("spoke-length", spoke("30 mm", "45 mm", "600 mm", "2.6 mm", "16", "8"))).toMatch(/cross/);
  });
});

describe("side balance", () => {
  const wheel: Written = {
    "flange-diameter-drive-side": "45 mm",
    "flange-diameter-non-drive-side": "45 mm",
    // 130 mm over locknuts, 47 and 28 mm from locknut to flange: 18 and 37 mm.
    "flange-offset-drive-side": "18 mm",
    "flange-offset-non-drive-side": "37 mm",
    "effective-rim-diameter": "600 mm",
    "spoke-hole-diameter": "2.6 mm",
    "spoke-holes": "32",
    "cross-drive-side": "3",
    "cross-non-drive-side": "3",
  };

  it("by statics, worked independently", () => {
    expectAsPublished(number("lacing", wheel, "bracing-angle-non-drive-side"), "7.21841");
    expectAsPublished(number("lacing", wheel, "bracing-angle-drive-side"), "3.52590");
    expectAsPublished(number("lacing", wheel, "tension-ratio") / 100, "0.489445");
  });

  it("is near the simple ratio of the offsets", () => {
    expectAsPublished(18 / 37, "0.486486");
    expect(Math.abs(number("lacing", wheel, "tension-ratio") / 100 - 18 / 37)).toBeLessThan(0.005);
  });

  it("gives 587.334 N against 1200 N", () => {
    const tensions: Written = {
      tension: "1200 N",
      "tension-ratio": `${number("lacing", wheel, "tension-ratio")} %`,
      "tighter-side": "drive-side",
      "spoke-holes": "32",
    };
    expectAsPublished(number("spoke-tensions", tensions, "tension-non-drive-side"), "587.334");
  });
});

describe("spoke tension and rim", () => {
  it("squeezes the rim with 5729.6 N at 36 spokes of 1000 N", () => {
    // Brandt, The Bicycle Wheel, third edition, as quoted: about 5700 N.
    const inputs = { tension: "1000 N", "tension-ratio": "100 %", "tighter-side": "equal", "spoke-holes": "36" };
    const compression = number("spoke-tensions", inputs, "rim-compression");
    expectAsPublished(compression, "5729.578");
    expect(Math.abs(compression - 5700)).toBeLessThan(50);
  });

  it("converts kilograms-force by standard gravity", () => {
    const inputs = { tension: "120 kgf", "tension-ratio": "100 %", "tighter-side": "equal", "spoke-holes": "32" };
    expectAsPublished(number("spoke-tensions", inputs, "tension-drive-side"), "1176.798");
  });

  // Stress and stretch by definition; steel of 200 GPa.
  it.each([
    ["2.0 mm", "318.310", "0.46155"],
    ["1.8 mm", "392.975", "0.56981"],
    ["1.5 mm", "565.884", "0.82053"],
  ])("stresses %s", (diameter, stress, stretch) => {
    const inputs = { tension: "1000 N", "middle-diameter": diameter, "spoke-length": "290 mm" };
    expectAsPublished(number("spoke-stretch", inputs, "stress"), stress);
    expectAsPublished(number("spoke-stretch", inputs, "stretch"), stretch);
  });
});

describe("diameter and circumference over the tyre", () => {
  // Outside diameters: independent trade glossary, size table; circumference π times that.
  it.each([
    ["559 mm", "47 mm", 653, "2051.4600"],
    ["559 mm", "57 mm", 673, "2114.2919"],
    ["571 mm", "23 mm", 617, "1938.3627"],
    ["584 mm", "28 mm", 640, "2010.6193"],
    ["406 mm", "47 mm", 500, "1570.7963"],
    ["406 mm", "28 mm", 462, "1451.4158"],
    ["305 mm", "47 mm", 399, "1253.4955"],
    ["590 mm", "37 mm", 664, "2086.0175"],
    ["622 mm", "23 mm", 668, "2098.5839"],
    ["622 mm", "25 mm", 672, "2111.1503"],
    ["622 mm", "28 mm", 678, "2129.9998"],
    ["622 mm", "32 mm", 686, "2155.1326"],
    ["622 mm", "40 mm", 702, "2205.3980"],
    ["584 mm", "54 mm", 692, "2173.9821"],
    ["622 mm", "57 mm", 736, "2312.2122"],
    ["630 mm", "32 mm", 694, "2180.2653"],
  ])("%s with %s", (seat, width, diameter, circumference) => {
    const inputs = { "bead-seat": seat, "tyre-width": width };
    expect(number("wheel-size", inputs, "wheel-diameter")).toBe(diameter);
    expectAsPublished(number("wheel-size", inputs, "circumference"), circumference);
  });

  it("with the older rule of 2.5 mm more height for narrow tyres", () => {
    // ISO 5775 as summarised in the Wikipedia article "ISO 5775".
    const inputs = { "bead-seat": "622 mm", "tyre-width": "23 mm", "tyre-height": "25.5 mm" };
    expectAsPublished(number("wheel-size", inputs, "wheel-diameter"), "673.0");
    expectAsPublished(number("wheel-size", inputs, "circumference"), "2114.2919");
  });
});

describe("width of a tyre on a rim", () => {
  // ISO 5775 as summarised in the Wikipedia article "ISO 5775": rim 65 % of the width below 30 mm, 55 % above.
  it.each([
    ["23 mm", "14.950"],
    ["25 mm", "16.250"],
    ["28 mm", "18.200"],
    ["32 mm", "17.600"],
    ["40 mm", "22.000"],
    ["47 mm", "25.850"],
    ["57 mm", "31.350"],
  ])("a label of %s assumes a rim of %s mm", (width, rim) => {
    expectAsPublished(number("tyre-width", { "tyre-width": width, "rim-width": "20 mm" }, "rim-assumed"), rim);
  });

  it("keeps the casing's length, measured along the section by numbers", () => {
    for (const [width, on, rim] of [
      [40, 22, 30],
      [61, 30, 35],
      [28, 17, 23],
    ] as const) {
      const casing = casingLength(width, on);
      const section = sectionOf(casing, rim);
      if (!section) throw new Error("the casing spans the rim");
      // The section as points of its circle, its length added up piece by piece.
      const radius = section.width / 2;
      const missing = math.asin(rim / section.width) as number;
      let length = 0;
      const steps = 20_000;
      const point = (at: number): [number, number] => {
        const angle = -Math.PI / 2 + missing + (at * 2 * (Math.PI - missing)) / steps;
        return [radius * Math.cos(angle), radius * Math.sin(angle)];
      };
      for (let at = 0; at < steps; at++) length += math.distance(point(at), point(at + 1)) as number;
      expectAgree(length, casing, 1e-7);
      expectAgree(math.distance(point(0), point(steps)) as number, rim, 1e-9);
    }
  });

  it("is near the rough rule of 0.4 mm for each millimetre of rim", () => {
    for (const rim of [23, 25, 27, 30]) {
      const inputs = { "tyre-width": "40 mm", "measured-on-rim": "22 mm", "rim-width": `${rim} mm` };
      const exact = number("tyre-width", inputs, "tyre-width-on-rim");
      const rough = number("tyre-width", inputs, "tyre-width-rule-of-thumb");
      expect(Math.abs(exact - rough)).toBeLessThan(0.5);
    }
  });
});

describe("pressure", () => {
  it("is limited to 5 bar on a tubeless straight-side rim, 72.5 psi", () => {
    // ETRTO, from memory.
    const inputs = { "tyre-greatest": "6 bar", "rim-greatest": "6 bar", "rim-kind-greatest": "5 bar" };
    expect(number("pressure-limits", inputs, "greatest-pressure")).toBe(5);
    const psi = { ...inputs, "rim-kind-greatest": "72.5189 psi" };
    expectAgree(number("pressure-limits", psi, "greatest-pressure"), 5);
  });

  // Berto, All About Tire Inflation, as reprinted: a drop of 15 % of the section under the wheel's load.
  it.each([
    ["28 mm", "4.200"],
    ["40 mm", "6.000"],
  ])("drops %s by %s mm", (width, drop) => {
    const inputs = { "wheel-load": "45 kg", "bead-seat": "622 mm", "tyre-width": width, "rim-width": "19 mm" };
    expectAsPublished(number("starting-pressure", inputs, "drop-distance"), drop);
  });

  it("makes a patch as long as the chord that the drop cuts off: 106.3947 mm", () => {
    const inputs = { "wheel-load": "45 kg", "bead-seat": "622 mm", "tyre-width": "28 mm", "rim-width": "19 mm" };
    expectAsPublished(number("starting-pressure", inputs, "contact-length"), "106.3947");
  });

  it("bears the load on the patch: pressure times its area", () => {
    const inputs = { "wheel-load": "50 kg", "bead-seat": "584 mm", "tyre-width": "47 mm", "rim-width": "25 mm" };
    const [long, wide] = [
      number("starting-pressure", inputs, "contact-length"),
      number("starting-pressure", inputs, "contact-width"),
    ];
    const pressure = number("starting-pressure", inputs, "pressure-for-drop");
    expectAgree(((pressure / 10) * Math.PI * long * wide) / 4, 50 * 9.80665);
  });

  it("makes the flat of a casing of fixed length, as found by laying it out point by point", () => {
    const [width, rim] = [40, 22];
    const casing = casingLength(width, rim);
    const height = sectionOf(casing, rim)?.height as number;
    for (const drop of [2, 6, 10]) {
      const flat = flatWidth(casing, rim, height, drop);
      // The circle through the bead that touches the ground where the flat ends.
      const left = height - drop;
      const inward = (rim - flat) / 2;
      const radius = (inward ** 2 + left ** 2) / (2 * left);
      const centre: [number, number] = [flat / 2, radius];
      expectAgree(math.distance(centre, [rim / 2, left]) as number, radius, 1e-9);
      let length = flat;
      const steps = 40_000;
      const total = Math.atan2(rim / 2 - flat / 2, radius - left);
      const turn = total < 0 ? total + 2 * Math.PI : total;
      const point = (at: number): [number, number] => {
        const angle = -Math.PI / 2 + (turn * at) / steps;
        return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
      };
      for (let at = 0; at < steps; at++) length += 2 * (math.distance(point(at), point(at + 1)) as number);
      expectAgree(length, casing, 1e-6);
      expectAgree(math.distance(point(steps), [rim / 2, left]) as number, 0, 1);
    }
  });

  it("rises from 5 to 5.41025 bar between 20 and 40 °C", () => {
    // Gay-Lussac's law, worked independently.
    const inputs = { pressure: "5 bar", temperature: "20 °C", "other-temperature": "40 °C" };
    expectAsPublished(number("pressure-warming", inputs, "other-pressure"), "5.41025");
    const fahrenheit = { pressure: "5 bar", temperature: "68 °F", "other-temperature": "104 °F" };
    expectAsPublished(number("pressure-warming", fahrenheit, "other-pressure"), "5.41025");
  });
});
