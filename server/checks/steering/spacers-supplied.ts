import { fact, setting, slot } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/spacers-supplied",
  title: "There are spacers enough for the stack that is planned",
  severity: "warning",
  since: 1,
  needs: () => ({
    spacers: slot("cockpit.spacers"),
    height: fact("cockpit.spacers", "total-height"),
    below: setting("cockpit.stem", "spacers-below"),
    above: setting("cockpit.stem", "spacers-above"),
  }),
  test({ spacers, height, below, above }) {
    const [wants, has] = showPair(below.value + above.value, height.value, "length");
    if (atLeast(height.value, below.value + above.value)) {
      return holds(`${wants} of spacers are planned, and ${spacers.subject} are ${has} together.`);
    }
    return fails(
      `${wants} of spacers are planned, ${showPair(below.value, above.value, "length")[0]} under and ${showPair(below.value, above.value, "length")[1]} over the stem, but ${spacers.subject} are ${has} together: add a set, or plan with less.`,
      spacers,
      [below, above, height],
      swaps("cockpit.spacers"),
    );
  },
  explanation:
    "Where the workshop keeps spacers as a part of their own, that part says how high they are all together. The build " +
    "says how much stands under and over the stem. With too few rings the bike cannot be put together as planned, and the " +
    "steerer would be cut to a length that nothing holds. Rings of other makers can be mixed as long as they are flat and " +
    "of the steerer's diameter. Rings that are left over go over the stem or into the drawer.",
  source: "common practice, no source",
  examples: {
    holds: `
part stem example.stem "Stem" { length: 80 mm }
part steerer-spacers example.rings "Rings" { total-height: 25 mm }

build example "Rings for above and below" {
  cockpit {
    stem: example.stem { spacers-below: 20 mm; spacers-above: 5 mm }
    spacers: example.rings
  }
}
`,
    fails: `
part stem example.stem "Stem" { length: 80 mm }
part steerer-spacers example.rings "Rings" { total-height: 20 mm }

build example "One ring short" {
  cockpit {
    stem: example.stem { spacers-below: 20 mm; spacers-above: 5 mm }
    spacers: example.rings
  }
}
`,
  },
});
