import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

/** A build with these pieces, and nothing at the other wheel. */
function at(end: "front" | "rear", pieces: Readonly<Record<string, Pieces[string]>>): string {
  const other = end === "front" ? "rear-wheel" : "front-wheel";
  return compose({
    [`${other}.hub`]: "none",
    [`${other}.axle`]: "none",
    [`${other}.rim`]: "none",
    [`${other}.tyre`]: "none",
    [`${other}.tube`]: "none",
    ...pieces,
  });
}

function outcome(text: string, code: string): string {
  return checkText(text).outcome(code);
}

function message(text: string, code: string): string {
  const found = checkText(text).of(code);
  expect(found).toHaveLength(1);
  return found[0]?.message ?? "";
}

function related(text: string, code: string): readonly string[] {
  return checkText(text)
    .of(code)
    .flatMap((finding) => finding.related.map(({ message: said }) => said));
}

describe("the hub's axle", () => {
  const rear = (hub: string, frame: string, settings = ""): string =>
    at("rear", { frame: part("frame", frame), "rear-wheel.hub": part("hub", hub, settings) });

  it.each([
    ["the same axle", "axle: 12x148", "rear-axle: 12x148", ""],
    ["the same by another name", "axle: 148x12", "rear-axle: 12x148", ""],
    ["a frame made for two widths", "axle: 10x130", "rear-axle: 10x132.5", ""],
    ["end caps that the build fits", "axle: 12x142; axle-options: 10x135", "rear-axle: 10x135", "axle-fitted: 10x135"],
    ["end caps of a hub that states no axle", "gears: none", "rear-axle: 10x135", "axle-fitted: 10x135"],
  ])("holds with %s", (_, hub, frame, settings) => {
    expect(outcome(rear(hub, frame, settings), "wheel/axle")).toBe("holds");
  });

  it("fails with another width, as an error that names both", () => {
    const text = rear("axle: 12x142", "rear-axle: 12x148");
    expect(message(text, "wheel/axle")).toBe(
      "hub has the axle 12x142 (Rear thru axle, 12 x 142 mm), but frame takes 12x148 (Rear thru axle, 12 x 148 mm): fit a hub, or end caps, for that axle.",
    );
    expect(related(text, "wheel/axle")).toEqual(["hub: axle 12x142", "frame: rear-axle 12x148"]);
    const [finding] = checkText(text).of("wheel/axle");
    expect(finding).toMatchObject({ severity: "error", path: "rear-wheel.hub" });
    expect(finding?.caution).toContain("come out while riding");
    expect(finding?.repairs).toEqual([
      { kind: "swap-part", slot: "rear-wheel.hub" },
      { kind: "swap-part", slot: "frame" },
    ]);
  });

  it("asks for other end caps where the hub has them, as a warning, and mends it by saying so", () => {
    const text = rear("axle: 12x142; axle-options: 10x135, 12x148", "rear-axle: 10x135");
    expect(checkText(text).of("wheel/axle")[0]).toMatchObject({ severity: "warning" });
    expect(message(text, "wheel/axle")).toContain("end caps for 12x142");
    expect(message(text, "wheel/axle")).toContain("state axle-fitted: 10x135");
    expect(related(text, "wheel/axle")).toEqual([
      "hub: axle 12x142",
      "frame: rear-axle 10x135",
      "hub: axle-options 10x135, 12x148",
    ]);
    const [mend] = repaired(text, "wheel/axle");
    expect(mend?.title).toBe("Fit the end caps for 10x135 (rear-wheel.hub.axle-fitted: 10x135)");
    expect(outcome(mend?.text ?? "", "wheel/axle")).toBe("holds");
  });

  it("fails as an error where the build chose the wrong ones", () => {
    const text = rear("axle: 10x135; axle-options: 12x142", "rear-axle: 10x135", "axle-fitted: 12x142");
    expect(checkText(text).of("wheel/axle")[0]).toMatchObject({ severity: "error" });
    expect(repaired(text, "wheel/axle")[0]?.title).toBe(
      "Fit the end caps for 10x135 (rear-wheel.hub.axle-fitted: 10x135)",
    );
  });

  it("fails where the hub does not come for what the build fits, even if the frame takes it", () => {
    const text = rear("axle: 12x142; axle-options: 12x148", "rear-axle: 10x135", "axle-fitted: 10x135");
    expect(message(text, "wheel/axle")).toContain("it comes for 12x142 (Rear thru axle, 12 x 142 mm) or 12x148");
    expect(related(text, "wheel/axle")).toEqual([
      "Example: axle-fitted 10x135",
      "hub: axle 12x142",
      "hub: axle-options 12x148",
    ]);
  });

  it.each([
    ["the hub's axle", rear("gears: none", "rear-axle: 12x148"), "rear-wheel.hub.axle"],
    ["what the frame takes", rear("axle: 12x148", 'size: "L"'), "frame.rear-axle"],
  ])("cannot tell without %s", (_, text, missing) => {
    expect(outcome(text, "wheel/axle")).toBe("unknown");
    expect(checkText(text).missing("wheel/axle")).toContain(missing);
  });

  it("is asked of either end apart", () => {
    const text = compose({
      frame: part("frame", "rear-axle: 12x148"),
      fork: part("fork", "axle: 15x110"),
      "front-wheel.hub": part("hub", "axle: 15x100"),
      "rear-wheel.hub": part("hub", "axle: 12x148"),
    });
    expect(checkText(text).instance("wheel/axle", "front")).toBe("fails");
    expect(checkText(text).instance("wheel/axle", "rear")).toBe("holds");
  });
});

