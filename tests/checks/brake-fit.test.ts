import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";
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

const standards = `
standard hose-fitting valley-olive { form: olive; source: "this test" }
standard hose-fitting ridge-banjo { form: banjo; source: "this test" }
standard brake-fluid valley-oil { base: mineral; source: "this test" }
`;

/** A front brake alone. */
function front(pieces: Pieces): string {
  return compose(
    { "rear-brake.lever": "none", "rear-brake.caliper": "none", "rear-brake.rotor": "none", ...pieces },
    standards,
  );
}

describe("where the caliper holds its pads", () => {
  const code = "brake/rotor-size";
  const post = "mount: post-74";
  const held = (fork: string, rotor: string | "none", adapter?: string, settings = "", caliper = post): string =>
    front({
      fork: part("fork", fork),
      "front-brake.caliper": part("caliper", caliper, settings),
      "front-brake.rotor": rotor === "none" ? "none" : part("rotor", rotor),
      "front-brake.adapter": adapter === undefined ? undefined : part("brake-adapter", adapter),
    });
  const onPosts = (native: number, size: number, change?: number): string =>
    held(
      `brake-mount: post-74; native-rotor: ${native} mm`,
      `diameter: ${size} mm`,
      change === undefined ? undefined : `sits-on: post-74; offers: post-74; rotor-change: ${change} mm`,
    );

  // Arithmetic: shift = (rotor - native) / 2, never negative; 200 and 203 mm are not one.
  it.each([
    [160, 160, undefined, "holds"],
    [160, 180, 20, "holds"],
    [160, 203, 43, "holds"],
    [180, 200, 20, "holds"],
    [160, 160, 0, "holds"],
    [160, 180, undefined, "fails"],
    [160, 203, 40, "fails"],
    [180, 203, 20, "fails"],
    [180, 160, undefined, "fails"],
    [180, 180, 20, "fails"],
  ])("a mount for %d mm with a rotor of %d mm and an adapter of %s: %s", (native, size, change, expected) => {
    expect(outcome(onPosts(native, size, change), code)).toBe(expected);
  });

  it.each([
    [
      160,
      180,
      undefined,
      "too far in and meets the rotor. Fit an adapter of 20 mm, or a rotor of 160 mm.",
      "insert-part",
    ],
    [
      160,
      203,
      40,
      "the caliper sits 1.5 mm too far in and meets the rotor. Fit an adapter of 43 mm, or a rotor of 200 mm.",
      "insert-part",
    ],
    [
      180,
      180,
      20,
      "the caliper sits 10 mm too far out, and the pads overhang the rotor. Fit no adapter, or a rotor of 200 mm.",
      "leave-empty",
    ],
    [
      180,
      160,
      undefined,
      "10 mm too far out, and the pads overhang the rotor. No adapter brings it in: fit a rotor of 180 mm.",
      "swap-part",
    ],
  ])("%d mm, %d mm, %s says what is wrong and what mends it", (native, size, change, said, repair) => {
    const found = finding(onPosts(native, size, change), code);
    expect(found.message).toContain(said);
    expect(found.repairs[0]?.kind).toBe(repair);
    expect(found).toMatchObject({ severity: "error", path: "front-brake.rotor" });
  });

  it("shows the sum", () => {
    expect(finding(onPosts(180, 203, 20), code).message).toBe(
      "rotor is 203 mm across, but fork takes 180 mm and adapter adds 20 mm, 200 mm together: the caliper sits 1.5 mm too far in and meets the rotor. Fit an adapter of 23 mm, or a rotor of 200 mm.",
    );
    expect(finding(onPosts(180, 203, 20), code).related.map(({ message }) => message)).toEqual([
      "rotor: diameter 203 mm",
      "fork: native-rotor 180 mm",
      "adapter: rotor-change 20 mm",
    ]);
  });

  it("is mended from the library", () => {
    const text = `part brake-adapter twenty "Twenty" { sits-on: post-74; offers: post-74; rotor-change: 20 mm }
part brake-adapter forty "Forty" { sits-on: post-74; offers: post-74; rotor-change: 40 mm }
${onPosts(160, 180)}`;
    const titles = repaired(text, code).map(({ title }) => title);
    expect(titles).toEqual(["Add Twenty (twenty) as front-brake.adapter"]);
  });

  it.each([
    ["tabs whose height is standard", "brake-mount: tabs-51-front", "diameter: 160 mm", "holds"],
    ["tabs whose height is standard", "brake-mount: tabs-51-front", "diameter: 140 mm", "fails"],
    [
      "what the fork says before the standard",
      "brake-mount: tabs-51-front; native-rotor: 180 mm",
      "diameter: 180 mm",
      "holds",
    ],
  ])("goes by %s", (_, fork, rotor, expected) => {
    expect(outcome(held(fork, rotor, undefined, "", "mount: tabs-51-front"), code)).toBe(expected);
  });

  const flat = "mount: flat-34";
  const plate = "sits-on: flat-70; offers: flat-34; rotor-change: 0 mm";
  it.each([
    ["native-rotor: 140 mm", 160, "turned-for: 160 mm", "holds"],
    ["native-rotor: 160 mm", 140, "turned-for: 140 mm", "holds"],
    ["axle: 12x100", 160, "turned-for: 160 mm", "holds"],
    ["native-rotor: 140 mm", 140, "", "holds"],
    ["native-rotor: 140 mm", 160, "", "fails"],
    ["native-rotor: 140 mm", 140, "turned-for: 160 mm", "fails"],
    ["native-rotor: 140 mm", 160, "turned-for: 140 mm", "fails"],
  ])("a plate on a fork with %s, a rotor of %d mm, %s: %s", (native, size, settings, expected) => {
    const text = held(`brake-mount: flat-70; ${native}`, `diameter: ${size} mm`, plate, settings, flat);
    expect(outcome(text, code)).toBe(expected);
    if (expected === "holds") return;
    const [mend] = repaired(text, code);
    expect(mend?.title).toBe(
      `Turn the mounting plate for a rotor of ${size} mm (front-brake.caliper.turned-for: ${size} mm)`,
    );
    expect(outcome(mend?.text ?? "", code)).toBe("holds");
  });

  it("does not offer to turn a plate by more than one size", () => {
    const text = held(
      "brake-mount: flat-70; native-rotor: 140 mm",
      "diameter: 180 mm",
      plate,
      "turned-for: 140 mm",
      flat,
    );
    const found = finding(text, code);
    expect(found.message).toBe(
      "rotor is 180 mm across, but the plate of caliper is turned for 140 mm: turn it about, or fit a rotor of 140 mm.",
    );
    expect(found.repairs).toEqual([{ kind: "swap-part", slot: "front-brake.rotor" }]);
  });

  it("says a disc brake without a rotor has nothing to brake", () => {
    const found = finding(held("brake-mount: post-74; native-rotor: 160 mm", "none"), code);
    expect(found.path).toBe("front-brake.caliper");
    expect(found.repairs).toEqual([{ kind: "insert-part", slot: "front-brake.rotor" }]);
  });

  it.each([
    [
      "a rotor larger than the fork allows",
      held("brake-mount: post-74; native-rotor: 160 mm; largest-rotor: 180 mm", "diameter: 203 mm"),
    ],
    [
      "a rotor smaller than the fork allows",
      held("brake-mount: post-74; native-rotor: 180 mm; least-rotor: 180 mm", "diameter: 160 mm"),
    ],
    ["a caliper that does not fit the mount", held("brake-mount: flat-70; native-rotor: 140 mm", "diameter: 160 mm")],
    [
      "a rim brake",
      front({
        fork: part("fork", "brake-mount: rim-bosses"),
        "front-brake.caliper": part("rim-brake", "mount: rim-bosses"),
      }),
    ],
  ])("leaves %s to its own check", (_, text) => {
    expect(outcome(text, code)).toBe("notApplicable");
  });

  it.each([
    ["the fork's native rotor", held("brake-mount: post-74", "diameter: 160 mm"), ["fork.native-rotor"]],
    [
      "the rotor's size",
      held("brake-mount: post-74; native-rotor: 160 mm", "thickness: 1.8 mm"),
      ["front-brake.rotor.diameter"],
    ],
    [
      "what the adapter adds",
      held("brake-mount: post-74; native-rotor: 160 mm", "diameter: 180 mm", "sits-on: post-74; offers: post-74"),
      ["front-brake.adapter.rotor-change"],
    ],
  ])("cannot tell without %s", (_, text, missing) => {
    expect(checkText(text).missing(code)).toEqual(missing);
  });
});

