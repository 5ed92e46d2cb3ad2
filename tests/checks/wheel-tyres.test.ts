import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

function outcome(text: string, code: string): string {
  return checkText(text).outcome(code);
}

function finding(text: string, code: string) {
  const found = checkText(text).of(code);
  expect(found.map(({ message }) => message)).toHaveLength(1);
  const [first] = found;
  if (!first) throw new Error(`${code} finds nothing`);
  return first;
}

function severity(text: string, code: string): string | undefined {
  return checkText(text).of(code)[0]?.severity;
}

/** A front wheel alone. */
function front(pieces: Pieces, more = ""): string {
  return compose(
    { "rear-wheel.tyre": "none", "rear-wheel.rim": "none", "rear-wheel.rim-tape": "none", ...pieces },
    more,
  );
}

function pair(tyre: string, rim: string, settings = ""): string {
  return front({ "front-wheel.tyre": part("tyre", tyre, settings), "front-wheel.rim": part("rim", rim) });
}

describe("width of tyre and rim", () => {
  const code = "wheel/tyre-rim-width";

  // Combinations that every table allows, and such as none does (trade glossary; ranges of 2010 to 2020 from memory).
  it.each([
    [13, 23, "holds"],
    [15, 28, "holds"],
    [17, 28, "holds"],
    [19, 32, "holds"],
    [19, 40, "holds"],
    [23, 47, "holds"],
    [25, 57, "holds"],
    [30, 61, "holds"],
    [13, 32, "fails"],
    [15, 40, "fails"],
    [25, 25, "fails"],
    [30, 28, "fails"],
    [13, 47, "fails"],
    // Common on the road today, and outside both.
    [21, 28, "fails"],
    [25, 30, "fails"],
    // The ends of the rows.
    [13, 18, "holds"],
    [13, 25, "holds"],
    [13, 28, "fails"],
    [17, 25, "holds"],
    [17, 37, "holds"],
    [17, 38, "fails"],
    [19, 28, "holds"],
    [19, 27, "fails"],
    [19, 47, "holds"],
    [21, 34, "fails"],
    [21, 35, "holds"],
    [23, 54, "holds"],
    [25, 43, "fails"],
    [25, 44, "holds"],
    [25, 60, "holds"],
    [25, 61, "fails"],
    [27, 60, "holds"],
    // Between two rows what both allow: 23 takes 40 to 54 and 25 takes 44 to 60.
    [24, 44, "holds"],
    [24, 43, "fails"],
    [24, 54, "holds"],
    [24, 55, "fails"],
    // Past the list the ratio alone: 30 takes 42 to 72 by it, and 52 to 71 by the ranges.
    [30, 52, "holds"],
    [30, 51, "fails"],
    [30, 71, "holds"],
    [30, 72, "fails"],
    [35, 76, "holds"],
    [35, 56, "holds"],
    [35, 55, "fails"],
  ])("a rim of %d mm with a tyre of %d mm: %s", (rim, tyre, expected) => {
    const text = pair(`size: ${tyre}-622`, `inner-width: ${rim} mm`);
    expect(outcome(text, code)).toBe(expected);
    // A table is no maker's limit.
    expect(severity(text, code)).toBe(expected === "fails" ? "warning" : undefined);
  });

  it("names the editions, and what each reads", () => {
    const found = finding(pair("size: 40-622", "inner-width: 15 mm"), code);
    expect(found.message).toBe(
      "tyre is 40 mm wide and rim 15 mm inside. For such a rim one reads 23 to 32 mm (the ratio rule of trade glossaries) and 23 to 32 mm (the ranges quoted between 2010 and 2020). Tables disagree: ask what the makers of tyre and rim allow, and state it.",
    );
    expect(found.repairs.slice(0, 2)).toEqual([
      { kind: "state-fact", slot: "front-wheel.tyre", fact: "narrowest-rim" },
      { kind: "state-fact", slot: "front-wheel.tyre", fact: "widest-rim" },
    ]);
    expect(finding(pair("size: 45-622", "inner-width: 17 mm"), code).message).toContain(
      "one reads 25 to 37 mm (the ratio rule of trade glossaries), but also 25 to 50 mm (the ranges quoted between 2010 and 2020)",
    );
    expect(finding(pair("size: 28-622", "inner-width: 21 mm"), code).message).toContain(
      "Tables disagree, and newer ones, from 2020 on, allow wider rims: ask",
    );
  });

  it.each([
    [12.9, 18],
    [35.1, 60],
    [80, 102],
  ])("says nothing of a rim of %d mm without its makers", (rim, tyre) => {
    const text = pair(`size: ${tyre}-622`, `inner-width: ${rim} mm`);
    expect(checkText(text).missing(code)).toEqual([
      "front-wheel.tyre.narrowest-rim",
      "front-wheel.rim.widest-tyre",
      "front-wheel.tyre.widest-rim",
      "front-wheel.rim.narrowest-tyre",
    ]);
    expect(
      outcome(pair(`size: ${tyre}-622; narrowest-rim: 10 mm; widest-rim: 100 mm`, `inner-width: ${rim} mm`), code),
    ).toBe("holds");
  });

  it.each([
    ["narrowest-rim: 17 mm; widest-rim: 23 mm", "", "holds", undefined],
    ["narrowest-rim: 21 mm; widest-rim: 21 mm", "", "holds", undefined],
    ["narrowest-rim: 21.1 mm; widest-rim: 30 mm", "", "fails", "error"],
    ["narrowest-rim: 15 mm; widest-rim: 20.9 mm", "", "fails", "error"],
    ["", "narrowest-tyre: 28 mm; widest-tyre: 40 mm", "holds", undefined],
    ["", "narrowest-tyre: 28.1 mm; widest-tyre: 40 mm", "fails", "error"],
    ["", "narrowest-tyre: 20 mm; widest-tyre: 27.9 mm", "fails", "error"],
    // Half of the question is the makers', the other half the tables'.
    ["widest-rim: 23 mm", "", "holds", undefined],
    ["narrowest-rim: 15 mm", "", "fails", "warning"],
    ["", "narrowest-tyre: 25 mm", "holds", undefined],
    ["", "widest-tyre: 50 mm", "fails", "warning"],
    ["narrowest-rim: 15 mm", "narrowest-tyre: 25 mm", "holds", undefined],
    ["narrowest-rim: none; widest-rim: none", "narrowest-tyre: none; widest-tyre: none", "fails", "warning"],
  ])("28 mm on 21 mm, tyre %s, rim %s: %s %s", (tyre, rim, expected, grave) => {
    const text = pair(`size: 28-622; ${tyre}`, `inner-width: 21 mm; ${rim}`);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("quotes the makers", () => {
    const found = finding(pair("size: 28-622; widest-rim: 19 mm", "inner-width: 25 mm; narrowest-tyre: 30 mm"), code);
    expect(found.message).toBe(
      "tyre is 28 mm and rim 25 mm wide inside, but tyre takes rims of 19 mm at most and rim takes tyres of 30 mm at least: fit a tyre or a rim that both makers allow.",
    );
    expect(found.related.map(({ message }) => message)).toEqual([
      "tyre: size 28-622",
      "rim: inner-width 25 mm",
      "tyre: widest-rim 19 mm",
      "rim: narrowest-tyre 30 mm",
    ]);
  });
});

describe("straight sides", () => {
  const code = "wheel/straight-side-rim";
  const hookless = (tyre: string, inner = 25): string =>
    pair(tyre, `rim-kind: tubeless-straight-side; inner-width: ${inner} mm`);

  // 25 mm inside: 28 mm out since 2023, 30 mm in, and 29 mm by some sources only (trade magazines).
  it.each([
    [28, "fails", "error"],
    [28.9, "fails", "error"],
    [29, "fails", "warning"],
    [29.9, "fails", "warning"],
    [30, "holds", undefined],
    [40, "holds", undefined],
  ])("a tyre of %d mm on 25 mm: %s %s", (tyre, expected, grave) => {
    const text = hookless(`size: ${tyre}-622; straight-side-approved: yes`);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("finds a tyre too narrow once, not by the tables as well", () => {
    expect(outcome(hookless("size: 28-622; straight-side-approved: yes"), "wheel/tyre-rim-width")).toBe(
      "notApplicable",
    );
    expect(outcome(hookless("size: 29-622; straight-side-approved: yes"), "wheel/tyre-rim-width")).toBe(
      "notApplicable",
    );
    expect(
      outcome(hookless("size: 29-622; widest-rim: 23 mm; straight-side-approved: yes"), "wheel/tyre-rim-width"),
    ).toBe("fails");
    expect(outcome(hookless("size: 30-622; straight-side-approved: yes"), "wheel/tyre-rim-width")).toBe("fails");
  });

  it("says how much wider it is and has to be", () => {
    const found = finding(hookless("size: 28-622; straight-side-approved: yes"), code);
    expect(found.message).toBe(
      "tyre is 28 mm wide, 3 mm more than the rim with its 25 mm inside: rim is tubeless-straight-side (Tubeless straight side, which the trade calls hookless), on which a tyre is 5 mm wider at least. Fit a tyre of 30 mm or more.",
    );
    expect(found.caution).toContain("No levers");
    expect(finding(hookless("size: 29-622; straight-side-approved: yes"), code).message).toContain(
      "sources differ by a millimetre",
    );
  });

  it.each([
    ["size: 40-622; straight-side-approved: yes", "holds"],
    ["size: 40-622; straight-side-approved: no", "fails"],
    ["straight-side-approved: no", "fails"],
    ["size: 40-622", "unknown"],
    ["straight-side-approved: yes", "unknown"],
    ["size: 28-622", "fails"],
  ])("%s: %s", (tyre, expected) => {
    expect(outcome(hookless(tyre), code)).toBe(expected);
  });

  it("is not asked of hooked rims", () => {
    expect(outcome(pair("straight-side-approved: no", "rim-kind: tubeless-crotchet"), code)).toBe("notApplicable");
    expect(outcome(pair("straight-side-approved: no", "rim-kind: crotchet"), code)).toBe("notApplicable");
    expect(outcome(pair("straight-side-approved: no", "inner-width: 25 mm"), code)).toBe("unknown");
  });

  it.each([
    ["bead: wire", "holds"],
    ["bead: folding", "fails"],
    ["bead: none", "fails"],
    ["size: 40-622", "unknown"],
  ])("a plain straight-side rim with %s: %s", (tyre, expected) => {
    expect(outcome(pair(tyre, "rim-kind: straight-side; inner-width: 20 mm"), code)).toBe(expected);
  });
});

describe("pressure", () => {
  const code = "wheel/pressure";
  const tyre = "construction: tubeless-ready; greatest-pressure: 5.5 bar; least-pressure: 2.5 bar";
  const rim = "rim-kind: crotchet; greatest-pressure: 6 bar";
  const at = (pressure: string, tyreFacts = tyre, rimFacts = rim): string =>
    pair(tyreFacts, rimFacts, pressure === "" ? "" : `pressure: ${pressure}`);

  it.each([
    ["5.5 bar", "holds"],
    ["5.51 bar", "fails"],
    ["2.5 bar", "holds"],
    ["2.49 bar", "fails"],
    ["4 bar", "holds"],
    // 5.5 bar is 79.77 psi.
    ["79 psi", "holds"],
    ["80 psi", "fails"],
  ])("%s between 2.5 and 5.5 bar: %s", (pressure, expected) => {
    expect(outcome(at(pressure), code)).toBe(expected);
  });

  it.each([
    ["the tyre", "6 bar", tyre, rim, "tyre bears 5.5 bar", "5.5 bar", ["front-wheel.tyre"]],
    [
      "the rim",
      "5.2 bar",
      tyre,
      "rim-kind: crotchet; greatest-pressure: 5 bar",
      "rim bears 5 bar",
      "5 bar",
      ["front-wheel.rim"],
    ],
    [
      "the kind of rim",
      "5.2 bar",
      tyre,
      "rim-kind: hookless; greatest-pressure: 6 bar",
      "any tyre on a rim of its kind (Tubeless straight side, which the trade calls hookless) bears 5 bar",
      "5 bar",
      ["front-wheel.rim"],
    ],
    [
      "both",
      "8 bar",
      tyre,
      "rim-kind: crotchet; greatest-pressure: 5 bar",
      "tyre bears 5.5 bar and rim bears 5 bar",
      "5 bar",
      ["front-wheel.tyre", "front-wheel.rim"],
    ],
    [
      "a limit in psi",
      "5.2 bar",
      "greatest-pressure: 72 psi; least-pressure: none",
      rim,
      "tyre bears 72 psi (4.96 bar) at most",
      "4.96 bar",
      ["front-wheel.tyre"],
    ],
  ])("above what %s bears", (_, pressure, tyreFacts, rimFacts, said, set, swapped) => {
    const found = finding(at(pressure, tyreFacts, rimFacts), code);
    expect(found).toMatchObject({ severity: "error", path: "front-wheel.tyre.pressure" });
    expect(found.message).toContain(said);
    expect(found.message).toContain(`inflate to ${set} or less`);
    expect(found.repairs[0]).toEqual({
      kind: "set-setting",
      slot: "front-wheel.tyre",
      setting: "pressure",
      value: set,
    });
    expect(found.repairs.slice(1).map((repair) => ("slot" in repair ? repair.slot : ""))).toEqual(swapped);
    expect(found.caution).toContain("injures eyes");
  });

  it("mends itself", () => {
    for (const pressure of ["7 bar", "1 bar"]) {
      const [mend] = repaired(at(pressure), code);
      expect(outcome(mend?.text ?? "", code), pressure).toBe("holds");
    }
    const low = finding(at("1 bar", "greatest-pressure: 80 psi; least-pressure: 37 psi"), code);
    // 37 psi is 2.5511 bar.
    expect(low.repairs[0]).toMatchObject({ value: "2.56 bar" });
    expect(low.message).toContain("tyre prints 37 psi (2.55 bar) at least");
  });

  it("finds a tyre and a rim between which there is no pressure, whatever the build says", () => {
    const hard = "construction: tubeless-ready; greatest-pressure: 8 bar; least-pressure: 5.5 bar";
    for (const pressure of ["", "5 bar", "6 bar"]) {
      const found = finding(at(pressure, hard, "rim-kind: hookless; greatest-pressure: 6 bar"), code);
      expect(found.path).toBe("front-wheel.tyre");
      expect(found.message).toContain("asks for 5.5 bar at least");
      expect(found.message).toContain("bears 5 bar at most");
    }
    expect(
      outcome(at("5 bar", hard.replace("5.5 bar", "5 bar"), "rim-kind: hookless; greatest-pressure: 6 bar"), code),
    ).toBe("holds");
  });

  it.each([
    ["the pressure", "", tyre, rim, "front-wheel.tyre.pressure"],
    ["the tyre's greatest", "4 bar", "least-pressure: 2.5 bar", rim, "front-wheel.tyre.greatest-pressure"],
    ["the tyre's least", "4 bar", "greatest-pressure: 5.5 bar", rim, "front-wheel.tyre.least-pressure"],
    ["the rim's", "4 bar", tyre, "rim-kind: crotchet", "front-wheel.rim.greatest-pressure"],
    ["the rim's kind", "4 bar", tyre, "greatest-pressure: 6 bar", "front-wheel.rim.rim-kind"],
  ])("cannot tell without %s", (_, pressure, tyreFacts, rimFacts, missing) => {
    const text = at(pressure, tyreFacts, rimFacts);
    expect(outcome(text, code)).toBe("unknown");
    expect(checkText(text).missing(code)).toEqual([missing]);
  });

  it("fails by what is known while the rest is open", () => {
    expect(outcome(at("6 bar", tyre, "inner-width: 20 mm"), code)).toBe("fails");
    expect(outcome(at("2 bar", "least-pressure: 2.5 bar", "inner-width: 20 mm"), code)).toBe("fails");
  });

  it("holds no air, no question", () => {
    expect(outcome(at("3 bar", "construction: airless; greatest-pressure: none"), code)).toBe("notApplicable");
  });

  it("agrees with the limits that are worked out for the build", () => {
    const text = checkText(at("4 bar"));
    const quantity = text.report.evaluation.quantity("front-wheel.greatest-pressure");
    expect(quantity).toMatchObject({ state: "known", value: 5.5 });
    expect(text.row(code).instances[0]?.verdict).toMatchObject({ outcome: "holds", margin: (5.5 - 4) / 5.5 });
  });
});

describe("without a tube", () => {
  const code = "wheel/tubeless";
  const base: Pieces = {
    "front-wheel.tyre": part("tyre", "construction: tubeless-ready"),
    "front-wheel.rim": part("rim", "rim-kind: tubeless-crotchet"),
    "front-wheel.valve": part("valve", "valve-kind: presta"),
    "front-wheel.rim-tape": part("rim-tape", "airtight: yes; width: 30 mm"),
  };
  const wheel = (pieces: Pieces): string => front({ ...base, ...pieces });

  it.each([
    ["all of it sealed", {}, "holds", undefined],
    ["a tyre airtight by itself", { "front-wheel.tyre": part("tyre", "construction: tubeless") }, "holds", undefined],
    ["a rim without holes", { "front-wheel.rim-tape": "none" }, "holds", undefined],
    ["a tyre for a tube", { "front-wheel.tyre": part("tyre", "construction: tube") }, "fails", "error"],
    [
      "a rim that forbids it",
      { "front-wheel.rim": part("rim", "rim-kind: crotchet; forbids: tubeless-tyre") },
      "fails",
      "error",
    ],
    ["a rim of a kind for tubes", { "front-wheel.rim": part("rim", "rim-kind: crotchet") }, "fails", "warning"],
    ["cloth tape", { "front-wheel.rim-tape": part("rim-tape", "airtight: no") }, "fails", "error"],
    ["no valve", { "front-wheel.valve": "none", "front-wheel.tube": "none" }, "fails", "error"],
    [
      "a tube after all",
      {
        "front-wheel.tube": part("tube", "valve-kind: presta"),
        "front-wheel.tyre": part("tyre", "construction: tube"),
      },
      "notApplicable",
      undefined,
    ],
    ["a tyre without air", { "front-wheel.tyre": part("tyre", "construction: airless") }, "notApplicable", undefined],
    ["a sewn tyre", { "front-wheel.tyre": part("tyre", "construction: tubular") }, "notApplicable", undefined],
    ["nothing said of a tube", { "front-wheel.valve": undefined }, "unknown", undefined],
    ["nothing said of tape", { "front-wheel.rim-tape": undefined }, "unknown", undefined],
    [
      "tape of which nothing is known",
      { "front-wheel.rim-tape": part("rim-tape", "width: 30 mm") },
      "unknown",
      undefined,
    ],
    ["a rim of unknown kind", { "front-wheel.rim": part("rim", "inner-width: 25 mm") }, "unknown", undefined],
  ] as const)("%s: %s %s", (_, pieces, expected, grave) => {
    const text = wheel(pieces);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("offers a tube", () => {
    const text = `part tube spare "Spare tube" { valve-kind: presta }
${wheel({ "front-wheel.tyre": part("tyre", "construction: tube") })}`;
    const [mend] = repaired(text, code);
    expect(mend?.title).toBe("Add Spare tube (spare) as front-wheel.tube");
    expect(outcome(mend?.text ?? "", code)).toBe("notApplicable");
  });

  it("names what does not hold the air", () => {
    expect(finding(wheel({ "front-wheel.rim-tape": part("rim-tape", "airtight: no") }), code)).toMatchObject({
      path: "front-wheel.rim-tape",
      message: "The build has no tube, but rim-tape does not seal the spoke holes: use airtight tape.",
    });
    expect(finding(wheel({ "front-wheel.valve": "none", "front-wheel.tube": "none" }), code).message).toContain(
      "neither a tube nor a tubeless valve",
    );
  });
});

describe("tape and valve", () => {
  const taped = (width: number, inner: number, inside: Pieces): string =>
    front({
      "front-wheel.rim-tape": part("rim-tape", `width: ${width} mm`),
      "front-wheel.rim": part("rim", `inner-width: ${inner} mm`),
      ...inside,
    });
  const tubeless: Pieces = { "front-wheel.valve": part("valve", "valve-kind: presta") };
  const tubed: Pieces = { "front-wheel.tube": part("tube", "valve-kind: presta") };

  it.each([
    ["a valve", tubeless, 25, 25, "holds"],
    ["a valve", tubeless, 31, 25, "holds"],
    ["a valve", tubeless, 31.1, 25, "fails"],
    ["a valve", tubeless, 24.9, 25, "fails"],
    ["a tube", tubed, 18, 25, "holds"],
    ["a tube", tubed, 10, 25, "holds"],
    ["a tube", tubed, 9.9, 25, "fails"],
    ["a tube", tubed, 31.1, 25, "fails"],
    ["nothing said", {}, 18, 25, "unknown"],
    ["nothing said", {}, 27, 25, "holds"],
  ])("with %s, tape %d: %s", (_, inside, width, inner, expected) => {
    expect(outcome(taped(width, inner, inside), "wheel/tape-width")).toBe(expected);
  });

  it("says which tape is right", () => {
    expect(finding(taped(22, 25, tubeless), "wheel/tape-width").message).toBe(
      "rim-tape is 22 mm wide, and rim measures 25 mm inside: without a tube it leaves the edges of the rim's bed open, and leaks there. Use tape of 25 mm or a little more.",
    );
    expect(finding(taped(34, 25, tubeless), "wheel/tape-width").message).toContain("Use tape of 31 mm or less");
    expect(finding(taped(9, 25, tubed), "wheel/tape-width").message).toContain("Use tape of 10 mm or more");
    expect(severity(taped(34, 25, tubeless), "wheel/tape-width")).toBe("warning");
  });

  const valve = (length: number, rim: string): string =>
    compose({
      "rear-wheel.tube": "none",
      "front-wheel.valve": part("valve", `valve-length: ${length} mm`),
      "front-wheel.rim": part("rim", rim),
    });

  it.each([
    [65, "valve-hole-depth: 50 mm", "holds", undefined],
    [64.9, "valve-hole-depth: 50 mm", "fails", "warning"],
    [50.1, "valve-hole-depth: 50 mm", "fails", "warning"],
    [50, "valve-hole-depth: 50 mm", "fails", "error"],
    [40, "valve-hole-depth: 12 mm; depth: 40 mm", "holds", undefined],
    [40, "depth: 25 mm", "holds", undefined],
    // The valve may have less to pass than the whole depth.
    [40, "depth: 26 mm", "unknown", undefined],
    [40, "valve-hole-depth: none; depth: 26 mm", "fails", "warning"],
    [40, "inner-width: 20 mm", "unknown", undefined],
  ])("a valve of %d mm in a rim with %s: %s %s", (length, rim, expected, grave) => {
    const text = valve(length, rim);
    expect(outcome(text, "wheel/valve-length")).toBe(expected);
    expect(severity(text, "wheel/valve-length")).toBe(grave);
  });

  it("says how much stands out and how long a valve is needed", () => {
    expect(finding(valve(60, "valve-hole-depth: 50 mm"), "wheel/valve-length").message).toBe(
      "valve has a valve of 60 mm, and rim is 50 mm thick where it passes: only 10 mm stand out, and a pump grips some 15 mm. Fit a valve of 65 mm or more, or an extension.",
    );
    expect(finding(valve(44, "valve-hole-depth: 50 mm"), "wheel/valve-length").message).toContain(
      "it does not come out of the rim. Fit a valve of 65 mm",
    );
    expect(checkText(valve(40, "depth: 26 mm")).missing("wheel/valve-length")).toEqual([
      "front-wheel.rim.valve-hole-depth",
    ]);
  });
});

describe("clearance", () => {
  const code = "wheel/tyre-clearance";
  const measured = (width: number, on = 25): string =>
    `size: 50-622; measured-width: ${width} mm; measured-on-rim: ${on} mm`;
  const inFork = (tyre: string, fork: string, inner = 25, more: Pieces = {}): string =>
    front({
      fork: part("fork", fork),
      "front-wheel.tyre": part("tyre", tyre),
      "front-wheel.rim": part("rim", `inner-width: ${inner} mm`),
      ...more,
    });
  const inFrame = (tyre: string, frame: string, more: Pieces = {}, fields = ""): string =>
    compose({
      frame: part("frame", frame),
      "front-wheel.tyre": "none",
      "rear-wheel.tyre": part("tyre", tyre),
      "rear-wheel.rim": part("rim", "inner-width: 25 mm"),
      ...more,
    }).replace('build example "Example" {', `build example "Example" {\n${fields}`);

  it.each([
    [50, 50, "holds"],
    [50.1, 50, "fails"],
    [49, 50, "holds"],
  ])("%d mm as measured in a fork for %d mm: %s", (width, most, expected) => {
    const text = inFork(measured(width), `widest-tyre: ${most} mm`);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(expected === "fails" ? "error" : undefined);
  });

  it("goes by the width on the rim that it is fitted to", () => {
    // By membrane geometry 56 mm on a rim of 25 mm come to 58.95 mm on one of 35 mm.
    expect(outcome(inFork(measured(56), "widest-tyre: 57 mm", 25), code)).toBe("holds");
    const found = finding(inFork(measured(56), "widest-tyre: 57 mm", 35), code);
    expect(found.message).toMatch(
      /^tyre measures 59(\.\d)? mm on its rim, but fork takes tyres of 57 mm at most: fit a narrower tyre\.$/,
    );
  });

  it("does not split hairs about a width that is only worked out from the label", () => {
    // 45 mm by its label supposes a rim of 24.75 mm; on 25 mm it comes to 45.08 mm.
    expect(outcome(inFork("size: 45-622", "widest-tyre: 45 mm"), code)).toBe("holds");
    // On 30 mm it comes to 46.8 mm: a question for a caliper, since the label fits.
    const wide = inFork("size: 45-622", "widest-tyre: 45 mm", 30);
    expect(severity(wide, code)).toBe("warning");
    expect(finding(wide, code).message).toContain("or measure it on that rim and state measured-width");
    const plain = inFork("size: 47-622", "widest-tyre: 45 mm");
    expect(severity(plain, code)).toBe("error");
    expect(finding(plain, code).message).not.toContain("measured-width");
  });

  it.each([
    ["tallest-tyre: 361 mm", "holds"],
    ["tallest-tyre: 360.9 mm", "fails"],
    ["crown-radius: 50 mm", "holds"],
  ])("622 / 2 + 50 mm above the axle with %s: %s", (fork, expected) => {
    const text = inFork(`${measured(48)}; measured-height: 50 mm`, `widest-tyre: 55 mm; ${fork}`);
    expect(outcome(text, code)).toBe(expected);
    if (expected === "fails")
      expect(finding(text, code).message).toContain("stands 361 mm from the axle, but fork clears 360.9 mm at most");
  });

  it("asks mudguards, and the frame under one, where there are any", () => {
    const guard = { "carrying.rear-mudguard": part("mudguard", "widest-tyre: 48 mm") };
    const frame = "widest-tyre: 55 mm; widest-tyre-with-mudguard: 46 mm";
    expect(outcome(inFrame(measured(50), frame), code)).toBe("holds");
    expect(outcome(inFrame(measured(46), frame, guard), code)).toBe("holds");
    const under = finding(inFrame(measured(47), frame, guard), code);
    expect(under.message).toContain("frame with a mudguard takes tyres of 46 mm at most");
    const both = finding(inFrame(measured(50), frame, guard), code);
    expect(both.message).toContain("rear-mudguard covers tyres of 48 mm");
    expect(both.message).toContain("frame with a mudguard takes tyres of 46 mm");
    expect(both.repairs).toContainEqual({ kind: "swap-part", slot: "carrying.rear-mudguard" });
    expect(outcome(inFrame(measured(46), "widest-tyre: 55 mm", guard), code)).toBe("unknown");
  });

  it.each([
    // 60 mm between the stays: 48 mm with 6 mm a side, 52 mm with 4 mm.
    ["category: gravel", 48, "holds", undefined],
    ["category: gravel", 48.1, "fails", "warning"],
    ["category: gravel", 60.1, "fails", "error"],
    ["category: road", 52, "holds", undefined],
    ["category: track", 52, "holds", undefined],
    ["category: cyclo-cross", 52.1, "fails", "warning"],
    ["ground.mud-allowance: 10 mm", 40, "holds", undefined],
    ["ground.mud-allowance: 10 mm", 40.1, "fails", "warning"],
    ["", 40, "unknown", undefined],
  ])("between stays of 60 mm, %s, %d mm: %s %s", (fields, width, expected, grave) => {
    const text = inFrame(measured(width), "stay-gap: 60 mm", {}, fields);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("takes the maker's widest tyre for the room it needs, unless the build asks for more", () => {
    const frame = "widest-tyre: 52 mm; stay-gap: 60 mm";
    expect(outcome(inFrame(measured(52), frame, {}, "category: mountain"), code)).toBe("holds");
    const muddy = finding(inFrame(measured(45), frame, {}, "ground.mud-allowance: 8 mm"), code);
    expect(muddy.severity).toBe("warning");
    expect(muddy.message).toContain(
      "60 mm between its stays and so, with 8 mm kept free at either side, room for 44 mm",
    );
  });

  it.each([
    ["how wide a tyre the fork takes", inFork(measured(50), "axle: 15x110"), "fork.widest-tyre"],
    [
      "the rim",
      inFork(measured(50), "widest-tyre: 55 mm", 25, { "front-wheel.rim": part("rim", "depth: 20 mm") }),
      "front-wheel.rim.inner-width",
    ],
  ])("cannot tell without %s", (_, text, missing) => {
    expect(outcome(text, code)).toBe("unknown");
    expect(checkText(text).missing(code)).toContain(missing);
  });

  it("gives the room that is left for ranking", () => {
    expect(checkText(inFork(measured(45), "widest-tyre: 50 mm")).row(code).instances[0]?.verdict).toMatchObject({
      margin: 0.1,
    });
  });
});

describe("direction of the tread", () => {
  const code = "wheel/tyre-direction";
  it.each([
    ["directional: yes", "", "notApplicable"],
    ["directional: yes", "mounted-reversed: no", "holds"],
    ["directional: yes", "mounted-reversed: yes", "fails"],
    ["directional: no", "mounted-reversed: yes", "notApplicable"],
    ["size: 50-622", "mounted-reversed: yes", "unknown"],
  ])("%s and %s: %s", (tyre, settings, expected) => {
    const text = pair(tyre, "inner-width: 25 mm", settings);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(expected === "fails" ? "information" : undefined);
  });
});

describe("wheel/tubular", () => {
  function glued(construction: string, kind: string): string {
    return compose({
      "front-wheel.tyre": part("tyre", construction),
      "front-wheel.rim": part("rim", kind),
      "front-wheel.tube": "none",
      "front-wheel.valve": "none",
      "front-wheel.rim-tape": "none",
    });
  }

  it.each([
    ["construction: tubular", "rim-kind: tubular", "holds"],
    ["construction: tubular", "rim-kind: crotchet", "fails"],
    ["construction: tubular", "rim-kind: tubeless-straight-side", "fails"],
    ["construction: tube", "rim-kind: tubular", "fails"],
    ["construction: tubeless-ready", "rim-kind: tubular", "fails"],
    ["construction: tube", "rim-kind: crotchet", "notApplicable"],
    ["construction: airless", "rim-kind: tubeless-crotchet", "notApplicable"],
    ["construction: tubular", 'maker: "gill"', "unknown"],
    ['maker: "gill"', "rim-kind: tubular", "unknown"],
  ])("%s on %s: %s", (construction, kind, outcome) => {
    expect(checkText(glued(construction, kind)).instance("wheel/tubular", "front")).toBe(outcome);
  });

  it("says both constructions and what to fit", () => {
    expect(checkText(glued("construction: tubular", "rim-kind: crotchet")).of("wheel/tubular")[0]?.message).toMatch(
      /construction: tubular.*crotchet.*no bed to glue it to.*a tyre with beads, or a rim for tubulars/,
    );
    const beads = checkText(glued("construction: tubeless-ready", "rim-kind: tubular"));
    expect(beads.of("wheel/tubular")[0]?.message).toMatch(/rim-kind: tubular.*construction: tubeless-ready.*no edges/);
    // Once only: that the rim is not made to go without a tube is the same fault.
    expect(beads.of("wheel/tubeless")).toEqual([]);
    expect(beads.instance("wheel/tubeless", "front")).toBe("notApplicable");
  });

  it("asks no width of a rim's edges for a tyre without beads", () => {
    const narrow = (construction: string) =>
      checkText(glued(`construction: ${construction}; size: 60-622`, "rim-kind: crotchet; inner-width: 13 mm"));
    expect(narrow("tube").of("wheel/tyre-rim-width")).toHaveLength(1);
    expect(narrow("tubular").instance("wheel/tyre-rim-width", "front")).toBe("notApplicable");
  });
});

describe("load on a tyre", () => {
  const code = "wheel/tyre-load";

  /** A bicycle of one frame and a tyre on either wheel, so that all of it is weighed. */
  function loaded(wheel: string, limit: string, rider: string): string {
    return `
part frame example.frame "Frame" { mass: 10 kg }
part tyre example.tyre "Tyre" { load-limit: ${limit}; mass: 0 g }
build example "Loaded" {
  rider { ${rider} }
  frame: example.frame
  fork: none
  rear-shock: none
  headset: none
  drivetrain { rear-derailleur: none; front-derailleur: none; cassette: none; chain: none; crankset: none; chainring: none; bottom-bracket: none; pedals: none; rear-controller: none }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  cockpit { stem: none; handlebar: none; grips: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; rim: none; spokes: none; tyre: ${wheel === "front" ? "example.tyre" : "none"}; tube: none; rim-tape: none; axle: none }
  rear-wheel { hub: none; rim: none; spokes: none; tyre: ${wheel === "rear" ? "example.tyre" : "none"}; tube: none; rim-tape: none; axle: none }
}
`;
  }

  // 80 + 10 + 10 = 100 kg, shared 45 to 55, worked by hand.
  it.each([
    ["front", "45 kg", "holds"],
    ["front", "44 kg", "fails"],
    ["rear", "55 kg", "holds"],
    ["rear", "54 kg", "fails"],
  ])("on the %s wheel a tyre for %s %s under 100 kg", (wheel, limit, expected) => {
    expect(checkText(loaded(wheel, limit, "mass: 80 kg; kit-mass: 10 kg")).instance(code, wheel)).toBe(expected);
  });

  // 70 + 20 + 10 kg, of which 20 lie on the rear rack: 20 + 0.55 × 80 = 64 kg behind, 36 kg in front, worked by hand.
  it.each([
    ["front", "36 kg", "20 kg", "load: 20 kg", "holds"],
    ["front", "35.9 kg", "20 kg", "load: 20 kg", "fails"],
    ["rear", "64 kg", "20 kg", "load: 20 kg", "holds"],
    ["rear", "63.9 kg", "20 kg", "load: 20 kg", "fails"],
    // More on the rack than the kit was said to weigh.
    ["rear", "63.9 kg", "0 kg", "load: 20 kg", "fails"],
    // Nobody said what lies on the rack: the kit is shared by both.
    ["rear", "55 kg", "20 kg", "", "holds"],
  ])("on the %s wheel a tyre for %s, %s of kit, a rear rack with '%s': %s", (wheel, limit, kit, load, expected) => {
    const text = loaded(wheel, limit, `mass: 70 kg; kit-mass: ${kit}`).replace(
      "  fork: none\n",
      `  fork: none\n  carrying.rear-rack: example.rack { ${load} }\n`,
    );
    const checked = checkText(`part rack example.rack "Rack" { mass: 0 g }\n${text}`);
    expect(checked.instance(code, wheel)).toBe(expected);
    const [found] = checked.of(code);
    if (found && wheel === "rear") {
      expect(found.message).toContain(
        "carries 64 kg (20 kg on its rack and 55 % of 80 kg of rider, kit and bicycle without",
      );
      expect(found.related.filter(({ message }) => message.includes("load 20 kg"))).toHaveLength(1);
    }
  });

  it("is a warning where another rider's position may be within the limit, an error where none is", () => {
    expect(severity(loaded("rear", "54 kg", "mass: 80 kg; kit-mass: 10 kg"), code)).toBe("warning");
    expect(severity(loaded("rear", "49 kg", "mass: 80 kg; kit-mass: 10 kg"), code)).toBe("error");
    expect(severity(loaded("front", "34 kg", "mass: 80 kg; kit-mass: 10 kg"), code)).toBe("error");
    expect(severity(loaded("front", "36 kg", "mass: 80 kg; kit-mass: 10 kg"), code)).toBe("warning");
  });

  it("is found by what is known already, and not known while that is within the limit", () => {
    expect(finding(loaded("rear", "10 kg", "mass: 60 kg"), code).message).toContain("carries at least 38.5 kg");
    expect(checkText(loaded("rear", "60 kg", "mass: 60 kg")).missing(code)).toEqual(["rider.kit-mass"]);
    expect(checkText(loaded("rear", "60 kg", "kit-mass: 0 kg")).missing(code)).toEqual(["rider.mass"]);
  });

  it("is not asked of a tyre whose maker states none", () => {
    const text = loaded("rear", "60 kg", "mass: 60 kg").replace("load-limit: 60 kg; ", "");
    expect(checkText(text).instance(code, "rear")).toBe("notApplicable");
  });
});

describe("gap under a mudguard", () => {
  const code = "wheel/mudguard-gap";
  const guarded = (gap: string, build: string): string => `
part mudguard a.guard "Guard" { wheel: rear; widest-tyre: 47 mm }
build example "Example" {
  ${build}
  carrying.rear-mudguard: a.guard { ${gap} }
}
`;

  // 4 mm for racing and 6 mm for others, as in the check's source.
  it.each([
    ["gap: 6 mm", "category: touring", "holds"],
    ["gap: 5.9 mm", "category: touring", "fails"],
    ["gap: 4 mm", "category: road", "holds"],
    ["gap: 3.9 mm", "category: road", "fails"],
    ["gap: 0 mm", "category: city", "fails"],
    ["gap: 8 mm", "category: touring; ground.mud-allowance: 9 mm", "fails"],
    ["gap: 9 mm", "category: touring; ground.mud-allowance: 9 mm", "holds"],
    // Nothing kept free for mud is no leave for a guard on the tyre.
    ["gap: 1 mm", "category: touring; ground.mud-allowance: 0 mm", "fails"],
    ["gap: 4 mm", "category: touring; ground.mud-allowance: 0 mm", "holds"],
    // Without a category only what none or all of them allow is certain.
    ["gap: 3.9 mm", "", "fails"],
    ["gap: 6 mm", "", "holds"],
    ["gap: 5 mm", "", "unknown"],
    ["", "category: touring", "unknown"],
  ])("%s with '%s': %s", (gap, build, expected) => {
    const text = guarded(gap, build.replace("; ", "\n  "));
    expect(checkText(text).instance(code, "rear")).toBe(expected);
    expect(checkText(text).instance(code, "front")).toBe("notApplicable");
  });

  it("offers the least gap", () => {
    const offered = repaired(guarded("gap: 1 mm", "category: touring"), code);
    expect(offered.some(({ text }) => text.includes("gap: 6 mm") && outcome(text, code) === "holds")).toBe(true);
  });
});