describe("what goes through the hub", () => {
  const front = (axle: string, fork: string, hub: Pieces[string] = "none"): string =>
    at("front", { fork: part("fork", fork), "front-wheel.axle": part("thru-axle", axle), "front-wheel.hub": hub });

  it("a thru axle of the fork's size holds, another one fails", () => {
    expect(outcome(front("axle: 15x110", "axle: 15x110"), "wheel/thru-axle")).toBe("holds");
    const text = front("axle: 15x100", "axle: 15x110", part("hub", "axle: 15x110"));
    expect(message(text, "wheel/thru-axle")).toContain("thru axle of 15x100");
    expect(outcome(text, "wheel/axle")).toBe("holds");
  });

  it("a hub that does not fit is found by itself, not by the axle that goes with it", () => {
    const text = front(
      "axle: 15x100; axle-length: 140 mm; axle-thread-pitch: 1.5 mm; axle-seat: flat",
      "axle: 15x110; axle-length: 158 mm; axle-thread-pitch: 1.75 mm; axle-seat: conical",
      part("hub", "axle: 15x100"),
    );
    expect(outcome(text, "wheel/axle")).toBe("fails");
    for (const code of ["wheel/thru-axle", "wheel/axle-length", "wheel/axle-thread", "wheel/axle-seat"]) {
      expect(outcome(text, code), code).toBe("notApplicable");
    }
  });

  it("an axle that goes with neither is found", () => {
    const text = front("axle: 12x100", "axle: 15x110", part("hub", "axle: 15x100"));
    expect(outcome(text, "wheel/axle")).toBe("fails");
    expect(outcome(text, "wheel/thru-axle")).toBe("fails");
  });

  it("skewers and nuts have no such size", () => {
    const text = at("front", {
      fork: part("fork", "axle: 9x100"),
      "front-wheel.axle": part("quick-release", "wheel: front"),
    });
    for (const code of ["wheel/thru-axle", "wheel/axle-length", "wheel/axle-thread", "wheel/axle-seat"]) {
      expect(outcome(text, code), code).toBe("notApplicable");
    }
  });

  it.each([
    ["1.5 mm", "1.5 mm", "holds"],
    ["1.5 mm", "1.505 mm", "holds"],
    ["1.5 mm", "1.52 mm", "fails"],
    ["1 mm", "1.5 mm", "fails"],
    ["1.75 mm", "1.5 mm", "fails"],
  ])("a pitch of %s in one of %s: %s", (has, wants, expected) => {
    expect(outcome(front(`axle-thread-pitch: ${has}`, `axle-thread-pitch: ${wants}`), "wheel/axle-thread")).toBe(
      expected,
    );
  });

  it("names both pitches", () => {
    const text = front("axle-thread-pitch: 1 mm", "axle-thread-pitch: 1.5 mm");
    expect(message(text, "wheel/axle-thread")).toBe(
      "axle has a thread of 1 mm pitch, but fork takes one of 1.5 mm: fit an axle with a pitch of 1.5 mm.",
    );
    expect(checkText(text).of("wheel/axle-thread")[0]?.repairs).toEqual([
      { kind: "swap-part", slot: "front-wheel.axle" },
      { kind: "swap-part", slot: "fork" },
    ]);
  });

  it.each([
    ["flat", "flat", "holds"],
    ["conical", "conical", "holds"],
    ["insert", "insert", "holds"],
    ["flat", "conical", "fails"],
    ["conical", "flat", "fails"],
    ["flat", "insert", "fails"],
  ])("a %s head in a %s seat: %s", (has, wants, expected) => {
    expect(outcome(front(`axle-seat: ${has}`, `axle-seat: ${wants}`), "wheel/axle-seat")).toBe(expected);
  });

  it("names both seats", () => {
    expect(message(front("axle-seat: flat", "axle-seat: conical"), "wheel/axle-seat")).toBe(
      "axle is made for a flat seat, but fork has a conical seat: fit an axle for a conical seat.",
    );
  });

  it.each([
    [158, "holds", undefined],
    [157, "holds", undefined],
    [159, "holds", undefined],
    [156.9, "fails", "error"],
    [150, "fails", "error"],
    [159.1, "fails", "warning"],
    [172.9, "fails", "warning"],
    [173, "fails", "error"],
  ])("an axle of %d mm where 158 mm are asked for: %s %s", (length, expected, severity) => {
    const text = front(`axle: 15x110; axle-length: ${length} mm`, "axle: 15x110; axle-length: 158 mm");
    expect(outcome(text, "wheel/axle-length")).toBe(expected);
    expect(checkText(text).of("wheel/axle-length")[0]?.severity).toBe(severity);
  });

  it("says by how much, and what it does", () => {
    const long = (length: number): string => front(`axle-length: ${length} mm`, "axle-length: 120 mm");
    expect(message(long(112), "wheel/axle-length")).toBe(
      "axle is 112 mm long under its head, but fork takes 120 mm: 8 mm of its thread is missing in the dropout. Fit an axle of 120 mm.",
    );
    expect(message(long(125), "wheel/axle-length")).toContain(
      "5 mm too long, it bottoms in a closed thread, or stands out.",
    );
    // Of an unknown axle the thinnest is taken: 12 mm.
    expect(message(long(132), "wheel/axle-length")).toContain("12 mm too long, it stands out of the dropout.");
  });

  it("cannot tell without the fork's figures", () => {
    const text = front("axle: 15x110; axle-length: 158 mm; axle-thread-pitch: 1.5 mm; axle-seat: flat", "axle: 15x110");
    expect(checkText(text).missing("wheel/axle-length")).toEqual(["fork.axle-length"]);
    expect(checkText(text).missing("wheel/axle-thread")).toEqual(["fork.axle-thread-pitch"]);
    expect(checkText(text).missing("wheel/axle-seat")).toEqual(["fork.axle-seat"]);
  });
});

