import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/smallest-cog",
  title: "The derailleur reaches the smallest cog",
  severity: "error",
  since: 1,
  needs: () => ({
    cassette: slot("drivetrain.cassette"),
    cogs: fact("drivetrain.cassette", "cogs"),
    limit: fact("drivetrain.rear-derailleur", "smallest-cog"),
  }),
  test({ cassette, cogs, limit }) {
    const smallest = Math.min(...cogs.value);
    const fewest = limit.value;
    if (smallest >= fewest) {
      return holds(
        `Smallest cog ${smallest} t, and ${limit.subject} reaches down to ${fewest} t.`,
        (smallest - fewest) / fewest,
      );
    }
    return fails(
      `Smallest cog ${smallest} t, but ${limit.subject} reaches no cog of fewer than ${fewest} t: fit a cassette that starts at ${fewest} t or more, or a derailleur rated down to ${smallest} t.`,
      cassette,
      [cogs, limit],
      [
        ...swaps("drivetrain.cassette", "drivetrain.rear-derailleur"),
        { kind: "set-fact", slot: "drivetrain.rear-derailleur", fact: "smallest-cog", value: `${smallest} t` },
      ],
    );
  },
  explanation:
    "On the smallest cog the guide pulley is farthest from the teeth, and only a short piece of chain still wraps them. " +
    "A cog smaller than the derailleur is made for leaves so large a gap that the shift comes late, and so little wrap " +
    "that the chain can skip under load. The maker's figure says down to which cog the path of the pulley follows the " +
    "cogs. A derailleur whose maker gives no such figure says none there.",
  source: "common practice, no source; the limit is the derailleur maker's own figure",
  examples: {
    holds: `
part rear-derailleur example.arm "Arm" { smallest-cog: 11 t }
part cassette example.close "Close 11-30" { cogs: 11-12-13-14-15-17-19-21-24-27-30 t }

build example "Smallest cog just inside" {
  drivetrain {
    rear-derailleur: example.arm
    cassette: example.close
  }
}
`,
    fails: `
part rear-derailleur example.arm "Arm" { smallest-cog: 11 t }
part cassette example.wide "Wide 9-45" { cogs: 9-11-13-15-17-20-24-28-33-39-45 t }

build example "Smallest cog too small" {
  drivetrain {
    rear-derailleur: example.arm
    cassette: example.wide
  }
}
`,
  },
});
