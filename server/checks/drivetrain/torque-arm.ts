import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, setting, slot } from "../../model/need.ts";
import { defineCheck, notApplicable } from "../define.ts";
import { armFixed } from "../shared/arm-fixed.ts";

export default defineCheck({
  code: "drivetrain/torque-arm",
  title: "The torque arm of a hub that needs one is fixed to the frame",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    hub: slot("rear-wheel.hub"),
    needs: fact("rear-wheel.hub", "torque-arm"),
    coaster: optional(fact("rear-wheel.hub", "coaster-brake")),
    fixed: optional(setting("rear-wheel.hub", "arm-fixed")),
  }),
  test({ hub, needs, coaster, fixed }) {
    if (!needs.value) return notApplicable(`${hub.subject} needs no torque arm`);
    if (stated(coaster) === true) {
      return notApplicable("its arm is the coaster brake's, which is asked for by itself");
    }
    return armFixed(
      hub,
      needs,
      fixed,
      "gears that turn against its axle, for which it needs a torque arm",
      "in the low gears the axle turns in the dropouts, winds up its cable and damages the frame.",
    );
  },
  explanation:
    "Gears inside a hub push back on its axle with more torque than the chain brings in, above all in the low gears. " +
    "Flats on the axle and shaped washers hold it where the dropouts allow; other hubs need an arm along the chainstay, " +
    "as brakes in the hub do. Without it the axle turns under load, the wheel shifts in the dropouts and the shift cable " +
    "is torn. The build states arm-fixed at the hub.",
  source: "common practice, no source; the hub maker says for which dropouts an arm is needed",
  caution: "An axle that turns in its dropouts can let the rear wheel come loose.",
  examples: {
    holds: `
part hub example.hub "Fourteen inside" { gears: 14; torque-arm: yes }

build example "The arm is fixed" {
  rear-wheel.hub: example.hub { arm-fixed: yes }
}
`,
    fails: `
part hub example.hub "Fourteen inside" { gears: 14; torque-arm: yes }

build example "The arm was left off" {
  rear-wheel.hub: example.hub { arm-fixed: no }
}
`,
  },
});
