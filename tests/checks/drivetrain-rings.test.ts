import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const crank = (rings: string, more = ""): Pieces => ({
  "drivetrain.crankset": part("crankset", `rings: ${rings} t; ${more}`),
});
const front = (facts: string): Pieces => ({ "drivetrain.front-derailleur": part("front-derailleur", facts) });

describe("drivetrain/front-difference", () => {
  const code = "drivetrain/front-difference";
  const text = (rings: string, facts: string) =>
    checkText(compose({ ...crank(rings), "drivetrain.rear-derailleur": part("rear-derailleur", facts) }));
  const outcome = (rings: string, facts = "greatest-front-difference: 16 t") => text(rings, facts).outcome(code);

  it("holds inside and at the limit and fails one tooth beyond", () => {
    expect(outcome("48-33")).toBe("holds");
    expect(outcome("48-32")).toBe("holds");
    expect(outcome("48-31")).toBe("fails");
  });

  it("takes outer less inner of three, not neighbours", () => {
    expect(outcome("44-34-27")).toBe("fails");
    expect(outcome("44-34-28")).toBe("holds");
  });

  it("is not asked of a single ring, whatever is stated", () => {
    expect(outcome("40", "greatest-front-difference: 0 t")).toBe("notApplicable");
    expect(outcome("40", "")).toBe("notApplicable");
  });

  it("fails with two rings on a derailleur for one, and is unknown where nothing is stated", () => {
    const [finding] = text("46-30", "greatest-front-difference: 0 t").of(code);
    expect(finding?.message).toContain("46 − 30 = 16 t");
    expect(finding?.message).toContain("at most 0 t: fit a single ring, or a derailleur made for several");
    expect(text("48-31", "greatest-front-difference: 16 t").of(code)[0]?.message).toContain(
      "at most 16 t: fit rings that differ by at most 16 t, or a derailleur that allows 17 t",
    );
    expect(text("46-30", "").missing(code)).toEqual(["drivetrain.rear-derailleur.greatest-front-difference"]);
  });
});

describe("drivetrain/front-positions", () => {
  const code = "drivetrain/front-positions";
  const text = (rings: string, derailleur: number, controller: string) =>
    checkText(
      compose({
        ...crank(rings),
        ...front(`rings: ${derailleur}`),
        "drivetrain.front-controller": part("shift-controller", controller),
      }),
    );

  it("holds where all agree", () => {
    expect(text("46-30", 2, "speeds: 2").outcome(code)).toBe("holds");
    expect(text("44-32-22", 3, "speeds: 3").outcome(code)).toBe("holds");
  });

  it("is an error with too few and a warning with too many", () => {
    const few = text("44-32-22", 3, "speeds: 2");
    expect(few.instance(code, "front-derailleur")).toBe("holds");
    expect(few.of(code).map(({ severity }) => severity)).toEqual(["error"]);
    const many = text("46-30", 2, "speeds: 3");
    expect(many.of(code).map(({ severity }) => severity)).toEqual(["warning"]);
  });

  it("finds one fault once where derailleur and controller agree against the cranks", () => {
    expect(text("44-32-22", 2, "speeds: 2").of(code)).toHaveLength(1);
  });

  it("does not ask a friction controller", () => {
    expect(text("46-30", 2, "speeds: none").instance(code, "front-controller")).toBe("notApplicable");
  });
});

describe("drivetrain/front-derailleur-range", () => {
  const code = "drivetrain/front-derailleur-range";
  const text = (rings: string, facts = "largest-ring: 50 t; least-largest-ring: 46 t") =>
    checkText(compose({ ...crank(rings), ...front(facts) }));

  it("holds at both ends and fails one tooth outside either", () => {
    expect(text("50-34").outcome(code)).toBe("holds");
    expect(text("46-34").outcome(code)).toBe("holds");
    expect(text("51-34").of(code)[0]).toMatchObject({ severity: "error" });
    expect(text("45-34").of(code)[0]).toMatchObject({ severity: "warning" });
    expect(text("51-34").of(code)).toHaveLength(1);
  });

  it("judges the outer ring and not the inner", () => {
    expect(text("48-20").outcome(code)).toBe("holds");
  });

  it("is unknown without the largest ring, and does not ask for a least one that no maker stated", () => {
    expect(text("48-34", "rings: 2").missing(code)).toEqual(["drivetrain.front-derailleur.largest-ring"]);
    expect(text("40-30", "largest-ring: 50 t").instance(code, "least")).toBe("notApplicable");
  });

  it("is not applicable without a front derailleur", () => {
    expect(checkText(compose({ ...crank("51-34"), "drivetrain.front-derailleur": "none" })).outcome(code)).toBe(
      "notApplicable",
    );
  });
});

