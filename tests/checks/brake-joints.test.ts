import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

function outcome(text: string, code: string): string {
  return checkText(text).outcome(code);
}

function finding(text: string, code: string) {
  const found = checkText(text).of(code);
  expect(found).toHaveLength(1);
  const [first] = found;
  if (!first) throw new Error(`${code} finds nothing`);
  return first;
}

const standards = `
standard hydraulic-family valley { source: "this test" }
standard hydraulic-family ridge { source: "this test" }
standard brake-fluid valley-oil { base: mineral; source: "this test" }
standard brake-fluid ridge-oil { base: mineral; source: "this test" }
standard pad-shape kidney { source: "this test" }
standard pad-shape wedge { source: "this test" }
`;

/** A front brake, and no rear one. */
function front(pieces: Pieces): string {
  return compose(
    { "rear-brake.lever": "none", "rear-brake.caliper": "none", "rear-brake.rotor": "none", ...pieces },
    standards,
  );
}

describe("what the brake is fixed to", () => {
  const code = "brake/caliper-mount";
  const mounted = (fork: string, caliper: Pieces[string], adapter?: string): string =>
    front({
      fork: part("fork", fork),
      "front-brake.caliper": caliper,
      "front-brake.adapter": adapter === undefined ? undefined : part("brake-adapter", adapter),
    });
  const caliper = (mount: string): Pieces[string] => part("caliper", mount);

  it.each([
    ["posts on posts", "brake-mount: post-74", "mount: post-74", undefined],
    ["posts by another name", "brake-mount: post-mount", "mount: post-74", undefined],
    ["posts on an adapter on posts", "brake-mount: post-74", "mount: post-74", "sits-on: post-74; offers: post-74"],
    [
      "posts on an adapter on tabs",
      "brake-mount: tabs-51-front",
      "mount: post-74",
      "sits-on: tabs-51-front; offers: post-74",
    ],
    ["flat on the plate of a fork", "brake-mount: flat-70", "mount: flat-34", "sits-on: flat-70; offers: flat-34"],
  ])("holds with %s", (_, fork, mount, adapter) => {
    expect(outcome(mounted(fork, caliper(mount), adapter), code)).toBe("holds");
  });

  it.each([
    ["posts on a flat face", "brake-mount: flat-70", "mount: post-74", undefined, "front-brake.caliper"],
    ["flat on a fork without its plate", "brake-mount: flat-70", "mount: flat-34", undefined, "front-brake.caliper"],
    [
      "an adapter that offers another mount",
      "brake-mount: flat-70",
      "mount: post-74",
      "sits-on: flat-70; offers: flat-34",
      "front-brake.adapter",
    ],
    [
      "an adapter for other tabs",
      "brake-mount: tabs-51-front",
      "mount: post-74",
      "sits-on: tabs-51-rear; offers: post-74",
      "front-brake.adapter",
    ],
    ["a fork without a mount", "brake-mount: none", "mount: post-74", undefined, "front-brake.caliper"],
    [
      "a fork without a mount, with an adapter",
      "brake-mount: none",
      "mount: post-74",
      "sits-on: post-74; offers: post-74",
      "front-brake.adapter",
    ],
  ])("fails with %s", (_, fork, mount, adapter, path) => {
    const found = finding(mounted(fork, caliper(mount), adapter), code);
    expect(found).toMatchObject({ severity: "error", path });
    expect(found.caution).toContain("ten seconds");
  });

  it("asks rim brakes likewise", () => {
    expect(outcome(mounted("brake-mount: rim-bosses", part("rim-brake", "mount: rim-bosses")), code)).toBe("holds");
    expect(outcome(mounted("brake-mount: centre-bolt", part("rim-brake", "mount: rim-bosses")), code)).toBe("fails");
  });

  it.each([
    ["the caliper's mount", "brake-mount: post-74", "brake-actuation: cable", undefined, "front-brake.caliper.mount"],
    ["the fork's mount", "axle: 15x110", "mount: post-74", undefined, "fork.brake-mount"],
    [
      "what the adapter offers",
      "brake-mount: post-74",
      "mount: post-74",
      "sits-on: post-74",
      "front-brake.adapter.offers",
    ],
    [
      "what the adapter sits on",
      "brake-mount: post-74",
      "mount: post-74",
      "offers: post-74",
      "front-brake.adapter.sits-on",
    ],
  ])("cannot tell without %s", (_, fork, mount, adapter, missing) => {
    const text = mounted(fork, caliper(mount), adapter);
    expect(outcome(text, code)).toBe("unknown");
    expect(checkText(text).missing(code)).toEqual([missing]);
  });

  it("names all that is missing at once", () => {
    const text = mounted("axle: 15x110", caliper("brake-actuation: cable"), "rotor-change: 20 mm");
    expect(checkText(text).missing(code)).toEqual([
      "front-brake.adapter.sits-on",
      "fork.brake-mount",
      "front-brake.caliper.mount",
      "front-brake.adapter.offers",
    ]);
  });

  it("finds an adapter that does not sit, whatever the brake is", () => {
    expect(
      outcome(
        mounted("brake-mount: flat-70", caliper("brake-actuation: cable"), "sits-on: post-74; offers: post-74"),
        code,
      ),
    ).toBe("fails");
  });

  it("says which mounts, and how the adapter fits", () => {
    expect(finding(mounted("brake-mount: flat-70", caliper("mount: post-74")), code).message).toBe(
      "caliper is fixed to post-74 (Post mount, 74 mm), but fork offers flat-70 (Flat mount of a fork, 70 mm): fit a brake for that mount, or an adapter between the two.",
    );
    expect(
      finding(mounted("brake-mount: flat-70", caliper("mount: post-74"), "sits-on: flat-70; offers: flat-34"), code)
        .message,
    ).toContain(
      "its adapter adapter offers flat-34 (Flat mount, 34 mm): fit an adapter that offers post-74, or leave it out.",
    );
    const [row] = checkText(
      mounted("brake-mount: post-74", caliper("mount: post-74"), "sits-on: post-74; offers: post-74"),
    ).row(code).instances;
    expect(row?.verdict).toMatchObject({
      message:
        "caliper is fixed to post-74 (Post mount, 74 mm) of its adapter. adapter is fixed to post-74 (Post mount, 74 mm), and fork offers it.",
    });
  });

  it("is mended by an adapter from the library", () => {
    const text = `part brake-adapter plate "Plate" { sits-on: flat-70; offers: flat-34; rotor-change: 0 mm }
${mounted("brake-mount: flat-70", caliper("mount: flat-34"))}`;
    const [mend] = repaired(text, code);
    expect(mend?.title).toBe("Add Plate (plate) as front-brake.adapter");
    expect(outcome(mend?.text ?? "", code)).toBe("holds");
  });
});

