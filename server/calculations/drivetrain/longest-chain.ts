import { fact, worked } from "../../model/need.ts";
import { count } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, ringsField } from "../shared/gears.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";

/** How much longer than needed a chain may be before the cage can no longer keep every gear taut. */
export default defineCalculation({
  name: "longest-chain",
  title: "Longest useful chain",
  description:
    "The longest chain whose slack the derailleur's capacity still takes up in every gear, by the teeth of capacity left over.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    "links-needed": input(count("Half-inch pitches that the chain needs.", { lowest: 20, highest: 300 })),
    "total-capacity": input(
      count("Teeth of slack that the rear derailleur takes up.", { unit: "t", lowest: 1, highest: 80 }),
    ),
  },
  results: {
    "spare-capacity": {
      unit: "t",
      digits: 0,
      description: "Capacity of the derailleur less the capacity needed; less than zero when it is too little.",
    },
    "longest-useful-links": {
      unit: "links",
      digits: 0,
      description: "Half-inch pitches of the longest chain that no gear leaves slack.",
    },
  },
  formula:
    "each half-inch pitch too many uses up two teeth of capacity: longest = links needed + spare capacity ÷ 2, down to an even number; never less than the links needed",
  source: "derived: a wheel with one tooth fewer frees half a pitch of wrap; capacity counts those teeth",
  compute({ rings, cogs, "links-needed": needed, "total-capacity": capacity }, working) {
    const wrong = notTeeth({ rings, cogs }) ?? notPositive({ "links-needed": needed, "total-capacity": capacity });
    if (wrong) return wrong;
    const wrap = Math.max(...rings) - Math.min(...rings) + Math.max(...cogs) - Math.min(...cogs);
    const spare = capacity - wrap;
    const extra = Math.max(0, 2 * Math.floor(spare / 4));
    working?.step(`Spare capacity: ${capacity} t − ${wrap} t = ${spare} t`);
    working?.step(
      spare >= 0
        ? `Longest: ${needed} links + ${spare} t ÷ 2 t for each link, down to an even number = ${needed + extra} links`
        : `The capacity is too little already, so no longer chain is useful: ${needed} links`,
    );
    return { "spare-capacity": spare, "longest-useful-links": needed + extra };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        needed: worked<number>("drivetrain.chain-links-needed"),
        capacity: fact("drivetrain.rear-derailleur", "total-capacity"),
      },
      inputs: (facts) =>
        withRings(facts, (rings) =>
          known({
            rings,
            cogs: facts.cogs.value,
            "links-needed": facts.needed.value,
            "total-capacity": facts.capacity.value,
          }),
        ),
    },
  ],
  examples: [
    {
      inputs: { rings: [32], cogs: [10, 51], "links-needed": 114, "total-capacity": 47 },
      results: { "spare-capacity": 6, "longest-useful-links": 116 },
      source: "worked by hand: 6 teeth to spare are 3 pitches, so 2 may be added",
    },
    {
      inputs: { rings: [50, 34], cogs: [11, 34], "links-needed": 110, "total-capacity": 39 },
      results: { "spare-capacity": 0, "longest-useful-links": 110 },
      source: "worked by hand: nothing to spare",
    },
    {
      inputs: { rings: [50, 34], cogs: [11, 34], "links-needed": 110, "total-capacity": 33 },
      results: { "spare-capacity": -6, "longest-useful-links": 110 },
      source: "worked by hand: the needed length remains, though gears go slack",
    },
  ],
});
