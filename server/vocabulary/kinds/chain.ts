import { defineKind } from "../define.ts";
import { code, count, length, quantity, word, yesNo } from "../fields.ts";
import { closures } from "../words.ts";

/** A roller chain. */
export const chain = defineKind({
  name: "chain",
  noun: "a chain",
  description: "A roller chain of half-inch pitch.",
  caution: "A chain too short tears the drivetrain in the largest gear; a closure made wrongly parts under load.",
  fields: {
    speeds: count("Number of cogs it is made for.", { lowest: 1, highest: 14, essential: true, group: "Gearing" }),
    "drive-family": code("drive-family", "Roller and tooth family that chain, rings and cogs share.", {
      essential: true,
      group: "Fit",
    }),
    "outer-width": length("Width over the pins.", { group: "Fit", lowest: 4, highest: 12, example: "5.25 mm" }),
    "inner-width": length("Gap between the inner plates, which the teeth enter.", {
      group: "Fit",
      lowest: 1.5,
      highest: 6,
    }),
    "links-supplied": count(
      "Half-inch pitches as sold, before cutting, without a closure link; of a reel, all that is on it.",
      {
        group: "Fit",
        lowest: 20,
        highest: 10_000,
        example: "126",
      },
    ),
    closure: word(closures, "How its ends are joined.", { group: "Fit" }),
    directional: yesNo("Whether it has an outward side or a direction of travel.", { group: "Assembly" }),
    "half-link": yesNo("Whether every link is cranked, so that it closes at any count.", {
      group: "Fit",
      omitted: "none",
    }),
    "wear-limit": quantity("ratio", "Lengthening at which its maker says to replace it.", {
      group: "Limits",
      lowest: 0.2,
      highest: 2,
      example: "0.5 %",
    }),
  },
});
