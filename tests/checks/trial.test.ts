import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { prelude } from "../../server/standards/index.ts";
import { checkText } from "./check-text.ts";

/** Faults that people planted in builds of their own and that were once passed over or said badly. */
const outcome = (text: string, code: string) => checkText(text).outcome(code);

describe("a bottom bracket whose widths do not reach the shell it names", () => {
  const build = (widths: string): string => `
part frame x.frame "F" { bottom-bracket-shell: threaded-1.370x24-73 }
part bottom-bracket x.bb "BB" { shell: threaded-1.370x24-73; shell-widths: ${widths}; spacers-supplied: 5 mm }
build example "One" { frame: x.frame; drivetrain.bottom-bracket: x.bb }
`;
  it("fails", () => {
    expect(outcome(build("68 to 70 mm"), "drivetrain/bottom-bracket-shell")).toBe("fails");
    expect(outcome(build("68 to 73 mm"), "drivetrain/bottom-bracket-shell")).toBe("holds");
  });
});

describe("a derailleur on a frame with neither a mount nor a seat", () => {
  it("fails, whatever hanger may still be chosen", () => {
    const text = `
part frame x.frame "F" { hanger-seat: none; derailleur-mount: none }
part rear-derailleur x.d "D" { mount: M10x1 }
build example "One" { frame: x.frame; drivetrain.rear-derailleur: x.d }
`;
    expect(outcome(text, "drivetrain/derailleur-mount")).toBe("fails");
  });
});

describe("a derailleur for the frame end on another one", () => {
  it("is not sent to a hanger that cannot exist", () => {
    const text = `
standard hanger-seat x.slot "A slot" { source: "this test" }
part frame x.frame "F" { hanger-seat: x.slot; derailleur-mount: none }
part rear-derailleur x.d "D" { mount: coaxial-12 }
build example "One" { frame: x.frame; drivetrain { rear-derailleur: x.d; hanger: none } }
`;
    const [finding] = checkText(text).of("drivetrain/derailleur-mount");
    expect(finding?.message).toContain("x.slot");
    expect(finding?.message).not.toContain("hanger with coaxial-12");
  });
});

describe("a quick release", () => {
  it("has no torque to agree on", () => {
    const text = `
part fork x.fork "F" { axle: 9x100 }
part hub x.hub "H" { axle: 9x100 }
build example "One" { fork: x.fork; front-wheel.hub: x.hub }
`;
    const row = checkText(text).row("cockpit/torque-window");
    expect(row.instances.find(({ instance }) => instance === "front-axle")?.verdict.outcome).toBe("notApplicable");
  });
});

describe("spacers of a bottom bracket", () => {
  it("are asked for with outboard bearings only", () => {
    const build = (place: string): string => `
part frame x.frame "F" { bottom-bracket-shell: threaded-1.370x24-68 }
part bottom-bracket x.bb "BB" { shell: threaded-1.370x24-68; shell-widths: 68 mm; bearing-place: ${place} }
build example "One" { frame: x.frame; drivetrain.bottom-bracket: x.bb }
`;
    expect(outcome(build("cartridge"), "drivetrain/bearing-spacers")).toBe("notApplicable");
    expect(outcome(build("outboard"), "drivetrain/bearing-spacers")).toBe("unknown");
  });
});

describe("a repair by a number", () => {
  it("is not offered where something else would begin to fail", () => {
    const text = `
part frame a.frame "F" { dropout: track-end; chainstay: 400 to 420 mm; rear-travel: none; hanger-seat: none; derailleur-mount: none }
part crankset a.crank "C" { rings: 44 t }
part sprocket a.cog "S" { cogs: 18 t }
part chain a.chain "K" { half-link: no }
part closure-link a.link "L" { half-link: no }
build b "B" {
  frame: a.frame
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    crankset: a.crank
    cassette: a.cog
    chain: a.chain { links: 97 }
    closure-link: a.link
    chain-tensioner: none
  }
}
`;
    const engine = new Engine({ today: "2026-11-25", prelude });
    engine.update([{ uri: "a.ferrule", text }]);
    const build = engine.workshop.build("b");
    const parity = engine.findings("a.ferrule").find(({ code }) => code === "drivetrain/chain-parity");
    expect(parity).toBeDefined();
    const titles = build && parity ? mends(engine, build, parity).map(({ title }) => title) : [];
    expect(titles).toContain("Cut the chain to 96 links (drivetrain.chain.links: 96)");
    expect(titles).not.toContain("Cut the chain to 98 links (drivetrain.chain.links: 98)");
  });
});

