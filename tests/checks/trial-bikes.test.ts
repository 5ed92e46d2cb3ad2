import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";

/** What a trial with four bikes written from the reference alone brought to light. */

describe("front and rear", () => {
  const fitted = (slot: string, kind: string, facts: string): ReturnType<typeof checkText> =>
    checkText(`
part ${kind} example.part "Part" { ${facts} }

build example "Bike" { ${slot}: example.part }
`);

  it.each([
    ["lighting.front-lamp", "lamp", "place: front", "holds"],
    ["lighting.front-lamp", "lamp", "place: rear", "fails"],
    ["lighting.rear-lamp", "lamp", "place: front", "fails"],
    ["lighting.rear-lamp", "lamp", "place: rear", "holds"],
    ["carrying.front-mudguard", "mudguard", "wheel: rear", "fails"],
    ["carrying.rear-mudguard", "mudguard", "wheel: rear", "holds"],
    ["carrying.front-rack", "rack", "wheel: front", "holds"],
    ["carrying.rear-rack", "rack", "wheel: front", "fails"],
    ["carrying.rear-rack", "rack", "wheel: none", "notApplicable"],
    ["carrying.rear-rack", "rack", "load-limit: 20 kg", "unknown"],
  ])("at %s a %s with %s %s", (slot, kind, facts, outcome) => {
    const instance = slot.slice(slot.indexOf(".") + 1).replace("-", " ");
    expect(fitted(slot, kind, facts).instance("frame/front-and-rear", instance)).toBe(outcome);
  });

  it("names the colour of a lamp, and the wheel of anything else", () => {
    const said = (slot: string, kind: string, facts: string) =>
      fitted(slot, kind, facts)
        .of("frame/front-and-rear")
        .map(({ message }) => message);
    expect(said("lighting.front-lamp", "lamp", "place: rear")).toEqual([
      "Part is a rear lamp, which is red, but the build fits it at the front: fit a front lamp, which is white.",
    ]);
    expect(said("carrying.rear-rack", "rack", "wheel: front")).toEqual([
      "Part is made for the front wheel, but the build fits it at the rear: fit a rack for the rear wheel.",
    ]);
  });

  it.each([
    ["lighting.front-lamp", "lamp", "place: rear", /^Wrong lamps/],
    ["carrying.front-mudguard", "mudguard", "wheel: rear", /^A mudguard that jams/],
    ["carrying.rear-rack", "rack", "wheel: front", /^A rack or its load/],
  ])("warns at %s of what a %s does", (slot, kind, facts, caution) => {
    const [found] = fitted(slot, kind, facts).of("frame/front-and-rear");
    expect(found?.caution).toMatch(caution);
  });

  it("asks nothing of places that are empty", () => {
    const { row } = checkText(`build example "Bike" { lighting.front-lamp: none }`);
    const asked = row("frame/front-and-rear").instances.filter(({ instance }) => /lamp|mudguard|rack/.test(instance));
    expect(asked.map(({ verdict }) => verdict.outcome)).toEqual(Array(6).fill("notApplicable"));
  });
});

