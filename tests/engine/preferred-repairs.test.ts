import { describe, expect, it } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { type Mend, mends } from "../../server/engine/repairs.ts";
import type { Finding } from "../../server/model/finding.ts";
import { checkText, mendedText } from "../checks/check-text.ts";

const graves = (findings: readonly Finding[]): readonly string[] =>
  findings
    .filter(({ severity, outcome }) => severity !== "information" && outcome === "fails")
    .map(({ code, path }) => `${code} at ${path}`);

/** What is offered for the findings of a check, each with the text that it leaves behind. */
function offered(text: string, code: string): readonly (Mend & { readonly after: string })[] {
  const { engine, report, of } = checkText(text);
  return of(code).flatMap((finding) =>
    mends(engine, report.assembly.declaration, finding).map((mend) => ({
      ...mend,
      after: mendedText(engine, text, mend),
    })),
  );
}

/** What stands in a text after a repair, that did not stand in it before. */
function begun(text: string, after: string): readonly string[] {
  const before = graves(checkText(text).findings);
  return graves(checkText(after).findings).filter((one) => !before.includes(one));
}

describe("a repair that would most likely be wanted", () => {
  it.each(checks.filter(({ examples }) => examples.fails !== "").map(({ code, examples }) => [code, examples.fails]))(
    "of the example of %s makes nothing else fail",
    (code, text) => {
      for (const { preferred, title, after } of offered(text, code)) {
        // A check that finds one fault at a time may have another one to tell.
        const others = begun(text, after).filter((one) => !one.startsWith(`${code} at `));
        if (preferred) expect(others, title).toEqual([]);
      }
    },
  );
});

const tall = `
part frame a.frame "Frame" { head-tube-length: 140 mm }
part fork a.fork "Fork" { steerer-diameter: 28.6 mm; greatest-spacers: 25 mm }
part headset a.bearings "Bearings" { lower-stack: 4 mm; upper-stack: 8 mm }
part stem a.stem "Stem" { clamp-height: 40 mm; least-engagement: 36 mm }
build example "One" {
  frame: a.frame
  fork: a.fork { steerer-length: 219 mm }
  headset: a.bearings
  cockpit.stem: a.stem { spacers-below: 30 mm; spacers-above: 0 mm; cap-gap: 3 mm }
}
`;

describe("a setting that makes another check fail", () => {
  it("takes with it what that check would set in the same slot: spacers move above the stem", () => {
    const [first] = offered(tall, "steering/spacer-limit");
    expect(first).toMatchObject({
      preferred: true,
      title:
        "Put 25 mm of spacers under the stem (cockpit.stem.spacers-below: 25 mm). Put 5 mm of spacers over the stem (cockpit.stem.spacers-above: 5 mm)",
    });
    expect(first?.after).toContain("{ spacers-below: 25 mm; spacers-above: 5 mm; cap-gap: 3 mm }");
    expect(graves(checkText(first?.after ?? "").findings)).toEqual([]);
  });

  it("is offered last, and says so, where nothing in its slot helps", () => {
    const text = `
standard control-clamp a.fitting "Fitting" { form: shared; source: "this example" }
part brake-lever a.stop "Stop" { clamp-offers: a.fitting }
part brake-lever a.bare "Bare" { clamp-offers: none }
part remote a.thumb "Thumb" { hand: right; mount: a.fitting }
build example "One" {
  front-brake.lever: a.stop { side: left }
  rear-brake.lever: a.bare { side: right }
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: a.thumb { side: left; clamp: front-brake.lever }
}
`;
    const found = offered(text, "cockpit/control-hand").filter(({ unfinished }) => !unfinished);
    expect(found.map(({ title, preferred }) => [title, preferred])).toEqual([
      ["Fit it for the right hand (seat.remote.side: right), with which cockpit/clamp-interface begins to fail", false],
    ]);
  });

  it("takes the other clamp with it where that is free", () => {
    const text = `
standard control-clamp a.fitting "Fitting" { form: shared; source: "this example" }
part brake-lever a.stop "Stop" { clamp-offers: a.fitting }
part remote a.thumb "Thumb" { hand: right; mount: a.fitting }
build example "One" {
  front-brake.lever: a.stop { side: left }
  rear-brake.lever: a.stop { side: right }
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: a.thumb { side: left; clamp: front-brake.lever }
}
`;
    const [first] = offered(text, "cockpit/control-hand");
    expect(first?.preferred).toBe(true);
    expect(first?.after).toContain("seat.remote: a.thumb { side: right; clamp: rear-brake.lever }");
    expect(graves(checkText(first?.after ?? "").findings)).toEqual([]);
  });
});