describe("limits of the rotor", () => {
  const code = "brake/rotor-limit";
  const rotor = (size: number, fork: string, caliper = "largest-rotor: 203 mm; smallest-rotor: 140 mm"): string =>
    front({
      fork: part("fork", fork),
      "front-brake.caliper": part("caliper", caliper),
      "front-brake.rotor": part("rotor", `diameter: ${size} mm`),
    });
  const fork = "largest-rotor: 180 mm; least-rotor: 160 mm";

  it.each([
    [160, "holds"],
    [180, "holds"],
    [159.9, "fails"],
    [180.1, "fails"],
    [203, "fails"],
  ])("%d mm between 160 and 180 mm: %s", (size, expected) => {
    expect(outcome(rotor(size, fork), code)).toBe(expected);
  });

  it("asks the caliper as well", () => {
    const small = finding(
      rotor(180, "largest-rotor: 203 mm; least-rotor: 140 mm", "largest-rotor: 160 mm; smallest-rotor: 140 mm"),
      code,
    );
    expect(small.message).toBe("rotor is 180 mm across, but caliper allows 160 mm at most: fit a rotor within that.");
    expect(small.repairs).toEqual([
      { kind: "swap-part", slot: "front-brake.rotor" },
      { kind: "swap-part", slot: "front-brake.caliper" },
    ]);
    const both = finding(rotor(203, fork, "largest-rotor: 185 mm; smallest-rotor: 140 mm"), code);
    expect(both.message).toContain("fork allows 180 mm at most and caliper allows 185 mm at most");
    expect(both.caution).toContain("can break");
    expect(
      finding(
        rotor(140, "largest-rotor: 203 mm; least-rotor: 140 mm", "largest-rotor: 203 mm; smallest-rotor: 160 mm"),
        code,
      ).message,
    ).toContain("caliper allows 160 mm at least");
  });

  it("says the sizes that are allowed, and the room left", () => {
    expect(checkText(rotor(160, fork)).row(code).instances[0]?.verdict).toMatchObject({
      message: "rotor is 160 mm across; fork allows 160 to 180 mm and caliper allows 140 to 203 mm.",
      margin: (180 - 160) / 180,
    });
  });

  it("fails by what is known, and is open otherwise", () => {
    expect(outcome(rotor(203, "largest-rotor: 180 mm", "mount: post-74"), code)).toBe("fails");
    expect(checkText(rotor(180, "largest-rotor: 180 mm", "mount: post-74")).missing(code)).toEqual([
      "fork.least-rotor",
      "front-brake.caliper.largest-rotor",
      "front-brake.caliper.smallest-rotor",
    ]);
    expect(
      outcome(rotor(180, "largest-rotor: none; least-rotor: none", "largest-rotor: none; smallest-rotor: none"), code),
    ).toBe("notApplicable");
  });
});

