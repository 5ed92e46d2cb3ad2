import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

/** A composed build with fields of its own. */
function built(pieces: Pieces, fields: string, more = ""): string {
  return compose(pieces, more).replace(/\n\}\n$/, `\n  ${fields}\n}\n`);
}

/** Every place empty, so that nothing but what is written weighs anything. */
const empty = [
  "rear-shock headset",
  "drivetrain.rear-derailleur drivetrain.front-derailleur drivetrain.cassette drivetrain.chain drivetrain.crankset",
  "drivetrain.chainring drivetrain.bottom-bracket drivetrain.pedals drivetrain.rear-controller",
  "front-brake.lever front-brake.caliper rear-brake.lever rear-brake.caliper",
  "cockpit.stem cockpit.handlebar cockpit.grips seat.post seat.clamp seat.saddle",
  ...["front-wheel", "rear-wheel"].map((wheel) =>
    ["hub", "rim", "spokes", "tyre", "tube", "rim-tape", "axle"].map((name) => `${wheel}.${name}`).join(" "),
  ),
]
  .join(" ")
  .split(" ");
const nothing: Pieces = Object.fromEntries(empty.map((path) => [path, "none"]));

describe("frame/system-mass", () => {
  const code = "frame/system-mass";
  const rider = "rider { mass: 80 kg; kit-mass: 10 kg }";

  it.each([
    ["max-system-mass: 80 kg; system-mass-includes: rider", "holds"],
    ["max-system-mass: 79.9 kg; system-mass-includes: rider", "fails"],
    ["max-system-mass: 90 kg; system-mass-includes: rider-and-kit", "holds"],
    ["max-system-mass: 89.9 kg; system-mass-includes: rider-and-kit", "fails"],
    // 80 + 10 + 2 + 1 kg.
    ["max-system-mass: 93 kg; system-mass-includes: all-up", "holds"],
    ["max-system-mass: 92.9 kg; system-mass-includes: all-up", "fails"],
    // Nobody said what it counts: enough for everything, or too little for the rider alone, is certain.
    ["max-system-mass: 93 kg", "holds"],
    ["max-system-mass: 92.9 kg", "unknown"],
    ["max-system-mass: 80 kg", "unknown"],
    ["max-system-mass: 79.9 kg", "fails"],
    ["max-system-mass: none", "notApplicable"],
    ['size: "M"', "unknown"],
  ])("a frame with %s under 80 kg, 10 kg of kit and 3 kg of bicycle: %s", (frame, outcome) => {
    const text = built(
      { ...nothing, frame: part("frame", `mass: 2 kg; ${frame}`), fork: part("fork", "mass: 1 kg") },
      rider,
    );
    expect(checkText(text).instance(code, "frame")).toBe(outcome);
  });

  it.each([
    ["front-rack: a.rack { load: 4 kg }; rear-rack: a.rack { load: 7 kg }", "93.9 kg", "fails"],
    ["front-rack: a.rack { load: 4 kg }; rear-rack: a.rack { load: 7 kg }", "94 kg", "holds"],
    // What lies on a rack is part of the kit, and not counted beside it.
    ["front-rack: a.rack { load: 4 kg }; rear-rack: a.rack { load: 6 kg }", "93 kg", "holds"],
    ["rear-rack: a.rack", "93 kg", "holds"],
  ])("counts what the racks carry where that is more than the kit: %s in %s", (racks, limit, outcome) => {
    const frame = part("frame", `mass: 2 kg; max-system-mass: ${limit}; system-mass-includes: all-up`);
    const bike = built({ ...nothing, frame, fork: part("fork", "mass: 1 kg") }, `${rider}\n  carrying { ${racks} }`);
    const checked = checkText(`part rack a.rack "Rack" { mass: 0 kg }\n${bike}`);
    expect(checked.instance(code, "frame")).toBe(outcome);
    if (outcome === "fails") {
      expect(
        checked
          .of(code)[0]
          ?.related.map(({ message }) => message)
          .join(),
      ).toContain("load 7 kg");
    }
  });

  it("finds too much in what is known, and says that the rest is missing", () => {
    const frame = part("frame", "max-system-mass: 92 kg; system-mass-includes: all-up; mass: 2.5 kg");
    const over = checkText(built({ frame, fork: "none" }, rider));
    expect(over.of(code)[0]?.message).toMatch(/weigh at least 92\.5 kg.*92 kg/);
    const under = checkText(built({ frame, fork: "none" }, "rider { mass: 79 kg; kit-mass: 10 kg }"));
    expect(under.instance(code, "frame")).toBe("unknown");
    expect(under.missing(code)).toContain("seat.saddle");
    const unweighed = checkText(
      built(
        { ...nothing, frame, fork: part("fork", "max-system-mass: none") },
        "rider { mass: 79 kg; kit-mass: 10 kg }",
      ),
    );
    expect(unweighed.missing(code)).toEqual(["fork.mass"]);
  });

  it("asks for the rider and the kit", () => {
    const frame = part("frame", "max-system-mass: 100 kg; system-mass-includes: rider-and-kit");
    const text = checkText(built({ frame, fork: "none" }, "rider.mass: 80 kg"));
    expect(text.missing(code)).toEqual(["rider.kit-mass"]);
    expect(checkText(built({ frame, fork: "none" }, "rider.kit-mass: 101 kg")).instance(code, "frame")).toBe("fails");
    expect(
      checkText(built({ frame, fork: "none" }, "rider { mass: 80 kg; kit-mass: none }")).instance(code, "frame"),
    ).toBe("holds");
  });

  it("compares other parts where they state a limit, and finds the worst of them", () => {
    const text = checkText(
      built(
        {
          ...nothing,
          frame: "none",
          fork: "none",
          "front-wheel.rim": part("rim", "mass: 500 g; max-system-mass: 85 kg; system-mass-includes: rider"),
          "rear-wheel.rim": part("rim", "mass: 500 g; max-system-mass: 70 kg; system-mass-includes: rider"),
          "seat.saddle": part("saddle", "mass: 300 g"),
        },
        rider,
      ),
    );
    expect(text.instance(code, "frame")).toBe("notApplicable");
    expect(text.instance(code, "other parts")).toBe("fails");
    expect(text.of(code).map(({ path }) => path)).toEqual(["rear-wheel.rim"]);
  });

  it("asks which frame it is", () => {
    expect(checkText(built({ fork: "none" }, rider)).missing(code)).toEqual(["frame"]);
  });
});