describe("what holds the wheel", () => {
  const held = (hub: string, kind: string, facts: string, settings = ""): string =>
    at("front", { "front-wheel.hub": part("hub", hub, settings), "front-wheel.axle": part(kind, facts) });
  const thru = ["thru-axle", "wheel: front"] as const;
  const skewer = ["quick-release", "wheel: front"] as const;
  const nuts = ["axle-nuts", "spanner: 15 mm"] as const;

  it.each([
    ["axle-fastening: through", thru, "holds"],
    ["axle-fastening: quick-release", skewer, "holds"],
    ["axle-fastening: nutted", nuts, "holds"],
    ["axle-fastening: bolted", nuts, "holds"],
    ["axle-fastening: through", skewer, "fails"],
    ["axle-fastening: quick-release", thru, "fails"],
    ["axle-fastening: quick-release", nuts, "fails"],
    ["axle-fastening: nutted", skewer, "fails"],
    ["axle-fastening: bolted", thru, "fails"],
    ["axle-fastening: single-sided", thru, "notApplicable"],
    ["axle-fastening: none", skewer, "notApplicable"],
    ["axle: 12x100", thru, "holds"],
    ["axle: 12x100", skewer, "fails"],
    ["axle: 9x100", skewer, "unknown"],
  ] as const)("%s with %j: %s", (hub, [kind, facts], expected) => {
    expect(outcome(held(hub, kind, facts), "wheel/axle-fastening")).toBe(expected);
  });

  it("goes by the end caps that are fitted", () => {
    const hub = "axle: 12x100; axle-options: 9x100; axle-fastening: through";
    expect(outcome(held(hub, ...skewer, "axle-fitted: 9x100"), "wheel/axle-fastening")).toBe("holds");
    expect(outcome(held(hub, ...thru, "axle-fitted: 9x100"), "wheel/axle-fastening")).toBe("fails");
  });

  it("says what is there and what belongs there", () => {
    expect(message(held("axle-fastening: through", ...skewer), "wheel/axle-fastening")).toBe(
      "hub is for a thru axle, but axle is a quick-release skewer: fit a thru axle.",
    );
    expect(message(held("axle-fastening: nutted", ...thru), "wheel/axle-fastening")).toBe(
      "hub has an axle for nuts, but axle is a thru axle: fit axle nuts.",
    );
    expect(message(held("axle-fastening: quick-release", ...nuts), "wheel/axle-fastening")).toBe(
      "hub has a hollow axle for a skewer, but axle is a pair of axle nuts: fit a quick-release skewer.",
    );
  });
});

