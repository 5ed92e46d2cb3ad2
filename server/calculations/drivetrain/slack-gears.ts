import { fact, setting, worked } from "../../model/need.ts";
import { count } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearsOf, ringsField } from "../shared/gears.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";

/** In which gears the chain hangs. */
export default defineCalculation({
  name: "slack-gears",
  title: "Gears in which the chain hangs",
  description:
    "The greatest slack that the cage has to take up with a chain of this length, and the gears where it is more than the cage takes up.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    links: input(count("Half-inch pitches of the chain as cut.", { lowest: 20, highest: 300 })),
    "links-needed": input(count("Half-inch pitches that the chain needs.", { lowest: 20, highest: 300 })),
    "total-capacity": input(
      count("Teeth of slack that the rear derailleur takes up.", { unit: "t", lowest: 1, highest: 80 }),
    ),
  },
  results: {
    "surplus-links": {
      unit: "links",
      digits: 0,
      description: "Half-inch pitches more than needed; less than zero for a chain too short.",
    },
    "greatest-slack": { unit: "t", digits: 0, description: "Slack in smallest ring and smallest cog, in teeth." },
    "slack-gears": {
      unit: "",
      digits: 0,
      list: true,
      description: "Ring × cog of every gear in which the chain hangs.",
    },
  },
  formula:
    "slack of a gear = (largest ring − ring) + (largest cog − cog) + 2 × links too many; it hangs where that is more than the total capacity",
  source: "derived: a wheel with one tooth fewer frees half a pitch of wrap; capacity counts those teeth",
  compute({ rings, cogs, links, "links-needed": needed, "total-capacity": capacity }, working) {
    const wrong =
      notTeeth({ rings, cogs }) ?? notPositive({ links, "links-needed": needed, "total-capacity": capacity });
    if (wrong) return wrong;
    const largestRing = Math.max(...rings);
    const largestCog = Math.max(...cogs);
    const surplus = links - needed;
    const slackOf = (ring: number, cog: number): number => largestRing - ring + (largestCog - cog) + 2 * surplus;
    const slack = gearsOf(rings, cogs).filter(({ ring, cog }) => slackOf(ring, cog) > capacity);
    const greatest = slackOf(Math.min(...rings), Math.min(...cogs));
    if (working) {
      working.step(`Links too many: ${links} − ${needed} = ${surplus}`);
      working.step(
        `Greatest slack: (${largestRing} − ${Math.min(...rings)}) + (${largestCog} − ${Math.min(...cogs)}) + 2 × ${surplus} = ${greatest} t of ${capacity} t`,
      );
      for (const { name, ring, cog } of slack) working.step(`${name} hangs: ${slackOf(ring, cog)} t of slack`);
      if (slack.length === 0) working.step("No gear hangs");
    }
    return { "surplus-links": surplus, "greatest-slack": greatest, "slack-gears": slack.map(({ name }) => name) };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        links: setting("drivetrain.chain", "links"),
        needed: worked<number>("drivetrain.chain-links-needed"),
        capacity: fact("drivetrain.rear-derailleur", "total-capacity"),
      },
      inputs: (facts) =>
        withRings(facts, (rings) =>
          known({
            rings,
            cogs: facts.cogs.value,
            links: facts.links.value,
            "links-needed": facts.needed.value,
            "total-capacity": facts.capacity.value,
          }),
        ),
    },
  ],
  examples: [
    {
      inputs: { rings: [32], cogs: [10, 12, 51], links: 118, "links-needed": 114, "total-capacity": 47 },
      results: { "surplus-links": 4, "greatest-slack": 49, "slack-gears": ["32×10"] },
      source: "worked by hand: 41 + 8 = 49 t in the smallest cog, 47 t in the next",
    },
    {
      inputs: { rings: [50, 34], cogs: [11, 13, 34], links: 110, "links-needed": 110, "total-capacity": 37 },
      results: { "surplus-links": 0, "greatest-slack": 39, "slack-gears": ["34×11"] },
      source: "worked by hand: 16 + 23 = 39 t against a cage of 37 t, and 37 t in 34×13",
    },
  ],
});
