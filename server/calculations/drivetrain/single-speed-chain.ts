import { fact, optional, slot } from "../../model/need.ts";
import { quantityRange, toothCount, yesNo } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, optionalInput } from "../define.ts";
import { centreDistanceFor, chainLoop, chainPitch, loopLength, standsClear } from "../shared/chain-geometry.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { missingOf } from "../shared/maybe.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";
import { say } from "../shared/say.ts";

/** Chain of a bicycle without a derailleur: it must close at a whole length within reach of the axle. */
export default defineCalculation({
  name: "single-speed-chain",
  title: "Chain length without a derailleur",
  description:
    "Whole chain lengths that the movement of the axle or the crank axis can make taut, and the distance between the axes at each.",
  inputs: {
    ring: input(toothCount("Teeth of the ring.")),
    cog: input(toothCount("Teeth of the cog.")),
    chainstay: input(
      quantityRange(
        "length",
        "adjustable",
        "From crank axis to rear axle, from the shortest to the longest it can be set.",
        {
          lowest: 200,
          highest: 900,
        },
      ),
    ),
    "half-link": optionalInput(
      yesNo("Whether a cranked half link may be used, which lets the chain close at any count."),
    ),
  },
  results: {
    "single-speed-links-least": {
      unit: "links",
      digits: 3,
      description: "Exact half-inch pitches at the shortest setting.",
    },
    "single-speed-links-greatest": {
      unit: "links",
      digits: 3,
      description: "Exact half-inch pitches at the longest setting.",
    },
    "tension-links": {
      unit: "links",
      digits: 0,
      list: true,
      description: "Whole chain lengths that can be made taut.",
    },
    "tension-chainstays": {
      unit: "mm",
      digits: 1,
      list: true,
      description: "Distance between the axes at which each of them is taut.",
    },
    "tension-reach-left": {
      unit: "mm",
      digits: 1,
      list: true,
      description: "How far the axle can still move back from there as the chain wears.",
    },
    "chainstay-step": { unit: "mm", digits: 2, description: "Movement of the axle from one whole length to the next." },
  },
  formula:
    "exact pitches by open-belt geometry at both ends of the adjustment; a chain closes at even counts, or at any count with a half link",
  source: "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived",
  compute({ ring, cog, chainstay, "half-link": halfLink }, working) {
    const wrong =
      notTeeth({ ring: [ring], cog: [cog] }) ??
      notPositive({ "shortest chainstay": chainstay.least, "longest chainstay": chainstay.greatest });
    if (wrong) return wrong;
    if (chainstay.greatest < chainstay.least) return impossible("The longest chainstay is shorter than the shortest.");
    if (chainstay.greatest > 10_000) return impossible("The chainstay is longer than any bicycle.");
    const loop = chainLoop(ring, cog);
    if (!standsClear(loop, chainstay.least)) {
      return impossible(`A ${ring} t ring and a ${cog} t cog would touch at ${say(chainstay.least, "mm")}.`);
    }
    const least = loopLength(loop, chainstay.least).pitches;
    const greatest = loopLength(loop, chainstay.greatest).pitches;
    working?.step(`At ${say(chainstay.least, "mm")}: ${say(least, "links")} exactly`);
    working?.step(`At ${say(chainstay.greatest, "mm")}: ${say(greatest, "links")} exactly`);
    const each = halfLink ? 1 : 2;
    const links: number[] = [];
    const distances: number[] = [];
    const left: number[] = [];
    for (let count = each * Math.ceil(least / each - 1e-9); count <= greatest + 1e-9; count += each) {
      const distance = centreDistanceFor(loop, count);
      if (distance === undefined) continue;
      const reach = Math.max(0, chainstay.greatest - distance);
      working?.step(`${count} links are taut at ${say(distance, "mm", 2)}, ${say(reach, "mm", 2)} of reach left`);
      links.push(count);
      distances.push(distance);
      left.push(reach);
    }
    working?.step(
      `One length to the next: ${each} × ${chainPitch} mm ÷ 2 = ${say((each * chainPitch) / 2, "mm")} of chainstay`,
    );
    if (links.length === 0) working?.step("No whole chain length falls within the adjustment");
    return {
      "single-speed-links-least": least,
      "single-speed-links-greatest": greatest,
      "tension-links": links,
      "tension-chainstays": distances,
      "tension-reach-left": left,
      "chainstay-step": (each * chainPitch) / 2,
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        chainstay: fact("frame", "chainstay"),
        derailleur: optional(slot("drivetrain.rear-derailleur")),
        halfLinkChain: optional(fact("drivetrain.chain", "half-link")),
        halfLinkClosure: optional(fact("drivetrain.closure-link", "half-link")),
        beltTeeth: optional(fact("drivetrain.chain", "teeth")),
      },
      inputs: (facts) =>
        withRings(facts, (rings) => {
          if (facts.derailleur.state === "known") return meaningless("a rear derailleur takes up the slack");
          if (facts.beltTeeth.state === "known") return meaningless("a belt drives the wheel");
          const [ring] = rings;
          const [cog] = facts.cogs.value;
          if (rings.length > 1 || facts.cogs.value.length > 1 || ring === undefined || cog === undefined) {
            return meaningless("there is more than one ring or cog");
          }
          const missing = missingOf(facts.derailleur, facts.beltTeeth);
          if (missing.length > 0) return lacking(missing);
          const halfLink = [facts.halfLinkChain, facts.halfLinkClosure].some(
            (fact) => fact.state === "known" && fact.value,
          );
          return known({ ring, cog, chainstay: facts.chainstay.value, "half-link": halfLink });
        }),
    },
  ],
  examples: [
    {
      inputs: { ring: 20, cog: 20, chainstay: { least: 250, greatest: 270 } },
      results: { "tension-links": [60, 62], "tension-chainstays": [254, 266.7], "chainstay-step": 12.7 },
      source: "by hand: equal wheels, 20 pitches of arc and two runs of C ÷ 12.7",
    },
    {
      inputs: { ring: 50, cog: 34, chainstay: { least: 410, greatest: 420 } },
      results: { "single-speed-links-least": 106.767896, "tension-links": [108] },
      source: "open-belt geometry re-derived by script",
    },
    {
      inputs: { ring: 20, cog: 20, chainstay: { least: 254, greatest: 262 }, "half-link": true },
      results: { "tension-links": [60, 61], "tension-chainstays": [254, 260.35], "tension-reach-left": [8, 1.65] },
      source: "by hand: one pitch more is 6.35 mm of chainstay",
    },
  ],
});
