import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

function built(pieces: Pieces, fields: string): string {
  return compose(pieces).replace(/\n\}\n$/, `\n  ${fields}\n}\n`);
}

/**
 * A seat tube at 73.5 degrees through the crank axis, 520 mm long, a post of 350 mm and a saddle of 48 mm. At 187 mm of
 * depth the rails are 683 mm up the tube: 654.879 mm above the axis and 193.982 behind it; with the saddle 702.879 mm,
 * which is 733.063 mm along the tube (plane geometry, by hand).
 */
function seat(
  aims: string,
  settings: { insertion?: string; rail?: string; facts?: string; frame?: string } = {},
): string {
  const { insertion = "187 mm", rail = "0 mm", facts = "", frame = "" } = settings;
  return built(
    {
      frame: part(
        "frame",
        `seat-angle: 73.5°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm; least-post-insertion: none; ${frame}`,
      ),
      "seat.post": part(
        "seatpost",
        `overall-length: 350 mm; setback: 0 mm; least-insertion: 80 mm; clamp-length: 40 mm; dropper-travel: none; ${facts}`,
        insertion === "" ? "" : `insertion: ${insertion}`,
      ),
      "seat.saddle": part(
        "saddle",
        "height: 48 mm; clamp-to-sitting: 0 mm; straight-rail-length: 70 mm",
        `rail-position: ${rail}`,
      ),
    },
    aims,
  );
}

describe("fit/saddle-height", () => {
  const code = "fit/saddle-height";
  it.each([
    ["fit { saddle-height: 728.1 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-height: 728 mm; tolerance: 5 mm }", "fails"],
    ["fit { saddle-height: 738 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-height: 738.1 mm; tolerance: 5 mm }", "fails"],
    ["fit { saddle-height: 733 mm }", "unknown"],
    ["fit { tolerance: 5 mm }", "notApplicable"],
  ])("%s: %s", (aims, outcome) => {
    expect(checkText(seat(aims)).outcome(code)).toBe(outcome);
  });

  it("says where it stands, and sets the depth that brings it there", () => {
    const text = seat("fit { saddle-height: 753 mm; tolerance: 5 mm }");
    expect(checkText(text).of(code)[0]?.message).toMatch(
      /733 mm.*20 mm too low.*753 mm within 5 mm.*set the post 167 mm deep/,
    );
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Set the post 167 mm deep (seat.post.insertion: 167 mm)");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
    const high = checkText(seat("fit { saddle-height: 713 mm; tolerance: 5 mm }")).of(code)[0];
    expect(high?.message).toContain("20 mm too high");
    expect(high?.severity).toBe("warning");
    expect(high?.path).toBe("seat.post.insertion");
  });

  it("leaves an aim that the post does not reach to the check of the post", () => {
    // At its least depth of 80 mm the post reaches 840.06 mm.
    const text = checkText(seat("fit { saddle-height: 846 mm; tolerance: 5 mm }"));
    expect(text.outcome(code)).toBe("notApplicable");
    expect(text.outcome("seat/height-reachable")).toBe("fails");
    const low = checkText(
      seat("fit { saddle-height: 680 mm; tolerance: 5 mm }", { frame: "greatest-post-insertion: 220 mm" }),
    );
    expect(low.outcome(code)).toBe("notApplicable");
    expect(low.outcome("seat/height-reachable")).toBe("fails");
  });

  it("says the way alone where no depth of this post brings it there", () => {
    // Nobody states how deep it has to stand, so that nothing says how high it reaches.
    const without = (aim: string) =>
      checkText(seat(`fit { saddle-height: ${aim}; tolerance: 5 mm }`).replace("least-insertion: 80 mm; ", "")).of(
        code,
      );
    expect(without("930 mm")[0]?.message).toMatch(/too low.*: raise the post\.$/);
    expect(without("560 mm")[0]?.message).toMatch(/too high.*: lower the post\.$/);
  });

  it("asks for the depth", () => {
    const text = checkText(seat("fit { saddle-height: 733 mm; tolerance: 5 mm }", { insertion: "" }));
    expect(text.missing(code)).toEqual(["seat.post.insertion"]);
  });
});

