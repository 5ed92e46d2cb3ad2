import { fact, setting, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "seat/rail-range",
  title: "The saddle is clamped on the straight of its rails",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    saddle: slot("seat.saddle"),
    position: setting("seat.saddle", "rail-position"),
    straight: fact("seat.saddle", "straight-rail-length"),
    clamp: fact("seat.post", "clamp-length"),
  }),
  test({ saddle, position, straight, clamp }) {
    const most = (straight.value - clamp.value) / 2;
    const rails = `${saddle.subject} has ${showQuantity(straight.value, "length")} of straight rail, and the clamp of ${clamp.subject} takes ${showQuantity(clamp.value, "length")} of it`;
    if (most < 0) {
      return fails(
        `${rails}: it cannot be clamped without a bend in the clamp. Fit a post with a shorter clamp, or another saddle.`,
        saddle,
        [straight, clamp],
        swaps("seat.post", "seat.saddle"),
      );
    }
    const [moved, may] = showPair(Math.abs(position.value), most, "length");
    if (atMost(Math.abs(position.value), most)) {
      return holds(
        `${rails}: it may be moved ${may} either way, and is moved ${moved}.`,
        most > 0 ? 1 - Math.abs(position.value) / most : 0,
      );
    }
    const back = position.value > 0;
    return fails(
      `${saddle.subject} is moved ${back ? "backward" : "forward"} by ${moved}, but ${may} is the most: ${rails}. Use a post with ${back ? "more" : "less"} setback.`,
      position,
      [position, straight, clamp],
      [
        {
          kind: "set-setting",
          slot: "seat.saddle",
          setting: "rail-position",
          value: back ? millimetres(most, "down") : millimetres(-most, "up"),
        },
        ...swaps("seat.post"),
      ],
    );
  },
  explanation:
    "A saddle can be moved back and forth as far as the clamp stays on the straight part of the rails: half of what the " +
    "straight length leaves over the length of the clamp, each way. Clamped on a bend, the rail touches at its edges and " +
    "breaks there, carbon ones soonest. A rider who needs to sit further back needs a post with more setback, or a saddle " +
    "with longer rails. Saddles show the range by marks on their rails.",
  source: "trade glossaries: range is the straight length less the clamp's length",
  caution: "A rail clamped on its bend breaks and tips the saddle under the rider.",
  examples: {
    holds: `
part saddle example.saddle "Saddle" { straight-rail-length: 74 mm }
part seatpost example.post "Post" { clamp-length: 44 mm }

build example "All the way back" {
  seat { post: example.post; saddle: example.saddle { rail-position: 15 mm } }
}
`,
    fails: `
part saddle example.saddle "Saddle" { straight-rail-length: 74 mm }
part seatpost example.post "Post" { clamp-length: 44 mm }

build example "Slammed forward onto the bend" {
  seat { post: example.post; saddle: example.saddle { rail-position: -22 mm } }
}
`,
  },
});
