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

/** A rear wheel without a front one. */
function rear(pieces: Pieces): string {
  return compose({ "front-wheel.hub": "none", "front-wheel.spokes": "none", ...pieces });
}

/** Flanges of 37 and 18 mm, 32 holes: 293.16 mm left and 291.38 mm right, worked independently by script. */
const hub =
  "spoke-holes: 32; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 45 mm; flange-diameter-right: 45 mm; flange-offset-left: 37 mm; flange-offset-right: 18 mm";
const rim =
  "effective-rim-diameter: 600 mm; hole-offset: 0 mm; rim-holes: 32; bead-seat: 622; greatest-spoke-tension: 1250 N";

function laced(settings: string, more: Readonly<{ hub?: string; rim?: string; spokes?: string }> = {}): string {
  return rear({
    "rear-wheel.hub": part("hub", more.hub ?? hub),
    "rear-wheel.rim": part("rim", more.rim ?? rim),
    "rear-wheel.spokes": part("spokes", more.spokes ?? "spoke-head: elbow", settings),
  });
}

describe("spoke lengths", () => {
  const code = "wheel/spoke-length";
  const lengths = (drive: number, other: number, settings = "cross: 3"): string =>
    laced(`${settings}; length-drive-side: ${drive} mm; length-non-drive-side: ${other} mm`);

  it.each([
    [291, 293, "holds", undefined],
    [292.3, 292.2, "holds", undefined],
    [290.4, 294.1, "holds", undefined],
    [290.3, 293, "fails", "warning"],
    [292.4, 293, "fails", "warning"],
    [289.4, 293, "fails", "warning"],
    [289.3, 293, "fails", "error"],
    [291, 295.1, "fails", "warning"],
    [291, 295.2, "fails", "error"],
    [293, 291, "fails", "error"],
  ])("%d mm and %d mm: %s %s", (drive, other, expected, severity) => {
    const text = lengths(drive, other);
    expect(outcome(text, code)).toBe(expected);
    expect(checkText(text).of(code)[0]?.severity).toBe(severity);
  });

  it("are not judged where hub and rim do not go together, which is found once", () => {
    const text = laced("cross: 3; length-drive-side: 291 mm; length-non-drive-side: 293 mm", {
      hub: hub.replace("spoke-holes: 32", "spoke-holes: 28"),
    });
    const found = checkText(text);
    expect(found.of("wheel/spoke-count")).toHaveLength(1);
    expect(found.of(code)).toHaveLength(0);
    expect(found.instance(code, "rear")).toBe("notApplicable");
    expect(outcome(lengths(280, 293), code)).toBe("fails");
  });

  it("says what is stated, what is needed, and sets it to the whole millimetre", () => {
    const text = lengths(286, 293);
    const found = finding(text, code);
    expect(found.message).toBe(
      "The build states the spokes on the drive side 286 mm, where 291.4 mm are needed (5.4 mm too short). Short spokes hold by too little thread: cut or order them to length.",
    );
    expect(found.path).toBe("rear-wheel.spokes.length-drive-side");
    expect(found.repairs).toEqual([
      { kind: "set-setting", slot: "rear-wheel.spokes", setting: "length-drive-side", value: "291 mm" },
    ]);
    expect(outcome(repaired(text, code)[0]?.text ?? "", code)).toBe("holds");
  });

  it("puts both sides in one finding, the worse one first", () => {
    const found = finding(lengths(288, 300), code);
    expect(found.path).toBe("rear-wheel.spokes.length-non-drive-side");
    expect(found.message).toContain("on the drive side 288 mm, where 291.4 mm are needed (3.4 mm too short)");
    expect(found.message).toContain(
      "on the non-drive side 300 mm, where 293.2 mm are needed (6.8 mm too long). Long spokes",
    );
    expect(found.related.map(({ message }) => message)).toEqual([
      "Example: length-drive-side 288 mm",
      "Example: spoke-length-drive-side 291.4 mm",
      "Example: spoke-length-non-drive-side 293.2 mm",
    ]);
    expect(found.repairs).toHaveLength(2);
  });

  it("orders what can be had where that is near enough", () => {
    const stocked = (list: string): string =>
      String(
        (
          finding(
            laced("cross: 3; length-drive-side: 286 mm; length-non-drive-side: 293 mm", {
              spokes: `lengths-stocked: ${list} mm`,
            }),
            code,
          ).repairs[0] as { value?: string }
        ).value,
      );
    expect(stocked("288, 290, 292, 294")).toBe("292 mm");
    expect(stocked("292, 291, 290")).toBe("291 mm");
    expect(stocked("280, 300")).toBe("291 mm");
  });

  it("goes by the crossings of either side", () => {
    // Two crossings: a = 45°, so 285.02 mm on the drive side by the same formula.
    const drive = Math.sqrt(18 ** 2 + 22.5 ** 2 + 300 ** 2 - 2 * 22.5 * 300 * Math.cos(Math.PI / 4)) - 1.3;
    expect(outcome(lengths(Math.round(drive), 293, "cross: 3; cross-drive-side: 2"), code)).toBe("holds");
    expect(outcome(lengths(291, 293, "cross: 3; cross-drive-side: 2"), code)).toBe("fails");
  });

  it.each([
    [
      "straight-pull hub",
      laced("cross: 3; length-drive-side: 280 mm; length-non-drive-side: 280 mm", {
        hub: `${hub}; spoke-head: straight`,
      }),
    ],
    ["paired lacing", lengths(280, 280, "cross: 3; lacing: paired")],
    ["two to one", lengths(280, 280, "cross: 3; lacing: two-to-one")],
  ])("refuses a %s rather than guess", (_, text) => {
    expect(outcome(text, code)).toBe("notApplicable");
    expect(outcome(text, "wheel/lacing-possible")).toBe("notApplicable");
  });

  it("says why it refuses", () => {
    const verdict = checkText(lengths(280, 280, "cross: 3; lacing: paired")).row(code).instances[1]?.verdict;
    expect(verdict).toEqual({
      outcome: "notApplicable",
      reason: "only an even lacing is worked out, and this one is paired",
    });
  });

  it("still finds the side that is known to be wrong while the other is open", () => {
    expect(outcome(laced("cross: 3; length-drive-side: 280 mm"), code)).toBe("fails");
    expect(outcome(laced("cross: 3; length-drive-side: 291 mm"), code)).toBe("unknown");
    expect(checkText(laced("cross: 3; length-drive-side: 291 mm")).missing(code)).toEqual([
      "rear-wheel.spokes.length-non-drive-side",
    ]);
  });

  it("names everything that is missing once", () => {
    const text = laced("cross: 3", { hub: "spoke-holes: 32", rim: "rim-holes: 32" });
    const missing = checkText(text).missing(code);
    expect(new Set(missing).size).toBe(missing.length);
    expect(missing).toContain("rear-wheel.rim.effective-rim-diameter");
    expect(missing).toContain("rear-wheel.hub.flange-offset-left");
    expect(missing).toContain("rear-wheel.spokes.length-drive-side");
  });
});

