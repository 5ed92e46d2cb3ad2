import { defineFamily } from "../define.ts";
import { count, length, text, word, yesNo } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** Interfaces of the brakes. */

export const brakeMount = defineFamily({
  name: "brake-mount",
  noun: "a brake mount",
  description: "What a caliper or rim brake is fixed to.",
  fields: {
    form: word(
      {
        post: "Two threaded posts, bolts square to the axle.",
        tabs: "Two tabs, bolts parallel to the axle.",
        flat: "A flat face on stay or leg, bolts through it.",
        bosses: "A boss on each side of the rim.",
        "centre-bolt": "One bolt through crown or bridge.",
        "two-bolts": "Two bolts in crown, bridge or stays.",
        arm: "An arm along the stay, of a brake in the hub.",
      },
      "Form.",
    ),
    wheel: word(wheelPositions, "Wheel for which it is, where front and rear differ.", { omitted: "none" }),
    "bolt-spacing": length("Between the middles of its bolts.", { lowest: 20, highest: 150, omitted: "none" }),
    "bolt-thread": text("Thread of its bolts."),
    "native-rotor": length("Rotor that it takes without an adapter, where its height fixes that.", {
      lowest: 100,
      highest: 260,
      omitted: "none",
    }),
    disc: yesNo("Whether it is for a disc brake."),
  },
});

export const rotorMount = defineFamily({
  name: "rotor-mount",
  noun: "a rotor mount",
  description: "How a rotor is fixed to the hub.",
  fields: {
    fixing: word({ bolts: "Bolts on a circle.", lockring: "Splines and a lock-ring." }, "How it is held."),
    bolts: count("Number of bolts.", { lowest: 3, highest: 8, omitted: "none" }),
    "bolt-circle": length("Diameter of the circle through the bolts.", { lowest: 30, highest: 80, omitted: "none" }),
  },
});

export const hydraulicFamily = defineFamily({
  name: "hydraulic-family",
  noun: "a hydraulic family",
  description: "Levers and calipers that are made to be joined: volumes, hose and fluid agree.",
  fields: {
    "master-diameter": length("Diameter of the master piston.", { lowest: 5, highest: 20, omitted: "none" }),
  },
});

export const brakeFluid = defineFamily({
  name: "brake-fluid",
  noun: "a brake fluid",
  description: "Fluid of a hydraulic brake; mineral oils are not all one, and no two fluids are mixed.",
  fields: {
    base: word(
      { glycol: "Glycol, which draws water and harms paint.", mineral: "Mineral oil.", water: "Water with glycol." },
      "What it is made of.",
    ),
  },
});

export const hoseFitting = defineFamily({
  name: "hose-fitting",
  noun: "a hose fitting",
  description: "Fitting between hose and lever or caliper.",
  fields: {
    form: word(
      { olive: "An olive and an insert.", banjo: "A banjo with a bolt.", quick: "A quick coupling." },
      "Form.",
    ),
    thread: text("Thread of its nut or bolt."),
  },
});

export const padShape = defineFamily({
  name: "pad-shape",
  noun: "a pad shape",
  description: "Shape of the pads that a caliper takes, or of the blocks and studs of a rim brake.",
  fields: {
    outline: text("Rough outline, for telling shapes apart."),
  },
});
