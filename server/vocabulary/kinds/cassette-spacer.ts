import { defineKind } from "../define.ts";
import { code, length } from "../fields.ts";

/** A ring that fills the rest of a freehub body. */
export const cassetteSpacer = defineKind({
  name: "cassette-spacer",
  noun: "a cassette spacer",
  description: "A ring behind a cassette that is narrower than the freehub body it stands on.",
  fields: {
    thickness: length("Thickness of all its rings together.", {
      essential: true,
      group: "Fit",
      lowest: 0.1,
      highest: 40,
      example: "1.85 mm",
    }),
    freehub: code("freehub-body", "Freehub body whose splines it fits.", { essential: true, group: "Fit" }),
  },
});
