import { describe, expect, it } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const standards = `
standard hydraulic-family open-disc { source: "this test" }
standard brake-fluid open-oil { base: mineral; source: "this test" }
standard hose-fitting open-olive { form: olive; source: "this test" }
standard pad-shape open-pad { source: "this test" }
`;

const disc = "brake-actuation: hydraulic; hydraulic-family: open-disc; brake-fluid: open-oil; hose-fitting: open-olive";
const hose = part(
  "hose",
  "length: 2000 mm; lever-fitting: open-olive; caliper-fitting: open-olive; brake-fluids: open-oil",
  "cut-length: 900 mm; entry: internal",
);
const brakeCable = part(
  "cable",
  "serves: brake; housing-kind: spiral; housing-length: 1500 mm; inner-length: 1700 mm",
  "cut-length: 700 mm; entry: external",
);

/** Both wheels alike in these slots. */
function wheels(pieces: Pieces): Pieces {
  return Object.fromEntries(
    ["front-wheel", "rear-wheel"].flatMap((wheel) =>
      Object.entries(pieces).map(([slot, piece]) => [`${wheel}.${slot}`, piece]),
    ),
  );
}

function brakes(pieces: Pieces): Pieces {
  return Object.fromEntries(
    ["front-brake", "rear-brake"].flatMap((brake) =>
      Object.entries(pieces).map(([slot, piece]) => [`${brake}.${slot}`, piece]),
    ),
  );
}

