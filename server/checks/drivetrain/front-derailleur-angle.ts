import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/** A cage turned by this many degrees more or less shifts alike: the ranges are stated in whole degrees. */
const wholeDegree = 0.5;

export default defineCheck({
  code: "drivetrain/front-derailleur-angle",
  title: "The front derailleur's cage is made for the angle of the chainstay",
  severity: "warning",
  since: 1,
  needs: () => ({
    derailleur: slot("drivetrain.front-derailleur"),
    range: optional(fact("drivetrain.front-derailleur", "chainstay-angle")),
    seatAngle: optional(fact("frame", "seat-angle")),
    chainstay: optional(fact("frame", "chainstay")),
    drop: optional(fact("frame", "bottom-bracket-drop")),
  }),
  test({ derailleur, range, seatAngle, chainstay, drop }) {
    if (range.state !== "known") return notApplicable(`${derailleur.subject} states no angle of the chainstay`);
    const open = unknowns(seatAngle, chainstay, drop);
    if (open.length > 0) return cannotTell(...open);
    if (seatAngle.state !== "known" || chainstay.state !== "known" || drop.state !== "known") {
      return notApplicable("the frame has no such angle");
    }
    const length = (chainstay.value.least + chainstay.value.greatest) / 2;
    if (Math.abs(drop.value) >= length) return notApplicable("the drop is longer than the chainstay");
    const climb = (Math.asin(drop.value / length) * 180) / Math.PI;
    const angle = seatAngle.value - climb;
    const is = showQuantity(angle, "angle", { digits: 1 });
    const said = `The chainstay lies at ${is} to the seat tube (${showQuantity(seatAngle.value, "angle", { digits: 1 })} less the ${showQuantity(climb, "angle", { digits: 1 })} by which it climbs to the axle)`;
    const suits = showInterval(range.value, "angle");
    const { least, greatest } = range.value;
    if (lessThan(angle, least - wholeDegree) || greaterThan(angle, greatest + wholeDegree)) {
      return fails(
        `${said}, but ${derailleur.subject} is made for ${suits}: the tail of its cage stands too ${lessThan(angle, least) ? "high" : "low"}, and it rubs or does not follow the ring. Fit a derailleur made for this angle.`,
        derailleur,
        [range, seatAngle, chainstay, drop],
        swaps("drivetrain.front-derailleur"),
      );
    }
    return holds(`${said}, and ${derailleur.subject} is made for ${suits}.`);
  },
  explanation:
    "A front derailleur hangs from the seat tube, and its cage runs backward along the chain. How far it has to be tilted " +
    "depends on the angle between seat tube and chainstay, for which makers state a range. Outside of it the cage does not " +
    "follow the ring: it stands off at one end, where the chain rubs or falls off. The angle follows from the seat tube's, " +
    "the chainstay's length and the bottom bracket's drop; ranges are in whole degrees, so that half a degree is nothing.",
  source: "plane geometry, re-derived; the range is the derailleur maker's own; half a degree: rounding",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-angle: 73°; chainstay: 435 mm; bottom-bracket-drop: 70 mm }
part front-derailleur example.front "Front" { chainstay-angle: 61 to 66° }

build example "Inside the range" {
  frame: example.fell
  drivetrain.front-derailleur: example.front
}
`,
    fails: `
part frame example.fell "Fell" { seat-angle: 73°; chainstay: 435 mm; bottom-bracket-drop: 70 mm }
part front-derailleur example.front "Front" { chainstay-angle: 68 to 70° }

build example "For another frame" {
  frame: example.fell
  drivetrain.front-derailleur: example.front
}
`,
  },
});
