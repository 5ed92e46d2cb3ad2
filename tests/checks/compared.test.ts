import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, part } from "./compose.ts";

/** Lengths, angles and aims that a part or build states, each against the one thing that it is stated for. */

function outcome(text: string, code: string): string {
  return checkText(text).outcome(code);
}

describe("cockpit/clamp-zone", () => {
  it.each([
    ["bar-clamp-width: 44 mm", "clamp-zone: 44 mm", "holds"],
    ["bar-clamp-width: 44 mm", "clamp-zone: 43.9 mm", "fails"],
    ["length: 60 mm", "clamp-zone: 60 mm", "unknown"],
    ["bar-clamp-width: 44 mm", "width: 760 mm", "notApplicable"],
  ])("a stem with %s on a bar with %s: %s", (stem, bar, expected) => {
    const text = compose({ "cockpit.stem": part("stem", stem), "cockpit.handlebar": part("handlebar", bar) });
    expect(outcome(text, "cockpit/clamp-zone")).toBe(expected);
  });
});

describe("wheel/spoke-end", () => {
  it.each([
    ["spoke-head: elbow; end-diameter: 2 mm; thread: 2.0x56", "spoke-hole-diameter: 2.4 mm", "holds"],
    ["spoke-head: elbow; end-diameter: 2 mm; thread: 2.0x56", "spoke-hole-diameter: 2 mm", "fails"],
    ["spoke-head: elbow; end-diameter: 2 mm; thread: 2.3x56", "spoke-hole-diameter: 2.6 mm", "fails"],
    // Strengthened at the elbow, as spokes for heavy wheels are.
    ["spoke-head: elbow; end-diameter: 2.3 mm; thread: 2.0x56", "spoke-hole-diameter: 2.6 mm", "holds"],
    // Straight-pull spokes go through no hole of the flange that is stated so.
    ["spoke-head: straight; end-diameter: 2 mm; thread: 2.0x56", "spoke-hole-diameter: 1.9 mm", "holds"],
    ["spoke-head: elbow; end-diameter: 2 mm; thread: 2.0x56", "spoke-head: elbow", "unknown"],
    ["spoke-head: elbow; thread: 2.0x56", "spoke-hole-diameter: 2.4 mm", "unknown"],
  ])("spokes with %s in a hub with %s: %s", (spokes, hub, expected) => {
    const text = compose({ "front-wheel.spokes": part("spokes", spokes), "front-wheel.hub": part("hub", hub) });
    expect(checkText(text).instance("wheel/spoke-end", "front")).toBe(expected);
  });
});

describe("drivetrain/front-derailleur-angle", () => {
  const bike = (range: string, drop = "bottom-bracket-drop: 70 mm"): string =>
    compose({
      frame: part("frame", `seat-angle: 73°; chainstay: 435 mm; ${drop}`),
      "drivetrain.front-derailleur": part("front-derailleur", range),
    });

  // By hand: 73 − asin(70 ÷ 435) = 73 − 9.26 = 63.74 degrees.
  it.each([
    ["chainstay-angle: 61 to 66°", "holds"],
    ["chainstay-angle: 64 to 66°", "holds"],
    ["chainstay-angle: 65 to 67°", "fails"],
    ["chainstay-angle: 60 to 63°", "fails"],
    ["capacity: 16 t", "notApplicable"],
  ])("a derailleur with %s: %s", (range, expected) => {
    expect(outcome(bike(range), "drivetrain/front-derailleur-angle")).toBe(expected);
  });

  it("asks for what the angle follows from", () => {
    const text = checkText(bike("chainstay-angle: 61 to 66°", "stack: 580 mm"));
    expect(text.missing("drivetrain/front-derailleur-angle")).toEqual(["frame.bottom-bracket-drop"]);
  });
});

