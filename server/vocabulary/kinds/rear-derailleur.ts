import { defineKind } from "../define.ts";
import { code, count, number, quantityRange, text, toothCount, torque, word, yesNo } from "../fields.ts";
import { threadTreatments } from "../words.ts";

/** The mechanism that moves the chain over the cogs and takes up its slack. */
export const rearDerailleur = defineKind({
  name: "rear-derailleur",
  noun: "a rear derailleur",
  description: "Moves the chain over the cogs, and takes up its slack with a sprung cage.",
  caution:
    "A chain thrown into the spokes stops the wheel: both limits are pushed against by hand and tried under load.",
  fields: {
    speeds: count("Number of cogs it indexes over.", { lowest: 1, highest: 14, essential: true, group: "Gearing" }),
    mount: code("derailleur-mount", "What it is fixed to: the thread of a hanger, or a direct mount.", {
      essential: true,
      group: "Fit",
    }),
    "set-up": word(
      {
        cable: "By cable, with limit screws, cable tension and a screw for the chain gap.",
        electronic: "By motor on a hanger, with pairing, trim, limits and chain gap.",
        "direct-mount": "Clamped to the axle without a hanger: no gap or limit screws, only its position and torque.",
      },
      "How it is set up.",
      { essential: true, group: "Set-up" },
    ),
    "shift-family": code("shift-family", "Which controllers it works with.", { essential: true, group: "Control" }),
    "actuation-ratio": number("Sideways movement of the guide pulley for each millimetre of cable pulled.", {
      group: "Control",
      lowest: 0.5,
      highest: 3.5,
      example: "1.1",
    }),
    "drive-family": code("drive-family", "Roller and tooth family of chain to which its maker limits its pulleys.", {
      group: "Fit",
      omitted: "none",
    }),
    "largest-cog": toothCount("Most teeth of a largest cog that its guide pulley clears.", {
      essential: true,
      group: "Gearing",
      example: "52 t",
    }),
    "smallest-cog": toothCount("Fewest teeth of a smallest cog that it reaches.", {
      group: "Gearing",
      example: "10 t",
    }),
    "least-largest-cog": toothCount("Fewest teeth that the largest cog may have; left out, its maker asks for none.", {
      group: "Gearing",
      omitted: "none",
      example: "50 t",
    }),
    "total-capacity": count(
      "Difference in teeth, of the rings plus of the cogs, whose slack its cage takes up; cog limits are separate.",
      { essential: true, group: "Gearing", unit: "t", lowest: 1, highest: 80, example: "42 t" },
    ),
    "greatest-front-difference": count("Greatest difference between the largest and the smallest ring.", {
      group: "Gearing",
      unit: "t",
      lowest: 0,
      highest: 30,
    }),
    cage: word(
      { short: "A short cage.", medium: "A cage of middle length.", long: "A long cage." },
      "Length of the cage, as its maker calls it; the capacity is what counts.",
      { group: "Shape" },
    ),
    "cage-damper": yesNo("Whether a friction damper holds the cage forward.", { group: "Shape" }),
    "upper-pulley": toothCount("Teeth of the guide pulley.", { group: "Shape", highest: 24 }),
    "lower-pulley": toothCount("Teeth of the tension pulley.", { group: "Shape", highest: 24 }),
    "chain-allowance-rigid": count(
      "Half-inch pitches added to the chain round largest ring and largest cog: rigid rear end, single ring.",
      { group: "Set-up", lowest: 0, highest: 8, example: "4" },
    ),
    "chain-allowance-sprung": count(
      "Half-inch pitches added to the chain round largest ring and largest cog at its longest path: rear suspension.",
      { group: "Set-up", lowest: 0, highest: 8, example: "2" },
    ),
    "chain-allowance-double": count(
      "Half-inch pitches added to the chain round largest ring and largest cog: two or three rings.",
      { group: "Set-up", lowest: 0, highest: 8, example: "2" },
    ),
    "chain-gap": quantityRange("length", "adjustable", "Right chain gap, measured as `chain-gap-method` says.", {
      group: "Set-up",
      lowest: 1,
      highest: 40,
      example: "5 to 6 mm",
    }),
    "chain-gap-method": word(
      {
        "pulley-to-cog": "Between the tooth tips of the guide pulley and of the cog, with the chain on that cog.",
        "pulley-to-chain": "Between the guide pulley and the chain's lower run where it leaves the cog.",
        gauge: "By the maker's gauge set on the cog.",
      },
      "How the chain gap is measured; `none` when no gap is set.",
      { group: "Set-up" },
    ),
    "chain-gap-cog": toothCount("Teeth of the cog on which the gap is set; the largest when it is left out.", {
      group: "Set-up",
      omitted: "none",
    }),
    "trim-cog": count("Which cog the trim is set on, counted from the largest, which is 1.", {
      group: "Set-up",
      lowest: 1,
      highest: 14,
      omitted: "none",
    }),
    "pairing-window": quantityRange("time", "tolerance", "How long it waits for a controller to be paired.", {
      group: "Set-up",
      lowest: 5,
      highest: 600,
      omitted: "none",
    }),
    power: word(
      {
        "own-battery": "A battery of its own, charged off or on the bike.",
        wired: "A wire from a shared battery.",
      },
      "Where it gets its power; `none` when it works by cable.",
      { group: "Electronics" },
    ),
    "battery-type": code("battery-type", "Battery that it takes.", { group: "Electronics", omitted: "none" }),
    "mounting-torque": torque("Torque of its mounting bolt.", { essential: true, example: "8 to 10 N·m" }),
    "mounting-thread": word(threadTreatments, "How its mounting thread is treated.", { group: "Assembly" }),
    "cable-bolt-torque": torque("Torque of the bolt that holds the cable.", { highest: 15 }),
    "pulley-bolt-torque": torque("Torque of the pulley bolts.", { highest: 8 }),
    "mounting-tool": text("Tool for the mounting bolt.", { group: "Assembly" }),
  },
});
