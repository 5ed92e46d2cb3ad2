import { defineKind } from "../define.ts";
import { code, codes, count, length, number, quantity, text, torque, word, words, yesNo } from "../fields.ts";
import { axleFastenings, brakePulls, shiftActuations, wheelPositions } from "../words.ts";

/** The middle of a wheel. */
export const hub = defineKind({
  name: "hub",
  noun: "a hub",
  description: "The middle of a wheel: axle, bearings, flanges, and what carries cogs, rotor, gears or a dynamo.",
  fields: {
    wheel: word(wheelPositions, "Wheel that it is made for; `none` where it goes at either.", {
      essential: true,
      group: "Fit",
    }),
    axle: code("axle", "Axle and width that it is made for, its present end caps fitted.", {
      essential: true,
      group: "Fit",
      example: "12x148",
    }),
    "axle-options": codes("axle", "Further axles that other end caps give it.", { group: "Fit", omitted: "none" }),
    "axle-fastening": word(axleFastenings, "What fastens it.", { group: "Fit" }),
    "axle-thread": text("Thread of its axle for nuts, or for the bolts that go into it.", {
      group: "Fit",
      example: '"M10 x 1"',
    }),
    layout: code("hub-layout", "Flange layout, where one axle size has several.", { group: "Fit", omitted: "none" }),
    "over-locknut-width": length("Between the outer faces of locknuts or end caps that meet the dropouts.", {
      group: "Fit",
      lowest: 70,
      highest: 220,
    }),
    "end-cap-recess": length("How far each end cap enters a recess of frame or fork; commonly 3.5 mm.", {
      group: "Fit",
      highest: 10,
      omitted: "none",
    }),
    "end-cap-diameter": length("Outside diameter of the end caps where they rest in frame or fork.", {
      group: "Fit",
      lowest: 10,
      highest: 40,
    }),

    freehub: codes(
      "freehub-body",
      "Freehub bodies or gear-hub drivers that it can carry; `none` when it has a thread.",
      {
        essential: true,
        group: "Fit",
      },
    ),
    "freewheel-thread": code(
      "freewheel-thread",
      "Thread for a freewheel or fixed cog; `none` when it has a freehub body.",
      {
        group: "Fit",
      },
    ),
    "fixed-lockring-thread": yesNo("Whether it has the left-hand thread of a fixed cog's lock-ring.", {
      group: "Fit",
      omitted: "none",
    }),
    "freehub-material": word(
      { steel: "Steel.", aluminium: "Aluminium: single steel cogs mark it.", titanium: "Titanium." },
      "Material of the freehub body's splines.",
      { group: "Fit" },
    ),
    "lockring-torque": torque("Torque of a cassette's lock-ring that the body bears.", { lowest: 5, highest: 80 }),
    "cog-line": length("From the centre plane to the middle of the cassette, or to the single cog, cogs fitted.", {
      group: "Geometry",
      lowest: 20,
      highest: 80,
    }),

    "rotor-mount": code("rotor-mount", "How a rotor is fixed to it; `none` when it takes none.", { group: "Brakes" }),
    "rotor-torque": torque("Torque of the rotor's bolts or lock-ring that it bears.", { highest: 60 }),
    "coaster-brake": yesNo("Whether pedalling backward brakes it, which needs an arm fixed to the frame.", {
      group: "Brakes",
      omitted: "none",
    }),
    "drum-brake": yesNo("Whether it holds a drum or roller brake.", {
      group: "Brakes",
      omitted: "none",
      impliedBy: ["brake-pull"],
    }),
    "brake-pull": word(brakePulls, "How much cable its drum or roller brake needs.", { group: "Brakes" }),

    gears: count("Number of gears inside; `none` when it has one.", {
      group: "Gearing",
      lowest: 2,
      highest: 20,
      omitted: "none",
      impliedBy: ["gear-range", "shift-family", "actuation"],
    }),
    "gear-range": number("Highest ratio inside divided by the lowest.", { group: "Gearing", lowest: 1, highest: 8 }),
    "lowest-gear": number("Ratio inside in the lowest gear: turns of the wheel for one of the cog.", {
      group: "Gearing",
      lowest: 0.2,
      highest: 2,
    }),
    "least-primary-ratio": number("Least ratio of ring to cog that its maker allows.", {
      group: "Limits",
      lowest: 0.5,
      highest: 5,
    }),
    actuation: word(shiftActuations, "What changes the gears inside; `none` when it changes them by itself.", {
      group: "Control",
    }),
    "shift-family": code("shift-family", "Which controllers change the gears inside.", { group: "Control" }),
    "dropout-washers": words(
      {
        vertical: "Washers for vertical dropouts.",
        horizontal: "Washers for slots that open forward.",
        "track-end": "Washers for slots that open backward.",
      },
      "Dropouts for which it has turn-stop washers.",
      { group: "Fit", omitted: "none", impliedBy: ["gears"] },
    ),
    "torque-arm": yesNo("Whether it needs an arm that holds its axle from turning.", { group: "Fit", omitted: "none" }),

    "spoke-holes": count("Spoke holes of both flanges.", { essential: true, group: "Shape", lowest: 12, highest: 48 }),
    "spoke-hole-diameter": length("Diameter of a spoke hole.", { group: "Shape", lowest: 1.5, highest: 4 }),
    "spoke-head": word(
      {
        elbow: "For spokes with an elbow.",
        straight: "For straight-pull spokes, whose lacing its maker fixes.",
      },
      "Spokes that its flanges take.",
      { group: "Shape" },
    ),
    "flange-diameter-left": length("Diameter of the left flange's circle of spoke holes.", {
      group: "Shape",
      lowest: 20,
      highest: 150,
    }),
    "flange-diameter-right": length("Diameter of the right flange's circle of spoke holes.", {
      group: "Shape",
      lowest: 20,
      highest: 150,
    }),
    "flange-offset-left": length("From the plane midway between the locknuts to the left flange, positive outward.", {
      group: "Shape",
      lowest: -10,
      highest: 80,
    }),
    "flange-offset-right": length("From the plane midway between the locknuts to the right flange, positive outward.", {
      group: "Shape",
      lowest: -10,
      highest: 80,
    }),

    "dynamo-voltage": quantity("voltage", "Voltage of its dynamo.", {
      group: "Electronics",
      highest: 60,
      omitted: "none",
    }),
    "dynamo-power": quantity("power", "Power of its dynamo.", { group: "Electronics", highest: 20, omitted: "none" }),
    connector: code("connector", "Connector of its dynamo.", { group: "Electronics", omitted: "none" }),
    "axle-torque": torque("Torque of its nuts, or of the axle through it, that it bears.", { highest: 60 }),
  },
});
