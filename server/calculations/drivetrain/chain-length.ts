import { fact, optional } from "../../model/need.ts";
import { count, length, quantity, word } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, optionalInput } from "../define.ts";
import { allowanceByPractice, derailleurSetUps } from "../shared/chain-allowance.ts";
import { chainLoop, chainPitch, evenAtLeast, loopLength, standsClear, toLinks } from "../shared/chain-geometry.ts";
import { cogsField, ringsField } from "../shared/gears.ts";
import { negative, notFinite, notPositive, notTeeth } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { rearEnd, rearEndNeeds } from "../shared/rear-end.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";
import { say } from "../shared/say.ts";

/** How many links a chain needs with a rear derailleur. */
export default defineCalculation({
  name: "chain-length",
  title: "Chain length with a derailleur",
  description:
    "Half-inch pitches of a chain round the largest ring and the largest cog at the longest rear centre, the allowance for the derailleur, and the even number to cut to, a closure link included.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    chainstay: input(length("From crank axis to rear axle along the line between them, unladen.")),
    "rear-centre-growth": optionalInput(
      quantity("length", "How much longer that line is at its longest in the travel; for a sprung rear end only.", {
        lowest: -30,
        highest: 80,
      }),
    ),
    allowance: optionalInput(
      count("Half-inch pitches that the derailleur's maker adds; common practice stands in when it is left out.", {
        lowest: 0,
        highest: 8,
      }),
    ),
    "set-up": optionalInput(
      word(derailleurSetUps, "How the rear derailleur is shifted, which common practice for the allowance asks."),
    ),
  },
  results: {
    "chain-links-exact": {
      unit: "links",
      digits: 3,
      description: "Half-inch pitches round largest ring and largest cog, without the derailleur.",
    },
    "chain-allowance": { unit: "links", digits: 0, description: "Half-inch pitches added for the derailleur." },
    "chain-links-needed": {
      unit: "links",
      digits: 0,
      description: "Half-inch pitches to cut to, a closure link counted as one outer link; the next even number.",
    },
    "chain-rule-of-thumb": {
      unit: "links",
      digits: 0,
      description: "What the workshop's inch rule gives instead, which is rough; for comparison only.",
    },
  },
  formula:
    "exact = 2 × straight run ÷ pitch + the arcs on both pitch circles; needed = exact + allowance, up to the next even number, which 0.05 links less reach too. Inch rule: 2 × chainstay + ring ÷ 4 + cog ÷ 4 + 1, in inches, up to the next whole inch",
  source:
    "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived; a new chain is 0 to 0.15 % longer than nominal: ISO 606 and ISO 9633 (from memory); allowance, 0.05 links of that and inch rule: common practice, no source",
  compute(inputs, working) {
    const { rings, cogs, chainstay, allowance: byMaker, "rear-centre-growth": growth } = inputs;
    const wrong =
      notTeeth({ rings, cogs }) ??
      notPositive({ chainstay }) ??
      notFinite({ "rear-centre-growth": growth }) ??
      negative({ allowance: byMaker });
    if (wrong) return wrong;
    const ring = Math.max(...rings);
    const cog = Math.max(...cogs);
    const longest = chainstay + Math.max(0, growth ?? 0);
    const loop = chainLoop(ring, cog);
    if (!standsClear(loop, longest)) {
      return impossible(`A ${ring} t ring and a ${cog} t cog would touch at ${say(longest, "mm")} between their axes.`);
    }
    if (growth !== undefined) {
      working?.step(
        `Longest rear centre: ${say(chainstay, "mm")} + ${say(Math.max(0, growth), "mm")} = ${say(longest, "mm")}`,
      );
    }
    const { run, frontPitches, rearPitches, pitches } = loopLength(loop, longest);
    working?.step(
      `Pitch radii: ring ${ring} t ${say(loop.frontRadius, "mm")}, cog ${cog} t ${say(loop.rearRadius, "mm")}`,
    );
    working?.step(`Straight runs: 2 × ${say(run, "mm")} ÷ ${chainPitch} mm = ${say((2 * run) / chainPitch, "links")}`);
    working?.step(
      `Exact: ${say((2 * run) / chainPitch)} + ${say(frontPitches)} on the ring + ${say(rearPitches)} on the cog = ${say(pitches, "links")}`,
    );
    const rule = allowanceByPractice(rings.length, growth !== undefined, inputs["set-up"]);
    const allowance = byMaker ?? rule.pitches;
    working?.step(
      byMaker === undefined
        ? `Allowance: ${allowance} links (common practice, no source: ${rule.reason})`
        : `Allowance: ${allowance} links, as the derailleur's maker states`,
    );
    const needed = evenAtLeast(pitches + allowance);
    working?.step(
      `Needed: ${say(pitches)} + ${allowance} = ${say(pitches + allowance)}, ${toLinks(pitches + allowance, needed)} links`,
    );
    const inches = (2 * longest) / 25.4 + ring / 4 + cog / 4 + 1;
    const roughly = 2 * Math.ceil(inches - 1e-9);
    working?.step(
      `Inch rule, rough: 2 × ${say(longest / 25.4)} + ${ring} ÷ 4 + ${cog} ÷ 4 + 1 = ${say(inches, "in")}, up to ${roughly / 2} in = ${roughly} links`,
    );
    return {
      "chain-links-exact": pitches,
      "chain-allowance": allowance,
      "chain-links-needed": needed,
      "chain-rule-of-thumb": roughly,
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        ...rearEndNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        chainstay: fact("frame", "chainstay"),
        idler: optional(fact("frame", "idler-teeth")),
        setUp: fact("drivetrain.rear-derailleur", "set-up"),
        rigid: optional(fact("drivetrain.rear-derailleur", "chain-allowance-rigid")),
        sprung: optional(fact("drivetrain.rear-derailleur", "chain-allowance-sprung")),
        double: optional(fact("drivetrain.rear-derailleur", "chain-allowance-double")),
      },
      inputs: (facts) =>
        withRings(facts, (rings) => {
          if (facts.idler.state === "known") return meaningless("the chain runs over an idler, so no two-wheel loop");
          const rear = rearEnd(facts);
          if (rear.state === "unknown") return lacking(rear.missing);
          const ownFigure = rings.length > 1 ? facts.double : rear.state === "sprung" ? facts.sprung : facts.rigid;
          return known({
            rings,
            cogs: facts.cogs.value,
            // Where the dropouts can be moved, the chain has to reach with the wheel at its rearmost.
            chainstay: facts.chainstay.value.greatest,
            "rear-centre-growth": rear.state === "sprung" ? rear.growth : undefined,
            allowance: stated(ownFigure),
            "set-up": facts.setUp.value,
          });
        }),
    },
  ],
  examples: [
    {
      inputs: { rings: [50, 34], cogs: [11, 34], chainstay: 410 },
      results: {
        "chain-links-exact": 106.767896,
        "chain-allowance": 2,
        "chain-links-needed": 110,
        "chain-rule-of-thumb": 110,
      },
      source: "open-belt geometry re-derived by script; inch rule 54.283 in by hand",
    },
    {
      inputs: { rings: [32], cogs: [10, 51], chainstay: 438, allowance: 2 },
      results: { "chain-links-exact": 110.741689, "chain-links-needed": 114, "chain-rule-of-thumb": 114 },
      source: "open-belt geometry re-derived by script; inch rule 56.238 in by hand",
    },
    {
      inputs: { rings: [20], cogs: [20], chainstay: 254, allowance: 0 },
      results: { "chain-links-exact": 60, "chain-links-needed": 60 },
      source: "by hand: equal wheels, two runs of 20 pitches and 20 pitches of arc",
    },
    {
      inputs: { rings: [48, 34], cogs: [11, 34], chainstay: 450, allowance: 2 },
      results: { "chain-links-exact": 112.006304, "chain-links-needed": 114 },
      source: "open-belt geometry re-derived by script: 0.006 over an even number is less than a new chain is long",
    },
  ],
});
