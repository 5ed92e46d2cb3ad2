import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { clampForm } from "../shared/controls.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "cockpit/bar-end-plugs",
  title: "The ends of the bar are closed",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    bar: slot("cockpit.handlebar"),
    allowed: optional(fact("cockpit.handlebar", "bar-ends-allowed")),
    plugs: optional(slot("cockpit.bar-end-plugs")),
    expanding: optional(fact("cockpit.bar-end-plugs", "expanding")),
    grips: optional(slot("cockpit.grips")),
    closed: optional(fact("cockpit.grips", "closes-end")),
    tape: optional(slot("cockpit.tape")),
    supplied: optional(fact("cockpit.tape", "plugs-supplied")),
    rearControl: optional(fact("drivetrain.rear-controller", "mount")),
    frontControl: optional(fact("drivetrain.front-controller", "mount")),
  }),
  test({ bar, allowed, plugs, expanding, grips, closed, tape, supplied, rearControl, frontControl }) {
    if (plugs.state === "unknown") return cannotTell(plugs);
    if (plugs.state === "known") {
      const forbids = allowed.state !== "known" || !allowed.value;
      const expands = expanding.state !== "known" || expanding.value;
      if (forbids && expands) {
        const open = [allowed, expanding].flatMap((one) => (one.state === "unknown" ? [one] : []));
        if (open.length > 0) return cannotTell(...open);
        if (allowed.state === "known" && expanding.state === "known") {
          return fails(
            `${plugs.subject} expands inside the bar, but the maker of ${bar.subject} forbids it (bar-ends-allowed: no): fit plugs that only push in.`,
            plugs,
            [expanding, allowed],
            swaps("cockpit.bar-end-plugs"),
          );
        }
      }
      return holds(`With ${plugs.subject} the ends of ${bar.subject} are closed.`);
    }
    if (grips.state === "known" && stated(closed) === true) {
      return holds(`With ${grips.subject} the ends of ${bar.subject} are closed.`);
    }
    if (tape.state === "known" && stated(supplied) === true) {
      return holds(`The plugs that come with ${tape.subject} close the ends of ${bar.subject}.`);
    }
    const inEnds = [rearControl, frontControl].flatMap((one) =>
      one.state === "known" && clampForm(one.value) === "bar-end" ? [one.subject] : [],
    );
    if (inEnds.length === 2) return holds(`${both(inEnds)} sit in the ends of ${bar.subject} and close them.`);
    // What is wrapped round the bar may bring plugs, as long as nobody says that it does not.
    const open = [grips, closed, tape, supplied].flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (open.length > 0) return cannotTell(...open);
    const bare = [grips, tape].flatMap((one) => (one.state === "known" ? [one.subject] : []));
    return fails(
      `The 2 ends of ${bar.subject} stay open: ${bare.length === 0 ? "the build has neither grips nor tape" : `nothing in ${bare.join(" or ")} closes them`}, and cockpit.bar-end-plugs is none. Fit plugs.`,
      bar,
      [closed, supplied].flatMap((one) => (one.state === "known" ? [one] : [])),
      [{ kind: "insert-part", slot: "cockpit.bar-end-plugs" }, ...swaps("cockpit.grips", "cockpit.tape")],
    );
  },
  explanation:
    "The open end of a tube cuts out a disc of whoever falls on it. So both ends are closed, by grips with a closed end, by " +
    "plugs, or by shifters that sit in the ends. Tape is usually sold with plugs, and grips that are open for a bar end or " +
    "a mirror need them by themselves. Plugs that expand press on the wall from inside, which some makers of light bars " +
    "forbid. A plug that can be pulled out by hand is no plug.",
  source:
    "16 CFR 1512.6(d): ends capped or covered, and held against 66.8 N (from memory); expanding plugs by the bar maker's own statement",
  caution: "Nobody rides with an open end of the bar.",
  examples: {
    holds: `
part handlebar example.drop "Drop 420" { bar: drop }
part tape example.wrap "Wrap" { plugs-supplied: yes }

build example "Plugs with the tape" {
  cockpit { handlebar: example.drop; grips: none; tape: example.wrap; bar-end-plugs: none }
}
`,
    fails: `
part handlebar example.flat "Flat 700" { bar: flat }
part grips example.open "Open grips" { closes-end: no }

build example "Grips open at both ends" {
  cockpit { handlebar: example.flat; grips: example.open; tape: none; bar-end-plugs: none }
}
`,
  },
});
