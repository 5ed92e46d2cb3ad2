import { describe, expect, it } from "vitest";
import { rankCandidates } from "../../server/engine/ranking.ts";
import { kindByName } from "../../server/vocabulary/index.ts";
import { checkText, repaired } from "./check-text.ts";

/** What the maker of a bought rear wheel states of it. */
const facts: Readonly<Record<string, string>> = {
  wheel: "rear",
  axle: "12x142",
  "axle-fastening": "through",
  "over-locknut-width": "142 mm",
  "end-cap-recess": "3.5 mm",
  freehub: "fine-splined-11t",
  "freewheel-thread": "none",
  "rotor-mount": "splined-lockring",
  "rotor-torque": "40 N·m",
  "bead-seat": "622",
  "inner-width": "21 mm",
  "rim-kind": "tubeless-crotchet",
  "valve-hole": "6.5 mm",
  "brake-track": "yes",
  "greatest-pressure": "5 bar",
  "narrowest-tyre": "25 mm",
  "widest-tyre": "40 mm",
  mass: "790 g",
  price: "GBP 300",
};

type Facts = Readonly<Record<string, string | undefined>>;

const written = (of: Facts): string =>
  Object.entries(of)
    .flatMap(([name, value]) => (value === undefined ? [] : [`${name}: ${value}`]))
    .join("; ");

/** A bicycle round a rear wheel, which is one part or a hub and a rim that state the same. */
function bicycle(form: "bought" | "laced", changed: Facts = {}, caliper = "caliper"): string {
  const all = { ...facts, ...changed };
  const of = (kind: string): Facts =>
    Object.fromEntries(Object.entries(all).filter(([name]) => Object.hasOwn(kindByName(kind)?.fields ?? {}, name)));
  const parts =
    form === "bought"
      ? `part built-wheel t.wheel "Wheel" { ${written(all)} }`
      : `part hub t.hub "Hub" { ${written(of("hub"))} }\npart rim t.rim "Rim" { ${written(of("rim"))} }`;
  const [hub, rim] = form === "bought" ? ["t.wheel", "t.wheel"] : ["t.hub", "t.rim"];
  const spokes = form === "bought" ? "" : "; spokes: none";
  return `${parts}
part frame t.frame "Frame" { rear-axle: 12x142; rear-bead-seats: 622; forbids: none }
part cassette t.cogs "Cogs" { freehub: fine-splined-11t; speeds: 12; cogs: 11-12-13-14-15-17-19-21-24-27-30-34 t }
part rotor t.rotor "Rotor" { mount: splined-lockring; mounting-torque: 40 N·m }
part caliper t.caliper "Caliper" { }
part rim-brake t.rim-brake "Rim brake" { }
part tyre t.tyre "Tyre" { size: 30-622; construction: tubeless-ready; least-pressure: 3 bar; greatest-pressure: 6 bar; narrowest-rim: 17 mm; widest-rim: 23 mm }
part valve t.valve "Valve" { valve-kind: presta; valve-length: 44 mm }
build example "Example" {
  category: road
  rider { mass: 80 kg; kit-mass: 0 kg }
  frame: t.frame
  drivetrain.cassette: t.cogs
  rear-brake { caliper: t.${caliper}; rotor: ${caliper === "caliper" ? "t.rotor" : "none"} }
  rear-wheel { hub: ${hub}; rim: ${rim}${spokes}; tyre: t.tyre { pressure: 4.5 bar }; valve: t.valve }
}
`;
}

const askedOfEither = [
  ["wheel/axle", "rear", "axle", "12x148", "hub"],
  ["drivetrain/freehub-body", "", "freehub", "splined-11t-long", "hub"],
  ["wheel/rotor-mount", "rear-rotor-mount", "rotor-mount", "six-bolt-44", "hub"],
  ["wheel/tyre-seat", "rear", "bead-seat", "584", "rim"],
  ["wheel/tyre-rim-width", "rear", "inner-width", "40 mm", "rim"],
  ["wheel/valve-hole", "rear valve", "valve-hole", "8.5 mm", "rim"],
  ["wheel/pressure", "rear", "greatest-pressure", "4 bar", "rim"],
] as const;

