import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, fact, optional, setting, slot } from "../../model/need.ts";
import { atMost, inside } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";
import { millimetres } from "../shared/written.ts";

/** Greatest distance over bar and blade that a hand is asked to span, in millimetres; the second for children. */
const grownUp = 89;
const child = 76;

export default defineCheck({
  code: "fit/lever-reach",
  title: "The brake levers can be set to the hand",
  severity: "warning",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    lever: slot(ofBrake(brake, "lever")),
    reach: fact(ofBrake(brake, "lever"), "reach"),
    set: optional(setting(ofBrake(brake, "lever"), "reach-set")),
    bar: fact("cockpit.handlebar", "control-diameter"),
    category: optional(buildField("category")),
  }),
  test({ lever, reach, set, bar, category }, { brake }) {
    const path = ofBrake(brake, "lever");
    const can = showInterval(reach.value, "length");
    if (set.state === "known" && !inside(set.value, reach.value)) {
      const isShort = set.value < reach.value.least;
      // No farther than a hand is asked to span, where the blade comes that close.
      const spanned = (stated(category) === "child" ? child : grownUp) - bar.value / 2;
      const farthest = spanned < reach.value.least ? reach.value.greatest : Math.min(reach.value.greatest, spanned);
      const nearest = isShort ? reach.value.least : farthest;
      const value = millimetres(nearest, isShort ? "up" : "down");
      const why = !isShort && nearest < reach.value.greatest ? ", the farthest that a hand is asked to span" : "";
      return fails(
        `The build sets ${lever.subject} to ${showQuantity(set.value, "length")} from the bar's middle, but its blade can be set to ${can} only: set it to ${showQuantity(nearest, "length")}${why}, or fit another lever.`,
        set,
        [reach],
        [{ kind: "set-setting", slot: path, setting: "reach-set", value }, ...swaps(path)],
        { severity: "error" },
      );
    }
    const nearest = set.state === "known" ? set.value : reach.value.least;
    const span = nearest + bar.value / 2;
    const young = stated(category) === "child";
    const most = young ? child : grownUp;
    if (category.state !== "known" && !atMost(span, child) && atMost(span, grownUp)) {
      return category.state === "unknown"
        ? cannotTell(category)
        : holds(`${lever.subject} asks a hand to span ${showQuantity(span, "length")}.`);
    }
    const [spans, limit] = showPair(span, most, "length");
    const from = set.state === "known" ? "set as planned" : "set as close as it goes";
    if (atMost(span, most)) {
      return holds(
        `${lever.subject}, ${from}, asks a hand to span ${spans} over bar and blade, and up to ${limit} is allowed.`,
        (most - span) / most,
      );
    }
    const closer = set.state === "known" && reach.value.least + bar.value / 2 <= most;
    return fails(
      `${lever.subject}, ${from}, asks a hand to span ${spans} over bar and blade (${showQuantity(nearest, "length")} from the middle of a bar of ${showQuantity(bar.value, "length")}), more than the ${limit} ${young ? "allowed for children" : "allowed"}: ${closer ? "set the blade closer, or " : ""}fit a lever for smaller hands.`,
      lever,
      [reach, bar, ...(set.state === "known" ? [set] : [])],
      [
        ...(closer
          ? [
              {
                kind: "set-setting" as const,
                slot: path,
                setting: "reach-set",
                value: millimetres(most - bar.value / 2, "down"),
              },
            ]
          : []),
        ...swaps(path),
      ],
    );
  },
  explanation:
    "A blade that fingers only just reach is pulled late and weakly. Most levers have a screw that brings the blade nearer " +
    "to the bar, within a range that their maker states. The reach is counted from the bar's middle to the blade, so a " +
    "hand spans that and half the bar. The greatest span allowed is that of United States law, which measures over the " +
    "outsides; children's bicycles have a smaller one. Small hands may need less still: ask the rider. With the blade close, look that it does not touch the " +
    "bar before the brake bites.",
  source:
    "16 CFR 1512.5(b)(3): 89 mm, and 76 mm for sidewalk bicycles; that its maker's range limits the setting is common practice",
  caution: "After each change of reach squeeze the brake hard: the blade may not touch bar or fingers.",
  examples: {
    holds: `
part brake-lever example.stop "Stop" { reach: 55 to 80 mm }
part handlebar example.bar "Bar" { control-diameter: 22.2 mm }

build example "A blade within reach" {
  category: city
  cockpit.handlebar: example.bar
  front-brake.lever: example.stop { reach-set: 65 mm }
  rear-brake.lever: none
}
`,
    fails: `
part brake-lever example.stop "Stop" { reach: 72 to 90 mm }
part handlebar example.bar "Bar" { control-diameter: 22.2 mm }

build example "A grown-up's lever for a child" {
  category: child
  cockpit.handlebar: example.bar
  front-brake.lever: example.stop
  rear-brake.lever: none
}
`,
  },
});