describe("what is left out", () => {
  it.each(["tubular", "airless"])("a tyre that is %s needs no tube, and none is asked for", (construction) => {
    const { missing, outcome } = checkText(`
part rim example.rim "Rim" { bead-seat: 622; valve-hole: 6.5 mm }
part tyre example.tyre "Tyre" { size: 22-622; construction: ${construction} }

build example "Bike" {
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel { rim: example.rim; tyre: example.tyre }
}
`);
    expect(outcome("wheel/valve-hole")).toBe("notApplicable");
    expect(missing("wheel/tube-size")).toEqual([]);
  });

  it("a tyre for a tube still needs one", () => {
    const { missing } = checkText(`
part tyre example.tyre "Tyre" { size: 37-622; construction: tube }

build example "Bike" { front-wheel.tyre: example.tyre; rear-wheel.tyre: example.tyre }
`);
    expect(missing("wheel/tube-size")).toContain("front-wheel.tube");
  });

  it("tabs are not asked of a fork whose wheel a thru axle holds, nor a ring of a threaded headset", () => {
    const { outcome } = checkText(`
part fork example.fork "Fork" { steerer-shape: threaded }
part thru-axle example.pin "Pin" { wheel: front }
part headset example.headset "Headset" { upper: EC30/25.4 }

build example "Bike" { fork: example.fork; headset: example.headset; front-wheel.axle: example.pin }
`);
    expect(outcome("wheel/retention-tabs")).toBe("notApplicable");
    expect(outcome("steering/compression-ring")).toBe("notApplicable");
  });

  it("tabs, and a ring for a plain steerer, are asked where they matter", () => {
    const { missing } = checkText(`
part fork example.fork "Fork" { steerer-shape: round }
part quick-release example.skewer "Skewer" { wheel: front }
part headset example.headset "Headset" { upper: EC34/28.6 }

build example "Bike" { fork: example.fork; headset: example.headset; front-wheel.axle: example.skewer }
`);
    expect(missing("wheel/retention-tabs")).toEqual(["fork.retention-tabs"]);
    expect(missing("steering/compression-ring")).toEqual(["headset.compression-ring"]);
  });

  it.each([
    ["quick-release", "", "notApplicable"],
    ["quick-release", "end-cap-diameter: 31 mm", "unknown"],
    ["through", "", "unknown"],
  ])("end caps of a hub with %s in a fork with '%s' are %s", (fastening, recess, outcome) => {
    const { outcome: is } = checkText(`
part fork example.fork "Fork" { ${recess} }
part hub example.hub "Hub" { axle-fastening: ${fastening} }

build example "Bike" { fork: example.fork; front-wheel.hub: example.hub }
`);
    expect(is("wheel/end-caps")).toBe(outcome);
  });

  it.each([
    ["fork", "travel: 150 mm; greatest-air-pressure: 9 bar", ["fork.spring"]],
    ["fork", "travel: 150 mm; spring: air", ["fork.greatest-air-pressure"]],
    ["rear-shock", "spring: air", ["rear-shock.greatest-air-pressure"]],
  ])("the pressure of a %s with %s cannot be judged", (slot, facts, missing) => {
    const checked = checkText(`
part ${slot} example.part "Part" { ${facts} }

build example "Bike" { ${slot}: example.part { air-pressure: 12 bar } }
`);
    expect(checked.instance("frame/air-pressure", slot.replace("-", " "))).toBe("unknown");
    expect(checked.missing("frame/air-pressure")).toEqual(expect.arrayContaining(missing));
  });

  it.each([
    ["travel: none", "notApplicable"],
    ["travel: 150 mm; spring: coil", "notApplicable"],
  ])("no pressure is asked of a fork with %s", (facts, outcome) => {
    const { instance } = checkText(`
part fork example.fork "Fork" { ${facts} }

build example "Bike" { fork: example.fork; rear-shock: none }
`);
    expect(instance("frame/air-pressure", "fork")).toBe(outcome);
  });
});

