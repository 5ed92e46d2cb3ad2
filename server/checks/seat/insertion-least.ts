import { type Known, setting, slot } from "../../model/need.ts";
import { lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { depthNeeds, depthWithin } from "../shared/post-depth.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "seat/insertion-least",
  title: "The post stands as deep as its mark and the frame ask",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    post: slot("seat.post"),
    depth: setting("seat.post", "insertion"),
    ...depthNeeds,
  }),
  test({ post, depth, ...limits }) {
    const { byPost, byFrame } = limits;
    const stated = [byPost, byFrame].filter((least): least is Known<number> => least.state === "known");
    const [deeper] = [...stated].sort((a, b) => b.value - a.value);
    if (deeper && lessThan(depth.value, deeper.value)) {
      const [stands, needs] = showPair(depth.value, deeper.value, "length");
      const set = depthWithin({ value: deeper.value, round: "up" }, limits);
      const aims = set === millimetres(deeper.value, "up") ? "" : ` (${set} deep gives the saddle height aimed at)`;
      const whose = deeper === byPost ? `the mark of ${post.subject}` : deeper.subject;
      return fails(
        `${post.subject} stands ${stands} deep, but ${whose} asks for ${needs}: lower it by ${aims ? "at least " : ""}${showPair(deeper.value - depth.value, 0, "length")[0]}${aims}, or fit a post that is so much longer.`,
        depth,
        [depth, ...stated],
        [{ kind: "set-setting", slot: "seat.post", setting: "insertion", value: set }, ...swaps("seat.post")],
      );
    }
    const unknown = unknowns(byPost, byFrame);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (!deeper) return notApplicable("neither post nor frame states a least depth");
    const [stands, needs] = showPair(depth.value, deeper.value, "length");
    return holds(
      `${post.subject} stands ${stands} deep, and ${needs} is the least (${deeper.subject}).`,
      depth.value > 0 ? (depth.value - deeper.value) / depth.value : 0,
    );
  },
  explanation:
    "A seatpost is a lever, and the seat tube has to hold enough of it. The post carries a mark that must not be seen above " +
    "the tube, and the frame's maker often asks for more: the post has to reach below the welds of the top tube. The " +
    "greater of the two decides. A post drawn out too far bends or breaks, or breaks the frame below the clamp. A rider who " +
    "needs the height needs a longer post or a larger frame.",
  source: "common practice, no source; marks by 16 CFR 1512.15(b) lie two diameters up; the makers' own figures decide",
  caution:
    "A post above its mark breaks, or breaks the frame, and drops the rider. The part makers' instructions come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { least-post-insertion: 100 mm }
part seatpost example.post "Post" { least-insertion: 80 mm }

build example "As deep as the frame asks" {
  frame: example.fell
  seat.post: example.post { insertion: 100 mm }
}
`,
    fails: `
part frame example.fell "Fell" { least-post-insertion: 100 mm }
part seatpost example.post "Post" { least-insertion: 80 mm }

build example "Deep enough for the post alone" {
  frame: example.fell
  seat.post: example.post { insertion: 88 mm }
}
`,
  },
});
