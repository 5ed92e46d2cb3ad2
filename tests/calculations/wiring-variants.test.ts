import { describe, expect, it } from "vitest";
import type { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { evaluate, missing, none, value } from "./build.ts";
import { run } from "./run.ts";

/** Drives, stems and guards of other kinds than the bicycle in `wiring.test.ts` has. */

/** A build of these parts alone; what is not said of it stays open. */
function bicycle(parts: string, build: string): BuildEvaluation {
  return evaluate(`${parts}\nbuild example {\n${build}\n}\n`);
}

function same(bike: BuildEvaluation, assembly: string, calculation: string, inputs: Readonly<Record<string, unknown>>) {
  for (const [name, expected] of Object.entries(run(calculation, inputs))) {
    expect(value(bike, `${assembly}.${name}`), name).toEqual(expected);
  }
}

const track = `
part frame kestle.frame { chainstay: 393 to 409 mm }
part crankset kestle.arm { rings: 47 t; chainline: 42.4 mm }
part cassette kestle.cogs { cogs: 15 t }
part chain kestle.links {}
part chain kestle.half-links { half-link: yes }
part closure-link kestle.cranked { half-link: yes }
part closure-link kestle.plain {}
part rear-derailleur kestle.long {}
part chainring kestle.ring { teeth: 45 t }
`;
const loop = { ring: 47, cog: 15, chainstay: { least: 393, greatest: 409 } };

describe("a chain without a derailleur", () => {
  const drive = (rest: string, derailleur = "rear-derailleur: none"): BuildEvaluation =>
    bicycle(
      track,
      `frame: kestle.frame\ndrivetrain { crankset: kestle.arm; cassette: kestle.cogs; ${derailleur}; ${rest} }`,
    );

  it("closes at even lengths", () => {
    same(drive("chain: kestle.links"), "drivetrain", "single-speed-chain", loop);
    same(drive("chain: kestle.links; closure-link: kestle.plain"), "drivetrain", "single-speed-chain", loop);
  });

  it("closes at every length with a half link, in the chain or as its closure", () => {
    const half = { ...loop, "half-link": true };
    expect(run("single-speed-chain", half)["tension-links"]).not.toEqual(
      run("single-speed-chain", loop)["tension-links"],
    );
    same(drive("chain: kestle.half-links"), "drivetrain", "single-speed-chain", half);
    same(drive("chain: kestle.links; closure-link: kestle.cranked"), "drivetrain", "single-speed-chain", half);
  });

  it("takes the ring in its own slot, not the crankset's", () => {
    same(drive("chain: kestle.links; chainring: kestle.ring"), "drivetrain", "single-speed-chain", {
      ...loop,
      ring: 45,
    });
  });

  it("is not worked out beside a derailleur, and open while nobody says whether there is one", () => {
    const fitted = drive("chain: kestle.links", "rear-derailleur: kestle.long");
    expect(none(fitted, "drivetrain.tension-links")).toMatch(/derailleur takes up/);
    const open = bicycle(
      track,
      "frame: kestle.frame\ndrivetrain { crankset: kestle.arm; cassette: kestle.cogs; chain: kestle.links }",
    );
    expect(missing(open, "drivetrain.tension-links")).toEqual(["drivetrain.rear-derailleur"]);
  });

  it("is open while nobody says whether it is a chain at all", () => {
    expect(missing(drive("pedals: none"), "drivetrain.tension-links")).toEqual(["drivetrain.chain"]);
  });

  it("means nothing with several rings or cogs", () => {
    const two = (crank: string, cogs: string): BuildEvaluation =>
      evaluate(
        `${track.replace("rings: 47 t", crank).replace("cogs: 15 t", cogs)}\nbuild example { frame: kestle.frame; drivetrain { rear-derailleur: none; crankset: kestle.arm; cassette: kestle.cogs; chain: kestle.links } }`,
      );
    expect(none(two("rings: 47-45 t", "cogs: 15 t"), "drivetrain.tension-links")).toMatch(/more than one ring or cog/);
    expect(none(two("rings: 47 t", "cogs: 15-17 t"), "drivetrain.tension-links")).toMatch(/more than one ring or cog/);
  });
});

describe("a belt", () => {
  const parts = `
part frame kestle.frame { chainstay: 437 to 453 mm }
part crankset kestle.arm { rings: 49 t }
part sprocket kestle.cog { cogs: 21 t }
part belt kestle.eleven { teeth: 117 t; pitch: 11 mm }
part belt kestle.eight { teeth: 157 t; drive-family: belt-8-flanged }
part belt kestle.own { teeth: 131 t; pitch: 9.5 mm; drive-family: belt-8-flanged }
part belt kestle.silent { teeth: 117 t }
`;
  const drive = (belt: string): BuildEvaluation =>
    bicycle(
      parts,
      `frame: kestle.frame\ndrivetrain { rear-derailleur: none; crankset: kestle.arm; cassette: kestle.cog; chain: ${belt} }`,
    );
  const wheels = { ring: 49, sprocket: 21, chainstay: { least: 437, greatest: 453 } };

  it("is laid round ring and sprocket at its own pitch", () => {
    same(drive("kestle.eleven"), "drivetrain", "belt-length", { ...wheels, "belt-teeth": 117, pitch: 11 });
  });

  it("has the pitch of its family where it states none, and its own where it does", () => {
    same(drive("kestle.eight"), "drivetrain", "belt-length", { ...wheels, "belt-teeth": 157, pitch: 8 });
    same(drive("kestle.own"), "drivetrain", "belt-length", { ...wheels, "belt-teeth": 131, pitch: 9.5 });
  });

  it("is not guessed at where nobody says its pitch", () => {
    expect(missing(drive("kestle.silent"), "drivetrain.belt-teeth-least")).toEqual(["drivetrain.chain.pitch"]);
  });

  it("has no chain's lengths", () => {
    expect(none(drive("kestle.eleven"), "drivetrain.tension-links")).toMatch(/belt/);
  });
});

describe("a gear hub", () => {
  const bike = bicycle(
    `
part frame kestle.frame { chainstay: 445 mm }
part crankset kestle.arm { rings: 41 t; crank-length: 172.5 mm }
part sprocket kestle.cog { cogs: 19 t }
part hub kestle.hub { gears: 7; lowest-gear: 0.63; gear-range: 2.44; least-primary-ratio: 1.7 }
part tyre kestle.tread { size: 47-559 }
`,
    `frame: kestle.frame
    drivetrain { rear-derailleur: none; crankset: kestle.arm; cassette: kestle.cog }
    rear-wheel { hub: kestle.hub; tyre: kestle.tread }`,
  );
  const hub = {
    ring: 41,
    sprocket: 19,
    gears: 7,
    "lowest-gear": 0.63,
    "gear-range": 2.44,
    "least-primary-ratio": 1.7,
  };

  it("multiplies ring and sprocket by its own gears", () => {
    same(bike, "drivetrain", "gear-hub", hub);
    const ratios = run("gear-hub", hub);
    same(bike, "drivetrain", "gear-hub-developments", {
      "lowest-hub-ratio": ratios["lowest-hub-ratio"],
      "highest-hub-ratio": ratios["highest-hub-ratio"],
      "wheel-circumference": Math.PI * (559 + 94),
    });
  });
});

describe("the chainline of the rings", () => {
  const line = (rest: string, facts = "chainline: 49.4 mm"): BuildEvaluation =>
    bicycle(
      `
part frame kestle.frame { bottom-bracket-shell: threaded-1.370x24-73 }
part hub kestle.hub { cog-line: 46.7 mm }
part crankset kestle.arm { ${facts} }
part chainring kestle.ring { teeth: 34 t; ring-chainline: 51.8 mm }
part chainring kestle.plain-ring { teeth: 34 t }
part bottom-bracket kestle.cups { drive-side-face: 38.5 mm }
part bottom-bracket kestle.plain-cups {}
`,
      `frame: kestle.frame\ndrivetrain { crankset: kestle.arm; ${rest} }\nrear-wheel.hub: kestle.hub`,
    );
  const front = (rest: string, facts?: string): unknown => value(line(rest, facts), "drivetrain.front-chainline");

  it("is the crankset's, or that of a ring which states its own", () => {
    expect(front("bottom-bracket: kestle.plain-cups")).toBe(49.4);
    expect(front("chainring: kestle.ring; bottom-bracket: kestle.plain-cups")).toBe(51.8);
    expect(front("chainring: kestle.plain-ring; bottom-bracket: kestle.plain-cups")).toBe(49.4);
  });

  it("moves inward by the spacers between ring and crank", () => {
    expect(front("chainring: kestle.ring { ring-spacers: 1.5 mm }")).toBeCloseTo(50.3, 9);
  });

  it("moves outward by what stands under the drive-side cup beyond the makers' own", () => {
    // Half of 73 mm and 3 mm of spacers are 39.5 mm, a millimetre more than the 38.5 mm of the makers.
    expect(
      front("bottom-bracket: kestle.cups { shell-spacers-drive-side: 3 mm; shell-spacers-non-drive-side: 1 mm }"),
    ).toBeCloseTo(50.4, 9);
    // Without any, the cup stands at 36.5 mm; and the ring's own spacers come off besides.
    expect(
      front(
        "bottom-bracket: kestle.cups { shell-spacers-drive-side: 0 mm }; chainring: kestle.ring { ring-spacers: 1.5 mm }",
      ),
    ).toBeCloseTo(48.3, 9);
  });

  it("is held against the cogs, outward positive", () => {
    expect(value(line("chainring: kestle.ring"), "drivetrain.chainline-offset")).toBeCloseTo(5.1, 9);
  });

  it("means nothing where nobody gives the cranks one", () => {
    expect(none(line("pedals: none", "chainline: none"), "drivetrain.chainline-offset")).toMatch(/no chainline/);
  });
});

describe("the allowance of a chain", () => {
  const drive = (rings: string, frame: string): BuildEvaluation =>
    bicycle(
      `
part frame kestle.frame { chainstay: 421 to 433 mm; ${frame} }
part crankset kestle.arm { rings: ${rings} }
part cassette kestle.cogs { cogs: 11-13-16-20-25-31-38-44 t }
part rear-derailleur kestle.long {
  set-up: electronic; total-capacity: 60 t
  chain-allowance-rigid: 5; chain-allowance-sprung: 1; chain-allowance-double: 3
}
`,
      "frame: kestle.frame\ndrivetrain { crankset: kestle.arm; cassette: kestle.cogs; rear-derailleur: kestle.long }",
    );
  const cogs = [11, 13, 16, 20, 25, 31, 38, 44];

  it.each([
    ["36 t", "rear-travel: none", { rings: [36], chainstay: 433, allowance: 5 }],
    [
      "36 t",
      "rear-travel: 120 mm; rear-centre-growth-full: 9 mm",
      { rings: [36], chainstay: 433, "rear-centre-growth": 9, allowance: 1 },
    ],
    ["40-28 t", "rear-travel: none", { rings: [40, 28], chainstay: 433, allowance: 3 }],
    [
      "40-28 t",
      "rear-travel: 120 mm; rear-centre-growth-full: -7 mm",
      { rings: [40, 28], chainstay: 433, "rear-centre-growth": 0, allowance: 3 },
    ],
  ] as const)("is the maker's for %s and %s, at the longest rear centre", (rings, frame, inputs) => {
    same(drive(rings, frame), "drivetrain", "chain-length", { cogs, ...inputs });
  });
});

describe("a bar", () => {
  const cockpit = (stem: string, bar: string): BuildEvaluation =>
    bicycle(
      `
part frame kestle.frame { reach: 382 mm; stack: 566 mm; head-angle: 72.5° }
part headset kestle.race { upper-stack: 31 mm; lower-stack: 13 mm }
part stem kestle.quill { clamping: quill; quill-length: 143 mm; length: 92 mm; angle: -17.5° }
part stem kestle.stub { clamping: threadless; clamp-height: 41 mm; length: 97 mm; angle: 6° }
part handlebar kestle.drop { bar: drop; reach: 78 mm; rise: 5 mm; back-sweep: 4° }
part handlebar kestle.flat { bar: flat; back-sweep: 0° }
part handlebar kestle.swept { bar: swept-back; rise: 61 mm; back-sweep: 75°; control-length: 188 mm }
part grips kestle.hold { length: 126 mm }
`,
      `frame: kestle.frame\nheadset: kestle.race\ncockpit { stem: ${stem}; handlebar: ${bar}; grips: kestle.hold }`,
    );
  const frame = { reach: 382, stack: 566, "head-angle": 72.5, "upper-stack": 31 };
  const quill = { ...frame, "quill-rise": 143 - 72, "stem-length": 92, "stem-angle": -17.5 };
  const plain = { ...frame, "spacers-below": 17, "stem-clamp-height": 41, "stem-length": 97, "stem-angle": 6 };
  const handsOn = (stem: Readonly<Record<string, unknown>>, bar: Readonly<Record<string, unknown>>) => ({
    "bar-clamp-forward": run("bar-position", stem)["bar-clamp-forward"],
    "bar-clamp-height": run("bar-position", stem)["bar-clamp-height"],
    ...bar,
  });

  it("stands on a quill as high as that stands out of the steerer", () => {
    const bike = cockpit("kestle.quill { quill-insertion: 72 mm }", "kestle.drop");
    same(bike, "cockpit", "bar-position", quill);
    same(bike, "cockpit", "hand-position", handsOn(quill, { "bar-reach": 78 }));
    const height = "cockpit.bar-clamp-height";
    expect(missing(cockpit("kestle.quill", "kestle.drop"), height)).toEqual(["cockpit.stem.quill-insertion"]);
    expect(none(cockpit("kestle.quill { quill-insertion: none }", "kestle.drop"), height)).toMatch(/how high the stem/);
  });

  it("carries the hands at its clamp where it is flat, and swept back by the middle of the grips", () => {
    const stem = "kestle.stub { spacers-below: 17 mm }";
    same(cockpit(stem, "kestle.flat"), "cockpit", "hand-position", handsOn(plain, {}));
    same(
      cockpit(stem, "kestle.swept"),
      "cockpit",
      "hand-position",
      handsOn(plain, { rise: 61, "back-sweep": 75, "grip-distance": 188 - 63 }),
    );
  });
});

describe("a pedal behind a mudguard", () => {
  const parts = `
part frame kestle.frame {
  reach: 382 mm; stack: 566 mm; head-angle: 72.5°; head-tube-length: 152 mm; chainstay: 423 mm; bottom-bracket-drop: 71 mm
}
part headset kestle.race { lower-stack: 11 mm }
part fork kestle.prong { axle-to-crown: 392 mm; fork-offset: 47 mm }
part crankset kestle.arm { crank-length: 171 mm; q-factor: 148 mm }
part pedals kestle.flat { outer-edge: 98 mm }
part rim kestle.rim { inner-width: 19.25 mm }
part tyre kestle.tread { size: 35-622 }
part mudguard kestle.guard { width: 46 mm }
part mudguard kestle.narrow-guard { width: 30 mm }
`;
  const build = `
frame: kestle.frame; fork: kestle.prong; headset: kestle.race
drivetrain { crankset: kestle.arm; pedals: kestle.flat }
front-wheel { rim: kestle.rim; tyre: kestle.tread }
rear-wheel.tyre: kestle.tread
`;
  const clearance = (guard: string): number =>
    value(bicycle(parts, `${build}\n${guard}`), "geometry.toe-clearance") as number;
  const bare = bicycle(parts, build);
  const stands = (name: string): number => value(bare, `geometry.${name}`) as number;
  const turn = (stands("frame-tilt") * Math.PI) / 180;
  const inputs = {
    "front-axle-forward": stands("front-axle-forward") * Math.cos(turn) - stands("front-axle-height") * Math.sin(turn),
    "bottom-bracket-drop": stands("front-axle-forward") * Math.sin(turn) + stands("front-axle-height") * Math.cos(turn),
    "head-angle": stands("actual-head-angle"),
    "fork-offset": 47,
    "crank-length": 171,
    "pedal-lateral": 74 + 49,
  };
  const width = value(bare, "front-wheel.tyre-width-on-rim") as number;

  it.each([
    ["none", "carrying.front-mudguard: none", 346, width],
    ["wider than the tyre", "carrying.front-mudguard: kestle.guard { gap: 9 mm }", 355, 46],
    ["narrower than the tyre", "carrying.front-mudguard: kestle.narrow-guard { gap: 13 mm }", 359, width],
  ])("meets it before the tyre: %s", (_, guard, radius, over) => {
    const swept = run("toe-clearance", { ...inputs, "wheel-radius": radius, "tyre-width": over });
    expect(clearance(guard)).toBeCloseTo(swept["toe-clearance"] as number, 6);
  });

  it("has to know how the guard stands", () => {
    const bike = bicycle(parts, `${build}\ncarrying.front-mudguard: kestle.guard`);
    expect(missing(bike, "geometry.toe-clearance")).toEqual(["carrying.front-mudguard.gap"]);
  });
});

describe("a threaded steerer", () => {
  const steering = (fork: string, stem: string, rest = ""): BuildEvaluation =>
    bicycle(
      `
part frame kestle.frame { head-tube-length: 147 mm }
part headset kestle.race { lower-stack: 12 mm; upper-stack: 25 mm }
part fork kestle.prong { ${fork} }
part stem kestle.stem { ${stem} }
`,
      `frame: kestle.frame; headset: kestle.race ${rest}\nfork: kestle.prong\ncockpit.stem: kestle.stem`,
    );
  const stack = { "lower-stack": 12, "head-tube-length": 147, "upper-stack": 25 };

  it("ends below its locknut", () => {
    same(steering("steerer-shape: threaded", "clamping: quill"), "steering", "threaded-steerer", stack);
    same(
      steering("steerer-shape: threaded", "clamping: quill", "{ locknut-spacers: 4 mm }"),
      "steering",
      "threaded-steerer",
      { ...stack, "locknut-spacers": 4 },
    );
  });

  it("is told by a quill where the fork does not say, and is none where it says otherwise", () => {
    same(steering("", "clamping: quill"), "steering", "threaded-steerer", stack);
    expect(none(steering("", "clamping: threadless"), "steering.locknut-height")).toMatch(/nothing says/);
    expect(none(steering("steerer-shape: round", "clamping: quill"), "steering.locknut-height")).toMatch(
      /not threaded/,
    );
  });
});