describe("lever and brake", () => {
  const brake = (lever: string, caliper: string, kind = "caliper"): string =>
    front({ "front-brake.lever": part("brake-lever", lever), "front-brake.caliper": part(kind, caliper) });
  const oil = "brake-actuation: hydraulic";
  const wire = "brake-actuation: cable";

  it.each([
    [oil, oil, "holds"],
    [wire, wire, "holds"],
    [oil, wire, "fails"],
    [wire, oil, "fails"],
    ["hand: left", oil, "unknown"],
    [oil, "mount: post-74", "unknown"],
  ])("%s with %s: %s", (lever, caliper, expected) => {
    expect(outcome(brake(lever, caliper), "brake/actuation")).toBe(expected);
  });

  it("says what moves which, and finds it once", () => {
    const text = brake(`${wire}; brake-pull: long`, `${oil}; hydraulic-family: valley; brake-fluid: valley-oil`);
    expect(finding(text, "brake/actuation").message).toBe(
      "lever pulls a cable, but caliper is moved by fluid: fit a lever for fluid, or another brake.",
    );
    for (const code of ["brake/hydraulic-family", "brake/fluid", "brake/cable-pull"]) {
      expect(outcome(text, code), code).toBe("notApplicable");
    }
    const other = brake(
      `${oil}; hydraulic-family: valley; brake-fluid: valley-oil`,
      `${wire}; brake-pull: long; hydraulic-family: none`,
    );
    for (const code of ["brake/hydraulic-family", "brake/fluid", "brake/cable-pull"]) {
      expect(outcome(other, code), code).toBe("notApplicable");
    }
  });

  it.each([
    ["hydraulic-family: valley", "hydraulic-family: valley", "holds"],
    ["hydraulic-family: valley", "hydraulic-family: ridge", "fails"],
    ["hand: left", "hydraulic-family: ridge", "unknown"],
    ["hydraulic-family: valley", "mount: post-74", "unknown"],
  ])("lever %s, caliper %s: %s", (lever, caliper, expected) => {
    expect(outcome(brake(`${oil}; ${lever}`, `${oil}; ${caliper}`), "brake/hydraulic-family")).toBe(expected);
  });

  it.each([
    ["DOT-4", "DOT-4", "holds", undefined],
    ["valley-oil", "valley-oil", "holds", undefined],
    ["DOT-4", "DOT-5.1", "fails", "warning"],
    ["valley-oil", "ridge-oil", "fails", "error"],
    ["DOT-4", "valley-oil", "fails", "error"],
    ["valley-oil", "DOT-5.1", "fails", "error"],
  ])("%s in the lever and %s in the caliper: %s %s", (lever, caliper, expected, severity) => {
    const text = brake(
      `${oil}; brake-fluid: ${lever}; hydraulic-family: valley`,
      `${oil}; brake-fluid: ${caliper}; hydraulic-family: valley`,
    );
    expect(outcome(text, "brake/fluid")).toBe(expected);
    const [found] = checkText(text).of("brake/fluid");
    expect(found?.severity).toBe(severity);
    if (found) {
      expect(found.message).toContain(lever);
      expect(found.message).toContain(caliper);
      expect(found.caution).toContain("never mixed");
      expect(found.repairs).toEqual([
        { kind: "swap-part", slot: "front-brake.lever" },
        { kind: "swap-part", slot: "front-brake.caliper" },
      ]);
    }
  });

  it("a lever of another family and fluid is one finding, which names both", () => {
    const text = brake(
      `${oil}; brake-fluid: DOT-4; hydraulic-family: valley`,
      `${oil}; brake-fluid: valley-oil; hydraulic-family: ridge`,
    );
    expect(finding(text, "brake/hydraulic-family").message).toBe(
      "lever is of valley with DOT-4 (DOT 4), but caliper is made for ridge with valley-oil: neither volumes nor fluids agree. Fit a lever and a brake that are made to be joined.",
    );
    expect(outcome(text, "brake/fluid")).toBe("notApplicable");
  });

  it("fluids are asked about where no family is stated", () => {
    const text = brake(`${oil}; brake-fluid: DOT-4`, `${oil}; brake-fluid: valley-oil`);
    expect(outcome(text, "brake/fluid")).toBe("fails");
    expect(outcome(text, "brake/hydraulic-family")).toBe("unknown");
  });

  it.each([
    ["short", "short", "holds", undefined, ""],
    ["road", "road", "holds", undefined, ""],
    ["long", "long", "holds", undefined, ""],
    ["short", "long", "fails", "error", "comes to the bar"],
    ["road", "long", "fails", "error", "comes to the bar"],
    ["long", "short", "fails", "error", "far more force"],
    ["long", "road", "fails", "error", "far more force"],
    ["short", "road", "fails", "warning", "comes to the bar"],
    ["road", "short", "fails", "warning", "far more force"],
  ])("%s pull at a brake for %s: %s %s", (lever, caliper, expected, severity, effect) => {
    const text = brake(`${wire}; brake-pull: ${lever}`, `${wire}; brake-pull: ${caliper}`, "rim-brake");
    expect(outcome(text, "brake/cable-pull")).toBe(expected);
    const [found] = checkText(text).of("brake/cable-pull");
    expect(found?.severity).toBe(severity);
    if (found) expect(found.message).toContain(effect);
  });

  it("cannot tell without the pull of both", () => {
    expect(checkText(brake(wire, wire)).missing("brake/cable-pull")).toEqual([
      "front-brake.lever.brake-pull",
      "front-brake.caliper.brake-pull",
    ]);
    expect(outcome(brake(`${wire}; brake-pull: none`, `${wire}; brake-pull: long`), "brake/cable-pull")).toBe(
      "notApplicable",
    );
  });

  it.each([
    ["drum-brake: yes; brake-pull: long", "holds"],
    ["drum-brake: yes; brake-pull: short", "fails"],
    ["drum-brake: yes", "unknown"],
    ["drum-brake: yes; brake-pull: none", "notApplicable"],
    ["drum-brake: no; brake-pull: short", "notApplicable"],
    // A hub that says how much cable its brake needs has left out that it holds one.
    ["brake-pull: short", "unknown"],
    [undefined, "unknown"],
    ["none", "notApplicable"],
  ])("a lever of long pull without a brake but in the hub, %s: %s", (hub, outcome) => {
    const text = front({
      "front-brake.lever": part("brake-lever", `${wire}; brake-pull: long`),
      "front-brake.caliper": "none",
      "front-wheel.hub": hub === undefined || hub === "none" ? hub : part("hub", hub),
    });
    expect(checkText(text).instance("brake/cable-pull", "front")).toBe(outcome);
    const [found] = checkText(text).of("brake/cable-pull");
    if (outcome !== "fails") return;
    expect(found?.message).toMatch(/lever has long pull, but hub needs short pull/);
    expect(found?.repairs.map((repair) => "slot" in repair && repair.slot)).toEqual([
      "front-brake.lever",
      "front-wheel.hub",
    ]);
  });

  it.each(["brake/cable-pull", "brake/actuation"])("%s names lever and hub where neither is known", (code) => {
    const open = front({ "front-brake.lever": undefined, "front-brake.caliper": "none", "front-wheel.hub": undefined });
    expect(checkText(open).missing(code)).toEqual(["front-brake.lever", "front-wheel.hub"]);
    // What is missing of the lever alone is not asked of one that has it.
    const lever = part("brake-lever", `${wire}; brake-pull: long`);
    const hub = { "front-brake.lever": lever, "front-brake.caliper": "none", "front-wheel.hub": undefined } as const;
    expect(checkText(front(hub)).missing(code)).toEqual(["front-wheel.hub"]);
    const known = { "front-wheel.hub": part("hub", "drum-brake: yes; brake-pull: short") };
    expect(checkText(front({ ...hub, "front-brake.lever": undefined, ...known })).missing(code)).toEqual([
      "front-brake.lever",
    ]);
    expect(checkText(front({ ...hub, "front-brake.lever": "none" })).instance(code, "front")).toBe("notApplicable");
  });

  it("a lever that pulls no cable is asked about no pull, whatever the hub", () => {
    const text = front({
      "front-brake.lever": part("brake-lever", `${wire}; brake-pull: none`),
      "front-brake.caliper": "none",
      "front-wheel.hub": undefined,
    });
    expect(checkText(text).instance("brake/cable-pull", "front")).toBe("notApplicable");
  });

  it.each([
    ["hydraulic", "drum-brake: yes; brake-pull: short", "fails"],
    ["rod", "drum-brake: yes; brake-pull: short", "fails"],
    ["cable", "drum-brake: yes; brake-pull: short", "holds"],
    ["none", "drum-brake: yes; brake-pull: short", "notApplicable"],
    [undefined, "drum-brake: yes; brake-pull: short", "unknown"],
    ["hydraulic", "drum-brake: yes", "unknown"],
    ["hydraulic", "drum-brake: yes; brake-pull: none", "notApplicable"],
    ["hydraulic", "brake-pull: short", "unknown"],
    ["hydraulic", "drum-brake: no; brake-pull: short", "notApplicable"],
    ["hydraulic", undefined, "unknown"],
    ["hydraulic", "none", "notApplicable"],
  ])("what moves a lever (%s) has to move the brake in the hub, %s: %s", (lever, hub, outcome) => {
    const text = front({
      "front-brake.lever": part("brake-lever", lever === undefined ? "" : `brake-actuation: ${lever}`),
      "front-brake.caliper": "none",
      "front-wheel.hub": hub === undefined || hub === "none" ? hub : part("hub", hub),
    });
    expect(checkText(text).instance("brake/actuation", "front")).toBe(outcome);
    const [found] = checkText(text).of("brake/actuation");
    if (outcome === "fails") expect(found?.message).toMatch(/but the brake in hub is moved by a cable: fit a lever/);
  });

  it("says which pulls", () => {
    expect(finding(brake(`${wire}; brake-pull: short`, `${wire}; brake-pull: long`), "brake/cable-pull").message).toBe(
      "lever has short pull, but caliper needs long pull: the lever comes to the bar before the brake is on. Fit a lever of long pull, or a brake for the lever.",
    );
  });
});

