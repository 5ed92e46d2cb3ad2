import { fact, optional, slot } from "../../model/need.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { axlesDiffer, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Caps and recesses are turned to some tenths of a millimetre. */
const play = 0.5;

const [front] = wheelPlaces;

export default defineCheck({
  code: "wheel/end-caps",
  title: "The end caps of the front hub fit the fork's recesses",
  severity: "error",
  since: 1,
  needs: () => ({
    ...fittedAxleNeeds(front),
    hub: slot("front-wheel.hub"),
    fastening: optional(fact("front-wheel.hub", "axle-fastening")),
    caps: optional(fact("front-wheel.hub", "end-cap-diameter")),
    recess: optional(fact("fork", "end-cap-diameter")),
  }),
  test({ hub, fastening, caps, recess, hubAxle, fitted, takes }) {
    if (axlesDiffer({ hubAxle, fitted, takes })) return notApplicable("the hub is found not to fit by its axle");
    if (caps.state === "none") return notApplicable(`${caps.path} is none`);
    if (recess.state === "none") return notApplicable(`${recess.path} is none`);
    if (fastening.state === "known" && (fastening.value === "nutted" || fastening.value === "bolted")) {
      return notApplicable("a solid axle has no end caps");
    }
    const open = [caps, recess].flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (fastening.state === "known" && fastening.value === "quick-release" && open.length === 2) {
      return notApplicable("open dropouts for a quick release have no recesses, unless one is stated");
    }
    if (caps.state === "unknown" || recess.state === "unknown") return cannotTell(...open);
    const [has, wants] = showPair(caps.value, recess.value, "length");
    if (atMost(Math.abs(caps.value - recess.value), play)) {
      return holds(`The end caps of ${hub.subject} are ${has} across, and ${recess.subject} takes ${wants}.`);
    }
    const large = greaterThan(caps.value, recess.value);
    return fails(
      large
        ? `The end caps of ${hub.subject} are ${has} across and do not enter the recesses of ${recess.subject}, which take ${wants}: fit end caps of ${wants}, or another hub.`
        : `The end caps of ${hub.subject} are ${has} across and lie loose in the recesses of ${recess.subject}, which are for ${wants}: the wheel has to be held in place while the axle goes in, and the fork is less stiff. Fit end caps of ${wants}.`,
      hub,
      [caps, recess],
      swaps("front-wheel.hub", "fork"),
      large ? {} : { severity: "warning" },
    );
  },
  explanation:
    "Where a front hub stands in the fork, its end caps rest in recesses round the axle's hole. Forks for wide end caps " +
    "have larger recesses; a hub with the usual small caps goes in and is clamped, but is not centred by them, and the " +
    "fork loses some stiffness. Large caps in a fork for small ones do not go in at all. Most hubs take either kind of " +
    "cap as a spare part.",
  source: "common practice, no source",
  examples: {
    holds: `
part fork example.fork "Fork" { end-cap-diameter: 31 mm }
part hub example.hub "Front" { end-cap-diameter: 31 mm }

build example "Wide caps in wide recesses" {
  fork: example.fork
  front-wheel.hub: example.hub
}
`,
    fails: `
part fork example.fork "Fork" { end-cap-diameter: 22 mm }
part hub example.hub "Front" { end-cap-diameter: 31 mm }

build example "Caps that do not go in" {
  fork: example.fork
  front-wheel.hub: example.hub
}
`,
  },
});