describe("holes and crossings", () => {
  it.each([
    [32, 32, "holds"],
    [36, 32, "fails"],
    [28, 32, "fails"],
  ])("%d holes in the rim and %d in the hub: %s", (rimHoles, hubHoles, expected) => {
    const text = laced("cross: 3", { rim: `rim-holes: ${rimHoles}`, hub: `spoke-holes: ${hubHoles}` });
    expect(outcome(text, "wheel/spoke-count")).toBe(expected);
    if (expected === "fails") {
      expect(finding(text, "wheel/spoke-count").message).toBe(
        `rim has ${rimHoles} holes, but hub has ${hubHoles}: fit a rim with ${hubHoles} holes, or a hub with ${rimHoles}.`,
      );
    }
  });

  it.each([
    [31, "fails"],
    [32, "holds"],
    [64, "holds"],
    [undefined, "notApplicable"],
  ])("a set of %s spokes in a rim of 32 holes: %s", (pieces, expected) => {
    const text = laced("cross: 3", {
      rim: "rim-holes: 32",
      hub: "spoke-holes: 36",
      ...(pieces === undefined ? {} : { spokes: `pieces: ${pieces}` }),
    });
    expect(checkText(text).instance("wheel/spokes-sold", "rear spokes")).toBe(expected);
    if (expected === "fails") {
      expect(finding(text, "wheel/spokes-sold").message).toBe(
        "spokes is a set of 31, but rim has 32 holes: spokes for 1 of them are missing, and the mass and price stated are for 31. Fit a set of 32 or more.",
      );
    }
  });

  const code = "wheel/lacing-possible";
  const crossed = (
    holes: number,
    settings: string,
    flange: number | undefined = 45,
    rimDiameter: number | undefined = 600,
  ): string =>
    laced(settings, {
      hub: `spoke-holes: ${holes}${flange === undefined ? "" : `; flange-diameter-left: ${flange} mm; flange-diameter-right: ${flange} mm`}`,
      rim: rimDiameter === undefined ? "rim-holes: 32" : `effective-rim-diameter: ${rimDiameter} mm`,
    });

  // Common practice: about a ninth of the spokes of the wheel.
  it.each([
    [36, 4, "holds"],
    [36, 5, "fails"],
    [32, 3, "holds"],
    [32, 4, "fails"],
    [28, 3, "holds"],
    [28, 4, "fails"],
    [24, 2, "holds"],
    [24, 3, "fails"],
    [20, 2, "holds"],
    [20, 3, "fails"],
    [16, 1, "holds"],
    [16, 2, "fails"],
    [32, 0, "holds"],
  ])("%d spokes crossed %d times: %s", (holes, cross, expected) => {
    expect(outcome(crossed(holes, `cross: ${cross}`), code)).toBe(expected);
  });

  // cos a = flange / rim: 45/600 gives 85.70°, 102/600 gives 80.21°, 106/600 gives 79.82°.
  it.each([
    [102, "holds"],
    [106, "fails"],
  ])("36 spokes crossed four times, at 80°, on a flange of %d mm: %s", (flange, expected) => {
    expect(outcome(crossed(36, "cross: 4", flange), code)).toBe(expected);
  });

  it.each([
    [36, 3, "holds"],
    [32, 3, "unknown"],
    [32, 4, "fails"],
  ])("without flanges, %d spokes crossed %d times: %s", (holes, cross, expected) => {
    const text = laced(`cross: ${cross}`, { hub: `spoke-holes: ${holes}`, rim: "effective-rim-diameter: 600 mm" });
    expect(outcome(text, code)).toBe(expected);
  });

  it("names the flanges that it needs, and not those that it does not", () => {
    const text = laced("cross: 3", { hub: "spoke-holes: 32; flange-diameter-left: 45 mm", rim: "rim-holes: 32" });
    expect(checkText(text).missing(code)).toEqual([
      "rear-wheel.hub.flange-diameter-right",
      "rear-wheel.rim.effective-rim-diameter",
    ]);
  });

  it("says the angle and lets as many be laced as go", () => {
    const text = crossed(32, "cross: 4");
    const found = finding(text, code);
    expect(found.message).toBe(
      "4 crossings of 16 spokes on the drive side turn a spoke 90° round the hub, beyond the tangent of its flange: it would lie over the heads of its neighbours. Lace 3 crossings.",
    );
    expect(found.path).toBe("rear-wheel.spokes.cross");
    expect(found.repairs).toEqual([{ kind: "set-setting", slot: "rear-wheel.spokes", setting: "cross", value: "3" }]);
    const [mend] = repaired(text, code);
    expect(outcome(mend?.text ?? "", code)).toBe("holds");
  });

  it("asks the side that differs", () => {
    const found = finding(crossed(32, "cross: 3; cross-non-drive-side: 4"), code);
    expect(found.path).toBe("rear-wheel.spokes.cross-non-drive-side");
    expect(found.repairs).toEqual([
      { kind: "set-setting", slot: "rear-wheel.spokes", setting: "cross-non-drive-side", value: "3" },
    ]);
  });

  it("says what holds", () => {
    const said = (settings: string): unknown => checkText(crossed(32, settings)).row(code).instances[1]?.verdict;
    expect(said("cross: 3")).toMatchObject({
      message: "Of 32 spokes of hub, 3 crossings make 67.5° on either side: no spoke passes its flange's tangent.",
    });
    expect(said("cross: 3; cross-drive-side: 2")).toMatchObject({
      message:
        "Of 32 spokes of hub, 2 crossings make 45° on the drive side and 3 crossings make 67.5° on the non-drive side: no spoke passes its flange's tangent.",
    });
  });

  it("cannot share out an odd number", () => {
    expect(finding(crossed(21, "cross: 1"), code).message).toContain("21 holes, which do not share out evenly");
  });

  it("cannot tell without crossings", () => {
    expect(checkText(crossed(32, "tension: 1000 N")).missing(code)).toEqual(["rear-wheel.spokes.cross"]);
  });
});

