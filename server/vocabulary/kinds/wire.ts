import { defineKind } from "../define.ts";
import { code, length } from "../fields.ts";

/** An electric lead. */
export const wire = defineKind({
  name: "wire",
  noun: "a wire",
  description: "An electric lead between parts of a shift or lighting system.",
  fields: {
    length: length("Length of the lead.", { essential: true, group: "Shape", lowest: 50, highest: 4000 }),
    connector: code("connector", "Connector at its ends.", { essential: true, group: "Electronics" }),
  },
});
