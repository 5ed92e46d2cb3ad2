import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact, lacksDimension, showCode } from "../shared/codes.ts";
import { axlesDiffer, fittedAxle, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { swaps } from "../shared/swaps.ts";
import { holderFact, wheelPlaces } from "../shared/wheel-places.ts";

/** Open dropouts close by that much without harm, and a washer makes up for it. */
const springing = 1;

export default defineCheck({
  code: "wheel/over-locknut",
  title: "The hub is as wide as the space between the dropouts",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...fittedAxleNeeds(place),
    takes: holderFact<ResolvedCode>(place, "axle"),
    hub: slot(ofWheel(place.wheel, "hub")),
    width: fact(ofWheel(place.wheel, "hub"), "over-locknut-width"),
  }),
  test({ hub, width, hubAxle, fitted, takes }, place) {
    if (axlesDiffer({ hubAxle, fitted, takes })) return notApplicable("the hub is found not to fit by its axle");
    if (fitted.state === "known" && hubAxle.state === "known" && !mate(fitted.value, hubAxle.value)) {
      return notApplicable("its width is stated for the end caps that it came with");
    }
    // A frame made for two widths takes the one that the hub has.
    const own = fittedAxle({ hubAxle, fitted });
    const axle = own.state === "known" ? own : takes;
    const space = dimensionFact<number>(axle.value, "width");
    if (!space) return cannotTell(lacksDimension(axle.value, "width"));
    const difference = width.value - space.value;
    const [has, wants] = showPair(width.value, space.value, "length");
    const room = `${showCode(takes.value)} of ${takes.subject}`;
    if (atMost(Math.abs(difference), springing)) {
      return holds(`${hub.subject} is ${has} over its locknuts, and ${room} takes ${wants}.`);
    }
    const by = showQuantity(Math.abs(difference), "length");
    return fails(
      greaterThan(difference, 0)
        ? `${hub.subject} is ${has} over its locknuts, but ${room} takes ${wants}: the dropouts would be spread by ${by}. Fit a hub of ${wants}.`
        : `${hub.subject} is ${has} over its locknuts, but ${room} takes ${wants}: the dropouts would be drawn together by ${by}. Fit a hub of ${wants}, or spacers on its axle where its maker allows them.`,
      hub,
      [width, takes, space],
      [
        ...swaps(ofWheel(place.wheel, "hub")),
        { kind: "set-fact", slot: ofWheel(place.wheel, "hub"), fact: "over-locknut-width", value: wants },
      ],
    );
  },
  explanation:
    "The outer faces of locknuts or end caps are what the dropouts close on. A hub that is some millimetres wider spreads " +
    "them: they are no longer parallel, the axle bends and cracks, and in aluminium or carbon the frame does. A narrower " +
    "one draws them together likewise. Thru axles leave no room for either. Steel frames can be set to another width, " +
    "which is a frame builder's work; some are made for two widths by springing a little.",
  source: "trade glossaries for the widths; common practice, no source",
  caution: "Dropouts that are forced do not hold the wheel, and crack.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-axle: 10x126 }
part hub example.hub "Rear" { axle: 10x126; over-locknut-width: 126 mm }

build example "As wide as the dropouts" {
  frame: example.frame
  rear-wheel.hub: example.hub
  front-wheel.hub: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-axle: 10x126 }
part hub example.hub "Rear" { axle: 10x126; over-locknut-width: 130 mm }

build example "Spread by four millimetres" {
  frame: example.frame
  rear-wheel.hub: example.hub
  front-wheel.hub: none
}
`,
  },
});