describe("a wheel bought whole is asked what hub and rim are asked", () => {
  describe.each(["bought", "laced"] as const)("%s", (form) => {
    it.each(askedOfEither)("%s %s: %s", (code, instance, fact, wrong, place) => {
      const outcomeOf = (text: string): string => {
        const { row } = checkText(text);
        const asked = row(code).instances.filter((one) => instance === "" || one.instance === instance);
        expect(asked).toHaveLength(1);
        return asked[0]?.verdict.outcome ?? "";
      };
      expect(outcomeOf(bicycle(form))).toBe("holds");
      expect(outcomeOf(bicycle(form, { [fact]: wrong }))).toBe("fails");
      expect(outcomeOf(bicycle(form, { [fact]: undefined }))).toBe("unknown");
      expect(checkText(bicycle(form, { [fact]: undefined })).missing(code)).toContain(`rear-wheel.${place}.${fact}`);
    });

    it("about its brake track, and what it forbids", () => {
      const track = (changed: Facts) => checkText(bicycle(form, changed, "rim-brake"));
      expect(track({}).instance("wheel/rim-brake-track", "rear")).toBe("holds");
      expect(track({ "brake-track": "no" }).instance("wheel/rim-brake-track", "rear")).toBe("fails");
      expect(track({ "brake-track": undefined }).instance("wheel/rim-brake-track", "rear")).toBe("unknown");
      expect(checkText(bicycle(form)).instance("brake/forbidden", "rear")).toBe("holds");
      expect(checkText(bicycle(form, { forbids: "disc-brake" })).instance("brake/forbidden", "rear")).toBe("fails");
    });

    it("about the mass that it bears", () => {
      const limit = (most: string, includes: string | undefined) =>
        checkText(bicycle(form, { "max-system-mass": most, "system-mass-includes": includes })).instance(
          "frame/system-mass",
          "other parts",
        );
      expect(limit("90 kg", "rider")).toBe("holds");
      expect(limit("79 kg", "rider")).toBe("fails");
      expect(limit("90 kg", "all-up")).toBe("unknown");
    });
  });

  it("once, and not again for its second place", () => {
    const rated = checkText(bicycle("bought", { categories: "mountain", "max-rider-mass": "70 kg" }));
    expect(rated.instance("frame/category", "rear-wheel.hub")).toBe("holds");
    expect(rated.instance("frame/category", "rear-wheel.rim")).toBe("notApplicable");
    expect(rated.of("seat/rider-mass").map(({ path }) => path)).toEqual(["rear-wheel.hub"]);
    const city = checkText(bicycle("bought", { categories: "track" })).of("frame/category");
    expect(city.map(({ path }) => path)).toEqual(["rear-wheel.hub"]);
  });
});

describe("what is asked of a wheel that is laced", () => {
  const { row, report } = checkText(bicycle("bought"));

  it.each([
    "wheel/spoke-count",
    "wheel/spoke-head",
    "wheel/spoke-length",
    "wheel/spoke-tension",
    "wheel/spokes-sold",
    "wheel/radial-lacing",
    "wheel/lacing-possible",
    "wheel/nipple-thread",
  ])("%s does not apply to one that is bought", (code) => {
    const rear = row(code).instances.filter(({ instance }) => instance.startsWith("rear"));
    expect(rear.length).toBeGreaterThan(0);
    for (const { verdict } of rear) expect(verdict.outcome).toBe("notApplicable");
  });

  it("leaves nobody asked for spokes, nipples or the measures of its lacing", () => {
    const asked = report.rows.flatMap(({ missing }) => missing.map(({ path }) => path));
    expect(asked).not.toEqual([]);
    expect(
      asked.filter((path) => /^rear-wheel\.(spokes|nipples)|spoke-holes|rim-holes|flange|effective/.test(path)),
    ).toEqual([]);
  });
});

