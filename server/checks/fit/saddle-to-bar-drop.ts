import { buildField, slot, worked } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { aimed } from "../shared/aim.ts";
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
  }),
  test({ stem, aim, tolerance, actual }) {
    const { off, is, by, aim: goal, tolerance: near, margin } = aimed(actual, aim, tolerance);
    const said = `The saddle's top is ${is} above the bar clamp`;
    if (off === undefined) return holds(`${said}; the aim is ${goal}, within ${near}.`, margin);
    return fails(
      `${said}, ${by} too ${off > 0 ? "much" : "little"} for the aim of ${goal} within ${near}: ${off > 0 ? "raise" : "lower"} the bar with spacers or another stem.`,
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
