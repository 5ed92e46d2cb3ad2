import { type Known, setting, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { depthNeeds, depthWithin } from "../shared/post-depth.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "seat/insertion-greatest",
  title: "The post goes no deeper than seat tube and post allow",
  severity: "error",
  since: 1,
  needs: () => ({
    post: slot("seat.post"),
    depth: setting("seat.post", "insertion"),
    ...depthNeeds,
  }),
  test({ post, depth, ...limits }) {
    const { free, body } = limits;
    const stated = [free, body].filter((most): most is Known<number> => most.state === "known");
    const [shallower] = [...stated].sort((a, b) => a.value - b.value);
    const [stands, most] = showPair(depth.value, shallower?.value ?? depth.value, "length");
    const limit =
      shallower === body
        ? `its collar sits on the tube at ${most}`
        : `the seat tube of ${shallower?.subject} is free for ${most}`;
    if (shallower && greaterThan(depth.value, shallower.value)) {
      const set = depthWithin({ value: shallower.value, round: "down" }, limits);
      const aims =
        set === millimetres(shallower.value, "down") ? `at ${most}` : `${set} deep for the saddle height aimed at`;
      return fails(
        `${post.subject} is to stand ${stands} deep, but ${limit} only: fit a shorter post${body.state === "known" ? " or one with less travel" : " or cut this one where its maker allows it"}, or set it ${aims}.`,
        depth,
        [depth, shallower],
        [...swaps("seat.post"), { kind: "set-setting", slot: "seat.post", setting: "insertion", value: set }],
      );
    }
    const unknown = unknowns(free, body);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (!shallower) return notApplicable("neither frame nor post states a greatest depth");
    return holds(
      `${post.subject} stands ${stands} deep, and ${limit}.`,
      shallower.value > 0 ? (shallower.value - depth.value) / shallower.value : 0,
    );
  },
  explanation:
    "A seat tube is seldom free all the way down: a bend, a bottle boss, a pivot or a weld stops the post. The frame's maker " +
    "states how deep one can go. Droppers need the most depth, since their actuator and cable hang below the tube that " +
    "slides, and their collar cannot go below the top of the seat tube. A post that stops too soon leaves the saddle too " +
    "high; forced, it damages boss and cable.",
  source: "common practice, no source; the makers' own figures decide",
  examples: {
    holds: `
part frame example.fell "Fell" { greatest-post-insertion: 240 mm }
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm; body-length: 230 mm }

build example "A dropper at its collar" {
  frame: example.fell
  seat.post: example.drop { insertion: 230 mm }
}
`,
    fails: `
part frame example.fell "Fell" { greatest-post-insertion: 210 mm }
part seatpost example.drop "Drop 170" { dropper-travel: 170 mm; body-length: 260 mm }

build example "A boss in the way" {
  frame: example.fell
  seat.post: example.drop { insertion: 245 mm }
}
`,
  },
});
