import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";

/** Every place that a whole bike has something in, stated empty except for what is written over it. */
function bike(parts: string, over: Readonly<Record<string, string>>, more = ""): string {
  const places = {
    frame: "none",
    fork: "none",
    "rear-shock": "none",
    headset: "none",
    "drivetrain.rear-derailleur": "none",
    "drivetrain.front-derailleur": "none",
    "drivetrain.cassette": "none",
    "drivetrain.chain": "none",
    "drivetrain.crankset": "none",
    "drivetrain.chainring": "none",
    "drivetrain.bottom-bracket": "none",
    "drivetrain.pedals": "none",
    "drivetrain.rear-controller": "none",
    "front-brake.lever": "none",
    "front-brake.caliper": "none",
    "rear-brake.lever": "none",
    "rear-brake.caliper": "none",
    "cockpit.stem": "none",
    "cockpit.handlebar": "none",
    "cockpit.grips": "none",
    "seat.post": "none",
    "seat.clamp": "none",
    "seat.saddle": "none",
    ...Object.fromEntries(
      ["front-wheel", "rear-wheel"].flatMap((wheel) =>
        ["hub", "rim", "spokes", "tyre", "tube", "rim-tape", "axle"].map((place) => [`${wheel}.${place}`, "none"]),
      ),
    ),
    ...over,
  };
  const lines = Object.entries(places).flatMap(([path, name]) => (name === "" ? [] : [`  ${path}: ${name}`]));
  return `${parts}\nbuild example "Example" {\n${lines.join("\n")}\n${more}\n}\n`;
}

describe("build/missing-slot", () => {
  const code = "build/missing-slot";

  it("holds when every place has a part or says none", () => {
    const text = checkText(bike('part frame f "F" { size: "M" }', { frame: "f" }));
    expect(text.outcome(code)).toBe("holds");
    expect(text.missing(code)).toEqual([]);
  });

  it("names each place that was left open, and never fails", () => {
    const text = checkText(bike("", { "seat.saddle": "", "front-wheel.tyre": "" }));
    expect(text.outcome(code)).toBe("unknown");
    expect(text.missing(code)).toEqual(["seat.saddle", "front-wheel.tyre"]);
    expect(text.instance(code, "seat.saddle")).toBe("unknown");
    expect(text.instance(code, "seat.post")).toBe("holds");
  });

  it("does not ask for what follows from other places", () => {
    const text = checkText(bike("", {}));
    // A bike without a front derailleur needs no controller for one; one without a derailleur needs no hanger.
    for (const path of ["drivetrain.front-controller", "drivetrain.hanger", "seat.remote"]) {
      expect(text.instance(code, path), path).toBe("holds");
    }
  });

  it("asks for a front controller where there is a front derailleur", () => {
    const text = checkText(bike('part front-derailleur d "D" { rings: 2 }', { "drivetrain.front-derailleur": "d" }));
    expect(text.instance(code, "drivetrain.front-controller")).toBe("unknown");
  });

  it("asks nothing of a template", () => {
    const text = checkText('build example "Example" { template: yes }');
    expect(text.outcome(code)).toBe("notApplicable");
  });
});

describe("build/budget-mass", () => {
  const code = "build/budget-mass";
  const parts = `
part frame f "F" { mass: 2150 g }
part fork k "K" { mass: 850 g }
part headset h "H" { size-note: "none" }
`.replace('{ size-note: "none" }', '{ note: "mass not known" }');

  it.each([
    [{ frame: "f", fork: "k" }, "budget.mass: <= 3 kg", "holds"],
    [{ frame: "f", fork: "k" }, "budget.mass: <= 2.999 kg", "fails"],
    [{ frame: "f", fork: "k" }, "budget.mass: 3 to 4 kg", "holds"],
    [{ frame: "f", fork: "k" }, "budget.mass: 3.1 to 4 kg", "fails"],
    [{ frame: "f", fork: "k", headset: "h" }, "budget.mass: <= 4 kg", "unknown"],
    [{ frame: "f", fork: "k", headset: "h" }, "budget.mass: <= 2.9 kg", "fails"],
    [{ frame: "f", fork: "k", headset: "h" }, "budget.mass: >= 2.9 kg", "holds"],
    [{ frame: "f", fork: "k", headset: "h" }, "budget.mass: >= 3.1 kg", "unknown"],
    [{ frame: "f", fork: "k", headset: "" }, "budget.mass: <= 4 kg", "unknown"],
    [{ frame: "f", fork: "k", headset: "" }, "budget.mass: <= 2.9 kg", "fails"],
    [{ frame: "f" }, "", "notApplicable"],
  ])("%o with %j: %s", (over, budget, outcome) => {
    expect(checkText(bike(parts, over as Record<string, string>, `  ${budget}`)).outcome(code)).toBe(outcome);
  });

  it("says that a sum with gaps is a least one, and names what is missing", () => {
    const over = { frame: "f", fork: "k", headset: "h" };
    const [finding] = checkText(bike(parts, over, "  budget.mass: <= 2.9 kg")).of(code);
    expect(finding?.message).toMatch(/at least 3 kg.*2\.9 kg.*100 g too much.*still missing: mass of H \(headset\)\.$/);
    const open = checkText(bike(parts, { ...over, "seat.saddle": "" }, "  budget.mass: <= 4 kg"));
    expect(open.missing(code)).toEqual(["seat.saddle", "headset.mass"]);
  });

  it("says it plainly when nothing is missing, and corrects the budget", () => {
    const text = bike(parts, { frame: "f", fork: "k" }, "  budget.mass: <= 2.5 kg");
    const [finding] = checkText(text).of(code);
    expect(finding?.message).not.toContain("at least");
    expect(finding?.message).toMatch(/3 kg.*2\.5 kg.*500 g too much/);
    const [mend] = repaired(text, code);
    expect(checkText(mend?.text ?? "").outcome(code)).toBe("holds");
  });

  it("is not asked of a template whose known parts are inside it", () => {
    const text = (budget: string) => `${parts}
build example "Example" {
  template: yes
  frame: f
  budget.mass: ${budget}
}`;
    expect(checkText(text("<= 3 kg")).outcome(code)).toBe("notApplicable");
    expect(checkText(text("<= 2 kg")).outcome(code)).toBe("fails");
  });
});

