import { defineKind } from "../define.ts";
import { code, count, length, yesNo } from "../fields.ts";

/** Two half links that join a chain's ends. */
export const closureLink = defineKind({
  name: "closure-link",
  noun: "a closure link",
  description: "A link of two halves that joins the ends of a chain without a pin being pressed.",
  caution: "A closure link of the wrong width, worn, or used twice against its maker's word parts under load.",
  fields: {
    speeds: count("Number of cogs of the chains it closes.", {
      lowest: 1,
      highest: 14,
      essential: true,
      group: "Gearing",
    }),
    "drive-family": code("drive-family", "Roller and tooth family of the chains it closes.", {
      essential: true,
      group: "Fit",
    }),
    "outer-width": length("Width over its pins.", { group: "Fit", lowest: 4, highest: 12 }),
    reusable: yesNo("Whether its maker allows it to be opened and closed again.", { group: "Limits", essential: true }),
    "greatest-uses": count("How many times it may be closed in all.", { group: "Limits", lowest: 1, highest: 20 }),
    directional: yesNo("Whether its arrow has to follow the chain's travel.", { group: "Assembly" }),
    "half-link": yesNo("Whether it is a cranked half link, which adds one pitch and suits single-speeds only.", {
      group: "Fit",
      omitted: "none",
    }),
  },
});
