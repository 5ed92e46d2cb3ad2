import { defineKind } from "../define.ts";
import { code, codes, length } from "../fields.ts";

/** Carries brake fluid. */
export const hose = defineKind({
  name: "hose",
  noun: "a brake hose",
  description: "Carries brake fluid from lever to caliper.",
  fields: {
    length: length("Length as supplied.", { group: "Shape", lowest: 200, highest: 4000 }),
    "lever-fitting": code("hose-fitting", "Fitting at the lever.", { group: "Brakes" }),
    "caliper-fitting": code("hose-fitting", "Fitting at the caliper.", { group: "Brakes" }),
    "brake-fluids": codes("brake-fluid", "Fluids that it bears.", { group: "Brakes" }),
    "outside-diameter": length("Outside diameter, for guides and entries.", { group: "Fit", lowest: 3, highest: 8 }),
  },
});