describe("end caps and layout", () => {
  const caps = (hub: number, fork: number, more = ""): string =>
    at("front", {
      fork: part("fork", `end-cap-diameter: ${fork} mm; axle: 15x110`),
      "front-wheel.hub": part("hub", `end-cap-diameter: ${hub} mm${more}`),
    });

  it.each([
    [21, 21, "holds", undefined],
    [21.5, 21, "holds", undefined],
    [20.5, 21, "holds", undefined],
    [21.6, 21, "fails", "error"],
    [20.4, 21, "fails", "warning"],
    [31, 21, "fails", "error"],
    [21, 31, "fails", "warning"],
  ])("caps of %d mm in recesses for %d mm: %s %s", (hub, fork, expected, severity) => {
    const text = caps(hub, fork);
    expect(outcome(text, "wheel/end-caps")).toBe(expected);
    const [finding] = checkText(text).of("wheel/end-caps");
    expect(finding?.severity).toBe(severity);
    if (finding) {
      expect(finding.message).toContain(`${hub} mm`);
      expect(finding.message).toContain(`${fork} mm`);
    }
  });

  it("are not asked about where the axle does not fit", () => {
    expect(outcome(caps(31, 21, "; axle: 12x100"), "wheel/end-caps")).toBe("notApplicable");
    expect(outcome(caps(31, 21, "; axle: 15x110"), "wheel/end-caps")).toBe("fails");
  });

  const layout = (hub: string, frame: string): string =>
    compose({ frame: part("frame", `rear-axle: 12x157${frame}`), "rear-wheel.hub": part("hub", `axle: 12x157${hub}`) });

  it.each([
    ["; layout: 157-wide", "; rear-hub-layout: 157-wide", "holds"],
    ["; layout: 157-narrow", "; rear-hub-layout: 157-wide", "fails"],
    ["", "", "notApplicable"],
    ["; layout: 157-wide", "", "unknown"],
    ["", "; rear-hub-layout: 157-wide", "unknown"],
  ])("hub%s in frame%s: %s", (hub, frame, expected) => {
    expect(outcome(layout(hub, frame), "wheel/layout-variant")).toBe(expected);
  });

  it("asks the side that names no layout for it", () => {
    expect(checkText(layout("; layout: 157-wide", "")).missing("wheel/layout-variant")).toEqual([
      "frame.rear-hub-layout",
    ]);
    expect(checkText(layout("", "; rear-hub-layout: 157-wide")).missing("wheel/layout-variant")).toEqual([
      "rear-wheel.hub.layout",
    ]);
    const [missing] = checkText(layout("; layout: 157-wide", "")).row("wheel/layout-variant").missing;
    expect(missing?.what).toBe(
      "the flange layout of frame, since hub names 157-wide (157 mm, wide flanges) (frame.rear-hub-layout)",
    );
  });

  it("names both layouts", () => {
    expect(message(layout("; layout: 157-narrow", "; rear-hub-layout: 157-wide"), "wheel/layout-variant")).toBe(
      "hub has the flange layout 157-narrow (157 mm, narrow flanges), but frame is made for 157-wide (157 mm, wide flanges): fit a hub of that layout.",
    );
  });
});

