import { describe, expect, it } from "vitest";
import { checkText, repaired } from "./check-text.ts";

const code = "fit/lever-reach";
const bike = (reach: string, set = "", category = "category: city"): string => `
part brake-lever a.stop "Stop" { ${reach === "" ? "" : `reach: ${reach}`} }
part handlebar a.bar "Bar" { control-diameter: 22.2 mm }
build example "One" {
  ${category}
  cockpit.handlebar: a.bar
  front-brake.lever: a.stop { ${set} }
  rear-brake.lever: none
}
`;

describe(code, () => {
  it.each([
    // 77.9 + 11.1 = 89 mm is the most that is allowed.
    ["60 to 80 mm", "", "category: city", "holds"],
    ["77.9 to 90 mm", "", "category: city", "holds"],
    ["78 to 90 mm", "", "category: city", "fails"],
    ["60 to 90 mm", "reach-set: 77.9 mm", "category: city", "holds"],
    ["60 to 90 mm", "reach-set: 78 mm", "category: city", "fails"],
    ["60 to 90 mm", "reach-set: 59 mm", "category: city", "fails"],
    // 64.9 + 11.1 = 76 mm for a child.
    ["64.9 to 90 mm", "", "category: child", "holds"],
    ["65 to 90 mm", "", "category: child", "fails"],
    // Between the two limits it hangs on the category; outside them it does not.
    ["65 to 90 mm", "", "", "unknown"],
    ["60 to 90 mm", "", "", "holds"],
    ["78 to 90 mm", "", "", "fails"],
    ["", "", "category: city", "unknown"],
    ["none", "", "category: city", "notApplicable"],
  ])("a reach of %s, %s, %s: %s", (reach, set, category, outcome) => {
    expect(checkText(bike(reach, set, category)).instance(code, "front")).toBe(outcome);
    expect(checkText(bike(reach, set, category)).instance(code, "rear")).toBe("notApplicable");
  });
  it("is an error only where the setting cannot be made", () => {
    expect(checkText(bike("60 to 90 mm", "reach-set: 59 mm")).of(code)[0]?.severity).toBe("error");
    expect(checkText(bike("78 to 90 mm")).of(code)[0]?.severity).toBe("warning");
  });
  it.each([
    ["reach-set: 59 mm", "reach-set: 60 mm"],
    ["reach-set: 95 mm", "reach-set: 77.5 mm"],
    ["reach-set: 85 mm", "reach-set: 77.5 mm"],
  ])("mends %s", (set, mended) => {
    const texts = repaired(bike("60 to 90 mm", set), code).map(({ text }) => text);
    expect(texts.some((text) => text.includes(mended))).toBe(true);
  });
});
