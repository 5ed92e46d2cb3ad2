import { defineKind } from "../define.ts";
import { code, length } from "../fields.ts";

/** A bell. */
export const bell = defineKind({
  name: "bell",
  noun: "a bell",
  description: "A bell or horn, which many laws ask for.",
  fields: {
    mount: code("control-clamp", "How it is held.", { group: "Fit" }),
    width: length("Length of bar that it takes up.", { group: "Fit", lowest: 2, highest: 60 }),
  },
});
