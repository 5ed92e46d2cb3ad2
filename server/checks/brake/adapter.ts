import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/adapter",
  title: "A brake adapter made for one wheel is at that wheel",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    adapter: slot(ofBrake(brake, "adapter")),
    wheel: fact(ofBrake(brake, "adapter"), "wheel"),
  }),
  test({ adapter, wheel }, { name, brake }) {
    if (wheel.value === name) return holds(`${adapter.subject} is made for the ${name} wheel.`);
    return fails(
      `${adapter.subject} is made for the ${wheel.value} wheel, but the build fits it at the ${name}: there it would suit another size of rotor, or not sit at all. Fit one for the ${name}.`,
      adapter,
      [wheel],
      swaps(ofBrake(brake, "adapter")),
    );
  },
  explanation:
    "Mounts of one name sit differently at fork and frame: the tabs of the international standard hold the caliper for " +
    "160 mm in front and for 140 mm behind. An adapter for the front used at the rear therefore suits a rotor 20 mm " +
    "smaller, and the other way round one 20 mm larger. Makers mark those adapters with the wheel; those for two posts " +
    "suit either. What an adapter adds is counted with the rotor's size.",
  source: "common practice, no source: front and rear tabs differ by 20 mm of rotor",
  caution: "Each brake is squeezed hard for ten seconds alone before anyone rides.",
  examples: {
    holds: `
part brake-adapter example.bridge "Bridge, rear" { wheel: rear; rotor-change: 20 mm }

build example "At its own wheel" {
  rear-brake.adapter: example.bridge
}
`,
    fails: `
part brake-adapter example.bridge "Bridge, rear" { wheel: rear; rotor-change: 20 mm }

build example "At the other wheel" {
  front-brake.adapter: example.bridge
}
`,
  },
});
