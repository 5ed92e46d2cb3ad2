import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-derailleur-pull",
  title: "The cable of the front derailleur comes from where the frame leads it",
  severity: "error",
  since: 1,
  needs: () => ({
    part: slot("drivetrain.front-derailleur"),
    actuation: fact("drivetrain.front-derailleur", "actuation"),
    pull: optional(fact("drivetrain.front-derailleur", "pull-direction")),
    frame: slot("frame"),
    mount: optional(fact("frame", "front-derailleur-mount")),
    led: optional(fact("frame", "front-derailleur-pull")),
    stop: optional(fact("frame", "front-housing-stop")),
  }),
  test({ part, actuation, pull, frame, mount, led, stop }) {
    if (actuation.value !== "cable") return notApplicable(`${part.subject} works without a cable`);
    if (mount.state === "none") return notApplicable("the frame takes no front derailleur, which is found as such");
    if (pull.state === "none" || stated(pull) === "electronic") {
      return notApplicable(`${part.subject} states no cable direction`);
    }
    if (pull.state === "unknown" && led.state === "known" && led.value !== "any") return cannotTell(pull);
    if (led.state === "none") {
      const none = statedNone(frame, led);
      return fails(
        `${part.subject} is pulled by a cable, but ${frame.subject} leads none to a front derailleur: fit an electronic one, or leave it out.`,
        part,
        [actuation, none],
        [...swaps("drivetrain.front-derailleur"), { kind: "leave-empty", slot: "drivetrain.front-derailleur" }],
      );
    }
    const unknown = [pull, led].filter((need) => need.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    if (pull.state !== "known" || led.state !== "known") return notApplicable("there is no cable to lead");
    const fits =
      led.value === "any" ||
      pull.value === led.value ||
      (pull.value === "either" && (led.value === "top" || led.value === "bottom"));
    if (fits && pull.value === "side") {
      if (stop.state === "unknown") return cannotTell(stop);
      if (stop.state === "known" && !stop.value) {
        return fails(
          `${part.subject} is pulled from the side, but ${frame.subject} has no stop for its housing: fit a derailleur that is pulled from elsewhere.`,
          part,
          [pull, stop],
          swaps("drivetrain.front-derailleur"),
        );
      }
    }
    if (fits)
      return holds(
        `${part.subject} is pulled ${shown[pull.value]}, and ${frame.subject} leads its cable ${from[led.value]}.`,
      );
    return fails(
      `${part.subject} is pulled ${shown[pull.value]}, but ${frame.subject} leads its cable ${from[led.value]}: fit a derailleur for that.`,
      part,
      [pull, led],
      swaps("drivetrain.front-derailleur"),
    );
  },
  explanation:
    "A cable pulls a front derailleur from above, from below or from the side, and the arm it is fixed to is made for one " +
    "of them, or for two. The frame settles which: where its cable stops and guides are, and on which tube. Pulled from " +
    "the wrong side the derailleur does not move. A derailleur pulled from the side also needs a stop for its housing, " +
    "either on the frame or on the derailleur. Electronic ones are not concerned.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.road "Road" { front-derailleur-mount: brazed-on; front-derailleur-pull: bottom }
part front-derailleur example.mech "Mech" { mount: brazed-on; actuation: cable; pull-direction: either }

build example "Pulled from below" {
  frame: example.road
  drivetrain.front-derailleur: example.mech
}
`,
    fails: `
part frame example.cross "Cross" { front-derailleur-mount: band-31.8; front-derailleur-pull: top }
part front-derailleur example.mech "Mech" { mount: band-31.8; actuation: cable; pull-direction: side }

build example "A side-pull derailleur on a frame that leads its cable down" {
  frame: example.cross
  drivetrain.front-derailleur: example.mech
}
`,
  },
});

const shown = {
  top: "from above",
  bottom: "from below",
  side: "from the side",
  either: "from above or below",
  electronic: "by no cable",
} as const;
const from = { top: "from above", bottom: "from below", side: "along the down tube", any: "from anywhere" } as const;
