import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/ring-mount",
  title: "Every ring fits the crank it is bolted to",
  joints: {
    "ring-mount": {
      one: "is bolted to",
      other: "has",
      nothing: "takes no separate ring",
      remedy: "fit a ring for that crank.",
    },
    "middle-ring-mount": {
      one: "is bolted to",
      other: "has",
      nothing: "takes no separate ring",
      remedy: "fit a middle ring for that crank.",
    },
    "inner-ring-mount": {
      one: "is bolted to",
      other: "has",
      nothing: "takes no inner ring",
      remedy: "fit an inner ring for that crank, or leave it out.",
    },
  },
  explanation:
    "A ring is held by bolts on a circle of one diameter and number, by bolts that are not evenly spaced, or by a " +
    "splined seat with bolts or a lock-ring. Nothing adapts one to another, and circles that differ by a few " +
    "millimetres look alike until the bolts do not go through. An inner ring may have a circle of its own on the " +
    "same crank. Whether the ring clears the frame, and whether its teeth suit the chain, are other questions.",
  source: "common practice, no source",
  examples: {
    holds: `
part crankset example.crank "Crank" { ring-mount: 104x4 }
part chainring example.ring "Ring 34" { teeth: 34 t; ring-mount: 104x4 }

build example "A ring on its circle" {
  drivetrain {
    crankset: example.crank
    chainring: example.ring
  }
}
`,
    fails: `
part crankset example.crank "Crank" { ring-mount: 110x4-uneven }
part chainring example.ring "Ring 44" { teeth: 44 t; ring-mount: 110x4 }

build example "Four even bolts on a crank whose bolts are not" {
  drivetrain {
    crankset: example.crank
    chainring: example.ring
  }
}
`,
  },
});
