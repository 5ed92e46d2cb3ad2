import { fact, optional, setting, slot } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "steering/quill-insertion",
  title: "The quill stands as deep in the steerer as its mark asks",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    stem: slot("cockpit.stem"),
    clamping: fact("cockpit.stem", "clamping"),
    // Asked of a quill only: nobody states them of a threadless stem.
    depth: optional(setting("cockpit.stem", "quill-insertion")),
    least: optional(fact("cockpit.stem", "least-quill-insertion")),
  }),
  test({ stem, clamping, depth, least }) {
    if (clamping.value !== "quill") return notApplicable("the stem is no quill");
    if (depth.state === "none") return notApplicable("quill-insertion is stated as none");
    if (least.state === "none") return notApplicable("least-quill-insertion is stated as none");
    if (depth.state !== "known" || least.state !== "known") {
      return cannotTell(...[depth, least].filter((asked) => asked.state === "unknown"));
    }
    const [stands, needs] = showPair(depth.value, least.value, "length");
    if (atLeast(depth.value, least.value)) {
      return holds(
        `The quill of ${stem.subject} stands ${stands} deep, and ${needs} is the least.`,
        (depth.value - least.value) / depth.value,
      );
    }
    return fails(
      `The quill of ${stem.subject} stands ${stands} deep in the steerer, but its mark asks for ${needs}: lower it, or fit a longer quill.`,
      depth,
      [depth, least],
      [
        {
          kind: "set-setting",
          slot: "cockpit.stem",
          setting: "quill-insertion",
          value: millimetres(least.value, "up"),
        },
        ...swaps("cockpit.stem"),
      ],
    );
  },
  explanation:
    "A quill stem is held by a wedge or cone at its lower end, inside the steerer. Pulled up beyond its mark the wedge " +
    "spreads where the steerer is cut with thread, and the stem bends the last of it. The mark is at least two and a half " +
    "times the quill's diameter above the wedge. What can be seen of the mark above the locknut says it at a glance. A " +
    "higher bar needs a stem with a longer quill.",
  source: "from memory of 16 CFR 1512.6; the stem maker's own mark decides",
  caution: "A quill that stands too high breaks the steerer or comes out. The stem maker's mark comes first.",
  examples: {
    holds: `
part stem example.quill "Quill 80" { clamping: quill; least-quill-insertion: 65 mm }

build example "Down to the mark" {
  cockpit.stem: example.quill { quill-insertion: 65 mm }
}
`,
    fails: `
part stem example.quill "Quill 80" { clamping: quill; least-quill-insertion: 65 mm }

build example "The mark shows" {
  cockpit.stem: example.quill { quill-insertion: 52 mm }
}
`,
  },
});
