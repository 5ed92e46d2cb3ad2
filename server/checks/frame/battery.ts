import { fact, optional, setting, slot } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "frame/battery",
  title: "There is a place for the shift battery where it is planned",
  severity: "error",
  since: 1,
  needs: () => ({
    battery: slot("drivetrain.battery"),
    place: setting("drivetrain.battery", "place"),
    frame: optional(slot("frame")),
    places: optional(fact("frame", "battery-places")),
    post: optional(slot("seat.post")),
    dropper: optional(fact("seat.post", "dropper-travel")),
  }),
  test({ battery, place, frame, places, post, dropper }) {
    if (place.value === "derailleur") return notApplicable("it clips to the derailleur");
    if (place.value === "steerer") return notApplicable("it goes into the steerer");
    if (place.value === "seatpost") {
      if (post.state === "unknown") return cannotTell(post);
      if (dropper.state === "unknown") return cannotTell(dropper);
      if (dropper.state === "none") return holds(`${battery.subject} goes into the seatpost, which is rigid.`);
      return fails(
        `${battery.subject} is to go into the seatpost, but ${dropper.subject} is a dropper of ${dropper.written} and has no room for it: fit it elsewhere, or a rigid post.`,
        battery,
        [place, dropper],
        swaps("seat.post"),
      );
    }
    const end = readEnd(frame, places, "battery-places");
    if (end.state === "unknown") return cannotTell(end.unknown);
    if (end.state === "known" && atLeast(end.fact.value, 1)) {
      return holds(
        `${battery.subject} goes into the ${place.value}, and ${end.part.subject} has ${end.fact.written} place for one.`,
      );
    }
    if (end.state !== "known" && end.state !== "none") return notApplicable("there is no frame to hold it");
    return fails(
      `${battery.subject} is to go into the ${place.value}, but ${end.part.subject} states no place for a battery: fit it in the seatpost, or a derailleur that carries its own.`,
      battery,
      [place, end.fact],
      [{ kind: "set-setting", slot: "drivetrain.battery", setting: "place", value: "seatpost" }, ...swaps("frame")],
    );
  },
  explanation:
    "A battery that feeds several electronic parts sits inside a tube: the seatpost, the seat tube or the down tube. Frames " +
    "for it have a holder and a way for the wire, and state how many places they have. A dropper post leaves no room in the " +
    "seatpost, since its tube slides there. A battery that is loose in a tube rattles, chafes its wire and cannot be " +
    "charged in place. Batteries that clip to a derailleur need no place in the frame.",
  source: "common practice, no source",
  caution: "A damaged or wet lithium battery is not charged, and none is charged unattended.",
  examples: {
    holds: `
part frame example.fell "Fell" { battery-places: 1 }
part battery example.cell "Cell" { voltage: 7.4 V }

build example "A holder in the seat tube" {
  frame: example.fell
  drivetrain.battery: example.cell { place: seat-tube }
}
`,
    fails: `
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm }
part battery example.cell "Cell" { voltage: 7.4 V }

build example "A battery where the dropper slides" {
  seat.post: example.drop
  drivetrain.battery: example.cell { place: seatpost }
}
`,
  },
});
