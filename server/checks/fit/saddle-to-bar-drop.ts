import { sine } from "../../calculations/shared/angles.ts";
import { buildField, fact, optional, setting, slot, worked } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { aimed, placed } from "../shared/aim.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "fit/saddle-to-bar-drop",
  title: "The bar is as far below the saddle as is aimed at",
  severity: "warning",
  since: 1,
  needs: () => ({
    stem: slot("cockpit.stem"),
    aim: buildField("fit.saddle-to-bar-drop"),
    tolerance: buildField("fit.tolerance"),
    actual: worked<number>("cockpit.saddle-drop"),
    insertion: optional(setting("seat.post", "insertion")),
    wanted: optional(worked<number>("seat.insertion-for-height")),
    angle: optional(fact("frame", "seat-angle")),
    clamping: optional(fact("cockpit.stem", "clamping")),
  }),
  test({ stem, aim, tolerance, actual, clamping, insertion, wanted, angle }) {
    // The height is set first: what it changes is not to be mended at the bar.
    const raised = insertion.state === "known" && wanted.state === "known" ? insertion.value - wanted.value : 0;
    const later = angle.state === "known" && greaterThan(Math.abs(raised), tolerance.value);
    const value = later ? actual.value + raised * sine(angle.value) : actual.value;
    const { off, is, by, aim: goal, tolerance: near, margin } = aimed({ ...actual, value }, aim, tolerance);
    const said = `${later ? "With the saddle at the height that is aimed at, its top" : "The saddle's top"} is ${placed(value, is, "above", "below")} the bar clamp`;
    if (off === undefined) return holds(`${said}; the aim is ${goal}, within ${near}.`, margin);
    const isQuill = clamping.state === "known" && clamping.value === "quill";
    const mend = isQuill
      ? `set the quill ${off > 0 ? "higher, as far as its mark allows" : "deeper"}, or fit another stem`
      : `${off > 0 ? "raise" : "lower"} the bar with ${off > 0 ? "spacers" : "fewer spacers"} or another stem`;
    return fails(
      `${said}, ${by} too ${off > 0 ? "much" : "little"} for the aim of ${goal} within ${near}: ${mend}.`,
      stem,
      [aim, tolerance],
      swaps("cockpit.stem"),
    );
  },
  explanation:
    "The drop is the height of the saddle's top above the middle of the bar clamp; with the bar higher it is negative. It is " +
    "what most riders feel first: too much strains neck and hands, too little takes weight off the front wheel. It follows " +
    "from where the saddle stands and where the stem holds the bar. It says nothing about how far away the bar is, which " +
    "is aimed at by itself. Bars of different shape carry the hands at different heights over the clamp.",
  source: "definition; the aim and how near it has to be are the build's own",
  examples: {
    holds: `
part frame example.fell "Fell" {
  reach: 385 mm
  stack: 560 mm
  head-angle: 73°
  seat-angle: 73.5°
  seat-tube-offset: 0 mm
  seat-tube-length: 520 mm
}
part headset example.bearings "Bearings" { upper-stack: 15 mm }
part stem example.stem "Stem 100" { length: 100 mm; angle: -6°; clamp-height: 40 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 0 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Seventy millimetres of drop" {
  frame: example.fell
  headset: example.bearings
  cockpit.stem: example.stem { spacers-below: 20 mm }
  seat { post: example.post { insertion: 187 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-to-bar-drop: 70 mm; tolerance: 10 mm }
}
`,
    fails: `
part frame example.fell "Fell" {
  reach: 385 mm
  stack: 560 mm
  head-angle: 73°
  seat-angle: 73.5°
  seat-tube-offset: 0 mm
  seat-tube-length: 520 mm
}
part headset example.bearings "Bearings" { upper-stack: 15 mm }
part stem example.stem "Stem 100" { length: 100 mm; angle: -6°; clamp-height: 40 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 0 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Too low for the rider" {
  frame: example.fell
  headset: example.bearings
  cockpit.stem: example.stem { spacers-below: 20 mm }
  seat { post: example.post { insertion: 187 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-to-bar-drop: 20 mm; tolerance: 10 mm }
}
`,
  },
});
