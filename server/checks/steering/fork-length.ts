import { fact, type Maybe, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, greaterThan, inside, lessThan } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** A fork this near to the one that the chart was drawn with, in millimetres, leaves the geometry as it is. */
const asDrawn = 5;

export default defineCheck({
  code: "steering/fork-length",
  title: "The fork has a length that the frame's maker allows",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    fork: slot("fork"),
    length: fact("fork", "axle-to-crown"),
    travel: optional(fact("fork", "travel")),
    set: optional(setting("fork", "travel-set")),
    frame: optional(slot("frame")),
    range: optional(fact("frame", "fork-axle-to-crown-range")),
    travelRange: optional(fact("frame", "fork-travel-range")),
    drawn: optional(fact("frame", "fork-axle-to-crown")),
    angle: optional(worked<number>("steering.head-angle-after")),
    rise: optional(worked<number>("steering.crank-axis-rise")),
  }),
  test({ fork, length, travel, set, frame, range, travelRange, drawn, angle, rise }) {
    if (frame.state === "none") return notApplicable("there is no frame to hold it");
    // Another travel than the one it comes with makes it so much longer or shorter.
    const change = set.state === "known" && travel.state === "known" ? set.value - travel.value : 0;
    const is = length.value + change;
    const facts = [length, ...(change !== 0 && set.state === "known" ? [set] : [])];
    const said =
      change === 0 ? "" : ` with its travel set to ${set.state === "known" ? showQuantity(set.value, "length") : ""}`;
    if (range.state !== "known") {
      if (drawn.state === "known" && atMost(Math.abs(is - drawn.value), asDrawn)) {
        const [has, was] = showPair(is, drawn.value, "length");
        return holds(
          `${fork.subject} is ${has} from axle to crown${said}, and the chart of ${drawn.subject} assumes ${was}.`,
        );
      }
      if (range.state === "unknown") return cannotTell(range);
      return notApplicable("the frame's maker states no range of fork lengths");
    }
    const allows = showInterval(range.value, "length");
    const effects = drawn.state === "known" ? effect(is - drawn.value, angle, rise) : "";
    if (inside(is, range.value)) {
      return holds(
        `${fork.subject} is ${showQuantity(is, "length")} from axle to crown${said}, and ${range.subject} takes ${allows}${effects}.`,
      );
    }
    const long = greaterThan(is, range.value.greatest);
    // More travel makes a fork longer, and that is found already.
    if (travel.state === "known" && travelRange.state === "known") {
      const has = set.state === "known" ? set.value : travel.value;
      const beyond = long ? greaterThan(has, travelRange.value.greatest) : lessThan(has, travelRange.value.least);
      if (beyond) return notApplicable("the fork's travel is not allowed in this frame, which is found as such");
    }
    if (travel.state === "known" && travelRange.state === "none") {
      return notApplicable("the frame takes rigid forks only, which is found as such");
    }
    return fails(
      `${fork.subject} is ${showQuantity(is, "length")} from axle to crown${said}, but ${range.subject} takes ${allows}${effects}: fit a ${long ? "shorter" : "longer"} fork.`,
      fork,
      [...facts, range, ...(drawn.state === "known" ? [drawn] : [])],
      swaps("fork", "frame"),
    );
  },
  explanation:
    "A fork's length from axle to crown decides how a frame stands. A longer one slackens the head and seat angles and " +
    "raises the cranks, by about half a degree and some millimetres for each centimetre, and its longer lever bears on the " +
    "head tube. A shorter one steepens the steering and brings the pedals nearer to the ground. The maker of the frame " +
    "states the lengths that it allows. The length is measured straight from the axle to the crown-race seat, unladen.",
  source: "plane geometry for the effects; common practice, no source; the frame maker's own range decides",
  caution: "A head tube that is overloaded by a long fork can tear off the frame.",
  examples: {
    holds: `
part frame example.town "Town" { fork-axle-to-crown-range: 380 to 392 mm }
part fork example.fork "Rigid" { axle-to-crown: 390 mm; travel: none }

build example "A fork of the right length" {
  frame: example.town
  fork: example.fork
}
`,
    fails: `
part frame example.town "Town" { fork-axle-to-crown-range: 380 to 392 mm; fork-axle-to-crown: 385 mm }
part fork example.fork "Long rigid" { axle-to-crown: 420 mm; travel: none }

build example "A fork for larger wheels" {
  frame: example.town
  fork: example.fork
}
`,
  },
});

/** "; 20 mm longer than the chart assumes, it turns the head angle to 72.1° and raises the cranks by 7.7 mm". */
function effect(difference: number, angle: Maybe<number>, rise: Maybe<number>): string {
  if (atMost(Math.abs(difference), 0.5) || angle.state !== "known" || rise.state !== "known") return "";
  const [by, way] = [showQuantity(Math.abs(difference), "length"), difference > 0 ? "longer" : "shorter"];
  const up = rise.value >= 0 ? "raises" : "lowers";
  return `; ${by} ${way} than its chart assumes, it makes the head angle ${showQuantity(angle.value, "angle", { digits: 1 })} and ${up} the cranks by ${showQuantity(Math.abs(rise.value), "length", { digits: 0 })}`;
}