describe("a waiver without a last day", () => {
  it("counts, and says that it counts for ever", () => {
    const engine = new Engine({ today: "2026-11-25", prelude });
    const text = (until: string): string =>
      `build b "B" {\n  category: road\n  waive drivetrain/cage-capacity "So agreed"${until}\n}\n`;
    const codes = (until: string): string[] => {
      engine.update([{ uri: "a.ferrule", text: text(until) }]);
      return engine.findings("a.ferrule").map(({ code }) => code);
    };
    expect(codes("")).toContain("build/endless-waiver");
    expect(codes(" until 2027-03-31")).not.toContain("build/endless-waiver");
  });
});

describe("a vertical dropout", () => {
  const bike = (dropout: string, chainstay: string): string => `
part frame a.frame "F" { dropout: ${dropout}; chainstay: ${chainstay} }
part crankset a.crank "C" { rings: 46 t }
part sprocket a.cog "S" { cogs: 17 t }
part chain a.chain "K" { links-supplied: 112 }
build example "One" {
  frame: a.frame
  drivetrain { rear-derailleur: none; crankset: a.crank; cassette: a.cog; chain: a.chain { links: 98 }; closure-link: none }
}
`;
  const code = "drivetrain/single-speed-tension";
  it("makes no chain taut, whatever range of chainstay is written", () => {
    expect(outcome(bike("vertical", "405 to 425 mm"), code)).toBe("fails");
    expect(outcome(bike("eccentric", "405 to 425 mm"), code)).toBe("holds");
    expect(outcome(bike("track-end", "405 to 425 mm"), code)).toBe("holds");
  });
});

describe("rings, and what changes between them", () => {
  const code = "drivetrain/front-shifting";
  const bike = (rest: string, rings = "46-30"): string => `
part crankset a.crank "C" { rings: ${rings} t }
part shift-controller a.left "Left lever" { actuation: cable; speeds: 2 }
part brake-lever a.brake "Plain lever" { actuation: none }
build example "Two" {
  drivetrain { crankset: a.crank; ${rest} }
}
`;
  it("a double without a front derailleur is said, and what takes up the slack", () => {
    const { of } = checkText(bike("rear-derailleur: none; front-derailleur: none"));
    expect(of(code)).toMatchObject([{ severity: "warning", path: "drivetrain.crankset" }]);
    expect(of(code)[0]?.message).toContain("46-30 t");
    expect(of(code)[0]?.message).toContain("takes up the slack");
  });
  it("a controller that moves nothing is said, on one ring too", () => {
    for (const rings of ["46-30", "40"]) {
      const { of } = checkText(bike("front-derailleur: none; front-controller: a.left", rings));
      expect(of(code)).toMatchObject([{ path: "drivetrain.front-controller" }]);
    }
  });
  it("a plain brake lever that stands there is none", () => {
    expect(outcome(bike("front-derailleur: none; front-controller: a.brake", "40"), code)).toBe("notApplicable");
  });
  it("is asked only once it is known whether there is a derailleur", () => {
    expect(outcome(bike("rear-derailleur: none"), code)).toBe("unknown");
  });
});

describe("a torque", () => {
  it("is not asked for in a joint that there may not be", () => {
    const { row } = checkText(`
part frame a.frame "F" { hanger-seat: none; dropout: vertical }
part rear-derailleur a.arm "D" { mount: M10x1; mounting-torque: 8 to 10 N·m }
build example "One" {
  frame: a.frame
  drivetrain { hanger: none; rear-derailleur: a.arm }
}
`);
    const missing = row("cockpit/torque-window").missing.map(({ path }) => path);
    expect(missing).toContain("frame.derailleur-mount");
    expect(missing).not.toContain("frame.derailleur-torque");
  });
});

describe("the tension of a belt", () => {
  it("is no question of a chain, whatever is known of the dropouts", () => {
    expect(
      outcome(
        `part frame a.frame "F" { chainstay: 430 mm }
part chain a.chain "K" { speeds: 1 }
part belt a.belt "B" { teeth: 118 t }
build example "One" { frame: a.frame; drivetrain.chain: a.chain }
`,
        "drivetrain/belt-tension",
      ),
    ).toBe("notApplicable");
  });
});

