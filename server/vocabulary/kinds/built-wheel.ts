import { defineKind } from "../define.ts";
import { hub } from "./hub.ts";
import { rim } from "./rim.ts";

/** Facts of the parts that only somebody who laces the wheel has to know. */
const forLacing = {
  "spoke-holes": { ...hub.fields["spoke-holes"], essential: false },
  "rim-holes": { ...rim.fields["rim-holes"], essential: false },
  "effective-rim-diameter": { ...rim.fields["effective-rim-diameter"], essential: false },
  "greatest-spoke-tension": { ...rim.fields["greatest-spoke-tension"], essential: false },
};

/** A wheel that comes with its spokes in it: what a hub and a rim state, in one part. */
export const builtWheel = defineKind({
  name: "built-wheel",
  noun: "a built wheel",
  description:
    "A wheel bought whole, with hub, rim, spokes and nipples; a build names it as hub and as rim, and its mass and price are those of the whole wheel.",
  caution:
    "Pressure and spoke tension above the rim's own limits break it; a worn brake track bursts under pressure. Its spokes are felt and its run-out is looked at before anyone rides it.",
  fields: { ...hub.fields, ...rim.fields, ...forLacing },
});
