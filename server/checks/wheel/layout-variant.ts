import type { Installed } from "../../model/assembly.ts";
import { headerPlace } from "../../model/declaration.ts";
import type { Known, Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { cannotTell, defineCheck, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";

const words: MatingWords = {
  one: "has the flange layout",
  other: "is made for",
  nothing: "names no flange layout",
  remedy: "fit a hub of that layout.",
};

export default defineCheck({
  code: "wheel/layout-variant",
  title: "The rear hub has the flange layout that the frame is made for",
  severity: "error",
  since: 1,
  needs: () => ({
    hub: anySlot("rear-wheel.hub"),
    layout: anyFact<ResolvedCode>("rear-wheel.hub", "layout"),
    frame: anySlot("frame"),
    made: anyFact<ResolvedCode>("frame", "rear-hub-layout"),
  }),
  test({ hub, layout, frame, made }) {
    const one = readEnd(hub, layout, "layout");
    const other = readEnd(frame, made, "rear-hub-layout");
    // One side that names a layout says that its axle size has several, so the other's cannot be taken for granted.
    if (one.state === "known" && other.state === "none") {
      return cannotTell(unstated(other.part, "frame.rear-hub-layout", one.fact));
    }
    if (one.state === "none" && other.state === "known") {
      return cannotTell(unstated(one.part, "rear-wheel.hub.layout", other.fact));
    }
    if (one.state === "none" && other.state === "none") return notApplicable("neither hub nor frame names a layout");
    return judgeMating(jointNamed("rear-hub-layout"), words, one, other);
  },
  explanation:
    "Some axle sizes come with two layouts: the same axle and the same width, but flanges, rotor and cogs further in or " +
    "further out. A hub of the wrong layout goes into the dropouts and then the rotor does not meet the caliper, or the " +
    "chainline is some millimetres off. The numbers on the box are the same, so it is found only by the layout's name. " +
    "Axle sizes of which there is one layout only need not name it.",
  source: "common practice, no source; layouts from memory",
  examples: {
    holds: `
part frame example.frame "Frame 157" { rear-axle: 12x157; rear-hub-layout: 157-wide }
part hub example.hub "Rear 157" { axle: 12x157; layout: 157-wide }

build example "One layout" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
    fails: `
part frame example.frame "Frame 157" { rear-axle: 12x157; rear-hub-layout: 157-wide }
part hub example.hub "Rear 157" { axle: 12x157; layout: 157-narrow }

build example "The same numbers and another layout" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
  },
});

/** The layout that one part does not name although the other shows that there are several. */
function unstated(part: Known<Installed>, path: string, named: Known<ResolvedCode>): Unknown {
  const declaration = part.value.part?.declaration;
  const what = `the flange layout of ${part.subject}, since ${named.subject} names ${showCode(named.value)} (${path})`;
  return { state: "unknown", missing: [{ path, what, place: declaration ? headerPlace(declaration) : part.place }] };
}