describe("a wired controller beside a wired derailleur", () => {
  it("is fed by the battery that is asked for at the derailleur, once", () => {
    const { of } = checkText(`
part rear-derailleur a.arm "D" { set-up: electronic; power: wired }
part shift-controller a.lever "L" { power: wired }
build example "One" { drivetrain { rear-derailleur: a.arm; rear-controller: a.lever } }
`);
    expect(of("drivetrain/battery-fitted").map(({ path }) => path)).toEqual(["drivetrain.rear-derailleur"]);
  });
  it("is asked for by itself where nothing else is wired", () => {
    const { of } = checkText(`
part rear-derailleur a.arm "D" { set-up: electronic; power: own-battery }
part shift-controller a.lever "L" { power: wired }
build example "One" { drivetrain { rear-derailleur: a.arm; rear-controller: a.lever } }
`);
    expect(of("drivetrain/battery-fitted").map(({ path }) => path)).toEqual(["drivetrain.rear-controller"]);
  });
  it("is no question where a cable does the work", () => {
    const { missing, outcome: of } = checkText(`
part rear-derailleur a.arm "D" { set-up: cable }
part shift-controller a.lever "L" { actuation: cable }
build example "One" { drivetrain { rear-derailleur: a.arm; rear-controller: a.lever; front-controller: none } }
`);
    expect(missing("drivetrain/battery-fitted")).toEqual([]);
    expect(of("drivetrain/battery-fitted")).toBe("notApplicable");
  });
});

describe("a chain of another family than everything else", () => {
  const bike = (chain: string, link: string): string => `
part cassette a.cogs "Cogs" { speeds: 11; cogs: 11-13-15-17-19-21-24-27-30-34-40 t; drive-family: 11-speed }
part crankset a.crank "Crank" { rings: 40 t; drive-family: 11-speed }
part chain a.chain "Chain" { ${chain}; closure: closure-link }
part closure-link a.link "Link" { ${link} }
build example "One" {
  drivetrain { cassette: a.cogs; crankset: a.crank; chain: a.chain; closure-link: a.link; front-derailleur: none }
}
`;
  const found = (text: string): readonly string[] =>
    checkText(text).report.findings.flatMap(({ code, outcome: of }) => (of === "fails" ? [code] : []));
  it("is one finding, at the chain", () => {
    expect(
      found(bike("speeds: 12; drive-family: 12-speed", "speeds: 11; drive-family: 11-speed")).filter((code) =>
        /chain-width|closure-link|drive-family/.test(code),
      ),
    ).toEqual(["drivetrain/drive-family"]);
  });
  it("is another than a link of another family", () => {
    expect(
      found(bike("speeds: 11; drive-family: 11-speed", "speeds: 12; drive-family: 12-speed")).filter((code) =>
        /chain-width|closure-link|drive-family/.test(code),
      ),
    ).toEqual(["drivetrain/closure-link"]);
  });
});

describe("one part whose torque suits none of its neighbours", () => {
  const code = "cockpit/torque-window";
  const bike = (bar: string, front = "4 to 6 N·m"): string => `
part handlebar a.bar "Bar" { bar: flat; control-diameter: 22.2 mm; control-clamp-torque: ${bar} }
part brake-lever a.right "Right" { mount: band-22.2; clamp-torque: 5 to 6 N·m }
part brake-lever a.left "Left" { mount: band-22.2; clamp-torque: ${front} }
part shift-controller a.thumb "Thumb" { mount: band-22.2; clamp-torque: 4.5 to 5 N·m }
build example "One" {
  cockpit.handlebar: a.bar
  rear-brake.lever: a.right
  front-brake.lever: a.left
  drivetrain.rear-controller: a.thumb
}
`;
  it("is one finding, at that part, that names them all", () => {
    const { of, row } = checkText(bike("<= 3 N·m"));
    expect(of(code)).toMatchObject([{ path: "cockpit.handlebar", severity: "error" }]);
    expect(of(code)[0]?.message).toContain("Bar states up to 3 N·m");
    expect(of(code)[0]?.message).toContain("in 3 places");
    for (const one of ["Right states 5 to 6 N·m", "Left states 4 to 6 N·m", "Thumb states 4.5 to 5 N·m"])
      expect(of(code)[0]?.message).toContain(one);
    expect(of(code)[0]?.related.map(({ message }) => message)).toContain("Bar: control-clamp-torque <= 3 N·m");
    // Each joint still counts as failing.
    expect(row(code).instances.filter(({ verdict }) => verdict.outcome === "fails")).toHaveLength(3);
  });
  it("is the neighbour where only that one does not go with it", () => {
    expect(checkText(bike("4.5 to 6 N·m", "2 to 3 N·m")).of(code)).toMatchObject([{ path: "front-brake.lever" }]);
  });
  it("is one finding for both ends of a shock", () => {
    const { of } = checkText(`
part frame a.frame "Frame" { shock-mount-body-end: eye-30x8; shock-mount-shaft-end: eye-22.2x8; shock-bolt-torque: 8 to 10 N·m }
part rear-shock a.shock "Shock" { mount-body-end: eye-30x8; mount-shaft-end: eye-22.2x8; bolt-torque: 12 to 15 N·m }
build example "One" { frame: a.frame; rear-shock: a.shock }
`);
    expect(of(code)).toHaveLength(1);
    expect(of(code)[0]?.message).toContain("in 2 places");
  });
});