describe("frame/category", () => {
  const code = "frame/category";
  const rated = (use: string, categories: string, slot = "cockpit.stem", kind = "stem") =>
    checkText(built({ frame: part("frame", "categories: none"), [slot]: part(kind, categories) }, use));

  it.each([
    ["mountain", "mountain", "holds"],
    ["gravel", "mountain", "holds"],
    ["mountain", "gravel", "fails"],
    ["mountain", "road, touring", "fails"],
    ["mountain", "downhill", "holds"],
    ["downhill", "mountain", "fails"],
    ["city", "road", "holds"],
    ["road", "city", "fails"],
    ["touring", "city", "fails"],
    ["cargo", "touring", "fails"],
    ["city", "cargo", "holds"],
    ["track", "road", "holds"],
    ["road", "track", "fails"],
    ["child", "city", "holds"],
    ["city", "child", "fails"],
    ["bmx", "downhill", "fails"],
    ["mountain", "city, bmx, mountain", "holds"],
  ])("a bicycle for %s and a stem for %s: %s", (use, categories, outcome) => {
    expect(rated(`category: ${use}`, `categories: ${categories}`).instance(code, "cockpit.stem")).toBe(outcome);
  });

  it.each([
    ["drivetrain.rear-derailleur", "rear-derailleur", "touring", "holds"],
    ["drivetrain.rear-derailleur", "rear-derailleur", "child", "fails"],
    ["drivetrain.cassette", "cassette", "mountain", "holds"],
    ["drivetrain.pedals", "pedals", "city", "holds"],
    ["seat.saddle", "saddle", "touring", "holds"],
    ["rear-wheel.rim", "rim", "touring", "fails"],
    ["rear-brake.caliper", "caliper", "touring", "fails"],
  ])("what a cargo bicycle carries: %s, a %s for %s: %s", (slot, kind, categories, outcome) => {
    expect(rated("category: cargo", `categories: ${categories}`, slot, kind).instance(code, slot)).toBe(outcome);
  });

  it("is an error where a breakage drops the rider, else a warning", () => {
    expect(rated("category: mountain", "categories: road").of(code)[0]?.severity).toBe("error");
    expect(rated("category: mountain", "categories: road", "seat.saddle", "saddle").of(code)[0]?.severity).toBe(
      "warning",
    );
  });

  it("asks frame and fork what they are for, once", () => {
    const silent = checkText(
      built({ frame: part("frame", 'size: "M"'), fork: part("fork", "categories: road") }, "category: road"),
    );
    expect(silent.missing(code)).toEqual(["frame.categories"]);
    const open = checkText(
      compose({ frame: part("frame", "categories: road"), fork: part("fork", "categories: road") }),
    );
    expect(open.missing(code)).toEqual(["category"]);
    expect(rated("category: road", 'note: "not rated"').instance(code, "cockpit.stem")).toBe("notApplicable");
  });

  it("says both uses and offers another use for a frame", () => {
    const text = built({ frame: part("frame", "categories: gravel, road") }, "category: mountain");
    expect(checkText(text).of(code)[0]?.message).toMatch(/for mountain.*gravel and road/);
    const [last] = repaired(text, code).slice(-1);
    expect(last?.title).toBe("Build it for gravel use (category: gravel)");
    expect(checkText(last?.text ?? "").instance(code, "frame")).toBe("holds");
  });
});

