import { type Facts, fact, optional, setting } from "../../model/need.ts";
import { stated } from "./maybe.ts";

/** What {@link postLength} reads. */
export const postLengthNeeds = {
  post: fact("seat.post", "overall-length"),
  cut: optional(setting("seat.post", "cut-length")),
  dropperTravel: optional(fact("seat.post", "dropper-travel")),
  travelSet: optional(setting("seat.post", "travel-set")),
};

/** How far a dropper drops as it is set in the build; `undefined` for a rigid post. */
export function dropperTravel(
  facts: Pick<Facts<typeof postLengthNeeds>, "dropperTravel" | "travelSet">,
): number | undefined {
  const travel = stated(facts.dropperTravel);
  return travel === undefined ? undefined : (stated(facts.travelSet) ?? travel);
}

/** Length of the post as it stands in the build: once cut, and with a dropper that is set to less travel so much shorter. */
export function postLength({ post, cut, dropperTravel, travelSet }: Facts<typeof postLengthNeeds>): number {
  const whole = stated(cut) ?? post.value;
  const [travel, set] = [stated(dropperTravel), stated(travelSet)];
  return travel === undefined || set === undefined ? whole : whole - (travel - set);
}
