import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

/** The message of the one finding of a check. */
function message(text: string, code: string): string {
  const found = checkText(text).of(code);
  expect(found).toHaveLength(1);
  return found[0]?.message ?? "";
}

describe("steering/headset-upper, headset-lower and crown-race", () => {
  // Same-number EC and ZS share the bore, and neither shares one with IS (headset identification, from memory).
  it.each([
    ["ZS44", "ZS44/28.6", "holds"],
    ["ZS44", "EC44/28.6", "holds"],
    ["EC44", "ZS44/28.6", "holds"],
    ["ZS49", "ZS44/28.6", "fails"],
    ["EC34", "ZS44/28.6", "fails"],
    ["IS42", "IS41/28.6", "fails"],
    ["IS41", "ZS41/28.6", "fails"],
    ["ZS44", "ZS44", "holds"],
    ["none", "ZS44/28.6", "fails"],
  ])("a head tube of %s and an upper headset of %s: %s", (tube, headset, outcome) => {
    const text = compose({
      frame: part("frame", `head-tube-upper: ${tube}`),
      headset: part("headset", `upper: ${headset}`),
    });
    expect(checkText(text).outcome("steering/headset-upper")).toBe(outcome);
  });

  it.each([
    ["ZS56", "ZS56/40", "holds"],
    ["EC56", "ZS56/30", "holds"],
    ["ZS55", "ZS56/40", "fails"],
  ])("a head tube of %s and a lower headset of %s: %s", (tube, headset, outcome) => {
    const text = compose({
      frame: part("frame", `head-tube-lower: ${tube}`),
      headset: part("headset", `lower: ${headset}`),
    });
    expect(checkText(text).outcome("steering/headset-lower")).toBe(outcome);
  });

  it("knows nothing of what is not stated", () => {
    const text = checkText(
      compose({ frame: part("frame", 'size: "M"'), headset: part("headset", "upper: ZS44/28.6") }),
    );
    expect(text.outcome("steering/headset-upper")).toBe("unknown");
    expect(text.missing("steering/headset-upper")).toEqual(["frame.head-tube-upper"]);
    expect(text.missing("steering/headset-lower")).toEqual(["headset.lower", "frame.head-tube-lower"]);
  });

  it("says both fits and points at the headset", () => {
    const text = compose({
      frame: part("frame", "head-tube-upper: ZS49"),
      headset: part("headset", "upper: ZS44/28.6"),
    });
    expect(message(text, "steering/headset-upper")).toMatch(/ZS44.*44 mm.*ZS49.*49 mm/);
    expect(checkText(text).of("steering/headset-upper")[0]?.path).toBe("headset");
  });

  it.each([
    ["ZS56/40", "40", "holds"],
    ["ZS56/30", "30", "holds"],
    ["ZS56/40", "30", "fails"],
    ["EC30/26", "27", "fails"],
    ["ZS56/40", "none", "fails"],
    ["ZS56", "40", "unknown"],
  ])("a lower headset of %s on a fork with a seat of %s: %s", (headset, seat, outcome) => {
    const text = compose({ headset: part("headset", `lower: ${headset}`), fork: part("fork", `crown-race: ${seat}`) });
    expect(checkText(text).outcome("steering/crown-race")).toBe(outcome);
  });

  it("names the half that a code leaves out", () => {
    const text = checkText(compose({ headset: part("headset", "lower: ZS56"), fork: part("fork", "crown-race: 40") }));
    const [missing] = text.row("steering/crown-race").missing;
    expect(missing?.what).toMatch(/crown-race.*ZS56/);
  });

  it("offers a headset that fits", () => {
    const text = compose(
      { headset: part("headset", "lower: ZS56/40"), fork: part("fork", "crown-race: 30") },
      'part headset test.other "Other" { lower: ZS56/30 }',
    );
    const [first] = repaired(text, "steering/crown-race");
    expect(first?.title).toContain("test.other");
    expect(checkText(first?.text ?? "").outcome("steering/crown-race")).toBe("holds");
  });
});

describe("steering/bearing-angle", () => {
  it.each([
    ["IS42", "", "IS42/28.6", "45°", "holds"],
    ["IS42", "", "IS42/28.6", "36°", "fails"],
    // The frame's own figure stands over the usual one.
    ["IS42", "head-tube-upper-angle: 36°", "IS42/28.6", "36°", "holds"],
    ["IS42", "head-tube-upper-angle: 36°", "IS42/28.6", "45°", "fails"],
    ["IS52", "head-tube-upper-angle: 45°", "IS52/38.1", "44.5°", "holds"],
    ["IS52", "head-tube-upper-angle: 45°", "IS52/38.1", "44.4°", "fails"],
    ["IS52", "", "IS52/38.1", "45°", "unknown"],
    ["ZS44", "", "ZS44/28.6", "36°", "notApplicable"],
    // Two fits that do not go together are found as such, and only there.
    ["IS42", "", "IS41/28.6", "36°", "notApplicable"],
  ])("a seat %s (%s) and a bearing %s of %s: %s", (tube, seat, headset, angle, outcome) => {
    const text = checkText(
      compose({
        frame: part("frame", `head-tube-upper: ${tube}; head-tube-lower: ZS56; ${seat}`),
        headset: part("headset", `upper: ${headset}; upper-bearing-angle: ${angle}`),
      }),
    );
    expect(text.instance("steering/bearing-angle", "upper")).toBe(outcome);
    expect(text.instance("steering/bearing-angle", "lower")).toBe("notApplicable");
  });

  it("asks for the bearing's angle", () => {
    const text = checkText(
      compose({ frame: part("frame", "head-tube-lower: IS42"), headset: part("headset", "lower: IS42/30") }),
    );
    expect(text.instance("steering/bearing-angle", "lower")).toBe("unknown");
    expect(text.missing("steering/bearing-angle")).toContain("headset.lower-bearing-angle");
  });
});