describe("adapter, thickness, bolts", () => {
  it.each([
    ["wheel: front", "holds"],
    ["wheel: rear", "fails"],
    ["rotor-change: 20 mm", "notApplicable"],
  ])("an adapter with %s in front: %s", (facts, expected) => {
    const text = front({ "front-brake.adapter": part("brake-adapter", facts) });
    expect(outcome(text, "brake/adapter")).toBe(expected);
    if (expected === "fails")
      expect(finding(text, "brake/adapter").message).toContain(
        "made for the rear wheel, but the build fits it at the front",
      );
  });

  const thick = (thickness: string, takes: string): string =>
    front({ "front-brake.caliper": part("caliper", takes), "front-brake.rotor": part("rotor", thickness) });

  it.each([
    [1.8, "holds"],
    [2, "holds"],
    [1.79, "fails"],
    [2.01, "fails"],
  ])("a rotor %d mm thick in a caliper for 1.8 to 2 mm: %s", (thickness, expected) => {
    expect(outcome(thick(`thickness: ${thickness} mm`, "rotor-thickness: 1.8 to 2 mm"), "brake/rotor-thickness")).toBe(
      expected,
    );
  });

  it("says what a thick and a thin rotor do", () => {
    expect(finding(thick("thickness: 2.3 mm", "rotor-thickness: 1.8 to 2 mm"), "brake/rotor-thickness").message).toBe(
      "rotor is 2.3 mm thick when new, but caliper takes 1.8 to 2 mm: it rubs between the pads. Fit a rotor of 1.8 to 2 mm.",
    );
    expect(
      finding(thick("thickness: 1.5 mm", "rotor-thickness: 1.8 to 2 mm"), "brake/rotor-thickness").message,
    ).toContain("pistons come out too far");
    expect(checkText(thick("diameter: 160 mm", "mount: post-74")).missing("brake/rotor-thickness")).toEqual([
      "front-brake.rotor.thickness",
      "front-brake.caliper.rotor-thickness",
    ]);
  });

  const bolted = (frame: string, caliper: string, adapter?: Pieces[string]): string =>
    compose({
      frame: part("frame", frame),
      "rear-brake.caliper": part("caliper", caliper),
      "rear-brake.adapter": adapter,
    });

  it.each([
    ["rear-brake-clamped-thickness: 23 mm", "bolt-grip: 23 to 27 mm", "holds"],
    ["rear-brake-clamped-thickness: 27 mm", "bolt-grip: 23 to 27 mm", "holds"],
    ["rear-brake-clamped-thickness: 22.9 mm", "bolt-grip: 23 to 27 mm", "fails"],
    ["rear-brake-clamped-thickness: 27.1 mm", "bolt-grip: 23 to 27 mm", "fails"],
    // A flat mount always has a thickness; posts and tabs have none that a bolt passes.
    ["rear-brake-mount: flat-34", "mount: flat-34; bolt-grip: 23 to 27 mm", "unknown"],
    ["rear-brake-mount: flat-34", "mount: flat-34", "unknown"],
    ["rear-brake-mount: post-74", "mount: post-74", "notApplicable"],
    ["rear-brake-mount: flat-34; rear-brake-clamped-thickness: 25 mm", "mount: post-74", "notApplicable"],
    ["rear-brake-clamped-thickness: none", "mount: flat-34; bolt-grip: 23 to 27 mm", "notApplicable"],
    ["dropout: vertical", "bolt-grip: 23 to 27 mm", "unknown"],
    ["rear-brake-clamped-thickness: 25 mm", "bolt-grip: none", "notApplicable"],
    ["rear-brake-clamped-thickness: 25 mm", "mount: flat-34", "unknown"],
  ])("%s with %s: %s", (frame, caliper, expected) => {
    expect(outcome(bolted(frame, caliper), "brake/bolt-length")).toBe(expected);
  });

  it("says what long and short bolts do, and that an adapter has its own", () => {
    expect(
      finding(bolted("rear-brake-clamped-thickness: 37 mm", "bolt-grip: 30 to 34 mm"), "brake/bolt-length").message,
    ).toBe(
      "The stay of frame is 37 mm thick, but the bolts of caliper are for 30 to 34 mm: they catch too little thread in the caliper. Order its bolts for 37 mm.",
    );
    expect(
      finding(bolted("rear-brake-clamped-thickness: 20 mm", "bolt-grip: 30 to 34 mm"), "brake/bolt-length").message,
    ).toContain("bottom in the caliper");
    const adapted = bolted(
      "rear-brake-clamped-thickness: 37 mm",
      "bolt-grip: 30 to 34 mm",
      part("brake-adapter", "rotor-change: 20 mm"),
    );
    expect(outcome(adapted, "brake/bolt-length")).toBe("notApplicable");
  });
});