describe("a code that no standard declares", () => {
  it("is said once, where it is written, and leaves open what hangs on it", () => {
    const { findings, row } = checkText(
      `
part hub a.hub "Hub" { freehub: nowhere-1 }
part cassette a.cogs "Cogs" { cogs: 11-13-15 t }
build example "One" { rear-wheel.hub: a.hub; drivetrain.cassette: a.cogs }
`,
      "allowed",
    );
    expect(findings.filter(({ message }) => message.includes("nowhere-1")).map(({ code }) => code)).toEqual([
      "model/unknown-standard",
    ]);
    expect(row("cockpit/torque-window").missing.map(({ what }) => what)).toContain(
      "freehub of Hub (rear-wheel.hub), whose freehub-body nowhere-1 no standard declares",
    );
    // What is not written at all is asked for as before.
    expect(findings.some(({ message }) => message.startsWith("Not stated: freehub of Cogs"))).toBe(true);
  });
});

describe("a closure link as wide as another chain", () => {
  const bike = (width: string): string => `
part chain a.chain "Chain" { speeds: 12; drive-family: 12-speed; closure: closure-link; outer-width: 5.25 mm }
part closure-link a.link "Link" { speeds: 12; drive-family: 12-speed; outer-width: ${width} }
build example "One" { drivetrain { chain: a.chain; closure-link: a.link } }
`;
  it("does not close it", () => {
    expect(outcome(bike("5.6 mm"), "drivetrain/closure-link")).toBe("fails");
    expect(outcome(bike("4.9 mm"), "drivetrain/closure-link")).toBe("fails");
    expect(outcome(bike("5.5 mm"), "drivetrain/closure-link")).toBe("holds");
    expect(outcome(bike("5 mm"), "drivetrain/closure-link")).toBe("holds");
  });
});

describe("a cassette that lists other cogs than it calls itself", () => {
  it("is one finding, and has the cogs that it lists", () => {
    const { of } = checkText(`
part cassette a.cogs "Cogs" { speeds: 11; cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t }
part rear-derailleur a.arm "Arm" { speeds: 12; set-up: electronic }
part shift-controller a.lever "Lever" { speeds: 12; actuation: electronic }
build example "One" { drivetrain { cassette: a.cogs; rear-derailleur: a.arm; rear-controller: a.lever } }
`);
    expect(of("drivetrain/speeds").map(({ path }) => path)).toEqual(["drivetrain.cassette"]);
  });
});

describe("cups for a shell of another kind", () => {
  it("are told apart by how the bearings are held, in words", () => {
    const { of } = checkText(`
part frame a.frame "Frame" { bottom-bracket-shell: pressed-41-92 }
part bottom-bracket a.cups "Cups" { shell: threaded-1.370x24-68; shell-widths: 68 to 73 mm }
build example "One" { frame: a.frame; drivetrain.bottom-bracket: a.cups }
`);
    expect(of("drivetrain/bottom-bracket-shell")[0]?.message).toContain(
      "bearings are threaded into one and pressed into the other",
    );
  });
});

describe("a brake lever that states what its shift control does, but not that it has one", () => {
  const bike = (facts: string): string => `
part rear-derailleur a.arm "Arm" { speeds: 11; set-up: cable; shift-family: one }
part brake-lever a.lever "Lever" { ${facts} }
standard shift-family one "One" { actuation: cable; source: "this test" }
build example "One" { drivetrain { rear-derailleur: a.arm; rear-controller: a.lever; front-derailleur: none } }
`;
  it("is not taken for a plain lever", () => {
    const { outcome: of, missing } = checkText(bike("speeds: 11; shift-family: one"));
    expect(of("drivetrain/actuation")).toBe("unknown");
    expect(missing("drivetrain/actuation")).toContain("drivetrain.rear-controller.actuation");
  });
  it("a plain lever is one still", () => {
    expect(outcome(bike("brake-actuation: cable"), "drivetrain/actuation")).toBe("fails");
  });
});
