import { type MatingWords, matingCheck } from "../shared/mating.ts";

const words: MatingWords = {
  one: "is fixed by",
  other: "has",
  nothing: "takes no rotor",
  remedy: "fit a rotor for that hub, or a hub for that rotor.",
};

export default matingCheck({
  code: "wheel/rotor-mount",
  title: "The rotor fits the hub",
  safety: true,
  caution: "A rotor that comes loose blocks the wheel or leaves it without a brake.",
  joints: { "front-rotor-mount": words, "rear-rotor-mount": words },
  explanation:
    "A rotor is bolted to the hub by six bolts on a circle, or slid on splines and held by a lock-ring. The two have " +
    "nothing in common: a rotor for bolts has no splines. A hub made without a place for a rotor takes none at all. " +
    "Adapters that put a bolted rotor on splines exist where both makers allow them; they are declared with the rotor " +
    "as one part.",
  source: "bolt size from a trade glossary; the rest from memory",
  examples: {
    holds: `
part hub example.hub "Rear, bolts" { rotor-mount: six-bolt-44 }
part rotor example.rotor "Rotor 185" { mount: six-bolt-44 }

build example "Six bolts in six holes" {
  rear-wheel.hub: example.hub
  rear-brake.rotor: example.rotor
  front-brake.rotor: none
}
`,
    fails: `
part hub example.hub "Rear, splines" { rotor-mount: splined-lockring }
part rotor example.rotor "Rotor 185" { mount: six-bolt-44 }

build example "Bolts for a hub with splines" {
  rear-wheel.hub: example.hub
  rear-brake.rotor: example.rotor
  front-brake.rotor: none
}
`,
  },
});
