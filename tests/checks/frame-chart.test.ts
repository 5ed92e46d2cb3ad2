import { describe, expect, it } from "vitest";
import type { Verdict } from "../../server/checks/define.ts";
import { checkText } from "./check-text.ts";
import { compose, part } from "./compose.ts";

const code = "frame/chart";

/** A frame whose figures agree with each other, sprung behind; every one can be replaced, or left out with an empty text. */
const road: Readonly<Record<string, string>> = {
  reach: "389 mm",
  stack: "564 mm",
  "head-angle": "73°",
  "seat-angle": "73.5°",
  "seat-tube-offset": "0 mm",
  "effective-seat-angle": "73.5°",
  "effective-seat-angle-height": "700 mm",
  // 389 + 564 ÷ tan 73.5° = 389 + 167.1
  "top-tube-effective": "556 mm",
  "head-tube-length": "155 mm",
  chainstay: "413 mm",
  "bottom-bracket-drop": "70 mm",
  "fork-axle-to-crown": "374 mm",
  "fork-offset": "45 mm",
  // 389 + 494 ÷ tan 73° + 45 ÷ sin 73° = 389 + 151.0 + 47.1 = 587.1; with the drop of 70 mm 591.2 in a straight line.
  "front-centre": "591 mm",
  // √(413² − 70²) = 407.0 behind.
  wheelbase: "994 mm",
  // 55 mm × 2.467 to 2.633, the middle third between the two ends.
  "rear-travel": "140 mm",
  "shock-size": "210x55",
  "leverage-start": "2.8",
  "leverage-end": "2.3",
};

function verdict(name: string, changed: Readonly<Record<string, string>> = {}): Verdict {
  const facts = Object.entries({ ...road, ...changed })
    .filter(([, value]) => value !== "")
    .map(([fact, value]) => `${fact}: ${value}`)
    .join("; ");
  const found = checkText(compose({ frame: part("frame", facts) }))
    .row(code)
    .instances.find(({ instance }) => instance === name);
  if (!found) throw new Error(`no instance ${name}`);
  return found.verdict;
}

const names = [
  "effective top tube",
  "effective seat angle",
  "bottom-bracket drop",
  "front centre",
  "wheelbase",
  "rear travel",
];

