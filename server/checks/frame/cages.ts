import type { Installed } from "../../model/assembly.ts";
import { label } from "../../model/facts.ts";
import { everyFact, fact, type Known, optional, slot, type Unknown } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { extrasAssembly } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { asList, type OneOrMoreCodes, showCode, showCodes } from "../shared/codes.ts";
import { readEnd } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "frame/cages",
  title: "Cages and other extras have the mounts they need",
  severity: "error",
  since: 1,
  needs: () => ({
    mounts: everyFact("mounts"),
    frame: optional(slot("frame")),
    onFrame: optional(fact("frame", "accessory-mounts")),
    fork: optional(slot("fork")),
    onFork: optional(fact("fork", "accessory-mounts")),
  }),
  test({ mounts, frame, onFrame, fork, onFork }) {
    const extras = mounts.value.filter(({ slot: path }) => path.startsWith(`${extrasAssembly}.`));
    const asking = extras.filter(({ fact: needs }) => needs.state === "known");
    if (asking.length === 0) return notApplicable("no extra needs a mount");
    const ends = [readEnd(frame, onFrame, "accessory-mounts"), readEnd(fork, onFork, "accessory-mounts")];
    const offers = ends.flatMap((end) => (end.state === "known" ? [...asList(end.fact.value)] : []));
    const unknown: Unknown[] = [];
    const held: string[] = [];
    for (const { slot: path, installed, fact: needs } of asking) {
      if (needs.state !== "known") continue;
      const wanted = asList(needs.value as unknown as OneOrMoreCodes);
      const lacking = wanted.filter((code: ResolvedCode) => !offers.some((mount) => mate(code, mount)));
      if (lacking.length === 0) {
        held.push(`${label(installed)} on ${showCodes(wanted)}`);
        continue;
      }
      const open = unknowns(...ends.map((end) => (end.state === "unknown" ? end.unknown : undefined)));
      if (open.length > 0) {
        unknown.push(...open);
        continue;
      }
      const at: Known<Installed> = {
        state: "known",
        value: installed,
        written: installed.name,
        path,
        subject: label(installed),
        place: installed.place,
      };
      return fails(
        `${at.subject} is fixed to ${both(lacking.map(showCode))}, but frame and fork offer ${offers.length > 0 ? both([...new Set(offers.map(showCode))]) : "no mounts"}: fit one for a mount that is there, or with straps.`,
        at,
        [
          needs,
          ...ends.flatMap((end): readonly Known[] => (end.state === "known" || end.state === "none" ? [end.fact] : [])),
        ],
        [
          { kind: "swap-part", slot: path },
          { kind: "leave-empty", slot: path },
        ],
      );
    }
    if (unknown.length > 0) return cannotTell(...unknowns(...unknown));
    return holds(`${both(held)}.`);
  },
  explanation:
    "Bottle cages and cargo cages are held by two or three bolts at a spacing that all makers share, into bosses of the frame or " +
    "the fork's legs. A frame has bosses for so many, and some forks none. A cargo cage needs three in a row. Without a boss " +
    "a cage is held by straps made for it. Only whether there is such a mount is asked here, not how many of them there are.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.fell "Fell" { accessory-mounts: cage-64 }
part fork example.fork "Fork" { accessory-mounts: cage-3x64 }
part accessory example.cargo "Cargo cage" { mounts: cage-3x64 }

build example "A cargo cage on the fork" {
  frame: example.fell
  fork: example.fork
  extras.cage: example.cargo
}
`,
    fails: `
part frame example.fell "Fell" { accessory-mounts: cage-64 }
part fork example.fork "Fork" { accessory-mounts: none }
part accessory example.cargo "Cargo cage" { mounts: cage-3x64 }

build example "Two bolts for three" {
  frame: example.fell
  fork: example.fork
  extras.cage: example.cargo
}
`,
  },
});