describe("drivetrain/front-derailleur-capacity", () => {
  const code = "drivetrain/front-derailleur-capacity";
  const text = (rings: string, facts: string) => checkText(compose({ ...crank(rings), ...front(facts) }));

  it("holds at the capacity and fails one tooth beyond", () => {
    expect(text("46-31", "capacity: 15 t").outcome(code)).toBe("holds");
    expect(text("46-30", "capacity: 15 t").outcome(code)).toBe("fails");
    expect(text("46-30", "capacity: 15 t").of(code)[0]?.message).toMatch(/46 − 30 = 16 t.*at most 15 t.*31 t or more/);
  });

  it("spans all three rings", () => {
    expect(text("44-32-22", "capacity: 22 t").instance(code, "span")).toBe("holds");
    expect(text("44-32-22", "capacity: 21 t").instance(code, "span")).toBe("fails");
  });

  it("asks the difference of outer and middle ring at least", () => {
    const least = (rings: string) => text(rings, "capacity: 22 t; least-middle-difference: 10 t");
    expect(least("44-34-22").instance(code, "middle")).toBe("holds");
    expect(least("44-35-22").instance(code, "middle")).toBe("fails");
    expect(least("44-22").instance(code, "middle")).toBe("notApplicable");
  });

  it("names the capacity when it is missing, and is not asked of one ring", () => {
    expect(text("46-30", "rings: 2").missing(code)).toEqual(["drivetrain.front-derailleur.capacity"]);
    expect(text("46", "rings: 2").outcome(code)).toBe("notApplicable");
  });
});

describe("drivetrain/front-derailleur-chainline", () => {
  const code = "drivetrain/front-derailleur-chainline";
  const outcome = (line: string, range = "43.5 to 45 mm") =>
    checkText(compose({ ...crank("46-30", `chainline: ${line}`), ...front(`chainline: ${range}`) })).outcome(code);

  it("holds at both ends of the reach and fails outside", () => {
    expect(outcome("43.5 mm")).toBe("holds");
    expect(outcome("45 mm")).toBe("holds");
    expect(outcome("43.4 mm")).toBe("fails");
    expect(outcome("45.1 mm")).toBe("fails");
  });

  it("compares inches with millimetres", () => {
    // 1.75 in = 44.45 mm by the definition of the inch.
    expect(outcome("1.75 in")).toBe("holds");
    expect(outcome("1.8 in")).toBe("fails");
    expect(outcome("44.45 mm", "1.75 in")).toBe("holds");
  });
});

describe("drivetrain/ring-clearance", () => {
  const code = "drivetrain/ring-clearance";
  const text = (rings: string, frame: string) => checkText(compose({ frame: part("frame", frame), ...crank(rings) }));

  it("measures a single ring by the frame's single limit", () => {
    expect(text("34", "largest-ring: 34 t").outcome(code)).toBe("holds");
    expect(text("35", "largest-ring: 34 t").outcome(code)).toBe("fails");
    // The limit for the outer of two does not help a single ring.
    expect(text("40", "largest-ring: 34 t; largest-outer-ring: 44 t").outcome(code)).toBe("fails");
  });

  it("measures two rings by the limits of outer and inner", () => {
    const limits = "largest-ring: 34 t; largest-outer-ring: 48 t; largest-inner-ring: 32 t";
    expect(text("48-32", limits).outcome(code)).toBe("holds");
    expect(text("49-32", limits).instance(code, "largest")).toBe("fails");
    expect(text("49-32", limits).instance(code, "smallest")).toBe("holds");
    expect(text("48-33", limits).instance(code, "largest")).toBe("holds");
    expect(text("48-33", limits).instance(code, "smallest")).toBe("fails");
  });

  it("fails two rings on a frame that takes one, once", () => {
    const found = text("44-30", "largest-ring: 34 t; largest-outer-ring: none").of(code);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toContain("single ring only");
    expect(found[0]?.related[0]?.message).toContain("largest-outer-ring none");
  });

  it("names the limit that is missing", () => {
    expect(text("34", "largest-outer-ring: 48 t").missing(code)).toEqual(["frame.largest-ring"]);
    expect(text("46-30", "largest-ring: 34 t; largest-outer-ring: 48 t").missing(code)).toEqual([
      "frame.largest-inner-ring",
    ]);
  });
});

