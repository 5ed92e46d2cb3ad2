import { defineFamily } from "../define.ts";
import { count, length, text, word, words } from "../fields.ts";

/** Interfaces of seat, suspension and what is carried. */

export const rail = defineFamily({
  name: "rail",
  noun: "a saddle rail",
  description: "Section of a saddle's rails, which the post's clamp has to match.",
  fields: {
    shape: word({ round: "Round.", oval: "Oval, higher than wide.", single: "One rail in the middle." }, "Shape."),
    width: length("Width of the section.", { lowest: 4, highest: 40 }),
    height: length("Height of the section.", { lowest: 4, highest: 40 }),
  },
});

export const shockSize = defineFamily({
  name: "shock-size",
  noun: "a shock size",
  description: "Eye-to-eye length and stroke of a rear shock, such as 210x55.",
  fields: {},
  composite: {
    separator: "x",
    halves: [
      { name: "eye-to-eye", dimension: "length" },
      { name: "stroke", dimension: "length" },
    ],
  },
});

export const shockMount = defineFamily({
  name: "shock-mount",
  noun: "a shock mount",
  description: "How one end of a rear shock is held: an eye with bushes of a width and bolt, or a trunnion.",
  fields: {
    form: word(
      { eye: "An eye with bushes.", trunnion: "Bolts from both sides.", clevis: "A fork round a link." },
      "Form.",
    ),
    width: length("Width over the bushes, or between the faces.", { lowest: 10, highest: 80 }),
    "bolt-diameter": length("Diameter of the bolt.", { lowest: 4, highest: 20 }),
  },
});

export const accessoryMount = defineFamily({
  name: "accessory-mount",
  noun: "an accessory mount",
  description: "Where cages, mudguards, racks, stands, seats and lamps are fixed.",
  fields: {
    purposes: words(
      {
        cage: "Bottle or cargo cages.",
        mudguard: "Mudguards.",
        rack: "Luggage racks.",
        stand: "Stands.",
        "child-seat": "Child seats.",
        lamp: "Lamps.",
        bag: "Bags.",
      },
      "What it is for.",
    ),
    bolts: count("Number of bolts.", { lowest: 1, highest: 8 }),
    "bolt-thread": text("Thread of its bolts."),
    "bolt-spacing": length("Between the middles of its bolts.", { lowest: 5, highest: 200, omitted: "none" }),
  },
});
