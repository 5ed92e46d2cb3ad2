import { describe, expect, it } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { checkText } from "./check-text.ts";
import { compose, type Pieces, part } from "./compose.ts";

const families = `
standard shift-family trail-cable { actuation: cable }
standard shift-family road-radio { actuation: electronic }
standard shift-family city-hub { actuation: cable }
`;

/** Bikes as good shops build them every day. A check that finds fault with one of them cries wolf. */
const bikes: Readonly<Record<string, Pieces>> = {
  "a hardtail with one ring": {
    frame: part(
      "frame",
      "chainstay: 435 mm; rear-travel: none; chainline: 52 mm; largest-ring: 36 t; dropout: vertical",
    ),
    "drivetrain.rear-derailleur": part(
      "rear-derailleur",
      "speeds: 12; set-up: cable; shift-family: trail-cable; largest-cog: 52 t; smallest-cog: 10 t; least-largest-cog: 50 t; total-capacity: 42 t; chain-allowance-rigid: 4",
    ),
    "drivetrain.rear-controller": part("shift-controller", "speeds: 12; actuation: cable; shift-family: trail-cable"),
    "drivetrain.front-derailleur": "none",
    "drivetrain.cassette": part(
      "cassette",
      "speeds: 12; cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t; drive-family: 12-speed; cog-pitch: 3.6 mm",
    ),
    "drivetrain.crankset": part("crankset", "rings: none; chainline: 52 mm"),
    "drivetrain.chainring": part("chainring", "teeth: 32 t; drive-family: 12-speed; ring-profile: alternating"),
    // 32 t with 52 t at 435 mm: 110.786 by open-belt geometry, and four more up to an even number.
    "drivetrain.chain": part(
      "chain",
      "speeds: 12; drive-family: 12-speed; closure: closure-link; links-supplied: 126",
      "links: 116",
    ),
    "drivetrain.closure-link": part("closure-link", "speeds: 12; drive-family: 12-speed; reusable: no"),
    "rear-wheel.hub": part("hub", "cog-line: 46.5 mm"),
  },
  "a trail bike with rear suspension and motors": {
    frame: part(
      "frame",
      "chainstay: 438 mm; rear-travel: 140 mm; rear-centre-growth-full: 11 mm; chainline: 52 to 55 mm; largest-ring: 34 t; dropout: vertical",
    ),
    "drivetrain.rear-derailleur": part(
      "rear-derailleur",
      "speeds: 12; set-up: direct-mount; power: own-battery; shift-family: road-radio; largest-cog: 52 t; smallest-cog: 10 t; total-capacity: 42 t; chain-allowance-sprung: 2",
    ),
    "drivetrain.rear-controller": part(
      "shift-controller",
      "speeds: 12; actuation: electronic; shift-family: road-radio",
    ),
    "drivetrain.front-derailleur": "none",
    "drivetrain.cassette": part(
      "cassette",
      "speeds: 12; cogs: 10-12-14-16-18-21-24-28-32-38-44-52 t; drive-family: 12-speed-large-roller; cog-pitch: 3.6 mm",
    ),
    "drivetrain.crankset": part(
      "crankset",
      "rings: 32 t; drive-family: 12-speed-large-roller; ring-profile: alternating; chainline: 55 mm",
    ),
    // 112.5 links at 449 mm by open-belt geometry, and two more up to an even number.
    "drivetrain.chain": part(
      "chain",
      "speeds: 12; drive-family: 12-speed-large-roller; closure: closure-link; links-supplied: 126",
      "links: 116",
    ),
    "drivetrain.closure-link": part("closure-link", "speeds: 12; drive-family: 12-speed-large-roller; reusable: no"),
    "rear-wheel.hub": part("hub", "cog-line: 46.5 mm"),
  },
  "a road bike with two rings": {
    frame: part(
      "frame",
      "chainstay: 410 mm; rear-travel: none; chainline: 43.5 to 45 mm; largest-ring: 50 t; largest-outer-ring: 53 t; largest-inner-ring: 39 t; dropout: vertical",
    ),
    "drivetrain.rear-derailleur": part(
      "rear-derailleur",
      "speeds: 11; set-up: electronic; shift-family: road-radio; largest-cog: 34 t; smallest-cog: 11 t; total-capacity: 39 t; greatest-front-difference: 16 t",
    ),
    "drivetrain.rear-controller": part(
      "brake-lever",
      "brake-actuation: hydraulic; speeds: 11; actuation: electronic; shift-family: road-radio",
    ),
    "drivetrain.front-derailleur": part(
      "front-derailleur",
      "rings: 2; actuation: electronic; shift-family: road-radio; largest-ring: 53 t; least-largest-ring: 46 t; capacity: 16 t; chainline: 43.5 to 45 mm",
    ),
    "drivetrain.front-controller": part(
      "brake-lever",
      "brake-actuation: hydraulic; speeds: 2; actuation: electronic; shift-family: road-radio",
    ),
    "drivetrain.cassette": part(
      "cassette",
      "speeds: 11; cogs: 11-13-15-17-19-21-23-25-27-30-34 t; drive-family: 11-speed; cog-pitch: 3.69 mm",
    ),
    "drivetrain.crankset": part(
      "crankset",
      "rings: 50-34 t; drive-family: 11-speed; ring-profile: ramped; chainline: 43.5 mm; ring-spacing: 7 mm",
    ),
    "drivetrain.chain": part(
      "chain",
      "speeds: 11; drive-family: 11-speed; closure: pin; links-supplied: 116",
      "links: 110",
    ),
    "rear-wheel.hub": part("hub", "cog-line: 43.7 mm"),
  },
  "an old tourer with three rings and a friction lever": {
    frame: part(
      "frame",
      "chainstay: 17.3 in; rear-travel: none; chainline: 45 mm; largest-ring: 48 t; largest-outer-ring: 50 t; largest-inner-ring: 30 t; dropout: horizontal",
    ),
    "drivetrain.rear-derailleur": part(
      "rear-derailleur",
      "speeds: 8; set-up: cable; shift-family: trail-cable; largest-cog: 34 t; smallest-cog: 11 t; total-capacity: 43 t; greatest-front-difference: 22 t",
    ),
    "drivetrain.rear-controller": part("shift-controller", "speeds: none; actuation: cable; shift-family: city-hub"),
    "drivetrain.front-derailleur": part(
      "front-derailleur",
      "rings: 3; actuation: cable; shift-family: trail-cable; largest-ring: 48 t; capacity: 22 t; chainline: 45 to 47.5 mm",
    ),
    "drivetrain.front-controller": part(
      "shift-controller",
      "speeds: none; actuation: cable; shift-family: trail-cable",
    ),
    "drivetrain.cassette": part(
      "cassette",
      "speeds: 7; cogs: 13-15-17-19-21-24-28 t; drive-family: 8-speed; cog-pitch: 5 mm",
    ),
    "drivetrain.crankset": part(
      "crankset",
      "rings: 46-36-26 t; drive-family: 8-speed; ring-profile: ramped; chainline: 45 mm; ring-spacing: 8 mm",
    ),
    // 46 t with 28 t at 439.4 mm: 106.4 links by open-belt geometry, and two more up to an even number.
    "drivetrain.chain": part(
      "chain",
      "speeds: 8; drive-family: 8-speed; closure: pin; links-supplied: 116",
      "links: 110",
    ),
    "rear-wheel.hub": part("hub", "cog-line: 44 mm"),
  },
  "a town bike with a coaster brake and three gears inside": {
    frame: part(
      "frame",
      "chainstay: 445 to 470 mm; rear-travel: none; chainline: 42 to 45 mm; largest-ring: 48 t; dropout: horizontal; material: steel",
    ),
    "drivetrain.rear-derailleur": "none",
    "drivetrain.front-derailleur": "none",
    "drivetrain.rear-controller": part("shift-controller", "speeds: 3; actuation: cable; shift-family: city-hub"),
    "drivetrain.cassette": part(
      "sprocket",
      "cogs: 19 t; drive-family: 3/32-inch; fixed: no; retention: snap-ring; offset: 0 mm",
    ),
    "drivetrain.crankset": part(
      "crankset",
      "rings: 38 t; drive-family: 3/32-inch; ring-profile: even; chainline: 43 mm",
    ),
    // 102 links of chain for 38 t with 19 t are taut at 464.5 mm by open-belt geometry.
    "drivetrain.chain": part(
      "chain",
      "speeds: 1; drive-family: 1/8-inch; closure: spring-clip; links-supplied: 114",
      "links: 102",
    ),
    "rear-wheel.hub": part(
      "hub",
      "gears: 3; least-primary-ratio: 1.8; actuation: cable; shift-family: city-hub; coaster-brake: yes; dropout-washers: horizontal; cog-line: 43 mm",
      "arm-fixed: yes",
    ),
  },
  "a fixed wheel": {
    frame: part(
      "frame",
      "chainstay: 390 to 405 mm; rear-travel: none; chainline: 42 mm; largest-ring: 52 t; dropout: track-end",
    ),
    "drivetrain.rear-derailleur": "none",
    "drivetrain.front-derailleur": "none",
    "drivetrain.cassette": part(
      "sprocket",
      "cogs: 16 t; drive-family: 1/8-inch; fixed: yes; thread: 1.375x24; retention: left-hand-lockring",
    ),
    "drivetrain.crankset": part(
      "crankset",
      "rings: 48 t; drive-family: 1/8-inch; ring-profile: even; chainline: 42 mm",
    ),
    "drivetrain.chain": part(
      "chain",
      "speeds: 1; drive-family: 1/8-inch; closure: spring-clip; links-supplied: 114",
      "links: 96",
    ),
    "rear-wheel.hub": part("hub", "freewheel-thread: 1.375x24-with-lockring; freehub: none; cog-line: 42 mm"),
  },
  "a belt with eight gears inside": {
    frame: part(
      "frame",
      "chainstay: 440 to 455 mm; rear-travel: none; chainline: 45 to 47 mm; dropout: sliding; belt-opening: yes; belt-approved: yes",
    ),
    "drivetrain.rear-derailleur": "none",
    "drivetrain.front-derailleur": "none",
    "drivetrain.rear-controller": part("shift-controller", "speeds: 8; actuation: cable; shift-family: city-hub"),
    "drivetrain.cassette": part("sprocket", "cogs: 24 t; drive-family: belt-11-centred; fixed: no"),
    "drivetrain.crankset": part("crankset", "rings: none"),
    "drivetrain.chainring": part("belt-ring", "teeth: 50 t; drive-family: belt-11-centred; ring-chainline: 46 mm"),
    "drivetrain.chain": part(
      "belt",
      "teeth: 118 t; pitch: 11 mm; drive-family: belt-11-centred; line-tolerance: 1 mm; smallest-sprocket: 22 t",
    ),
    "rear-wheel.hub": part(
      "hub",
      "gears: 8; least-primary-ratio: 2; actuation: cable; shift-family: city-hub; dropout-washers: vertical; cog-line: 45.6 mm",
    ),
  },
};