describe("drivetrain/gearing-aims", () => {
  const code = "drivetrain/gearing-aims";
  const bike = (aim: string, hub = "gears: none"): string =>
    compose({
      "drivetrain.cassette": part("cassette", "cogs: 18-20-30 t"),
      "drivetrain.chainring": part("chainring", "teeth: 30 t"),
      "drivetrain.crankset": part("crankset", "rings: none"),
      "rear-wheel.hub": part("hub", hub),
      "rear-wheel.rim": part("rim", "inner-width: 19 mm"),
      "rear-wheel.tyre": part(
        "tyre",
        "size: 32-622; measured-width: 32 mm; measured-on-rim: 19 mm; measured-height: 31 mm",
      ),
    }).replace('build example "Example" {', `build example "Example" {\n  ${aim}`);

  // By hand: a wheel of 622 + 2 × 31 = 684 mm is 2.149 m round, 30 ÷ 30 of it and 30 ÷ 18 of it 3.581 m.
  it.each([
    ["lowest-development", "2.15 m", "holds"],
    ["lowest-development", "2.14 m", "fails"],
    ["highest-development", "3.58 m", "holds"],
    ["highest-development", "3.59 m", "fails"],
    // From 30 to 20 teeth.
    ["greatest-step", "1.5", "holds"],
    ["greatest-step", "1.49", "fails"],
  ])("%s: %s %s", (name, aim, expected) => {
    const text = checkText(bike(`gearing.${name}: ${aim}`));
    expect(text.instance(code, name)).toBe(expected);
    expect(text.row(code).instances.filter(({ verdict }) => verdict.outcome === "notApplicable")).toHaveLength(2);
  });

  it("knows nothing while the hub may have gears", () => {
    const text = bike("gearing.lowest-development: 2.5 m", "wheel: rear; gear-range: 3").replace("gears: none", "");
    expect(checkText(text).instance(code, "lowest-development")).toBe("unknown");
  });

  it("does not take a gear that cannot be worked out for one that is as aimed", () => {
    const text = bike("gearing.lowest-development: 2 m").replace("cogs: 18-20-30 t", "speeds: 3");
    expect(checkText(text).instance(code, "lowest-development")).toBe("unknown");
  });
});

describe("drivetrain/single-speed-chain", () => {
  const bike = (chain: string, link: string, rear: string): string => `
part chain a.chain "Chain" { ${chain} }
part closure-link a.link "Link" { ${link} }
part rear-derailleur a.rear "Rear" { mount: M10x1 }
build example "Example" {
  drivetrain { chain: a.chain; closure-link: a.link; rear-derailleur: ${rear}; front-derailleur: none }
}
`;
  it.each([
    ["closure: closure-link", "half-link: no", "a.rear", "holds"],
    ["closure: spring-clip", "half-link: no", "a.rear", "fails"],
    ["closure: pin; half-link: yes", "half-link: no", "a.rear", "fails"],
    ["closure: closure-link", "half-link: yes", "a.rear", "fails"],
    ["closure: spring-clip", "half-link: no", "none", "notApplicable"],
    ["half-link: no", "half-link: no", "a.rear", "unknown"],
  ])("%s, a link with %s, %s behind: %s", (chain, link, rear, expected) => {
    expect(outcome(bike(chain, link, rear), "drivetrain/single-speed-chain")).toBe(expected);
  });
});

describe("what is cut longer than it is", () => {
  const post = (cut: string): string => compose({ "seat.post": part("seatpost", "overall-length: 350 mm", cut) });
  const grips = (cut: string): string => compose({ "cockpit.grips": part("grips", "length: 135 mm", cut) });

  it.each([
    ["cut-length: 350 mm", "holds"],
    ["cut-length: 351 mm", "fails"],
    ["", "notApplicable"],
  ])("a post of 350 mm with '%s': %s", (cut, expected) => {
    expect(outcome(post(cut), "seat/post-cut")).toBe(expected);
  });

  it.each([
    ["cut-length: 135 mm", "holds"],
    ["cut-length: 150 mm", "fails"],
    ["", "notApplicable"],
  ])("grips of 135 mm with '%s': %s", (cut, expected) => {
    expect(outcome(grips(cut), "cockpit/grip-cut")).toBe(expected);
  });

  it("offers the length as sold", () => {
    expect(repaired(post("cut-length: 400 mm"), "seat/post-cut")[0]?.text).toContain("cut-length: 350 mm");
  });
});

describe("seat/rider-mass of other parts", () => {
  const code = "seat/rider-mass";
  it.each([
    ["max-rider-mass: 80 kg", "rider.mass: 81 kg", "fails"],
    ["max-rider-mass: 80 kg", "rider.mass: 80 kg", "holds"],
    ["max-rider-mass: 80 kg", "", "unknown"],
    ["inside-diameter: 34.9 mm", "rider.mass: 81 kg", "notApplicable"],
  ])("a seat clamp with %s and '%s': %s", (clamp, rider, expected) => {
    const text = compose({ "seat.clamp": part("seat-clamp", clamp) }).replace(
      'build example "Example" {',
      `build example "Example" {\n  ${rider}`,
    );
    expect(checkText(text).instance(code, "other parts")).toBe(expected);
  });
});
