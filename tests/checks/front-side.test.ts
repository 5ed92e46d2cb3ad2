import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { checkText } from "./check-text.ts";

const bike = (front: string): string => `
part brake-lever a.lever "Lever" { hand: either }
build example "One" {
  front-brake.lever: ${front}
  rear-brake.lever: none
}
`;
const outcome = (workshop: string, front: string) => checkText(workshop + bike(front)).outcome("brake/front-side");
const says = (hand: string): string => `workshop shop "Shop" { language: 1; front-brake-side: ${hand} }\n`;

describe("brake/front-side", () => {
  it.each([
    [says("right"), "a.lever { side: right }", "holds"],
    [says("right"), "a.lever { side: left }", "fails"],
    [says("left"), "a.lever { side: right }", "fails"],
    [says("left"), "a.lever", "unknown"],
    [says("left"), "none", "notApplicable"],
    ['workshop shop "Shop" { language: 1 }\n', "a.lever { side: right }", "notApplicable"],
    ["", "a.lever { side: right }", "notApplicable"],
  ])("%s with %s: %s", (workshop, front, expected) => {
    expect(outcome(workshop, front)).toBe(expected);
  });

  it("names the workshop and both hands", () => {
    const { of } = checkText(says("right") + bike("a.lever { side: left }"));
    const [finding] = of("brake/front-side");
    expect(finding?.message).toContain("The left hand works the front brake (side: left), but Shop says");
    expect(finding?.message).toContain("the right hand does");
    expect(finding?.related.map(({ place }) => place.declaration.keyword)).toContain("workshop");
  });

  it("is asked again when the workshop says otherwise", () => {
    const engine = new Engine({ today: "2026-11-25" });
    engine.update([{ uri: "build", text: bike("a.lever { side: left }") }]);
    const codes = (): readonly string[] => engine.findings("build").map(({ code }) => code);
    expect(codes()).not.toContain("brake/front-side");
    const told = engine.update([{ uri: "shop", text: says("right") }]);
    expect(told.has("build")).toBe(true);
    expect(codes()).toContain("brake/front-side");
    engine.update([{ uri: "shop", text: says("left") }]);
    expect(codes()).not.toContain("brake/front-side");
  });
});
