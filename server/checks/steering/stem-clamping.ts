import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/stem-clamping",
  title: "A plain steerer has a clamping stem, a threaded one a quill",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    stem: slot("cockpit.stem"),
    clamping: fact("cockpit.stem", "clamping"),
    shape: fact("fork", "steerer-shape"),
  }),
  test({ stem, clamping, shape }) {
    const threaded = shape.value === "threaded";
    if ((clamping.value === "quill") === threaded) {
      return holds(
        threaded
          ? `${stem.subject} is a quill, and ${shape.subject} has a threaded steerer.`
          : `${stem.subject} clamps a steerer without threads, as ${shape.subject} has.`,
      );
    }
    return fails(
      threaded
        ? `${stem.subject} clamps a plain steerer, but the steerer of ${shape.subject} is threaded, and threads in the clamp break it: fit a quill stem.`
        : `${stem.subject} is a quill that goes down inside a threaded steerer, but ${shape.subject} has a ${shape.value} one without threads: fit a stem that clamps it.`,
      stem,
      [clamping, shape],
      swaps("cockpit.stem", "fork"),
    );
  },
  explanation:
    "There are two ways of holding a stem. A threaded steerer ends in a locknut, and the stem's quill goes down inside it " +
    "and is wedged there. A plain steerer goes up through the stem, which clamps it from outside. A quill finds no " +
    "hold that its maker allows in a plain steerer, and a clamp round a thread starts a crack at its grooves, so that " +
    "the steerer must not be threaded where it is clamped. Stem and fork are chosen together with the headset.",
  source: "TBIS 4210-2:2018, clause 4.7.4, the adoption of ISO 4210-2; common practice, no source",
  caution: "A stem that comes loose or a steerer that breaks takes the steering away.",
  examples: {
    holds: `
part stem example.quill "Quill 80" { clamping: quill }
part fork example.fork "Threaded fork" { steerer-shape: threaded }

build example "A quill in a threaded steerer" {
  fork: example.fork
  cockpit.stem: example.quill
}
`,
    fails: `
part stem example.clamp "Clamp 80" { clamping: threadless }
part fork example.fork "Threaded fork" { steerer-shape: threaded }

build example "A clamp round a thread" {
  fork: example.fork
  cockpit.stem: example.clamp
}
`,
  },
});