describe("build/budget-price", () => {
  const code = "build/budget-price";
  const parts = `
part frame f "F" { price: GBP 640 }
part fork k "K" { price: GBP 185.50 }
part headset h "H" { price: EUR 40 }
part stem s "S" { note: "no price" }
`;

  it.each([
    [{ frame: "f", fork: "k" }, "<= GBP 825.50", "holds"],
    [{ frame: "f", fork: "k" }, "<= GBP 825.49", "fails"],
    [{ frame: "f", fork: "k", headset: "h" }, "<= GBP 2000", "unknown"],
    [{ frame: "f", fork: "k", headset: "h" }, "<= GBP 825", "fails"],
    [{ frame: "f", fork: "k", headset: "h" }, "<= EUR 39", "fails"],
    [{ frame: "f", fork: "k", headset: "h" }, "<= EUR 41", "unknown"],
    [{ frame: "f", "cockpit.stem": "s" }, "<= GBP 2000", "unknown"],
    [{ frame: "f", "cockpit.stem": "" }, "<= GBP 2000", "unknown"],
  ])("%o with a budget of %s: %s", (over, budget, outcome) => {
    expect(checkText(bike(parts, over as Record<string, string>, `  budget.price: ${budget}`)).outcome(code)).toBe(
      outcome,
    );
  });

  it("never adds up several currencies, and names the price that it could not count", () => {
    const text = checkText(bike(parts, { frame: "f", fork: "k", headset: "h" }, "  budget.price: <= GBP 800"));
    expect(text.of(code)[0]?.message).toMatch(
      /at least GBP 825\.50.*GBP 800\.00.*GBP 25\.50 too much, with prices still missing: a price in GBP of H, which is priced in EUR\.$/,
    );
    const open = checkText(bike(parts, { frame: "f", headset: "h" }, "  budget.price: <= GBP 800"));
    expect(open.row(code).missing.map(({ what }) => what)).toEqual(["a price in GBP of H, which is priced in EUR"]);
  });
});

