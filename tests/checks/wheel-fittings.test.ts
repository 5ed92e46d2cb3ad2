import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
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

describe("width over the locknuts", () => {
  const code = "wheel/over-locknut";
  const hub = (facts: string, frame: string, settings = ""): string =>
    compose({ "front-wheel.hub": "none", frame: part("frame", frame), "rear-wheel.hub": part("hub", facts, settings) });

  it.each([
    [130, "holds"],
    [129, "holds"],
    [131, "holds"],
    [128.9, "fails"],
    [131.1, "fails"],
    [135, "fails"],
  ])("%d mm between dropouts of 130 mm: %s", (width, expected) => {
    expect(outcome(hub(`axle: 10x130; over-locknut-width: ${width} mm`, "rear-axle: 10x130"), code)).toBe(expected);
  });

  it("says which way the dropouts would give", () => {
    const wide = finding(hub("axle: 10x130; over-locknut-width: 135 mm", "rear-axle: 10x130"), code);
    expect(wide.message).toBe(
      "hub is 135 mm over its locknuts, but 10x130 (Rear quick release, 10 x 130 mm) of frame takes 130 mm: the dropouts would be spread by 5 mm. Fit a hub of 130 mm.",
    );
    expect(wide.repairs).toEqual([
      { kind: "swap-part", slot: "rear-wheel.hub" },
      { kind: "set-fact", slot: "rear-wheel.hub", fact: "over-locknut-width", value: "130 mm" },
    ]);
    expect(finding(hub("axle: 10x130; over-locknut-width: 126 mm", "rear-axle: 10x130"), code).message).toContain(
      "drawn together by 4 mm",
    );
  });

  it.each([
    ["a frame for two widths", "axle: 10x135; over-locknut-width: 135 mm", "rear-axle: 10x132.5", "", "holds"],
    ["a frame for two widths", "axle: 10x130; over-locknut-width: 130 mm", "rear-axle: 10x132.5", "", "holds"],
    ["a hub of another axle", "axle: 10x135; over-locknut-width: 135 mm", "rear-axle: 10x130", "", "notApplicable"],
    [
      "other end caps",
      "axle: 12x142; axle-options: 10x135; over-locknut-width: 142 mm",
      "rear-axle: 10x135",
      "axle-fitted: 10x135",
      "notApplicable",
    ],
    ["a hub that names no axle", "over-locknut-width: 142 mm", "rear-axle: 12x142", "", "holds"],
    ["a hub that names no axle", "over-locknut-width: 135 mm", "rear-axle: 12x142", "", "fails"],
    ["no width", "axle: 12x142", "rear-axle: 12x142", "", "unknown"],
    ["no axle of the frame", "axle: 12x142; over-locknut-width: 142 mm", "dropout: vertical", "", "unknown"],
  ])("with %s: %s in %s %s: %s", (_, facts, frame, settings, expected) => {
    expect(outcome(hub(facts, frame, settings), code)).toBe(expected);
  });
});

