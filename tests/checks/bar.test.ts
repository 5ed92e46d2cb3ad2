import { describe, expect, it } from "vitest";
import { checkText, repaired, textSlips } from "./check-text.ts";

describe("cockpit/bar-width", () => {
  const code = "cockpit/bar-width";
  const bike = (cut: string, least: string): string => `
part handlebar a.bar "Bar" { width: 780 mm; ${least} }
build example "One" { cockpit.handlebar: a.bar { ${cut} } }
`;
  it.each([
    ["cut-width: 720 mm", "least-width: 720 mm", "holds"],
    ["cut-width: 719.9 mm", "least-width: 720 mm", "fails"],
    ["cut-width: 781 mm", "least-width: 720 mm", "fails"],
    ["cut-width: 740 mm", "least-width: none", "fails"],
    ["cut-width: 780 mm", "least-width: none", "holds"],
    ["cut-width: 740 mm", "", "unknown"],
    ["cut-width: 800 mm", "", "fails"],
    ["", "least-width: 720 mm", "notApplicable"],
  ])("%s, %s: %s", (cut, least, outcome) => {
    expect(checkText(bike(cut, least)).outcome(code)).toBe(outcome);
  });
  it.each([
    ["cut-width: 700 mm", "least-width: 721.3 mm", "cut-width: 721.5 mm"],
    ["cut-width: 700 mm", "least-width: none", "cut-width: 780 mm"],
  ])("mends %s with %s", (cut, least, mended) => {
    expect(repaired(bike(cut, least), code).some(({ text }) => text.includes(mended))).toBe(true);
  });
});

describe("cockpit/bar-end-plugs", () => {
  const code = "cockpit/bar-end-plugs";
  const bike = (slots: string, { grips = "", tape = "", plugs = "", bar = "" } = {}): string => `
part handlebar a.bar "Bar" { ${bar} }
part grips a.grips "Grips" { ${grips} }
part tape a.tape "Tape" { ${tape} }
part bar-end-plugs a.plugs "Plugs" { ${plugs} }
build example "One" { cockpit { handlebar: a.bar; ${slots} } }
`;
  it.each([
    ["grips: a.grips", { grips: "closes-end: yes" }, "holds"],
    ["grips: a.grips", { grips: "closes-end: no" }, "fails"],
    ["grips: a.grips", {}, "unknown"],
    ["grips: a.grips; bar-end-plugs: a.plugs", { plugs: "expanding: no" }, "holds"],
    ["grips: none; tape: a.tape", { tape: "plugs-supplied: yes" }, "holds"],
    ["grips: none; tape: a.tape", { tape: "plugs-supplied: no" }, "fails"],
    ["grips: none; tape: a.tape", {}, "unknown"],
    ["grips: none", {}, "fails"],
    ["", {}, "unknown"],
    // What expands is the bar maker's to allow.
    ["bar-end-plugs: a.plugs", { plugs: "expanding: yes", bar: "bar-ends-allowed: no" }, "fails"],
    ["bar-end-plugs: a.plugs", { plugs: "expanding: yes", bar: "bar-ends-allowed: yes" }, "holds"],
    ["bar-end-plugs: a.plugs", { plugs: "expanding: yes" }, "unknown"],
    ["bar-end-plugs: a.plugs", { bar: "bar-ends-allowed: no" }, "unknown"],
    ["bar-end-plugs: a.plugs", { bar: "bar-ends-allowed: yes" }, "holds"],
  ] as const)("%s with %o: %s", (slots, facts, outcome) => {
    expect(checkText(bike(slots, facts)).outcome(code)).toBe(outcome);
  });
});

describe("cockpit/control-hand", () => {
  const code = "cockpit/control-hand";
  const bike = (hand: string, settings: string): string => `
part brake-lever a.stop "Stop" { clamp-offers: none }
part shift-controller a.pod "Pod" { ${hand} }
build example "One" {
  rear-brake.lever: a.stop { side: right }
  front-brake.lever: a.stop { side: left }
  drivetrain { rear-controller: a.pod { ${settings} }; front-controller: none }
  seat.remote: none
}
`;
  it.each([
    ["hand: right", "side: right", "holds"],
    ["hand: right", "side: left", "fails"],
    ["hand: either", "side: left", "holds"],
    ["hand: either", "", "holds"],
    ["hand: right", "clamp: rear-brake.lever", "holds"],
    ["hand: right", "clamp: front-brake.lever", "fails"],
    ["hand: left", "clamp: front-brake.lever", "holds"],
    ["hand: right", "", "unknown"],
    ["", "side: right", "unknown"],
  ])("%s, %s: %s", (hand, settings, outcome) => {
    expect(checkText(bike(hand, settings)).instance(code, "drivetrain.rear-controller")).toBe(outcome);
  });
});

