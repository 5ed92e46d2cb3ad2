import type { Repair } from "../../model/finding.ts";
import { fact, optional, setting } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";

/** A band closes on a tube, or on tube and shim, that is out by less than this. */
const tolerance = 0.2;

const words: MatingWords = {
  one: "is fixed by",
  other: "offers",
  nothing: "takes no front derailleur",
  remedy: "leave the front derailleur out, or fit one that the frame takes.",
};

const derailleur = "drivetrain.front-derailleur";

export default defineCheck({
  code: "drivetrain/front-derailleur-mount",
  title: "The front derailleur fits the frame",
  severity: "error",
  since: 1,
  needs: () => ({
    part: anySlot(derailleur),
    mount: anyFact<ResolvedCode>(derailleur, "mount"),
    frame: anySlot("frame"),
    place: anyFact<ResolvedCode>("frame", "front-derailleur-mount"),
    shim: optional(setting(derailleur, "band-shim")),
    shape: optional(fact("frame", "seat-tube-shape")),
  }),
  test({ part, mount, frame, place, shim, shape }) {
    const one = readEnd(part, mount, "mount");
    const other = readEnd(frame, place, "front-derailleur-mount");
    const joint = jointNamed("front-derailleur-mount");
    if (one.state !== "known" || other.state !== "known") return judgeMating(joint, words, one, other);
    const band = dimensionOf<number>(one.fact.value, "band-diameter");
    const tube = dimensionOf<number>(other.fact.value, "band-diameter");
    if (band === undefined || tube === undefined) {
      return judgeMating(joint, { ...words, remedy: "fit a front derailleur for that mount." }, one, other);
    }

    // A frame that offers a band has a round tube, unless it says otherwise.
    if (shape.state === "known" && shape.value !== "round") {
      return fails(
        `${one.part.subject} is fixed by a band, but the seat tube of ${other.part.subject} is not round there: fit a derailleur that is not clamped round it.`,
        one.part,
        [one.fact, shape],
        swaps(derailleur),
      );
    }
    // A band on a round tube: a shim may make the tube thicker.
    if (shim.state === "unknown") return cannotTell(shim);
    const added = shim.state === "known" ? shim.value : 0;
    const under = tube + added;
    const [clamps, thick] = showPair(band, under, "length");
    const tubeWithShim = added > 0 ? `the tube with its shim of ${showQuantity(added, "length")}` : "the seat tube";
    if (atMost(Math.abs(band - under), tolerance) || (added === 0 && mate(one.fact.value, other.fact.value))) {
      return holds(
        `The band of ${one.part.subject} is for ${clamps}, and ${tubeWithShim} of ${other.part.subject} is ${thick}.`,
      );
    }
    const missing = band - tube;
    const repairs: Repair[] = [];
    if (missing > tolerance) {
      repairs.push({
        kind: "set-setting",
        slot: derailleur,
        setting: "band-shim",
        value: showQuantity(missing, "length", { displayUnits: "metric" }),
      });
    } else if (added > 0 && Math.abs(missing) <= tolerance) {
      repairs.push({ kind: "set-setting", slot: derailleur, setting: "band-shim", value: "none" });
    }
    const remedy =
      missing > tolerance
        ? `put a shim under it that makes the tube ${showQuantity(missing, "length")} larger over the diameter (${showQuantity(missing / 2, "length")} thick), or fit a derailleur with a smaller band`
        : Math.abs(missing) <= tolerance
          ? "leave the shim out"
          : "fit a derailleur with a larger band";
    return fails(
      `The band of ${one.part.subject} is for ${clamps}, but ${tubeWithShim} of ${other.part.subject} is ${thick}: ${remedy}.`,
      one.part,
      [one.fact, other.fact, ...(shim.state === "known" ? [shim] : [])],
      [...repairs, ...swaps(derailleur)],
    );
  },
  explanation:
    "A front derailleur is clamped round the seat tube by a band, bolted to a tab on it, bolted straight to the frame, or " +
    "held by a plate behind a bearing cup. A band fits one diameter; a shim of the difference makes a thinner tube do, " +
    "and nothing makes a thicker one do. A band wants a round tube: a frame whose seat tube is not round offers " +
    "no band. Frames made for a single ring take no front derailleur at all.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.road "Road" { front-derailleur-mount: band-31.8 }
part front-derailleur example.mech "Mech 34.9" { mount: band-34.9 }

build example "A band with its shim" {
  frame: example.road
  drivetrain.front-derailleur: example.mech { band-shim: 3.1 mm }
}
`,
    fails: `
part frame example.road "Road" { front-derailleur-mount: band-34.9 }
part front-derailleur example.mech "Mech 28.6" { mount: band-28.6 }

build example "A band too small for the tube" {
  frame: example.road
  drivetrain.front-derailleur: example.mech
}
`,
  },
});
