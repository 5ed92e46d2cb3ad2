import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const code = "drivetrain/cage-capacity";

const bike = (capacity: string, rings: string, cogs: string): Pieces => ({
  "drivetrain.rear-derailleur": part("rear-derailleur", capacity),
  "drivetrain.crankset": part("crankset", rings),
  "drivetrain.cassette": part("cassette", cogs),
});
const outcome = (capacity: number, rings: string, cogs: string) =>
  checkText(compose(bike(`total-capacity: ${capacity} t`, `rings: ${rings} t`, `cogs: ${cogs} t`))).outcome(code);

describe(code, () => {
  it("holds with a tooth to spare and with none, and fails with one too few", () => {
    // 50 − 34 + 34 − 11 = 39: the sum of both differences, as trade glossaries give it.
    expect(outcome(40, "50-34", "11-20-34")).toBe("holds");
    expect(outcome(39, "50-34", "11-20-34")).toBe("holds");
    expect(outcome(38, "50-34", "11-20-34")).toBe("fails");
  });

  it("agrees with published sums", () => {
    // Independent trade glossary: 44/32/24 with 12-34 needs 42.
    expect(outcome(42, "44-32-24", "12-20-34")).toBe("holds");
    expect(outcome(41, "44-32-24", "12-20-34")).toBe("fails");
    // Common practice, no source: 53/39 with 12-25 needs 27.
    expect(outcome(27, "53-39", "12-18-25")).toBe("holds");
    expect(outcome(26, "53-39", "12-18-25")).toBe("fails");
    // Common practice, no source: a single ring with 10-51 needs 41.
    expect(outcome(41, "32", "10-20-51")).toBe("holds");
    expect(outcome(40, "32", "10-20-51")).toBe("fails");
  });

  it("does not take the cross differences for the sum", () => {
    // (50 − 34) + (34 − 11) = 39; the wrong form (50 − 34) + (34 − 11) by crossed pairs would give another number
    // with a largest cog above the smallest ring.
    expect(outcome(36, "40-30", "10-20-36")).toBe("holds");
    expect(outcome(35, "40-30", "10-20-36")).toBe("fails");
  });

  it("shows the arithmetic, both numbers and every remedy", () => {
    const [finding] = checkText(compose(bike("total-capacity: 37 t", "rings: 48-31 t", "cogs: 11-20-36 t"))).of(code);
    expect(finding?.message).toBe(
      "Capacity needed 42 t (rings 48 − 31 = 17 t, cogs 36 − 11 = 25 t, together 42 t), but the cage of rear-derailleur takes up at most 37 t: fit a derailleur with a capacity of 42 t or more, a cassette whose cogs differ by at most 20 t or rings that differ by at most 12 t.",
    );
    expect(finding?.severity).toBe("error");
    expect(finding?.caution).toBeDefined();
    expect(finding?.path).toBe("drivetrain.rear-derailleur");
    expect(finding?.place.declaration.keyword).toBe("build");
    expect(finding?.related.map(({ message }) => message)).toEqual([
      "rear-derailleur: total-capacity 37 t",
      "cassette: cogs 11-20-36 t",
      "crankset: rings 48-31 t",
    ]);
    expect(finding?.related.map(({ place }) => place.declaration.name)).toEqual([
      "test.drivetrain-rear-derailleur",
      "test.drivetrain-cassette",
      "test.drivetrain-crankset",
    ]);
  });

  it("speaks of the cogs alone with a single ring, and does not offer other rings", () => {
    const [finding] = checkText(compose(bike("total-capacity: 40 t", "rings: 32 t", "cogs: 10-20-51 t"))).of(code);
    expect(finding?.message).toBe(
      "Capacity needed 41 t (one ring, so the cogs alone: 51 − 10 = 41 t), but the cage of rear-derailleur takes up at most 40 t: fit a derailleur with a capacity of 41 t or more or a cassette whose cogs differ by at most 40 t.",
    );
    expect(finding?.repairs).not.toContainEqual({ kind: "swap-part", slot: "drivetrain.crankset" });
  });

  it("does not offer a remedy that cannot exist", () => {
    // The rings alone differ by more than the cage takes up, so no cassette helps.
    const [finding] = checkText(compose(bike("total-capacity: 15 t", "rings: 48-31 t", "cogs: 11-13-15 t"))).of(code);
    expect(finding?.message).not.toContain("a cassette");
    expect(finding?.message).toContain("rings that differ by at most 11 t");
  });

  it("takes rings from slots of their own before those of the cranks", () => {
    const text = (inner: number) =>
      checkText(
        compose({
          ...bike("total-capacity: 39 t", "rings: 50-34 t", "cogs: 11-20-34 t"),
          "drivetrain.inner-chainring": part("chainring", `teeth: ${inner} t`),
        }),
      );
    expect(text(34).outcome(code)).toBe("holds");
    expect(text(33).outcome(code)).toBe("fails");
    expect(text(33).of(code)[0]?.repairs).toContainEqual({ kind: "swap-part", slot: "drivetrain.inner-chainring" });
  });

  it("names every missing fact at once", () => {
    const text = checkText(compose(bike("largest-cog: 42 t", "spindle-length: 120 mm", "speeds: 11")));
    expect(text.outcome(code)).toBe("unknown");
    expect(new Set(text.missing(code))).toEqual(
      new Set([
        "drivetrain.rear-derailleur.total-capacity",
        "drivetrain.cassette.cogs",
        "drivetrain.crankset.rings",
        "drivetrain.chainring",
      ]),
    );
  });

  it("is not applicable without a derailleur", () => {
    const { "drivetrain.rear-derailleur": _, ...rest } = bike("", "rings: 44 t", "cogs: 16 t");
    expect(checkText(compose({ ...rest, "drivetrain.rear-derailleur": "none" })).outcome(code)).toBe("notApplicable");
  });

  it("has working to show", () => {
    const { report } = checkText(compose(bike("total-capacity: 37 t", "rings: 48-31 t", "cogs: 11-20-36 t")));
    const working = report.evaluation.working("drivetrain.capacity-needed").join("\n");
    expect(working).toContain("48 t − 31 t = 17 t");
    expect(working).toContain("36 t − 11 t = 25 t");
    expect(working).toContain("17 t + 25 t = 42 t");
  });
});

