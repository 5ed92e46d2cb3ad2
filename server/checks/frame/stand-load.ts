import { everyFact, everySlot, fact, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { bikeMass, carriedMass, carriedNeeds } from "../shared/bike-mass.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

export default defineCheck({
  code: "frame/stand-load",
  title: "The stand holds the bicycle and what is carried on it",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    stand: slot("carrying.stand"),
    limit: fact("carrying.stand", "load-limit"),
    masses: everyFact<number>("mass"),
    slots: everySlot(),
    ...carriedNeeds(),
  }),
  test({ stand, limit, masses, slots, ...carrying }) {
    const bike = bikeMass(masses.value, slots);
    const carried = carriedMass(carrying);
    const facts = [limit, ...carried.facts, ...bike.facts];
    const [weighs = "", holdsUpTo = ""] = showPair(bike.least, limit.value, "mass");
    const missing = [...bike.missing, ...carried.missing];
    if (greaterThan(bike.least, limit.value)) {
      return fails(
        `The bicycle alone weighs ${bike.missing.length > 0 ? "at least " : ""}${weighs}, but ${stand.subject} holds ${holdsUpTo}: fit a stand that is made for more.`,
        stand,
        [limit, ...bike.facts],
        swaps("carrying.stand"),
      );
    }
    const all = bike.least + carried.least;
    const [together = "", most = ""] = showPair(all, limit.value, "mass");
    if (greaterThan(all, limit.value)) {
      return fails(
        `The bicycle and what it carries weigh ${missing.length > 0 ? "at least " : ""}${together} together, but ${stand.subject} holds ${most}: fit a stand that is made for more, or load the bicycle off its stand.`,
        stand,
        facts,
        swaps("carrying.stand"),
        // Some of the kit may be on the rider's back.
        { severity: "warning" },
      );
    }
    if (missing.length > 0)
      return { outcome: "unknown", missing: unknowns({ state: "unknown", missing })[0]?.missing ?? [] };
    return holds(
      `The bicycle and what it carries weigh ${together} together, and ${stand.subject} holds ${most}.`,
      (limit.value - all) / limit.value,
    );
  },
  explanation:
    "A stand is made for so much mass of bicycle and load and no more. Overloaded, its leg bends or its plate turns, and a " +
    "bicycle that falls over takes luggage, or a child in the seat, with it. All parts are added up with what the build " +
    "says is carried; a rack that is loaded more than that counts by its load. The rider is not counted: nobody sits on a " +
    "bicycle that is on its stand. A child is never left alone in a seat on a stand, whatever it holds.",
  source: "common practice, no source; the limit is the stand maker's own figure",
  caution: "A child is never left alone in a seat on a bicycle that stands on its stand.",
  examples: {
    holds: `
part frame example.town "Town" { mass: 2600 g }
part stand example.stand "Stand" { load-limit: 30 kg; mass: 400 g }

build example "A frame on its stand" {
  rider.kit-mass: 10 kg
  frame: example.town
  fork: none
  rear-shock: none
  headset: none
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    cassette: none
    chain: none
    crankset: none
    chainring: none
    bottom-bracket: none
    pedals: none
    rear-controller: none
  }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  cockpit { stem: none; handlebar: none; grips: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  rear-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  carrying.stand: example.stand
}
`,
    fails: `
part frame example.cargo "Cargo" { mass: 9 kg }
part stand example.stand "Stand" { load-limit: 30 kg }

build example "Twenty-two kilograms of potatoes" {
  rider.kit-mass: 22 kg
  frame: example.cargo
  carrying.stand: example.stand
}
`,
  },
});
