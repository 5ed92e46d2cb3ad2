import { fact } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";

export default defineCheck({
  code: "frame/motor-not-covered",
  title: "A motor is outside what is checked",
  severity: "information",
  since: 1,
  needs: () => ({ motor: fact("frame", "motor") }),
  test({ motor }) {
    if (!motor.value) return holds(`${motor.subject} holds no motor.`);
    return fails(
      `${motor.subject} holds a motor. Nothing here says whether motor, its battery, its wiring and its software fit or are legal; what is checked is the rest of the bicycle. Follow the motor maker's instructions and the law where it is ridden.`,
      motor,
      [],
    );
  },
  explanation:
    "Bicycles with a motor have parts that are approved only as a set: motor, battery, display, sensors, often the chain and " +
    "brakes as well. What fits them is decided by their maker and by law, and nothing of it is known here. The rest of the " +
    "bicycle is checked as any other: its wheels, brakes, steering and seat. Mass limits count the heavier bicycle. Parts " +
    "named by the motor's maker are not exchanged for others because they pass a check here.",
  source: "common practice, no source",
  caution: "A changed motor or battery can burn, and may make the bicycle unlawful to ride.",
  examples: {
    holds: `
part frame example.fell "Fell" { motor: no }

build example "No motor" {
  frame: example.fell
}
`,
    fails: `
part frame example.drive "Drive" { motor: yes }

build example "A frame for a motor" {
  frame: example.drive
}
`,
  },
});