describe("hoses and cables", () => {
  const lined = (kind: "hose" | "cable", line: string, settings: string, pieces: Pieces = {}): string =>
    front({
      "front-brake.hose": part(kind, line, settings),
      "front-brake.lever": "none",
      "front-brake.caliper": "none",
      "rear-brake.hose": "none",
      ...pieces,
    });

  it.each([
    ["lever-fitting: valley-olive; caliper-fitting: ridge-banjo", "holds"],
    ["lever-fitting: valley-olive; caliper-fitting: valley-olive", "fails"],
    ["lever-fitting: ridge-banjo; caliper-fitting: ridge-banjo", "fails"],
    ["lever-fitting: valley-olive", "unknown"],
  ])("a hose with %s: %s", (line, expected) => {
    const text = lined("hose", line, "", {
      "front-brake.lever": part("brake-lever", "hose-fitting: valley-olive"),
      "front-brake.caliper": part("caliper", "hose-fitting: ridge-banjo"),
    });
    expect(outcome(text, "brake/hose")).toBe(expected);
  });

  it("names the fittings and the end", () => {
    const text = lined("hose", "lever-fitting: ridge-banjo; caliper-fitting: ridge-banjo", "", {
      "front-brake.lever": part("brake-lever", "hose-fitting: valley-olive"),
      "front-brake.caliper": part("caliper", "hose-fitting: ridge-banjo"),
    });
    expect(finding(text, "brake/hose").message).toBe(
      "hose has at its lever end ridge-banjo, but lever takes valley-olive: fit a hose with that fitting at the lever, or the fitting of that maker.",
    );
  });

  it.each([
    ["hose", "brake-fluids: DOT-4, DOT-5.1", "brake-fluid: DOT-5.1", "brake-fluid: DOT-5.1", "holds"],
    ["hose", "brake-fluids: DOT-4, DOT-5.1", "brake-fluid: valley-oil", "brake-fluid: valley-oil", "fails"],
    ["hose", "brake-fluids: DOT-4", "brake-fluid: valley-oil", "brake-actuation: hydraulic", "fails"],
    ["hose", "brake-fluids: DOT-4", "brake-actuation: hydraulic", "brake-fluid: DOT-4", "holds"],
    ["hose", "brake-fluids: DOT-4", "brake-fluid: valley-oil", "brake-fluid: DOT-4", "notApplicable"],
    ["hose", "brake-fluids: DOT-4", "brake-actuation: hydraulic", "brake-actuation: hydraulic", "unknown"],
    ["hose", "length: 1700 mm", "brake-fluid: DOT-4", "brake-fluid: DOT-4", "unknown"],
    ["hose", "brake-fluids: DOT-4", "brake-actuation: cable; brake-fluid: none", "brake-fluid: none", "notApplicable"],
    ["cable", "serves: brake", "brake-fluid: DOT-4", "brake-fluid: DOT-4", "notApplicable"],
  ] as const)("a %s with %s for a lever with %s and a caliper with %s: %s", (kind, line, lever, caliper, expected) => {
    const text = lined(kind, line, "", {
      "front-brake.lever": part("brake-lever", lever),
      "front-brake.caliper": part("caliper", caliper),
    });
    expect(outcome(text, "brake/hose-fluid")).toBe(expected);
  });

  it.each([
    ["hose", "length: 1700 mm", "hydraulic", "holds"],
    ["cable", "serves: brake; housing-kind: spiral", "hydraulic", "fails"],
    ["cable", "serves: brake; housing-kind: spiral", "cable", "holds"],
    ["cable", "serves: brake; housing-kind: braided", "cable", "holds"],
    ["cable", "serves: brake; housing-kind: parallel", "cable", "fails"],
    ["cable", "serves: shift; housing-kind: spiral", "cable", "fails"],
    ["cable", "serves: dropper; housing-kind: spiral", "cable", "fails"],
    ["cable", "serves: brake", "cable", "unknown"],
    ["cable", "housing-kind: spiral", "cable", "unknown"],
    ["hose", "length: 1700 mm", "cable", "fails"],
    ["cable", "serves: brake; housing-kind: spiral", "rod", "notApplicable"],
  ] as const)("a %s with %s for a brake moved by %s: %s", (kind, line, actuation, expected) => {
    const text = lined(kind, line, "", { "front-brake.caliper": part("caliper", `brake-actuation: ${actuation}`) });
    expect(outcome(text, "brake/hose-kind")).toBe(expected);
  });

  it("says which line belongs there", () => {
    const said = (kind: "hose" | "cable", line: string, actuation: string): string =>
      finding(
        lined(kind, line, "", { "front-brake.caliper": part("caliper", `brake-actuation: ${actuation}`) }),
        "brake/hose-kind",
      ).message;
    expect(said("hose", "length: 1700 mm", "cable")).toBe(
      "caliper is moved by a cable, but hose is a hose: fit a brake cable.",
    );
    expect(said("cable", "serves: brake", "hydraulic")).toBe(
      "caliper is moved by fluid, but hose is a cable: fit a hose.",
    );
    expect(said("cable", "serves: shift; housing-kind: parallel", "cable")).toContain("parallel wires");
    expect(said("cable", "serves: shift", "cable")).toContain("a cable for shifting, and works a brake here");
    expect(said("cable", "serves: dropper", "cable")).toContain("a cable for a dropper post");
  });

  it.each([
    ["hose", "length: 1700 mm", "cut-length: 1700 mm", "holds"],
    ["hose", "length: 1700 mm", "cut-length: 1701 mm", "fails"],
    ["hose", "length: 1700 mm", "entry: internal", "unknown"],
    ["hose", "outside-diameter: 5 mm", "cut-length: 1000 mm", "unknown"],
    ["hose", "length: none", "cut-length: 1000 mm", "notApplicable"],
    ["cable", "housing-length: 1500 mm; inner-length: 1700 mm", "cut-length: 1500 mm", "holds"],
    ["cable", "housing-length: 1500 mm; inner-length: 1700 mm", "cut-length: 1501 mm", "fails"],
    ["cable", "housing-length: 2000 mm; inner-length: 1700 mm", "cut-length: 1701 mm", "fails"],
    ["cable", "housing-length: 2000 mm", "cut-length: 1000 mm", "unknown"],
  ] as const)("a %s with %s, %s: %s", (kind, line, settings, expected) => {
    expect(outcome(lined(kind, line, settings), "brake/hose-length")).toBe(expected);
  });

  it("names both lengths", () => {
    expect(finding(lined("hose", "length: 1700 mm", "cut-length: 2450 mm"), "brake/hose-length").message).toBe(
      "The build cuts hose to 2450 mm, but it is 1700 mm long as supplied and too short: fit a longer one.",
    );
    expect(
      finding(
        lined("cable", "housing-length: 2000 mm; inner-length: 1700 mm", "cut-length: 1800 mm"),
        "brake/hose-length",
      ).message,
    ).toContain("1700 mm of inner cable, which has to pass all of the housing,");
  });

  it.each([
    ["brake-routing: internal, external", "entry: external", "holds"],
    ["brake-routing: internal", "entry: external", "fails"],
    ["brake-routing: through-headset", "entry: internal", "fails"],
    ["axle: 12x100", "entry: internal", "unknown"],
    ["brake-routing: internal", "cut-length: 800 mm", "unknown"],
  ])("a fork with %s, %s: %s", (fork, settings, expected) => {
    const text = lined("hose", "length: 1700 mm", settings, { fork: part("fork", fork) });
    expect(outcome(text, "brake/hose-entry")).toBe(expected);
  });

  it("runs it where there is a way", () => {
    const text = lined("hose", "length: 1700 mm", "entry: external", {
      fork: part("fork", "brake-routing: internal, through-headset"),
    });
    expect(finding(text, "brake/hose-entry").message).toBe(
      "The build runs hose outside (entry: external), but fork has a way for it inside or through the headset only: run it there.",
    );
    const [mend] = repaired(text, "brake/hose-entry");
    expect(mend?.title).toBe("Run the hose inside (front-brake.hose.entry: internal)");
    expect(outcome(mend?.text ?? "", "brake/hose-entry")).toBe("holds");
  });
});

