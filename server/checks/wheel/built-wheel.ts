import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Repair } from "../../model/finding.ts";
import type { Known, Maybe } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/built-wheel",
  title: "A wheel bought whole is hub and rim, and nothing is laced into it",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    hub: anySlot(ofWheel(wheel, "hub")),
    rim: anySlot(ofWheel(wheel, "rim")),
    spokes: anySlot(ofWheel(wheel, "spokes")),
    nipples: anySlot(ofWheel(wheel, "nipples")),
  }),
  test({ hub, rim, spokes, nipples }, { wheel }) {
    const whole = [hub, rim].find(isWhole);
    if (!whole) return notApplicable(`the ${wheel.replace("-", " ")} is not bought whole`);
    const [other, place] = whole === hub ? [rim, ofWheel(wheel, "rim")] : ([hub, ofWheel(wheel, "hub")] as const);
    if (other.state === "none") {
      return fails(
        `${whole.subject} is a wheel bought whole (${whole.path}), but ${place} is none: name it there as well.`,
        whole,
        [],
        [{ kind: "insert-part", slot: place }],
      );
    }
    if (other.state === "known" && other.value.name !== whole.value.name) {
      const is = isWhole(other) ? "another one" : "a part by itself";
      return fails(
        `${whole.subject} is a wheel bought whole (${whole.path}), but ${other.subject} (${place}) is ${is}: name the same wheel in both places, or build it of hub and rim.`,
        other,
        [whole],
        swaps(place, whole === hub ? ofWheel(wheel, "hub") : ofWheel(wheel, "rim")),
      );
    }
    const besides = [spokes, nipples].filter((part): part is Known<Installed> => part.state === "known");
    const [first, ...rest] = besides;
    if (first) {
      const are = both(besides.map(({ subject, path }) => `${subject} (${path})`));
      return fails(
        `${whole.subject} is a wheel bought whole (${whole.path}) with its spokes and nipples in it, but ${are} would be fitted besides: leave ${besides.length > 1 ? "both" : "them"} out.`,
        first,
        [...rest, whole],
        besides.map(({ path }): Repair => ({ kind: "leave-empty", slot: path })),
      );
    }
    const open = unknowns(other, spokes, nipples);
    if (open.length > 0) return cannotTell(...open);
    return holds(`${whole.subject} is bought whole: it is hub and rim, and its spokes and nipples come in it.`);
  },
  explanation:
    "A wheel that is bought whole is one part, which a build names as hub and as rim, so that everything about either is " +
    "asked of it. It is weighed and paid for once. Another hub or rim beside it means that a wheel was exchanged in one " +
    "place only, and the rest of the build is then judged by a wheel that is not there. Spokes and nipples come in it: " +
    "those that a build lists besides were left over from the wheel that was laced before, and are ordered in vain.",
  source: "definition",
  examples: {
    holds: `
part built-wheel example.front "Front wheel" { wheel: front }

build example "One wheel in both places" {
  front-wheel { hub: example.front; rim: example.front }
}
`,
    fails: `
part built-wheel example.front "Front wheel" { wheel: front }
part rim example.rim "Rim" { bead-seat: 622 }

build example "Exchanged in one place" {
  front-wheel { hub: example.front; rim: example.rim }
}
`,
  },
});

function isWhole(part: Maybe<Installed>): part is Known<Installed> {
  return part.state === "known" && isKind(part.value, "built-wheel");
}
