import { fails } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { defineComparison, judged, type MeasuredInstance } from "../define.ts";

/** A measurement of a part that the build does not have. */
export interface AbsentInstance extends MeasuredInstance {
  /** The slot that stands empty. */
  readonly slot: string;
  /** Where the build says so, or its name where leaving the slot out says it. */
  readonly absent: Known;
}

export default defineComparison({
  code: "record/nothing-there",
  title: "What was measured is fitted",
  severity: "warning",
  restsOn: "spec",
  // One for each path whose slot stands empty.
  instances: [] as readonly AbsentInstance[],
  needs: () => ({}),
  test(measured: Known, _facts, { slot, absent }) {
    return judged(
      fails(
        `${measured.path} was measured as ${measured.written}, but the build has nothing at ${slot}: it is a record of another bicycle, or the build does not say what is fitted.`,
        measured,
        [absent],
      ),
    );
  },
  explanation:
    "A thickness, a torque or a tension is measured on a part. Where the build says that there is none, or leaves the slot " +
    "out and that means none, the record belongs to another build or something was fitted that the build does not know. " +
    "Either way nothing can be compared until one of the two is put right.",
  source: "definition",
  examples: {
    holds: "",
    fails: `
part caliper example.caliper "Caliper" { material: aluminium }

build example "No disc" {
  front-brake { caliper: example.caliper; rotor: none }
}

record "A-1" of example {
  front-brake.rotor-thickness: 1.7 mm
}
`,
  },
});
