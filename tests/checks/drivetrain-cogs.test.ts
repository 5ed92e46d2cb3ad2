import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const derailleur = (facts: string): Pieces => ({ "drivetrain.rear-derailleur": part("rear-derailleur", facts) });
const cassette = (cogs: string): Pieces => ({ "drivetrain.cassette": part("cassette", `cogs: ${cogs} t`) });

describe("drivetrain/largest-cog", () => {
  const code = "drivetrain/largest-cog";
  const outcome = (cogs: string, limit: string) =>
    checkText(compose({ ...cassette(cogs), ...derailleur(limit) })).outcome(code);

  it("holds below and at the limit and fails one tooth above", () => {
    expect(outcome("11-20-41", "largest-cog: 42 t")).toBe("holds");
    expect(outcome("11-20-42", "largest-cog: 42 t")).toBe("holds");
    expect(outcome("11-20-43", "largest-cog: 42 t")).toBe("fails");
  });

  it("looks for the largest cog wherever it stands in the list", () => {
    expect(outcome("43-20-11", "largest-cog: 42 t")).toBe("fails");
    expect(outcome("11-43-20", "largest-cog: 42 t")).toBe("fails");
  });

  it("says both numbers, what states them, and what mends it", () => {
    const text = checkText(compose({ ...cassette("11-20-43"), ...derailleur("largest-cog: 42 t") }));
    const [finding] = text.of(code);
    expect(finding?.message).toBe(
      "Largest cog 43 t, but rear-derailleur takes at most 42 t: fit a cassette of 42 t or less, or a derailleur rated for 43 t.",
    );
    expect(finding?.severity).toBe("error");
    expect(finding?.path).toBe("drivetrain.cassette");
    expect(finding?.place.declaration.keyword).toBe("build");
    expect(finding?.related.map(({ message }) => message)).toEqual([
      "cassette: cogs 11-20-43 t",
      "rear-derailleur: largest-cog 42 t",
    ]);
    expect(finding?.repairs).toEqual([
      { kind: "swap-part", slot: "drivetrain.rear-derailleur" },
      { kind: "swap-part", slot: "drivetrain.cassette" },
      { kind: "set-fact", slot: "drivetrain.rear-derailleur", fact: "largest-cog", value: "43 t" },
    ]);
  });

  it("is unknown, naming the fact, when either number is missing", () => {
    const noLimit = checkText(compose({ ...cassette("11-20-43"), ...derailleur("") }));
    expect(noLimit.outcome(code)).toBe("unknown");
    expect(noLimit.missing(code)).toEqual(["drivetrain.rear-derailleur.largest-cog"]);
    const noCogs = checkText(
      compose({ "drivetrain.cassette": part("cassette", "speeds: 3"), ...derailleur("largest-cog: 42 t") }),
    );
    expect(noCogs.missing(code)).toEqual(["drivetrain.cassette.cogs"]);
    const nothing = checkText(compose({}));
    expect(nothing.outcome(code)).toBe("unknown");
    expect(nothing.missing(code)).toEqual(["drivetrain.cassette", "drivetrain.rear-derailleur"]);
  });

  it("is not applicable without a derailleur", () => {
    expect(checkText(compose({ ...cassette("11-43"), "drivetrain.rear-derailleur": "none" })).outcome(code)).toBe(
      "notApplicable",
    );
  });

  it("gives the room left as a share of the limit", () => {
    const text = checkText(compose({ ...cassette("11-20-36"), ...derailleur("largest-cog: 48 t") }));
    const [instance] = text.row(code).instances;
    expect(instance?.verdict).toMatchObject({ outcome: "holds", margin: 0.25 });
  });
});

describe("drivetrain/smallest-cog", () => {
  const code = "drivetrain/smallest-cog";
  const outcome = (cogs: string) =>
    checkText(compose({ ...cassette(cogs), ...derailleur("smallest-cog: 11 t") })).outcome(code);

  it("holds above and at the limit and fails one tooth below, wherever the cog stands", () => {
    expect(outcome("12-20-30")).toBe("holds");
    expect(outcome("11-20-30")).toBe("holds");
    expect(outcome("10-20-30")).toBe("fails");
    expect(outcome("30-20-10")).toBe("fails");
  });

  it("is unknown without the derailleur's figure, and not applicable where its maker states none", () => {
    const missing = checkText(compose({ ...cassette("10-20"), ...derailleur("") }));
    expect(missing.outcome(code)).toBe("unknown");
    expect(missing.missing(code)).toEqual(["drivetrain.rear-derailleur.smallest-cog"]);
    expect(checkText(compose({ ...cassette("10-20"), ...derailleur("smallest-cog: none") })).outcome(code)).toBe(
      "notApplicable",
    );
  });
});

