import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, optional, slot, type Unknown } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { type ScrewThread, screwThread } from "../shared/screw-thread.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Diameters of threads that go on one another differ by less, in millimetres: 3/8 in and 9.5 mm are one. */
const diameterTolerance = 0.1;

/** Pitches that differ by less are one and the same, written in two ways. */
const samePitch = 0.01;

/** 26 threads to the inch are 0.977 mm: some nuts of that go on an axle of 1 mm, and bind. */
const nearPitch = 0.03;

export default defineCheck({
  code: "wheel/axle-nut-thread",
  title: "The axle nuts have the thread of the hub's axle",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    nuts: slot(ofWheel(wheel, "axle")),
    hub: slot(ofWheel(wheel, "hub")),
    fastening: optional(fact(ofWheel(wheel, "hub"), "axle-fastening")),
    onNuts: anyFact<string>(ofWheel(wheel, "axle"), "thread"),
    onAxle: optional(fact(ofWheel(wheel, "hub"), "axle-thread")),
  }),
  test({ nuts, hub, fastening, onNuts, onAxle }, { wheel }) {
    if (!isKind(nuts.value, "axle-nuts")) return notApplicable(`${nuts.subject} is no pair of axle nuts`);
    if (fastening.state === "known" && fastening.value !== "nutted" && fastening.value !== "bolted") {
      return notApplicable(`${hub.subject} is not for nuts, which is found as such`);
    }
    if (onNuts.state === "none") return notApplicable(`${onNuts.path} is none`);
    if (onAxle.state === "none") return notApplicable(`${onAxle.path} is none`);
    if (onNuts.state === "unknown" || onAxle.state === "unknown") return cannotTell(...unknowns(onNuts, onAxle));

    const [one, other] = [screwThread(onNuts.value), screwThread(onAxle.value)];
    if (!one || !other) {
      if (plain(onNuts.value) === plain(onAxle.value)) return holds(agreement(nuts, onNuts, hub, onAxle));
      return cannotTell(...[...(one ? [] : [unreadable(onNuts)]), ...(other ? [] : [unreadable(onAxle)])]);
    }
    const difference = compare(one, other);
    if (difference === "same") return holds(agreement(nuts, onNuts, hub, onAxle));
    if (difference === "open") {
      // A bare diameter leaves open whether the pitch is the fine one of axles.
      return cannotTell(...[...(one.pitch ? [] : [unreadable(onNuts)]), ...(other.pitch ? [] : [unreadable(onAxle)])]);
    }
    return fails(
      `${nuts.subject} have the thread ${onNuts.value}, but the axle of ${hub.subject} has ${onAxle.value}: ${words[difference]} Fit nuts of ${onAxle.value}.`,
      nuts,
      [onNuts, onAxle],
      swaps(ofWheel(wheel, "axle"), ofWheel(wheel, "hub")),
      difference === "near" ? { severity: "warning" } : {},
    );
  },
  explanation:
    "Solid axles have fine threads of several sizes: 9 or 9.5 mm and 5/16 or 3/8 in in front, 10 mm and 3/8 in behind, with 1 mm " +
    "of pitch or with 24 or 26 threads to the inch. A nut of another diameter does not go on, or rattles on the crests of " +
    "the thread; one of nearly the same pitch goes on for some turns, jams, and strips when it is tightened. Nuts that come " +
    "with the hub fit it. The rest is tried by hand: a nut that does not spin on freely is the wrong one.",
  source: "common practice, no source; 24 and 26 threads to the inch are 1.058 and 0.977 mm by definition",
  caution: "A stripped axle nut lets the wheel come out of its dropouts.",
  examples: {
    holds: `
part hub example.hub "Gear hub" { axle-fastening: nutted; axle-thread: "M10 x 1" }
part axle-nuts example.nuts "Nuts" { thread: "M10x1" }

build example "Nuts for this axle" {
  front-wheel.axle: none
  rear-wheel { hub: example.hub; axle: example.nuts }
}
`,
    fails: `
part hub example.hub "Gear hub" { axle-fastening: nutted; axle-thread: "M10 x 1" }
part axle-nuts example.nuts "Nuts" { thread: "3/8 x 24 tpi" }

build example "Inch nuts on a metric axle" {
  front-wheel.axle: none
  rear-wheel { hub: example.hub; axle: example.nuts }
}
`,
  },
});

type Difference = "same" | "open" | "smaller" | "larger" | "near" | "pitch";

const words: Readonly<Record<Exclude<Difference, "same" | "open">, string>> = {
  smaller: "they are too small to go on.",
  larger: "they are too large, and hold by nothing but the crests of the thread.",
  pitch: "they go on for a turn or two, jam and strip.",
  near: "the pitches are nearly alike, and they bind before they are tight; try them by hand first.",
};

function compare(nuts: ScrewThread, axle: ScrewThread): Difference {
  if (nuts.diameter < axle.diameter - diameterTolerance) return "smaller";
  if (nuts.diameter > axle.diameter + diameterTolerance) return "larger";
  if (nuts.pitch === undefined || axle.pitch === undefined) {
    return nuts.pitch === axle.pitch ? "same" : "open";
  }
  const apart = Math.abs(nuts.pitch - axle.pitch);
  if (apart < samePitch) return "same";
  return apart < nearPitch ? "near" : "pitch";
}

function agreement(nuts: Known, onNuts: Known<string>, hub: Known, onAxle: Known<string>): string {
  return `${nuts.subject} have the thread ${onNuts.value}, and the axle of ${hub.subject} has ${onAxle.value}.`;
}

function unreadable(thread: Known<string>): Unknown {
  const what = `the thread of ${thread.subject} with its pitch, such as "M10 x 1" or "3/8 x 26 tpi"`;
  return { state: "unknown", missing: [{ path: thread.path, what, place: thread.place }] };
}

/** A text without what people write differently. */
function plain(text: string): string {
  return text.toLowerCase().replace(/\s+/g, "");
}
