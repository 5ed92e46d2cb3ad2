import { defineKind } from "../define.ts";
import { text, words } from "../fields.ts";

/** Reflectors. */
export const reflectors = defineKind({
  name: "reflectors",
  noun: "reflectors",
  description: "Reflectors, where the law of the road asks for them.",
  fields: {
    places: words(
      {
        front: "White, in front.",
        rear: "Red, behind.",
        wheels: "In the spokes or on the tyres.",
        pedals: "On the pedals.",
      },
      "Where they belong.",
      { essential: true, group: "Fit" },
    ),
    approval: text("Approval mark.", { group: "Limits", omitted: "none" }),
  },
});
