import { halfMatingCheck } from "../shared/half-mating.ts";

export default halfMatingCheck({
  code: "steering/crown-race",
  title: "The crown race fits its seat on the fork",
  safety: true,
  joint: "crown-race",
  halves: ["crown-race", undefined],
  words: {
    one: "brings a race for",
    other: "has",
    nothing: "has no seat for a crown race",
    remedy: "fit a lower headset for that seat; a race that reduces to a thinner steerer exists for some.",
  },
  explanation:
    "The number after the stroke of a lower headset code is the seat of the crown race at the steerer's foot: 30 for a " +
    "straight 1 1/8 inch steerer, 40 for one that tapers to 1 1/2. A race for a wider seat sits loosely and lets the fork " +
    "knock in its bearing, and one for a narrower seat cannot be driven down without splitting. Seats for 1 inch " +
    "steerers exist in two sizes that differ by six tenths. A straight fork goes into a wide head tube with another lower " +
    "headset, not with another fork.",
  source: "standardised headset identification system; Wikipedia, Headset (bicycle part), for 26.4 and 27.0 mm",
  caution: "A crown race that is not seated square and tight leaves play in the steering, and the steerer wears.",
  examples: {
    holds: `
part headset example.bearings "Bearings" { lower: ZS44/30 }
part fork example.fork "Straight fork" { crown-race: 30 }

build example "A straight steerer and its race" {
  fork: example.fork
  headset: example.bearings
}
`,
    fails: `
part headset example.bearings "Bearings" { lower: EC30/26 }
part fork example.fork "One-inch fork" { crown-race: 27 }

build example "The two one-inch seats" {
  fork: example.fork
  headset: example.bearings
}
`,
  },
});
