import { fact, slot } from "../../model/need.ts";
import { greaterThan, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/rotor-thickness",
  title: "The rotor is as thick as the caliper takes",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    rotor: slot(ofBrake(brake, "rotor")),
    thickness: fact(ofBrake(brake, "rotor"), "thickness"),
    takes: fact(ofBrake(brake, "caliper"), "rotor-thickness"),
  }),
  test({ rotor, thickness, takes }, { brake }) {
    const is = showQuantity(thickness.value, "length");
    const range = showInterval(takes.value, "length");
    if (inside(thickness.value, takes.value)) {
      return holds(`${rotor.subject} is ${is} thick, and ${takes.subject} takes ${range}.`);
    }
    const thick = greaterThan(thickness.value, takes.value.greatest);
    return fails(
      `${rotor.subject} is ${is} thick when new, but ${takes.subject} takes ${range}: ${thick ? "it rubs between the pads" : "the pistons come out too far before the pads are worn"}. Fit a rotor of ${range}.`,
      rotor,
      [thickness, takes],
      swaps(ofBrake(brake, "rotor"), ofBrake(brake, "caliper")),
    );
  },
  explanation:
    "A caliper leaves a gap between its pads for a rotor of a certain thickness. A thicker rotor rubs and cannot be set free. " +
    "With a thinner one the pistons travel further out: the lever comes closer to the bar, and when pads and rotor are " +
    "worn a piston can leave its seal. Rotors are 1.8 to 2.0 mm thick as a rule, and each has a thickness at which it is " +
    "replaced.",
  source: "trade glossary for 1.8 to 2.0 mm; the caliper maker's own range decides",
  caution: "A piston that leaves its seal lets the fluid out, and the brake fails.",
  examples: {
    holds: `
part caliper example.caliper "Caliper" { rotor-thickness: 1.9 to 2.1 mm }
part rotor example.rotor "Rotor" { thickness: 2 mm }

build example "As thick as it should be" {
  front-brake { caliper: example.caliper; rotor: example.rotor }
  rear-brake.rotor: none
}
`,
    fails: `
part caliper example.caliper "Caliper" { rotor-thickness: 1.7 to 1.85 mm }
part rotor example.rotor "Thick rotor" { thickness: 2.3 mm }

build example "Too thick for the gap" {
  front-brake { caliper: example.caliper; rotor: example.rotor }
  rear-brake.rotor: none
}
`,
  },
});
