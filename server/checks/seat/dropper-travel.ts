import { fact, optional, setting, slot } from "../../model/need.ts";
import { equal, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "seat/dropper-travel",
  title: "The dropper can be set to the travel that is planned",
  severity: "error",
  since: 1,
  needs: () => ({
    post: slot("seat.post"),
    travel: fact("seat.post", "dropper-travel"),
    set: setting("seat.post", "travel-set"),
    options: optional(fact("seat.post", "travel-options")),
  }),
  test({ post, travel, set, options }) {
    const is = showQuantity(set.value, "length");
    if (equal(set.value, travel.value)) return holds(`${post.subject} drops by ${is} as it comes.`);
    if (options.state === "known" && inside(set.value, options.value)) {
      return holds(`${post.subject} is set to ${is}, and can be set to ${showInterval(options.value, "length")}.`);
    }
    const can =
      options.state === "known"
        ? `can be set to ${showInterval(options.value, "length")}`
        : `drops by ${showQuantity(travel.value, "length")} and cannot be set to another travel`;
    return fails(
      `The build sets ${post.subject} to ${is} of travel, but it ${can}: plan with what it has, or fit another dropper.`,
      set,
      [set, options.state === "known" ? options : travel],
      [
        {
          kind: "set-setting",
          slot: "seat.post",
          setting: "travel-set",
          value: showQuantity(travel.value, "length", { displayUnits: "metric" }),
        },
        ...swaps("seat.post"),
      ],
    );
  },
  explanation:
    "Some dropper posts can be set to less travel, by pins or spacers under the head, so that a longer one fits a shorter " +
    "rider. Others have the one that they were made with. Where the build states a travel, the post has to allow it, or " +
    "the saddle stands higher than was worked out. Less travel makes the extended post so much shorter. A dropper that " +
    "nobody resets says nothing of it in the build.",
  source: "common practice, no source; the post maker's own statement decides",
  examples: {
    holds: `
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm; travel-options: 125 to 150 mm }

build example "Twenty millimetres less" {
  seat.post: example.drop { travel-set: 130 mm }
}
`,
    fails: `
part seatpost example.drop "Drop 150" { dropper-travel: 150 mm; travel-options: 125 to 150 mm }

build example "Less than its pins allow" {
  seat.post: example.drop { travel-set: 110 mm }
}
`,
  },
});
