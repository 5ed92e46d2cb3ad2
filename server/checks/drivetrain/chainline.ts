import { fact } from "../../model/need.ts";
import { inside, isSingle } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { frontLine, frontLineNeeds, suitableChainlines } from "../shared/front-line.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/chainline",
  title: "The cranks give the chainline that the frame is designed for",
  severity: "warning",
  since: 1,
  needs: () => ({ ...frontLineNeeds, design: fact("frame", "chainline") }),
  test(facts) {
    const { design } = facts;
    const front = frontLine(facts);
    if (front.state === "unknown") return cannotTell(front);
    if (front.state === "none") return notApplicable("no chainline is stated for the cranks");
    const { line, part } = front;
    const single = isSingle(design.value);
    const allowed = suitableChainlines(design.value);
    const [stands, designed] = single
      ? showPair(line.value, design.value.least, "length")
      : [showQuantity(line.value, "length"), showInterval(design.value, "length")];
    if (inside(line.value, allowed)) {
      return holds(`Chainline ${stands} (${line.subject}), and ${design.subject} is designed for ${designed}.`);
    }
    const way = line.value > allowed.greatest ? "too far out" : "too far in";
    return fails(
      `Chainline ${stands} (${line.subject}), but ${design.subject} is designed for ${designed}: the rings stand ${way}. Fit cranks or a ring with another offset that give ${designed}.`,
      part,
      [line, design],
      swaps(front.slot),
    );
  },
  explanation:
    "The chainline is the distance from the bike's centre plane to the ring, midway between two, or to the middle one of " +
    "three. A frame is designed for one or for a narrow span: farther in, the ring comes near the chainstay; farther out, " +
    "the chain runs askew in the low gears, and drops when pedalled backward. It is compared with the frame's and the " +
    "crank maker's own figures and not with the middle of the cassette, because single rings normally stand some " +
    "millimetres farther out than that. Where the frame gives one figure, cranks within a millimetre of it pass.",
  source:
    "definition as in the Wikipedia article Chainline; the millimetre around a single figure is common practice, no source",
  examples: {
    holds: `
part frame example.frame "Frame" { chainline: 43.5 to 45 mm }
part crankset example.crank "Crank" { chainline: 44.5 mm }

build example "As designed" {
  frame: example.frame
  drivetrain.crankset: example.crank
}
`,
    fails: `
part frame example.frame "Frame" { chainline: 43.5 to 45 mm }
part crankset example.crank "Crank" { chainline: 50 mm }

build example "Cranks for a wider rear end" {
  frame: example.frame
  drivetrain.crankset: example.crank
}
`,
  },
});
