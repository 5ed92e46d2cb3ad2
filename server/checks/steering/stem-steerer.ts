import { stated } from "../../calculations/shared/maybe.ts";
import { fact, type Maybe, optional } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { anyFact, anySlot, type End, readEnd } from "../shared/end.ts";
import { jointNamed } from "../shared/mating.ts";
import { judgeSizes } from "../shared/size-mating.ts";
import { swaps } from "../shared/swaps.ts";

const joint = jointNamed("stem-steerer");

/** A quill goes down with some tenths of play, which its wedge takes up; more than this and the wedge has to spread too far. */
const mostQuillPlay = 0.6;

export default defineCheck({
  code: "steering/stem-steerer",
  title: "The stem is made for the steerer's diameter",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    stem: anySlot("cockpit.stem"),
    clamp: anyFact<number>("cockpit.stem", "steerer-clamp"),
    fork: anySlot("fork"),
    diameter: anyFact<number>("fork", "steerer-diameter"),
    clamping: optional(fact("cockpit.stem", "clamping")),
    shape: optional(fact("fork", "steerer-shape")),
    bore: optional(fact("fork", "steerer-bore")),
  }),
  test({ stem, clamp, fork, diameter, clamping, shape, bore }) {
    const one = readEnd(stem, clamp, "steerer-clamp");
    const other = readEnd(fork, diameter, "steerer-diameter");
    const threaded = shape.state === "known" ? shape.value === "threaded" : undefined;
    if (clamping.state === "known" && threaded !== undefined && threaded !== (clamping.value === "quill")) {
      return notApplicable("stem and steerer are of two kinds, which is found as such");
    }
    if (stated(clamping) === "quill") return quill(one, bore);
    if (clamping.state === "unknown" && one.state === "known" && other.state === "known") {
      // A quill is thinner than the steerer it goes into, so that equal diameters are those of a clamp.
      const same = atMost(Math.abs(one.fact.value - other.fact.value), words.tolerance);
      if (same ? threaded : threaded !== false) return cannotTell(clamping);
    }
    return judgeSizes(joint, words, one, other);
  },
  explanation:
    "A stem clamps a steerer of one diameter: 28.6 mm is the usual one, 25.4 an old and 31.8 or 38.1 a rarer one. Round a " +
    "thinner steerer the clamp closes on its slot before it grips; over a thicker one it does not go. A quill stem goes " +
    "down inside a threaded steerer instead and has to match its bore: 22.2 mm in a 1 inch steerer, 25.4 in a 1 1/8 inch " +
    "one. A quill two tenths thinner than the bore is wedged fast, and one that has to be forced bursts the steerer. " +
    "Sleeves that make a thin steerer thicker are used only where both makers allow them.",
  source: "Wikipedia, Headset (bicycle part), for the steerer diameters; quills from memory",
  caution:
    "A stem that turns or comes off the steerer takes the steering away. Preload with the stem loose, then its bolts in turns and to torque; the part makers' instructions come first.",
  examples: {
    holds: `
part stem example.stem "Stem 70" { steerer-clamp: 31.8 mm; clamping: threadless }
part fork example.fork "Fork" { steerer-diameter: 31.8 mm; steerer-shape: round }

build example "A stem for a thick steerer" {
  fork: example.fork
  cockpit.stem: example.stem
}
`,
    fails: `
part stem example.stem "Stem 70" { steerer-clamp: 28.6 mm; clamping: threadless }
part fork example.fork "Fork" { steerer-diameter: 25.4 mm; steerer-shape: round }

build example "A thin steerer in a wide clamp" {
  fork: example.fork
  cockpit.stem: example.stem
}
`,
  },
});

const words = {
  one: "clamps a steerer of",
  other: "has one of",
  nothing: "has no steerer",
  remedy: (clamps: string, has: string) => `fit a stem for ${has}, or a fork with a steerer of ${clamps}.`,
  tolerance: 0.1,
} as const;

/** A quill against the bore it goes down in. */
function quill(stem: End<number>, bore: Maybe<number>): Verdict {
  const unknown = [stem.state === "unknown" ? stem.unknown : stem, bore].flatMap((one) =>
    one.state === "unknown" ? [one] : [],
  );
  if (unknown.length > 0) return cannotTell(...unknown);
  if (stem.state !== "known" || bore.state !== "known") return notApplicable("there is no quill in a steerer");
  const [thick, wide] = showPair(stem.fact.value, bore.value, "length");
  const play = bore.value - stem.fact.value;
  if (atMost(-play, 0.1) && atMost(play, mostQuillPlay)) {
    return holds(
      `The quill of ${stem.part.subject} is ${thick}, and the steerer of ${bore.subject} is ${wide} wide inside.`,
    );
  }
  return fails(
    `The quill of ${stem.part.subject} is ${thick} thick, but the steerer of ${bore.subject} is ${wide} wide inside: ${play > 0 ? "its wedge cannot hold that far out" : "a forced quill bursts the steerer"}; fit a quill for ${wide}.`,
    stem.part,
    [stem.fact, bore],
    swaps("cockpit.stem", "fork"),
  );
}
