import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-sprocket",
  title: "The sprocket is large enough for the belt",
  severity: "error",
  since: 1,
  needs: () => ({
    sprocket: slot("drivetrain.cassette"),
    cogs: fact("drivetrain.cassette", "cogs"),
    least: fact("drivetrain.chain", "smallest-sprocket"),
  }),
  test({ sprocket, cogs, least }) {
    const teeth = Math.min(...cogs.value);
    const fewest = least.value;
    if (teeth >= fewest) {
      return holds(
        `Sprocket ${teeth} t, and ${least.subject} runs round ${fewest} t or more.`,
        (teeth - fewest) / fewest,
      );
    }
    return fails(
      `Sprocket ${teeth} t, but ${least.subject} runs round no fewer than ${fewest} t: fit a sprocket of ${fewest} t or more.`,
      sprocket,
      [cogs, least],
      swaps("drivetrain.cassette", "drivetrain.chain"),
    );
  },
  explanation:
    "The cords inside a belt break when they are bent round too small a wheel, and few teeth in mesh let it jump. Its " +
    "maker states the fewest teeth of a sprocket it may run round. A smaller one seems to work and shortens the belt's " +
    "life to a fraction.",
  source: "common practice, no source; the limit is the belt maker's own figure",
  examples: {
    holds: `
part belt example.belt "Belt" { smallest-sprocket: 19 t }
part sprocket example.cog "Sprocket 22" { cogs: 22 t }

build example "Large enough" {
  drivetrain {
    chain: example.belt
    cassette: example.cog
  }
}
`,
    fails: `
part belt example.belt "Belt" { smallest-sprocket: 19 t }
part sprocket example.cog "Sprocket 18" { cogs: 18 t }

build example "Too small" {
  drivetrain {
    chain: example.belt
    cassette: example.cog
  }
}
`,
  },
});
