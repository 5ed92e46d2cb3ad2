import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-approved",
  title: "The frame's maker approves it for a belt",
  severity: "error",
  since: 1,
  needs: () => ({
    chain: slot("drivetrain.chain"),
    frame: slot("frame"),
    approved: optional(fact("frame", "belt-approved")),
    forbids: optional(fact("frame", "forbids")),
  }),
  test({ chain, frame, approved, forbids }) {
    if (!isKind(chain.value, "belt")) return notApplicable("there is no belt");
    if (forbids.state === "known" && forbids.value.includes("belt")) {
      return fails(
        `${forbids.subject} forbids a belt, but ${chain.subject} is one: fit a chain.`,
        chain,
        [forbids],
        swaps("drivetrain.chain", "frame"),
      );
    }
    if (approved.state === "unknown") return cannotTell(approved);
    if (approved.state === "known" && approved.value) {
      return holds(`The maker of ${approved.subject} approves it for a belt.`);
    }
    return fails(
      `${chain.subject} is a belt, but the maker of ${frame.subject} does not approve the frame's stiffness for one (belt-approved ${approved.state === "known" ? "no" : "none"}): fit a chain, or a frame that is approved.`,
      chain,
      [approved.state === "known" ? approved : statedNone(frame, approved)],
      swaps("drivetrain.chain", "frame"),
    );
  },
  explanation:
    "A belt runs at several times the tension of a chain and jumps a tooth as soon as the rear triangle twists so far that " +
    "it goes slack. Belt makers therefore measure how stiff a frame is at the dropout and approve it or not. A frame " +
    "that opens is not stiff enough by that alone. Whether it is approved has to be stated: without it nothing can be " +
    "said either way.",
  source: "common practice, no source; approval is the frame and belt makers' own",
  caution: "A belt that jumps under load can throw the rider.",
  examples: {
    holds: `
part frame example.frame "Frame" { belt-approved: yes }
part belt example.belt "Belt" { teeth: 118 t }

build example "Approved" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
    fails: `
part frame example.frame "Frame" { belt-approved: no }
part belt example.belt "Belt" { teeth: 118 t }

build example "Not approved" {
  frame: example.frame
  drivetrain.chain: example.belt
}
`,
  },
});