describe(`${code}: repairs`, () => {
  const text = `
part rear-derailleur shop.short "Short" { total-capacity: 33 t; largest-cog: 36 t }
part rear-derailleur shop.long "Long" { total-capacity: 43 t; largest-cog: 36 t }
part rear-derailleur shop.low "Low" { total-capacity: 47 t; largest-cog: 32 t }
part cassette shop.wide "Wide" { cogs: 11-13-15-18-22-27-36 t }
part cassette shop.close "Close" { cogs: 12-13-15-18-22-25-28 t }
part cassette shop.middle "Middle" { cogs: 11-13-15-18-22-25-28 t }
part crankset shop.double "Double" { rings: 50-34 t }
part crankset shop.near "Near" { rings: 42-36 t }

build example "Example" {
  drivetrain {
    rear-derailleur: shop.short
    cassette: shop.wide
    crankset: shop.double
  }
}
`;
  const mended = repaired(text, code);

  it("offers only parts with which nothing begins to fail", () => {
    expect(mended.map(({ title }) => title)).toEqual([
      "Fit Long (shop.long) as drivetrain.rear-derailleur",
      "Fit Close (shop.close) as drivetrain.cassette",
      "Fit Middle (shop.middle) as drivetrain.cassette",
      "Fit Near (shop.near) as drivetrain.crankset",
      "Correct total-capacity of Short to 41 t, if its maker says so",
    ]);
  });

  it.each(mended)("$title: the build then checks clean", ({ text: after }) => {
    const checked = checkText(after);
    expect(checked.outcome(code)).toBe("holds");
    expect(checked.findings.filter(({ outcome: found }) => found === "fails")).toEqual([]);
  });
});
