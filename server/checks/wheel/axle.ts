import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, optional } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails } from "../define.ts";
import { asList, showCode, showCodes } from "../shared/codes.ts";
import { anySlot, type End, readEnd } from "../shared/end.ts";
import { fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "has the axle",
  other: "takes",
  nothing: "takes no axle",
  remedy: "fit a hub, or end caps, for that axle.",
};

export default defineCheck({
  code: "wheel/axle",
  title: "The hub's axle fits the fork or frame",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...fittedAxleNeeds(place),
    hub: anySlot(ofWheel(place.wheel, "hub")),
    options: optional(fact(ofWheel(place.wheel, "hub"), "axle-options")),
    holder: anySlot(place.holder),
  }),
  test({ hub, hubAxle, options, fitted, holder, takes }, place) {
    const joint = jointNamed(`${place.name}-axle`);
    const hubSlot = ofWheel(place.wheel, "hub");
    if (fitted.state === "unknown") return cannotTell(fitted);
    const own = readEnd(hub, hubAxle, "axle");
    const one: End<ResolvedCode> =
      fitted.state === "known" && own.state !== "empty" && own.part
        ? { state: "known", part: own.part, fact: fitted }
        : own;
    const other = readEnd(holder, takes, place.facts.axle);
    if (one.state !== "known" || other.state !== "known") return judgeMating(joint, words, one, other);

    const wanted = other.fact.value;
    const offered: readonly Known<ResolvedCode | readonly ResolvedCode[]>[] = [
      ...(hubAxle.state === "known" ? [hubAxle] : []),
      ...(options.state === "known" ? [options] : []),
    ];
    const all = offered.flatMap(({ value }) => asList(value));
    const better = all.find((code) => mate(code, wanted));
    const swap = swaps(hubSlot, place.holder);
    const change: readonly Repair[] = better
      ? [{ kind: "set-setting", slot: hubSlot, setting: "axle-fitted", value: better.code }]
      : [];
    // A hub whose own axle is not stated may have any.
    if (fitted.state === "known" && hubAxle.state === "known" && !all.some((code) => mate(code, fitted.value))) {
      return fails(
        `The build fits ${one.part.subject} for ${showCode(fitted.value)}, but it comes for ${showCodes(all)} only: fit a hub for ${wanted.code}.`,
        one.part,
        [fitted, ...offered],
        [...change, ...swap],
      );
    }
    if (better && !mate(one.fact.value, wanted)) {
      return fails(
        `${one.part.subject} has end caps for ${showCode(one.fact.value)}, but ${other.part.subject} takes ${showCode(wanted)}: change to its end caps for ${better.code}, and state axle-fitted: ${better.code}.`,
        one.part,
        [one.fact, other.fact, ...offered.filter((known) => known !== one.fact)],
        [...change, ...swap],
        // What nobody chose yet is a job to do; what somebody chose wrongly is an error.
        fitted.state === "known" ? {} : { severity: "warning" },
      );
    }
    return judgeMating(joint, words, one, other);
  },
  explanation:
    "A hub fits by the diameter of its axle and by its width between the dropouts. A hub that is too narrow is not held " +
    "at its faces, and one that is too wide is forced in and bends the dropouts. Thru axles and quick releases of one " +
    "width differ too: 135 mm in open dropouts is 142 mm with a thru axle, since the end caps enter a recess of 3.5 mm " +
    "on each side. Many hubs change from one to another with the maker's own end caps; the build then says " +
    "axle-fitted. The thru axle or skewer itself is another question.",
  source: "trade glossaries for most widths; common practice, no source",
  caution:
    "A wheel that is not held at both sides can come out while riding. Seated on both sides, and tightened to torque.",
  examples: {
    holds: `
part fork example.fork "Fork 20" { axle: 20x110 }
part hub example.hub "Front 110" { axle: 15x110; axle-options: 20x110 }

build example "End caps for this fork" {
  fork: example.fork
  front-wheel.hub: example.hub { axle-fitted: 20x110 }
  rear-wheel.hub: none
}
`,
    fails: `
part frame example.frame "Frame 157" { rear-axle: 12x157 }
part hub example.hub "Rear 142" { axle: 12x142 }

build example "A hub too narrow" {
  frame: example.frame
  rear-wheel.hub: example.hub
  front-wheel.hub: none
}
`,
  },
});
