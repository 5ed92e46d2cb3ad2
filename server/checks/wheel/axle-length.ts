import { ofWheel } from "../../calculations/shared/wheels.ts";
import { atLeast, atMost, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";
import { isOtherSize, thruAxleNeeds } from "../shared/thru-axle.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Makers measure the same axle to a millimetre one way or the other. */
const measured = 1;
/** How far an axle may stand out of an open thread where its diameter is not known. */
const thinnestAxle = 12;

export default defineCheck({
  code: "wheel/axle-length",
  title: "The thru axle is as long as the fork or frame asks for",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => thruAxleNeeds<number>(place, "axle-length", "axleLength"),
  test({ axle, own, asked, made, takes }, place) {
    if (isOtherSize(made, takes)) return notApplicable("the axle is of another size, which is found as such");
    const more = own.value - asked.value;
    const [has, wants] = showPair(own.value, asked.value, "length");
    if (atMost(Math.abs(more), measured)) {
      return holds(`${axle.subject} is ${has} long under its head, and ${asked.subject} takes ${wants}.`);
    }
    const by = showQuantity(Math.abs(more), "length");
    const short = lessThan(more, 0);
    const diameter =
      (takes.state === "known" ? dimensionOf<number>(takes.value, "diameter") : undefined) ?? thinnestAxle;
    const out = atLeast(more, diameter)
      ? "it stands out of the dropout"
      : "it bottoms in a closed thread, or stands out";
    return fails(
      `${axle.subject} is ${has} long under its head, but ${asked.subject} takes ${wants}: ${short ? `${by} of its thread is missing in the dropout` : `${by} too long, ${out}`}. Fit an axle of ${wants}.`,
      axle,
      [own, asked],
      swaps(ofWheel(place.wheel, "axle"), place.holder),
      // A long axle in an open thread holds; a standard allows it to stand out by its own diameter.
      short || atLeast(more, diameter) ? {} : { severity: "warning" },
    );
  },
  explanation:
    "Frames and forks of one axle size differ in the thickness of their dropouts, so that their thru axles differ in " +
    "length. A short axle catches only part of the thread: it takes its torque and strips later. A long one bottoms in " +
    "a closed dropout before the wheel is tight, or stands out where a derailleur, a foot or another wheel can hit it. " +
    "Length is measured from under the head to the end, thread included. A millimetre is what makers differ by in " +
    "measuring.",
  source:
    "common practice, no source; at most one major diameter beyond the mating thread: TBIS 4210-2:2018, clause 4.5, the adoption of ISO 4210-2",
  caution: "An axle that holds by part of its thread can strip, and the wheel come out while riding.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-axle-length: 180 mm }
part thru-axle example.axle "Axle" { axle-length: 180 mm }

build example "As long as it should be" {
  frame: example.frame
  rear-wheel.axle: example.axle
  front-wheel.axle: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-axle-length: 180 mm }
part thru-axle example.axle "Axle" { axle-length: 172 mm }

build example "Too short for its thread" {
  frame: example.frame
  rear-wheel.axle: example.axle
  front-wheel.axle: none
}
`,
  },
});