describe("a fixed cog and its lock-ring", () => {
  const lockring = (cog: string, hub: string): string =>
    checkText(`
part hub example.hub "Hub" { ${hub} }
part sprocket example.cog "Cog 15" { cogs: 15 t; fixed: yes; ${cog} }

build example "Bike" { drivetrain.cassette: example.cog; rear-wheel.hub: example.hub }
`).outcome("drivetrain/fixed-lock-ring");

  it("a hub that says it has no thread for one is believed, whatever its code", () => {
    const cog = "thread: 1.375x24-with-lockring; retention: left-hand-lockring";
    expect(lockring(cog, "freewheel-thread: 1.375x24-with-lockring")).toBe("holds");
    expect(lockring(cog, "freewheel-thread: 1.375x24-with-lockring; fixed-lockring-thread: no")).toBe("fails");
  });

  it.each([
    "freehub: none; retention: left-hand-lockring",
    "freehub: nine-spline-driver; retention: left-hand-lockring",
  ])("a cog with %s is screwed on, though its thread is left out", (cog) => {
    expect(lockring(cog, "freewheel-thread: 1.375x24; fixed-lockring-thread: yes")).toBe("holds");
    expect(lockring(cog, "freewheel-thread: 1.375x24")).toBe("fails");
  });

  it.each(["", "retention: none", "retention: lockring", "thread: none"])(
    "whether a cog with '%s' alone is screwed on cannot be told without what it slides onto",
    (cog) => expect(lockring(cog, "freewheel-thread: 1.375x24")).toBe("unknown"),
  );

  it("a cog that goes on no splines and is held by nothing unscrews", () => {
    expect(lockring("freehub: none; retention: none", "freewheel-thread: 1.375x24-with-lockring")).toBe("fails");
    expect(lockring("freehub: nine-spline-driver; retention: snap-ring", "fixed-lockring-thread: no")).toBe(
      "notApplicable",
    );
  });
});

