import { stated } from "../../calculations/shared/maybe.ts";
import type { Known, Maybe } from "../../model/need.ts";
import { cannotTell, fails, holds, type Verdict } from "../define.ts";

/** Whether the arm that keeps a hub's axle from turning is fixed to the frame. */
export function armFixed(hub: Known, needs: Known, fixed: Maybe<boolean>, arm: string, turns: string): Verdict {
  if (fixed.state === "unknown") return cannotTell(fixed);
  if (stated(fixed) === true) return holds(`${hub.subject} has ${arm}, and it is fixed to the frame.`);
  const said = fixed.state === "known" ? "arm-fixed: no" : "arm-fixed: none";
  return fails(
    `${hub.subject} has ${arm}, but the build says that it is not fixed to the frame (${said}): ${turns} Fix it to the chainstay with the clip or bolt that belongs to it.`,
    fixed.state === "known" ? fixed : hub,
    [needs],
    [{ kind: "set-setting", slot: "rear-wheel.hub", setting: "arm-fixed", value: "yes" }],
  );
}