describe("a blade set beyond its range", () => {
  const lever = (set: string, reach = "60 to 95 mm"): string => `
part handlebar a.bar "Bar" { control-diameter: 22.2 mm }
part brake-lever a.stop "Stop" { reach: ${reach} }
build example "One" {
  category: mountain
  cockpit.handlebar: a.bar
  front-brake.lever: a.stop { reach-set: ${set} }
  rear-brake.lever: none
}
`;

  it.each([
    // 16 CFR 1512.5(b)(3): 89 mm over bar and blade, less half the bar: 77.9 mm.
    ["120 mm", "60 to 95 mm", "77.5 mm"],
    ["120 mm", "60 to 75 mm", "75 mm"],
    ["50 mm", "60 to 95 mm", "60 mm"],
  ])("of %s in %s is set to %s", (set, reach, value) => {
    const [first] = offered(lever(set, reach), "fit/lever-reach");
    expect(first).toMatchObject({
      preferred: true,
      title: `Set the reach to ${value} (front-brake.lever.reach-set: ${value})`,
    });
    expect(graves(checkText(first?.after ?? "").findings)).toEqual([]);
  });
});

describe("what a repair of several settings says", () => {
  const spokes = (written: string, setting = ""): string => `
part hub a.hub "Front" {
  spoke-holes: 36
  spoke-hole-diameter: 2.2 mm
  flange-diameter-left: 39 mm
  flange-diameter-right: 39 mm
  flange-offset-left: 30 mm
  flange-offset-right: 30 mm
}
part rim a.rim "Rim" { effective-rim-diameter: 602 mm; hole-offset: 0 mm }
part spokes a.spokes "Spokes" { spoke-head: elbow }
build ${setting === "" ? "example" : "base"} "Base" {
  front-wheel { hub: a.hub; rim: a.rim; spokes: a.spokes { ${written} } }
  rear-wheel.spokes: none
}
${setting === "" ? "" : `build example "One" from base {${setting}\n}\n`}`;

  it("is said once, and written in one go", () => {
    const text = spokes("cross: 3; length-drive-side: 287 mm; length-non-drive-side: 287 mm");
    const found = offered(text, "wheel/spoke-length").filter(({ unfinished }) => !unfinished);
    expect(found.map(({ title }) => title)).toEqual([
      "Take spokes of 292 mm on the drive side (front-wheel.spokes.length-drive-side: 292 mm). Take spokes of 292 mm on the non-drive side (front-wheel.spokes.length-non-drive-side: 292 mm)",
    ]);
    expect(checkText(found[0]?.after ?? "").outcome("wheel/spoke-length")).toBe("holds");
    const variant = spokes("cross: 3; length-drive-side: 287 mm; length-non-drive-side: 287 mm", "\n  category: city");
    // A bare variant gets a line for each.
    const [inVariant] = offered(variant, "wheel/spoke-length");
    expect(checkText(inVariant?.after ?? "").outcome("wheel/spoke-length")).toBe("holds");
  });
});

describe("what changes nothing", () => {
  const cut = (gap: string): string =>
    tall.replace("greatest-spacers: 25 mm", "greatest-spacers: 30 mm").replace("cap-gap: 3 mm", `cap-gap: ${gap}`);

  it.each(["10 mm", "0 mm"])("is not offered: a gap of %s is corrected, since no steerer is cut for it", (gap) => {
    const found = offered(cut(gap), "steering/steerer-length").filter(({ unfinished }) => !unfinished);
    expect(found.map(({ title }) => title)).toEqual([
      "Let the steerer end 3 mm below the top (cockpit.stem.cap-gap: 3 mm)",
    ]);
    const [finding] = checkText(cut(gap)).of("steering/steerer-length");
    expect(finding?.message).toContain("a gap is more than nothing and 5 mm at most");
  });

  it("cuts the steerer for a gap that may be", () => {
    const [first] = offered(cut("4.5 mm"), "steering/steerer-length");
    expect(checkText(cut("4.5 mm")).of("steering/steerer-length")[0]?.message).toContain(
      "for a gap of 4 mm, as Stem still holds enough of it, it is cut to 218 mm",
    );
    expect(first?.title).toBe("Cut the steerer to 218 mm (fork.steerer-length: 218 mm)");
    expect(graves(checkText(first?.after ?? "").findings)).toEqual([]);
  });
});

