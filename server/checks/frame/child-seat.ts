import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "frame/child-seat",
  title: "The frame's maker allows a child seat",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    seat: slot("carrying.child-seat"),
    child: optional(fact("carrying.child-seat", "child-mass")),
    frame: optional(slot("frame")),
    load: optional(fact("frame", "child-seat-load")),
    forbids: optional(fact("frame", "forbids")),
  }),
  test({ seat, child, frame, load, forbids }) {
    const end = readEnd(frame, load, "child-seat-load");
    const leave = { kind: "leave-empty", slot: "carrying.child-seat" } as const;
    const forbidden = forbids.state === "known" && forbids.value.includes("child-seat") ? forbids : undefined;
    const refuses = forbidden ?? (end.state === "none" ? end.fact : undefined);
    if (refuses) {
      return fails(
        `${seat.subject} is fitted, but the maker of ${refuses.subject} allows no child seat: leave it out, or fit a frame that is made to carry one.`,
        seat,
        [refuses],
        [leave, ...swaps("frame")],
      );
    }
    if (end.state === "unknown") return cannotTell(end.unknown);
    if (end.state !== "known") return notApplicable("there is no frame to hold it");
    if (child.state === "unknown") return cannotTell(child);
    if (child.state === "none") return notApplicable(`${seat.subject} states no mass of child`);
    const most = showQuantity(end.fact.value, "mass");
    if (greaterThan(child.value.least, end.fact.value)) {
      const [lightest, bears] = showPair(child.value.least, end.fact.value, "mass");
      return fails(
        `${seat.subject} is for children from ${lightest}, but ${end.part.subject} bears a child of ${bears} at most: fit a seat for smaller children.`,
        seat,
        [child, end.fact],
        [...swaps("carrying.child-seat"), leave],
      );
    }
    return holds(
      `${seat.subject} is for children of ${showInterval(child.value, "mass")}, and ${end.part.subject} bears one of up to ${most}.`,
    );
  },
  explanation:
    "A child seat loads a frame where few are made for it, and far behind or high in front. The frame's maker says whether a " +
    "seat may be fitted and how heavy the child may be; many light frames, and most with carbon or rear suspension, must not " +
    "carry one. The seat's maker says for which children it is. The smaller of the two limits holds. Law says how old child " +
    "and rider have to be. Springs under the saddle and the spokes are covered from small fingers and feet.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "Fitted only where the frame's maker and the law allow it, by the seat maker's instructions.",
  examples: {
    holds: `
part frame example.town "Town" { child-seat-load: 22 kg }
part child-seat example.seat "Seat" { child-mass: 9 to 22 kg }

build example "A frame made to carry a child" {
  frame: example.town
  carrying.child-seat: example.seat
}
`,
    fails: `
part frame example.light "Light" { child-seat-load: none }
part child-seat example.seat "Seat" { child-mass: 9 to 22 kg }

build example "A frame that must not" {
  frame: example.light
  carrying.child-seat: example.seat
}
`,
  },
});
