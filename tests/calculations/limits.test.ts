import { describe, expect, it } from "vitest";
import type { Calculation } from "../../server/calculations/define.ts";
import { calculationByName, calculations } from "../../server/calculations/table.ts";
import { refusal, run } from "./run.ts";

type Inputs = Readonly<Record<string, unknown>>;

/** The inputs of a calculation's first example, some of them changed. */
function changed(name: string, change: Inputs): Inputs {
  const [example] = calculationByName(name)?.examples ?? [];
  if (!example) throw new Error(`no calculation is named ${name}`);
  return { ...(example.inputs as Inputs), ...change };
}

describe("what cannot be", () => {
  // What is refused, why, and the same moved by so little that it can be.
  it.each<readonly [name: string, refused: Inputs, reason: RegExp, borne: Inputs]>([
    [
      "belt-length",
      { chainstay: { least: 451, greatest: 440 } },
      /shorter than the shortest/,
      { chainstay: { least: 440, greatest: 440 } },
    ],
    // Two wheels of 40 × 11 ÷ 2π mm.
    [
      "belt-length",
      { chainstay: { least: 140.05, greatest: 451 } },
      /touch/,
      { chainstay: { least: 140.06, greatest: 451 } },
    ],
    // Half of each wheel and two runs of 140.0563 ÷ 11: 65.46 t.
    ["belt-length", { "belt-teeth": 65 }, /too short to go round/, { "belt-teeth": 66 }],
    ["chain-angle", { "cog-pitch": undefined }, /cogs need their cog-pitch/, { "cog-pitch": undefined, cogs: [16] }],
    ["chain-angle", { rings: [32, 24] }, /rings need their ring-spacing/, { rings: [32, 24], "ring-spacing": 8 }],
    // Pitch radii of 101.13 and 68.82 mm.
    ["chain-length", { chainstay: 169.9 }, /touch/, { chainstay: 170 }],
    [
      "front-chainline",
      { "ring-spacing": undefined },
      /need their ring-spacing/,
      { rings: 1, "ring-spacing": undefined },
    ],
    ["gear-hub-developments", { "highest-hub-ratio": 1.09 }, /cannot be lower/, { "highest-hub-ratio": 1.1 }],
    ["gear-hub", { "gear-range": 0.99 }, /cannot be lower/, { "gear-range": 1 }],
    ["rear-chainline", { "stack-width": 127.1 }, /wider than the hub/, { "stack-width": 127 }],
    [
      "single-speed-chain",
      { chainstay: { least: 270, greatest: 269.9 } },
      /shorter than the shortest/,
      { chainstay: { least: 270, greatest: 270 } },
    ],
    [
      "single-speed-chain",
      { chainstay: { least: 9990, greatest: 10_000.1 } },
      /longer than any/,
      { chainstay: { least: 9990, greatest: 10_000 } },
    ],
    // Two wheels of 12.7 ÷ 2 sin 9°, 40.59 mm.
    [
      "single-speed-chain",
      { chainstay: { least: 81.1, greatest: 270 } },
      /touch/,
      { chainstay: { least: 81.3, greatest: 270 } },
    ],
    ["lacing", { "spoke-holes": 31 }, /share out evenly/, { "spoke-holes": 30 }],
    ["lacing", { "flange-diameter-drive-side": 600 }, /large as the rim/, { "flange-diameter-drive-side": 599 }],
    [
      "lacing",
      { "flange-diameter-non-drive-side": 600 },
      /large as the rim/,
      { "flange-diameter-non-drive-side": 599 },
    ],
    ["lacing", { "cross-drive-side": 8 }, /behind the axle/, { "cross-drive-side": 7 }],
    ["lacing", { "cross-non-drive-side": 8 }, /behind the axle/, { "cross-non-drive-side": 7 }],
    // 292.68 mm from hole to rim on the drive side, 294.46 mm on the other.
    ["lacing", { "spoke-hole-diameter": 585.4 }, /reaches the rim/, { "spoke-hole-diameter": 585.3 }],
    ["spoke-length", { "flange-diameter": 602 }, /large as the rim/, { "flange-diameter": 601 }],
    ["spoke-length", { cross: 9 }, /behind the axle/, { cross: 8 }],
    ["spoke-length", { "spoke-hole-diameter": 586.6 }, /reaches the rim/, { "spoke-hole-diameter": 586.5 }],
    ["spoke-tensions", { "tension-ratio": 100.1 }, /tighter than the tighter/, { "tension-ratio": 100 }],
    ["tension-balance", { "tension-ratio": 100.1 }, /tighter than the tighter/, { "tension-ratio": 100 }],
    ["tension-spread", { tensions: [] }, /No spoke/, { tensions: [900] }],
    ["pressure-limits", { "tyre-least": 5.01 }, /5.01 bar or more/, { "tyre-least": 5 }],
    ["pressure-warming", { temperature: -273.15 }, /absolute zero/, { temperature: -273.14 }],
    ["starting-pressure", { "rim-width": 28 }, /as wide as the tyre/, { "rim-width": 27.9 }],
    ["starting-pressure", { drop: 60 }, /down to its rim/, { drop: 59.9 }],
    [
      "starting-pressure",
      { "least-pressure": 5.1, "greatest-pressure": 5 },
      /above the greatest/,
      { "least-pressure": 5, "greatest-pressure": 5 },
    ],
    ["tyre-width", { "measured-on-rim": 40 }, /as wide as the tyre/, { "measured-on-rim": 39.9 }],
    // A casing of 40 × (π − 30°) mm.
    ["tyre-width", { "rim-width": 104.72 }, /does not span/, { "rim-width": 104.71 }],
    ["rotor-adapter", { rotor: 159.9 }, /cannot take a smaller/, { rotor: 160 }],
    ["fork-length-effect", { "bottom-bracket-drop": 412 }, /longer than the chainstay/, { "bottom-bracket-drop": 411 }],
    ["fork-length-effect", { "fork-length-change": -3421 }, /behind the rear axle/, { "fork-length-change": -3420 }],
    ["lean-clearance", { "pedal-underside": 100 }, /upright/, { "pedal-underside": 99.9 }],
    ["lean-clearance", { "tyre-radius": 173 }, /wider than the pedal/, { "tyre-radius": 172 }],
    ["toe-clearance", { "tyre-width": 336 }, /wider than the wheel/, { "tyre-width": 335 }],
    ["toe-clearance", { "bottom-bracket-drop": 336 }, /height of the front wheel/, { "bottom-bracket-drop": 335 }],
    ["toe-clearance", { "bottom-bracket-drop": -336 }, /height of the front wheel/, { "bottom-bracket-drop": -300 }],
    ["toe-clearance", { "pedal-lateral": 400 }, /never comes behind/, { "pedal-lateral": 200 }],
    ["wheelbase", { "fork-offset": 371 }, /longer than the fork/, { "fork-offset": 200 }],
    ["wheelbase", { "bottom-bracket-drop": 410 }, /longer than the chainstay/, { "bottom-bracket-drop": 409 }],
    [
      "wheelbase",
      { "front-wheel-radius": 1400, "rear-wheel-radius": 400 },
      /differ more/,
      { "front-wheel-radius": 1300, "rear-wheel-radius": 400 },
    ],
    [
      "bar-position",
      { "spacers-below": undefined },
      /Give the spacers/,
      { "spacers-below": undefined, "quill-rise": 40 },
    ],
    ["bar-position", { "stem-clamp-height": undefined }, /Give the spacers/, { "stem-clamp-height": 0 }],
    // 500 + 350 mm along a straight tube.
    ["post-insertion", { "saddle-height": 850.1 }, /0.1 mm too short/, { "saddle-height": 850 }],
    ["post-insertion", { "saddle-height": 499.9 }, /seat tube alone/, { "saddle-height": 500 }],
    ["rider-centre", { "hands-forward": 1400 }, /out of the rider's reach/, { "hands-forward": 900 }],
    ["saddle-position", { insertion: 350.1 }, /deeper than it is long/, { insertion: 350 }],
    ["saddle-range", { "post-least-insertion": 350.1 }, /more than the post/, { "post-least-insertion": 350 }],
    ["saddle-range", { "frame-least-insertion": 350.1 }, /more than the post/, { "frame-least-insertion": 350 }],
    ["saddle-to-tyre", { "rear-travel": 500 }, /farther than the chainstay/, { "rear-travel": 499 }],
    ["steerer-length", { "cap-gap": 232 }, /no steerer/, { "cap-gap": 231.9 }],
    ["threaded-steerer", { "locknut-gap": 175 }, /no steerer/, { "locknut-gap": 174.9 }],
    ["stem-solutions", { "stem-angles": [] }, /No stem/, { "stem-angles": [0] }],
    ["stem-solutions", { "stem-lengths": [] }, /No stem/, { "stem-lengths": [90] }],
    ["stem-solutions", { "stem-angles": [80] }, /between -80 and 80/, { "stem-angles": [79.9] }],
    ["stem-solutions", { "stem-angles": [-80] }, /between -80 and 80/, { "stem-angles": [-79.9] }],
    ["stem-solutions", { "stem-lengths": [90, 1000] }, /between 0 and 1000/, { "stem-lengths": [90, 999] }],
    ["stem-solutions", { "stem-lengths": [-1, 90] }, /between 0 and 1000/, { "stem-lengths": [0, 90] }],
    // Fourteen lengths with 1429 heights, and with 1428.
    ["stem-solutions", { "greatest-spacers": 3570 }, /Too many/, { "greatest-spacers": 3569 }],
    [
      "chain-growth",
      { "axle-back": 0 },
      /behind the pivot/,
      { "axle-back": 0.1, "axle-up": 0, "rear-travel": 0, sag: 0 },
    ],
    // An arm of 431.42 mm.
    ["chain-growth", { "rear-travel": 397 }, /too short for this travel/, { "rear-travel": 396 }],
    ["chain-growth", { sag: 397 }, /too short for this travel/, { sag: 396 }],
    ["coil-sag", { "unsprung-mass": 53_026 }, /cannot weigh more/, { "unsprung-mass": 53_025 }],
    ["fork-sag", { sag: 100.1 }, /no more than all/, { sag: 100 }],
    ["shock-sag", { sag: 100.1 }, /no more than all/, { sag: 100 }],
    ["centre-of-mass", { masses: [] }, /No mass/, {}],
    ["centre-of-mass", { forward: [0, 300, 900] }, /4 masses need/, {}],
    ["centre-of-mass", { heights: [0, 300, 900] }, /4 masses need/, {}],
    ["centre-of-mass", { masses: [2000, -1, 4000, 3000] }, /no mass less than zero/, { masses: [2000, 0, 4000, 3000] }],
    ["centre-of-mass", { masses: [0, 0, 0, 0] }, /All masses are zero/, { masses: [0, 0, 0, 1] }],
    ["price", { prices: "GBP 1.5x" }, /is no price/, { prices: "GBP 1.5" }],
    ["price", { prices: "gbp 1.50" }, /is no price/, { prices: "GBP 1.50" }],
    ["price", { prices: "GBP 1.50, 2.00" }, /2.00 is no price/, { prices: "" }],
    ["riding-load", { "front-share": 100 }, /cannot carry all/, { "front-share": 99.9 }],
    ["wheel-loads", { "centre-forward": -0.1 }, /tip over/, { "centre-forward": 0 }],
    ["wheel-loads", { "centre-forward": 1020.1 }, /tip over/, { "centre-forward": 1020 }],
    ["bolt-circle", { bolts: 1 }, /two bolts or more/, { bolts: 2 }],
    ["bolt-circle", { bolts: 5.5 }, /two bolts or more/, { bolts: 6 }],
    ["bolt-circle", { "bolt-circle": undefined }, /Give either/, { "bolt-circle": undefined, "adjacent-distance": 60 }],
    ["bolt-circle", { "adjacent-distance": 60 }, /not both/, {}],
    ["bolt-preload", { share: 100.1 }, /no more than all/, { share: 100 }],
    // 0.9382 × 6.3952 is 6.
    ["bolt-preload", { "thread-pitch": 6.3953 }, /no core/, { "thread-pitch": 6.395 }],
    [
      "wrench-extension",
      { extension: 200, "extension-angle": 180 },
      /no lever left/,
      { extension: 199.9, "extension-angle": 180 },
    ],
  ])("%s: %o", (name, refused, reason, borne) => {
    expect(refusal(name, changed(name, refused))).toMatch(reason);
    run(name, changed(name, borne));
  });

  it("says of a gap under the cap that it is more than allowed above 5 mm alone", () => {
    const said = (gap: number): readonly string[] => {
      const lines: string[] = [];
      calculationByName("steerer-length")?.compute({ "steerer-stack": 200, "cap-gap": gap } as never, {
        step: (text) => lines.push(text),
      });
      return lines;
    };
    expect(said(5)).toEqual(["200 mm − 5 mm = 195 mm"]);
    expect(said(5.1)).toEqual(["200 mm − 5.1 mm = 194.9 mm", "More than 5 mm of gap is more than ISO 4210-2 allows"]);
  });
});

/** Inputs that may be zero, and those that may be negative too; every other number must be more than zero. */
const mayBeZero: Readonly<Record<string, readonly string[]>> = {
  "chain-length": ["allowance"],
  "front-chainline": ["tube-to-outer-ring"],
  "rear-chainline": ["locknut-to-cog"],
  "bar-position": ["upper-stack", "spacers-below", "stem-clamp-height", "stem-length"],
  "hand-position": ["bar-reach", "grip-distance"],
  "post-insertion": ["saddle-height-above-rails"],
  "saddle-position": ["insertion", "saddle-height-above-rails"],
  "saddle-range": ["saddle-height-above-rails", "post-least-insertion", "frame-least-insertion", "greatest-insertion"],
  "saddle-to-tyre": ["rails-to-tail", "dropper-travel", "rear-travel"],
  "spacers-for-height": ["spacers-below"],
  "steerer-length": ["cap-gap"],
  "steerer-stack": [
    "lower-stack",
    "head-tube-length",
    "upper-stack",
    "spacers-below",
    "stem-clamp-height",
    "spacers-above",
  ],
  "threaded-steerer": ["lower-stack", "head-tube-length", "upper-stack", "locknut-spacers", "locknut-gap"],
  "stem-solutions": ["upper-stack", "stem-clamp-height", "greatest-spacers"],
  "lean-clearance": ["tyre-radius"],
  "toe-clearance": ["pedal-lateral"],
  wheelbase: ["head-tube-length", "lower-stack"],
  "chain-growth": ["rear-travel", "sag"],
  "coil-sag": ["unsprung-mass"],
  lacing: ["spoke-hole-diameter", "cross-drive-side", "cross-non-drive-side"],
  "spoke-length": ["spoke-hole-diameter", "cross"],
  "pressure-limits": ["tyre-least"],
  "pressure-warming": ["pressure"],
  "riding-load": ["rider-mass", "kit-mass", "bike-mass", "front-rack-load", "rear-rack-load"],
  "wheel-loads": ["centre-forward"],
};
const mayBeNegative: Readonly<Record<string, readonly string[]>> = {
  "chain-angle": ["chainline", "cog-line"],
  "chain-length": ["rear-centre-growth"],
  "chainline-offset": ["chainline", "cog-line"],
  "wrench-extension": ["extension-angle"],
  "bar-position": ["reach", "quill-rise", "stem-angle"],
  "hand-position": ["bar-clamp-forward", "bar-clamp-height", "rise", "back-sweep"],
  "post-insertion": ["seat-tube-offset", "post-setback"],
  "rider-centre": ["saddle-setback", "hands-forward", "hands-height"],
  "saddle-position": ["seat-tube-offset", "post-setback", "saddle-shift"],
  "saddle-range": ["seat-tube-offset", "post-setback"],
  "saddle-to-bar-drop": ["saddle-top-height", "bar-clamp-height", "saddle-setback", "bar-clamp-forward"],
  "saddle-to-tyre": ["rails-back", "tail-rise", "bottom-bracket-drop", "growth-full"],
  "spacers-for-height": ["hands-height", "wanted-height"],
  "stem-solutions": ["reach", "target-forward", "target-height"],
  "effective-top-tube": ["reach"],
  "fork-length-effect": ["fork-length-change", "bottom-bracket-drop", "fork-offset"],
  "lean-clearance": ["pedal-underside"],
  "toe-clearance": ["bottom-bracket-drop", "fork-offset"],
  trail: ["fork-offset"],
  wheelbase: ["fork-offset", "bottom-bracket-drop"],
  "chain-growth": ["pivot-forward", "pivot-up", "axle-up"],
  lacing: ["flange-offset-drive-side", "flange-offset-non-drive-side", "hole-offset"],
  "spoke-length": ["flange-offset", "hole-offset"],
  "pressure-warming": ["temperature", "other-temperature"],
};

/** Refusals that tell the input by what it does. */
const otherWords = "two bolts|behind the pivot|tip over";

/** Numbers among the inputs, adjustable ones as ranges of no width; what stands for another is left out. */
function numbersOf({ name, inputs }: Calculation): readonly (readonly [string, (value: number) => unknown])[] {
  // Given beside the other, it would be refused for that.
  const beside = name === "bolt-circle" ? ["adjacent-distance"] : [];
  return Object.entries(inputs).flatMap(([input, { field }]) => {
    const { type } = field;
    if (beside.includes(input) || !["quantity", "number", "count"].includes(type.type)) return [];
    const adjustable = "role" in type && type.role !== "exact";
    return [[input, (value: number) => (adjustable ? { least: value, greatest: value } : value)] as const];
  });
}

describe.each(calculations.map((calculation) => [calculation.name, calculation] as const))(
  "%s",
  (name, calculation) => {
    const negative = mayBeNegative[name] ?? [];
    const zero = [...(mayBeZero[name] ?? []), ...negative];

    it("bears nothing and less than nothing where that can be, and refuses it by name elsewhere", () => {
      for (const [input, of] of numbersOf(calculation)) {
        for (const [value, borne] of [
          [0, zero],
          [-0.01, negative],
        ] as const) {
          const results = calculation.compute(changed(name, { [input]: of(value) }) as never) as Inputs;
          const given = `${input} = ${value}`;
          if (borne.includes(input)) expect(results.impossible, given).toBeUndefined();
          else
            expect(String(results.impossible), given).toMatch(
              new RegExp(`${input.replaceAll("-", "[- ]")}|${otherWords}`),
            );
        }
      }
    });
  },
);

describe("the lists of what may be zero", () => {
  it("name inputs that there are", () => {
    for (const [name, inputs] of [...Object.entries(mayBeZero), ...Object.entries(mayBeNegative)]) {
      const own = calculationByName(name)?.inputs ?? {};
      expect(
        inputs.filter((input) => !(input in own)),
        name,
      ).toEqual([]);
    }
  });
});
