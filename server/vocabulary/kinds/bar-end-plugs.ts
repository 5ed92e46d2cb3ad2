import { defineKind } from "../define.ts";
import { length, yesNo } from "../fields.ts";

/** Closes the ends of a bar. */
export const barEndPlugs = defineKind({
  name: "bar-end-plugs",
  noun: "a pair of bar-end plugs",
  description: "Close the ends of a bar; an open end cuts like a punch in a fall.",
  fields: {
    "bore-fitted": length("Inside diameter of bar that they fit.", { group: "Fit", lowest: 12, highest: 32 }),
    expanding: yesNo("Whether they expand inside the bar.", { group: "Fit" }),
  },
});