describe("pads", () => {
  const padded = (pads: string, caliper: string, rotor: string, kind = "caliper"): string =>
    front({
      "front-brake.caliper": part(kind, caliper),
      "front-brake.rotor": kind === "caliper" ? part("rotor", rotor) : "none",
      "front-brake.pads": part("brake-pads", pads),
    });

  it("have the caliper's shape", () => {
    expect(outcome(padded("pad-shape: kidney", "pad-shape: kidney", "thickness: 1.8 mm"), "brake/pad")).toBe("holds");
    const text = padded("pad-shape: kidney", "pad-shape: wedge", "thickness: 1.8 mm");
    expect(finding(text, "brake/pad")).toMatchObject({ path: "front-brake.pads", severity: "error" });
    expect(finding(text, "brake/pad").message).toContain("has the shape kidney, but caliper takes wedge");
    expect(outcome(padded("compound: resin", "pad-shape: wedge", "thickness: 1.8 mm"), "brake/pad")).toBe("unknown");
    expect(outcome(padded("pad-shape: kidney", "arms: direct-pull", "", "rim-brake"), "brake/pad")).toBe(
      "notApplicable",
    );
  });

  const code = "brake/pad-compound";

  it.each([
    ["compound: resin", "pad-compounds: resin, sintered", "pad-compounds: resin", "holds"],
    ["compound: sintered", "pad-compounds: resin, sintered", "pad-compounds: resin", "fails"],
    ["compound: sintered", "pad-compounds: resin", "pad-compounds: resin, sintered", "fails"],
    ["compound: sintered", "mount: post-74", "pad-compounds: resin", "fails"],
    ["compound: sintered", "mount: post-74", "pad-compounds: sintered", "unknown"],
    ["compound: sintered", "pad-compounds: sintered", "thickness: 1.8 mm", "unknown"],
    ["compound: rubber", "pad-compounds: resin", "pad-compounds: resin", "fails"],
    ["compound: resin", "pad-compounds: none", "pad-compounds: none", "notApplicable"],
    ["compound: resin", "pad-compounds: none", "pad-compounds: resin", "holds"],
  ])("%s, caliper %s, rotor %s: %s", (pads, caliper, rotor, expected) => {
    expect(outcome(padded(pads, caliper, rotor), code)).toBe(expected);
  });

  it("offer another rotor where the rotor refuses, and another caliper where only that does", () => {
    const [pads, rotor, caliper] = ["pads", "rotor", "caliper"].map((name) => ({
      kind: "swap-part",
      slot: `front-brake.${name}`,
    }));
    const soft = finding(padded("compound: sintered", "pad-compounds: resin, sintered", "pad-compounds: resin"), code);
    expect(soft.repairs).toEqual([pads, rotor]);
    expect(soft.message).toBe("pads are sintered, but rotor allows resin only: fit pads of such a compound.");
    const cool = finding(
      padded("compound: sintered", "pad-compounds: resin, semi-metallic", "pad-compounds: resin, sintered"),
      code,
    );
    expect(cool.repairs).toEqual([pads, caliper]);
    expect(cool.message).toContain("caliper allows resin or semi-metallic only");
    const neither = finding(padded("compound: sintered", "pad-compounds: resin", "pad-compounds: resin"), code);
    expect(neither.message).toContain("rotor allows resin and caliper allows resin only");
  });

  it("are rubber at the rim and nothing else", () => {
    expect(outcome(padded("compound: rubber", "arms: direct-pull", "", "rim-brake"), code)).toBe("holds");
    expect(finding(padded("compound: resin", "arms: direct-pull", "", "rim-brake"), code).message).toContain(
      "brakes the rim: fit rubber blocks",
    );
    expect(finding(padded("compound: rubber", "pad-compounds: resin", "pad-compounds: resin"), code).message).toContain(
      "brakes a rotor",
    );
  });
});
