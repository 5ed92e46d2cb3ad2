import { beforeAll, describe, expect, test } from "vitest";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

/** A dropper post that goes in too far, whose message has worked-out lengths. */
const build = (units: string): Readonly<Record<string, string>> => ({
  "workshop.ferrule": `workshop w "W" {\n  language: 1\n  currency: GBP\n${units}}\n`,
  "b.ferrule": `part frame a.frame "Frame" { chainstay: 435 mm }
part cassette a.cassette "Cassette" { cogs: 10-52 t }
part chainring a.ring "Ring" { teeth: 32 t }
part tyre a.tyre "Tyre" { size: 57-622 }
build b "B" {
  frame: a.frame
  budget { mass: <= 10 kg }
  drivetrain { cassette: a.cassette; chainring: a.ring }
  rear-wheel.tyre: a.tyre
}
`,
});

const explain = (folder: string, ...words: string[]): string =>
  ferrule(folder, ["explain", "b.ferrule#b/rear-wheel.circumference", ...words]).out;

describe("units in which numbers are shown", () => {
  test("are metric unless somebody says otherwise", () => {
    expect(explain(folderWith(build("")))).toMatch(/\d mm\b/);
    expect(explain(folderWith(build("")))).not.toMatch(/\d in\b/);
  });

  test("are those that the workshop states", () => {
    expect(explain(folderWith(build("  units: inch\n")))).toMatch(/\d in\b/);
    expect(explain(folderWith(build("  units: both\n")))).toMatch(/\d mm \(\d+(\.\d+)? in\)/);
  });

  test("are those of the option before those of the workshop", () => {
    expect(explain(folderWith(build("  units: inch\n")), "--units", "metric")).not.toMatch(/\d in\b/);
  });

  test("are no other numbers: the inches are the millimetres over 25.4", () => {
    const text = explain(folderWith(build("  units: both\n")));
    const [, millimetres, inches] = /(\d+(?:\.\d+)?) mm \((\d+(?:\.\d+)?) in\)/.exec(text) ?? [];
    expect(Number(inches)).toBeCloseTo(Number(millimetres) / 25.4, 1);
  });

  test("leave data for other programs as it is", () => {
    const json = (units: string) =>
      JSON.parse(ferrule(folderWith(build(units)), ["check", "--format", "json"]).out).files[0].builds[0].quantities;
    expect(json("  units: inch\n")).toEqual(json(""));
  });

  test("hold for calculate", () => {
    const folder = folderWith({});
    const words = ["calculate", "rotor-adapter", "rotor=180 mm", "native-rotor=160 mm"];
    expect(ferrule(folder, [...words, "--units", "inch"]).out).toContain(" in");
    expect(ferrule(folder, words).out).not.toMatch(/\d in\b/);
  });

  test("are refused when they are none", () => {
    const { code, err } = ferrule(folderWith(build("")), ["check", "--units", "furlongs"]);
    expect(code).toBe(2);
    expect(err).toContain("metric, inch");
  });
});