describe("fit/saddle-setback", () => {
  const code = "fit/saddle-setback";
  it.each([
    ["fit { saddle-setback: 198.9 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-setback: 199 mm; tolerance: 5 mm }", "fails"],
    ["fit { saddle-setback: 189 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-setback: 188.9 mm; tolerance: 5 mm }", "fails"],
  ])("%s: %s", (aims, outcome) => {
    expect(checkText(seat(aims)).outcome(code)).toBe(outcome);
  });

  it("is judged at the height that is aimed at, which is set first", () => {
    // Raised by 60 mm along a tube at 73.5 degrees the rider sits 60 x cos 73.5 = 17.04 mm further back: 211.02 mm.
    const raised = (setback: string) =>
      checkText(seat(`fit { saddle-height: 793.063 mm; saddle-setback: ${setback}; tolerance: 5 mm }`));
    expect(raised("211 mm").outcome("fit/saddle-height")).toBe("fails");
    expect(raised("215.9 mm").outcome(code)).toBe("holds");
    expect(raised("216.1 mm").outcome(code)).toBe("fails");
    expect(raised("206.1 mm").outcome(code)).toBe("holds");
    expect(raised("194 mm").of(code)[0]?.message).toMatch(
      /^With the saddle at the height that is aimed at, the rider sits 211 mm .*17 mm too far back/,
    );
    // Within the tolerance of its height it stays where it is.
    expect(
      checkText(seat("fit { saddle-height: 737 mm; saddle-setback: 189 mm; tolerance: 5 mm }")).outcome(code),
    ).toBe("holds");
  });

  it("moves the saddle on its rails as far as they go", () => {
    const near = seat("fit { saddle-setback: 208 mm; tolerance: 5 mm }");
    expect(checkText(near).of(code)[0]?.message).toMatch(
      /14 mm too far forward.*move the saddle back, until the clamp holds its rails 14 mm in front of their middle/,
    );
    const [first] = repaired(near, code);
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
    expect(checkText(first?.text ?? "").outcome("seat/rail-range")).toBe("holds");
    const far = seat("fit { saddle-setback: 160 mm; tolerance: 5 mm }");
    expect(checkText(far).of(code)[0]?.message).toMatch(/34 mm too far back.*fit a post with 34 mm less setback/);
    expect(repaired(far, code)).toEqual([]);
  });
});

/**
 * Bar clamp at 467.08227 forward and 631.67766 up (worked independently with rotated axes); with 75 mm of reach the
 * hands are at 542.08 and 631.68.
 */
function bar(aims: string, fork = "greatest-spacers: 40 mm", spacers = "20 mm"): string {
  return built(
    {
      frame: part("frame", "reach: 385 mm; stack: 560 mm; head-angle: 73°"),
      fork: part("fork", fork),
      headset: part("headset", "upper-stack: 15 mm"),
      "cockpit.stem": part("stem", "length: 100 mm; angle: -6°; clamp-height: 40 mm", `spacers-below: ${spacers}`),
      "cockpit.handlebar": part("handlebar", "bar: drop; reach: 75 mm; rise: 0 mm"),
      "cockpit.grips": "none",
    },
    aims,
  );
}

/** The same front end with a quill whose arm stands 40 mm above the headset, as high as the middle of that clamp. */
function quill(aims: string, mark = "least-quill-insertion: 65 mm", whole = "quill-length: 120 mm"): string {
  const stem = ["length: 100 mm; angle: -6°; clamping: quill", mark, whole].filter((fact) => fact !== "").join("; ");
  return built(
    {
      frame: part("frame", "reach: 385 mm; stack: 560 mm; head-angle: 73°; head-tube-length: 140 mm"),
      fork: part("fork", "steerer-shape: threaded"),
      headset: part("headset", "upper-stack: 15 mm; lower-stack: 12 mm"),
      "cockpit.stem": part("stem", stem, "quill-insertion: 80 mm"),
      "cockpit.handlebar": part("handlebar", "bar: drop; reach: 75 mm; rise: 0 mm"),
      "cockpit.grips": "none",
    },
    aims,
  );
}

