import type { Repair } from "../../model/finding.ts";
import { fact, optional, setting, slot } from "../../model/need.ts";
import { inside, overlap } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "steering/fork-travel",
  title: "The frame's maker allows the fork's travel",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    fork: slot("fork"),
    travel: fact("fork", "travel"),
    options: optional(fact("fork", "travel-options")),
    set: optional(setting("fork", "travel-set")),
    frame: optional(slot("frame")),
    range: optional(fact("frame", "fork-travel-range")),
  }),
  test({ fork, travel, options, set, frame, range }) {
    const end = readEnd(frame, range, "fork-travel-range");
    if (end.state === "unknown") return cannotTell(end.unknown);
    const has = set.state === "known" ? set : travel;
    const is = showQuantity(has.value, "length");
    if (end.state === "none") {
      return fails(
        `${fork.subject} has ${is} of travel, but ${end.part.subject} takes a rigid fork only: fit a rigid one.`,
        fork,
        [has, end.fact],
        swaps("fork", "frame"),
      );
    }
    if (end.state !== "known") return notApplicable("there is no frame to hold it");
    const allows = showInterval(end.fact.value, "length");
    if (inside(has.value, end.fact.value)) {
      return holds(`${fork.subject} has ${is} of travel, and ${end.part.subject} is made for ${allows}.`);
    }
    const can = options.state === "known" ? overlap([options.value, end.fact.value]) : undefined;
    const nearest = can && (has.value > can.greatest ? can.greatest : can.least);
    const setTo: readonly Repair[] =
      nearest === undefined
        ? []
        : [{ kind: "set-setting", slot: "fork", setting: "travel-set", value: millimetres(nearest) }];
    return fails(
      `${fork.subject} has ${is} of travel, but ${end.part.subject} is made for ${allows}: ${nearest === undefined ? "" : `have it set to ${millimetres(nearest)}, or `}fit a fork of ${allows}.`,
      fork,
      [has, end.fact],
      [...setTo, ...swaps("fork", "frame")],
    );
  },
  explanation:
    "The maker of a frame states the travel of the forks that it was tested with. More travel means a longer fork: the " +
    "steering grows slack, the cranks rise, and the head tube bears more than it was made for, which voids its warranty and " +
    "may break it. Less travel steepens the angles and lowers the cranks. Many forks can be set to another travel by " +
    "their maker's spacers or another air shaft, and then the build states what they are set to. A frame for rigid forks " +
    "only says none.",
  source: "common practice, no source; the frame maker's own range decides",
  caution: "A head tube that is overloaded by a long fork can tear off the frame.",
  examples: {
    holds: `
part frame example.fell "Fell" { fork-travel-range: 100 to 120 mm }
part fork example.fork "Fork 130" { travel: 130 mm; travel-options: 100 to 130 mm }

build example "Set to what the frame allows" {
  frame: example.fell
  fork: example.fork { travel-set: 120 mm }
}
`,
    fails: `
part frame example.fell "Fell" { fork-travel-range: 100 to 120 mm }
part fork example.fork "Fork 150" { travel: 150 mm; travel-options: none }

build example "A fork for a rougher frame" {
  frame: example.fell
  fork: example.fork
}
`,
  },
});