describe("rotors and spokes on the hub", () => {
  const rotor = (hub: string, mount: string): string =>
    compose({
      "front-wheel.hub": part("hub", hub),
      "front-brake.rotor": part("rotor", mount),
      "rear-brake.rotor": "none",
    });

  it.each([
    ["rotor-mount: six-bolt-44", "mount: six-bolt-44", "holds"],
    ["rotor-mount: six-bolt", "mount: six-bolt-44", "holds"],
    ["rotor-mount: splined-lockring", "mount: six-bolt-44", "fails"],
    ["rotor-mount: none", "mount: six-bolt-44", "fails"],
    ["gears: none", "mount: six-bolt-44", "unknown"],
    ["rotor-mount: six-bolt-44", "diameter: 180 mm", "unknown"],
  ])("%s with %s: %s", (hub, mount, expected) => {
    expect(outcome(rotor(hub, mount), "wheel/rotor-mount")).toBe(expected);
  });

  it("leaves a rotor out where the hub takes none", () => {
    const text = rotor("rotor-mount: none", "mount: six-bolt-44");
    expect(message(text, "wheel/rotor-mount")).toContain("hub takes no rotor, but rotor is fitted");
    expect(checkText(text).of("wheel/rotor-mount")[0]?.repairs).toContainEqual({
      kind: "leave-empty",
      slot: "front-brake.rotor",
    });
  });

  const laced = (hub: string, spokes: string, nipples: string): string =>
    compose({
      "rear-wheel.hub": part("hub", hub),
      "rear-wheel.spokes": part("spokes", spokes),
      "rear-wheel.nipples": part("nipples", nipples),
      "front-wheel.spokes": "none",
    });

  it("nipples go with the thread of the spokes' ends", () => {
    expect(outcome(laced("gears: none", "thread: 2.0x56", "thread: 2.0x56"), "wheel/nipple-thread")).toBe("holds");
    const text = laced("gears: none", "thread: 2.0x56", "thread: 1.8x56");
    expect(message(text, "wheel/nipple-thread")).toContain("is for the thread 1.8x56");
    expect(message(text, "wheel/nipple-thread")).toContain("has 2.0x56");
    expect(outcome(laced("gears: none", "thread: 2.0x56", "length: 12 mm"), "wheel/nipple-thread")).toBe("unknown");
  });

  it.each([
    ["elbow", "elbow", "holds"],
    ["straight", "straight", "holds"],
    ["elbow", "straight", "fails"],
    ["straight", "elbow", "fails"],
  ])("spokes with %s heads in a hub for %s: %s", (spokes, hub, expected) => {
    const text = laced(`spoke-head: ${hub}`, `spoke-head: ${spokes}`, "length: 12 mm");
    expect(outcome(text, "wheel/spoke-head")).toBe(expected);
  });

  it("says which heads, and what takes them", () => {
    const text = laced("spoke-head: straight", "spoke-head: elbow", "length: 12 mm");
    expect(message(text, "wheel/spoke-head")).toBe(
      "spokes are spokes with an elbow, but hub takes spokes of straight pull: fit those, or another hub.",
    );
    expect(checkText(text).of("wheel/spoke-head")[0]?.repairs).toEqual([
      { kind: "swap-part", slot: "rear-wheel.spokes" },
      { kind: "swap-part", slot: "rear-wheel.hub" },
    ]);
  });
});
