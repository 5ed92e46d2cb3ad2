import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Piece, part } from "./compose.ts";

/** A front end with 4 + 130 + 8 + 40 = 182 mm on the steerer besides its spacers. */
function frontEnd(
  settings: string,
  fork = "",
  forkSettings = "",
  stem = "clamp-height: 40 mm",
  more: Record<string, Piece> = {},
) {
  return compose({
    frame: part("frame", "head-tube-length: 130 mm"),
    fork: part("fork", fork === "" ? 'note: "nothing known"' : fork, forkSettings),
    headset: part("headset", "lower-stack: 4 mm; upper-stack: 8 mm"),
    "cockpit.stem": part("stem", stem, settings),
    ...more,
  });
}

const spacers = "spacers-below: 10 mm; spacers-above: 0 mm";

describe("steering/steerer-supplied", () => {
  const code = "steering/steerer-supplied";
  it.each([
    // 192 mm stand on it; with a gap of 3 mm it is cut to 189.
    [`${spacers}; cap-gap: 3 mm`, "steerer-supplied: 189 mm", "", "holds"],
    [`${spacers}; cap-gap: 3 mm`, "steerer-supplied: 188.9 mm", "", "fails"],
    // ISO 4210-2 leaves 5 mm at most: less than 187 never does, and from 192 on any gap will do.
    [spacers, "steerer-supplied: 192 mm", "", "holds"],
    [spacers, "steerer-supplied: 191.9 mm", "", "unknown"],
    [spacers, "steerer-supplied: 187 mm", "", "unknown"],
    [spacers, "steerer-supplied: 186.9 mm", "", "fails"],
    // What is cut already says it by itself.
    ["", "steerer-supplied: 180 mm", "steerer-length: 180 mm", "holds"],
    ["", "steerer-supplied: 180 mm", "steerer-length: 180.1 mm", "fails"],
    [`${spacers}; cap-gap: 3 mm`, "", "", "unknown"],
    [spacers, "steerer-supplied: 150 mm; steerer-shape: threaded", "", "notApplicable"],
  ])("%s on %s cut %s: %s", (settings, fork, cut, outcome) => {
    expect(checkText(frontEnd(settings, fork, cut)).outcome(code)).toBe(outcome);
  });

  it("takes out as many spacers as it is short by", () => {
    const text = frontEnd(`${spacers}; cap-gap: 3 mm`, "steerer-supplied: 182.7 mm");
    expect(checkText(text).of(code)[0]?.message).toMatch(/189 mm.*182\.7 mm.*3\.5 mm are left/);
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Put 3.5 mm of spacers under the stem (cockpit.stem.spacers-below: 3.5 mm)");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
    const shorter = repaired(frontEnd(`${spacers}; cap-gap: 3 mm`, "steerer-supplied: 170 mm"), code);
    expect(shorter).toEqual([]);
  });

  it("does not ask about a quill", () => {
    expect(checkText(frontEnd(spacers, "steerer-supplied: 150 mm", "", "clamping: quill")).outcome(code)).toBe(
      "notApplicable",
    );
  });
});

