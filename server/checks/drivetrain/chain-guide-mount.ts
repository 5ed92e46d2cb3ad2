import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/chain-guide-mount",
  title: "The chain guide fits the frame",
  joints: {
    "chain-guide-mount": {
      one: "is fixed to",
      other: "offers",
      nothing: "has no place for a chain guide",
      remedy: "fit a guide for that mount, or leave it out.",
    },
  },
  explanation:
    "A chain guide is bolted to tabs round the crank bearings, clamped round the seat tube, held by a plate " +
    "behind a bearing cup, or put where a front derailleur would be. The tabs come in an older and a newer " +
    "pattern whose bolt circles differ, so that a guide of one does not go on the other. A frame without tabs " +
    "takes a guide only by one of the other ways. A guide also has limits of ring size and chainline of its own.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.fell "Fell" { chain-guide-mount: ISCG-05 }
part chain-guide example.guide "Guide" { mount: ISCG-05 }

build example "A guide on its tabs" {
  frame: example.fell
  drivetrain.chain-guide: example.guide
}
`,
    fails: `
part frame example.fell "Fell" { chain-guide-mount: ISCG-05 }
part chain-guide example.guide "Old guide" { mount: ISCG }

build example "A guide of the older pattern" {
  frame: example.fell
  drivetrain.chain-guide: example.guide
}
`,
  },
});
