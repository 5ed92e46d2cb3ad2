import { stated } from "../../calculations/shared/maybe.ts";
import { buildField, fact, optional, slot, worked } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "fit/crank-length",
  title: "The cranks are of a usual length for the rider's legs",
  severity: "information",
  since: 1,
  needs: () => ({
    cranks: slot("drivetrain.crankset"),
    length: fact("drivetrain.crankset", "crank-length"),
    least: worked<number>("seat.crank-length-least"),
    greatest: worked<number>("seat.crank-length-greatest"),
    category: optional(buildField("category")),
  }),
  test({ cranks, length, least, greatest, category }) {
    const range = { least: least.value, greatest: greatest.value };
    const [is, usual] = [showQuantity(length.value, "length"), showInterval(range, "length", { digits: 0 })];
    if (inside(length.value, range))
      return holds(`${cranks.subject} is ${is} long, and ${usual} is usual for the inseam.`);
    if (stated(category) === "track" && length.value < range.greatest) {
      return holds(`${cranks.subject} is ${is} long: on a banked track short cranks are usual, whatever the legs.`);
    }
    return fails(
      `${cranks.subject} is ${is} long, and ${usual} is usual for the rider's inseam: consider ${length.value > range.greatest ? "shorter" : "longer"} cranks. What is usual is disputed, and long for tall riders.`,
      cranks,
      [length],
      swaps("drivetrain.crankset"),
    );
  },
  explanation:
    "Cranks are sold in lengths from about 160 to 175 mm, and shorter for children. Habit takes a fifth of the inseam, up to " +
    "0.216 of it, but tall riders get along with much shorter ones, and short cranks spare knees and clear the ground. The " +
    "range is therefore only told and never a fault. Cranks that are long for the rider bend knee and hip at the top of every " +
    "turn. On a banked track short cranks are usual for everybody, because the inner pedal comes close to the boards. " +
    "A change of length changes the saddle height by as much.",
  source: "common practice, no source; disputed",
  examples: {
    holds: `
part crankset example.crank "Crank 165" { crank-length: 165 mm }

build example "Cranks for the legs" {
  rider.inseam: 800 mm
  drivetrain.crankset: example.crank
}
`,
    fails: `
part crankset example.crank "Crank 175" { crank-length: 175 mm }

build example "Long cranks for short legs" {
  rider.inseam: 740 mm
  drivetrain.crankset: example.crank
}
`,
  },
});
