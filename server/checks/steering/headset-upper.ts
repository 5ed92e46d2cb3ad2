import { halfMatingCheck } from "../shared/half-mating.ts";

export default halfMatingCheck({
  code: "steering/headset-upper",
  title: "The upper headset fits the head tube",
  joint: "headset-upper",
  halves: ["fit", "fit"],
  words: {
    one: "fits",
    other: "has",
    nothing: "takes no upper headset",
    remedy: "fit a headset whose upper code begins as the frame's does.",
  },
  explanation:
    "Headsets are named by how their bearings sit and by the bore of the head tube: EC with cups outside, ZS with cups " +
    "let in, IS where the bearing drops into a seat of the frame. A cup that is a millimetre too large cannot be " +
    "pressed in, and one that is too small rattles and ruins the tube. EC and ZS of one number share the bore, so that " +
    "either goes in. A formed IS seat takes neither. The number is a name: the bore itself is a few hundredths off it.",
  source: "standardised headset identification system; bores from memory",
  examples: {
    holds: `
part frame example.fell "Fell" { head-tube-upper: EC44 }
part headset example.bearings "Bearings" { upper: ZS44/28.6 }

build example "Cups of either form share the bore" {
  frame: example.fell
  headset: example.bearings
}
`,
    fails: `
part frame example.fell "Fell" { head-tube-upper: IS42 }
part headset example.bearings "Bearings" { upper: IS41/28.6 }

build example "Nearly the same seat" {
  frame: example.fell
  headset: example.bearings
}
`,
  },
});
