import { defineCheck } from "../define.ts";
import { brakePlaceNeeds, judgeBrakePlace } from "../shared/brake-place.ts";
import { jointNamed } from "../shared/mating.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/caliper-mount",
  title: "The brake is fixed to what fork or frame offers",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: brakePlaceNeeds,
  test: (facts, place) => judgeBrakePlace(facts, jointNamed(`${place.name}-caliper-mount`), place),
  explanation:
    "Disc brakes sit on two threaded posts, on two tabs beside the rotor, or on a flat face through which bolts come from " +
    "behind; rim brakes on bosses beside the rim or on a bolt through crown or bridge. An adapter may stand between: it " +
    "sits on one mount and offers another. Adapters turn tabs into posts, a flat face into posts on some frames, or carry " +
    "the caliper further out for a larger rotor. A fork or frame without a mount takes no brake there.",
  source: "common practice, no source; 74 mm posts and 51 mm tabs by trade glossaries, 34 mm from memory",
  caution:
    "A brake that is not fixed as its maker says can come off into the wheel. Each brake is squeezed hard for ten seconds alone, and looked over for leaks, before anyone rides.",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-mount: tabs-51-front }
part brake-adapter example.bridge "Bridge" { sits-on: tabs-51-front; offers: post-74; rotor-change: 0 mm }
part caliper example.caliper "Caliper" { mount: post-74 }

build example "Posts on tabs" {
  fork: example.fork
  front-brake { caliper: example.caliper; adapter: example.bridge }
  rear-brake.caliper: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-brake-mount: flat-34 }
part caliper example.caliper "Caliper" { mount: post-74 }

build example "Posts on a flat face" {
  frame: example.frame
  rear-brake.caliper: example.caliper
  front-brake.caliper: none
}
`,
  },
});
