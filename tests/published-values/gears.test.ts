import { describe, expect, it } from "vitest";
import { calculate, expectAgree, expectAsPublished, number } from "./calculate.ts";

const first = (value: unknown): number => (value as readonly number[])[0] as number;

describe("gear inches", () => {
  // Wikipedia, "Gear inches".
  it.each([
    ["26 in", "48 t", "24 t", "52"],
    ["26 in", "48 t", "34 t", "36.7"],
    ["27 in", "48 t", "18 t", "72"],
    ["27 in", "46 t", "18 t", "69"],
  ])("of a %s wheel with %s and %s are %s", (diameter, ring, cog, published) => {
    const table = calculate("gear-table", { rings: ring, cogs: cog, "wheel-diameter": diameter });
    expectAsPublished(first(table["gear-inches"]), published);
  });

  it("are π times less than the way of one turn, not the way itself", () => {
    // 1 gear inch = π × 0.0254 m of development: by definition.
    const table = calculate("gear-table", { rings: "48 t", cogs: "24 t", "wheel-diameter": "26 in" });
    expectAgree(first(table.developments), first(table["gear-inches"]) * 0.0797965, 1e-6);
  });
});

describe("development and speed", () => {
  it("of a 700 mm wheel is 2.2 m for one turn of it", () => {
    // Princeton University, course pages "The Bicycle".
    const table = calculate("gear-table", { rings: "20 t", cogs: "20 t", "wheel-diameter": "700 mm" });
    expectAsPublished(first(table.developments), "2.2");
  });

  it("of 6.67 m at 60 turns a minute is 24 km/h", () => {
    // 16 CFR 1512.5, footnote; its pairing with 24 km/h at 60 rpm from memory.
    const table = calculate("gear-table", {
      rings: "40 t",
      cogs: "12 t",
      "wheel-circumference": "2000 mm",
      cadence: "60 rpm",
    });
    expectAsPublished(first(table.developments), "6.67");
    expectAsPublished(first(table.speeds), "24");
  });

  it("of 2 m at 75 turns a minute is 9 km/h", () => {
    // Common practice, no source.
    const table = calculate("gear-table", {
      rings: "24 t",
      cogs: "24 t",
      "wheel-circumference": "2 m",
      cadence: "75 rpm",
    });
    expectAsPublished(first(table.speeds), "9");
  });
});

describe("worked cases", () => {
  // Invented inputs, worked independently by script.
  it.each([
    ["50 t", "17 t", "2105 mm", "172.5 mm", "90 rpm", 2.941176, 6.191176, 77.58711, 5.712211, 33.43235],
    ["32 t", "51 t", "2300 mm", "175 mm", "80 rpm", 0.627451, 1.443137, 18.08523, 1.312471, 6.92706],
  ])("%s with %s", (rings, cogs, circumference, crank, cadence, ratio, metres, inches, gain, speed) => {
    const table = calculate("gear-table", {
      rings,
      cogs,
      "wheel-circumference": circumference,
      "crank-length": crank,
      cadence,
    });
    expectAgree(first(table.ratios), ratio);
    expectAgree(first(table.developments), metres);
    expectAgree(first(table["gear-inches"]), inches);
    expectAgree(first(table["gain-ratios"]), gain);
    expectAgree(first(table.speeds), speed);
  });

  it("range and steps", () => {
    expectAgree(number("gear-ratios", { rings: "50-34 t", cogs: "11-34 t" }, "gear-range"), 454.5455);
    expectAgree(number("gear-ratios", { rings: "32 t", cogs: "10-51 t" }, "gear-range"), 510);
    expect((calculate("cog-steps", { cogs: "11-12 t" })["cog-steps"] as number[])[0]).toBeCloseTo(9.09091, 5);
  });
});

describe("capacity of a rear derailleur", () => {
  it.each([
    // Independent trade glossary, entry on total capacity.
    ["44-32-24 t", "12-34 t", 42],
    // Common practice, no source.
    ["53-39 t", "12-25 t", 27],
    ["50-34 t", "11-34 t", 39],
    ["32 t", "10-51 t", 41],
  ])("%s with %s needs %i t", (rings, cogs, needed) => {
    expect(number("capacity-needed", { rings, cogs }, "capacity-needed")).toBe(needed);
  });

  it("is not the wrong form that circulates, which would give 29 here", () => {
    // (largest ring − largest cog) + (smallest ring − smallest cog), seen in a forum.
    expect(number("capacity-needed", { rings: "46-30 t", cogs: "11-36 t" }, "capacity-needed")).toBe(41);
  });
});

describe("cable indexing", () => {
  // Invented inputs, worked independently by script.
  it.each([
    ["2.8 mm", "1.7", "4.80 mm", "7", 4.76, -0.04, -0.28],
    ["2.5 mm", "1.7", "4.35 mm", "8", 4.25, -0.1, -0.8],
    ["2.3 mm", "1.7", "3.95 mm", "9", 3.91, -0.04, -0.36],
    ["3.6 mm", "1.1", "3.95 mm", "9", 3.96, 0.01, 0.09],
  ])("pull %s × %s against %s over %s clicks", (pull, ratio, pitch, clicks, movement, each, sum) => {
    const inputs = { "pull-per-click": pull, "actuation-ratio": ratio, "cog-pitch": pitch, clicks };
    expect(number("indexing-error", inputs, "movement-per-click")).toBeCloseTo(movement, 9);
    expect(number("indexing-error", inputs, "indexing-error-per-click")).toBeCloseTo(each, 9);
    expect(number("indexing-error", inputs, "indexing-error")).toBeCloseTo(sum, 9);
  });
});

describe("chainline and chain angle", () => {
  // Common practice, no source; worked independently.
  it.each([
    ["130 mm", "3 mm", "36.6 mm", 43.7],
    ["135 mm", "3.8 mm", "35.4 mm", 46],
  ])("rear, over locknuts %s", (width, gap, stack, line) => {
    const inputs = { "over-locknut-width": width, "locknut-to-cog": gap, "stack-width": stack };
    expect(number("rear-chainline", inputs, "cog-line")).toBeCloseTo(line, 9);
  });

  it.each([
    ["11-12-13-14-15-16-17-19-21-23-25 t", "45 mm", "45 mm", "3.69 mm", "410 mm", 2.57657],
    ["11-13-15-17-20-23-26-30 t", "44 mm", "44 mm", "4.80 mm", "420 mm", 2.29061],
    ["10-12-14-16-18-21-24-28-32-38-45-52 t", "52 mm", "50 mm", "3.58 mm", "435 mm", 2.85452],
  ])("greatest angle over %s", (cogs, chainline, line, pitch, chainstay, angle) => {
    const inputs = { rings: "34 t", cogs, chainline, "cog-line": line, "cog-pitch": pitch, chainstay };
    expectAsPublished(number("chain-angle", inputs, "greatest-chain-angle"), String(angle));
  });
});