describe("drivetrain/ring-profile", () => {
  const code = "drivetrain/ring-profile";
  const derailleur: Pieces = { "drivetrain.rear-derailleur": part("rear-derailleur", "speeds: 11") };
  const outcome = (pieces: Pieces) => checkText(compose({ ...derailleur, ...pieces })).outcome(code);

  it("wants alternating teeth, a guide or a front derailleur for one ring", () => {
    const none: Pieces = { "drivetrain.front-derailleur": "none" };
    expect(outcome({ ...crank("40", "ring-profile: alternating"), ...none })).toBe("holds");
    expect(outcome({ ...crank("40", "ring-profile: even"), ...none })).toBe("fails");
    expect(outcome({ ...crank("40", "ring-profile: ramped"), ...none })).toBe("fails");
    const guide: Pieces = { "drivetrain.chain-guide": part("chain-guide", "guards: upper") };
    expect(outcome({ ...crank("40", "ring-profile: even"), ...none, ...guide })).toBe("holds");
    expect(outcome({ ...crank("40", "ring-profile: even"), ...front("rings: 2") })).toBe("holds");
  });

  it("reads the profile of a ring in a slot of its own, not that of the cranks", () => {
    const pieces = (profile: string): Pieces => ({
      ...crank("40", "ring-profile: even"),
      "drivetrain.chainring": part("chainring", `teeth: 38 t; ring-profile: ${profile}`),
      "drivetrain.front-derailleur": "none",
    });
    expect(outcome(pieces("alternating"))).toBe("holds");
    expect(outcome(pieces("even"))).toBe("fails");
  });

  it("is not asked of several rings, nor without a derailleur", () => {
    expect(outcome({ ...crank("46-30", "ring-profile: even"), ...front("rings: 2") })).toBe("notApplicable");
    expect(
      checkText(compose({ ...crank("40", "ring-profile: even"), "drivetrain.rear-derailleur": "none" })).outcome(code),
    ).toBe("notApplicable");
  });

  it("is unknown without the profile, naming it, and needs it no more once a guide is there", () => {
    const open = checkText(compose({ ...derailleur, ...crank("40"), "drivetrain.front-derailleur": "none" }));
    expect(open.missing(code)).toEqual(["drivetrain.crankset.ring-profile"]);
  });

  it("offers a ring and a guide", () => {
    const text = checkText(
      compose({ ...derailleur, ...crank("40", "ring-profile: even"), "drivetrain.front-derailleur": "none" }),
    );
    expect(text.of(code)[0]?.repairs).toEqual([
      { kind: "swap-part", slot: "drivetrain.crankset" },
      { kind: "insert-part", slot: "drivetrain.chain-guide" },
    ]);
    expect(text.of(code)[0]?.severity).toBe("warning");
  });
});

describe("drivetrain/chainline", () => {
  const code = "drivetrain/chainline";
  const outcome = (line: string, design: string) =>
    checkText(compose({ frame: part("frame", `chainline: ${design}`), ...crank("32", `chainline: ${line}`) })).outcome(
      code,
    );

  it("keeps to a span that the frame states", () => {
    expect(outcome("52 mm", "52 to 55 mm")).toBe("holds");
    expect(outcome("55 mm", "52 to 55 mm")).toBe("holds");
    expect(outcome("51.9 mm", "52 to 55 mm")).toBe("fails");
    expect(outcome("55.1 mm", "52 to 55 mm")).toBe("fails");
  });

  it("allows a millimetre around a single figure", () => {
    expect(outcome("51 mm", "52 mm")).toBe("holds");
    expect(outcome("53 mm", "52 mm")).toBe("holds");
    expect(outcome("50.9 mm", "52 mm")).toBe("fails");
    expect(outcome("53.1 mm", "52 mm")).toBe("fails");
  });

  it("takes what a ring of its own gives before what the cranks do", () => {
    const text = (line: string) =>
      checkText(
        compose({
          frame: part("frame", "chainline: 55 mm"),
          "drivetrain.crankset": part("crankset", "rings: none; chainline: 52 mm"),
          "drivetrain.chainring": part("chainring", `teeth: 32 t; ring-chainline: ${line}`),
        }),
      );
    expect(text("55 mm").outcome(code)).toBe("holds");
    expect(text("50 mm").outcome(code)).toBe("fails");
    expect(text("50 mm").of(code)[0]?.path).toBe("drivetrain.chainring");
  });

  it("is never compared with the middle of the cassette", () => {
    const text = checkText(
      compose({
        frame: part("frame", "chainline: 52 mm"),
        ...crank("32", "chainline: 52 mm"),
        "rear-wheel.hub": part("hub", "cog-line: 40 mm"),
      }),
    );
    expect(text.outcome(code)).toBe("holds");
  });

  it("says which way, in numbers that differ", () => {
    const text = checkText(compose({ frame: part("frame", "chainline: 52 mm"), ...crank("32", "chainline: 48.5 mm") }));
    expect(text.of(code)[0]?.message).toMatch(/48\.5 mm.*52 mm.*too far in/);
    expect(text.of(code)[0]?.severity).toBe("warning");
  });

  it("names what is missing", () => {
    const text = checkText(compose({ frame: part("frame", 'size: "M"'), ...crank("32") }));
    expect(text.missing(code)).toEqual(["frame.chainline"]);
    const other = checkText(compose({ frame: part("frame", "chainline: 52 mm"), ...crank("32") }));
    expect(other.missing(code)).toEqual(["drivetrain.crankset.chainline"]);
  });
});

