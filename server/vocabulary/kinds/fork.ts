import { defineKind } from "../define.ts";
import { code, codes, length, quantity, quantityRange, torque, word, words, yesNo } from "../fields.ts";
import { axleSeats, forbiddenThings, materials, routings } from "../words.ts";

/** Holds the front wheel. */
export const fork = defineKind({
  name: "fork",
  noun: "a fork",
  description: "Holds the front wheel and is steered through its steerer.",
  caution: "A steerer cut too short, scored or crushed is not mended; a fork that was crashed is inspected or retired.",
  fields: {
    "steerer-diameter": length("Outside diameter of the steerer where the stem clamps it.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 45,
      example: "28.6 mm",
    }),
    "crown-race": code("crown-race", "Crown-race seat at the steerer's foot.", { essential: true, group: "Fit" }),
    "steerer-supplied": length("Length of the steerer as supplied, from the crown-race seat.", {
      essential: true,
      group: "Geometry",
      lowest: 50,
      highest: 500,
    }),
    "steerer-material": word(materials, "Material of the steerer.", { group: "Fit" }),
    "steerer-shape": word(
      { round: "Round.", keyed: "Flattened or keyed for hoses.", threaded: "Threaded, for a quill stem." },
      "Shape of the steerer.",
      { group: "Fit" },
    ),
    "steerer-thread-length": length(
      "Length of the thread on a threaded steerer as supplied, from its top down; `none` on a plain one.",
      { group: "Geometry", lowest: 5, highest: 300 },
    ),
    "steerer-bore": length("Inside diameter of the steerer at its top.", { group: "Fit", lowest: 15, highest: 40 }),
    "plug-types": words(
      { "star-nut": "A star nut driven in.", "expanding-plug": "A plug that expands.", glued: "A glued sleeve." },
      "What its maker allows inside the steerer to preload the headset.",
      { group: "Fit" },
    ),
    "plug-supplied": words(
      { "star-nut": "A star nut.", "expanding-plug": "An expanding plug.", glued: "A glued sleeve." },
      "What it comes with inside or for its steerer to preload the headset; `none` when that is bought besides.",
      { group: "Fit", example: "expanding-plug" },
    ),
    "greatest-spacers": length("Greatest height of spacers under the stem that its maker allows.", {
      group: "Limits",
      highest: 200,
    }),
    "steerer-clamp-torque": torque("Torque of a stem's bolts that the steerer bears.", { highest: 20 }),

    "axle-to-crown": length("From the axle to the crown-race seat in a straight line, unladen.", {
      essential: true,
      group: "Geometry",
      lowest: 150,
      highest: 650,
    }),
    "fork-offset": length("Offset of the axle, square to the steering axis, positive forward.", {
      essential: true,
      group: "Geometry",
      lowest: -10,
      highest: 120,
    }),
    travel: length("Travel of the suspension; `none` for a rigid fork.", {
      essential: true,
      group: "Suspension",
      lowest: 10,
      highest: 250,
    }),
    "travel-options": quantityRange("length", "adjustable", "Travel to which it can be changed.", {
      group: "Suspension",
      lowest: 10,
      highest: 250,
      omitted: "none",
    }),
    spring: word({ air: "Air.", coil: "A steel coil.", elastomer: "Elastomer." }, "What springs it.", {
      group: "Suspension",
      omitted: "none",
      impliedBy: ["travel"],
    }),
    "greatest-air-pressure": quantity("pressure", "Greatest pressure of its air spring.", {
      group: "Limits",
      highest: 40,
      omitted: "none",
      impliedBy: ["spring", "travel"],
    }),
    "sag-range": quantityRange("ratio", "adjustable", "Sag that its maker asks for, as a share of travel.", {
      group: "Suspension",
      lowest: 5,
      highest: 50,
    }),

    axle: code("axle", "Front axle, with the width between the dropouts.", { essential: true, group: "Fit" }),
    "axle-length": length("Length of thru axle it takes, under the head.", { group: "Fit", lowest: 80, highest: 260 }),
    "axle-thread-pitch": length("Thread pitch of the thru axle it takes.", { group: "Fit", lowest: 0.5, highest: 2.5 }),
    "axle-seat": word(axleSeats, "Shape of the seat under the thru axle's head.", { group: "Fit" }),
    "axle-torque": torque("Torque of the front axle that it bears.", { highest: 60 }),
    "end-cap-diameter": length("Outside diameter of end cap that it takes.", { group: "Fit", lowest: 10, highest: 40 }),
    "retention-tabs": yesNo("Whether its open dropouts have tabs that hold a loosened wheel.", { group: "Fit" }),

    "crown-radius": length("Greatest distance of crown and knobs from the steering axis.", {
      group: "Clearance",
      highest: 150,
    }),
    "bead-seats": codes("bead-seat", "Bead seats of the front wheels that it takes.", {
      essential: true,
      group: "Fit",
    }),
    "widest-tyre": length("Widest front tyre, as measured, that its maker allows.", {
      essential: true,
      group: "Clearance",
      highest: 150,
    }),
    "tallest-tyre": length("Greatest radius of tyre, from the axle, that clears arch and crown fully compressed.", {
      group: "Clearance",
      highest: 420,
    }),

    "brake-mount": code("brake-mount", "What it offers to a front brake.", { essential: true, group: "Brakes" }),
    "native-rotor": length("Rotor that the brake mount takes without an adapter.", {
      group: "Brakes",
      lowest: 100,
      highest: 260,
    }),
    "largest-rotor": length("Largest rotor that its maker allows.", { group: "Brakes", lowest: 100, highest: 260 }),
    "least-rotor": length("Smallest rotor that its maker allows.", { group: "Brakes", lowest: 100, highest: 260 }),
    "brake-torque": torque("Torque of the brake's mounting bolts.", { highest: 20 }),
    "cable-stop": yesNo("Whether it has the cable stop that a front cantilever needs.", { group: "Brakes" }),
    "brake-reach": length("From a rim brake's bolt hole down to the middle of the rim's brake track.", {
      group: "Brakes",
      lowest: 20,
      highest: 120,
    }),
    "brake-routing": words(routings, "How the front brake's hose or cable may run.", { group: "Fit" }),
    "hose-exit-side": word(
      { left: "The left leg.", right: "The right leg.", both: "Either leg." },
      "Leg along or in which the hose runs.",
      { group: "Fit" },
    ),
    "accessory-mounts": codes("accessory-mount", "Mounts for cages, mudguards and racks.", { group: "Fit" }),
    "rack-load": quantity("mass", "Greatest load of a front rack.", {
      group: "Limits",
      unit: "kg",
      highest: 100_000,
      omitted: "none",
    }),
    forbids: words(forbiddenThings, "What its maker forbids on it.", { group: "Limits", omitted: "none" }),
  },
});