describe("drivetrain/least-largest-cog", () => {
  const code = "drivetrain/least-largest-cog";
  const outcome = (cogs: string, facts = "least-largest-cog: 44 t") =>
    checkText(compose({ ...cassette(cogs), ...derailleur(facts) })).outcome(code);

  it("holds at the least and fails one tooth below, by the largest cog and not another", () => {
    expect(outcome("10-20-45")).toBe("holds");
    expect(outcome("10-20-44")).toBe("holds");
    expect(outcome("10-20-43")).toBe("fails");
    expect(outcome("44-20-10")).toBe("holds");
  });

  it("is not asked of a derailleur whose maker names none", () => {
    expect(outcome("10-20-25", "largest-cog: 52 t")).toBe("notApplicable");
  });

  it("is a warning", () => {
    const text = checkText(compose({ ...cassette("10-20-43"), ...derailleur("least-largest-cog: 44 t") }));
    expect(text.of(code)[0]?.severity).toBe("warning");
    expect(text.of(code)[0]?.message).toMatch(/43 t.*44 t/);
  });
});

describe("drivetrain/cog-steps", () => {
  const code = "drivetrain/cog-steps";
  const finding = (cogs: string) => checkText(compose(cassette(cogs))).of(code)[0];

  it("passes a step of exactly a third and says one just above", () => {
    expect(finding("12-15-18-24-32")).toBeUndefined();
    expect(finding("12-15-18-24-33")?.message).toContain("from 24 t to 33 t is a step of 37.5 %");
    // 64 ÷ 48 is the same third, written with other numbers.
    expect(finding("36-48-64")).toBeUndefined();
  });

  it("says a cog that occurs twice", () => {
    expect(finding("11-13-13-15")?.message).toContain("13 t occurs more than once");
    expect(finding("11-13-13-15")?.message).not.toContain("follows");
    expect(finding("11-13-15")).toBeUndefined();
  });

  it("says a list that does not ascend, and offers it in order", () => {
    const found = finding("28-24-21-18");
    expect(found?.message).toContain("24 t follows 28 t");
    expect(found?.repairs[0]).toEqual({
      kind: "set-fact",
      slot: "drivetrain.cassette",
      fact: "cogs",
      value: "18-21-24-28 t",
    });
  });

  it("is information only, and is not asked of one cog", () => {
    expect(finding("12-18")?.severity).toBe("information");
    expect(checkText(compose(cassette("18"))).outcome(code)).toBe("notApplicable");
  });

  it("passes ordinary wide cassettes", () => {
    for (const cogs of ["10-12-14-16-18-21-24-28-32-38-45-52", "11-13-15-17-20-23-26-34", "11-13-15-18-22-28-34-40"]) {
      expect(finding(cogs), cogs).toBeUndefined();
    }
  });
});

describe("drivetrain/gear-hub-ratio", () => {
  const code = "drivetrain/gear-hub-ratio";
  const bike = (ring: string, cog: string, hub: string): Pieces => ({
    "drivetrain.crankset": part("crankset", `rings: ${ring} t`),
    "drivetrain.cassette": part("sprocket", `cogs: ${cog} t`),
    "rear-wheel.hub": part("hub", hub),
  });
  const outcome = (ring: string, cog: string, hub = "gears: 8; least-primary-ratio: 1.9") =>
    checkText(compose(bike(ring, cog, hub))).outcome(code);

  it("holds above and exactly at the least ratio and fails below", () => {
    expect(outcome("39", "20")).toBe("holds");
    expect(outcome("38", "20")).toBe("holds");
    expect(outcome("37", "20")).toBe("fails");
    // 57 ÷ 30 is 1.9 exactly in decimals and not in binary.
    expect(outcome("57", "30")).toBe("holds");
    expect(outcome("38", "21")).toBe("fails");
  });

  it("counts the smallest ring", () => {
    expect(outcome("46-34", "20")).toBe("fails");
    expect(outcome("46-40", "20")).toBe("holds");
  });

  it("names the ring and the cog that would do", () => {
    const [finding] = checkText(compose(bike("33", "19", "gears: 8; least-primary-ratio: 1.9"))).of(code);
    // 1.9 × 19 = 36.1 and 33 ÷ 1.9 = 17.37.
    expect(finding?.message).toContain("fit a ring of 37 t or more, or a cog of 17 t or fewer");
    expect(finding?.message).toMatch(/1\.74.*1\.9/);
  });

  it("is not asked of a hub without gears, and is unknown without the limit", () => {
    expect(outcome("33", "19", "least-primary-ratio: 1.9")).toBe("notApplicable");
    const text = checkText(compose(bike("33", "19", "gears: 8")));
    expect(text.missing(code)).toEqual(["rear-wheel.hub.least-primary-ratio"]);
  });
});

describe("drivetrain/belt-sprocket", () => {
  const code = "drivetrain/belt-sprocket";
  const outcome = (cog: number, facts = "smallest-sprocket: 22 t") =>
    checkText(
      compose({
        "drivetrain.chain": part("belt", facts),
        "drivetrain.cassette": part("sprocket", `cogs: ${cog} t`),
      }),
    ).outcome(code);

  it("holds at the least and fails one tooth below", () => {
    expect(outcome(23)).toBe("holds");
    expect(outcome(22)).toBe("holds");
    expect(outcome(21)).toBe("fails");
  });

  it("is unknown without the belt's figure and not asked of a chain", () => {
    expect(outcome(21, "teeth: 118 t")).toBe("unknown");
    const chain = compose({
      "drivetrain.chain": part("chain", "speeds: 1"),
      "drivetrain.cassette": part("sprocket", "cogs: 12 t"),
    });
    expect(checkText(chain).outcome(code)).toBe("notApplicable");
  });
});