it("no tape is wound over grips to close the ends of a bar", () => {
  const text = `
part handlebar a.flat "Flat" { bar: flat }
part grips a.open "Open grips" { closes-end: no }
part grips a.closed "Closed grips" { closes-end: yes }
part tape a.wrap "Wrap" { plugs-supplied: yes }
build example "One" {
  cockpit { handlebar: a.flat; grips: a.open; tape: none; bar-end-plugs: none }
}
`;
  const found = offered(text, "cockpit/bar-end-plugs").filter(({ unfinished }) => !unfinished);
  expect(found.map(({ title }) => title)).toEqual(["Fit Closed grips (a.closed) as cockpit.grips"]);
  const taped = text.replace("tape: none", "tape: a.wrap");
  expect(checkText(taped).of("cockpit/grips-or-tape")[0]).toMatchObject({ severity: "warning", path: "cockpit.tape" });
  const dropped = taped.replace("bar: flat", "bar: drop");
  expect(checkText(dropped).of("cockpit/grips-or-tape")[0]).toMatchObject({ path: "cockpit.grips" });
  expect(offered(dropped, "cockpit/grips-or-tape")[0]?.title).toBe("Leave out Open grips (cockpit.grips: none)");
  // A name that nobody declared may be anything.
  expect(checkText(taped.replace("tape: a.wrap", "tape: a.wrop"), "allowed").outcome("cockpit/grips-or-tape")).toBe(
    "unknown",
  );
});

it("a wheel whose maker states no limit mends no limit", () => {
  const text = `
part rim a.light "Light" { max-system-mass: 90 kg; system-mass-includes: rider-and-kit }
part rim a.silent "Silent" { mass: 500 g }
part rim a.strong "Strong" { max-system-mass: 130 kg; system-mass-includes: rider-and-kit }
build example "One" {
  rider { mass: 95 kg; kit-mass: 2 kg }
  front-wheel.rim: a.light
}
`;
  const found = offered(text, "frame/system-mass").filter(({ title }) => title.startsWith("Fit "));
  expect(found.map(({ title }) => title)).toEqual(["Fit Strong (a.strong) as front-wheel.rim"]);
});

it("pedals whose maker states no limit mend none", () => {
  const text = `
part pedals a.light "Light" { max-rider-mass: 60 kg }
part pedals a.silent "Silent" { mass: 300 g }
part pedals a.strong "Strong" { max-rider-mass: 110 kg }
part pedals a.free "Free" { max-rider-mass: none }
build example "One" { rider.mass: 80 kg; drivetrain.pedals: a.light }
`;
  const found = offered(text, "seat/rider-mass").filter(({ title }) => title.startsWith("Fit "));
  expect(found.map(({ title }) => title).sort()).toEqual([
    "Fit Free (a.free) as drivetrain.pedals",
    "Fit Strong (a.strong) as drivetrain.pedals",
  ]);
});

it("what a rule sets and what the libraries offer for it is offered once", () => {
  const text = `
part bell a.ding "Ding" { mass: 30 g }
rule bell "A bell on every bicycle" {
  require: lighting.bell is not none
  set { lighting.bell: a.ding }
}
build example "One" { lighting.bell: none }
`;
  const { engine, report, findings } = checkText(text);
  const [finding] = findings.filter(({ code }) => code.startsWith("rule/"));
  const found = finding ? mends(engine, report.assembly.declaration, finding) : [];
  expect(found.map(({ title }) => title).filter((title) => !title.startsWith("Waive"))).toEqual([
    "Add Ding (a.ding) as lighting.bell",
  ]);
});

describe("leaving a part out", () => {
  const stand = (others: string): string => `
part frame a.frame "Frame" { accessory-mounts: none }
part stand a.plate "Plate stand" { mount: stand-18 }
${others}
build example "One" { frame: a.frame; carrying.stand: a.plate }
`;

  it("comes after another part for its place, where one fits", () => {
    const titles = (text: string): readonly (readonly [string, boolean])[] =>
      offered(text, "frame/mounts")
        .filter(({ unfinished }) => !unfinished)
        .map(({ title, preferred }) => [title, preferred]);
    const leave = "Leave out Plate stand (carrying.stand: none)";
    expect(titles(stand(""))).toEqual([[leave, true]]);
    expect(titles(stand('part stand a.clamp "Clamp stand" { mount: none }'))).toEqual([
      ["Fit Clamp stand (a.clamp) as carrying.stand", true],
      [leave, false],
    ]);
  });

  it("is never preferred where something else becomes open with it", () => {
    const text = `
part frame a.frame "Frame" { derailleur-mount: none; hanger-seat: none; dropout: vertical; chainstay: 420 mm }
part rear-derailleur a.arm "Arm" { mount: M10x1 }
part cassette a.cogs "Cogs" { cogs: 11-13-15 t; speeds: 3 }
part crankset a.crank "Crank" { rings: 40 t }
part chain a.chain "Chain" { speeds: 3 }
build example "One" {
  frame: a.frame
  drivetrain { rear-derailleur: a.arm; hanger: none; cassette: a.cogs; crankset: a.crank; chain: a.chain { links: 110 } }
}
`;
    const found = offered(text, "drivetrain/derailleur-mount").filter(({ unfinished }) => !unfinished);
    expect(found.map(({ preferred }) => preferred)).toEqual([false]);
    expect(found[0]?.title).toContain("Leave out Arm (drivetrain.rear-derailleur: none)");
  });
});
