import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/least-largest-cog",
  title: "The largest cog is large enough for the derailleur",
  severity: "warning",
  since: 1,
  needs: () => ({
    cassette: slot("drivetrain.cassette"),
    cogs: fact("drivetrain.cassette", "cogs"),
    limit: fact("drivetrain.rear-derailleur", "least-largest-cog"),
  }),
  test({ cassette, cogs, limit }) {
    const largest = Math.max(...cogs.value);
    const least = limit.value;
    if (largest >= least) {
      return holds(
        `Largest cog ${largest} t, and ${limit.subject} asks for at least ${least} t.`,
        (largest - least) / least,
      );
    }
    return fails(
      `Largest cog ${largest} t, but ${limit.subject} asks for a largest cog of at least ${least} t: fit a cassette that reaches ${least} t, or a derailleur made for ${largest} t.`,
      cassette,
      [cogs, limit],
      [
        ...swaps("drivetrain.cassette", "drivetrain.rear-derailleur"),
        { kind: "set-fact", slot: "drivetrain.rear-derailleur", fact: "least-largest-cog", value: `${largest} t` },
      ],
    );
  },
  explanation:
    "A derailleur for very wide cassettes moves its guide pulley steeply downward as it goes inward, to pass under a " +
    "large last cog. Under a cassette that stays small the same path carries the pulley ever farther from the teeth: " +
    "the gap grows from cog to cog and shifts come late and noisy, whatever the gap screw is set to. Makers of such " +
    "derailleurs state the fewest teeth that the largest cog may have. Nothing breaks, so this is a warning.",
  source: "common practice, no source; the limit is the derailleur maker's own figure",
  examples: {
    holds: `
part rear-derailleur example.steep "Steep" { least-largest-cog: 44 t }
part cassette example.wide "Wide 10-44" { cogs: 10-12-14-16-18-21-24-28-32-36-40-44 t }

build example "Largest cog large enough" {
  drivetrain {
    rear-derailleur: example.steep
    cassette: example.wide
  }
}
`,
    fails: `
part rear-derailleur example.steep "Steep" { least-largest-cog: 44 t }
part cassette example.narrow "Narrow 10-33" { cogs: 10-11-12-13-14-15-17-19-21-24-28-33 t }

build example "Largest cog too small" {
  drivetrain {
    rear-derailleur: example.steep
    cassette: example.narrow
  }
}
`,
  },
});
