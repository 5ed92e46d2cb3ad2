import { fact, optional, setting, worked } from "../../model/need.ts";
import { length, number, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, optionalInput } from "../define.ts";
import { coilSag, leverageAt, linkageNeeds, linkageOf } from "../shared/coil.ts";
import { gravity } from "../shared/gravity.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";

/** How far a rider presses a coil in. */
export default defineCalculation({
  name: "coil-sag",
  title: "Sag on a coil",
  description:
    "How far the shock is pressed in by what rests on the rear wheel, with a coil of a stated rate and without preload.",
  inputs: {
    "rear-wheel-load": input(
      quantity("mass", "Mass of rider, kit and bicycle that rests on the rear wheel.", {
        unit: "kg",
      }),
    ),
    "unsprung-mass": optionalInput(
      quantity("mass", "What of it the coil does not carry: the rear wheel. None when left out.", { unit: "kg" }),
    ),
    "spring-rate": input(quantity("stiffness", "Rate of the coil.", { lowest: 1 })),
    stroke: input(length("Stroke of the shock.")),
    "leverage-start": input(
      number("Leverage at the start of travel: rear-axle movement for each millimetre of stroke.", {
        lowest: 0.1,
        highest: 10,
      }),
    ),
    "leverage-end": optionalInput(
      number("Leverage at the end of travel; the same all along when left out.", { lowest: 0.1, highest: 10 }),
    ),
  },
  results: {
    "sprung-load": { unit: "N", digits: 0, description: "Force on the rear wheel that the coil carries." },
    "coil-sag": { unit: "mm", digits: 1, description: "How far the shock is pressed in." },
    "coil-sag-share": { unit: "%", digits: 1, description: "The same as a share of the stroke." },
  },
  formula:
    "load × leverage there = rate × sag, the leverage changing evenly: sag = load × leverage at the start ÷ (rate + load × (start − end) ÷ stroke)",
  source: "statics of a lever, re-derived",
  compute(given, working) {
    const { "rear-wheel-load": mass, "unsprung-mass": unsprung = 0, "spring-rate": rate, stroke } = given;
    const { "leverage-start": start, "leverage-end": end = start } = given;
    const wrong =
      notPositive({
        "rear-wheel-load": mass,
        "spring-rate": rate,
        stroke,
        "leverage-start": start,
        "leverage-end": end,
      }) ?? negative({ "unsprung-mass": unsprung });
    if (wrong) return wrong;
    if (unsprung >= mass) return impossible("The wheel cannot weigh more than what rests on it.");
    const load = ((mass - unsprung) / 1000) * gravity;
    const linkage = { stroke, start, end };
    const free = coilSag(load, rate, linkage);
    // A coil that does not carry the load lets the shock go through all of its stroke.
    const sag = free === undefined || free > stroke ? stroke : free;
    working?.step(
      `Load: (${say(mass / 1000, "kg")} − ${say(unsprung / 1000, "kg")}) × ${gravity} m/s² = ${say(load, "N", 1)}`,
    );
    working?.step(
      `Sag: ${say(load, "N", 1)} × ${say(start)} ÷ (${say(rate, "N/mm")} + ${say(load, "N", 1)} × (${say(start)} − ${say(end)}) ÷ ${say(stroke, "mm")}) = ${free === undefined ? "no end" : say(free, "mm", 1)}`,
    );
    working?.step(
      sag === free
        ? `Leverage there: ${say(leverageAt(linkage, sag), "", 2)}`
        : `The coil does not carry it: all of the stroke, ${say(stroke, "mm")}`,
    );
    working?.step(`Share: ${say(sag, "mm", 1)} ÷ ${say(stroke, "mm")} = ${say((100 * sag) / stroke, "%", 1)}`);
    return { "sprung-load": load, "coil-sag": sag, "coil-sag-share": (100 * sag) / stroke };
  },
  inBuild: [
    {
      assembly: "suspension",
      needs: {
        ...linkageNeeds,
        spring: optional(fact("rear-shock", "spring")),
        fitted: optional(setting("rear-shock", "spring-fitted")),
        supplied: optional(fact("rear-shock", "spring-rate")),
        load: optional(worked<number>("bike.rear-wheel-load")),
        wheel: optional(worked<number>("rear-wheel.mass-at-least")),
      },
      inputs: ({ spring, fitted, supplied, load, wheel, ...frame }) => {
        if (spring.state === "known" && spring.value !== "coil") return meaningless("the shock has no coil");
        const linkage = linkageOf(frame);
        if (linkage.state === "none") return meaningless(linkage.reason);
        const rate = fitted.state === "none" ? supplied : fitted;
        const missing = [...(linkage.state === "unknown" ? linkage.missing : []), ...missingOf(spring, rate, load)];
        if (linkage.state === "unknown" || missing.length > 0) return lacking(missing);
        if (spring.state !== "known") return meaningless("nothing springs the rear wheel");
        if (rate.state !== "known") return meaningless("no rate of the coil is stated");
        if (load.state !== "known") return meaningless("nothing says what rests on the rear wheel");
        return known({
          "rear-wheel-load": load.value,
          "unsprung-mass": stated(wheel),
          "spring-rate": rate.value,
          stroke: linkage.linkage.stroke,
          "leverage-start": linkage.linkage.start,
          "leverage-end": linkage.linkage.end,
        });
      },
    },
  ],
  examples: [
    {
      inputs: { "rear-wheel-load": 53_025.243, "spring-rate": 72, stroke: 65, "leverage-start": 2.7 },
      results: { "sprung-load": 520, "coil-sag": 19.5, "coil-sag-share": 30 },
      source: "by hand: 520 N × 2.7 ÷ 72 N/mm, and 19.5 of 65 mm; the same as the worked coil rate, read backward",
    },
    {
      inputs: {
        "rear-wheel-load": 63_182.97,
        "unsprung-mass": 2000,
        "spring-rate": 92.8,
        stroke: 50,
        "leverage-start": 3,
        "leverage-end": 2.4,
      },
      results: { "sprung-load": 600, "coil-sag": 18, "coil-sag-share": 36 },
      source: "by hand: 61.183 kg are 600 N; 600 × 3 ÷ (92.8 + 600 × 0.6 ÷ 50) = 1800 ÷ 100",
    },
  ],
});
