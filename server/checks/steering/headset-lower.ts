import { halfMatingCheck } from "../shared/half-mating.ts";

export default halfMatingCheck({
  code: "steering/headset-lower",
  title: "The lower headset fits the head tube",
  joint: "headset-lower",
  halves: ["fit", "fit"],
  words: {
    one: "fits",
    other: "has",
    nothing: "takes no lower headset",
    remedy: "fit a headset whose lower code begins as the frame's does.",
  },
  explanation:
    "The lower end of a head tube is often wider than the upper one, for steerers that taper, and has a code of its own. " +
    "A lower cup of another bore cannot be pressed in, or has no hold. Cups of EC and ZS with one number share the bore, " +
    "and a frame with a wide bore takes reducing cups for a straight steerer: what counts is the number, not the form. " +
    "A formed IS seat takes only the bearing it was formed for. The lower bearing carries the blows of the road.",
  source: "standardised headset identification system; bores from memory",
  examples: {
    holds: `
part frame example.fell "Fell" { head-tube-lower: ZS49 }
part headset example.bearings "Bearings" { lower: EC49/40 }

build example "A cup outside, in a bore for one let in" {
  frame: example.fell
  headset: example.bearings
}
`,
    fails: `
part frame example.fell "Fell" { head-tube-lower: ZS55 }
part headset example.bearings "Bearings" { lower: ZS56/40 }

build example "A cup one millimetre too large" {
  frame: example.fell
  headset: example.bearings
}
`,
  },
});
