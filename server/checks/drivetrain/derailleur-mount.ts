import { defineCheck } from "../define.ts";
import { judgePlace, placeNeeds } from "../shared/derailleur-place.ts";

export default defineCheck({
  code: "drivetrain/derailleur-mount",
  title: "The rear derailleur has a place that takes it",
  severity: "error",
  since: 1,
  needs: () => placeNeeds("drivetrain.rear-derailleur"),
  test: (facts) => judgePlace(facts, "drivetrain.rear-derailleur", "derailleur"),
  explanation:
    "A rear derailleur is held in one of three ways. Most screw into the threaded eye of a hanger, which is either a " +
    "replaceable piece or part of the frame. Some clamp round the axle instead and take the hanger's place on the " +
    "frame: they need the same frame end, and no hanger in it. Older and special ones replace a link of their own by a " +
    "longer hanger. An adapter turns one mount into another, and then both of its ends have to fit. A derailleur " +
    "forced onto the wrong eye strips the thread, or hangs where it cannot reach the cogs.",
  source: "common practice, no source; the maker's own statement of the mount decides",
  examples: {
    holds: `
part frame example.fell "Fell" { hanger-seat: coaxial-12 }
part hanger example.eye "Eye 12" { seat: coaxial-12; derailleur-mount: M10x1 }
part rear-derailleur example.arm "Arm 11" { mount: M10x1 }

build example "A derailleur on a hanger" {
  frame: example.fell
  drivetrain {
    rear-derailleur: example.arm
    hanger: example.eye
  }
}
`,
    fails: `
part frame example.fell "Fell" { hanger-seat: coaxial-12 }
part hanger example.eye "Eye 12" { seat: coaxial-12; derailleur-mount: M10x1 }
part rear-derailleur example.round "Round 12" { mount: coaxial-12 }

build example "A hanger where the derailleur itself goes" {
  frame: example.fell
  drivetrain {
    rear-derailleur: example.round
    hanger: example.eye
  }
}
`,
  },
});
