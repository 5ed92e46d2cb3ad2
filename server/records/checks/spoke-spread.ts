import { type UnevenSpoke, unevenSpokes } from "../../calculations/shared/uneven-spokes.ts";
import { calculationByName } from "../../calculations/table.ts";
import { fails, holds, notApplicable } from "../../checks/define.ts";
import { both } from "../../checks/shared/sentence.ts";
import type { Known } from "../../model/need.ts";
import { showQuantity } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { counted, sideText, wheelSides } from "../spokes.ts";
import { shareText, toleranceAt } from "../tolerance.ts";

const spread = calculationByName("tension-spread");

/** How far a spoke is from what the others of its side average, as a share. */
function apart(tension: number, mean: number, count: number): number {
  const others = (mean * count - tension) / (count - 1);
  return Math.abs(tension - others) / others;
}

export default defineComparison({
  code: "record/spoke-spread",
  title: "The spokes of a side are alike in tension",
  severity: "warning",
  safety: true,
  restsOn: "record",
  instances: wheelSides,
  needs: () => ({}),
  test(measured: Known<readonly number[]>, _facts, { path, side }) {
    const tensions = measured.value;
    if (tensions.length < 2) return judged(notApplicable("one spoke alone has no others to be compared with"));
    const limit = toleranceAt(path, "spread").share ?? 0;
    const good = toleranceAt(path, "good").share ?? 0;
    const { mean, uneven, evenMean } = unevenSpokes(tensions, limit);
    const average = showQuantity(mean, "force");
    if (uneven.length > 0) {
      const others = tensions.length - uneven.length;
      const rest = `the ${showQuantity(evenMean, "force")} ${others === 1 ? "of the other one" : `that the other ${others} average`}`;
      const [only] = uneven;
      const off = ({ tension }: UnevenSpoke): string => {
        const share = tension / evenMean - 1;
        return `${shareText(share)} ${share < 0 ? "below" : "above"}`;
      };
      const each = uneven.map((one) => `${one.position} (${showQuantity(one.tension, "force")}, ${off(one)})`);
      const said =
        uneven.length === 1 && only
          ? `Spoke ${only.position} of the ${sideText(side)} has ${showQuantity(only.tension, "force")}, ${off(only)} ${rest}`
          : `Spokes ${both(each)} of the ${sideText(side)} differ from ${rest}`;
      return judged(
        fails(
          `${said}; all ${tensions.length} average ${average}, and they are ${counted}. Up to ${shareText(limit)} either way is borne: look for a damaged spoke, nipple or rim hole, then true the wheel by tension.`,
          measured,
          [],
        ),
        `${showQuantity(evenMean, "force")} ± ${shareText(limit)}`,
      );
    }
    const furthest = Math.max(...tensions.map((tension) => Math.abs(tension - mean))) / mean;
    const isGood = tensions.every((tension) => apart(tension, mean, tensions.length) <= good);
    const remark = !isGood ? `; good work is within ${shareText(good)} of what the others average` : "";
    return judged(
      holds(
        `The ${tensions.length} spokes of the ${sideText(side)} average ${average}, and the furthest is ${shareText(furthest)} off${remark}.`,
        (limit - furthest) / limit,
      ),
      `${average} ± ${shareText(limit)}`,
    );
  },
  working(measured: Known<readonly number[]>, _facts, { path }, working) {
    const tolerance = 100 * (toleranceAt(path, "spread").share ?? 0);
    spread?.compute({ tensions: measured.value, "spread-tolerance": tolerance }, working);
  },
  explanation:
    "A wheel is as strong as its slackest spoke: that one loosens, and its neighbours carry what it does not and break. " +
    "Each spoke is held against what the others of its side average, so that one bad spoke cannot hide in a mean that it " +
    "draws down itself. Within 10 % is good work, and 20 % is borne. A spoke that will not come right has a damaged " +
    "thread or nipple, or pulls a rim that is bent.",
  source: "common practice, no source",
  caution: "A slack spoke lets its neighbours break, and a wheel that loses several can collapse while it is ridden.",
  examples: {
    holds: `
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel.spokes: example.spokes
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1000, 1040, 980, 1010, 960, 1020, 990, 1000 N
}
`,
    fails: `
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel.spokes: example.spokes
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1000, 1040, 980, 780, 960, 1020, 990, 1010 N
}
`,
  },
});
