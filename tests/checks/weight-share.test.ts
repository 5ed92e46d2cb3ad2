import { describe, expect, it } from "vitest";
import check from "../../server/checks/fit/weight-share.ts";
import { type CheckedText, checkText } from "./check-text.ts";

const text = check.examples.holds;
const code = "fit/weight-share";

const number = (checked: CheckedText, path: string): number => {
  const worked = checked.report.evaluation.quantity(path);
  if (worked?.state !== "known" || typeof worked.value !== "number") throw new Error(`${path} is not known`);
  return worked.value;
};
const share = (written: string): number => number(checkText(written), "bike.front-share");

function changed(from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`the example does not say ${from}`);
  return text.replace(from, to);
}

describe("the share on the front wheel", () => {
  it("is less with the saddle farther back, or the bar nearer", () => {
    expect(share(changed("rail-position: 0 mm", "rail-position: 20 mm"))).toBeLessThan(share(text) - 0.5);
    expect(share(changed("length: 90 mm", "length: 40 mm"))).toBeLessThan(share(text) - 0.3);
  });
  it("follows a mass to where it stands", () => {
    const heavy = (part: string): number => share(changed(part, part.replace(/mass: \d+ g/, "mass: 6000 g")));
    const fork = "axle-to-crown: 390 mm; fork-offset: 47 mm; mass: 900 g";
    expect(heavy(fork)).toBeGreaterThan(share(text));
    const post = "overall-length: 350 mm; setback: 10 mm; mass: 280 g";
    expect(heavy(post)).toBeLessThan(share(text));
  });
  it("moves by the lever arm: 10 kg more at the front axle, worked by hand", () => {
    const checked = checkText(text);
    const [mass, forward] = [number(checked, "bike.total-mass"), number(checked, "bike.centre-forward")];
    const wheelbase = number(checked, "geometry.wheelbase");
    const more = changed(
      "front-wheel.tyre: example.tyre\n",
      "front-wheel { tyre: example.tyre; hub: example.ballast }\n",
    ).replace("part tyre", `part hub example.ballast "Ballast" { mass: 10 kg }\npart tyre`);
    expect(share(more)).toBeCloseTo((100 * (mass * forward + 10 * wheelbase)) / ((mass + 10) * wheelbase), 6);
  });
  it("does not hang on what is carried", () => {
    expect(share(changed("mass: 90 kg }", "mass: 90 kg; kit-mass: 25 kg }"))).toBe(share(text));
  });
  it("is used for the loads on the wheels, in place of the usual one", () => {
    const checked = checkText(changed("mass: 90 kg }", "mass: 90 kg; kit-mass: 0 kg }"));
    const all = number(checked, "bike.all-up-mass");
    expect(number(checked, "bike.front-wheel-load")).toBeCloseTo((all * share(text)) / 100, 6);
    const unknown = checkText(
      changed("height: 1850 mm; mass: 90 kg }", "mass: 90 kg; kit-mass: 0 kg }").replace(/fork-offset: 47 mm; /, ""),
    );
    expect(number(unknown, "bike.front-wheel-load") / number(unknown, "bike.all-up-mass")).toBeCloseTo(0.45, 9);
  });
  it("asks for what it lacks", () => {
    expect(checkText(changed("height: 1850 mm; ", "")).missing(code)).toEqual(["rider.height"]);
    expect(
      checkText(
        changed(
          'bearings "Bearings" { lower-stack: 4 mm; upper-stack: 12 mm; mass: 120 g }',
          'bearings "Bearings" { lower-stack: 4 mm; upper-stack: 12 mm }',
        ),
      ).missing(code),
    ).toEqual(["headset.mass"]);
  });
  it("is not worked out where the bar is out of reach", () => {
    const { outcome } = checkText(
      changed("reach: 380 mm", "reach: 700 mm")
        .replace("length: 90 mm", "length: 150 mm")
        .replace("height: 1850 mm", "height: 1100 mm"),
    );
    expect(outcome(code)).toBe("notApplicable");
  });
});