describe("steering/stem-bar", () => {
  it.each([
    ["31.8 mm", "31.8 mm", "holds"],
    ["31.7 mm", "31.8 mm", "holds"],
    ["31.6 mm", "31.8 mm", "fails"],
    ["25.4 mm", "26.0 mm", "fails"],
    ["35 mm", "31.8 mm", "fails"],
    ["1.25 in", "31.8 mm", "holds"],
  ])("a bar of %s in a stem for %s: %s", (bar, stem, outcome) => {
    const text = compose({
      "cockpit.handlebar": part("handlebar", `clamp-diameter: ${bar}`),
      "cockpit.stem": part("stem", `bar-clamp: ${stem}`),
    });
    expect(checkText(text).outcome("steering/stem-bar")).toBe(outcome);
  });

  it("says both diameters", () => {
    const text = compose({
      "cockpit.handlebar": part("handlebar", "clamp-diameter: 35 mm"),
      "cockpit.stem": part("stem", "bar-clamp: 31.8 mm"),
    });
    expect(message(text, "steering/stem-bar")).toBe(
      "handlebar is 35 mm, but stem clamps 31.8 mm: fit a stem for 35 mm, or a bar of 31.8 mm at its middle.",
    );
  });
});

describe("steering/steerer-diameter", () => {
  it.each([
    ["ZS44/28.6", "28.6 mm", "holds"],
    ["ZS44/28.6", "1.125 in", "holds"],
    ["ZS44/28.6", "25.4 mm", "fails"],
    ["ZS44/28.6", "31.8 mm", "fails"],
    ["ZS44", "28.6 mm", "unknown"],
  ])("an upper headset %s round a steerer of %s: %s", (headset, steerer, outcome) => {
    const text = checkText(
      compose({ headset: part("headset", `upper: ${headset}`), fork: part("fork", `steerer-diameter: ${steerer}`) }),
    );
    expect(text.instance("steering/steerer-diameter", "headset-steerer")).toBe(outcome);
    expect(text.instance("steering/steerer-diameter", "spacers-steerer")).toBe("notApplicable");
  });

  it.each([
    ["28.6 mm", "holds"],
    ["29 mm", "holds"],
    ["29.1 mm", "fails"],
    ["31.8 mm", "fails"],
  ])("spacers of %s on a steerer of 28.6 mm: %s", (spacers, outcome) => {
    const text = checkText(
      compose({
        "cockpit.spacers": part("steerer-spacers", `inside-diameter: ${spacers}`),
        fork: part("fork", "steerer-diameter: 28.6 mm"),
      }),
    );
    expect(text.instance("steering/steerer-diameter", "spacers-steerer")).toBe(outcome);
  });
});

