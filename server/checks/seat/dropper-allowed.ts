import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "seat/dropper-allowed",
  title: "The frame's maker allows a dropper post",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    post: slot("seat.post"),
    travel: fact("seat.post", "dropper-travel"),
    forbids: fact("frame", "forbids"),
  }),
  test({ post, travel, forbids }) {
    if (!forbids.value.includes("dropper-post")) {
      return holds(`${post.subject} is a dropper, and ${forbids.subject} forbids none.`);
    }
    return fails(
      `${post.subject} is a dropper of ${travel.written}, but the maker of ${forbids.subject} forbids dropper posts: fit a rigid post.`,
      post,
      [travel, forbids],
      swaps("seat.post", "frame"),
    );
  },
  explanation:
    "A dropper post is heavier and stiffer than a rigid one, and its clamp must not be squeezed as hard. Some makers of light " +
    "frames forbid droppers, because the thin seat tube was not made for the leverage or has no way for the cable. What a " +
    "maker forbids is not a matter of whether the diameter fits. A frame that states nothing of it forbids nothing. The " +
    "room for the dropper's body is asked about elsewhere.",
  source: "common practice, no source; the frame maker's own statement decides",
  caution: "A frame that is used against its maker's word may break, and its warranty is void.",
  examples: {
    holds: `
part frame example.fell "Fell" { forbids: rim-brake }
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm }

build example "A dropper where nothing speaks against it" {
  frame: example.fell
  seat.post: example.drop
}
`,
    fails: `
part frame example.light "Light" { forbids: rim-brake, dropper-post }
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm }

build example "A dropper in a light frame" {
  frame: example.light
  seat.post: example.drop
}
`,
  },
});
