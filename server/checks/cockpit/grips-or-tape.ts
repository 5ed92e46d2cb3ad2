import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "cockpit/grips-or-tape",
  title: "A bar has grips or tape, not both",
  severity: "warning",
  since: 1,
  needs: () => ({
    bar: slot("cockpit.handlebar"),
    grips: optional(slot("cockpit.grips")),
    tape: optional(slot("cockpit.tape")),
    shape: optional(fact("cockpit.handlebar", "bar")),
  }),
  test({ bar, grips, tape, shape }) {
    const unknown = unknowns(grips, tape);
    if (grips.state === "none" && tape.state === "none") return notApplicable("the bar is bare");
    // A bar without one of them is right, whatever the other is.
    if (grips.state !== "known" || tape.state !== "known") {
      if (grips.state !== "none" && tape.state !== "none") return cannotTell(...unknown);
      const fitted = [grips, tape].flatMap((one) => (one.state === "known" ? [one.subject] : []));
      return holds(
        `Hands hold ${fitted[0] ?? (grips.state === "none" ? "tape" : "grips")} on ${bar.subject}, and nothing over it.`,
      );
    }
    const isDrop = shape.state === "known" && shape.value === "drop";
    const less = isDrop ? grips : tape;
    const other = isDrop ? tape : grips;
    const why =
      shape.state === "known" ? `, and what belongs on this bar (bar: ${shape.written}) is ${other.subject}` : "";
    return fails(
      `Both ${grips.subject} and ${tape.subject} are fitted to ${bar.subject}: a hand holds one or the other${why}. Leave one out.`,
      less,
      [other, ...(shape.state === "known" ? [shape] : [])],
      [
        { kind: "leave-empty", slot: isDrop ? "cockpit.grips" : "cockpit.tape" },
        // Where nobody says what bar it is, either may be meant.
        ...(shape.state === "known" ? [] : [{ kind: "leave-empty", slot: "cockpit.grips" } as const]),
      ],
    );
  },
  explanation:
    "Grips are pushed over the straight ends of a bar, tape is wound round one that is bent. A build with both has one of " +
    "them left from another bar, or added to close the ends, for which plugs are made. Nobody winds tape over grips.",
  source: "common practice, no source",
  examples: {
    holds: `
part handlebar example.drop "Drop 420" { bar: drop }
part tape example.wrap "Wrap" { plugs-supplied: yes }

build example "Tape alone" {
  cockpit { handlebar: example.drop; grips: none; tape: example.wrap }
}
`,
    fails: `
part handlebar example.flat "Flat 700" { bar: flat }
part grips example.rubber "Rubber grips" { closes-end: yes }
part tape example.wrap "Wrap" { plugs-supplied: yes }

build example "Tape over grips" {
  cockpit { handlebar: example.flat; grips: example.rubber; tape: example.wrap }
}
`,
  },
});
