import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "drivetrain/pedal-thread",
  title: "The pedals screw into the cranks",
  caution: "The left pedal has a left-hand thread; a pedal that goes in askew tears out of the crank while riding.",
  joints: {
    "pedal-thread": {
      one: "has the thread",
      other: "has",
      nothing: "takes no pedals",
      remedy: "fit pedals of that thread; never force one.",
    },
  },
  explanation:
    "Nearly all pedals and cranks have one thread of nine sixteenths of an inch, but one-piece cranks and some " +
    "children's bikes have half an inch, and older French cranks fourteen millimetres. The last differs by little " +
    "enough that a pedal starts, then jams and spoils the eye. The left pedal has a left-hand thread in all of " +
    "them, so that riding does not unscrew it. A crank whose eye was forced has to be tapped out and bushed, or " +
    "replaced.",
  source: "JIS B 0225:1960 for the inch threads; common practice, no source, for the French one",
  examples: {
    holds: `
part crankset example.crank "Crank" { pedal-thread: 9/16x20 }
part pedals example.flat "Flat" { thread: 9/16x20; foot: platform }

build example "Pedals that go in" {
  drivetrain {
    crankset: example.crank
    pedals: example.flat
  }
}
`,
    fails: `
part crankset example.crank "One-piece" { pedal-thread: 1/2x20 }
part pedals example.flat "Flat" { thread: 9/16x20; foot: platform }

build example "Pedals too thick for the eye" {
  drivetrain {
    crankset: example.crank
    pedals: example.flat
  }
}
`,
  },
});