describe("steering/steerer-length", () => {
  const code = "steering/steerer-length";
  const cut = (length: string, settings: string, stem = "clamp-height: 40 mm; least-engagement: 36 mm") =>
    frontEnd(settings, "steerer-diameter: 28.6 mm", `steerer-length: ${length}`, stem);

  it.each([
    ["189 mm", `${spacers}; cap-gap: 3 mm`, "holds", undefined],
    ["191.9 mm", spacers, "holds", undefined],
    ["192 mm", spacers, "fails", "error"],
    ["195 mm", `${spacers}; cap-gap: 3 mm`, "fails", "error"],
    // 5 mm at most by ISO 4210-2; but a clamp that needs 36 of its 40 mm bears 4 only.
    ["188 mm", spacers, "holds", undefined],
    ["187.9 mm", spacers, "fails", "error"],
    ["190 mm", `${spacers}; cap-gap: 3 mm`, "holds", undefined],
    ["190.1 mm", `${spacers}; cap-gap: 3.5 mm`, "fails", "warning"],
  ])("cut to %s with %s: %s %s", (length, settings, outcome, severity) => {
    const text = checkText(cut(length, settings));
    expect(text.outcome(code)).toBe(outcome);
    expect(text.of(code)[0]?.severity).toBe(severity);
  });

  it.each([
    ["187 mm", "clamp-height: 40 mm; least-engagement: 30 mm", spacers, "holds"],
    ["186.9 mm", "clamp-height: 40 mm; least-engagement: 30 mm", spacers, "fails"],
    // With a spacer over the stem the steerer may end in that, and all of the clamp holds it.
    ["192 mm", "clamp-height: 40 mm; least-engagement: 40 mm", "spacers-below: 10 mm; spacers-above: 5 mm", "holds"],
    ["192 mm", "clamp-height: 40 mm", "spacers-below: 10 mm; spacers-above: 5 mm", "holds"],
    ["190 mm", "clamp-height: 40 mm", spacers, "unknown"],
  ])("cut to %s under %s with %s: %s", (length, stem, settings, outcome) => {
    expect(checkText(cut(length, settings, stem)).outcome(code)).toBe(outcome);
  });

  it("names what is missing", () => {
    const text = checkText(frontEnd(spacers, "steerer-diameter: 28.6 mm"));
    expect(text.missing(code)).toEqual(["fork.steerer-length"]);
  });

  it("mends one that is too long and one that is too short", () => {
    for (const [length, titles] of [
      [
        "200 mm",
        [
          "Cut the steerer to 189 mm (fork.steerer-length: 189 mm)",
          "Put 11 mm of spacers over the stem (cockpit.stem.spacers-above: 11 mm)",
        ],
      ],
      [
        "180 mm",
        [
          "Cut the steerer to 189 mm (fork.steerer-length: 189 mm)",
          "Put 1 mm of spacers under the stem (cockpit.stem.spacers-below: 1 mm)",
        ],
      ],
    ] as const) {
      const mends = repaired(cut(length, `${spacers}; cap-gap: 3 mm`), code);
      expect(mends.map(({ title }) => title)).toEqual(titles);
      for (const { title, text } of mends) expect(checkText(text).outcome(code), title).toBe("holds");
    }
  });

  it("leaves out no more than the stem can do without", () => {
    // The clamp needs 38 of its 40 mm: a gap of 2 mm is the most, whatever was planned.
    const tight = cut("189 mm", `${spacers}; cap-gap: 3 mm`, "clamp-height: 40 mm; least-engagement: 38 mm");
    expect(checkText(tight).of(code)[0]?.message).toMatch(/holds 37 mm of it and needs 38 mm.*Leave it at 190 mm/);
    const mends = repaired(tight, code);
    expect(mends.length).toBeGreaterThan(0);
    for (const { title, text } of mends) expect(checkText(text).outcome(code), title).toBe("holds");
  });

  it("says both lengths, the gap and the engagement", () => {
    const [found] = checkText(cut("180 mm", `${spacers}; cap-gap: 3 mm`)).of(code);
    expect(found?.message).toMatch(/180 mm.*192 mm.*12 mm below the top.*5 mm is the most.*28 mm.*36 mm.*189 mm/);
  });
});

describe("steering/spacer-limit and spacers-supplied", () => {
  it.each([
    ["30 mm", "30 mm", "holds"],
    ["30 mm", "30.5 mm", "fails"],
    ["none", "60 mm", "notApplicable"],
    ["", "30 mm", "unknown"],
  ])("a limit of %s and %s of spacers: %s", (limit, below, outcome) => {
    const text = compose({
      fork: part("fork", limit === "" ? 'note: "no figure"' : `greatest-spacers: ${limit}`),
      "cockpit.stem": part("stem", "length: 80 mm", `spacers-below: ${below}`),
    });
    expect(checkText(text).outcome("steering/spacer-limit")).toBe(outcome);
  });

  it("brings the stack down to the limit", () => {
    const text = compose({
      fork: part("fork", "greatest-spacers: 30 mm"),
      "cockpit.stem": part("stem", "length: 80 mm", "spacers-below: 42 mm"),
    });
    const [first] = repaired(text, "steering/spacer-limit");
    expect(checkText(first?.text ?? "").outcome("steering/spacer-limit")).toBe("holds");
  });

  it.each([
    ["20 mm", "10 mm", "holds"],
    ["20 mm", "10.5 mm", "fails"],
  ])("%s below and %s above with 30 mm of rings: %s", (below, above, outcome) => {
    const text = compose({
      "cockpit.spacers": part("steerer-spacers", "total-height: 30 mm"),
      "cockpit.stem": part("stem", "length: 80 mm", `spacers-below: ${below}; spacers-above: ${above}`),
    });
    expect(checkText(text).outcome("steering/spacers-supplied")).toBe(outcome);
  });
});

