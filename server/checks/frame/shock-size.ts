import { shockSize } from "../../calculations/shared/shock-size.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { equal, greaterThan, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "frame/shock-size",
  title: "The rear shock has the frame's length, and no longer a stroke",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    shock: slot("rear-shock"),
    size: fact("rear-shock", "size"),
    frame: optional(slot("frame")),
    takes: optional(fact("frame", "shock-size")),
  }),
  test({ shock, size, frame, takes }) {
    const end = readEnd(frame, takes, "shock-size");
    if (end.state === "unknown") return cannotTell(end.unknown);
    if (end.state === "none") {
      return fails(
        `${end.part.subject} takes no rear shock, but ${shock.subject} is fitted: leave it out.`,
        shock,
        [end.fact],
        [{ kind: "leave-empty", slot: "rear-shock" }, ...swaps("frame")],
      );
    }
    if (end.state !== "known") return notApplicable("there is no frame to hold it");
    const [has, wants] = [shockSize(size.value), shockSize(end.fact.value)];
    if (!has || !wants) return notApplicable("the sizes do not say a length and a stroke");
    const facts = [size, end.fact];
    const repairs = swaps("rear-shock", "frame");
    if (!equal(has.eyeToEye, wants.eyeToEye)) {
      const [is, want] = showPair(has.eyeToEye, wants.eyeToEye, "length");
      return fails(
        `${shock.subject} is ${is} from eye to eye, but ${end.part.subject} takes ${want}: fit a shock of ${want} by ${showQuantity(wants.stroke, "length")}.`,
        shock,
        facts,
        repairs,
      );
    }
    const [is, most] = showPair(has.stroke, wants.stroke, "length");
    if (greaterThan(has.stroke, wants.stroke)) {
      return fails(
        `${shock.subject} has a stroke of ${is}, but ${end.part.subject} takes ${most} at most: at the end of it the tyre or a link hits the frame. Fit a shock of ${showQuantity(wants.eyeToEye, "length")} by ${most}, or have this one's stroke limited as its maker says.`,
        shock,
        facts,
        repairs,
      );
    }
    if (lessThan(has.stroke, wants.stroke)) {
      return fails(
        `${shock.subject} has a stroke of ${is}, and ${end.part.subject} is made for ${most}: it fits, but ${Math.round((1 - has.stroke / wants.stroke) * 100)} % of the rear travel is lost. Fit a shock of ${showQuantity(wants.eyeToEye, "length")} by ${most}, unless the frame's maker offers the shorter stroke.`,
        shock,
        facts,
        repairs,
        { severity: "warning" },
      );
    }
    return holds(`${shock.subject} is ${showQuantity(has.eyeToEye, "length")} by ${is}, as ${end.part.subject} takes.`);
  },
  explanation:
    "A rear shock is named by its length from eye to eye, unladen, and its stroke. The length has to be the frame's: " +
    "another one changes every angle, and may not go in at all. The stroke may not be longer than the frame's, because " +
    "at the end of the travel the tyre then hits the seat tube or a link hits the frame. A shorter stroke harms nothing, " +
    "but gives less travel, and some makers sell a frame both ways. Strokes of one length differ by 2.5 mm and look alike.",
  source: "common practice, no source; the frame maker's size decides",
  caution: "A shock of too long a stroke lets the tyre hit the frame at full travel, which stops the wheel.",
  examples: {
    holds: `
part frame example.fell "Fell" { shock-size: 230x62.5 }
part rear-shock example.shock "Shock" { size: 230x62.5 }

build example "The frame's own size" {
  frame: example.fell
  rear-shock: example.shock
}
`,
    fails: `
part frame example.fell "Fell" { shock-size: 230x60 }
part rear-shock example.shock "Shock" { size: 230x65 }

build example "Five millimetres of stroke too many" {
  frame: example.fell
  rear-shock: example.shock
}
`,
  },
});
