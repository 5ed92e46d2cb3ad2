import { type MatingWords, matingCheck } from "../shared/mating.ts";

const words: MatingWords = {
  one: "is for the thread",
  other: "has",
  nothing: "has no thread",
  remedy: "fit nipples for that thread.",
};

export default matingCheck({
  code: "wheel/nipple-thread",
  title: "The nipples have the thread of the spokes",
  joints: { "front-nipples-spokes": words, "rear-nipples-spokes": words },
  explanation:
    "Spokes are threaded at their end, and nipples are made for one diameter of it. A nipple for a thicker spoke seems to " +
    "go on and strips when the wheel is tensioned; one for a thinner spoke does not start. Spokes that are thinner in " +
    "the middle keep the thread of their ends, so that what counts is the end.",
  source: "from memory; ISO 6701 for nipples (title only seen)",
  examples: {
    holds: `
part spokes example.spokes "Spokes" { thread: 1.8x56 }
part nipples example.nipples "Nipples" { thread: 1.8x56 }

build example "One thread" {
  front-wheel { spokes: example.spokes; nipples: example.nipples }
  rear-wheel { spokes: none; nipples: none }
}
`,
    fails: `
part spokes example.spokes "Spokes" { thread: 1.8x56 }
part nipples example.nipples "Nipples" { thread: 2.3x56 }

build example "Nipples too wide" {
  front-wheel { spokes: example.spokes; nipples: example.nipples }
  rear-wheel { spokes: none; nipples: none }
}
`,
  },
});