describe("steering/quill-insertion", () => {
  it.each([
    ["65 mm", "holds"],
    ["64.9 mm", "fails"],
  ])("a quill at %s with a mark at 65 mm: %s", (depth, outcome) => {
    const text = compose({
      "cockpit.stem": part("stem", "clamping: quill; least-quill-insertion: 65 mm", `quill-insertion: ${depth}`),
    });
    expect(checkText(text).outcome("steering/quill-insertion")).toBe(outcome);
  });

  it("is not asked of a clamp", () => {
    const text = compose({
      "cockpit.stem": part("stem", "clamping: threadless; least-quill-insertion: 65 mm", "quill-insertion: 10 mm"),
    });
    expect(checkText(text).outcome("steering/quill-insertion")).toBe("notApplicable");
  });
});

describe("steering/steerer-plug", () => {
  const code = "steering/steerer-plug";
  function plugged(fork: string, headset: string, plug?: string): string {
    return compose({
      fork: part("fork", fork),
      headset: part("headset", headset),
      "cockpit.steerer-plug": plug === undefined ? "none" : part("steerer-plug", plug),
    });
  }

  it.each([
    ["steerer-material: carbon; plug-types: expanding-plug", "plug-supplied: star-nut", undefined, "fails"],
    [
      "steerer-material: carbon; plug-types: expanding-plug",
      "plug-supplied: star-nut, expanding-plug",
      undefined,
      "holds",
    ],
    [
      "steerer-material: carbon; plug-types: expanding-plug",
      "plug-supplied: star-nut",
      "plug-type: expanding-plug",
      "holds",
    ],
    ["steerer-material: carbon; plug-types: glued", "plug-supplied: none", "plug-type: expanding-plug", "fails"],
    ["steerer-material: carbon", "plug-supplied: star-nut", undefined, "fails"],
    ["steerer-material: carbon", "plug-supplied: none", "plug-type: expanding-plug", "unknown"],
    ["steerer-material: steel", "plug-supplied: star-nut", undefined, "holds"],
    ["steerer-material: steel", "plug-supplied: none", "plug-type: expanding-plug", "holds"],
    ["steerer-material: aluminium; forbids: star-nut", "plug-supplied: star-nut", undefined, "fails"],
    ["steerer-material: aluminium; plug-types: none", "plug-supplied: star-nut", undefined, "fails"],
    ['note: "nothing known"', "plug-supplied: star-nut", undefined, "unknown"],
    // Nobody said what the cap pulls on.
    ["steerer-material: carbon", "plug-supplied: none", undefined, "unknown"],
    ["steerer-material: steel", 'note: "nothing said"', undefined, "unknown"],
    // The fork's own plug.
    ["steerer-material: carbon; plug-supplied: expanding-plug", "plug-supplied: none", undefined, "holds"],
    ["steerer-material: carbon; plug-supplied: glued", "plug-supplied: star-nut", undefined, "holds"],
    ["plug-supplied: star-nut", "plug-supplied: none", undefined, "holds"],
    ["steerer-material: carbon; plug-supplied: expanding-plug", "plug-supplied: none", "plug-type: star-nut", "fails"],
    [
      "steerer-material: carbon; plug-supplied: expanding-plug; plug-types: expanding-plug",
      "plug-supplied: none",
      "plug-type: expanding-plug",
      "holds",
    ],
    ["steerer-material: carbon; plug-supplied: star-nut", "plug-supplied: none", undefined, "fails"],
    [
      "steerer-material: aluminium; forbids: star-nut; plug-supplied: star-nut",
      "plug-supplied: none",
      undefined,
      "fails",
    ],
    ["steerer-material: carbon; plug-supplied: none", "plug-supplied: none", "plug-type: none", "notApplicable"],
    // None comes with either, and none is fitted.
    ["steerer-material: carbon; plug-supplied: none", "plug-supplied: none", undefined, "fails"],
    ["steerer-material: steel; plug-supplied: none", "plug-supplied: star-nut", undefined, "holds"],
    ["steerer-material: carbon; steerer-shape: threaded", "plug-supplied: star-nut", undefined, "notApplicable"],
    ["steerer-material: carbon; plug-types: expanding-plug", "plug-supplied: none", 'note: "unmarked"', "unknown"],
  ])("%s; headset %s; plug %s: %s", (fork, headset, plug, outcome) => {
    expect(checkText(plugged(fork, headset, plug)).outcome(code)).toBe(outcome);
  });

  it("says what comes with the fork, and what is laid aside for it", () => {
    const fork = "steerer-material: carbon; plug-supplied: expanding-plug";
    const said = (headset: string) => {
      const verdict = checkText(plugged(fork, headset)).row(code).instances[0]?.verdict;
      return verdict?.outcome === "holds" ? verdict.message : verdict?.outcome;
    };
    expect(said("plug-supplied: none")).toBe("fork comes with an expanding plug for its steerer.");
    expect(said("plug-supplied: star-nut")).toMatch(/The star nut that comes with headset is not used\.$/);
  });

  it("asks what the fork comes with, and finds that nothing is there to pull on", () => {
    expect(checkText(plugged("steerer-material: carbon", "plug-supplied: none")).missing(code)).toEqual([
      "fork.plug-supplied",
    ]);
    const text = `${plugged("steerer-material: carbon; plug-supplied: none", "plug-supplied: none")}
part steerer-plug test.wedge "Wedge" { plug-type: expanding-plug }
`;
    expect(checkText(text).of(code)[0]?.message).toBe(
      "The cap has nothing to pull on: neither fork nor headset comes with a plug, and none is fitted. Fit an expanding plug.",
    );
    const metal = plugged("steerer-material: steel; plug-supplied: none", "plug-supplied: none");
    expect(checkText(metal).of(code)[0]?.message).toMatch(/Fit a star nut or an expanding plug\.$/);
  });

  it("adds a plug that the fork takes", () => {
    const text = `${plugged("steerer-material: carbon; plug-types: expanding-plug", "plug-supplied: star-nut")}
part steerer-plug test.wedge "Wedge" { plug-type: expanding-plug }
`;
    expect(checkText(text).of(code)[0]?.message).toMatch(/a star nut.*carbon.*an expanding plug/);
    const [first] = repaired(text, code);
    expect(first?.title).toContain("test.wedge");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
  });
});