/** The checks of numbers and lines; how parts are fixed to each other is not stated by these bikes. */
const asked = checks.filter(({ code }) =>
  /^drivetrain\/(actuation|belt-|cage-|chain-(angle|length|parity|supplied|width)|chainline|closure-|coaster-|cog-|drive-|fixed-|front-(derailleur-(capacity|chainline|range)|difference|positions)|gear-hub-|indexing|larg|least-|ring-(clearance|profile)|shift-family|single-|smallest-|speeds|tensioner-forbidden|torque-)/.test(
    code,
  ),
);

describe.each(Object.entries(bikes))("%s", (_, pieces) => {
  const text = checkText(compose(pieces, families));

  it("has nothing found wrong with it", () => {
    const found = asked.flatMap(({ code }) => text.of(code).map(({ message }) => `${code}: ${message}`));
    expect(found).toEqual([]);
  });

  it("leaves nothing open", () => {
    const open = asked.flatMap(({ code }) => text.missing(code).map((path) => `${code}: ${path}`));
    expect(open).toEqual([]);
  });

  it("still has nothing found wrong when any one fact is left out", () => {
    // Leaving these out says that there is none, or changes what the bike is.
    const meansNone = /^(belt-opening|fixed-lockring-thread|closure|speeds: none|rings|teeth|cogs)/;
    for (const [slot, piece] of Object.entries(pieces)) {
      if (piece === undefined || piece === "none") continue;
      const facts = piece.facts.split("; ");
      for (const left of facts) {
        if (meansNone.test(left) || (piece.kind === "brake-lever" && left.startsWith("actuation"))) continue;
        const rest = { ...piece, facts: facts.filter((fact) => fact !== left).join("; ") };
        const less = checkText(compose({ ...pieces, [slot]: rest }, families));
        const found = asked.flatMap(({ code }) => less.of(code).map(({ message }) => `${code}: ${message}`));
        expect(found, `without ${slot} ${left}`).toEqual([]);
      }
    }
  });
});