describe("frame/sag and frame/air-pressure", () => {
  it.each([
    ["sag: 15 %", "travel: 130 mm; sag-range: 15 to 20 %", "holds"],
    ["sag: 20 %", "travel: 130 mm; sag-range: 15 to 20 %", "holds"],
    ["sag: 20.1 %", "travel: 130 mm; sag-range: 15 to 20 %", "fails"],
    ["sag: 14.9 %", "travel: 130 mm; sag-range: 15 to 20 %", "fails"],
    ["", "travel: 130 mm; sag-range: 15 to 20 %", "unknown"],
    ["sag: 18 %", "travel: 130 mm", "unknown"],
    ["sag: 18 %", "travel: 130 mm; sag-range: none", "notApplicable"],
    ["sag: 30 %", "travel: none; sag-range: 15 to 20 %", "notApplicable"],
  ])("a fork with %s of %s: %s", (settings, fork, outcome) => {
    const text = checkText(compose({ fork: part("fork", fork, settings) }));
    expect(text.instance("frame/sag", "fork")).toBe(outcome);
  });

  it.each([
    ["30 %", "sag-range: 27 to 32 %", "sag-range: 20 to 28 %", "holds"],
    ["26 %", "sag-range: 27 to 32 %", "sag-range: 20 to 28 %", "fails"],
    // Where the frame's maker says nothing, the shock's own range counts.
    ["26 %", "sag-range: none", "sag-range: 20 to 28 %", "holds"],
    ["29 %", 'size: "M"', "sag-range: 20 to 28 %", "fails"],
    ["29 %", 'size: "M"', "spring: air", "unknown"],
  ])("a shock at %s in a frame of %s, shock %s: %s", (sag, frame, shock, outcome) => {
    const text = compose({
      frame: part("frame", frame),
      "rear-shock": part("rear-shock", `size: 210x55; ${shock}`, `sag: ${sag}`),
      fork: part("fork", "travel: none"),
    });
    expect(checkText(text).instance("frame/sag", "rear shock")).toBe(outcome);
    if (outcome === "fails") {
      const [first] = repaired(text, "frame/sag");
      expect(checkText(first?.text ?? "").outcome("frame/sag")).toBe("holds");
    }
  });

  it.each([
    ["air-pressure: 9 bar", "spring: air; greatest-air-pressure: 9 bar", "holds"],
    ["air-pressure: 9.1 bar", "spring: air; greatest-air-pressure: 9 bar", "fails"],
    ["", "spring: air; greatest-air-pressure: 9 bar", "unknown"],
    ["air-pressure: 9.1 bar", "spring: air", "unknown"],
    ["air-pressure: 9.1 bar", "spring: air; greatest-air-pressure: none", "notApplicable"],
    ["air-pressure: 9.1 bar", "spring: coil; greatest-air-pressure: 9 bar", "notApplicable"],
    ["air-pressure: 131 psi", "spring: air; greatest-air-pressure: 9 bar", "fails"],
  ])("a fork with %s of %s: %s", (settings, fork, outcome) => {
    const text = checkText(compose({ fork: part("fork", fork, settings), "rear-shock": "none" }));
    expect(text.instance("frame/air-pressure", "fork")).toBe(outcome);
  });
});

