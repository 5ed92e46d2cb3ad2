import { fact, optional, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "wheel/hub-dropout",
  title: "The frame's dropouts may hold a hub with gears",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    hub: slot("rear-wheel.hub"),
    gears: fact("rear-wheel.hub", "gears"),
    dropout: fact("frame", "dropout"),
    forbids: optional(fact("frame", "forbids")),
  }),
  test({ hub, gears, dropout, forbids }) {
    if (forbids.state === "known" && forbids.value.includes("gear-hub")) {
      return fails(
        `${hub.subject} has ${gears.value} gears inside, but the maker of ${forbids.subject} forbids a hub with gears: fit a hub without, or another frame.`,
        hub,
        [gears, forbids],
        swaps("rear-wheel.hub", "frame"),
      );
    }
    return holds(`${dropout.subject} has ${dropout.value} dropouts, and its maker does not forbid ${hub.subject}.`);
  },
  explanation:
    "A hub with gears inside pushes round on its axle, and the dropouts have to bear that. Some makers forbid such hubs " +
    "altogether, because their dropouts are too soft or their slots too shallow. Where it is allowed, the hub needs washers " +
    "for the shape of the dropouts, or an arm along the stay, which is asked with the drivetrain. In vertical dropouts the " +
    "chain also needs a tensioner or an eccentric.",
  source: "common practice, no source; the frame maker's word decides",
  caution: "An axle that turns in its dropouts can let the rear wheel come loose.",
  examples: {
    holds: `
part frame example.frame "Frame" { dropout: horizontal }
part hub example.hub "Three inside" { gears: 3 }

build example "Nothing against it" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
    fails: `
part frame example.frame "Light frame" { dropout: vertical; forbids: gear-hub }
part hub example.hub "Three inside" { gears: 3 }

build example "Forbidden by the frame's maker" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
  },
});
