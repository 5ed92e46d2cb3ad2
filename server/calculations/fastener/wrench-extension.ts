import { angle, length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, optionalInput } from "../define.ts";
import { cosine } from "../shared/angles.ts";
import { notBetween, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** What a torque wrench has to show with an extension on it. */
export default defineCalculation({
  name: "wrench-extension",
  title: "Torque wrench with an extension",
  description: "Setting of a torque wrench whose drive stands off the bolt by an extension.",
  inputs: {
    "torque-wanted": input(quantity("torque", "Torque wanted at the bolt.", { lowest: 0.01 })),
    "wrench-length": input(length("From the middle of the wrench's grip to its drive.")),
    extension: input(length("From the drive to the bolt.")),
    "extension-angle": optionalInput(
      angle("Angle between extension and wrench, 0 in line and 90 square; in line when left out."),
    ),
  },
  results: { "wrench-setting": { unit: "N·m", digits: 1, description: "What the wrench is set to." } },
  formula: "setting = wanted × wrench length ÷ (wrench length + extension × cos angle)",
  source: "statics of a lever, re-derived; common practice",
  compute(given, working) {
    const { "torque-wanted": wanted, "wrench-length": wrench, extension, "extension-angle": turned = 0 } = given;
    const wrong =
      notPositive({ "torque-wanted": wanted, "wrench-length": wrench, extension }) ??
      notBetween(-180.000001, 180.000001, "°", { "extension-angle": turned });
    if (wrong) return wrong;
    const lever = wrench + extension * cosine(turned);
    if (lever <= 1e-6) return impossible("The extension brings the bolt to the hand: the wrench has no lever left.");
    const set = (wanted * wrench) / lever;
    working?.step(
      `${say(wanted, "N·m")} × ${say(wrench, "mm")} ÷ (${say(wrench, "mm")} + ${say(extension, "mm")} × cos ${say(turned, "°")}) = ${say(set, "N·m")}`,
    );
    return { "wrench-setting": set };
  },
  examples: [
    {
      inputs: { "torque-wanted": 40, "wrench-length": 200, extension: 50 },
      results: { "wrench-setting": 32 },
      source: "worked by hand: 40 × 200 ÷ 250",
    },
    {
      inputs: { "torque-wanted": 12, "wrench-length": 300, extension: 40, "extension-angle": 90 },
      results: { "wrench-setting": 12 },
      source: "by hand: square to the wrench an extension changes nothing",
    },
  ],
});
