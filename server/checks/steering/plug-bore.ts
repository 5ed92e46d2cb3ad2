import { fact, slot } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/plug-bore",
  title: "The plug fits the inside of the steerer",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    plug: slot("cockpit.steerer-plug"),
    least: fact("cockpit.steerer-plug", "least-bore"),
    greatest: fact("cockpit.steerer-plug", "greatest-bore"),
    bore: fact("fork", "steerer-bore"),
  }),
  test({ plug, least, greatest, bore }) {
    const range = { least: least.value, greatest: greatest.value };
    const [fits, is] = [showInterval(range, "length"), showQuantity(bore.value, "length")];
    if (inside(bore.value, range))
      return holds(`${plug.subject} fits bores of ${fits}, and ${bore.subject} is ${is} inside.`);
    return fails(
      `${plug.subject} fits bores of ${fits}, but the steerer of ${bore.subject} is ${is} inside: fit a plug for ${is}.`,
      plug,
      [least, greatest, bore],
      swaps("cockpit.steerer-plug", "fork"),
    );
  },
  explanation:
    "An expanding plug grows by a millimetre or two as it is tightened, and a star nut bites in one bore only. Steerers of " +
    "one outside diameter have walls of different thickness: steel ones are wide inside, aluminium and carbon narrower, and " +
    "some differ from batch to batch. A plug that is too small turns and slides up when the cap is tightened, so that the " +
    "bearings stay loose. One that is too large splits the steerer, or does not go in.",
  source: "common practice, no source; the makers' own figures decide",
  caution: "A plug that slides leaves play in the steering; one that is forced can split a carbon steerer.",
  examples: {
    holds: `
part fork example.fork "Fork" { steerer-bore: 24 mm }
part steerer-plug example.plug "Plug" { least-bore: 23 mm; greatest-bore: 25 mm }

build example "A plug for the bore" {
  fork: example.fork
  cockpit.steerer-plug: example.plug
}
`,
    fails: `
part fork example.fork "Steel fork" { steerer-bore: 25.4 mm }
part steerer-plug example.plug "Plug" { least-bore: 22 mm; greatest-bore: 24 mm }

build example "A plug that never grips" {
  fork: example.fork
  cockpit.steerer-plug: example.plug
}
`,
  },
});
