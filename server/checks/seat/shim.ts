import type { Known } from "../../model/need.ts";
import { fact, type Maybe, optional, slot, type Unknown } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** Posts and bores come in steps of two tenths; anything nearer is one size. */
const tolerance = 0.05;

export default defineCheck({
  code: "seat/shim",
  title: "The shim fits post and seat tube, and reaches as deep as the post must",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    shim: slot("seat.shim"),
    inside: optional(fact("seat.shim", "inside-diameter")),
    outside: optional(fact("seat.shim", "outside-diameter")),
    length: optional(fact("seat.shim", "length")),
    post: optional(slot("seat.post")),
    diameter: optional(fact("seat.post", "post-diameter")),
    byPost: optional(fact("seat.post", "least-insertion")),
    bore: optional(fact("frame", "seat-tube-bore")),
    byFrame: optional(fact("frame", "least-post-insertion")),
    forbids: optional(fact("frame", "forbids")),
  }),
  test({ shim, inside, outside, length, post, diameter, byPost, bore, byFrame, forbids }) {
    if (post.state === "none") return notApplicable("there is no post for a shim to hold");
    if (forbids.state === "known" && forbids.value.includes("seat-shim")) {
      return fails(
        `${shim.subject} is fitted, but the maker of ${forbids.subject} forbids a shim in the seat tube: fit a post of the tube's own bore${bore.state === "known" ? `, ${showQuantity(bore.value, "length")}` : ""}.`,
        shim,
        [forbids],
        [...swaps("seat.post"), { kind: "leave-empty", slot: "seat.shim" }],
      );
    }
    const pairs = [
      {
        of: diameter,
        by: inside,
        says: (post: string, shim: string) => `the post is ${post}, but the shim is bored for ${shim}`,
      },
      {
        of: bore,
        by: outside,
        says: (tube: string, shim: string) => `the seat tube takes ${tube}, but the shim is ${shim} outside`,
      },
    ];
    const unknown: Unknown[] = [];
    for (const { of, by, says } of pairs) {
      if (of.state === "known" && by.state === "known") {
        if (atMost(Math.abs(of.value - by.value), tolerance)) continue;
        const [size, shimmed] = showPair(of.value, by.value, "length");
        return fails(
          `${shim.subject} does not fit: ${says(size, shimmed)}. Fit a shim ${sizes(diameter, bore)}.`,
          shim,
          [by, of],
          swaps("seat.shim", "seat.post"),
        );
      }
      unknown.push(...[of, by].flatMap((one) => (one.state === "unknown" ? [one] : [])));
    }
    const depths = [byPost, byFrame].filter((depth): depth is Known<number> => depth.state === "known");
    const deepest = depths.reduce<Known<number> | undefined>((a, b) => (!a || b.value > a.value ? b : a), undefined);
    if (length.state === "known" && deepest && !atLeast(length.value, deepest.value)) {
      const [reaches, must] = showPair(length.value, deepest.value, "length");
      return fails(
        `${shim.subject} reaches ${reaches} down, but the post has to stand ${must} deep (${deepest.subject}) and would hang free below the shim: fit a shim of ${must} or longer.`,
        shim,
        [length, deepest],
        swaps("seat.shim", "seat.post"),
      );
    }
    unknown.push(...[length, byPost, byFrame].flatMap((one) => (one.state === "unknown" ? [one] : [])));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (length.state !== "known") return notApplicable(`${shim.subject} has no length`);
    const needed = deepest ? `, and the post has to stand ${showQuantity(deepest.value, "length")} deep` : "";
    return holds(
      `${shim.subject} fits ${sizes(diameter, bore)}; it reaches ${showQuantity(length.value, "length")} down${needed}.`,
      deepest ? (length.value - deepest.value) / length.value : undefined,
    );
  },
  explanation:
    "A shim is a sleeve that lets a thin post stand in a wide seat tube. It has to fit both, to two tenths of a " +
    "millimetre, and to reach as deep as the post must stand: below a short shim the post touches nothing, so that its " +
    "depth counts for nothing and it bends or breaks at the shim's end. The depth meant is the greater of the post's " +
    "own mark and the least depth of the frame. Its slot lies in line with the seat tube's. Some frame makers forbid shims.",
  source: "common practice, no source; the makers' own figures decide",
  caution: "A post that is held too short drops or breaks under the rider. The part makers' instructions come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-tube-bore: 30.9 mm; least-post-insertion: 80 mm }
part seatpost example.post "Post 27.2" { post-diameter: 27.2 mm; least-insertion: 90 mm }
part seat-shim example.sleeve "Sleeve" { inside-diameter: 27.2 mm; outside-diameter: 30.9 mm; length: 110 mm }

build example "A sleeve deeper than the mark" {
  frame: example.fell
  seat { post: example.post; shim: example.sleeve }
}
`,
    fails: `
part frame example.fell "Fell" { seat-tube-bore: 30.9 mm; least-post-insertion: 120 mm }
part seatpost example.post "Post 27.2" { post-diameter: 27.2 mm; least-insertion: 90 mm }
part seat-shim example.sleeve "Sleeve" { inside-diameter: 27.2 mm; outside-diameter: 30.9 mm; length: 100 mm }

build example "A sleeve shorter than the frame asks for" {
  frame: example.fell
  seat { post: example.post; shim: example.sleeve }
}
`,
  },
});

/** "from 27.2 mm to 31.6 mm", as far as it is known. */
function sizes(post: Maybe<number>, bore: Maybe<number>): string {
  const parts = [
    ...(post.state === "known" ? [`from ${showQuantity(post.value, "length")}`] : []),
    ...(bore.state === "known" ? [`to ${showQuantity(bore.value, "length")}`] : []),
  ];
  return parts.join(" ");
}
