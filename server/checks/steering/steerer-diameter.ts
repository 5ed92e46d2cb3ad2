import { sizeCheck } from "../shared/size-mating.ts";

export default sizeCheck({
  code: "steering/steerer-diameter",
  title: "Headset and spacers are made for the steerer's diameter",
  safety: true,
  joints: {
    "headset-steerer": {
      one: "is bored for a steerer of",
      other: "has one of",
      nothing: "has no steerer",
      remedy: (headset, fork) => `fit an upper headset for ${fork}, or a fork with a steerer of ${headset}.`,
      tolerance: 0.1,
    },
    "spacers-steerer": {
      one: "are bored for a steerer of",
      other: "has one of",
      nothing: "has no steerer",
      remedy: (_, fork) => `fit spacers for ${fork}.`,
      tolerance: 0.4,
    },
  },
  explanation:
    "The number after the stroke of an upper headset code is the diameter of the steerer that it centres: 25.4 mm for " +
    "1 inch, 28.6 for 1 1/8, 31.8 for 1 1/4, 38.1 for 1 1/2. A thinner steerer is not held in the middle of the " +
    "bearing, whatever the preload, and a thicker one does not go through. Spacers are bored for the same diameter. " +
    "Reducers exist for few pairs, and then they belong to the headset and its code says so.",
  source: "Wikipedia, Headset (bicycle part), for the steerer diameters; common practice, no source",
  caution: "A steerer that is not held in its upper bearing wears, works loose and breaks. No play may be left.",
  examples: {
    holds: `
part headset example.bearings "Bearings" { upper: EC30/25.4 }
part fork example.fork "Fork" { steerer-diameter: 25.4 mm }

build example "A one-inch steerer in a one-inch headset" {
  fork: example.fork
  headset: example.bearings
}
`,
    fails: `
part headset example.bearings "Bearings" { upper: ZS44/28.6 }
part fork example.fork "Fork" { steerer-diameter: 31.8 mm }

build example "A thicker steerer than the headset takes" {
  fork: example.fork
  headset: example.bearings
}
`,
  },
});