describe("frame/battery and frame/motor-not-covered", () => {
  it.each([
    ["place: seat-tube", "battery-places: 1", "dropper-travel: none", "holds"],
    ["place: down-tube", "battery-places: 2", "dropper-travel: none", "holds"],
    ["place: seat-tube", "battery-places: none", "dropper-travel: none", "fails"],
    ["place: seat-tube", 'size: "M"', "dropper-travel: none", "fails"],
    ["place: seat-tube", "battery-places: 0", "dropper-travel: none", "fails"],
    ["place: seatpost", "battery-places: none", "dropper-travel: none", "holds"],
    ["place: seatpost", "battery-places: none", "dropper-travel: 120 mm", "fails"],
    ["place: seatpost", "battery-places: none", "setback: 0 mm", "unknown"],
    ["place: derailleur", "battery-places: none", "dropper-travel: 120 mm", "notApplicable"],
    ["", "battery-places: 1", "dropper-travel: none", "unknown"],
  ])("a battery with %s, frame %s, post %s: %s", (settings, frame, post, outcome) => {
    const text = compose({
      frame: part("frame", frame),
      "seat.post": part("seatpost", post),
      "drivetrain.battery": part("battery", "voltage: 7.4 V", settings),
    });
    expect(checkText(text).outcome("frame/battery")).toBe(outcome);
  });

  it("only tells of a motor", () => {
    const motor = (facts: string) => checkText(compose({ frame: part("frame", facts) }));
    expect(motor("motor: yes").of("frame/motor-not-covered")[0]?.severity).toBe("information");
    expect(motor('size: "M"').outcome("frame/motor-not-covered")).toBe("notApplicable");
  });
});

describe("frame/routing", () => {
  const code = "frame/routing";
  it("finds a line that has no way at all, and leaves the rest to the brake", () => {
    const along = (frame: string) =>
      compose({ frame: part("frame", frame), "rear-brake.hose": part("hose", "length: 2 m", "entry: external") });
    expect(checkText(along("brake-routing: none")).instance(code, "rear brake")).toBe("fails");
    expect(checkText(along("brake-routing: external")).instance(code, "rear brake")).toBe("notApplicable");
    expect(checkText(along("brake-routing: internal")).instance(code, "rear brake")).toBe("notApplicable");
    const fork = compose({
      fork: part("fork", "brake-routing: none"),
      "front-brake.hose": part("hose", "length: 1 m"),
    });
    expect(checkText(fork).instance(code, "front brake")).toBe("fails");
  });

  const system = 'standard routing-system a "A" { path: "inside"; source: "test" }\n';
  it.each([
    ["routing-system: a", "brake-routing: through-headset", "holds"],
    ["routing-system: none", "brake-routing: through-headset", "fails"],
    // Where the frame names its system, that is compared with the headset's elsewhere.
    ["routing-system: none", "brake-routing: through-headset; routing-system: a", "notApplicable"],
  ])("through a headset with %s in a frame with %s: %s", (headset, frame, outcome) => {
    const text = compose(
      {
        frame: part("frame", frame),
        headset: part("headset", headset),
        "rear-brake.hose": part("hose", "length: 2 m", "entry: through-headset"),
      },
      system,
    );
    expect(checkText(text).instance(code, "rear brake")).toBe(outcome);
  });

  it.each([
    ["set-up: cable", "shift-routing: external", "holds"],
    ["set-up: cable", "shift-routing: wireless", "fails"],
    ["set-up: cable", "shift-routing: none", "fails"],
    ["set-up: cable", 'size: "M"', "unknown"],
    ["set-up: electronic", "shift-routing: wireless", "notApplicable"],
    ["speeds: 11", "shift-routing: wireless", "unknown"],
  ])("a derailleur with %s on a frame with %s: %s", (derailleur, frame, outcome) => {
    const text = compose({
      frame: part("frame", frame),
      "drivetrain.rear-derailleur": part("rear-derailleur", derailleur),
      "drivetrain.front-derailleur": "none",
      "rear-wheel.hub": part("hub", "gears: none"),
    });
    expect(checkText(text).instance(code, "shifting")).toBe(outcome);
  });

  it("knows a gear hub's cable", () => {
    const text = compose({
      frame: part("frame", "shift-routing: wireless"),
      "drivetrain.rear-derailleur": "none",
      "drivetrain.front-derailleur": "none",
      "rear-wheel.hub": part("hub", "gears: 8; actuation: cable"),
    });
    expect(checkText(text).of(code)[0]?.message).toMatch(/^hub is worked by cable, but frame has no way/);
  });
});

