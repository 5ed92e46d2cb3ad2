import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-tension",
  title: "Something sets the tension of the belt",
  severity: "error",
  since: 1,
  needs: () => ({
    belt: slot("drivetrain.chain"),
    frame: slot("frame"),
    dropout: optional(fact("frame", "dropout")),
  }),
  test({ belt, frame, dropout }) {
    if (!isKind(belt.value, "belt")) return notApplicable("there is no belt");
    if (dropout.state === "unknown") return cannotTell(dropout);
    if (dropout.state === "none") return notApplicable("the frame states no dropouts");
    if (dropout.value !== "vertical") {
      return holds(`${belt.subject} is tensioned by the ${dropout.value} dropouts of ${dropout.subject}.`);
    }
    return fails(
      `${belt.subject} has to be tensioned, but the dropouts of ${frame.subject} are vertical, so that neither axle nor cranks can be moved: a belt needs sliding, rocking or slotted dropouts, or an eccentric at the cranks. Fit a chain with a tensioner, or another frame.`,
      belt,
      [dropout],
      swaps("drivetrain.chain", "frame"),
    );
  },
  explanation:
    "A belt works only inside a narrow window of tension: too slack, it jumps teeth under load; too tight, it wears the " +
    "bearings of hub and cranks. It cannot be shortened, and a sprung arm does not hold it, so either the rear axle or the " +
    "crank axis has to move. Dropouts in which the axle has one place leave nothing to set. The window itself, as a " +
    "frequency or a force, is the belt maker's, and goes on the bench sheet.",
  source: "common practice, no source",
  caution: "A slack belt jumps under load and can throw the rider. It is never levered on to tension it.",
  examples: {
    holds: `
part frame example.frame "Frame" { dropout: sliding }
part belt example.belt "Belt" { teeth: 118 t }

build example "Sliding dropouts" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
    fails: `
part frame example.frame "Frame" { dropout: vertical }
part belt example.belt "Belt" { teeth: 118 t }

build example "Nothing to set" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
  },
});