describe("fit/bar-position of a quill", () => {
  const code = "fit/bar-position";
  it.each([
    ["fit { grip-stack: 636.6 mm; tolerance: 5 mm }", "height", "holds"],
    ["fit { grip-stack: 636.7 mm; tolerance: 5 mm }", "height", "fails"],
    ["fit { grip-reach: 547 mm; tolerance: 5 mm }", "reach", "holds"],
    ["fit { grip-reach: 547.1 mm; tolerance: 5 mm }", "reach", "fails"],
  ])("stands where its length less its depth brings it: %s, %s: %s", (aims, instance, outcome) => {
    expect(checkText(quill(aims)).instance(code, instance)).toBe(outcome);
  });

  it("is pulled up or pushed down as far as its mark lets it, without a word of spacers", () => {
    // Ten millimetres along a steering axis of 73 degrees are 9.563 mm of height.
    const low = quill("fit { grip-stack: 641.24 mm; tolerance: 1 mm }");
    expect(checkText(low).of(code)[0]?.message).toMatch(/too low.*set the quill 70 mm deep/);
    expect(checkText(low).of(code)[0]?.message).not.toContain("spacers");
    const [first] = repaired(low, code);
    expect(checkText(first?.text ?? "").instance(code, "height")).toBe("holds");
    const marked = quill("fit { grip-stack: 641.24 mm; tolerance: 1 mm }", "least-quill-insertion: 75 mm");
    expect(checkText(marked).of(code)[0]?.message).toMatch(/its mark does not let the quill come so high/);
    expect(repaired(marked, code)).toEqual([]);
    const high = quill("fit { grip-stack: 622.11 mm; tolerance: 1 mm }");
    expect(checkText(high).of(code)[0]?.message).toMatch(/too high.*set the quill 90 mm deep/);
  });

  it("asks for its length and depth, and neither for spacers nor for the height of a clamp", () => {
    const text = checkText(quill("fit { grip-stack: 640 mm; tolerance: 1 mm }", "", ""));
    expect(text.missing(code)).toEqual(["cockpit.stem.quill-length"]);
    expect(text.outcome("steering/steerer-length")).toBe("notApplicable");
  });
});

describe("fit/bar-position", () => {
  const code = "fit/bar-position";
  it.each([
    ["fit { grip-reach: 547 mm; tolerance: 5 mm }", "reach", "holds"],
    ["fit { grip-reach: 547.1 mm; tolerance: 5 mm }", "reach", "fails"],
    ["fit { grip-reach: 537.1 mm; tolerance: 5 mm }", "reach", "holds"],
    ["fit { grip-reach: 537 mm; tolerance: 5 mm }", "reach", "fails"],
    ["fit { grip-stack: 636.6 mm; tolerance: 5 mm }", "height", "holds"],
    ["fit { grip-stack: 636.7 mm; tolerance: 5 mm }", "height", "fails"],
    ["fit { grip-stack: 626.6 mm; tolerance: 5 mm }", "height", "fails"],
    ["fit { grip-stack: 631 mm }", "height", "unknown"],
    ["fit { tolerance: 5 mm }", "height", "notApplicable"],
  ])("%s: %s %s", (aims, instance, outcome) => {
    expect(checkText(bar(aims)).instance(code, instance)).toBe(outcome);
  });

  it("works the spacers out, where fork and stem allow them", () => {
    const text = bar("fit { grip-stack: 641.3 mm; tolerance: 5 mm }");
    // 9.6 mm of height are 10.06 mm of spacer at 73 degrees.
    expect(checkText(text).of(code)[0]?.message).toMatch(/10 mm too low.*use 30 mm of spacers/);
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Put 30 mm of spacers under the stem (cockpit.stem.spacers-below: 30 mm)");
    expect(checkText(first?.text ?? "").instance(code, "height")).toBe("holds");
    for (const hard of [
      bar("fit { grip-stack: 660 mm; tolerance: 5 mm }"),
      bar("fit { grip-stack: 600 mm; tolerance: 5 mm }"),
    ]) {
      expect(checkText(hard).of(code)[0]?.message).toContain("spacers alone do not bring it there");
      expect(repaired(hard, code)).toEqual([]);
    }
    const unlimited = bar("fit { grip-stack: 660 mm; tolerance: 5 mm }", "greatest-spacers: none");
    expect(checkText(unlimited).of(code)[0]?.message).toContain("use 49.5 mm of spacers");
  });

  it("says how much longer or shorter a stem would be", () => {
    expect(checkText(bar("fit { grip-reach: 512 mm; tolerance: 5 mm }")).of(code)[0]?.message).toMatch(
      /542 mm.*30 mm too far.*a stem some 30 mm shorter.*less reach/,
    );
    expect(checkText(bar("fit { grip-reach: 562 mm; tolerance: 5 mm }")).of(code)[0]?.message).toMatch(
      /20 mm too near.*20 mm longer.*more reach/,
    );
  });

  it("offers a stem that meets the aim", () => {
    const text = `${bar("fit { grip-reach: 522.5 mm; grip-stack: 628 mm; tolerance: 5 mm }")}
part stem test.shorter "Shorter" { length: 80 mm; angle: -6°; clamp-height: 40 mm }
part stem test.longer "Longer" { length: 110 mm; angle: -6°; clamp-height: 40 mm }
`;
    const offered = repaired(text, code).map(({ title }) => title);
    expect(offered).toEqual(["Fit Shorter (test.shorter) as cockpit.stem"]);
  });
});