describe("rim brakes", () => {
  const onFork = (fork: string, brake: string): string =>
    front({ fork: part("fork", fork), "front-brake.caliper": part("rim-brake", brake) });

  it.each([
    [55, "holds"],
    [73, "holds"],
    [54.9, "fails"],
    [73.1, "fails"],
  ])("a reach of 55 to 73 mm where %d mm are asked for: %s", (needed, expected) => {
    const text = onFork(
      `brake-mount: centre-bolt; brake-reach: ${needed} mm`,
      "mount: centre-bolt; reach: 55 to 73 mm",
    );
    expect(outcome(text, "brake/rim-brake-reach")).toBe(expected);
  });

  it("says where the blocks would stand", () => {
    const said = (needed: number): string =>
      finding(
        onFork(`brake-mount: centre-bolt; brake-reach: ${needed} mm`, "mount: centre-bolt; reach: 55 to 73 mm"),
        "brake/rim-brake-reach",
      ).message;
    expect(said(80)).toBe(
      "caliper reaches 55 to 73 mm, but fork asks for 80 mm from the bolt to the rim's track: its blocks stay above the track and rub the tyre. Fit a brake that reaches 80 mm.",
    );
    expect(said(45)).toContain("come below the track and slip under the rim");
  });

  it("leaves a brake that does not fit to its mount", () => {
    const text = onFork(
      "brake-mount: post-74; brake-reach: 80 mm; cable-stop: no; forbids: rim-brake",
      "mount: centre-bolt; reach: 55 to 73 mm; arms: cantilever",
    );
    expect(outcome(text, "brake/caliper-mount")).toBe("fails");
    for (const code of ["brake/rim-brake-reach", "brake/rim-brake-stop", "brake/forbidden"])
      expect(outcome(text, code), code).toBe("notApplicable");
  });

  it("cannot tell without the fork's figure, and has no question for arms on bosses", () => {
    expect(
      checkText(onFork("brake-mount: centre-bolt", "mount: centre-bolt; reach: 55 to 73 mm")).missing(
        "brake/rim-brake-reach",
      ),
    ).toEqual(["fork.brake-reach"]);
    expect(outcome(onFork("brake-mount: rim-bosses", "mount: rim-bosses; reach: none"), "brake/rim-brake-reach")).toBe(
      "notApplicable",
    );
  });

  it.each([
    ["cable-stop: yes", "arms: cantilever", "holds"],
    ["cable-stop: no", "arms: cantilever", "fails"],
    ["cable-stop: none", "arms: cantilever", "fails"],
    ["axle: 9x100", "arms: cantilever", "unknown"],
    ["cable-stop: no", "arms: direct-pull", "notApplicable"],
    ["cable-stop: no", "arms: dual-pivot; cable-stop-needed: yes", "fails"],
    ["cable-stop: no", "arms: cantilever; cable-stop-needed: no", "notApplicable"],
    ["cable-stop: no", "brake-pull: short", "unknown"],
  ])("a fork with %s and a brake with %s: %s", (fork, brake, expected) => {
    const text = onFork(`brake-mount: rim-bosses; ${fork}`, `mount: rim-bosses; ${brake}`);
    expect(outcome(text, "brake/rim-brake-stop")).toBe(expected);
  });

  it("says where a stop would go", () => {
    const text = onFork("brake-mount: rim-bosses; cable-stop: no", "mount: rim-bosses; arms: cantilever");
    expect(finding(text, "brake/rim-brake-stop").message).toContain(
      "but fork has none: fit a cable hanger at the headset or fork crown",
    );
    const rear = compose({
      "front-brake.caliper": "none",
      frame: part("frame", "rear-brake-mount: rim-bosses; rear-cable-stop: no"),
      "rear-brake.caliper": part("rim-brake", "mount: rim-bosses; arms: cantilever"),
    });
    expect(finding(rear, "brake/rim-brake-stop").message).toContain(
      "but frame has none: fit a cable hanger at the seat clamp",
    );
  });
});

