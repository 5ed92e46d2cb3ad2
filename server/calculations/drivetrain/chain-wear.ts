import { count, length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, optionalInput } from "../define.ts";
import { chainPitch } from "../shared/chain-geometry.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How worn a chain is by a rule. */
export default defineCalculation({
  name: "chain-wear",
  title: "Chain wear",
  description: "Length of a stretch of chain at the limit of wear, and the wear that a measured stretch shows.",
  inputs: {
    pitches: input(count("Half-inch pitches measured over, pin to pin.", { lowest: 1, highest: 300 })),
    "wear-limit": optionalInput(
      quantity("ratio", "Lengthening at which the chain is replaced.", { lowest: 0.1, highest: 5 }),
    ),
    measured: optionalInput(length("Length of the stretch, pin to pin, taut.")),
  },
  results: {
    "chain-length-new": { unit: "mm", digits: 2, description: "Length of the stretch when new." },
    "chain-length-at-limit": { unit: "mm", digits: 2, description: "Length of the stretch at the limit of wear." },
    "chain-wear": { unit: "%", digits: 2, description: "Lengthening of the measured stretch." },
  },
  formula: "new = pitches × 12.7 mm; at the limit × (1 + limit); wear = measured ÷ new − 1",
  source: "definition; limits of 0.5 and 0.75 %: common practice, no source",
  compute({ pitches, "wear-limit": limit, measured }, working) {
    const wrong = notPositive({ pitches, "wear-limit": limit, measured });
    if (wrong) return wrong;
    const fresh = pitches * chainPitch;
    working?.step(`New: ${pitches} × ${chainPitch} mm = ${say(fresh, "mm")}`);
    const atLimit = limit === undefined ? undefined : fresh * (1 + limit / 100);
    if (atLimit !== undefined) {
      working?.step(`At the limit: ${say(fresh, "mm")} × (1 + ${say(limit as number, "%")}) = ${say(atLimit, "mm")}`);
    }
    const wear = measured === undefined ? undefined : 100 * (measured / fresh - 1);
    if (wear !== undefined) {
      working?.step(`Wear: ${say(measured as number, "mm")} ÷ ${say(fresh, "mm")} − 1 = ${say(wear, "%")}`);
    }
    return {
      "chain-length-new": fresh,
      ...(atLimit === undefined ? {} : { "chain-length-at-limit": atLimit }),
      ...(wear === undefined ? {} : { "chain-wear": wear }),
    };
  },
  examples: [
    {
      inputs: { pitches: 24, "wear-limit": 0.5 },
      results: { "chain-length-new": 304.8, "chain-length-at-limit": 306.324 },
      source: "common practice, no source: 0.5 % over twelve inches",
    },
    {
      inputs: { pitches: 20, "wear-limit": 0.75, measured: 255.27 },
      results: { "chain-length-at-limit": 255.905, "chain-wear": 0.5 },
      source: "common practice, no source: 0.75 % over ten inches; 254 × 1.005 by hand",
    },
  ],
});