describe("fit/saddle-to-bar-drop", () => {
  const code = "fit/saddle-to-bar-drop";
  const both = (aims: string) =>
    seat(aims)
      .replace(
        'part frame test.frame "frame" {',
        'part frame test.frame "frame" { reach: 385 mm; stack: 560 mm; head-angle: 73°;',
      )
      .replace(
        "build example",
        `part headset h "H" { upper-stack: 15 mm }
part stem s "S" { length: 100 mm; angle: -6°; clamp-height: 40 mm }
build example`,
      )
      .replace("  frame: test.frame", "  frame: test.frame\n  headset: h\n  cockpit.stem: s { spacers-below: 20 mm }");

  // 702.879 - 631.678 = 71.20 mm.
  it.each([
    ["fit { saddle-to-bar-drop: 76 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-to-bar-drop: 76.3 mm; tolerance: 5 mm }", "fails"],
    ["fit { saddle-to-bar-drop: 66.3 mm; tolerance: 5 mm }", "holds"],
    ["fit { saddle-to-bar-drop: 66 mm; tolerance: 5 mm }", "fails"],
    ["fit { saddle-to-bar-drop: -20 mm; tolerance: 5 mm }", "fails"],
    ["fit { tolerance: 5 mm }", "notApplicable"],
  ])("%s: %s", (aims, outcome) => {
    expect(checkText(both(aims)).outcome(code)).toBe(outcome);
  });

  it("says which way", () => {
    expect(checkText(both("fit { saddle-to-bar-drop: 40 mm; tolerance: 5 mm }")).of(code)[0]?.message).toMatch(
      /71 mm.*31 mm too much.*raise the bar/,
    );
  });
});

describe("fit/crank-length and fit/standover", () => {
  it.each([
    ["160 mm", "800 mm", "holds"],
    ["159.9 mm", "800 mm", "fails"],
    ["172.8 mm", "800 mm", "holds"],
    ["173 mm", "800 mm", "fails"],
  ])("cranks of %s for an inseam of %s: %s", (crank, inseam, outcome) => {
    const text = checkText(
      built({ "drivetrain.crankset": part("crankset", `crank-length: ${crank}`) }, `rider.inseam: ${inseam}`),
    );
    expect(text.outcome("fit/crank-length")).toBe(outcome);
    if (outcome === "fails") expect(text.of("fit/crank-length")[0]?.severity).toBe("information");
  });

  it.each([
    ["track", "159 mm", "holds"],
    ["track", "173 mm", "fails"],
    ["road", "159 mm", "fails"],
  ])("short cranks are usual on a banked track, long ones nowhere: %s, %s: %s", (category, crank, outcome) => {
    const text = checkText(
      built(
        { "drivetrain.crankset": part("crankset", `crank-length: ${crank}`) },
        `category: ${category}\n  rider.inseam: 800 mm`,
      ),
    );
    expect(text.outcome("fit/crank-length")).toBe(outcome);
  });

  it.each([
    ["rider.inseam: 800 mm; fit.standover-clearance: 50 mm", "750 mm", "holds"],
    ["rider.inseam: 800 mm; fit.standover-clearance: 50 mm", "750.1 mm", "fails"],
    ["rider.inseam: 800 mm", "799 mm", "holds"],
    ["rider.inseam: 800 mm", "800 mm", "fails"],
    ["fit.standover-clearance: 50 mm", "700 mm", "unknown"],
    ["rider.inseam: 800 mm; fit.standover-clearance: 0 mm", "810 mm", "fails"],
  ])("%s over a tube of %s: %s", (fields, standover, outcome) => {
    const text = checkText(built({ frame: part("frame", `standover: ${standover}`) }, fields.replaceAll("; ", "\n  ")));
    expect(text.outcome("fit/standover")).toBe(outcome);
  });
});