describe("what makers forbid", () => {
  const code = "brake/forbidden";
  const disc = (fork: string, rim: string, pads?: string): string =>
    front({
      fork: part("fork", `brake-mount: post-74${fork}`),
      "front-brake.caliper": part("caliper", "mount: post-74"),
      "front-wheel.rim": part("rim", `inner-width: 20 mm${rim}`),
      "front-brake.pads": pads === undefined ? undefined : part("brake-pads", pads),
    });

  it.each([
    ["", "", undefined, "holds"],
    ["; forbids: rim-brake", "; forbids: rim-brake", undefined, "holds"],
    ["; forbids: disc-brake", "", undefined, "fails"],
    ["", "; forbids: disc-brake", undefined, "fails"],
    ["; forbids: disc-brake, rack", "; forbids: disc-brake", undefined, "fails"],
    ["; forbids: sintered-pads", "", "compound: sintered", "fails"],
    ["", "; forbids: sintered-pads", "compound: sintered", "fails"],
    ["; forbids: sintered-pads", "", "compound: resin", "holds"],
    ["", "", "compound: sintered", "holds"],
  ])("a disc brake, fork%s, rim%s, pads %s: %s", (fork, rim, pads, expected) => {
    expect(outcome(disc(fork, rim, pads), code)).toBe(expected);
  });

  it("names the makers", () => {
    expect(finding(disc("; forbids: disc-brake", "; forbids: disc-brake"), code).message).toBe(
      "caliper is a disc brake, which the makers of fork and rim forbid: fit another kind of brake, or parts that may carry it.",
    );
    expect(finding(disc("", "; forbids: disc-brake"), code).message).toContain("the maker of rim forbids");
    expect(finding(disc("; forbids: sintered-pads", "", "compound: sintered"), code).repairs).toEqual([
      { kind: "swap-part", slot: "front-brake.pads" },
    ]);
  });

  it("asks fork and frame about rim brakes, and leaves the rim to its track", () => {
    const rimBrake = (fork: string, rim: string): string =>
      front({
        fork: part("fork", `brake-mount: rim-bosses${fork}`),
        "front-brake.caliper": part("rim-brake", "mount: rim-bosses"),
        "front-wheel.rim": part("rim", `brake-track: yes${rim}`),
      });
    expect(outcome(rimBrake("; forbids: rim-brake", ""), code)).toBe("fails");
    const text = rimBrake("", "; forbids: rim-brake");
    expect(outcome(text, code)).toBe("holds");
    expect(outcome(text, "wheel/rim-brake-track")).toBe("fails");
  });
});

