import type { Random } from "./random.ts";

/** One kind of part as the generated libraries hold it: every part of a kind fits every build, the numbers differ. */
export interface PartTemplate {
  readonly kind: string;
  /** How many parts of this kind there are in a library of a hundred. */
  readonly share: number;
  /** The slots of a build that take one, with the settings written there. */
  readonly slots: readonly { readonly path: string; readonly settings?: string }[];
  /** Lines of facts, beside mass and price. */
  facts(random: Random): readonly string[];
  /** Grams. */
  readonly mass: readonly [number, number];
}

/** Standards of the generated workshop's own: families that have no published rows. */
export const ownStandards = `standard shift-family north-12 "North twelve-speed" {
  actuation: cable
  speeds: 12
  pull-per-click: 3.3 mm
  actuation-ratio: 1.1
}

standard hydraulic-family north-two "North two-piston" {
}

standard hose-fitting north-olive "North olive" {
  form: olive
}

standard pad-shape north-pad "North pad" {
}
`;

const hub = (wheel: "front" | "rear"): PartTemplate => ({
  kind: "hub",
  share: 3,
  slots: [{ path: `${wheel}-wheel.hub` }],
  mass: [130, 320],
  facts: (random) => [
    `wheel: ${wheel}`,
    `axle: ${wheel === "rear" ? "12x148" : "15x110"}`,
    "axle-fastening: through",
    "axle-torque: 12 to 15 N·m",
    ...(wheel === "rear" ? ["freehub: stepped-driver", "cog-line: 47 mm", "lockring-torque: 40 N·m"] : []),
    "rotor-mount: six-bolt-44",
    "rotor-torque: 6 N·m",
    "spoke-holes: 32",
    "spoke-head: elbow",
    "spoke-hole-diameter: 2.6 mm",
    `flange-diameter-left: ${random.number(50, 60)} mm`,
    `flange-diameter-right: ${random.number(50, 60)} mm`,
    `flange-offset-left: ${random.number(30, 38)} mm`,
    `flange-offset-right: ${random.number(20, 26)} mm`,
  ],
});