describe("drivetrain/chain-angle", () => {
  const code = "drivetrain/chain-angle";
  const text = (line: string, cogLine: string, frame = "chainstay: 400 mm") =>
    checkText(
      compose({
        frame: part("frame", frame),
        ...crank("40", `chainline: ${line}`),
        "drivetrain.cassette": part("cassette", "cogs: 11-13-15 t; cog-pitch: 4 mm"),
        "rear-wheel.hub": part("hub", `cog-line: ${cogLine}`),
      }),
    );

  it("passes up to four degrees and mentions more", () => {
    // Largest cog one pitch inside the middle: 400 × tan 4° = 27.97 mm, so 23.9 and 24.1 mm of offset lie either side.
    expect(text("63.9 mm", "40 mm").outcome(code)).toBe("holds");
    expect(text("64.1 mm", "40 mm").outcome(code)).toBe("fails");
    expect(text("64.1 mm", "40 mm").of(code)[0]?.severity).toBe("information");
    expect(text("64.1 mm", "40 mm").of(code)[0]?.message).toContain("40×15");
  });

  it("counts the angle the other way too", () => {
    expect(text("36 mm", "60.1 mm").outcome(code)).toBe("fails");
    expect(text("36 mm", "59.9 mm").outcome(code)).toBe("holds");
  });

  it("says nothing of a layout that the frame is designed for, nor of a chainline found wrong as such", () => {
    const designed = text("64.1 mm", "40 mm", "chainstay: 400 mm; chainline: 64 mm");
    expect(designed.outcome(code)).toBe("holds");
    const wrong = text("64.1 mm", "40 mm", "chainstay: 400 mm; chainline: 50 mm");
    expect(wrong.outcome(code)).toBe("notApplicable");
    expect(wrong.outcome("drivetrain/chainline")).toBe("fails");
  });
});

describe("limits of cranks and chain guide for the ring", () => {
  it("asks a ring of its own, at both ends, and not the rings that the cranks are sold with", () => {
    const code = "drivetrain/ring-size";
    const outcome = (teeth: number, facts = "largest-ring: 38 t; smallest-ring: 28 t") =>
      checkText(
        compose({
          "drivetrain.crankset": part("crankset", `rings: none; ${facts}`),
          "drivetrain.chainring": part("chainring", `teeth: ${teeth} t`),
        }),
      ).outcome(code);
    expect([27, 28, 38, 39].map((teeth) => outcome(teeth))).toEqual(["fails", "holds", "holds", "fails"]);
    expect(outcome(50, "spindle-length: 120 mm")).toBe("notApplicable");
    expect(checkText(compose(crank("48", "largest-ring: 38 t"))).outcome(code)).toBe("notApplicable");
  });

  it("asks the largest ring of a guide, at both ends", () => {
    const code = "drivetrain/chain-guide-range";
    const text = (teeth: string, facts = "largest-ring: 36 t; smallest-ring: 28 t") =>
      checkText(compose({ ...crank(teeth), "drivetrain.chain-guide": part("chain-guide", facts) }));
    expect(["27", "28", "36", "37"].map((teeth) => text(teeth).outcome(code))).toEqual([
      "fails",
      "holds",
      "holds",
      "fails",
    ]);
    expect(text("36-22").outcome(code)).toBe("holds");
    expect(text("34", "guards: upper").missing(code)).toEqual(["drivetrain.chain-guide.largest-ring"]);
    expect(checkText(compose(crank("38"))).outcome(code)).toBe("notApplicable");
  });
});