describe(code, () => {
  it.each(names)("%s of a chart that agrees holds, and shows its working", (name) => {
    const said = verdict(name);
    expect(said.outcome).toBe("holds");
    expect(said.outcome === "holds" && said.message).toMatch(/^The chart of frame states .* come to .*: .*(=|×).*\.$/);
  });

  // Five millimetres, or one degree, either way.
  it.each([
    ["effective top tube", { "top-tube-effective": "561 mm" }, "holds"],
    ["effective top tube", { "top-tube-effective": "561.1 mm" }, "fails"],
    ["effective top tube", { "top-tube-effective": "551.1 mm" }, "holds"],
    ["effective top tube", { "top-tube-effective": "550.9 mm" }, "fails"],
    ["effective seat angle", { "effective-seat-angle": "74.5°" }, "holds"],
    ["effective seat angle", { "effective-seat-angle": "74.6°" }, "fails"],
    ["effective seat angle", { "effective-seat-angle": "72.4°" }, "fails"],
    ["front centre", { "front-centre": "596 mm" }, "holds"],
    ["front centre", { "front-centre": "596.5 mm" }, "fails"],
    ["front centre", { "front-centre": "586 mm" }, "fails"],
    ["wheelbase", { wheelbase: "999 mm", "front-centre": "" }, "holds"],
    ["wheelbase", { wheelbase: "999.5 mm", "front-centre": "" }, "fails"],
    ["wheelbase", { wheelbase: "989 mm", "front-centre": "" }, "fails"],
    // With 0 to 15 mm of lower bearing the front axle lies 73.9 to 59.6 mm above the crank axis.
    ["bottom-bracket drop", { "bottom-bracket-drop": "78.8 mm" }, "holds"],
    ["bottom-bracket drop", { "bottom-bracket-drop": "79 mm" }, "fails"],
    ["bottom-bracket drop", { "bottom-bracket-drop": "54.6 mm" }, "holds"],
    ["bottom-bracket drop", { "bottom-bracket-drop": "54.4 mm" }, "fails"],
    ["bottom-bracket drop", { "fork-axle-to-crown": "395 mm" }, "fails"],
    ["bottom-bracket drop", { "head-tube-length": "135 mm" }, "fails"],
    // 135.7 to 144.8 mm.
    ["rear travel", { "rear-travel": "149.8 mm" }, "holds"],
    ["rear travel", { "rear-travel": "149.9 mm" }, "fails"],
    ["rear travel", { "rear-travel": "130.7 mm" }, "holds"],
    ["rear travel", { "rear-travel": "130.6 mm" }, "fails"],
    ["rear travel", { "shock-size": "210x50" }, "fails"],
    ["rear travel", { "shock-size": "230x60" }, "fails"],
    // Leverage may rise as well, or stay as it is: 2.55 × 55 = 140.3 mm.
    ["rear travel", { "leverage-start": "2.3", "leverage-end": "2.8" }, "holds"],
    ["rear travel", { "leverage-start": "2.3", "leverage-end": "2.8", "rear-travel": "149.9 mm" }, "fails"],
    ["rear travel", { "leverage-start": "2.55", "leverage-end": "2.55", "rear-travel": "145.2 mm" }, "holds"],
    ["rear travel", { "leverage-start": "2.55", "leverage-end": "2.55", "rear-travel": "145.3 mm" }, "fails"],
    ["rear travel", { "leverage-start": "2.55", "leverage-end": "2.55", "rear-travel": "135.2 mm" }, "fails"],
  ])("%s with %o: %s", (name, changed, outcome) => {
    expect(verdict(name, changed).outcome).toBe(outcome);
  });

  it("says the two numbers and how the second comes about", () => {
    const text = compose({
      frame: part(
        "frame",
        "reach: 385 mm; stack: 560 mm; seat-angle: 73°; seat-tube-offset: 20 mm; effective-seat-angle: none; top-tube-effective: 556 mm",
      ),
    });
    const [finding] = checkText(text).of(code);
    expect(finding?.severity).toBe("warning");
    // 560 ÷ tan 73° = 171.2; 20 ÷ sin 73° = 20.9.
    expect(finding?.message).toBe(
      "The chart of frame states an effective top tube of 556 mm, but its other figures come to 535.3 mm, 20.7 mm from it: reach 385 + stack 560 ÷ tan 73° − offset 20 ÷ sin 73° = 535.3 mm. One of them is wrong: ask the maker or measure the frame, and correct the part.",
    );
  });

  it("says what stroke and leverage come to", () => {
    const said = (changed: Readonly<Record<string, string>>) => {
      const found = verdict("rear travel", changed);
      return found.outcome === "fails" || found.outcome === "holds" ? found.message : found.outcome;
    };
    expect(said({ "rear-travel": "160 mm" })).toBe(
      "The chart of frame states a rear travel of 160 mm, but its other figures come to 135.7 to 144.8 mm, 15.17 mm from it: stroke 55 × average leverage 2.47 to 2.63 (2.8 at the start, 2.3 at the end). One of them is wrong: ask the maker or measure the frame, and correct the part.",
    );
    expect(said({ "leverage-start": "2.5", "leverage-end": "2.5" })).toContain(
      "come to 137.5 mm: stroke 55 × average leverage 2.5 (2.5 at the start, 2.5 at the end).",
    );
  });

  // Travel, stroke and average leverage as a trade magazine of 2023 printed them.
  it.each([
    ["160 mm", "230x57", "2.8"],
    ["90 mm", "190x42.5", "2.1"],
    ["150 mm", "210x55", "2.73"],
  ])("takes %s on %s at %s as published", (travel, size, leverage) => {
    const published = {
      "rear-travel": travel,
      "shock-size": size,
      "leverage-start": leverage,
      "leverage-end": leverage,
    };
    expect(verdict("rear travel", published).outcome).toBe("holds");
  });

  it("allows for every leverage that bends one way, up to a parabola", () => {
    // The average of a leverage by Simpson's rule, which is exact for parabolas.
    const travelOf = (start: number, middle: number, end: number): number => (55 * (start + 4 * middle + end)) / 6;
    for (const [start, end] of [
      [3.2, 2],
      [2, 3.2],
    ] as const) {
      for (const middle of [0.25, 0.5, 0.75].map((share) => start + (end - start) * share)) {
        const stated = { "leverage-start": `${start}`, "leverage-end": `${end}` };
        const travel = travelOf(start, middle, end);
        expect(verdict("rear travel", { ...stated, "rear-travel": `${travel.toFixed(2)} mm` }).outcome).toBe("holds");
      }
      // 55 × 2.4 = 132 and 55 × 2.8 = 154 mm are the ends, and 5 mm beside them are left.
      for (const travel of ["126.9 mm", "159.1 mm"]) {
        const stated = { "leverage-start": `${start}`, "leverage-end": `${end}`, "rear-travel": travel };
        expect(verdict("rear travel", stated).outcome).toBe("fails");
      }
    }
  });

  it.each([
    [{ "leverage-start": "" }, "notApplicable"],
    [{ "leverage-end": "" }, "notApplicable"],
    [{ "leverage-end": "none" }, "notApplicable"],
    [{ "rear-travel": "none" }, "notApplicable"],
    [{ "shock-size": "none" }, "notApplicable"],
    [{ "shock-size": "" }, "unknown"],
  ])("asks of %o nothing, or for the size of shock: %s", (changed, outcome) => {
    expect(verdict("rear travel", changed).outcome).toBe(outcome);
  });

  it("takes an effective top tube to either seat tube", () => {
    const leaning = { "seat-angle": "70°", "seat-tube-offset": "30 mm" };
    // To the effective one 556.1 mm; to the actual one 389 + 205.3 − 31.9 = 562.4 mm.
    for (const [length, outcome] of [
      ["556 mm", "holds"],
      ["562 mm", "holds"],
      ["567 mm", "holds"],
      ["568 mm", "fails"],
      ["550 mm", "fails"],
    ] as const) {
      expect(verdict("effective top tube", { ...leaning, "top-tube-effective": length }).outcome, length).toBe(outcome);
    }
    // While one of the two readings is not known, it may be the one that was meant.
    const open = verdict("effective top tube", { "top-tube-effective": "570 mm", "effective-seat-angle": "" });
    expect(open.outcome === "unknown" && open.missing.map(({ path }) => path)).toEqual(["frame.effective-seat-angle"]);
    expect(
      verdict("effective top tube", { "top-tube-effective": "570 mm", "effective-seat-angle": "none" }).outcome,
    ).toBe("fails");
  });

  it("counts every place of dropouts that can be moved", () => {
    const moved = { chainstay: "413 to 428 mm", "front-centre": "" };
    // 407.0 to 422.2 mm behind the crank axis.
    for (const [length, outcome] of [
      ["988 mm", "fails"],
      ["990 mm", "holds"],
      ["1014 mm", "holds"],
      ["1015 mm", "fails"],
    ] as const) {
      expect(verdict("wheelbase", { ...moved, wheelbase: length }).outcome, length).toBe(outcome);
    }
  });

  it("takes the wheelbase from the front centre too", () => {
    const without = { reach: "", stack: "", "head-angle": "", "fork-offset": "" };
    // √(591² − 70²) + √(413² − 70²) = 586.8 + 407.0.
    expect(verdict("wheelbase", without).outcome).toBe("holds");
    expect(verdict("wheelbase", { ...without, wheelbase: "1000 mm" }).outcome).toBe("unknown");
    const none = { reach: "none", stack: "none", "head-angle": "none", "fork-offset": "none" };
    const said = verdict("wheelbase", { ...none, wheelbase: "1000 mm" });
    expect(said.outcome === "fails" && said.message).toMatch(/1000 mm, but .* 993\.9 mm.*√\(591² − 70²\)/);
  });

  it.each(names)("asks nothing of a frame that states no %s", (name) => {
    const claims: Readonly<Record<string, string>> = {
      "effective top tube": "top-tube-effective",
      "effective seat angle": "effective-seat-angle",
      "bottom-bracket drop": "fork-axle-to-crown",
      "front centre": "front-centre",
      wheelbase: "wheelbase",
      "rear travel": "rear-travel",
    };
    expect(verdict(name, { [claims[name] ?? ""]: "" }).outcome).toBe("notApplicable");
  });

  it("does not hold wheels of two sizes to axles of one height", () => {
    const mixed = { "mixed-wheels": "yes", "bottom-bracket-drop": "30 mm" };
    for (const name of ["bottom-bracket drop", "front centre", "wheelbase"]) {
      expect(verdict(name, mixed).outcome, name).toBe("notApplicable");
    }
    expect(verdict("effective top tube", mixed).outcome).toBe("holds");
    expect(verdict("bottom-bracket drop", { ...mixed, "mixed-wheels": "no" }).outcome).toBe("fails");
  });

  it("names what is missing", () => {
    const said = verdict("front centre", { reach: "", "head-angle": "" });
    expect(said.outcome === "unknown" && said.missing.map(({ path }) => path)).toEqual([
      "frame.reach",
      "frame.head-angle",
    ]);
  });
});
