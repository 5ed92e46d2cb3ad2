import { fact, setting, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "seat/post-cut",
  title: "The seat post is as long as it is to be cut to",
  severity: "error",
  since: 1,
  needs: () => ({
    post: slot("seat.post"),
    cut: setting("seat.post", "cut-length"),
    whole: fact("seat.post", "overall-length"),
  }),
  test({ post, cut, whole }) {
    const [planned, sold] = showPair(cut.value, whole.value, "length");
    if (greaterThan(cut.value, whole.value)) {
      return fails(
        `The build cuts ${post.subject} to ${planned}, but it is ${sold} long as sold: fit a longer post, or leave cut-length out.`,
        cut,
        [whole],
        [{ kind: "set-setting", slot: "seat.post", setting: "cut-length", value: sold }, ...swaps("seat.post")],
      );
    }
    return holds(`${post.subject} is ${sold} long, and is cut to ${planned}.`);
  },
  explanation:
    "A post is cut where it would meet something inside the seat tube. Every height of the saddle, and how deep the post " +
    "stands, is worked out from the length that is left. A length greater than that of the post as sold is a slip, and " +
    "would promise a depth in the tube that is not there.",
  source: "definition; the length is the post maker's own figure",
  examples: {
    holds: `
part seatpost example.post "Post" { overall-length: 350 mm }

build example "Fifty off" {
  seat.post: example.post { cut-length: 300 mm }
}
`,
    fails: `
part seatpost example.post "Post" { overall-length: 350 mm }

build example "Cut longer than it is" {
  seat.post: example.post { cut-length: 400 mm }
}
`,
  },
});
