import { defineCheck } from "../define.ts";
import { judgePlace, placeNeeds } from "../shared/derailleur-place.ts";

export default defineCheck({
  code: "drivetrain/tensioner-mount",
  title: "The chain tensioner has a place that takes it",
  severity: "error",
  since: 1,
  needs: () => placeNeeds("drivetrain.chain-tensioner"),
  test: (facts) => judgePlace(facts, "drivetrain.chain-tensioner", "tensioner"),
  explanation:
    "A chain tensioner for a single speed or a gear hub hangs where a derailleur would: in the threaded eye of a hanger " +
    "or of the frame. A frame made for one gear only, with sliding dropouts, often has no such eye, and needs no " +
    "tensioner. A frame with a seat for a replaceable hanger needs that hanger before a tensioner can go on.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.town "Town" { hanger-seat: none; derailleur-mount: M10x1 }
part chain-tensioner example.jockey "Jockey" { mount: M10x1 }

build example "A tensioner on the frame's own hanger" {
  frame: example.town
  drivetrain.chain-tensioner: example.jockey
}
`,
    fails: `
part frame example.track "Track" { hanger-seat: none; derailleur-mount: none }
part chain-tensioner example.jockey "Jockey" { mount: M10x1 }

build example "A tensioner on a frame without an eye" {
  frame: example.track
  drivetrain {
    hanger: none
    chain-tensioner: example.jockey
  }
}
`,
  },
});