describe("two brakes, two hands", () => {
  const code = "brake/two-brakes";
  const lever = part("brake-lever", "brake-actuation: cable");
  const brake = part("rim-brake", "brake-actuation: cable");
  const bare = part("hub", "wheel: rear");
  const bike = (pieces: Pieces, fields = ""): string =>
    compose({
      frame: part("frame", 'size: "54"'),
      "front-brake.lever": lever,
      "front-brake.caliper": brake,
      "rear-brake.lever": lever,
      "rear-brake.caliper": brake,
      "front-wheel.hub": bare,
      "rear-wheel.hub": bare,
      "drivetrain.cassette": part("sprocket", "cogs: 18 t; fixed: no"),
      ...pieces,
    }).replace('build example "Example" {', `build example "Example" {\n${fields}`);
  const noRear: Pieces = { "rear-brake.lever": "none", "rear-brake.caliper": "none" };
  const noFront: Pieces = { "front-brake.lever": "none", "front-brake.caliper": "none" };

  it.each([
    ["both by hand", {}, "", "holds", undefined],
    [
      "a coaster brake behind",
      { ...noRear, "rear-wheel.hub": part("hub", "coaster-brake: yes") },
      "",
      "holds",
      undefined,
    ],
    [
      "a fixed cog behind",
      { ...noRear, "drivetrain.cassette": part("sprocket", "cogs: 16 t; fixed: yes") },
      "",
      "holds",
      undefined,
    ],
    [
      "a drum in front",
      { "front-brake.caliper": "none", "front-wheel.hub": part("hub", "drum-brake: yes") },
      "",
      "holds",
      undefined,
    ],
    ["one in front", noRear, "", "fails", "error"],
    ["one behind", noFront, "", "fails", "error"],
    ["none", { ...noRear, ...noFront }, "", "fails", "error"],
    ["one, for tricks", noFront, "category: bmx", "fails", "warning"],
    ["none, for tricks", { ...noRear, ...noFront }, "category: bmx", "fails", "error"],
    ["none, on the track", { ...noRear, ...noFront }, "category: track", "notApplicable", undefined],
    ["a brake without a lever", { "rear-brake.lever": "none" }, "", "fails", "error"],
    ["a lever without a brake", { "rear-brake.caliper": "none" }, "", "fails", "error"],
    [
      "a rear brake not said",
      { "rear-brake.lever": undefined, "rear-brake.caliper": undefined },
      "",
      "unknown",
      undefined,
    ],
    // Without a lever, no hand works what may be in the hub.
    ["one behind, the front hub not said", { ...noFront, "front-wheel.hub": undefined }, "", "fails", "error"],
    [
      "a lever in front, the front hub not said",
      { "front-brake.caliper": "none", "front-wheel.hub": undefined },
      "",
      "unknown",
      undefined,
    ],
    ["a rear hub not said", { ...noRear, "rear-wheel.hub": undefined }, "", "unknown", undefined],
    [
      "both by hand, the hub not said",
      { "rear-wheel.hub": undefined, "drivetrain.cassette": undefined },
      "",
      "holds",
      undefined,
    ],
    [
      "none in front, the cog not said",
      { ...noRear, ...noFront, "drivetrain.cassette": undefined },
      "",
      "fails",
      "error",
    ],
  ] as const)("%s: %s %s %s", (_, pieces, fields, expected, grave) => {
    const text = bike(pieces, fields);
    expect(outcome(text, code)).toBe(expected);
    expect(severity(text, code)).toBe(grave);
  });

  it("names what would say whether there is a second brake, and nothing else", () => {
    const missing = (pieces: Pieces) => checkText(bike(pieces, "category: road")).missing(code);
    expect(missing({ ...noFront, "front-wheel.hub": undefined, "rear-wheel.hub": undefined })).toEqual([
      "rear-wheel.hub",
    ]);
    expect(
      missing({ "front-brake.caliper": "none", "front-brake.lever": undefined, "front-wheel.hub": undefined }),
    ).toEqual(["front-brake.lever", "front-wheel.hub"]);
    expect(missing({ ...noRear, "drivetrain.cassette": undefined })).toEqual(["drivetrain.cassette"]);
  });

  it("says what there is and what is missing", () => {
    const one = finding(bike(noRear), code);
    expect(one.message).toBe(
      "The build has one brake only, caliper at the front wheel: a bicycle for the road has two that work by themselves, so that one is left when the other fails. Fit a second.",
    );
    expect(one.path).toBe("front-brake.caliper");
    expect(one.repairs).toEqual([
      { kind: "insert-part", slot: "rear-brake.caliper" },
      { kind: "insert-part", slot: "rear-brake.lever" },
    ]);
    const none = finding(bike({ ...noRear, ...noFront }), code);
    expect(none.message).toContain("The build has no brake:");
    expect(none.message).toContain("Fit two.");
    expect(none.path).toBe("frame");
    expect(none.repairs).toHaveLength(4);
    expect(finding(bike({ "rear-brake.lever": "none" }), code).message).toContain(
      "(the rear brake caliper has no lever)",
    );
    expect(finding(bike({ "rear-brake.caliper": "none" }), code).message).toContain("(lever works no brake)");
  });

  const hands = (frontLever: Pieces[string], rearLever: Pieces[string]): string =>
    compose({ "front-brake.lever": frontLever, "rear-brake.lever": rearLever });
  const at = (hand: string, side: string) => part("brake-lever", `hand: ${hand}`, side === "" ? "" : `side: ${side}`);

  it.each([
    ["left", "left", "right", "right", "holds"],
    ["right", "right", "left", "left", "holds"],
    ["either", "left", "either", "right", "holds"],
    ["either", "left", "either", "left", "fails"],
    ["right", "left", "right", "right", "fails"],
    ["left", "left", "left", "right", "fails"],
    ["left", "", "right", "right", "unknown"],
  ])(
    "in front a lever for %s at %s, behind one for %s at %s: %s",
    (frontHand, frontSide, rearHand, rearSide, expected) => {
      expect(outcome(hands(at(frontHand, frontSide), at(rearHand, rearSide)), "brake/side")).toBe(expected);
    },
  );

  it("says which hand works which, and that it differs by country", () => {
    expect(
      checkText(hands(at("left", "left"), at("right", "right"))).row("brake/side").instances[0]?.verdict,
    ).toMatchObject({
      message:
        "Here the left hand works the front brake and the right hand works the rear brake. Law and habit differ by country: ask the rider, and say it when the bicycle is handed over.",
    });
    expect(outcome(hands(at("right", "right"), "none"), "brake/side")).toBe("holds");
    expect(outcome(hands("none", "none"), "brake/side")).toBe("notApplicable");
  });

  it.each([
    ["left", "right", "Put the lever of the front brake on the left.", "front-brake.lever.side: left"],
    ["either", "right", "Put the lever of the front brake on the left.", "front-brake.lever.side: left"],
    ["right", "either", "Put the lever of the rear brake on the left.", "rear-brake.lever.side: left"],
    ["right", "left", "Put the lever of the rear brake on the left.", "rear-brake.lever.side: left"],
  ])("leaves a lever at the hand it is made for: front %s, rear %s", (front, rear, advice, set) => {
    const text = hands(at(front, "right"), at(rear, "right"));
    expect(finding(text, "brake/side").message).toContain(advice);
    const mends = repaired(text, "brake/side").filter(({ title }) => title.includes("lever.side:"));
    expect(mends.map(({ title }) => title)).toEqual([`Fit it for the left hand (${set})`]);
    expect(outcome(mends[0]?.text ?? "", "brake/side")).toBe("holds");
  });

  it("moves no lever where both are made for the hand they are at", () => {
    const text = hands(at("right", "right"), at("right", "right"));
    expect(finding(text, "brake/side").message).toContain("Both are made for it: fit one for the left.");
    expect(repaired(text, "brake/side").filter(({ title }) => title.startsWith("Fit it for"))).toEqual([]);
  });

  it("puts one of two levers on the other side", () => {
    const text = hands(at("either", "right"), at("either", "right"));
    expect(finding(text, "brake/side").message).toBe(
      "The levers of both brakes are at the right hand (side: right): one hand cannot work two brakes. Put one of them on the left.",
    );
    const [mend] = repaired(text, "brake/side");
    expect(mend?.title).toBe("Fit it for the left hand (rear-brake.lever.side: left)");
    expect(outcome(mend?.text ?? "", "brake/side")).toBe("holds");
    expect(finding(hands(at("right", "left"), at("either", "right")), "brake/side").message).toContain(
      "lever is a lever for the right hand, but the build has it on the left (side: left)",
    );
  });
});
