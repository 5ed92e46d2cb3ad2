import { fails, holds } from "../../checks/define.ts";
import type { Known } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { counted, sideText, spokesText, wheelSides } from "../spokes.ts";
import { least, toleranceAt } from "../tolerance.ts";

export default defineComparison({
  code: "record/slack-spoke",
  title: "No spoke is slack",
  severity: "error",
  safety: true,
  restsOn: "record",
  instances: wheelSides,
  needs: () => ({}),
  test(measured: Known<readonly number[]>, _facts, { path, side }) {
    const limit = least(toleranceAt(path, "spoke"));
    const slack = measured.value.flatMap((tension, index) => (greaterThan(tension, limit) ? [] : [index + 1]));
    const slackest = Math.min(...measured.value);
    const [is, bound] = showPair(slackest, limit, "force");
    const expected = `each above ${bound}`;
    if (slack.length === 0) {
      return judged(holds(`The slackest spoke of the ${sideText(side)} has ${is}, more than ${bound}.`), expected);
    }
    return judged(
      fails(
        `${spokesText(slack)} of the ${sideText(side)}, ${counted}, ${slack.length === 1 ? "has" : "have"} ${slack.length === 1 ? is : `${is} and up`}, and none may have ${bound} or less: tighten and true the wheel before it is ridden.`,
        measured,
        [],
      ),
      expected,
    );
  },
  explanation:
    "A spoke that goes slack when the wheel stands on it works back and forth in its hole, unscrews its nipple and breaks. " +
    "A standard for wheels lets no spoke have 150 N or less. Such a spoke is tightened with its neighbours, and the wheel " +
    "trued again, since one spoke alone pulls the rim out of line.",
  source: "JIS D 9301:2019 as described by the Japan Bicycle Promotion Institute: no spoke at 150 N or less",
  caution: "A wheel with a slack spoke can collapse while it is ridden.",
  examples: {
    holds: `
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  front-wheel.spokes: example.spokes
}

record "A-1" of example {
  front-wheel.tension.non-drive-side: 620, 650, 600 N
}
`,
    fails: `
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  front-wheel.spokes: example.spokes
}

record "A-1" of example {
  front-wheel.tension.non-drive-side: 620, 150, 600 N
}
`,
  },
});
