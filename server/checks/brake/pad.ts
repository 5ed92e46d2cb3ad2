import { type MatingWords, matingCheck } from "../shared/mating.ts";

const words: MatingWords = {
  one: "has the shape",
  other: "takes",
  nothing: "takes no pads of that kind",
  remedy: "fit pads of the caliper's shape.",
};

export default matingCheck({
  code: "brake/pad",
  title: "The pads have the shape that the caliper takes",
  safety: true,
  caution:
    "Pads that do not lie in the caliper can be drawn out by the rotor. Each brake is tested alone before anyone rides.",
  joints: { "front-pads": words, "rear-pads": words },
  explanation:
    "Each caliper has pads of one outline, with a tab, ears or a hole for the pin that holds them. Pads of another outline " +
    "do not go in, or go in and are not held. Shapes have no open standard: each maker has several, and some are shared. " +
    "Pads that come with the caliper need no line of their own; those that are fitted in their place do.",
  source: "common practice, no source",
  examples: {
    holds: `
standard pad-shape kidney { source: "this example" }
part caliper example.caliper "Caliper" { pad-shape: kidney }
part brake-pads example.pads "Pads" { pad-shape: kidney }

build example "Pads of this caliper" {
  front-brake { caliper: example.caliper; pads: example.pads }
}
`,
    fails: `
standard pad-shape kidney { source: "this example" }
standard pad-shape wedge { source: "this example" }
part caliper example.caliper "Caliper" { pad-shape: kidney }
part brake-pads example.pads "Pads" { pad-shape: wedge }

build example "Pads of another caliper" {
  front-brake { caliper: example.caliper; pads: example.pads }
}
`,
  },
});
