import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking } from "../define.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { sweepToe } from "../shared/toe-sweep.ts";

/** Room between the front pedal and the steered front wheel. */
export default defineCalculation({
  name: "toe-clearance",
  title: "Toe clearance",
  description:
    "Least distance from the middle of a pedal's axle forward, parallel to the centre plane, to the tyre, over every angle of steering and of the cranks; the tyre swings forward as it swings out, so the straight-ahead gap is given beside it.",
  inputs: {
    "front-axle-forward": input(length("Front axle in front of the crank axis, along the ground.")),
    "bottom-bracket-drop": input(
      length("How far the crank axis lies below the front axle.", { lowest: -200, highest: 300 }),
    ),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.")),
    "fork-offset": input(length("Offset of the axle, square to the steering axis.", { lowest: -100, highest: 300 })),
    "wheel-radius": input(length("Radius of the front wheel over its tyre, or over its mudguard.")),
    "tyre-width": input(length("Width of the tyre, or of the mudguard.")),
    "crank-length": input(length("From the middle of the spindle to the middle of the pedal axle.")),
    "pedal-lateral": input(length("From the centre plane to the middle of the pedal.")),
  },
  results: {
    "toe-clearance": { unit: "mm", digits: 1, description: "Least distance from the pedal axle to the swept tyre." },
    "toe-clearance-level": {
      unit: "mm",
      digits: 1,
      description: "The least distance over every angle of steering, with the crank level forward.",
    },
    "toe-clearance-straight": {
      unit: "mm",
      digits: 1,
      description: "Gap on the centre plane with the wheel straight and the crank level; for comparison only.",
    },
    "toe-steering-angle": { unit: "°", digits: 0, description: "Steering angle at which the least distance occurs." },
    "toe-crank-angle": { unit: "°", digits: 0, description: "Crank angle above level forward at which it occurs." },
  },
  formula:
    "the tyre is a torus turned about the steering axis; the least of tyre − pedal, both at the pedal's height and its distance from the centre plane. Straight: √(front centre² − drop²) − √(radius² − drop²) − crank",
  source:
    "what is measured: 16 CFR 1512.17(d) and JIS D 9301:2019 clause 5.6.2; the sweep is solid geometry, re-derived and solved by numbers",
  compute(given, working) {
    const { "head-angle": headAngle, "fork-offset": offset, "wheel-radius": radius, "tyre-width": width } = given;
    const { "crank-length": crank, "pedal-lateral": lateral, "bottom-bracket-drop": drop } = given;
    const forward = given["front-axle-forward"];
    const wrong =
      notPositive({
        "front-axle-forward": forward,
        "wheel-radius": radius,
        "tyre-width": width,
        "crank-length": crank,
      }) ??
      negative({ "pedal-lateral": lateral }) ??
      notFinite({ "bottom-bracket-drop": drop, "fork-offset": offset }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    if (width >= radius) return impossible("The tyre is wider than the wheel is high.");
    if (Math.abs(drop) >= radius) return impossible("The crank axis does not lie at the height of the front wheel.");
    const straight = forward - Math.sqrt(radius ** 2 - drop ** 2) - crank;
    working?.step(
      `Straight ahead: ${say(forward, "mm")} − √(${say(radius)}² − ${say(Math.abs(drop))}²) − ${say(crank, "mm")} = ${say(straight, "mm")}`,
    );
    const swept = sweepToe({ forward, drop, headAngle, offset, radius, width, crank, lateral });
    const level = sweepToe({ forward, drop, headAngle, offset, radius, width, crank, lateral }, true);
    if (!swept) {
      return impossible(`At ${say(lateral, "mm")} from the centre plane the pedal never comes behind the tyre.`);
    }
    working?.step(
      `Swept: least ${say(swept.clearance, "mm", 1)} at ${say(lateral, "mm")} from the centre plane, steered ${say(swept.steering, "°", 1)}, crank ${say(swept.crankAngle, "°", 1)} above level`,
    );
    if (level) working?.step(`With the crank level: ${say(level.clearance, "mm", 1)}`);
    return {
      "toe-clearance": swept.clearance,
      ...(level ? { "toe-clearance-level": level.clearance } : {}),
      "toe-clearance-straight": straight,
      "toe-steering-angle": swept.steering,
      "toe-crank-angle": swept.crankAngle,
    };
  },
  inBuild: [
    {
      assembly: "geometry",
      needs: {
        frontForward: worked<number>("geometry.front-axle-forward"),
        frontHeight: worked<number>("geometry.front-axle-height"),
        headAngle: worked<number>("geometry.actual-head-angle"),
        tilt: worked<number>("geometry.frame-tilt"),
        offset: fact("fork", "fork-offset"),
        radius: worked<number>("front-wheel.wheel-radius"),
        width: worked<number>("front-wheel.tyre-width-on-rim"),
        crank: fact("drivetrain.crankset", "crank-length"),
        qFactor: fact("drivetrain.crankset", "q-factor"),
        outerEdge: fact("drivetrain.pedals", "outer-edge"),
        guard: optional(slot("carrying.front-mudguard")),
        guardGap: optional(setting("carrying.front-mudguard", "gap")),
        guardWidth: optional(fact("carrying.front-mudguard", "width")),
      },
      inputs: (facts) => {
        // A mudguard is what the toe meets first.
        const missing = missingOf(facts.guard, facts.guardGap, facts.guardWidth);
        if (missing.length > 0) return lacking(missing);
        const gap = stated(facts.guardGap) ?? 0;
        const width = Math.max(facts.width.value, stated(facts.guardWidth) ?? 0);
        const turn = (facts.tilt.value * Math.PI) / 180;
        const [forward, up] = [facts.frontForward.value, facts.frontHeight.value];
        return known({
          "front-axle-forward": forward * Math.cos(turn) - up * Math.sin(turn),
          "bottom-bracket-drop": forward * Math.sin(turn) + up * Math.cos(turn),
          "head-angle": facts.headAngle.value,
          "fork-offset": facts.offset.value,
          "wheel-radius": facts.radius.value + gap,
          "tyre-width": width,
          "crank-length": facts.crank.value,
          "pedal-lateral": (facts.qFactor.value + facts.outerEdge.value) / 2,
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        "front-axle-forward": Math.sqrt(590 ** 2 - 70 ** 2),
        "bottom-bracket-drop": 70,
        "head-angle": 72.5,
        "fork-offset": 45,
        "wheel-radius": 336,
        "tyre-width": 28,
        "crank-length": 170,
        "pedal-lateral": 110,
      },
      results: { "toe-clearance": 106.5527, "toe-clearance-level": 109.3269, "toe-clearance-straight": 87.2053 },
      tolerance: 1e-3,
      source: "straight gap by hand; swept figure (about 109 mm with the crank level) found independently by script",
    },
    {
      inputs: {
        "front-axle-forward": Math.sqrt(600 ** 2 - 70 ** 2),
        "bottom-bracket-drop": 70,
        "head-angle": 72.5,
        "fork-offset": 45,
        "wheel-radius": 336,
        "tyre-width": 28,
        "crank-length": 170,
        "pedal-lateral": 0,
      },
      results: { "toe-clearance-straight": 97.2752, "toe-clearance-level": 97.2752, "toe-steering-angle": 0 },
      tolerance: 1e-5,
      source: "by hand: a pedal on the centre plane meets the straight wheel",
    },
  ],
});
