import { fact, optional, slot } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, lacksDimension, showCode } from "../shared/codes.ts";
import { clampForm } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";

/** Bars and bands are out by this much without anyone noticing. */
const tolerance = 0.2;

/** Parts round the bar; `middle` for those that may also sit on its thick middle beside the stem. */
const places = [
  { name: "rear-brake.lever", slot: "rear-brake.lever", field: "mount", middle: false },
  { name: "front-brake.lever", slot: "front-brake.lever", field: "mount", middle: false },
  { name: "drivetrain.rear-controller", slot: "drivetrain.rear-controller", field: "mount", middle: true },
  { name: "drivetrain.front-controller", slot: "drivetrain.front-controller", field: "mount", middle: true },
  { name: "seat.remote", slot: "seat.remote", field: "mount", middle: true },
  { name: "cockpit.remote", slot: "cockpit.remote", field: "mount", middle: true },
  { name: "lighting.bell", slot: "lighting.bell", field: "mount", middle: true },
  { name: "cockpit.grips", slot: "cockpit.grips", field: "inside-diameter", middle: false },
] as const;

export default defineCheck({
  code: "cockpit/control-diameter",
  title: "Levers, controls and grips fit the diameter of the bar",
  severity: "error",
  since: 1,
  instances: places,
  needs: ({ slot: path, field }) => ({
    part: anySlot(path),
    own: anyFact<ResolvedCode | number>(path, field),
    clamp: anySetting<string>(path, "clamp"),
    bar: slot("cockpit.handlebar"),
    diameter: fact("cockpit.handlebar", "control-diameter"),
    middleDiameter: optional(fact("cockpit.handlebar", "clamp-diameter")),
  }),
  test({ part, own, clamp, bar, diameter, middleDiameter }, { slot: path, field, middle }) {
    const end = readEnd(part, own, field);
    if (end.state === "empty") return notApplicable(`${path} is none`);
    if (end.state === "unknown") return cannotTell(end.unknown);
    if (end.state !== "known") return notApplicable(`${end.part.subject} goes round no bar`);
    if (clamp.state === "unknown") return cannotTell(clamp);
    if (clamp.state === "known") return notApplicable(`${end.part.subject} shares the clamp of ${clamp.value}`);
    let fits: number;
    if (typeof end.fact.value === "number") fits = end.fact.value;
    else {
      const form = clampForm(end.fact.value);
      if (form === undefined) return cannotTell(lacksDimension(end.fact.value, "form"));
      if (form !== "band") return notApplicable(`${end.part.subject} is held by ${showCode(end.fact.value)}`);
      const band = dimensionOf<number>(end.fact.value, "diameter");
      if (band === undefined) return cannotTell(lacksDimension(end.fact.value, "diameter"));
      fits = band;
    }
    const [takes, is] = showPair(fits, diameter.value, "length");
    if (atMost(Math.abs(fits - diameter.value), tolerance)) {
      return holds(`${end.part.subject} is for bars of ${takes}, and ${bar.subject} is ${is} there.`);
    }
    if (middle && middleDiameter.state === "unknown") return cannotTell(middleDiameter);
    if (middle && middleDiameter.state === "known" && atMost(Math.abs(fits - middleDiameter.value), tolerance)) {
      return holds(`${end.part.subject} is for ${takes}, which is the middle of ${bar.subject} beside the stem.`);
    }
    return fails(
      `${end.part.subject} is for bars of ${takes}, but ${bar.subject} is ${is} where controls go: fit ${field === "mount" ? "a control with a band" : "grips"} of ${is}, or another bar.`,
      end.part,
      [end.fact, diameter],
      swaps(path, "cockpit.handlebar"),
    );
  },
  explanation:
    "Flat bars are 22.2 mm thick where hands and controls go, and drop bars 23.8 mm. A band for the thicker bar cannot be " +
    "tightened on the thinner one, and the other way round it has to be bent open and cracks, or scores the bar so that " +
    "it breaks later. Shims for this exist only where the control's maker supplies them. Bells and remotes may also sit " +
    "on the thick middle beside the stem, if their band fits there. A control that shares a lever's clamp is asked about " +
    "with that clamp.",
  source: "trade glossaries for 22.2 and 23.8 mm; common practice, no source",
  caution: "A brake lever that turns on the bar cannot be relied on; a bar scored by a clamp breaks without warning.",
  examples: {
    holds: `
part handlebar example.flat "Flat 760" { control-diameter: 22.2 mm }
part brake-lever example.stop "Stop" { mount: band-22.2 }

build example "A lever on a flat bar" {
  cockpit { handlebar: example.flat; grips: none }
  rear-brake.lever: example.stop { side: right }
  front-brake.lever: example.stop { side: left }
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: none
}
`,
    fails: `
part handlebar example.drop "Drop 42" { control-diameter: 23.8 mm; clamp-diameter: 31.8 mm }
part brake-lever example.stop "Stop" { mount: band-22.2 }

build example "A flat-bar lever on a drop bar" {
  cockpit.handlebar: example.drop
  rear-brake.lever: example.stop { side: right }
}
`,
  },
});
