import { ofWheel } from "../../calculations/shared/wheels.ts";
import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { fact, type Known, optional, setting } from "../../model/need.ts";
import { defineComparison, judged, notMeasured } from "../define.ts";
import { sideText, wheelSides } from "../spokes.ts";

/** Shares of a wheel's spokes that one side can have. */
const sharesOf: Readonly<Record<string, readonly number[]>> = {
  even: [1 / 2],
  "two-to-one": [1 / 3, 2 / 3],
  paired: [1 / 2, 1 / 3, 2 / 3],
  "as-drilled": [1 / 2, 1 / 3, 2 / 3],
};

export default defineComparison({
  code: "record/spoke-count",
  title: "Every spoke of the side was measured, and none twice",
  severity: "warning",
  restsOn: "spec",
  instances: wheelSides,
  needs: ({ wheel }) => ({
    holes: optional(fact(ofWheel(wheel, "hub"), "spoke-holes")),
    lacing: optional(setting(ofWheel(wheel, "spokes"), "lacing")),
  }),
  test(measured: Known<readonly number[]>, { holes, lacing }, { path, side }) {
    const count = measured.value.length;
    const where = sideText(side);
    if (holes.state === "unknown") return judged(cannotTell(holes));
    if (holes.state === "none") return judged(notApplicable("the hub has no spoke holes"));
    const all = holes.value;
    const shares = (lacing.state === "known" ? sharesOf[lacing.value] : undefined) ?? sharesOf.even ?? [];
    const possible = shares.map((share) => share * all).filter(Number.isInteger);
    const expected = possible.length === 1 ? `${possible[0]} spokes` : undefined;
    if (possible.includes(count)) return judged(holds(`All ${count} spokes of the ${where} were measured.`), expected);
    // Where nobody stated the lacing, one side may have twice as many as the other.
    const most = lacing.state === "known" ? Math.max(0, ...possible) : Math.floor((all * 2) / 3);
    if (count > most) {
      const each = expected === undefined ? `at most ${most}` : `${possible[0]}`;
      return judged(
        fails(
          `${count} tensions are written for the ${where}, but ${holes.subject} has ${all} spoke holes, ${each} on a side: one is written twice, or belongs to the other side. Count from the valve hole again.`,
          measured,
          [holes],
        ),
        expected,
      );
    }
    const least = possible.find((one) => one > count);
    if (least === undefined) return judged(lacing.state === "unknown" ? cannotTell(lacing) : notApplicable("as laced"));
    const left = least - count;
    const what = `the ${left === 1 ? "tension" : "tensions"} of ${left} of the ${least} spokes of the ${where} (${path}), of which nothing can be said; where one was left out, those after it stand one place further round the wheel than they are counted`;
    return judged(cannotTell({ state: "unknown", missing: [notMeasured(path, what, measured)] }), expected);
  },
  explanation:
    "A wheel is judged by all its spokes. A reading that was left out says nothing of its spoke, which may be the slack " +
    "one, and moves the place of every one behind it; a reading written twice does the same. Where only some were " +
    "measured on purpose, the others stay unknown.",
  source: "definition",
  examples: {
    holds: `
part hub example.hub "Rear" { spoke-holes: 12 }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel { hub: example.hub; spokes: example.spokes { lacing: even } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1000, 1040, 980, 1010, 990, 1000 N
}
`,
    fails: `
part hub example.hub "Rear" { spoke-holes: 12 }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Wheel" {
  rear-wheel { hub: example.hub; spokes: example.spokes { lacing: even } }
}

record "A-1" of example {
  rear-wheel.tension.drive-side: 1000, 1040, 980, 980, 1010, 990, 1000 N
}
`,
  },
});