describe("radial lacing", () => {
  const code = "wheel/radial-lacing";
  const front = (settings: string, rotor: Pieces[string], hubFacts = "wheel: front"): string =>
    compose({
      "rear-wheel.spokes": "none",
      "front-wheel.hub": part("hub", hubFacts),
      "front-wheel.spokes": part("spokes", "spoke-head: elbow", settings),
      "front-brake.rotor": rotor,
    });
  const rotor = part("rotor", "diameter: 165 mm");

  it.each([
    ["cross: 0", "none", "wheel: front", "holds"],
    ["cross: 0", rotor, "wheel: front", "fails"],
    ["cross: 2", rotor, "wheel: front", "holds"],
    ["cross: 0; cross-drive-side: 2", rotor, "wheel: front", "holds"],
    ["cross: 2; cross-drive-side: 0", rotor, "wheel: front", "holds"],
    ["cross: 2; cross-drive-side: 0; cross-non-drive-side: 0", rotor, "wheel: front", "fails"],
    ["cross: 0", "none", "drum-brake: yes", "fails"],
    ["cross: 0", "none", "drum-brake: no", "holds"],
    ["cross: 0", undefined, "wheel: front", "unknown"],
    ["tension: 900 N", rotor, "wheel: front", "unknown"],
  ] as const)("%s, rotor %j, hub %s: %s", (settings, fitted, hubFacts, expected) => {
    expect(outcome(front(settings, fitted, hubFacts), code)).toBe(expected);
  });

  it("says what turns the hub", () => {
    expect(finding(front("cross: 0", rotor), code)).toMatchObject({
      path: "front-wheel.spokes.cross",
      severity: "error",
    });
    expect(finding(front("cross: 0", rotor), code).message).toContain("but rotor brakes its hub");
    expect(finding(front("cross: 0", "none", "drum-brake: yes"), code).message).toContain("but hub has a brake inside");
    expect(finding(laced("cross: 0"), code).message).toContain(
      "Both sides of the rear wheel are radial (cross: 0), but the chain drives it",
    );
    expect(outcome(repaired(laced("cross: 0"), code)[0]?.text ?? "", code)).toBe("holds");
  });
});