describe("cockpit/control-clash", () => {
  const code = "cockpit/control-clash";
  const bike = (lever: string, pod: string, extra = ""): string => `
part brake-lever a.stop "Stop" { mount: band-22.2; width: 12 mm }
part shift-controller a.pod "Pod" { mount: band-22.2; width: 18 mm }
part remote a.thumb "Thumb" { mount: band-22.2; width: 10 mm }
build example "One" {
  rear-brake.lever: a.stop { ${lever} }
  drivetrain.rear-controller: a.pod { ${pod} }
  ${extra}
}
`;
  it.each([
    // Half of 12 and half of 18 are 15 mm.
    ["side: right; position: 20 mm", "side: right; position: 35 mm", "holds"],
    ["side: right; position: 20 mm", "side: right; position: 34.9 mm", "fails"],
    ["side: right; position: 34.9 mm", "side: right; position: 20 mm", "fails"],
    ["side: left; position: 20 mm", "side: right; position: 20 mm", "notApplicable"],
    ["side: right; position: 20 mm", "side: right", "notApplicable"],
    ["side: right; position: 20 mm", "clamp: rear-brake.lever; side: right; position: 20 mm", "notApplicable"],
  ])("%s against %s: %s", (lever, pod, outcome) => {
    expect(checkText(bike(lever, pod)).instance(code, "right")).toBe(outcome);
  });
  it("finds the two that are closest among three, and moves the inner one", () => {
    const text = bike(
      "side: right; position: 20 mm",
      "side: right; position: 60 mm",
      "seat.remote: a.thumb { side: right; position: 50 mm }",
    );
    const [found] = checkText(text).of(code);
    expect(found?.path).toBe("drivetrain.rear-controller.position");
    expect(repaired(text, code).some((one) => one.text.includes("a.pod { side: right; position: 64 mm }"))).toBe(true);
    // Here the outer two: half of 12 and half of 10 are 11 mm.
    const outer = bike(
      "side: right; position: 20 mm",
      "side: right; position: 60 mm",
      "seat.remote: a.thumb { side: right; position: 30 mm }",
    );
    expect(checkText(outer).of(code)[0]?.path).toBe("seat.remote.position");
    expect(repaired(outer, code).some((one) => one.text.includes("a.thumb { side: right; position: 31 mm }"))).toBe(
      true,
    );
  });
});

describe("the rise of a handlebar", () => {
  // Bars for tricks and small-wheel racing are sold with 8 to 10 inches of rise; common practice, no source.
  it.each([
    ["9 in", []],
    ["10 in", []],
    ["301 mm", ["value/out-of-bounds"]],
  ])("%s", (rise, slips) => {
    const found = textSlips(`part handlebar test.bar "Bar" { rise: ${rise} }\nbuild example "Example" { }\n`);
    expect(found.map((slip) => slip.split(":")[0])).toEqual(slips);
  });
});

describe("cockpit/expander-allowed", () => {
  const code = "cockpit/expander-allowed";
  const inBar = (bar: string, shifter: string, lever = "mount: band-23.8"): string => `
part handlebar a.bar "Bar" { ${bar} }
part shift-controller a.shifter "Shifter" { ${shifter} }
part brake-lever a.lever "Lever" { ${lever} }
build example "Example" {
  cockpit.handlebar: a.bar
  drivetrain.rear-controller: a.shifter
  front-brake.lever: a.lever { side: left }
}
`;

  it.each([
    ["bar-ends-allowed: no", "mount: bar-end", "fails"],
    ["bar-ends-allowed: yes", "mount: bar-end", "holds"],
    ["bar: drop", "mount: bar-end", "unknown"],
    ["bar-ends-allowed: no", "mount: band-23.8", "notApplicable"],
    ["bar-ends-allowed: no", "speeds: 9", "unknown"],
  ])("a bar with %s and a shifter with %s: %s", (bar, shifter, expected) => {
    expect(checkText(inBar(bar, shifter)).instance(code, "drivetrain.rear-controller")).toBe(expected);
  });

  it("is asked of a brake lever in the bar's end too", () => {
    const text = inBar("bar-ends-allowed: no", "mount: band-23.8", "mount: bar-end");
    expect(checkText(text).instance(code, "front-brake.lever")).toBe("fails");
  });
});