describe("fit/toe-clearance and fit/lean-clearance", () => {
  function stands(reach: number, foot: string, more: { category?: string; pieces?: Pieces; crank?: number } = {}) {
    const { category = "road", pieces = {}, crank = 170 } = more;
    return checkText(
      built(
        {
          frame: part(
            "frame",
            `reach: ${reach} mm; stack: 560 mm; head-angle: 72°; head-tube-length: 150 mm; chainstay: 425 mm; bottom-bracket-drop: 70 mm`,
          ),
          fork: part("fork", "axle-to-crown: 380 mm; fork-offset: 45 mm"),
          headset: part("headset", "lower-stack: 4 mm"),
          "drivetrain.crankset": part("crankset", `crank-length: ${crank} mm; q-factor: 150 mm`),
          "drivetrain.pedals": part("pedals", `foot: ${foot}; outer-edge: 95 mm; underside-height: 14 mm`),
          "front-wheel.rim": part("rim", "inner-width: 19 mm"),
          "front-wheel.tyre": part("tyre", "size: 32-622; measured-width: 32 mm; measured-on-rim: 19 mm"),
          "rear-wheel.rim": part("rim", "inner-width: 19 mm"),
          "rear-wheel.tyre": part("tyre", "size: 32-622; measured-width: 32 mm; measured-on-rim: 19 mm"),
          ...pieces,
        },
        category === "" ? "" : `category: ${category}`,
      ),
    );
  }
  const clearance = (text: ReturnType<typeof checkText>): number => {
    const found = text.report.evaluation.quantity("geometry.toe-clearance");
    return found?.state === "known" ? Number(found.value) : Number.NaN;
  };

  it("asks for 100 mm, or 89 mm where the foot is held or the bicycle is a child's", () => {
    const code = "fit/toe-clearance";
    const base = clearance(stands(375, "platform"));
    // A millimetre of reach is very nearly a millimetre of clearance.
    const at = (wanted: number) => 375 + wanted - base;
    for (const [wanted, foot, category, outcome] of [
      [101, "platform", "road", "holds"],
      [99, "platform", "road", "fails"],
      [99, "both", "road", "fails"],
      [99, "cleat", "road", "holds"],
      [90, "toe-clip", "road", "holds"],
      [88, "cleat", "road", "fails"],
      [90, "platform", "child", "holds"],
      [88, "platform", "child", "fails"],
      [99, "platform", "", "unknown"],
      [88, "platform", "", "fails"],
      [88, "toe-clip", "track", "notApplicable"],
    ] as const) {
      const text = stands(at(wanted), foot, { category });
      expect(text.outcome(code), `${wanted} mm, ${foot}, ${category}`).toBe(outcome);
      expect(Math.abs(clearance(text) - wanted)).toBeLessThan(0.6);
      if (outcome === "fails") expect(text.of(code)[0]?.message).toContain("JIS D 9301:2019");
    }
  });

  it("takes a mudguard for what the toe meets", () => {
    const bare = clearance(stands(385, "platform"));
    const guard = part("mudguard", "wheel: front; width: 32 mm", "gap: 10 mm");
    const guarded = stands(385, "platform", { pieces: { "carrying.front-mudguard": guard } });
    expect(bare - clearance(guarded)).toBeGreaterThan(9);
    expect(bare - clearance(guarded)).toBeLessThan(13);
    const open = stands(385, "platform", {
      pieces: { "carrying.front-mudguard": part("mudguard", "wheel: front; width: 32 mm") },
    });
    expect(open.missing("fit/toe-clearance")).toEqual(["carrying.front-mudguard.gap"]);
  });

  it("asks for 25 degrees of lean", () => {
    const code = "fit/lean-clearance";
    const lean = (crank: number): number => {
      const found = stands(385, "cleat", { crank }).report.evaluation.quantity("geometry.lean-angle");
      return found?.state === "known" ? Number(found.value) : Number.NaN;
    };
    for (const crank of [150, 160, 170, 180, 190, 200]) {
      expect(stands(385, "cleat", { crank }).outcome(code)).toBe(lean(crank) >= 25 ? "holds" : "fails");
    }
    expect(lean(150)).toBeGreaterThan(25);
    expect(lean(200)).toBeLessThan(25);
    expect(stands(385, "cleat", { crank: 200 }).of(code)[0]?.message).toMatch(/16 CFR 1512\.17\(c\) asks for 25°/);
  });
});
