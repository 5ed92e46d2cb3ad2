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
    expect(titles).toContain("Set drivetrain.chain.links to 96");
    expect(titles).not.toContain("Set drivetrain.chain.links to 98");
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