describe("budgets of single assemblies", () => {
  const parts = `
part rim r "Rim" { mass: 500 g; price: GBP 80 }
part tyre t "Tyre" { mass: 900 g; price: GBP 60 }
part tyre heavy "Heavy tyre" { mass: 1400 g; price: GBP 60 }
part hub h "Hub" { mass: 300 g; price: EUR 200 }
part hub silent "Silent hub" { }
part brake-lever both "Lever with its controls" { mass: 400 g; price: GBP 200 }
part shift-controller pod "Pod" { mass: 50 g }
`;
  const wheel = { "rear-wheel.rim": "r", "rear-wheel.tyre": "t" };

  it.each([
    ["rear-wheel.mass: <= 1.4 kg", wheel, "holds"],
    ["rear-wheel.mass: <= 1.39 kg", wheel, "fails"],
    ["rear-wheel.mass: 1.4 to 2 kg", wheel, "holds"],
    ["rear-wheel.mass: >= 1.5 kg", wheel, "fails"],
    // The other wheel, and what is not there, count for nothing.
    ["rear-wheel.mass: <= 1.4 kg", { ...wheel, "front-wheel.tyre": "heavy", frame: "" }, "holds"],
    ["front-wheel.mass: <= 1 kg", wheel, "holds"],
    // What nobody weighed, and what nobody chose, count for something.
    ["rear-wheel.mass: <= 1.5 kg", { ...wheel, "rear-wheel.hub": "silent" }, "unknown"],
    ["rear-wheel.mass: <= 1.5 kg", { ...wheel, "rear-wheel.hub": "" }, "unknown"],
    ["rear-wheel.mass: <= 1.3 kg", { ...wheel, "rear-wheel.hub": "silent" }, "fails"],
  ])("%s with %o: %s", (budget, over, outcome) => {
    const text = checkText(bike(parts, over as Record<string, string>, `  budget { ${budget} }`));
    expect(text.instance("build/assembly-mass", budget.slice(0, budget.indexOf(".")))).toBe(outcome);
  });

  it.each([
    ["<= GBP 140", wheel, "holds"],
    ["<= GBP 139.99", wheel, "fails"],
    // Another currency is never added up, and is not nothing either.
    ["<= GBP 400", { ...wheel, "rear-wheel.hub": "h" }, "unknown"],
    ["<= GBP 130", { ...wheel, "rear-wheel.hub": "h" }, "fails"],
    ["<= GBP 400", { ...wheel, "rear-wheel.hub": "silent" }, "unknown"],
  ])("a price of %s with %o: %s", (budget, over, outcome) => {
    const text = checkText(bike(parts, over as Record<string, string>, `  budget { rear-wheel { price: ${budget} } }`));
    expect(text.instance("build/assembly-price", "rear-wheel")).toBe(outcome);
  });

  it("says what weighs too much, by how much, and of what the mass or the price is not known", () => {
    const [heavy] = checkText(bike(parts, wheel, "  budget { rear-wheel.mass: <= 1.3 kg }")).of("build/assembly-mass");
    expect(heavy?.message).toBe(
      "Everything in rear-wheel weighs 1.4 kg, but the budget allows 1.3 kg: 100 g too much.",
    );
    expect(heavy?.path).toBe("budget.rear-wheel.mass");
    const open = checkText(
      bike(parts, { ...wheel, "rear-wheel.hub": "h" }, "  budget { rear-wheel.price: <= GBP 400 }"),
    );
    expect(open.missing("build/assembly-price")).toEqual(["rear-wheel.hub.price"]);
  });

  it("tells masses to the gram, so that the difference is that of what stands beside it", () => {
    const message = (budget: string) =>
      checkText(bike(parts, wheel, `  budget { rear-wheel.mass: ${budget} }`)).of("build/assembly-mass")[0]?.message;
    expect(message("<= 1.305 kg")).toBe(
      "Everything in rear-wheel weighs 1.4 kg, but the budget allows 1.305 kg: 95 g too much.",
    );
    expect(message("<= 1399 g")).toContain("1.4 kg, but the budget allows 1.399 kg: 1 g too much");
    expect(message(">= 1.405 kg")).toContain("weighs 1.4 kg, but is to weigh at least 1.405 kg");
  });

  it("offers a budget that is as near as one would be written", () => {
    const light = { "rear-wheel.rim": "w" };
    const kinds = `${parts}\npart rim w "W" { mass: 431 g }`;
    const text = bike(kinds, light, "  budget { rear-wheel.mass: <= 420 g }");
    expect(checkText(text).of("build/assembly-mass")).toHaveLength(1);
    expect(repaired(text, "build/assembly-mass")[0]?.text).toContain("rear-wheel.mass: <= 440 g");
  });

  it("names no more of what is missing than can be read at a glance", () => {
    const open = {
      "rear-wheel.rim": "r",
      "rear-wheel.hub": "",
      "rear-wheel.tyre": "",
      "rear-wheel.axle": "",
      "rear-wheel.tube": "",
    };
    const [finding] = checkText(bike(parts, { ...wheel, ...open }, "  budget { rear-wheel.mass: <= 10 g }")).of(
      "build/assembly-mass",
    );
    expect(finding?.message).toMatch(/still missing: which .*, which .*, which .* and \d more\.$/);
  });

  it("of a template nothing that it leaves open is asked", () => {
    const over = { ...wheel, "rear-wheel.tube": "" };
    for (const [code, budget] of [
      ["build/assembly-mass", "mass: <= 5 kg"],
      ["build/assembly-price", "price: <= GBP 900"],
      ["build/budget-mass", "mass: <= 5 kg"],
      ["build/budget-price", "price: <= GBP 900"],
    ] as const) {
      const wanted = code.startsWith("build/budget") ? `budget { ${budget} }` : `budget { rear-wheel { ${budget} } }`;
      const asked = checkText(bike(parts, over, `  ${wanted}`));
      const template = checkText(bike(parts, over, `  template: yes\n  ${wanted}`));
      expect([code, asked.outcome(code), template.outcome(code)]).toEqual([code, "unknown", "notApplicable"]);
    }
  });

  it("without one nothing is asked", () => {
    const text = checkText(bike(parts, wheel));
    expect([text.outcome("build/assembly-mass"), text.outcome("build/assembly-price")]).toEqual([
      "notApplicable",
      "notApplicable",
    ]);
  });

  it("a lever that holds the controls is weighed once, in the bike as in its assembly", () => {
    const over = { "rear-brake.lever": "both", "drivetrain.rear-controller": "both { clamp: rear-brake.lever }" };
    const kinds = parts.replace("part brake-lever both", "part shift-controller unused { }\npart brake-lever both");
    const text = (budget: string) => checkText(bike(kinds, over, `  budget { ${budget} }`));
    expect(text("mass: <= 400 g").outcome("build/budget-mass")).not.toBe("fails");
    expect(text("mass: <= 399 g").outcome("build/budget-mass")).toBe("fails");
    expect(text("price: <= GBP 200").outcome("build/budget-price")).not.toBe("fails");
  });
});
