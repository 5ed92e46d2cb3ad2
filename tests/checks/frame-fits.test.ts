import { describe, expect, it } from "vitest";
import { checkText } from "./check-text.ts";
import { compose, part } from "./compose.ts";

describe("frame/shock-size", () => {
  const code = "frame/shock-size";
  function shock(size: string, frame: string) {
    return checkText(compose({ "rear-shock": part("rear-shock", `size: ${size}`), frame: part("frame", frame) }));
  }

  it.each([
    ["210x55", "210x55", "holds", undefined],
    ["210x52.5", "210x55", "fails", "warning"],
    ["210x57.5", "210x55", "fails", "error"],
    ["205x55", "210x55", "fails", "error"],
    ["210x50", "190x45", "fails", "error"],
  ])("a shock of %s in a frame for %s: %s %s", (size, takes, outcome, severity) => {
    const text = shock(size, `shock-size: ${takes}`);
    expect(text.outcome(code)).toBe(outcome);
    expect(text.of(code)[0]?.severity).toBe(severity);
  });

  it("says by how much a shorter stroke shortens the travel", () => {
    expect(shock("210x44", "shock-size: 210x55").of(code)[0]?.message).toMatch(/44 mm.*55 mm.*20 %/);
  });

  it("is not known without the frame's size, and wrong in a frame that takes none", () => {
    expect(shock("210x55", 'size: "M"').missing(code)).toEqual(["frame.shock-size"]);
    expect(shock("210x55", "shock-size: none").outcome(code)).toBe("fails");
  });
});

describe("frame/shock-mount", () => {
  const code = "frame/shock-mount";
  it.each([
    ["eye-25x8", "eye-25x8", "holds"],
    ["eye-25x8", "eye-25x10", "fails"],
    ["eye-24x8", "eye-25x8", "fails"],
    ["trunnion-54", "eye-25x8", "fails"],
  ])("%s in %s at the shaft end: %s", (has, takes, outcome) => {
    const text = checkText(
      compose({
        "rear-shock": part("rear-shock", `mount-body-end: eye-20x8; mount-shaft-end: ${has}`),
        frame: part("frame", `shock-mount-body-end: eye-20x8; shock-mount-shaft-end: ${takes}`),
      }),
    );
    expect(text.instance(code, "shock-shaft-end")).toBe(outcome);
    expect(text.instance(code, "shock-body-end")).toBe("holds");
  });

  it("asks nothing of a rigid frame", () => {
    const text = checkText(compose({ frame: part("frame", "rear-travel: none") }));
    expect(text.outcome(code)).toBe("notApplicable");
  });
});