describe("wheel/built-wheel", () => {
  const code = "wheel/built-wheel";
  const parts = `
part built-wheel t.one "One" { wheel: front }
part built-wheel t.two "Two" { wheel: front }
part hub t.hub "Hub" { wheel: front }
part rim t.rim "Rim" { bead-seat: 622 }
part spokes t.spokes "Spokes" { spoke-head: elbow }
part nipples t.nipples "Nipples" { thread: 2.0x56 }
`;
  const text = (wheel: string): string => `${parts}\nbuild example "Example" {\n  front-wheel { ${wheel} }\n}\n`;

  it.each([
    ["hub: t.one; rim: t.one", "holds"],
    ["hub: t.one; rim: t.one; spokes: none; nipples: none", "holds"],
    ["hub: t.one; rim: t.two", "fails"],
    ["hub: t.one; rim: t.rim", "fails"],
    ["hub: t.hub; rim: t.one", "fails"],
    ["hub: none; rim: t.one", "fails"],
    ["hub: t.one; rim: none", "fails"],
    ["hub: t.one; rim: t.one; spokes: t.spokes", "fails"],
    ["hub: t.one; rim: t.one; nipples: t.nipples", "fails"],
    ["hub: t.one", "unknown"],
    ["rim: t.one", "unknown"],
    ["hub: t.hub; rim: t.rim; spokes: t.spokes; nipples: t.nipples", "notApplicable"],
    ["tyre: none", "notApplicable"],
  ])("%s: %s", (wheel, expected) => {
    expect(checkText(text(wheel)).instance(code, "front")).toBe(expected);
    expect(checkText(text(wheel)).instance(code, "rear")).toBe("notApplicable");
  });

  it("names the place that is still open", () => {
    expect(checkText(text("hub: t.one")).missing(code)).toEqual(["front-wheel.rim"]);
    expect(checkText(text("rim: t.one")).missing(code)).toContain("front-wheel.hub");
  });

  it("offers the same wheel for the other place", () => {
    const offered = repaired(text("hub: t.one; rim: t.rim"), code);
    expect(offered.map(({ title }) => title)).toContain("Fit One (t.one) as front-wheel.rim");
    const [first] = offered.filter(({ title }) => title.startsWith("Fit One"));
    expect(checkText(first?.text ?? "").outcome(code)).toBe("holds");
  });

  it("offers to leave out what was laced", () => {
    const offered = repaired(text("hub: t.one; rim: t.one; spokes: t.spokes"), code);
    expect(offered.map(({ text: mended }) => checkText(mended).outcome(code))).toContain("holds");
  });
});

describe("a wheel bought whole that does not fit", () => {
  const parts = `
part fork a.fork "Fork" { axle: 12x100 }
part built-wheel a.wide "Wide" { axle: 15x110; mass: 900 g }
part built-wheel a.near "Near" { axle: 12x100; mass: 800 g }
part built-wheel a.heavy "Heavy" { axle: 12x100; mass: 1900 g }
part hub a.hub "Hub" { axle: 12x100 }
part rim a.rim "Rim" { bead-seat: 622 }
`;
  const base = `
build base "Base" {
  fork: a.fork
  front-wheel { hub: a.wide; rim: a.wide }
  budget.mass: <= 1 kg
}
`;

  it.each([
    ['build example "Example" from base'],
    ['build example "Example" from base {}'],
    ['build example "Example" from base { category: road }'],
    ['build example "Example" from base {\n  front-wheel.hub: a.wide\n}'],
    ['build example "Example" {\n  fork: a.fork\n  front-wheel { hub: a.wide; rim: a.wide }\n}'],
  ])("is exchanged in both places at once: %s", (build) => {
    const offered = repaired(parts + base + build, "wheel/axle");
    expect(offered.map(({ title }) => title)).toContain("Fit Near (a.near) as front-wheel.hub and front-wheel.rim");
    expect(offered.some(({ title }) => title.includes("a.hub"))).toBe(false);
    const mended = checkText(offered.find(({ title }) => title.includes("a.near"))?.text ?? "");
    expect(mended.instance("wheel/axle", "front")).toBe("holds");
    expect(mended.instance("wheel/built-wheel", "front")).toBe("holds");
  });

  it.each(["front-wheel.hub", "front-wheel.rim"])("has others suggested as they would be fitted: %s", (slot) => {
    const { engine, report } = checkText(`${parts}${base}build example "Example" from base`);
    const errors = new Map(
      rankCandidates(engine, report.assembly, slot).map(({ part, failures }) => [
        part.declaration.name,
        failures.map(({ code }) => code),
      ]),
    );
    expect(errors.get("a.near")).toEqual([]);
    expect(errors.get("a.wide")).toEqual(["wheel/axle"]);
    // Weighed once, and by what it weighs itself.
    expect(errors.get("a.heavy")).toEqual(["build/budget-mass"]);
    // A hub or rim by itself would leave the other half of the bought wheel.
    expect(errors.get(slot === "front-wheel.hub" ? "a.hub" : "a.rim")).toContain("wheel/built-wheel");
  });
});
