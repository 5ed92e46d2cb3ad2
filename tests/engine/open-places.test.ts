import { expect, it } from "vitest";
import { checkText } from "../checks/check-text.ts";

const bike = (stem: string): string => `
part handlebar a.bar "Bar" { clamp-diameter: 31.8 mm }
part frame a.frame "Frame" { max-system-mass: 120 kg; system-mass-includes: all-up; mass: 2 kg }
build example "One" {
  rider { mass: 80 kg; kit-mass: 2 kg }
  frame: a.frame
  cockpit { handlebar: a.bar${stem} }
}
`;

/** What is said to be missing at a path, in every way it is said. */
const asked = (text: string, path: string): readonly string[] => {
  const { report } = checkText(text, "allowed");
  const missing = report.rows.flatMap((row) => row.missing.filter((one) => one.path === path));
  return [...new Set(missing.map(({ what }) => what))];
};

it("a part of another kind than goes there is said to be declared as what it is", () => {
  expect(asked(bike("; stem: a.bar"), "cockpit.stem")).toEqual([
    "the part a.bar (cockpit.stem), which is declared as a handlebar",
  ]);
  expect(asked(bike("; stem: a.baz"), "cockpit.stem")).toEqual([
    "the part a.baz (cockpit.stem), which no library declares",
  ]);
});

it("a place that is open is asked for in the same words, whatever it is asked for", () => {
  expect(asked(bike(""), "cockpit.stem")).toEqual(["which stem is fitted (cockpit.stem)"]);
  expect(asked(bike(""), "drivetrain.pedals")).toEqual(["which pair of pedals is fitted (drivetrain.pedals)"]);
  // It is of both that the words are the same: the sum of masses, and the check of the joint.
  const { missing } = checkText(bike(""));
  expect(missing("frame/system-mass")).toContain("drivetrain.pedals");
  expect(missing("drivetrain/pedal-thread")).toContain("drivetrain.pedals");
});
