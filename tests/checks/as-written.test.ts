import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { besideWritten } from "../../server/values/as-written.ts";
import { type DisplayUnits, showInterval } from "../../server/values/show.ts";

/** The message of the first finding of a code, for readers of these units. */
function said(code: string, text: string, displayUnits: DisplayUnits = "metric"): string | undefined {
  const engine = new Engine({ today: "2026-11-25", displayUnits });
  engine.update([{ uri: "one", text }]);
  engine.complete = true;
  return engine.findings("one").find((finding) => finding.code === code)?.message;
}

const wheel = (tyre: string, rim: string, pressure: string): string => `
part tyre a.tyre "Tyre" { construction: tube; greatest-pressure: ${tyre}; least-pressure: none }
part rim a.rim "Rim" { rim-kind: crotchet; greatest-pressure: ${rim} }
build example "One" {
  front-wheel { tyre: a.tyre { pressure: ${pressure} }; rim: a.rim }
  rear-wheel.tyre: none
}
`;

describe("what was stated in another unit than it is shown in", () => {
  it.each([
    ["metric", "98 psi (6.76 bar)", "95 psi (6.55 bar)", "6 bar"],
    ["inch", "98 psi", "95 psi", "6 bar (87 psi)"],
    ["both", "6.76 bar (98 psi)", "6.55 bar (95 psi)", "6 bar (87 psi)"],
  ] as const)("is shown as it was written, in %s units", (units, is, tyre, rim) => {
    expect(said("wheel/pressure", wheel("95 psi", "6 bar", "98 psi"), units)).toContain(
      `Pressure ${is}, but Tyre bears ${tyre} and Rim bears ${rim} at most`,
    );
  });

  it("is said once where the digits are the same", () => {
    expect(said("wheel/pressure", wheel("0.5 MPa", "8 bar", "7 bar"))).toContain("Tyre bears 5 bar at most");
  });

  it("holds for what was measured", () => {
    const text = `${wheel("5 bar", "8 bar", "4 bar")}
record "A-1" of example {
  front-wheel.tyre.pressure: 80 psi
}
`;
    expect(said("record/pressure", text)).toContain("The tyre holds 80 psi (5.52 bar), but Tyre bears 5 bar at most");
  });

  it("is an interval as it was written", () => {
    const torque = { least: 8, greatest: 10 };
    const shown = (written: string): string =>
      besideWritten({ torque: { state: "known", value: torque, written } }, () => showInterval(torque, "torque"));
    // 10 N·m ÷ 0.1129848290276167 N·m per lbf·in.
    expect(shown("8 N·m to 88.5074579130 lbf·in")).toBe("8 N·m to 88.5074579130 lbf·in (8 to 10 N·m)");
    expect(shown("8 to 10 N·m")).toBe("8 to 10 N·m");
    expect(showInterval(torque, "torque")).toBe("8 to 10 N·m");
  });
});

describe("a percentage", () => {
  const worn = (limit: string, measured: string): string => `
part chain a.chain "Chain" { speeds: 9; wear-limit: ${limit} }
build example "One" { drivetrain.chain: a.chain }
record "A-1" of example {
  drivetrain.chain-wear: ${measured}
}
`;

  it("of chain wear is shown as fine as it is stated", () => {
    const shown = (limit: string, measured: string): string | undefined =>
      said("record/chain-wear", worn(limit, measured));
    expect(shown("0.75 %", "0.9 %")).toContain("is 0.9 % longer than when new, and Chain is replaced at 0.75 %");
    expect(shown("0.75 %", "0.75 %")).toContain("is 0.75 % longer than when new, and Chain is replaced at 0.75 %");
    expect(shown("0.5 %", "1.25 %")).toContain("is 1.25 % longer");
  });
});
