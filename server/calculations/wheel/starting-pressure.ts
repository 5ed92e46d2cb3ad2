import { type Facts, fact, optional, worked } from "../../model/need.ts";
import { length, quantity } from "../../vocabulary/fields.ts";
import {
  type BuildInputs,
  defineCalculation,
  impossible,
  input,
  known,
  meaningless,
  optionalInput,
} from "../define.ts";
import { gravity } from "../shared/gravity.ts";
import { notPositive } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { casingLength, flatWidth, sectionOf } from "../shared/tyre-section.ts";
import { tyreSize } from "../shared/tyre-size.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

/** Share of its section height by which a tyre is meant to be pressed down. */
const usualDrop = 15;

const inputs = {
  "wheel-load": input(quantity("mass", "Mass that rests on the wheel.", { unit: "kg", lowest: 1 })),
  "bead-seat": input(length("Bead-seat diameter.")),
  "tyre-width": input(length("Width of the tyre on its rim.")),
  "rim-width": input(length("Inner width of the rim.")),
  drop: optionalInput(
    quantity("ratio", "Share of the section by which the tyre is to be pressed down; 15 % when left out.", {
      lowest: 1,
      highest: 50,
    }),
  ),
  "least-pressure": optionalInput(quantity("pressure", "Least pressure allowed.")),
  "greatest-pressure": optionalInput(quantity("pressure", "Greatest pressure allowed.")),
};

function needsOf(wheel: Wheel) {
  return {
    load: worked<number>(`bike.${wheel}-load`),
    size: fact(ofWheel(wheel, "tyre"), "size"),
    width: worked<number>(`${wheel}.tyre-width-on-rim`),
    rim: fact(ofWheel(wheel, "rim"), "inner-width"),
    least: optional(worked<number>(`${wheel}.least-pressure`)),
    greatest: worked<number>(`${wheel}.greatest-pressure`),
  };
}

function feed(facts: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  const beadSeat = tyreSize(facts.size.value)?.beadSeat;
  if (beadSeat === undefined) return meaningless(`${facts.size.written} does not say a bead seat`);
  return known({
    "wheel-load": facts.load.value,
    "bead-seat": beadSeat,
    "tyre-width": facts.width.value,
    "rim-width": facts.rim.value,
    "least-pressure": stated(facts.least),
    "greatest-pressure": facts.greatest.value,
  });
}

/** A pressure to begin with, from the load on the wheel. */
export default defineCalculation({
  name: "starting-pressure",
  title: "Starting pressure from the load on a wheel",
  description:
    "Pressure at which the load presses the tyre down by a share of its section; a starting point only, for the rider to move from, inside the limits of tyre and rim.",
  inputs,
  results: {
    "starting-pressure": { unit: "bar", digits: 1, description: "A pressure to begin with, inside the limits given." },
    "pressure-for-drop": { unit: "bar", digits: 2, description: "Pressure for the drop, whatever the limits." },
    "drop-distance": { unit: "mm", digits: 1, description: "By how much the tyre is pressed down." },
    "contact-length": { unit: "mm", digits: 0, description: "Length of the patch that touches the ground." },
    "contact-width": { unit: "mm", digits: 1, description: "Width of that patch." },
  },
  formula:
    "patch taken as an ellipse: as long as the chord that the ground cuts off the wheel at the drop, as wide as the flat that a casing of fixed length makes; pressure = load ÷ its area",
  source:
    "15 % drop: Berto, All About Tire Inflation, as reprinted by Heine; the patch by membrane geometry, re-derived; no chart's numbers are used",
  compute(given, working) {
    const { "wheel-load": load, "bead-seat": beadSeat, "tyre-width": width, "rim-width": rim } = given;
    const { drop: share = usualDrop, "least-pressure": least, "greatest-pressure": greatest } = given;
    const wrong = notPositive({
      "wheel-load": load,
      "bead-seat": beadSeat,
      "tyre-width": width,
      "rim-width": rim,
      drop: share,
      "least-pressure": least,
      "greatest-pressure": greatest,
    });
    if (wrong) return wrong;
    if (rim >= width) return impossible("The rim is as wide as the tyre.");
    if (share >= 60) return impossible("The tyre would be pressed down to its rim.");
    const casing = casingLength(width, rim);
    const section = sectionOf(casing, rim);
    if (!section) return impossible("The casing does not span the rim.");
    const down = (width * share) / 100;
    const radius = beadSeat / 2 + width;
    const contactLength = 2 * Math.sqrt(down * (2 * radius - down));
    const contactWidth = flatWidth(casing, rim, section.height, down);
    const area = (Math.PI / 4) * contactLength * contactWidth;
    const newtons = (load / 1000) * gravity;
    // Newtons per square millimetre are ten bar each.
    const pressure = (10 * newtons) / area;
    if (least !== undefined && greatest !== undefined && least > greatest) {
      return impossible("The least pressure allowed is above the greatest.");
    }
    const start = Math.min(Math.max(pressure, least ?? 0), greatest ?? Number.POSITIVE_INFINITY);
    working?.step(`Drop: ${say(share, "%")} of ${say(width, "mm")} = ${say(down, "mm")}`);
    working?.step(
      `Patch: ${say(contactLength, "mm", 1)} long on a radius of ${say(radius, "mm")}, ${say(contactWidth, "mm", 2)} wide, ${say(area, "mm²", 0)}`,
    );
    working?.step(
      `Pressure: ${say(load / 1000, "kg")} × ${gravity} m/s² = ${say(newtons, "N", 1)}; ÷ ${say(area, "mm²", 0)} = ${say(pressure, "bar", 2)}`,
    );
    if (start !== pressure) working?.step(`Kept inside the limits: ${say(start, "bar", 2)}`);
    working?.step("A starting point only: the limits of tyre and rim and the rider's own trial come first");
    return {
      "starting-pressure": start,
      "pressure-for-drop": pressure,
      "drop-distance": down,
      "contact-length": contactLength,
      "contact-width": contactWidth,
    };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: { "wheel-load": (450 / 9.80665) * 1000, "bead-seat": 622, "tyre-width": 28, "rim-width": 17 },
      results: {
        "drop-distance": 4.2,
        "contact-length": 106.3947,
        "contact-width": 9.505543,
        "pressure-for-drop": 5.665335,
      },
      tolerance: 1e-5,
      source: "chord of the drop worked independently; width of the flat solved independently by script",
    },
    {
      inputs: {
        "wheel-load": 45_000,
        "bead-seat": 622,
        "tyre-width": 23,
        "rim-width": 15,
        "greatest-pressure": 6,
      },
      results: { "starting-pressure": 6, "drop-distance": 3.45 },
      source: "by hand: 15 % of 23 mm; a narrow tyre would ask for more than 6 bar",
    },
  ],
});