describe("frame/mounts and frame/cages", () => {
  it.each([
    ["rear-rack", "rack", "mounts: eyelet-M5", "accessory-mounts: eyelet-M5, cage-64", "rear rack", "holds"],
    ["rear-rack", "rack", "mounts: eyelet-M5, bridge-M5", "accessory-mounts: eyelet-M5", "rear rack", "fails"],
    ["rear-rack", "rack", "mounts: eyelet-M5", "accessory-mounts: none", "rear rack", "fails"],
    ["rear-rack", "rack", "mounts: eyelet-M5", "accessory-mounts: eyelet-M5; forbids: rack", "rear rack", "fails"],
    ["rear-rack", "rack", "wheel: rear", "accessory-mounts: eyelet-M5; forbids: rack", "rear rack", "fails"],
    ["rear-rack", "rack", "wheel: rear", "accessory-mounts: none", "rear rack", "fails"],
    ["rear-rack", "rack", "mounts: eyelet-M5", 'size: "M"', "rear rack", "unknown"],
    [
      "rear-mudguard",
      "mudguard",
      "mounts: eyelet-M5",
      "accessory-mounts: eyelet-M5; forbids: mudguard",
      "rear mudguard",
      "fails",
    ],
    ["stand", "stand", "mount: stand-40", "accessory-mounts: stand-18", "stand", "fails"],
    ["stand", "stand", "mount: stand-40", "accessory-mounts: stand-40", "stand", "holds"],
    // The frame's word about child seats is a check of its own.
    [
      "child-seat",
      "child-seat",
      "mounts: eyelet-M5",
      "accessory-mounts: eyelet-M5; forbids: child-seat",
      "child seat",
      "holds",
    ],
  ])("%s: %s with %s on a frame with %s: %s %s", (slot, kind, facts, frame, instance, outcome) => {
    const text = compose({ frame: part("frame", frame), [`carrying.${slot}`]: part(kind, facts) });
    expect(checkText(text).instance("frame/mounts", instance)).toBe(outcome);
  });

  it("follows the fork in front, and names what is lacking", () => {
    const text = compose({
      fork: part("fork", "accessory-mounts: eyelet-M5"),
      frame: part("frame", "accessory-mounts: none"),
      "carrying.front-mudguard": part("mudguard", "mounts: eyelet-M5, bridge-M5"),
    });
    expect(
      checkText(text)
        .of("frame/mounts")
        .map(({ message }) => message),
    ).toEqual([expect.stringMatching(/mudguard is fixed to eyelet-M5.*fork has eyelet-M5.*not bridge-M5/)]);
    expect(repaired(text, "frame/mounts").map(({ title }) => title)).toEqual([
      "Leave out front-mudguard (carrying.front-mudguard: none)",
    ]);
  });

  it.each([
    ["mounts: cage-64", "accessory-mounts: cage-64", "accessory-mounts: none", "holds"],
    ["mounts: cage-3x64", "accessory-mounts: cage-64", "accessory-mounts: cage-3x64", "holds"],
    ["mounts: cage-3x64", "accessory-mounts: cage-64", "accessory-mounts: none", "fails"],
    ["mounts: cage-3x64", "accessory-mounts: cage-64", 'note: "not stated"', "unknown"],
    ["mounts: cage-64", "accessory-mounts: cage-64", 'note: "not stated"', "holds"],
    ["mounts: none", "accessory-mounts: none", "accessory-mounts: none", "notApplicable"],
  ])("a cage with %s, frame %s, fork %s: %s", (cage, frame, fork, outcome) => {
    const text = compose({
      frame: part("frame", frame),
      fork: part("fork", fork),
      "extras.cage": part("accessory", cage),
    });
    expect(checkText(text).outcome("frame/cages")).toBe(outcome);
  });
});