describe("what mends it", () => {
  const rack = (byRack: number, byFrame: number): readonly string[] =>
    checkText(`
part frame example.frame "Frame" { rear-rack-load: ${byFrame} kg }
part rack example.rack "Rack" { load-limit: ${byRack} kg }

build example "Bike" { frame: example.frame; carrying.rear-rack: example.rack { load: 28 kg } }
`)
      .of("frame/rack-load")
      .map(({ message }) => message);

  it("a stronger rack is offered only where the frame bears the load", () => {
    expect(rack(25, 30)).toEqual([
      "Rack is to carry 28 kg, but it allows 25 kg: load 25 kg or less, or fit a stronger rack.",
    ]);
    expect(rack(25, 25)).toEqual([
      "Rack is to carry 28 kg, but it allows 25 kg and Frame allows 25 kg: load 25 kg or less.",
    ]);
    expect(rack(25, 20)).toEqual([
      "Rack is to carry 28 kg, but it allows 25 kg and Frame allows 20 kg: load 20 kg or less.",
    ]);
    expect(rack(30, 20)).toEqual(["Rack is to carry 28 kg, but Frame allows 20 kg: load 20 kg or less."]);
  });

  it.each([
    ["455 to 470 mm", "fit a belt of 121 to 122 t, or another ring or sprocket"],
    ["455 to 457 mm", "fit another ring or sprocket"],
    ["455 to 462 mm", "fit a belt of 121 t, or another ring or sprocket"],
  ])("a belt that is too short for %s is answered with the belts that do", (chainstay, mend) => {
    const { of } = checkText(`
part frame example.frame "Frame" { chainstay: ${chainstay}; dropout: sliding }
part belt example.belt "Belt 118" { teeth: 118 t; pitch: 11 mm }
part belt-ring example.ring "Ring 50" { teeth: 50 t }
part crankset example.crank "Crank" { rings: none }
part sprocket example.cog "Sprocket 24" { cogs: 24 t }

build example "Bike" {
  frame: example.frame
  drivetrain { chain: example.belt; chainring: example.ring; crankset: example.crank; cassette: example.cog }
}
`);
    expect(of("drivetrain/belt-length").map(({ message }) => message.split("too short: ")[1])).toEqual([`${mend}.`]);
  });

  const cockpit = (clamping: string, insertion: number, fit: string): readonly string[] =>
    checkText(`
part frame example.frame "Frame" {
  reach: 385 mm; stack: 560 mm; head-angle: 73°; seat-angle: 73.5°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm
}
part headset example.headset "Headset" { upper-stack: 15 mm }
part stem example.stem "Stem" {
  clamping: ${clamping}; length: 100 mm; angle: -6°; clamp-height: 40 mm; quill-length: 130 mm
}
part fork example.fork "Fork" { steerer-shape: ${clamping === "quill" ? "threaded" : "round"} }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 0 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Bike" {
  frame: example.frame
  fork: example.fork
  headset: example.headset
  cockpit.stem: example.stem { spacers-below: 20 mm; quill-insertion: 70 mm }
  seat { post: example.post { insertion: ${insertion} mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { tolerance: 10 mm; ${fit} }
}
`)
      .of("fit/saddle-to-bar-drop")
      .map(({ message }) => message);

  it.each([
    ["quill", 20, "set the quill higher, as far as its mark allows, or fit another stem"],
    ["quill", 120, "set the quill deeper, or fit another stem"],
    ["threadless", 20, "raise the bar with spacers or another stem"],
    ["threadless", 120, "lower the bar with fewer spacers or another stem"],
  ])("the bar on a %s stem is brought to its height by what that stem has (aim %s mm)", (clamping, aim, mend) => {
    const said = cockpit(clamping, 187, `saddle-to-bar-drop: ${aim} mm`);
    expect(said.map((message) => message.split("within 10 mm: ")[1])).toEqual([`${mend}.`]);
  });

  it("a saddle at the wrong height is no fault of the bar", () => {
    // 731 mm along the seat tube with the post 187 mm deep: 100 mm less of it and the drop is 96 mm more.
    expect(cockpit("threadless", 87, "saddle-to-bar-drop: 70 mm")).toHaveLength(1);
    expect(cockpit("threadless", 87, "saddle-to-bar-drop: 70 mm; saddle-height: 731 mm")).toEqual([]);
    expect(cockpit("threadless", 87, "saddle-to-bar-drop: 20 mm; saddle-height: 731 mm")).toEqual([
      expect.stringMatching(/^With the saddle at the height that is aimed at, its top is 69 mm above the bar clamp/),
    ]);
  });

  it("a bar above the saddle is said to be so, without a sign", () => {
    expect(cockpit("threadless", 330, "saddle-to-bar-drop: 20 mm")).toEqual([
      expect.stringMatching(/^The saddle's top is \d+ mm below the bar clamp, \d+ mm too little for the aim of 20 mm/),
    ]);
  });
});

describe("the cable of a derailleur", () => {
  const cable = (facts: string, cut = "housing-cut: 1400 mm") =>
    checkText(`
part cable example.line "Line" { ${facts} }

build example "Bike" { drivetrain { rear-cable: example.line { ${cut} }; front-cable: none } }
`);
  const code = "drivetrain/cable";
  const long = "housing-length: 1800 mm; inner-length: 2100 mm";

  it.each([
    [`serves: shift; ${long}`, "holds"],
    ["serves: shift; housing-length: 1400 mm; inner-length: 1400 mm", "holds"],
    [`serves: brake; ${long}`, "fails"],
    [`serves: dropper; ${long}`, "fails"],
    ["serves: shift; housing-length: 1399 mm; inner-length: 2100 mm", "fails"],
    ["serves: shift; housing-length: 1800 mm; inner-length: 1399 mm", "fails"],
    [long, "unknown"],
    ["serves: shift; housing-length: 1800 mm", "unknown"],
    ["serves: shift; housing-length: none; inner-length: 2100 mm", "holds"],
    // What is found already is not kept back for what is not stated.
    ["serves: brake", "fails"],
    ["housing-length: 1399 mm", "fails"],
  ])("%s: %s", (facts, outcome) => expect(cable(facts).outcome(code)).toBe(outcome));

  it.each([
    ["rear-cable", "rear-derailleur: example.rear", "set-up: cable", "fails"],
    ["rear-cable", "rear-derailleur: example.rear", "set-up: direct-mount; power: none", "fails"],
    ["rear-cable", "rear-derailleur: example.rear", "set-up: electronic", "notApplicable"],
    ["rear-cable", "rear-derailleur: example.rear", "", "unknown"],
    ["rear-cable", "rear-derailleur: none }; rear-wheel { hub: example.hub", "set-up: electronic", "fails"],
    ["rear-cable", "rear-derailleur: none }; rear-wheel { hub: none", "set-up: electronic", "notApplicable"],
    ["rear-cable", "rear-derailleur: none", "set-up: electronic", "unknown"],
    ["front-cable", "front-derailleur: example.front", "set-up: electronic", "fails"],
    ["front-cable", "front-derailleur: none", "set-up: cable", "notApplicable"],
  ])("a lead as %s beside %s (%s): %s", (place, moved, rear, outcome) => {
    const { instance, of } = checkText(`
part wire example.lead "Lead" {}
part rear-derailleur example.rear "Rear" { ${rear} }
part front-derailleur example.front "Front" { actuation: cable }
part hub example.hub "Hub" { gears: 3; actuation: cable }

build example "Bike" { drivetrain { ${place}: example.lead; ${moved} } }
`);
    expect(instance(code, place.replace("-cable", ""))).toBe(outcome);
    if (outcome === "fails") expect(of(code)[0]?.message).toMatch(/^Lead is an electric lead, but .* by cable/);
  });

  it("is asked for the cut, and says what it is for", () => {
    expect(cable(`serves: shift; ${long}`, "").missing(code)).toEqual(["drivetrain.rear-cable.housing-cut"]);
    expect(cable(`serves: brake; ${long}`).of(code)[0]?.message).toMatch(/^Line is a cable for brakes, but the build/);
    expect(cable("serves: shift; housing-length: 1 m").of(code)[0]?.message).toBe(
      "The build cuts 1400 mm of housing from Line, but it is 1000 mm of housing as supplied and too short: fit a longer one.",
    );
  });
});

describe("a threaded steerer that is planned too short", () => {
  const said = (supplied: string, cut: string) =>
    checkText(`
part frame example.frame "Frame" { head-tube-length: 138 mm }
part fork example.fork "Fork" { steerer-shape: threaded; ${supplied} }
part headset example.headset "Headset" { lower-stack: 13 mm; upper-stack: 24 mm }

build example "Bike" { frame: example.frame; fork: example.fork { ${cut} }; headset: example.headset }
`)
      .of("steering/threaded-steerer-length")
      .map(({ message }) => message.split("hold the locknut. ")[1]);

  it.each([
    ["steerer-supplied: 190 mm", "Cut it to 173 mm while that can still be done, or fit a headset"],
    ["steerer-supplied: 173 mm", "Cut it to 173 mm while that can still be done, or fit a headset"],
    ["steerer-supplied: 172 mm", "Fit a headset"],
    ["steerer-bore: 22.2 mm", "Fit a headset"],
  ])("with %s: %s", (supplied, mend) => {
    expect(said(supplied, "steerer-length: 166 mm")).toEqual([
      `${mend} with less stack, or a fork with a longer steerer.`,
    ]);
  });

  it("as supplied it cannot be made longer", () => {
    expect(said("steerer-supplied: 166 mm", "")).toEqual([
      "Fit a headset with less stack, or a fork with a longer steerer.",
    ]);
  });
});

describe("sag that is not as asked", () => {
  it.each([
    ["spring: air", 28, "raise the pressure"],
    ["spring: air", 10, "lower the pressure"],
    ["spring: coil", 28, "fit a stiffer coil"],
    ["spring: elastomer", 10, "fit a softer elastomer"],
    ["spring: none", 28, "raise the pressure, or fit a stiffer coil"],
  ])("of a fork with %s at %s %: %s", (spring, sag, mend) => {
    const { of } = checkText(`
part fork example.fork "Fork" { travel: 120 mm; sag-range: 15 to 20 %; ${spring} }

build example "Bike" { fork: example.fork { sag: ${sag} % }; rear-shock: none }
`);
    expect(of("frame/sag").map(({ message }) => message.split("20 %: ")[1])).toEqual([
      `${mend}, until it is ${sag > 20 ? 20 : 15} %.`,
    ]);
  });
});
