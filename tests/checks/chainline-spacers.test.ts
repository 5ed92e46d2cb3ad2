import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";

/** A frame for 52 mm, a crank that gives 52 mm, and cups whose drive-side face belongs 39 mm from the shell's middle. */
const bike = (shell: 68 | 73, spacers: string, face = "drive-side-face: 39 mm", ring = ""): string => `
part frame a.frame "Frame" { chainline: 52 mm; bottom-bracket-shell: threaded-1.370x24-${shell} }
part crankset a.crank "Crank" { rings: none; chainline: 52 mm }
part chainring a.ring "Ring" { teeth: 32 t; ring-chainline: 52 mm }
part bottom-bracket a.cups "Cups" { bearing-place: outboard; shell-widths: 68 to 73 mm; spacers-supplied: 7.5 mm; ${face} }
part hub a.hub "Hub" { cog-line: 45 mm }
build example "One" {
  frame: a.frame
  drivetrain {
    crankset: a.crank
    chainring: a.ring { ${ring} }
    bottom-bracket: a.cups { ${spacers} }
  }
  rear-wheel.hub: a.hub
}
`;

const offset = (text: string): unknown => {
  const worked = checkText(text).report.evaluation.quantity("drivetrain.chainline-offset");
  return worked?.state === "known" ? worked.value : worked?.state;
};

describe("spacers and the chainline", () => {
  it.each([
    // As the maker has it: 34 + 5 = 36.5 + 2.5 = 39 mm.
    [68, "shell-spacers-drive-side: 5 mm; shell-spacers-non-drive-side: 2.5 mm", 7, "holds"],
    [73, "shell-spacers-drive-side: 2.5 mm", 7, "holds"],
    // All of them at the drive side: 34 + 7.5 = 41.5 mm.
    [68, "shell-spacers-drive-side: 7.5 mm", 9.5, "fails"],
    // The one spacer of a wide shell at the wrong side: 36.5 mm.
    [73, "shell-spacers-non-drive-side: 2.5 mm", 4.5, "fails"],
  ] as const)("a shell of %s mm with %s", (shell, spacers, expected, outcome) => {
    const text = bike(shell, spacers);
    expect(offset(text)).toBeCloseTo(expected, 9);
    expect(checkText(text).outcome("drivetrain/chainline")).toBe(outcome);
  });
  it("are taken to be as the makers say where no face is stated, however uneven", () => {
    expect(offset(bike(73, "shell-spacers-non-drive-side: 2.5 mm", ""))).toBeCloseTo(7, 9);
  });
  it("between ring and crank always move the ring inward", () => {
    const text = bike(73, "", "", "ring-spacers: 1.5 mm");
    expect(offset(text)).toBeCloseTo(5.5, 9);
    expect(checkText(text).of("drivetrain/chainline")[0]?.message).toContain(
      "Chainline 50.5 mm (Ring, moved 1.5 mm inward by spacers)",
    );
  });
  it("cannot be judged on a shell that nobody named", () => {
    const text = bike(73, "").replace("; bottom-bracket-shell: threaded-1.370x24-73", "");
    expect(offset(text)).toBe("unknown");
    expect(checkText(text).missing("drivetrain/chainline")).toContain("frame.bottom-bracket-shell");
  });
});