describe("spoke tension", () => {
  const code = "wheel/spoke-tension";

  it.each([
    [1250, "holds", undefined],
    [1251, "fails", "error"],
    [400, "fails", "warning"],
    [399, "fails", "warning"],
    [1200, "holds", undefined],
  ])("%d N on a rim that bears 1250 N: %s %s", (tension, expected, severity) => {
    // 18 and 37 mm: the other side comes to 48.94 % of the tighter one, so 400 N leave 196 N.
    const text = laced(`cross: 3; tension: ${tension} N`);
    expect(outcome(text, code)).toBe(expected);
    expect(checkText(text).of(code)[0]?.severity).toBe(severity);
  });

  it("names both, and sets the tension to what the rim bears", () => {
    const found = finding(laced("cross: 3; tension: 1300 N"), code);
    expect(found.message).toBe(
      "The build aims at 1300 N on the tighter side, but rim bears 1250 N at most: build it to 1250 N or less.",
    );
    expect(found.path).toBe("rear-wheel.spokes.tension");
    expect(found.repairs[0]).toEqual({
      kind: "set-setting",
      slot: "rear-wheel.spokes",
      setting: "tension",
      value: "1250 N",
    });
  });

  // JIS D 9301:2019: 400 N on the freewheel's side and 300 N on the other; wheels of 22 in and less 300 N.
  it("asks for a side that is not too slack by the angles", () => {
    const other = finding(laced("cross: 3; tension: 600 N"), code);
    // 0.489445 × 600 N
    expect(other.message).toContain("With 600 N on the tighter side the other comes to 294 N");
    expect(other.message).toContain("300 N at least");
    expect(outcome(laced("cross: 3; tension: 613 N"), code)).toBe("holds");
    expect(outcome(laced("cross: 3; tension: 612 N"), code)).toBe("fails");
  });

  it.each([
    ["bead-seat: 622", 390, "fails"],
    ["bead-seat: 507", 390, "fails"],
    ["bead-seat: 501", 390, "holds"],
    ["bead-seat: 406", 300, "holds"],
    ["bead-seat: 406", 299, "fails"],
  ])("%s at %d N on both sides: %s", (seat, tension, expected) => {
    const even = hub.replace("flange-offset-right: 18 mm", "flange-offset-right: 37 mm");
    const text = laced(`cross: 3; tension: ${tension} N`, {
      hub: even,
      rim: `effective-rim-diameter: 600 mm; hole-offset: 0 mm; ${seat}; greatest-spoke-tension: 1250 N`,
    });
    expect(outcome(text, code)).toBe(expected);
  });

  it("finds a tension that the rim does not bear whatever else is open, and is open otherwise", () => {
    expect(outcome(laced("tension: 1300 N", { hub: "spoke-holes: 32" }), code)).toBe("fails");
    expect(
      checkText(
        laced("cross: 3; tension: 1200 N", {
          rim: "bead-seat: 622; effective-rim-diameter: 600 mm; hole-offset: 0 mm",
        }),
      ).missing(code),
    ).toEqual(["rear-wheel.rim.greatest-spoke-tension"]);
    expect(checkText(laced("cross: 3")).missing(code)).toEqual(["rear-wheel.spokes.tension"]);
  });
});