describe("the rotor's lock-ring", () => {
  const code = "wheel/rotor-tool";
  const ring = (rotor: string, hub: string): string =>
    compose({
      "rear-brake.rotor": "none",
      "front-brake.rotor": part("rotor", rotor),
      "front-wheel.hub": part("hub", hub),
    });

  it.each([
    [
      "lockring-tool: outside; greatest-axle-diameter: 12 mm",
      "axle: 20x110; end-cap-diameter: 31 mm",
      "holds",
      undefined,
    ],
    [
      "lockring-tool: inside; greatest-axle-diameter: 17 mm",
      "axle: 15x100; end-cap-diameter: 17 mm",
      "holds",
      undefined,
    ],
    [
      "lockring-tool: inside; greatest-axle-diameter: 17 mm",
      "axle: 15x100; end-cap-diameter: 17.1 mm",
      "fails",
      "error",
    ],
    ["lockring-tool: inside; greatest-axle-diameter: 17 mm", "axle: 20x110", "fails", "error"],
    ["lockring-tool: inside; greatest-axle-diameter: 17 mm", "axle: 15x100", "unknown", undefined],
    [
      "lockring-tool: inside; greatest-axle-diameter: 17 mm",
      "axle: 15x100; end-cap-diameter: none",
      "holds",
      undefined,
    ],
    // A quick-release or nutted axle has no caps that anybody could measure.
    ["lockring-tool: inside; greatest-axle-diameter: 17 mm", "axle: 9x100", "holds", undefined],
    ["lockring-tool: inside; greatest-axle-diameter: 8 mm", "axle: 9x100", "fails", "error"],
    [
      "lockring-tool: inside; greatest-axle-diameter: 17 mm",
      "axle: 9x100; axle-fastening: through",
      "unknown",
      undefined,
    ],
    [
      "lockring-tool: inside; greatest-axle-diameter: 17 mm",
      "axle: 15x100; axle-fastening: nutted",
      "holds",
      undefined,
    ],
    // By the axle alone nothing is said of wider caps: what the ring passes is asked for.
    ["lockring-tool: inside", "axle: 12x100; end-cap-diameter: 19 mm", "unknown", undefined],
    ["lockring-tool: inside", "axle: 12x100; end-cap-diameter: 12 mm", "holds", undefined],
    ["lockring-tool: inside", "axle: 12x100; end-cap-diameter: none", "holds", undefined],
    ["lockring-tool: inside", "axle: 12x100", "unknown", undefined],
    ["lockring-tool: inside", "axle: 9x100", "holds", undefined],
    ["lockring-tool: inside", "axle: 15x110", "fails", "warning"],
    ["lockring-tool: inside", "wheel: front", "unknown", undefined],
    ["mount: six-bolt-44", "axle: 15x110", "notApplicable", undefined],
  ])("%s with %s: %s %s", (rotor, hub, expected, grave) => {
    const text = ring(rotor, hub);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("names the figure of the rotor that it asks for", () => {
    const text = ring("lockring-tool: inside", "axle: 12x100; end-cap-diameter: 19 mm");
    expect(checkText(text).missing(code)).toEqual(["front-brake.rotor.greatest-axle-diameter"]);
  });

  it("names both diameters", () => {
    expect(
      finding(
        ring("lockring-tool: inside; greatest-axle-diameter: 17 mm", "axle: 20x110; end-cap-diameter: 25 mm"),
        code,
      ).message,
    ).toBe(
      "hub is 25 mm at the axle's end, but the inside lock-ring of rotor passes 17 mm at most: use a lock-ring that is turned from outside.",
    );
    expect(finding(ring("lockring-tool: inside", "axle: 20x110"), code).message).toContain(
      "thicker than 12 mm; this one is 20 mm",
    );
  });
});

describe("skewers and tabs", () => {
  const skewered = (skewer: string, frame: string): string =>
    compose({
      "front-wheel.axle": "none",
      frame: part("frame", frame),
      "rear-wheel.axle": part("quick-release", skewer),
    });

  it.each([
    ["wheel: rear; greatest-span: 146 mm", "rear-axle: 10x135; dropout: vertical", "holds", undefined],
    ["wheel: rear; greatest-span: 145.9 mm", "rear-axle: 10x135; dropout: vertical", "fails", "warning"],
    ["wheel: rear; greatest-span: 135 mm", "rear-axle: 10x135; dropout: vertical", "fails", "warning"],
    ["wheel: rear; greatest-span: 134.9 mm", "rear-axle: 10x135; dropout: vertical", "fails", "error"],
    ["wheel: front; greatest-span: 118 mm", "rear-axle: 10x135; dropout: vertical", "fails", "error"],
    ["wheel: front; greatest-span: 150 mm", "rear-axle: 10x135; dropout: vertical", "fails", "warning"],
    ["wheel: front", "rear-axle: 10x135; dropout: vertical", "fails", "error"],
    [
      "wheel: rear; greatest-span: 150 mm; steel-faces: yes",
      "rear-axle: 10x135; dropout: horizontal",
      "holds",
      undefined,
    ],
    ["wheel: rear; greatest-span: 150 mm; steel-faces: no", "rear-axle: 10x135; dropout: horizontal", "fails", "error"],
    ["wheel: rear; greatest-span: 150 mm; steel-faces: no", "rear-axle: 10x135; dropout: track-end", "fails", "error"],
    ["wheel: rear; greatest-span: 150 mm; steel-faces: no", "rear-axle: 10x135; dropout: vertical", "holds", undefined],
    ["wheel: rear; greatest-span: 150 mm", "rear-axle: 10x135; dropout: track-end", "unknown", undefined],
    ["wheel: rear", "rear-axle: 10x135; dropout: vertical", "unknown", undefined],
    ["wheel: rear; greatest-span: none", "rear-axle: 10x135; dropout: vertical", "holds", undefined],
  ])("%s in %s: %s %s", (skewer, frame, expected, grave) => {
    const text = skewered(skewer, frame);
    expect(outcome(text, "wheel/skewer")).toBe(expected);
    expect(severity(text, "wheel/skewer")).toBe(grave);
  });

  it("names the spans", () => {
    expect(
      finding(skewered("wheel: rear; greatest-span: 120 mm", "rear-axle: 10x135; dropout: vertical"), "wheel/skewer")
        .message,
    ).toBe(
      "axle spans 120 mm at most, but frame has 135 mm between its dropouts, and 146 mm with their thickness: fit a longer skewer.",
    );
    expect(finding(skewered("wheel: front", "rear-axle: 10x135; dropout: vertical"), "wheel/skewer").message).toBe(
      "axle is made for the front wheel, and the build fits it at the rear: fit a rear skewer.",
    );
  });

  it("asks nuts and thru axles nothing", () => {
    const nuts = compose({ "front-wheel.axle": "none", "rear-wheel.axle": part("axle-nuts", "spanner: 15 mm") });
    expect(outcome(nuts, "wheel/skewer")).toBe("notApplicable");
  });

  it.each([
    ["quick-release", "retention-tabs: yes", "holds"],
    ["quick-release", "retention-tabs: no", "fails"],
    ["axle-nuts", "retention-tabs: no", "fails"],
    ["thru-axle", "retention-tabs: no", "notApplicable"],
    ["quick-release", "axle: 9x100", "unknown"],
    ["quick-release", "retention-tabs: none", "notApplicable"],
  ])("%s in a fork with %s: %s", (kind, fork, expected) => {
    const text = compose({ fork: part("fork", fork), "front-wheel.axle": part(kind, "mass: 60 g") });
    expect(outcome(text, "wheel/retention-tabs")).toBe(expected);
    expect(severity(text, "wheel/retention-tabs")).toBe(expected === "fails" ? "warning" : undefined);
  });
});

describe("rim brakes on rims, and gears in dropouts", () => {
  const code = "wheel/rim-brake-track";
  const braked = (brake: Pieces[string], rim: string, fork = "brake-mount: rim-bosses"): string =>
    compose({
      "rear-brake.caliper": "none",
      fork: part("fork", fork),
      "front-brake.caliper": brake,
      "front-wheel.rim": part("rim", rim),
    });
  const arms = part("rim-brake", "mount: rim-bosses");

  it.each([
    [arms, "brake-track: yes", undefined, "holds"],
    [arms, "brake-track: no", undefined, "fails"],
    [arms, "brake-track: yes; forbids: rim-brake", undefined, "fails"],
    [arms, "inner-width: 19 mm; forbids: rim-brake", undefined, "fails"],
    [arms, "inner-width: 19 mm", undefined, "unknown"],
    [part("caliper", "mount: post-74"), "brake-track: no", undefined, "notApplicable"],
    ["none", "brake-track: no", undefined, "notApplicable"],
    // A rim brake where none can be fixed is found by its mount, once.
    [arms, "brake-track: no", "brake-mount: post-74", "notApplicable"],
  ] as const)("%j on %s with %s: %s", (brake, rim, fork, expected) => {
    expect(outcome(braked(brake, rim, fork), code)).toBe(expected);
  });

  it("says why", () => {
    expect(finding(braked(arms, "brake-track: no; forbids: rim-brake"), code).message).toBe(
      "caliper brakes the rim, but rim has no track for it: fit a rim with a brake track.",
    );
    expect(finding(braked(arms, "brake-track: yes; forbids: rim-brake"), code).message).toContain(
      "must not carry a rim brake by its maker's word",
    );
    expect(finding(braked(arms, "brake-track: no"), code).caution).toContain("bursts");
  });

  it.each([
    ["gears: 8", "dropout: vertical", "holds"],
    ["gears: 8", "dropout: vertical; forbids: gear-hub", "fails"],
    ["gears: none", "dropout: vertical; forbids: gear-hub", "notApplicable"],
    ["wheel: rear", "dropout: vertical; forbids: gear-hub", "notApplicable"],
    ["gears: 8", 'size: "L"', "unknown"],
  ])("a hub with %s in %s: %s", (hub, frame, expected) => {
    const text = compose({ frame: part("frame", frame), "rear-wheel.hub": part("hub", hub) });
    expect(outcome(text, "wheel/hub-dropout")).toBe(expected);
  });
});

describe("dynamo and lamps", () => {
  const lit = (lamp: string, pieces: Pieces = {}): string =>
    compose({
      "lighting.front-lamp": part("lamp", lamp),
      "front-wheel.hub": part("hub", "dynamo-voltage: 6 V; dynamo-power: 3 W; connector: tab-4.8"),
      "rear-wheel.hub": part("hub", "wheel: rear"),
      ...pieces,
    });
  const bare = part("hub", "wheel: front");

  it.each([
    ["power: dynamo; voltage: 6 V; connector: tab-4.8", {}, "holds", undefined],
    ["power: dynamo; voltage: 5 to 7.5 V; connector: tab-4.8", {}, "holds", undefined],
    ["power: dynamo; voltage: 6.1 to 12 V; connector: tab-4.8", {}, "fails", "error"],
    ["power: dynamo; voltage: 6 V; connector: tab-2.8", {}, "fails", "warning"],
    [
      "power: dynamo; voltage: 6 V; connector: tab-2.8",
      { "lighting.wiring": part("wire", "mass: 20 g") },
      "holds",
      undefined,
    ],
    ["power: battery", { "front-wheel.hub": bare }, "notApplicable", undefined],
    ["power: dynamo; voltage: 6 V", { "front-wheel.hub": bare }, "fails", "error"],
    ["power: dynamo; voltage: 6 V", { "front-wheel.hub": undefined }, "unknown", undefined],
    ["power: dynamo; connector: tab-4.8", {}, "unknown", undefined],
    [
      "power: dynamo; voltage: 6 V; connector: tab-2.8",
      { "front-wheel.hub": bare, "rear-wheel.hub": part("hub", "dynamo-voltage: 6 V; connector: tab-2.8") },
      "holds",
      undefined,
    ],
    [
      "power: dynamo; voltage: 6 V; connector: tab-2.8",
      { "lighting.dynamo": part("dynamo", "dynamo-voltage: 12 V; connector: tab-2.8") },
      "fails",
      "error",
    ],
  ] as const)("%s with %j: %s %s", (lamp, pieces, expected, grave) => {
    const text = lit(lamp, pieces);
    expect(outcome(text, "wheel/dynamo-lamp")).toBe(expected);
    expect(severity(text, "wheel/dynamo-lamp")).toBe(grave);
  });

  it("names both voltages, or that there is no dynamo", () => {
    expect(finding(lit("power: dynamo; voltage: 12 V; connector: tab-4.8"), "wheel/dynamo-lamp").message).toBe(
      "hub gives 6 V, but front-lamp bears 12 V: fit a lamp for that dynamo.",
    );
    const none = finding(lit("power: dynamo; voltage: 6 V", { "front-wheel.hub": bare }), "wheel/dynamo-lamp");
    expect(none.message).toContain("the build has none, neither in a hub nor beside a wheel");
    expect(none.repairs).toContainEqual({ kind: "insert-part", slot: "lighting.dynamo" });
    expect(finding(lit("power: dynamo; voltage: 6 V; connector: tab-2.8"), "wheel/dynamo-lamp").message).toContain(
      "has the connector tab-2.8 (Flat tab, 2.8 mm), but hub has tab-4.8 (Flat tab, 4.8 mm)",
    );
  });

  it("asks the rear lamp for its voltage and not for its plug", () => {
    const text = compose({
      "lighting.rear-lamp": part("lamp", "power: dynamo; voltage: 6 V; connector: tab-2.8"),
      "front-wheel.hub": part("hub", "dynamo-voltage: 6 V; connector: tab-4.8"),
    });
    expect(checkText(text).instance("wheel/dynamo-lamp", "rear")).toBe("holds");
    expect(checkText(text).instance("wheel/dynamo-lamp", "front")).toBe("notApplicable");
  });

  it.each([
    // 6 V × (0.4 A + 0.1 A) = 3 W.
    [0.4, 0.1, "holds"],
    [0.4, 0.11, "fails"],
    [0.5, undefined, "holds"],
    [0.51, undefined, "fails"],
  ])("%d A and %s A on 3 W: %s", (first, second, expected) => {
    const text = lit(`power: dynamo; voltage: 6 V; current: ${first} A; connector: tab-4.8`, {
      "lighting.rear-lamp":
        second === undefined ? undefined : part("lamp", `power: dynamo; voltage: 6 V; current: ${second} A`),
    });
    expect(outcome(text, "wheel/dynamo-load")).toBe(expected);
  });

  it("says the power drawn and given", () => {
    const text = lit("power: dynamo; current: 0.6 A", {
      "lighting.rear-lamp": part("lamp", "power: battery; current: 1 A"),
    });
    expect(finding(text, "wheel/dynamo-load").message).toBe(
      "front-lamp draws 3.6 W at 6 V, but hub gives 3 W: fit lamps that draw less, or a stronger dynamo.",
    );
    expect(severity(text, "wheel/dynamo-load")).toBe("warning");
  });

  it.each([
    ["no current", "power: dynamo", {}, "unknown"],
    [
      "another lamp of unknown current",
      "power: dynamo; current: 0.2 A",
      { "lighting.rear-lamp": part("lamp", "power: dynamo") },
      "unknown",
    ],
    [
      "another lamp of unknown feed",
      "power: dynamo; current: 0.2 A",
      { "lighting.rear-lamp": part("lamp", "voltage: 6 V") },
      "unknown",
    ],
    [
      "too much already",
      "power: dynamo; current: 0.6 A",
      { "lighting.rear-lamp": part("lamp", "power: dynamo") },
      "fails",
    ],
    [
      "no power of the dynamo",
      "power: dynamo; current: 0.2 A",
      { "front-wheel.hub": part("hub", "dynamo-voltage: 6 V; dynamo-power: none") },
      "notApplicable",
    ],
    ["batteries", "power: battery; current: 0.2 A", {}, "notApplicable"],
    ["no dynamo", "power: dynamo; current: 0.2 A", { "front-wheel.hub": bare }, "notApplicable"],
  ] as const)("with %s", (_, lamp, pieces, expected) => {
    expect(outcome(lit(lamp, pieces), "wheel/dynamo-load")).toBe(expected);
  });
});