/** Bikes as good shops build them every day. A check that finds fault with one of them cries wolf. */
const bikes: Readonly<Record<string, Pieces>> = {
  "a road bike on rims without hooks": {
    frame: part(
      "frame",
      "rear-axle: 12x142; rear-axle-length: 163 mm; rear-axle-thread-pitch: 1 mm; rear-axle-seat: flat; rear-bead-seats: 622; rear-brake-mount: flat-34; rear-native-rotor: 160 mm; rear-largest-rotor: 160 mm; rear-least-rotor: 140 mm; rear-brake-clamped-thickness: 25 mm; widest-tyre: 33 mm; brake-routing: internal; dropout: vertical; forbids: rim-brake",
    ),
    fork: part(
      "fork",
      "axle: 12x100; axle-length: 119 mm; axle-thread-pitch: 1 mm; axle-seat: flat; end-cap-diameter: 19 mm; bead-seats: 622; brake-mount: flat-70; native-rotor: 140 mm; largest-rotor: 160 mm; least-rotor: 140 mm; widest-tyre: 33 mm; brake-routing: internal; retention-tabs: none; forbids: rim-brake",
    ),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 622; inner-width: 23 mm; rim-kind: tubeless-straight-side; greatest-pressure: 5 bar; narrowest-tyre: 28 mm; widest-tyre: 50 mm; depth: 45 mm; valve-hole: 6.5 mm; valve-hole-depth: 40 mm; rim-holes: 24; effective-rim-diameter: 550 mm; hole-offset: 2 mm; greatest-spoke-tension: 1200 N",
      ),
      tyre: part(
        "tyre",
        "size: 28-622; construction: tubeless-ready; straight-side-approved: yes; greatest-pressure: 5 bar; least-pressure: 3 bar; measured-width: 29.5 mm; measured-on-rim: 23 mm; directional: yes",
        "pressure: 4.7 bar",
      ),
      valve: part("valve", "valve-kind: presta; valve-length: 65 mm"),
      "rim-tape": part("rim-tape", "width: 25 mm; airtight: yes"),
      spokes: part("spokes", "spoke-head: straight; thread: 2.0x56", "cross: 2; tension: 1150 N; lacing: as-drilled"),
      nipples: part("nipples", "thread: 2.0x56"),
    }),
    "front-wheel.hub": part(
      "hub",
      "axle: 12x100; axle-fastening: through; over-locknut-width: 100 mm; end-cap-diameter: 19 mm; spoke-holes: 24; spoke-head: straight; rotor-mount: splined-lockring",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 12x142; axle-fastening: through; over-locknut-width: 142 mm; end-cap-recess: 3.5 mm; spoke-holes: 24; spoke-head: straight; rotor-mount: splined-lockring",
    ),
    "front-wheel.axle": part(
      "thru-axle",
      "axle: 12x100; wheel: front; axle-length: 119 mm; axle-thread-pitch: 1 mm; axle-seat: flat",
    ),
    "rear-wheel.axle": part(
      "thru-axle",
      "axle: 12x142; wheel: rear; axle-length: 163 mm; axle-thread-pitch: 1 mm; axle-seat: flat",
    ),
    ...brakes({
      caliper: part(
        "caliper",
        `mount: flat-34; ${disc}; pad-shape: open-pad; rotor-thickness: 1.7 to 2 mm; largest-rotor: 160 mm; smallest-rotor: 140 mm; bolt-grip: 23 to 27 mm; pad-compounds: resin, sintered`,
      ),
      rotor: part(
        "rotor",
        "diameter: 160 mm; mount: splined-lockring; lockring-tool: inside; thickness: 1.8 mm; pad-compounds: resin, sintered",
      ),
      hose,
      pads: part("brake-pads", "pad-shape: open-pad; compound: resin"),
    }),
    "front-brake.caliper": part(
      "caliper",
      `mount: flat-34; ${disc}; pad-shape: open-pad; rotor-thickness: 1.7 to 2 mm; largest-rotor: 160 mm; smallest-rotor: 140 mm`,
      "turned-for: 160 mm",
    ),
    "front-brake.adapter": part("brake-adapter", "sits-on: flat-70; offers: flat-34; rotor-change: 0 mm; wheel: front"),
    "front-brake.lever": part("brake-lever", `${disc}; hand: left`, "side: left"),
    "rear-brake.lever": part("brake-lever", `${disc}; hand: right`, "side: right"),
  },
  "an older mountain bike with direct-pull arms": {
    frame: part(
      "frame",
      "rear-axle: 10x135; rear-bead-seats: 559; rear-brake-mount: rim-bosses; rear-cable-stop: no; widest-tyre: 58 mm; brake-routing: external; dropout: vertical",
    ),
    fork: part(
      "fork",
      "axle: 9x100; bead-seats: 559; brake-mount: rim-bosses; cable-stop: no; widest-tyre: 58 mm; brake-routing: external; retention-tabs: yes",
    ),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 559; inner-width: 19 mm; rim-kind: crotchet; greatest-pressure: 5.5 bar; brake-track: yes; valve-hole: 8.5 mm; depth: 18 mm; rim-holes: 32; greatest-spoke-tension: 1100 N; effective-rim-diameter: 538 mm; hole-offset: 0 mm",
      ),
      tyre: part(
        "tyre",
        "size: 47-559; construction: tube; greatest-pressure: 4.5 bar; least-pressure: 2 bar",
        "pressure: 2.6 bar",
      ),
      tube: part("tube", "bead-seats: 559; tyre-widths: 47 to 57 mm; valve-kind: car; valve-length: 40 mm"),
      "rim-tape": part("rim-tape", "width: 17 mm; airtight: no"),
      spokes: part("spokes", "spoke-head: elbow; thread: 2.0x56", "cross: 3; tension: 1000 N"),
      nipples: part("nipples", "thread: 2.0x56"),
    }),
    "front-wheel.hub": part(
      "hub",
      "axle: 9x100; axle-fastening: quick-release; over-locknut-width: 100 mm; spoke-holes: 32; spoke-head: elbow; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 38 mm; flange-diameter-right: 38 mm; flange-offset-left: 34 mm; flange-offset-right: 34 mm",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 10x135; axle-fastening: quick-release; over-locknut-width: 135 mm; spoke-holes: 32; spoke-head: elbow; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 45 mm; flange-diameter-right: 45 mm; flange-offset-left: 35 mm; flange-offset-right: 20 mm",
    ),
    "front-wheel.axle": part("quick-release", "wheel: front; greatest-span: 115 mm; steel-faces: no"),
    "rear-wheel.axle": part("quick-release", "wheel: rear; greatest-span: 152 mm; steel-faces: no"),
    ...brakes({
      caliper: part(
        "rim-brake",
        "mount: rim-bosses; arms: direct-pull; brake-actuation: cable; brake-pull: long; reach: none",
      ),
      hose: brakeCable,
      pads: part("brake-pads", "compound: rubber; pad-shape: none"),
    }),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long; hand: either", "side: left"),
    "rear-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long; hand: either", "side: right"),
  },
  "a trail bike with a smaller wheel behind": {
    frame: part(
      "frame",
      "rear-axle: 12x148; rear-bead-seats: 584, 622; mixed-wheels: yes; rear-brake-mount: post-74; rear-native-rotor: 180 mm; rear-largest-rotor: 203 mm; rear-least-rotor: 180 mm; widest-tyre: 66 mm; tallest-tyre: 376 mm; brake-routing: internal",
    ),
    fork: part(
      "fork",
      "axle: 15x110; end-cap-diameter: 31 mm; bead-seats: 622; brake-mount: post-74; native-rotor: 180 mm; largest-rotor: 220 mm; least-rotor: 180 mm; widest-tyre: 68 mm; tallest-tyre: 384 mm; brake-routing: internal",
    ),
    ...wheels({
      tyre: part(
        "tyre",
        "size: 61-622; construction: tubeless-ready; straight-side-approved: yes; greatest-pressure: 3 bar; least-pressure: none",
        "pressure: 1.5 bar",
      ),
      rim: part(
        "rim",
        "bead-seat: 622; inner-width: 30 mm; rim-kind: tubeless-straight-side; greatest-pressure: 3.5 bar; valve-hole: 6.5 mm; valve-hole-depth: 14 mm",
      ),
      valve: part("valve", "valve-kind: presta; valve-length: 44 mm"),
      "rim-tape": part("rim-tape", "width: 33 mm; airtight: yes"),
    }),
    "rear-wheel.rim": part(
      "rim",
      "bead-seat: 584; inner-width: 30 mm; rim-kind: tubeless-straight-side; greatest-pressure: 3.5 bar",
    ),
    "rear-wheel.tyre": part(
      "tyre",
      "size: 64-584; construction: tubeless-ready; straight-side-approved: yes; greatest-pressure: 3 bar; least-pressure: 1.2 bar",
      "pressure: 1.7 bar",
    ),
    "front-wheel.hub": part(
      "hub",
      "axle: 15x110; end-cap-diameter: 31 mm; axle-fastening: through; over-locknut-width: 110 mm; rotor-mount: six-bolt-44",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 12x148; axle-fastening: through; over-locknut-width: 148 mm; rotor-mount: six-bolt-44",
    ),
    ...brakes({
      caliper: part(
        "caliper",
        `mount: post-74; ${disc}; rotor-thickness: 1.8 to 2.3 mm; largest-rotor: 220 mm; smallest-rotor: 160 mm`,
      ),
      adapter: part("brake-adapter", "sits-on: post-74; offers: post-74; rotor-change: 20 mm"),
      rotor: part("rotor", "diameter: 200 mm; mount: six-bolt-44; thickness: 2 mm"),
      hose,
    }),
    "front-brake.lever": part("brake-lever", `${disc}; hand: either`, "side: right"),
    "rear-brake.lever": part("brake-lever", `${disc}; hand: either`, "side: left"),
  },
  "a bike with very wide tyres": {
    frame: part(
      "frame",
      "rear-axle: 12x197; rear-bead-seats: 559; rear-brake-mount: tabs-51-rear; rear-largest-rotor: 180 mm; rear-least-rotor: 140 mm; widest-tyre: 125 mm",
    ),
    fork: part(
      "fork",
      "axle: 15x150; bead-seats: 559; brake-mount: tabs-51-front; largest-rotor: 203 mm; least-rotor: 160 mm; widest-tyre: 125 mm",
    ),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 559; inner-width: 76 mm; rim-kind: tubeless-crotchet; greatest-pressure: 2 bar; narrowest-tyre: 95 mm; widest-tyre: 127 mm",
      ),
      tyre: part(
        "tyre",
        "size: 122-559; construction: tubeless-ready; greatest-pressure: 2 bar; least-pressure: 0.4 bar",
        "pressure: 0.6 bar",
      ),
      "rim-tape": part("rim-tape", "width: 78 mm; airtight: yes"),
    }),
    "front-wheel.hub": part("hub", "axle: 15x150; axle-fastening: through; over-locknut-width: 150 mm"),
    "rear-wheel.hub": part("hub", "axle: 12x197; axle-fastening: through; over-locknut-width: 197 mm"),
    ...brakes({ caliper: part("caliper", "mount: post-74; brake-actuation: cable; brake-pull: long") }),
    "front-brake.adapter": part(
      "brake-adapter",
      "sits-on: tabs-51-front; offers: post-74; rotor-change: 20 mm; wheel: front",
    ),
    "rear-brake.adapter": part(
      "brake-adapter",
      "sits-on: tabs-51-rear; offers: post-74; rotor-change: 20 mm; wheel: rear",
    ),
    "front-brake.rotor": part("rotor", "diameter: 180 mm"),
    "rear-brake.rotor": part("rotor", "diameter: 160 mm"),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long", "side: left"),
    "rear-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long", "side: right"),
  },
  "a city bike with a drum in front and a coaster behind": {
    frame: part(
      "frame",
      "rear-axle: 10x135; rear-bead-seats: 622; dropout: track-end; widest-tyre: 47 mm; widest-tyre-with-mudguard: 42 mm; forbids: disc-brake",
    ),
    fork: part("fork", "axle: 9x100; bead-seats: 622; widest-tyre: 47 mm; retention-tabs: yes; brake-mount: brake-arm"),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 622; inner-width: 19 mm; rim-kind: crotchet; greatest-pressure: 6 bar; rim-holes: 36; greatest-spoke-tension: 1200 N; effective-rim-diameter: 602 mm",
      ),
      tyre: part(
        "tyre",
        "size: 40-622; construction: tube; greatest-pressure: 6 bar; least-pressure: 3 bar; directional: yes",
        "pressure: 4 bar",
      ),
      tube: part("tube", "bead-seats: 622, 635; tyre-widths: 32 to 47 mm; valve-kind: woods; valve-length: 40 mm"),
      spokes: part("spokes", "spoke-head: elbow", "cross: 3; tension: 1000 N"),
    }),
    "rear-wheel.spokes": part("spokes", "spoke-head: elbow", "cross: 2; tension: 1000 N"),
    "front-wheel.hub": part(
      "hub",
      "axle: 9x100; axle-fastening: nutted; over-locknut-width: 100 mm; drum-brake: yes; spoke-holes: 36; dynamo-voltage: 6 V; dynamo-power: 3 W; connector: tab-4.8",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 10x135; axle-fastening: nutted; over-locknut-width: 135 mm; coaster-brake: yes; gears: 8; spoke-holes: 36",
    ),
    ...wheels({ axle: part("axle-nuts", "spanner: 15 mm") }),
    "carrying.front-mudguard": part("mudguard", "widest-tyre: 42 mm"),
    "carrying.rear-mudguard": part("mudguard", "widest-tyre: 42 mm"),
    "lighting.front-lamp": part("lamp", "power: dynamo; voltage: 6 V; current: 0.4 A; connector: tab-4.8"),
    "lighting.rear-lamp": part("lamp", "power: dynamo; voltage: 6 V; current: 0.1 A; connector: tab-2.8"),
    ...brakes({ caliper: "none", rotor: "none" }),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: short", "side: right"),
    "rear-brake.lever": "none",
  },
  "a cyclo-cross bike with cantilevers": {
    frame: part(
      "frame",
      "rear-axle: 10x132.5; rear-bead-seats: 622; rear-brake-mount: rim-bosses; rear-cable-stop: yes; widest-tyre: 38 mm; dropout: vertical",
    ),
    fork: part(
      "fork",
      "axle: 9x100; bead-seats: 622; brake-mount: rim-bosses; cable-stop: yes; widest-tyre: 38 mm; retention-tabs: yes",
    ),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 622; inner-width: 17 mm; rim-kind: crotchet; greatest-pressure: 7 bar; brake-track: yes; rim-holes: 32",
      ),
      tyre: part(
        "tyre",
        "size: 33-622; construction: tube; greatest-pressure: 6 bar; least-pressure: 2.5 bar",
        "pressure: 3 bar",
      ),
      tube: part("tube", "bead-seats: 622; tyre-widths: 28 to 37 mm; valve-kind: presta; valve-length: 48 mm"),
    }),
    "front-wheel.hub": part(
      "hub",
      "axle: 9x100; axle-fastening: quick-release; over-locknut-width: 100 mm; spoke-holes: 32",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 10x130; axle-fastening: quick-release; over-locknut-width: 130 mm; spoke-holes: 32",
    ),
    "front-wheel.axle": part("quick-release", "wheel: front; greatest-span: 120 mm"),
    "rear-wheel.axle": part("quick-release", "wheel: rear; greatest-span: 150 mm"),
    ...brakes({
      caliper: part("rim-brake", "mount: rim-bosses; arms: cantilever; brake-actuation: cable; brake-pull: short"),
      hose: brakeCable,
    }),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: short; hand: left", "side: left"),
    "rear-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: short; hand: right", "side: right"),
  },
  "a folding bike with small wheels": {
    frame: part(
      "frame",
      "rear-axle: 10x130; rear-bead-seats: 406; rear-brake-mount: rim-bosses; widest-tyre: 54 mm; dropout: vertical",
    ),
    fork: part("fork", "axle: 9x74; bead-seats: 406; brake-mount: rim-bosses; widest-tyre: 54 mm; retention-tabs: yes"),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 406; inner-width: 19 mm; rim-kind: crotchet; greatest-pressure: 6.5 bar; brake-track: yes; rim-holes: 20; effective-rim-diameter: 390 mm; hole-offset: 0 mm; greatest-spoke-tension: 1100 N",
      ),
      tyre: part(
        "tyre",
        "size: 40-406; construction: tube; greatest-pressure: 6.5 bar; least-pressure: 3 bar",
        "pressure: 4.5 bar",
      ),
      spokes: part("spokes", "spoke-head: elbow", "cross: 1; tension: 950 N"),
    }),
    "front-wheel.hub": part(
      "hub",
      "axle: 9x74; axle-fastening: nutted; over-locknut-width: 74 mm; spoke-holes: 20; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 38 mm; flange-diameter-right: 38 mm; flange-offset-left: 24 mm; flange-offset-right: 24 mm",
    ),
    "rear-wheel.hub": part(
      "hub",
      "axle: 10x130; axle-fastening: quick-release; over-locknut-width: 130 mm; spoke-holes: 20; spoke-hole-diameter: 2.6 mm; flange-diameter-left: 45 mm; flange-diameter-right: 45 mm; flange-offset-left: 37 mm; flange-offset-right: 18 mm",
    ),
    "front-wheel.axle": part("axle-nuts", "spanner: 15 mm"),
    "rear-wheel.axle": part("quick-release", "wheel: rear; greatest-span: 150 mm"),
    ...brakes({
      caliper: part("rim-brake", "mount: rim-bosses; arms: direct-pull; brake-actuation: cable; brake-pull: long"),
    }),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long", "side: right"),
    "rear-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: long", "side: left"),
  },
  "a fixed wheel with one brake": {
    frame: part("frame", "rear-axle: 10x120; rear-bead-seats: 622; dropout: track-end; widest-tyre: 32 mm"),
    fork: part(
      "fork",
      "axle: 9x100; bead-seats: 622; brake-mount: centre-bolt; brake-reach: 45 mm; widest-tyre: 30 mm; retention-tabs: yes",
    ),
    ...wheels({
      rim: part(
        "rim",
        "bead-seat: 622; inner-width: 15 mm; rim-kind: crotchet; greatest-pressure: 9 bar; brake-track: yes; rim-holes: 32",
      ),
      tyre: part(
        "tyre",
        "size: 25-622; construction: tube; greatest-pressure: 8.5 bar; least-pressure: 5 bar",
        "pressure: 7 bar",
      ),
    }),
    "front-wheel.hub": part("hub", "axle: 9x100; axle-fastening: nutted; over-locknut-width: 100 mm; spoke-holes: 32"),
    "front-wheel.spokes": part("spokes", "spoke-head: elbow", "cross: 0"),
    "rear-wheel.hub": part("hub", "axle: 10x120; axle-fastening: nutted; over-locknut-width: 120 mm; spoke-holes: 32"),
    ...wheels({ axle: part("axle-nuts", "spanner: 15 mm") }),
    "drivetrain.cassette": part("sprocket", "cogs: 16 t; fixed: yes"),
    "front-brake.caliper": part(
      "rim-brake",
      "mount: centre-bolt; arms: dual-pivot; brake-actuation: cable; brake-pull: short; reach: 39 to 49 mm",
    ),
    "front-brake.lever": part("brake-lever", "brake-actuation: cable; brake-pull: short", "side: right"),
    "front-brake.rotor": "none",
    "rear-brake.caliper": "none",
    "rear-brake.lever": "none",
  },
};

const own = checks.map(({ code }) => code).filter((code) => /^(wheel|brake)\//.test(code));

describe.each(Object.entries(bikes))("%s", (_, pieces) => {
  const text = checkText(compose(pieces, standards));

  it("has no fault in its wheels and brakes", () => {
    const found = own.flatMap((code) => text.of(code).map(({ message }) => `${code}: ${message}`));
    expect(found).toEqual([]);
  });

  it("is looked at, and not passed over", () => {
    const held = own.filter((code) => text.outcome(code) === "holds");
    expect(held.length).toBeGreaterThan(8);
  });
});
