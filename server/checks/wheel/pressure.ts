import { stated } from "../../calculations/shared/maybe.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, optional, setting, slot } from "../../model/need.ts";
import { atLeast, atMost, lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact } from "../shared/codes.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Hundredths of a bar, which is as fine as a gauge is read. */
const fineness = 100;

export default defineCheck({
  code: "wheel/pressure",
  title: "The tyre pressure is within what tyre and rim bear",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    pressure: optional(setting(ofWheel(wheel, "tyre"), "pressure")),
    construction: optional(fact(ofWheel(wheel, "tyre"), "construction")),
    ofTyre: optional(fact(ofWheel(wheel, "tyre"), "greatest-pressure")),
    least: optional(fact(ofWheel(wheel, "tyre"), "least-pressure")),
    ofRim: optional(fact(ofWheel(wheel, "rim"), "greatest-pressure")),
    kind: optional(fact(ofWheel(wheel, "rim"), "rim-kind")),
  }),
  test({ tyre, pressure, construction, ofTyre, least, ofRim, kind }, { wheel }) {
    if (stated(construction) === "airless") {
      return notApplicable(`${tyre.subject} holds no air`);
    }
    const slotPath = ofWheel(wheel, "tyre");
    const ofKind = kind.state === "known" ? dimensionFact<number>(kind.value, "greatest-pressure") : undefined;
    const limits: readonly Known<number>[] = [ofTyre, ofRim, ...(ofKind ? [ofKind] : [])].flatMap((one) =>
      one.state === "known" ? [one] : [],
    );
    const [lowest] = [...limits].sort((a, b) => a.value - b.value);
    const subject = (known: Known<number>): string =>
      known === ofKind ? `any tyre on a rim of its kind (${known.subject})` : known.subject;

    if (lowest && least.state === "known" && lessThan(lowest.value, least.value)) {
      const [asks, bears] = showPair(least.value, lowest.value, "pressure");
      return fails(
        `${tyre.subject} asks for ${asks} at least, but ${subject(lowest)} bears ${bears} at most: no pressure is right for both. Fit another tyre or rim.`,
        tyre,
        [least, lowest],
        swaps(slotPath, ofWheel(wheel, "rim")),
      );
    }
    if (pressure.state === "known" && lowest && !atMost(pressure.value, lowest.value)) {
      const broken = limits.filter(({ value }) => !atMost(pressure.value, value));
      const [is] = showPair(pressure.value, lowest.value, "pressure");
      const bear = broken.map((one) => `${subject(one)} bears ${showPair(one.value, pressure.value, "pressure")[0]}`);
      const down = Math.floor(lowest.value * fineness + 1e-6) / fineness;
      return fails(`Pressure ${is}, but ${both(bear)} at most: inflate to ${down} bar or less.`, pressure, broken, [
        { kind: "set-setting", slot: slotPath, setting: "pressure", value: `${down} bar` },
        ...swaps(...broken.map((one) => (one === ofTyre ? slotPath : ofWheel(wheel, "rim")))),
      ]);
    }
    if (pressure.state === "known" && least.state === "known" && !atLeast(pressure.value, least.value)) {
      const [is, asks] = showPair(pressure.value, least.value, "pressure");
      const up = Math.ceil(least.value * fineness - 1e-6) / fineness;
      return fails(
        `Pressure ${is}, but ${least.subject} prints ${asks} at least: inflate to ${up} bar or more, or fit a tyre for less.`,
        pressure,
        [least],
        [{ kind: "set-setting", slot: slotPath, setting: "pressure", value: `${up} bar` }, ...swaps(slotPath)],
      );
    }
    const unknown = unknowns(pressure, ofTyre, least, ofRim, kind);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (pressure.state !== "known" || !lowest) return notApplicable("neither tyre nor rim limits the pressure");
    const [is, bears] = showPair(pressure.value, lowest.value, "pressure");
    const from =
      least.state === "known"
        ? `, and ${least.subject} prints ${showPair(least.value, pressure.value, "pressure")[0]} at least`
        : "";
    return holds(
      `Pressure ${is}; ${subject(lowest)} bears ${bears}${from}.`,
      (lowest.value - pressure.value) / lowest.value,
    );
  },
  explanation:
    "The pressure that a wheel bears is the least of what the tyre prints, what the rim's maker allows, and what the kind of " +
    "rim bears with any tyre: 5 bar where its sides have no hooks. Above that the tyre blows off or the rim spreads and " +
    "cracks. Below the least pressure that the tyre prints, it rolls off in bends, and the rim hits the ground. Where the " +
    "tyre asks for more than the rim allows, the two are not for each other. Within the limits the right pressure is the " +
    "rider's: a starting value can be worked out, and is only that.",
  source:
    "definition of the maximum inflation pressure in TBIS 4210-1:2018, clause 2.27, the adoption of ISO 4210-1; 5 bar on tubeless straight-side rims by ETRTO (from memory)",
  caution:
    "A tyre or rim that bursts injures eyes and hands. Never inflated beyond the lowest of the limits, eyes protected when beads are seated, and read on a gauge that can be trusted.",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { construction: tube; greatest-pressure: 5.5 bar; least-pressure: 2.5 bar }
part rim example.rim "Rim" { rim-kind: crotchet; greatest-pressure: 6.5 bar }

build example "Between the limits" {
  front-wheel { tyre: example.tyre { pressure: 4.2 bar }; rim: example.rim }
  rear-wheel.tyre: none
}
`,
    fails: `
part tyre example.tyre "Tyre" { construction: tubeless-ready; greatest-pressure: 7.5 bar; least-pressure: 3 bar }
part rim example.rim "Hookless" { rim-kind: tubeless-straight-side; greatest-pressure: 5 bar }

build example "Pumped like a rim with hooks" {
  front-wheel { tyre: example.tyre { pressure: 6.2 bar }; rim: example.rim }
  rear-wheel.tyre: none
}
`,
  },
});
