import { matingCheck } from "../shared/mating.ts";

export default matingCheck({
  code: "seat/rails",
  title: "The post's clamp is made for the saddle's rails",
  safety: true,
  joints: {
    "saddle-rails": {
      one: "has the rail",
      other: "clamps",
      nothing: "clamps no saddle rails",
      remedy: "fit a post or clamp made for that rail, or a saddle with another.",
    },
  },
  explanation:
    "Most saddles stand on two round rails of 7 mm, steel or titanium. Carbon rails are often oval, 7 mm wide and 9 mm " +
    "high, and need a clamp made for that section: a round one touches them along two edges and cracks them. Round " +
    "rails in an oval clamp are not held and tilt. Some posts come with both clamps, and then state both. Rails of " +
    "other thicknesses, or a single one, go with their own posts only.",
  source: "common practice, no source; the oval section from memory",
  caution: "A rail that cracks lets the saddle tip under the rider. Carbon rails by their maker's torque.",
  examples: {
    holds: `
part seatpost example.post "Post" { rails: round-7, round-8 }
part saddle example.saddle "Saddle" { rail: round-8 }

build example "Rails that the clamp takes" {
  seat { post: example.post; saddle: example.saddle }
}
`,
    fails: `
part seatpost example.post "Post" { rails: round-7 }
part saddle example.saddle "Light saddle" { rail: oval-7x9 }

build example "Oval rails in a round clamp" {
  seat { post: example.post; saddle: example.saddle }
}
`,
  },
});