describe("frame/rack-load and frame/child-seat", () => {
  it.each([
    ["20 kg", "load-limit: 20 kg", "rear-rack-load: 25 kg", "holds"],
    ["20.1 kg", "load-limit: 20 kg", "rear-rack-load: 25 kg", "fails"],
    ["20 kg", "load-limit: 25 kg", "rear-rack-load: 20 kg", "holds"],
    ["20.1 kg", "load-limit: 25 kg", "rear-rack-load: 20 kg", "fails"],
    ["20 kg", "load-limit: 25 kg", 'size: "M"', "holds"],
    ["20 kg", "wheel: rear", "rear-rack-load: 25 kg", "unknown"],
    ["26 kg", "wheel: rear", "rear-rack-load: 25 kg", "fails"],
    ["", "load-limit: 25 kg", "rear-rack-load: 25 kg", "unknown"],
  ])("%s on a rack of %s on a frame of %s: %s", (load, rack, frame, outcome) => {
    const text = compose({
      frame: part("frame", frame),
      "carrying.rear-rack": part("rack", rack, load === "" ? "" : `load: ${load}`),
    });
    expect(checkText(text).instance("frame/rack-load", "rear")).toBe(outcome);
  });

  it("names the weaker of the two and lowers the load to it", () => {
    const text = compose({
      fork: part("fork", "rack-load: 8 kg"),
      "carrying.front-rack": part("rack", "load-limit: 12 kg", "load: 10 kg"),
    });
    expect(checkText(text).of("frame/rack-load")[0]?.message).toBe(
      "front-rack is to carry 10 kg, but fork allows 8 kg: load 8 kg or less.",
    );
    const [first] = repaired(text, "frame/rack-load");
    expect(checkText(first?.text ?? "").outcome("frame/rack-load")).toBe("holds");
  });

  it.each([
    ["child-mass: 9 to 22 kg", "child-seat-load: 22 kg", "holds"],
    ["child-mass: 9 to 22 kg", "child-seat-load: 15 kg", "holds"],
    ["child-mass: 9 to 22 kg", "child-seat-load: 8.9 kg", "fails"],
    ["child-mass: 9 to 22 kg", "child-seat-load: none", "fails"],
    ["child-mass: 9 to 22 kg", "child-seat-load: 22 kg; forbids: child-seat", "fails"],
    ["place: rear", "child-seat-load: none", "fails"],
    ["place: rear", "child-seat-load: 22 kg", "unknown"],
    ["child-mass: 9 to 22 kg", 'size: "M"', "unknown"],
  ])("a seat for %s on a frame with %s: %s", (seat, frame, outcome) => {
    const text = compose({ frame: part("frame", frame), "carrying.child-seat": part("child-seat", seat) });
    expect(checkText(text).outcome("frame/child-seat")).toBe(outcome);
  });
});

