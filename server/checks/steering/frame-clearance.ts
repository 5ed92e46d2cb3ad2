import { fact, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/frame-clearance",
  title: "The fork's crown and knobs turn clear of the frame",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    fork: slot("fork"),
    radius: fact("fork", "crown-radius"),
    room: fact("frame", "crown-clearance"),
  }),
  test({ fork, radius, room }) {
    const [reaches, has] = showPair(radius.value, room.value, "length");
    if (atMost(radius.value, room.value)) {
      return holds(
        `Crown and knobs of ${fork.subject} reach ${reaches} from the steering axis, and ${room.subject} leaves ${has}.`,
        room.value > 0 ? (room.value - radius.value) / room.value : 0,
      );
    }
    return fails(
      `Crown and knobs of ${fork.subject} reach ${reaches} from the steering axis, but the tubes of ${room.subject} leave ${has}: they strike the down tube when the bar turns. Fit a fork with lower knobs, a headset with a taller lower cup where the maker allows it, or a bumper.`,
      fork,
      [radius, room],
      swaps("fork"),
    );
  },
  explanation:
    "The crown of a suspension fork and the knobs on its legs swing under the down tube when the bar is turned. On frames " +
    "whose tubes run low they strike, dent the tube, and stop the steering short. What counts is the distance of the " +
    "farthest point from the steering axis against the room that the frame's maker states. Some frames have a bumper for " +
    "it, and a taller lower cup moves the crown down. Frames without a figure state none.",
  source: "common practice, no source; the makers' own figures decide",
  caution: "A dent in a thin tube is where it breaks, and a fork that strikes the frame stops the steering.",
  examples: {
    holds: `
part frame example.fell "Fell" { crown-clearance: 65 mm }
part fork example.fork "Fork" { crown-radius: 61 mm }

build example "Knobs that pass" {
  frame: example.fell
  fork: example.fork
}
`,
    fails: `
part frame example.fell "Fell" { crown-clearance: 58 mm }
part fork example.fork "Fork" { crown-radius: 61 mm }

build example "Knobs that strike" {
  frame: example.fell
  fork: example.fork
}
`,
  },
});
