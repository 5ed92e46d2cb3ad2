import { fact, setting, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "cockpit/grip-cut",
  title: "The grips are as long as they are to be cut to",
  severity: "error",
  since: 1,
  needs: () => ({
    grips: slot("cockpit.grips"),
    cut: setting("cockpit.grips", "cut-length"),
    whole: fact("cockpit.grips", "length"),
  }),
  test({ grips, cut, whole }) {
    const [planned, sold] = showPair(cut.value, whole.value, "length");
    if (greaterThan(cut.value, whole.value)) {
      return fails(
        `The build cuts ${grips.subject} to ${planned}, but they are ${sold} long as sold: fit longer grips, or leave cut-length out.`,
        cut,
        [whole],
        [{ kind: "set-setting", slot: "cockpit.grips", setting: "cut-length", value: sold }, ...swaps("cockpit.grips")],
      );
    }
    return holds(`${grips.subject} are ${sold} long, and are cut to ${planned}.`);
  },
  explanation:
    "Grips are cut where a twist shifter, or a short bar, needs the room. How much of the bar is left for levers and " +
    "controls is worked out from the length that they are cut to. A length greater than that of the grips as sold is a slip.",
  source: "definition; the length is the grip maker's own figure",
  examples: {
    holds: `
part grips example.grips "Grips" { length: 135 mm }

build example "Room for a twist shifter" {
  cockpit.grips: example.grips { cut-length: 95 mm }
}
`,
    fails: `
part grips example.grips "Grips" { length: 135 mm }

build example "Cut longer than they are" {
  cockpit.grips: example.grips { cut-length: 150 mm }
}
`,
  },
});