describe("steering/plug-bore and plug-span", () => {
  it.each([
    ["23 mm", "holds"],
    ["25 mm", "holds"],
    ["22.9 mm", "fails"],
    ["25.1 mm", "fails"],
  ])("a plug for 23 to 25 mm in a bore of %s: %s", (bore, outcome) => {
    const text = compose({
      fork: part("fork", `steerer-bore: ${bore}`),
      "cockpit.steerer-plug": part("steerer-plug", "least-bore: 23 mm; greatest-bore: 25 mm"),
    });
    expect(checkText(text).outcome("steering/plug-bore")).toBe(outcome);
  });

  const code = "steering/plug-span";
  function spanned(span: string, depth: string, stem: string, material = "carbon", type = "expanding-plug"): string {
    return compose({
      fork: part("fork", `steerer-material: ${material}`),
      "cockpit.steerer-plug": part("steerer-plug", `plug-type: ${type}; span: ${span}`, depth),
      "cockpit.stem": part("stem", "clamp-height: 40 mm", stem),
    });
  }

  it.each([
    // The steerer ends 3 mm below the clamp's top: 37 mm of it are clamped, from its top down.
    ["37 mm", "depth: 0 mm", "spacers-above: 0 mm; cap-gap: 3 mm", "holds"],
    ["36.9 mm", "depth: 0 mm", "spacers-above: 0 mm; cap-gap: 3 mm", "fails"],
    ["50 mm", "depth: 1 mm", "spacers-above: 0 mm; cap-gap: 3 mm", "fails"],
    // Under a spacer of 10 mm the clamp is from 7 to 47 mm below the steerer's top.
    ["47 mm", "depth: 0 mm", "spacers-above: 10 mm; cap-gap: 3 mm", "holds"],
    ["46.9 mm", "depth: 0 mm", "spacers-above: 10 mm; cap-gap: 3 mm", "fails"],
    ["40 mm", "depth: 7 mm", "spacers-above: 10 mm; cap-gap: 3 mm", "holds"],
    ["39.9 mm", "depth: 7 mm", "spacers-above: 10 mm; cap-gap: 3 mm", "fails"],
    ["45 mm", "", "spacers-above: 0 mm; cap-gap: 3 mm", "unknown"],
    ["36 mm", "", "", "unknown"],
    ["34.9 mm", "", "", "fails"],
  ])("a plug of %s at %s with %s: %s", (span, depth, stem, outcome) => {
    expect(checkText(spanned(span, depth, stem)).outcome(code)).toBe(outcome);
  });

  it("is not asked of metal, nor of a star nut", () => {
    expect(checkText(spanned("20 mm", "", "", "steel")).outcome(code)).toBe("notApplicable");
    expect(checkText(spanned("20 mm", "", "", "carbon", "star-nut")).outcome(code)).toBe("notApplicable");
  });

  it("sets the plug deeper where that is enough", () => {
    const text = spanned("42 mm", "depth: 0 mm", "spacers-above: 10 mm; cap-gap: 3 mm");
    const [first] = repaired(text, code);
    expect(first?.title).toBe("Set the plug 5 mm below the top of the steerer (cockpit.steerer-plug.depth: 5 mm)");
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
  });
});

