import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/largest-cog",
  title: "The derailleur clears the largest cog",
  severity: "error",
  since: 1,
  needs: () => ({
    cassette: slot("drivetrain.cassette"),
    cogs: fact("drivetrain.cassette", "cogs"),
    limit: fact("drivetrain.rear-derailleur", "largest-cog"),
  }),
  test({ cassette, cogs, limit }) {
    const largest = Math.max(...cogs.value);
    const most = limit.value;
    if (largest <= most) {
      return holds(`Largest cog ${largest} t, and ${limit.subject} takes up to ${most} t.`, (most - largest) / most);
    }
    return fails(
      `Largest cog ${largest} t, but ${limit.subject} takes at most ${most} t: fit a cassette of ${most} t or less, or a derailleur rated for ${largest} t.`,
      cassette,
      [cogs, limit],
      [
        ...swaps("drivetrain.rear-derailleur", "drivetrain.cassette"),
        { kind: "set-fact", slot: "drivetrain.rear-derailleur", fact: "largest-cog", value: `${largest} t` },
      ],
    );
  },
  explanation:
    "The guide pulley hangs just under the cogs. A cog larger than the derailleur is made for meets the pulley before " +
    "the chain is on it: the shift into the lowest gear grinds, refuses, or jams the chain between pulley and cog. " +
    "The screw that sets the chain gap moves the pulley by a few millimetres only, and turned all the way in it spoils " +
    "the shifts on the small cogs. The maker's figure is the largest cog that the geometry of the arm allows. It is a " +
    "limit of its own: a cage long enough for the slack says nothing about it.",
  source: "common practice, no source; the limit is the derailleur maker's own figure",
  examples: {
    holds: `
part rear-derailleur example.arm "Arm 46" { largest-cog: 46 t }
part cassette example.wide "Wide 11-46" { cogs: 11-13-15-17-19-22-25-28-32-37-46 t }

build example "Largest cog just inside" {
  drivetrain {
    rear-derailleur: example.arm
    cassette: example.wide
  }
}
`,
    fails: `
part rear-derailleur example.arm "Arm 42" { largest-cog: 42 t }
part cassette example.wide "Wide 11-46" { cogs: 11-13-15-17-19-22-25-28-32-37-46 t }

build example "Largest cog too large" {
  drivetrain {
    rear-derailleur: example.arm
    cassette: example.wide
  }
}
`,
  },
});
