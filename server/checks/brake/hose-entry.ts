import { setting, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { holderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

/** How a line runs, for a sentence. */
const runs: Readonly<Record<string, string>> = {
  external: "outside",
  internal: "inside",
  "through-headset": "through the headset",
  wireless: "nowhere",
};

export default defineCheck({
  code: "brake/hose-entry",
  title: "The brake's line runs where fork or frame has a way for it",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: (place) => ({
    line: slot(ofBrake(place.brake, "hose")),
    entry: setting(ofBrake(place.brake, "hose"), "entry"),
    ways: holderFact<readonly string[]>(place, "brakeRouting"),
  }),
  test({ line, entry, ways }, { brake, holder }) {
    const said = either(ways.value.map((way) => runs[way] ?? way));
    if (ways.value.includes(entry.value)) {
      return holds(`${line.subject} runs ${runs[entry.value]}, as ${ways.subject} has it.`);
    }
    const [first] = ways.value;
    return fails(
      `The build runs ${line.subject} ${runs[entry.value]} (entry: ${entry.value}), but ${ways.subject} has a way for it ${said} only: run it there.`,
      entry,
      [ways],
      [
        ...(first === undefined
          ? []
          : [{ kind: "set-setting", slot: ofBrake(brake, "hose"), setting: "entry", value: first } as const]),
        ...swaps(holder),
      ],
    );
  },
  explanation:
    "A fork or frame has guides along the outside for the brake's hose or cable, or a passage inside, or one through the " +
    "headset. Without guides a hose hangs loose and catches on the wheel; without a passage it cannot go inside, and no " +
    "holes are drilled. A hose inside is put in before anything closes its way, and is longer than it looks.",
  source: "common practice, no source",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-routing: internal, external }
part hose example.hose "Hose" { length: 1700 mm }

build example "Inside the leg" {
  fork: example.fork
  front-brake.hose: example.hose { entry: internal }
}
`,
    fails: `
part fork example.fork "Fork" { brake-routing: external }
part hose example.hose "Hose" { length: 1700 mm }

build example "No hole to go in" {
  fork: example.fork
  front-brake.hose: example.hose { entry: internal }
}
`,
  },
});