describe("steering/fork-travel, travel-set and fork-length", () => {
  function forked(fork: string, settings: string, frame: string): string {
    return compose({ fork: part("fork", fork, settings), frame: part("frame", frame) });
  }

  it.each([
    ["travel: 120 mm", "", "fork-travel-range: 100 to 120 mm", "holds"],
    ["travel: 100 mm", "", "fork-travel-range: 100 to 120 mm", "holds"],
    ["travel: 121 mm", "", "fork-travel-range: 100 to 120 mm", "fails"],
    ["travel: 99 mm", "", "fork-travel-range: 100 to 120 mm", "fails"],
    [
      "travel: 140 mm; travel-options: 120 to 140 mm",
      "travel-set: 120 mm",
      "fork-travel-range: 100 to 120 mm",
      "holds",
    ],
    ["travel: none", "", "fork-travel-range: 100 to 120 mm", "notApplicable"],
    ["travel: 100 mm", "", "fork-travel-range: none", "fails"],
    ["travel: 100 mm", "", 'size: "M"', "unknown"],
  ])("%s (%s) in a frame of %s: %s", (fork, settings, frame, outcome) => {
    expect(checkText(forked(fork, settings, frame)).outcome("steering/fork-travel")).toBe(outcome);
  });

  it("sets the fork to the nearest travel that the frame allows", () => {
    const text = forked("travel: 140 mm; travel-options: 110 to 140 mm", "", "fork-travel-range: 100 to 120 mm");
    const [first] = repaired(text, "steering/fork-travel");
    expect(first?.title).toBe("Set the fork to 120 mm of travel (fork.travel-set: 120 mm)");
    expect(checkText(first?.text ?? "").outcome("steering/fork-travel")).toBe("holds");
    const low = forked("travel: 90 mm; travel-options: 80 to 110 mm", "", "fork-travel-range: 100 to 120 mm");
    expect(repaired(low, "steering/fork-travel")[0]?.title).toBe(
      "Set the fork to 100 mm of travel (fork.travel-set: 100 mm)",
    );
  });

  it.each([
    ["travel: 140 mm; travel-options: 120 to 140 mm", "120 mm", "holds"],
    ["travel: 140 mm; travel-options: 120 to 140 mm", "119 mm", "fails"],
    ["travel: 140 mm", "140 mm", "holds"],
    ["travel: 140 mm; travel-options: none", "130 mm", "fails"],
  ])("%s set to %s: %s", (fork, set, outcome) => {
    const text = compose({ fork: part("fork", fork, `travel-set: ${set}`) });
    expect(checkText(text).outcome("steering/travel-set")).toBe(outcome);
  });

  it.each([
    ["axle-to-crown: 510 mm", "", "fork-axle-to-crown-range: 500 to 520 mm", "holds"],
    ["axle-to-crown: 520 mm", "", "fork-axle-to-crown-range: 500 to 520 mm", "holds"],
    ["axle-to-crown: 521 mm", "", "fork-axle-to-crown-range: 500 to 520 mm", "fails"],
    ["axle-to-crown: 499 mm", "", "fork-axle-to-crown-range: 500 to 520 mm", "fails"],
    // Ten millimetres of travel less are ten of length.
    ["axle-to-crown: 530 mm; travel: 130 mm", "travel-set: 120 mm", "fork-axle-to-crown-range: 500 to 520 mm", "holds"],
    ["axle-to-crown: 531 mm; travel: 130 mm", "travel-set: 120 mm", "fork-axle-to-crown-range: 500 to 520 mm", "fails"],
    // Nobody stated a range, but the chart was drawn with such a fork.
    ["axle-to-crown: 515 mm", "", "fork-axle-to-crown: 510 mm", "holds"],
    ["axle-to-crown: 516 mm", "", "fork-axle-to-crown: 510 mm", "unknown"],
    ["axle-to-crown: 516 mm", "", "fork-axle-to-crown-range: none; fork-axle-to-crown: 510 mm", "notApplicable"],
    // One fault is found once: too much travel makes a fork too long as well.
    [
      "axle-to-crown: 541 mm; travel: 140 mm",
      "",
      "fork-axle-to-crown-range: 500 to 520 mm; fork-travel-range: 100 to 120 mm",
      "notApplicable",
    ],
    [
      "axle-to-crown: 541 mm; travel: 120 mm",
      "",
      "fork-axle-to-crown-range: 500 to 520 mm; fork-travel-range: 100 to 120 mm",
      "fails",
    ],
    [
      "axle-to-crown: 480 mm; travel: 80 mm",
      "",
      "fork-axle-to-crown-range: 500 to 520 mm; fork-travel-range: 100 to 120 mm",
      "notApplicable",
    ],
    [
      "axle-to-crown: 500 mm; travel: 100 mm",
      "",
      "fork-axle-to-crown-range: 380 to 400 mm; fork-travel-range: none",
      "notApplicable",
    ],
    [
      "axle-to-crown: 450 mm; travel: none",
      "",
      "fork-axle-to-crown-range: 380 to 400 mm; fork-travel-range: none",
      "fails",
    ],
  ])("%s (%s) in a frame of %s: %s", (fork, settings, frame, outcome) => {
    expect(checkText(forked(fork, settings, frame)).outcome("steering/fork-length")).toBe(outcome);
  });

  it("says what the length does to the angles", () => {
    const text = compose({
      frame: part(
        "frame",
        "reach: 385 mm; stack: 560 mm; head-angle: 73°; head-tube-length: 150 mm; chainstay: 410 mm; bottom-bracket-drop: 70 mm; fork-axle-to-crown: 371 mm; fork-offset: 45 mm; fork-axle-to-crown-range: 366 to 376 mm",
      ),
      fork: part("fork", "axle-to-crown: 391 mm; fork-offset: 45 mm; travel: none"),
      headset: part("headset", "lower-stack: 2 mm"),
    });
    // About one degree and 8 mm for 20 mm on a metre of wheelbase (plane geometry).
    expect(checkText(text).of("steering/fork-length")[0]?.message).toMatch(
      /391 mm.*366 to 376 mm; 20 mm longer than its chart assumes.*71\.9.*raises the cranks by 8 mm/,
    );
    // A fork that comes 20 mm longer still, with so much less of its travel used, stands the same.
    const set = text
      .replace(
        "axle-to-crown: 391 mm; fork-offset: 45 mm; travel: none",
        "axle-to-crown: 411 mm; fork-offset: 45 mm; travel: 60 mm; travel-options: 30 to 60 mm",
      )
      .replace(/fork: (\S+)$/m, "fork: $1 { travel-set: 40 mm }");
    expect(checkText(set).of("steering/fork-length")[0]?.message).toMatch(
      /391 mm from axle to crown with its travel set to 40 mm.*20 mm longer than its chart assumes.*71\.9.*raises the cranks by 8 mm/,
    );
  });
});

describe("steering/frame-clearance", () => {
  it.each([
    ["58 mm", "holds"],
    ["58.1 mm", "fails"],
  ])("knobs at %s and room for 58 mm: %s", (radius, outcome) => {
    const text = compose({
      fork: part("fork", `crown-radius: ${radius}`),
      frame: part("frame", "crown-clearance: 58 mm"),
    });
    expect(checkText(text).outcome("steering/frame-clearance")).toBe(outcome);
  });
});