/** A whole bike: a 29-inch hardtail with one ring and twelve cogs, every slot filled. */
export const partTemplates: readonly PartTemplate[] = [
  {
    kind: "frame",
    share: 2,
    slots: [{ path: "frame" }],
    mass: [1700, 2400],
    facts: (random) => [
      "hanger-seat: coaxial-12",
      "front-derailleur-mount: none",
      "bottom-bracket-shell: threaded-1.370x24-73",
      "chainline: 52 to 55 mm",
      "largest-ring: 36 t",
      "dropout: vertical",
      "rear-axle: 12x148",
      "rear-axle-torque: 12 to 15 N·m",
      "shell-torque: 35 to 50 N·m",
      "rear-brake-torque: 6 to 8 N·m",
      "crank-clearance: 63 mm",
      "rear-bead-seats: 622",
      "widest-tyre: 66 mm",
      "rear-brake-mount: post-74",
      "rear-native-rotor: 160 mm",
      "rear-largest-rotor: 203 mm",
      "head-tube-upper: ZS44",
      "head-tube-lower: ZS56",
      "seat-tube-bore: 31.6 mm",
      "seat-clamp-diameter: 34.9 mm",
      "seat-clamp-torque: 5 to 6 N·m",
      "least-post-insertion: 90 mm",
      `stack: ${random.number(600, 650)} mm`,
      `reach: ${random.number(420, 490)} mm`,
      "head-angle: 66°",
      "head-tube-length: 110 mm",
      `chainstay: ${random.number(433, 437)} mm`,
      "bottom-bracket-drop: 60 mm",
      "rear-travel: none",
    ],
  },
  {
    kind: "fork",
    share: 2,
    slots: [{ path: "fork", settings: "steerer-length: 190 mm; sag: 20 %" }],
    mass: [1700, 2300],
    facts: (random) => [
      "steerer-diameter: 28.6 mm",
      "crown-race: 40",
      "steerer-supplied: 280 mm",
      "steerer-material: aluminium",
      "steerer-shape: round",
      "axle-to-crown: 531 mm",
      "fork-offset: 44 mm",
      `travel: ${random.number(120, 140)} mm`,
      "axle: 15x110",
      "axle-torque: 12 to 15 N·m",
      "steerer-clamp-torque: <= 8 N·m",
      "brake-torque: 6 to 8 N·m",
      "bead-seats: 622",
      "widest-tyre: 68 mm",
      "brake-mount: post-74",
      "native-rotor: 180 mm",
      "largest-rotor: 203 mm",
    ],
  },
  {
    kind: "headset",
    share: 2,
    slots: [{ path: "headset" }],
    mass: [80, 160],
    facts: () => ["upper: ZS44/28.6", "lower: ZS56/40", "upper-stack: 8 mm", "lower-stack: 7 mm"],
  },
  {
    kind: "rear-derailleur",
    share: 4,
    slots: [{ path: "drivetrain.rear-derailleur" }],
    mass: [260, 360],
    facts: (random) => [
      "speeds: 12",
      "mount: M10x1",
      "set-up: cable",
      "shift-family: north-12",
      "actuation-ratio: 1.1",
      "largest-cog: 52 t",
      "smallest-cog: 10 t",
      `total-capacity: ${random.number(42, 45)} t`,
      "cage: long",
      "chain-allowance-rigid: 4",
      "upper-pulley: 14 t",
      "lower-pulley: 14 t",
      "mounting-torque: 8 to 10 N·m",
      "cable-bolt-torque: 5 N·m",
    ],
  },
  {
    kind: "hanger",
    share: 4,
    slots: [{ path: "drivetrain.hanger" }],
    mass: [15, 30],
    facts: () => [
      "seat: coaxial-12",
      "derailleur-mount: M10x1",
      "mounting-torque: 20 to 25 N·m",
      "derailleur-torque: 8 to 10 N·m",
    ],
  },
  {
    kind: "cassette",
    share: 8,
    slots: [{ path: "drivetrain.cassette" }],
    mass: [330, 520],
    facts: (random) => [
      "speeds: 12",
      `cogs: ${random.pick(["10-12-14-16-18-21-24-28-32-38-45-52", "10-12-14-16-18-21-24-28-33-39-45-51"])} t`,
      "freehub: stepped-driver",
      "drive-family: 12-speed",
      "cog-pitch: 3.65 mm",
      "lockring-torque: 40 N·m",
    ],
  },
  {
    kind: "chain",
    share: 6,
    slots: [{ path: "drivetrain.chain", settings: "links: 116" }],
    mass: [220, 280],
    facts: () => [
      "speeds: 12",
      "drive-family: 12-speed",
      "outer-width: 5.25 mm",
      "links-supplied: 126",
      "closure: closure-link",
    ],
  },
  {
    kind: "closure-link",
    share: 3,
    slots: [{ path: "drivetrain.closure-link" }],
    mass: [3, 5],
    facts: () => ["speeds: 12", "drive-family: 12-speed", "outer-width: 5.25 mm", "reusable: no"],
  },
  {
    kind: "crankset",
    share: 5,
    slots: [{ path: "drivetrain.crankset" }],
    mass: [480, 720],
    facts: (random) => [
      `crank-length: ${random.pick(["165", "170", "172.5", "175"])} mm`,
      "spindle: round-24",
      "ring-mount: splined-3-bolt",
      "chainline: 52 mm",
      "pedal-thread: 9/16x20",
      "arm-bolt-torque: 12 to 14 N·m",
      "ring-bolt-torque: 4 N·m",
      "pedal-torque: 35 to 40 N·m",
      "arm-inside: 68 mm",
      "shell-widths: 68 to 73 mm",
    ],
  },
  {
    kind: "chainring",
    share: 6,
    slots: [{ path: "drivetrain.chainring" }],
    mass: [70, 110],
    facts: () => [
      "teeth: 32 t",
      "ring-mount: splined-3-bolt",
      "drive-family: 12-speed",
      "speeds: 12",
      "ring-profile: alternating",
      "ring-place: single",
      "ring-offset: 0 mm",
      "ring-bolt-torque: 4 N·m",
    ],
  },
  {
    kind: "bottom-bracket",
    share: 3,
    slots: [{ path: "drivetrain.bottom-bracket" }],
    mass: [80, 130],
    facts: () => [
      "shell: threaded-1.370x24-73",
      "spindle: round-24",
      "shell-widths: 68 to 73 mm",
      "spacers-supplied: 2.5 mm",
      "cup-torque: 35 to 50 N·m",
    ],
  },
  {
    kind: "pedals",
    share: 3,
    slots: [{ path: "drivetrain.pedals" }],
    mass: [300, 450],
    facts: () => ["thread: 9/16x20", "foot: platform", "mounting-torque: 35 to 40 N·m"],
  },
  {
    kind: "shift-controller",
    share: 4,
    slots: [{ path: "drivetrain.rear-controller", settings: "clamp: none; side: right" }],
    mass: [100, 140],
    facts: () => [
      "actuation: cable",
      "shift-family: north-12",
      "speeds: 12",
      "pull-per-click: 3.3 mm",
      "mount: band-22.2",
      "hand: right",
      "clamp-torque: 2 to 3 N·m",
      "width: 12 mm",
    ],
  },
  {
    kind: "brake-lever",
    share: 4,
    slots: [
      { path: "front-brake.lever", settings: "side: left" },
      { path: "rear-brake.lever", settings: "side: right" },
    ],
    mass: [90, 130],
    facts: () => [
      "brake-actuation: hydraulic",
      "hydraulic-family: north-two",
      "brake-fluid: DOT-5.1",
      "hose-fitting: north-olive",
      "mount: band-22.2",
      "bars: flat",
      "hand: either",
      "clamp-torque: 4 to 6 N·m",
      "width: 14 mm",
    ],
  },
  {
    kind: "caliper",
    share: 4,
    slots: [{ path: "front-brake.caliper" }, { path: "rear-brake.caliper" }],
    mass: [90, 130],
    facts: () => [
      "mount: post-74",
      "brake-actuation: hydraulic",
      "hydraulic-family: north-two",
      "brake-fluid: DOT-5.1",
      "hose-fitting: north-olive",
      "pad-shape: north-pad",
      "rotor-thickness: 1.8 to 2 mm",
      "mounting-torque: 6 to 8 N·m",
    ],
  },
  {
    kind: "rotor",
    share: 4,
    slots: [{ path: "front-brake.rotor" }],
    mass: [120, 180],
    facts: () => ["diameter: 180 mm", "mount: six-bolt-44", "thickness: 1.8 mm", "mounting-torque: 6 N·m"],
  },
  {
    kind: "rotor",
    share: 3,
    slots: [{ path: "rear-brake.rotor" }],
    mass: [100, 140],
    facts: () => ["diameter: 160 mm", "mount: six-bolt-44", "thickness: 1.8 mm", "mounting-torque: 6 N·m"],
  },
  {
    kind: "stem",
    share: 4,
    slots: [{ path: "cockpit.stem", settings: "spacers-below: 15 mm" }],
    mass: [90, 160],
    facts: (random) => [
      "steerer-clamp: 28.6 mm",
      "bar-clamp: 31.8 mm",
      `length: ${random.pick(["35", "40", "50"])} mm`,
      "angle: 0°",
      "clamp-height: 40 mm",
      "clamping: threadless",
      "steerer-torque: 5 to 6 N·m",
      "bar-torque: 4 to 5 N·m",
    ],
  },
  {
    kind: "handlebar",
    share: 4,
    slots: [{ path: "cockpit.handlebar" }],
    mass: [200, 340],
    facts: (random) => [
      "bar: riser",
      "clamp-diameter: 31.8 mm",
      "control-diameter: 22.2 mm",
      "control-length: 220 mm",
      `width: ${random.pick(["760", "780", "800"])} mm`,
      "stem-clamp-torque: <= 6 N·m",
      "control-clamp-torque: <= 6 N·m",
      "material: aluminium",
    ],
  },
  {
    kind: "grips",
    share: 2,
    slots: [{ path: "cockpit.grips" }],
    mass: [60, 130],
    facts: () => ["inside-diameter: 22.2 mm", "length: 135 mm", "held: clamp", "clamp-torque: 2 to 3 N·m"],
  },
  {
    kind: "seatpost",
    share: 3,
    slots: [{ path: "seat.post", settings: "insertion: 150 mm" }],
    mass: [220, 320],
    facts: () => [
      "post-diameter: 31.6 mm",
      "overall-length: 400 mm",
      "least-insertion: 100 mm",
      "dropper-travel: none",
      "rails: round-7",
      "seat-clamp-torque: <= 6 N·m",
      "rail-clamp-torque: 8 to 10 N·m",
    ],
  },
  {
    kind: "seat-clamp",
    share: 2,
    slots: [{ path: "seat.clamp" }],
    mass: [20, 40],
    facts: () => ["inside-diameter: 34.9 mm", "clamp-torque: 4 to 6 N·m"],
  },
  {
    kind: "saddle",
    share: 3,
    slots: [{ path: "seat.saddle" }],
    mass: [180, 320],
    facts: () => ["rail: round-7", "rail-clamp-torque: 8 to 10 N·m", "height: 45 mm", "width: 145 mm"],
  },
  hub("front"),
  hub("rear"),
  {
    kind: "rim",
    share: 5,
    slots: [{ path: "front-wheel.rim" }, { path: "rear-wheel.rim" }],
    mass: [420, 560],
    facts: (random) => [
      "bead-seat: 622",
      "inner-width: 30 mm",
      "rim-kind: tubeless-crotchet",
      `effective-rim-diameter: ${random.number(596, 606)} mm`,
      "rim-holes: 32",
      "greatest-pressure: 3.5 bar",
      "greatest-spoke-tension: 1250 N",
      "valve-hole: 6.5 mm",
    ],
  },
  {
    kind: "spokes",
    share: 3,
    slots: [
      { path: "front-wheel.spokes", settings: "cross: 3" },
      { path: "rear-wheel.spokes", settings: "cross: 3" },
    ],
    mass: [200, 260],
    facts: () => ["spoke-head: elbow", "end-diameter: 2 mm", "middle-diameter: 1.8 mm", "thread: 2.0x56"],
  },
  {
    kind: "nipples",
    share: 2,
    slots: [{ path: "front-wheel.nipples" }, { path: "rear-wheel.nipples" }],
    mass: [20, 40],
    facts: () => ["thread: 2.0x56", "length: 12 mm"],
  },
  {
    kind: "tyre",
    share: 7,
    slots: [
      { path: "front-wheel.tyre", settings: "pressure: 1.6 bar" },
      { path: "rear-wheel.tyre", settings: "pressure: 1.8 bar" },
    ],
    mass: [750, 1150],
    facts: () => [
      "size: 61-622",
      "construction: tubeless-ready",
      "least-pressure: 1.2 bar",
      "greatest-pressure: 3 bar",
      "narrowest-rim: 25 mm",
      "widest-rim: 35 mm",
    ],
  },
  {
    kind: "valve",
    share: 2,
    slots: [{ path: "front-wheel.valve" }, { path: "rear-wheel.valve" }],
    mass: [8, 14],
    facts: () => ["valve-kind: presta", "valve-length: 45 mm"],
  },
  {
    kind: "rim-tape",
    share: 1,
    slots: [{ path: "front-wheel.rim-tape" }, { path: "rear-wheel.rim-tape" }],
    mass: [8, 14],
    facts: () => ["width: 32 mm", "airtight: yes"],
  },
  {
    kind: "thru-axle",
    share: 2,
    slots: [{ path: "front-wheel.axle" }],
    mass: [60, 80],
    facts: () => [
      "axle: 15x110",
      "axle-length: 148 mm",
      "axle-thread-pitch: 1.5 mm",
      "axle-seat: flat",
      "axle-torque: 12 to 15 N·m",
    ],
  },
  {
    kind: "thru-axle",
    share: 2,
    slots: [{ path: "rear-wheel.axle" }],
    mass: [60, 80],
    facts: () => [
      "axle: 12x148",
      "axle-length: 180 mm",
      "axle-thread-pitch: 1 mm",
      "axle-seat: flat",
      "axle-torque: 12 to 15 N·m",
    ],
  },
];

/** Slots that the generated builds state to be empty. */
export const emptySlots: readonly string[] = ["drivetrain.front-derailleur"];