describe("drivetrain/battery-type", () => {
  const types = 'standard battery-type a "A" { source: "test" }\nstandard battery-type b "B" { source: "test" }\n';
  it.each([
    ["battery-type: a", "battery-type: a", "holds"],
    ["battery-type: a", "battery-type: b", "fails"],
    ["battery-type: a", "voltage: 7.4 V", "unknown"],
    ["set-up: cable", "battery-type: b", "notApplicable"],
  ])("a derailleur with %s and a battery with %s: %s", (derailleur, battery, outcome) => {
    const text = compose(
      {
        "drivetrain.rear-derailleur": part("rear-derailleur", derailleur),
        "drivetrain.battery": part("battery", battery),
      },
      types,
    );
    expect(checkText(text).outcome("drivetrain/battery-type")).toBe(outcome);
  });
});

describe("frame/stand-load", () => {
  const code = "frame/stand-load";
  /** A bicycle of 16 + 3.5 + 0.5 = 20 kg with its stand and rack. */
  const standing = (limit: string, fields: string, load = "") =>
    built(
      {
        ...nothing,
        frame: part("frame", "mass: 16 kg"),
        fork: "none",
        "carrying.rear-rack": part("rack", "mass: 3.5 kg", load === "" ? "" : `load: ${load}`),
        "carrying.stand": part("stand", `${limit}; mass: 500 g`),
      },
      fields,
    );

  it.each([
    ["load-limit: 30 kg", "rider.kit-mass: 10 kg", "", "holds", undefined],
    ["load-limit: 29.9 kg", "rider.kit-mass: 10 kg", "", "fails", "warning"],
    ["load-limit: 20 kg", "rider.kit-mass: none", "", "holds", undefined],
    ["load-limit: 19.9 kg", "rider.kit-mass: none", "", "fails", "error"],
    ["load-limit: 19.9 kg", 'note: "nothing said of the kit"', "", "fails", "error"],
    // What the rack carries is part of the kit, not added to it.
    ["load-limit: 30 kg", "rider.kit-mass: 10 kg", "10 kg", "holds", undefined],
    ["load-limit: 30 kg", "rider.kit-mass: 10 kg", "10.1 kg", "fails", "warning"],
    ["load-limit: 30 kg", 'note: "nothing said of the kit"', "10.1 kg", "fails", "warning"],
    ["load-limit: 30 kg", 'note: "nothing said of the kit"', "10 kg", "unknown", undefined],
    ["load-limit: none", "rider.kit-mass: 90 kg", "", "notApplicable", undefined],
    ['note: "no limit known"', "rider.kit-mass: 10 kg", "", "unknown", undefined],
  ])(
    "a stand of %s under 20 kg of bicycle, %s, its rack with '%s': %s %s",
    (limit, fields, load, outcome, severity) => {
      const text = checkText(standing(limit, fields, load));
      expect(text.outcome(code)).toBe(outcome);
      expect(text.of(code)[0]?.severity).toBe(severity);
    },
  );

  it("asks for the kit, and for what nobody weighed or chose", () => {
    expect(checkText(standing("load-limit: 40 kg", 'note: "nothing"')).missing(code)).toEqual(["rider.kit-mass"]);
    const open = compose({ frame: part("frame", 'size: "M"'), "carrying.stand": part("stand", "load-limit: 40 kg") });
    expect(checkText(open).missing(code)).toEqual(
      expect.arrayContaining(["frame.mass", "carrying.stand.mass", "rider.kit-mass", "seat.saddle"]),
    );
    expect(checkText(compose({ frame: part("frame", "mass: 16 kg") })).outcome(code)).toBe("notApplicable");
  });

  it("names both masses, and that the sum is a least where some are missing", () => {
    const [finding] = checkText(standing("load-limit: 26.5 kg", "rider.kit-mass: 7 kg")).of(code);
    expect(finding?.message).toMatch(
      /^The bicycle and what it carries weigh 27 kg together, but stand holds 26\.5 kg: .*off its stand/,
    );
    const least = compose({
      frame: part("frame", "mass: 16 kg"),
      "carrying.stand": part("stand", "load-limit: 15 kg"),
    });
    expect(checkText(least).of(code)[0]?.message).toMatch(/bicycle alone weighs at least 16 kg, but stand holds 15 kg/);
  });
});
