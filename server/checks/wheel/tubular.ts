import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { showCode } from "../shared/codes.ts";
import { isGlued } from "../shared/glued-rim.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/tubular",
  title: "A tubular tyre is glued to a rim for it, and no other tyre is put there",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    construction: fact(ofWheel(wheel, "tyre"), "construction"),
    rim: slot(ofWheel(wheel, "rim")),
    kind: fact(ofWheel(wheel, "rim"), "rim-kind"),
  }),
  test({ tyre, construction, rim, kind }, { wheel }) {
    const tubular = construction.value === "tubular";
    const glued = isGlued(kind.value);
    if (tubular && glued) return holds(`${tyre.subject} is a tubular, and ${rim.subject} is made for one.`);
    if (!(tubular || glued)) return notApplicable("neither tyre nor rim is for gluing");
    const why = tubular
      ? `${tyre.subject} is a tubular (construction: tubular), but ${rim.subject} is ${showCode(kind.value)}: it has no bed to glue it to. Fit a tyre with beads, or a rim for tubulars.`
      : `${rim.subject} is for tubulars (rim-kind: ${kind.value.code}), but ${tyre.subject} is none (construction: ${construction.value}), and that rim has no edges to hold it. Fit a tubular, or a rim for tyres with beads.`;
    return fails(why, tyre, [construction, kind], swaps(ofWheel(wheel, "tyre"), ofWheel(wheel, "rim")));
  },
  explanation:
    "A tubular is sewn round its tube and has no beads. It is held by glue or tape on a rim with a shallow bed and no " +
    "edges. Every other tyre is held by its beads under the edges of its rim, and only while there is pressure in it. " +
    "A tubular stretched over a rim with edges has next to nothing to be glued to, and a tyre with beads on a rim for " +
    "tubulars has nothing to hold it: either rolls off. The size may be written the same way for both, so size does not tell.",
  source: "common practice, no source",
  caution:
    "A tyre that rolls off in a bend throws the rider. A tubular is glued as its maker says, and pulled at before it is ridden.",
  examples: {
    holds: `
part rim example.sprint "Sprint" { rim-kind: tubular }
part tyre example.sewn "Sewn" { construction: tubular }

build example "Glued on" {
  front-wheel { rim: example.sprint; tyre: example.sewn }
  rear-wheel { rim: example.sprint; tyre: example.sewn }
}
`,
    fails: `
part rim example.hooked "Hooked" { rim-kind: crotchet }
part tyre example.sewn "Sewn" { construction: tubular }

build example "A tubular on a rim with edges" {
  front-wheel { rim: example.hooked; tyre: example.sewn }
  rear-wheel { rim: none; tyre: none }
}
`,
  },
});
