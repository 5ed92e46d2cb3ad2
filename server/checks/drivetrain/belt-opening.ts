import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-opening",
  title: "The frame opens to let a belt in",
  severity: "error",
  since: 1,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    frame: slot("frame"),
    opening: optional(fact("frame", "belt-opening")),
  }),
  test({ chain, frame, opening }) {
    if (!isKind(chain.value, "belt")) return notApplicable("a chain is opened itself");
    if (opening.state === "unknown") return cannotTell(opening);
    if (opening.state === "known" && opening.value) {
      return holds(`${opening.subject} opens, and ${chain.subject} goes in whole.`);
    }
    return fails(
      `${chain.subject} is one closed loop, but the rear triangle of ${frame.subject} does not open (belt-opening ${opening.state === "known" ? "no" : "not stated, which means none"}): the belt cannot be put in. Fit a chain, or a frame that opens.`,
      chain,
      [opening.state === "known" ? opening : statedNone(frame, opening)],
      [...swaps("drivetrain.chain", "frame"), { kind: "set-fact", slot: "frame", fact: "belt-opening", value: "yes" }],
    );
  },
  explanation:
    "A belt has no joint: it is made as one loop and must never be cut. It gets into the rear triangle only where the " +
    "frame comes apart, by a coupling in the right seatstay or at the dropout, or where the chainstay runs above it. Most " +
    "frames do not open, and cutting one open afterwards is a frame builder's work. A frame that says nothing about an " +
    "opening is taken to have none.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.frame "Frame with a coupling" { belt-opening: yes }
part belt example.belt "Belt" { teeth: 118 t }

build example "A frame that opens" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
    fails: `
part frame example.frame "Frame" { belt-opening: no }
part belt example.belt "Belt" { teeth: 118 t }

build example "A frame that does not" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
  },
});