describe("steering/stem-steerer and stem-clamping", () => {
  it.each([
    [
      "steerer-clamp: 28.6 mm; clamping: threadless",
      "steerer-diameter: 28.6 mm; steerer-shape: round",
      "holds",
      "holds",
    ],
    [
      "steerer-clamp: 28.6 mm; clamping: threadless",
      "steerer-diameter: 25.4 mm; steerer-shape: round",
      "fails",
      "holds",
    ],
    // The kind is found by itself, once.
    [
      "steerer-clamp: 28.6 mm; clamping: threadless",
      "steerer-diameter: 28.6 mm; steerer-shape: threaded",
      "notApplicable",
      "fails",
    ],
    [
      "steerer-clamp: 22.2 mm; clamping: quill",
      "steerer-diameter: 28.6 mm; steerer-shape: round",
      "notApplicable",
      "fails",
    ],
    [
      "steerer-clamp: 28.6 mm; clamping: threadless",
      "steerer-diameter: 28.6 mm; steerer-shape: keyed",
      "holds",
      "holds",
    ],
    // Equal diameters are those of a clamp, whatever was left out.
    ["steerer-clamp: 28.6 mm", "steerer-diameter: 28.6 mm; steerer-shape: round", "holds", "unknown"],
    ["steerer-clamp: 28.6 mm", "steerer-diameter: 28.6 mm", "holds", "unknown"],
    ["steerer-clamp: 25.4 mm", "steerer-diameter: 28.6 mm", "unknown", "unknown"],
    ["steerer-clamp: 25.4 mm", "steerer-diameter: 28.6 mm; steerer-shape: round", "fails", "unknown"],
    ["steerer-clamp: 28.6 mm", "steerer-diameter: 28.6 mm; steerer-shape: threaded", "unknown", "unknown"],
    ["clamping: threadless", "steerer-diameter: 28.6 mm; steerer-shape: round", "unknown", "holds"],
  ])("%s on %s: %s, kind %s", (stem, fork, size, kind) => {
    const text = checkText(compose({ "cockpit.stem": part("stem", stem), fork: part("fork", fork) }));
    expect(text.outcome("steering/stem-steerer")).toBe(size);
    expect(text.outcome("steering/stem-clamping")).toBe(kind);
  });

  it.each([
    ["22.2 mm", "22.2 mm", "holds"],
    ["22.2 mm", "22.1 mm", "holds"],
    ["22.2 mm", "22.0 mm", "fails"],
    ["22.2 mm", "22.8 mm", "holds"],
    ["22.2 mm", "22.9 mm", "fails"],
    ["22.2 mm", "", "unknown"],
  ])("a quill of %s in a bore of %s: %s", (quill, bore, outcome) => {
    const text = checkText(
      compose({
        "cockpit.stem": part("stem", `clamping: quill; steerer-clamp: ${quill}`),
        fork: part(
          "fork",
          `steerer-diameter: 25.4 mm; steerer-shape: threaded${bore === "" ? "" : `; steerer-bore: ${bore}`}`,
        ),
      }),
    );
    expect(text.outcome("steering/stem-steerer")).toBe(outcome);
    if (outcome === "unknown") expect(text.missing("steering/stem-steerer")).toEqual(["fork.steerer-bore"]);
  });
});

describe("steering/compression-ring", () => {
  it.each([
    ["split", "round", "holds"],
    ["keyed", "keyed", "holds"],
    ["split", "keyed", "fails"],
    ["keyed", "round", "fails"],
    ["split", "threaded", "notApplicable"],
  ])("a %s ring on a %s steerer: %s", (ring, shape, outcome) => {
    const text = compose({
      headset: part("headset", `compression-ring: ${ring}`),
      fork: part("fork", `steerer-shape: ${shape}`),
    });
    expect(checkText(text).outcome("steering/compression-ring")).toBe(outcome);
  });
});

describe("steering/routing-system", () => {
  const systems = `
standard routing-system a "A" { path: "inside"; source: "test" }
standard routing-system b "B" { path: "inside"; source: "test" }
`;
  const code = "steering/routing-system";

  function cockpit(bar: string, stem: string, spacers: string, headset: string, frame: string): string {
    const of = (kind: string, system: string) =>
      system === "-" ? ("none" as const) : part(kind, `routing-system: ${system}`);
    return compose(
      {
        frame: of("frame", frame),
        headset: of("headset", headset),
        "cockpit.stem": of("stem", stem),
        "cockpit.spacers": of("steerer-spacers", spacers),
        "cockpit.handlebar": of("handlebar", bar),
      },
      systems,
    );
  }

  it.each([
    ["a", "a", "a", "a", "a", "holds"],
    ["none", "a", "a", "a", "a", "holds"],
    ["none", "none", "none", "none", "none", "notApplicable"],
    ["none", "none", "none", "a", "none", "notApplicable"],
    ["a", "none", "none", "none", "none", "fails"],
    ["a", "b", "b", "b", "b", "fails"],
    ["a", "a", "b", "a", "a", "fails"],
    ["a", "a", "-", "b", "b", "fails"],
    ["a", "a", "-", "none", "none", "fails"],
    ["none", "none", "none", "none", "a", "fails"],
    ["none", "none", "none", "b", "a", "fails"],
    ["none", "-", "-", "-", "-", "notApplicable"],
  ])("bar %s, stem %s, spacers %s, headset %s, frame %s: %s", (bar, stem, spacers, headset, frame, outcome) => {
    const text = checkText(cockpit(bar, stem, spacers, headset, frame));
    expect(text.outcome(code)).toBe(outcome);
    expect(text.of(code)).toHaveLength(outcome === "fails" ? 1 : 0);
  });

  it("finds one odd part once, and says which", () => {
    const [found] = checkText(cockpit("a", "b", "a", "a", "a")).of(code);
    expect(found?.path).toBe("cockpit.stem");
    expect(found?.message).toMatch(/handlebar hides hoses by a.*stem is of b.*spacers is of a.*headset is of a/);
  });

  it("does not ask what meets no hoses", () => {
    const text = compose({ "cockpit.stem": part("stem", "routing-system: a") }, systems);
    expect(checkText(text).outcome(code)).toBe("unknown");
    expect(checkText(text).missing(code)).toEqual(["cockpit.handlebar", "headset"]);
  });
});
