import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/fixed-lock-ring",
  title: "A fixed cog on a thread is held by a left-hand lock-ring",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    cog: slot("drivetrain.cassette"),
    fixed: fact("drivetrain.cassette", "fixed"),
    seat: optional(fact("drivetrain.cassette", "freehub")),
    thread: optional(fact("drivetrain.cassette", "thread")),
    retention: optional(fact("drivetrain.cassette", "retention")),
    hub: optional(slot("rear-wheel.hub")),
    hubThread: optional(fact("rear-wheel.hub", "freewheel-thread")),
    lockringThread: optional(fact("rear-wheel.hub", "fixed-lockring-thread")),
  }),
  test({ cog, fixed, seat, thread, retention, hub, hubThread, lockringThread }) {
    if (!fixed.value) return notApplicable(`${cog.subject} is not fixed to the wheel`);
    if (thread.state === "unknown") return cannotTell(thread);
    // What goes on no splines is screwed on, and so is what a left-hand lock-ring holds, though its thread is left out.
    const isScrewedOn =
      seat.state === "none" || (retention.state === "known" && retention.value === "left-hand-lockring");
    if (thread.state === "none" && !isScrewedOn) {
      const isBolted = retention.state === "known" && (retention.value === "bolts" || retention.value === "snap-ring");
      if (seat.state === "unknown" && !isBolted) return cannotTell(seat);
      return notApplicable(`${cog.subject} is held on its seat by other means than a thread`);
    }

    const screwed = thread.state === "known" ? [fixed, thread] : [fixed];
    if (retention.state === "none" || (retention.state === "known" && retention.value !== "left-hand-lockring")) {
      const held = retention.state === "known" ? `retention ${retention.value}` : "no retention";
      return fails(
        `${cog.subject} is a fixed cog on a thread with ${held}: pedalling backward unscrews it. It needs a left-hand lock-ring.`,
        cog,
        [...screwed, ...(retention.state === "known" ? [retention] : [])],
        swaps("drivetrain.cassette"),
      );
    }
    if (hub.state === "none") return notApplicable("there is no rear hub");
    if (hub.state === "unknown") return cannotTell(hub);
    const byStandard =
      hubThread.state === "known" && dimensionOf<number>(hubThread.value, "lockring-diameter") !== undefined;
    const stated = lockringThread.state === "known" && lockringThread.value;
    // A hub that says it has no such thread is believed, whatever the code of its other thread.
    const denied = lockringThread.state === "known" && !lockringThread.value;
    if (denied || (!byStandard && !stated)) {
      if (lockringThread.state === "unknown") return cannotTell(lockringThread);
      // Left out, the hub may still say it by the standard of its thread.
      if (hubThread.state === "unknown") return cannotTell(hubThread);
      return fails(
        `${cog.subject} is a fixed cog on a thread, but ${hub.subject} has no left-hand thread for its lock-ring: pedalling backward unscrews the cog. Fit a hub made for fixed cogs, or a freewheel.`,
        hub,
        [
          ...screwed,
          ...(hubThread.state === "known" ? [hubThread] : []),
          ...(lockringThread.state === "known" ? [lockringThread] : []),
        ],
        swaps("rear-wheel.hub", "drivetrain.cassette"),
      );
    }
    if (retention.state === "unknown") return cannotTell(retention);
    return holds(`${cog.subject} is held by a left-hand lock-ring, for which ${hub.subject} has the thread.`);
  },
  explanation:
    "A cog screwed on with a right-hand thread is tightened by every stroke of the pedals, and a fixed one is unscrewed by " +
    "every attempt to slow down with the legs. So hubs for fixed cogs have a second, smaller thread with the opposite " +
    "hand outside the first, and a lock-ring on it that tightens when the cog tries to turn off. A plain freewheel hub " +
    "takes the cog but not the lock-ring. Without it the cog comes off under the rider, and with it the only brake that " +
    "some such bikes have at the rear. Cogs that are bolted or splined on do not need one.",
  source: "common practice, no source",
  caution:
    "A fixed cog without its lock-ring unscrews under braking. It is never ridden so, and never held by adhesive alone.",
  examples: {
    holds: `
part hub example.hub "Track hub" { freewheel-thread: 1.375x24; fixed-lockring-thread: yes }
part sprocket example.cog "Fixed 15" { cogs: 15 t; fixed: yes; thread: 1.375x24; retention: left-hand-lockring }

build example "Cog with its lock-ring" {
  drivetrain.cassette: example.cog
  rear-wheel.hub: example.hub
}
`,
    fails: `
part hub example.hub "Freewheel hub" { freewheel-thread: 1.375x24 }
part sprocket example.cog "Fixed 15" { cogs: 15 t; fixed: yes; thread: 1.375x24; retention: left-hand-lockring }

build example "Fixed cog on a freewheel hub" {
  drivetrain.cassette: example.cog
  rear-wheel.hub: example.hub
}
`,
  },
});
