import { fact, optional, slot, worked } from "../../model/need.ts";
import { atLeast, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** Millimetres that are kept free: frames, tyres and saddles give under load. */
const room = 10;

export default defineCheck({
  code: "seat/saddle-to-tyre",
  title: "The rear tyre never reaches the saddle",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    frame: slot("frame"),
    saddle: slot("seat.saddle"),
    travel: optional(fact("frame", "rear-travel")),
    drop: optional(fact("seat.post", "dropper-travel")),
    gap: optional(worked<number>("seat.saddle-to-tyre")),
  }),
  test({ frame, saddle, travel, drop, gap }) {
    if (travel.state === "unknown") return cannotTell(travel);
    if (drop.state === "unknown") return cannotTell(drop);
    if (travel.state === "none" && drop.state === "none") {
      return notApplicable("neither saddle nor rear wheel moves toward the other");
    }
    if (gap.state === "unknown") return cannotTell(gap);
    if (gap.state === "none") return notApplicable("where saddle and wheel stand cannot be worked out");
    const when = [
      ...(drop.state === "known" ? ["the dropper down"] : []),
      ...(travel.state === "known" ? ["the rear wheel at full travel"] : []),
    ].join(" and ");
    const facts = [travel, drop].flatMap((one) => (one.state === "known" ? [one] : []));
    if (atLeast(gap.value, room)) {
      return holds(
        `With ${when} there are ${showQuantity(gap.value, "length", { digits: 0 })} between ${saddle.subject} and the tyre.`,
        (gap.value - room) / room,
      );
    }
    const touches = lessThan(gap.value, 0);
    const [is, least] = showPair(Math.abs(gap.value), room, "length", { digits: 0 });
    const fault = touches
      ? `the rear tyre of ${frame.subject} meets ${saddle.subject}: it would have to pass ${is} into it`
      : `there are ${is} between ${saddle.subject} and the rear tyre, and ${least} are wanted`;
    return fails(
      `With ${when} ${fault}. Fit a dropper with less travel, set the saddle farther forward, or fit a smaller rear wheel or tyre.`,
      saddle,
      facts,
      swaps("seat.post", "rear-wheel.tyre", "seat.saddle"),
      touches ? {} : { severity: "warning" },
    );
  },
  explanation:
    "A dropper brings the saddle down and back toward the wheel just when rough ground pushes the wheel up. With much of " +
    "both, a large wheel and short legs the tyre meets the saddle, throws the rider forward and tears the saddle. The distance " +
    "follows from seat tube, dropper, saddle, chainstay, travel and wheel, all at their ends of travel. It leaves out how " +
    "far tyre and shock give beyond that, so that some room is kept. With the spring out and the dropper down it is tried " +
    "on the stand before the first ride.",
  source: "plane geometry, re-derived; 10 mm of room is common practice, no source",
  caution:
    "A wheel that meets the saddle stops and throws the rider. Let the air out of the shock, lower the saddle and try it on the stand.",
  examples: {
    holds: `
${bike("Room for both", 125, 120)}
`,
    fails: `
${bike("Long drop and long travel", 200, 165)}
`,
  },
});

/** All that the distance follows from, with the two travels that make the difference. */
function bike(name: string, drop: number, travel: number): string {
  return `part frame example.scree "Scree" {
  seat-angle: 76°
  seat-tube-offset: 0 mm
  seat-tube-length: 400 mm
  chainstay: 435 mm
  bottom-bracket-drop: 35 mm
  rear-travel: ${travel} mm
}
part seatpost example.drop "Drop ${drop}" { overall-length: 480 mm; setback: 0 mm; dropper-travel: ${drop} mm }
part saddle example.saddle "Saddle" { height: 45 mm; clamp-to-sitting: 20 mm; clamp-to-tail: 125 mm; tail-rise: 20 mm }
part tyre example.tyre "Tyre" { size: 58-622; measured-width: 58 mm; measured-height: 57 mm }

build example "${name}" {
  frame: example.scree
  seat { post: example.drop { insertion: 200 mm }; saddle: example.saddle { rail-position: 0 mm } }
  rear-wheel.tyre: example.tyre
}`;
}
