import { fact, type Maybe, optional } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { count, length, quantityRange, toothCount } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, optionalInput } from "../define.ts";
import { beltLoop, centreDistanceFor, loopLength, standsClear } from "../shared/chain-geometry.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";
import { say } from "../shared/say.ts";

/** Pitch of the belts that bicycles use. */
const usualPitch = 11;

/** The pitch that the standard of a belt's family states. */
function familyPitch(family: Maybe<ResolvedCode>): number | undefined {
  const pitch = family.state === "known" ? family.value.standard?.dimensions.get("pitch") : undefined;
  return pitch?.state === "stated" && typeof pitch.value === "number" ? pitch.value : undefined;
}

/** A belt comes in whole lengths that cannot be cut. */
export default defineCalculation({
  name: "belt-length",
  title: "Belt length",
  description:
    "Teeth of belt that ring, sprocket and the adjustment of the axle ask for, and the distance between the axes at which a belt is taut.",
  inputs: {
    ring: input(toothCount("Teeth of the ring.", { highest: 200 })),
    sprocket: input(toothCount("Teeth of the sprocket.", { highest: 200 })),
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
    pitch: optionalInput(length("From one tooth of the belt to the next; 11 mm when left out.")),
    "belt-teeth": optionalInput(count("Teeth of the belt at hand.", { unit: "t", lowest: 20, highest: 400 })),
  },
  results: {
    "belt-teeth-least": { unit: "t", digits: 3, description: "Exact teeth of belt at the shortest setting." },
    "belt-teeth-greatest": { unit: "t", digits: 3, description: "Exact teeth of belt at the longest setting." },
    "belt-chainstay": {
      unit: "mm",
      digits: 2,
      description: "Distance between the axes at which the belt at hand is straight.",
    },
    "belt-reach-left": {
      unit: "mm",
      digits: 2,
      description: "How far the axle can still move back from there to tension it; negative when it cannot reach.",
    },
    "belt-slack-for-fitting": {
      unit: "mm",
      digits: 2,
      description: "How far the axle can move forward from there to slip the belt on; negative when it cannot.",
    },
  },
  formula: "teeth = 2 × straight run ÷ pitch + the arcs on both pitch circles, whose radius is pitch × teeth ÷ 2π",
  source:
    "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived; 11 mm pitch: common practice, no source",
  compute(given, working) {
    const { ring, sprocket, chainstay, pitch = usualPitch, "belt-teeth": belt } = given;
    const wrong =
      notTeeth({ ring: [ring], sprocket: [sprocket] }) ??
      notPositive({
        "shortest chainstay": chainstay.least,
        "longest chainstay": chainstay.greatest,
        pitch,
        "belt-teeth": belt,
      });
    if (wrong) return wrong;
    if (chainstay.greatest < chainstay.least) return impossible("The longest chainstay is shorter than the shortest.");
    const loop = beltLoop(ring, sprocket, pitch);
    if (!standsClear(loop, chainstay.least)) {
      return impossible(
        `A ring of ${ring} t and a sprocket of ${sprocket} t would touch at ${say(chainstay.least, "mm")}.`,
      );
    }
    const least = loopLength(loop, chainstay.least).pitches;
    const greatest = loopLength(loop, chainstay.greatest).pitches;
    working?.step(`Pitch radii: ring ${say(loop.frontRadius, "mm")}, sprocket ${say(loop.rearRadius, "mm")}`);
    working?.step(`At ${say(chainstay.least, "mm")}: ${say(least, "t")} of belt`);
    working?.step(`At ${say(chainstay.greatest, "mm")}: ${say(greatest, "t")} of belt`);
    const span = { "belt-teeth-least": least, "belt-teeth-greatest": greatest };
    if (belt === undefined) return span;
    const distance = centreDistanceFor(loop, belt);
    if (distance === undefined) return impossible(`A belt of ${belt} t is too short to go round both.`);
    working?.step(`A belt of ${belt} t is straight at ${say(distance, "mm")}`);
    return {
      ...span,
      "belt-chainstay": distance,
      "belt-reach-left": chainstay.greatest - distance,
      "belt-slack-for-fitting": distance - chainstay.least,
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        chainstay: fact("frame", "chainstay"),
        belt: fact("drivetrain.chain", "teeth"),
        pitch: optional(fact("drivetrain.chain", "pitch")),
        family: optional(fact("drivetrain.chain", "drive-family")),
      },
      inputs: (facts) =>
        withRings(facts, (rings) => {
          const pitch = stated(facts.pitch) ?? familyPitch(facts.family);
          // The usual pitch would only be a guess at this belt's.
          if (pitch === undefined) {
            const missing = missingOf(facts.pitch);
            return missing.length > 0 ? lacking(missing) : meaningless("no pitch is stated");
          }
          const [ring] = rings;
          const [sprocket] = facts.cogs.value;
          if (rings.length > 1 || facts.cogs.value.length > 1 || ring === undefined || sprocket === undefined) {
            return meaningless("there is more than one ring or sprocket");
          }
          return known({
            ring,
            sprocket,
            chainstay: facts.chainstay.value,
            pitch,
            "belt-teeth": facts.belt.value,
          });
        }),
    },
  ],
  examples: [
    {
      inputs: { ring: 40, sprocket: 40, chainstay: { least: 440, greatest: 451 }, pitch: 11, "belt-teeth": 120 },
      results: {
        "belt-teeth-least": 120,
        "belt-teeth-greatest": 122,
        "belt-chainstay": 440,
        "belt-reach-left": 11,
        "belt-slack-for-fitting": 0,
      },
      source: "by hand: equal wheels, 40 teeth of arc and two runs of C ÷ 11",
    },
    {
      inputs: { ring: 50, sprocket: 24, chainstay: { least: 440, greatest: 450 } },
      results: { "belt-teeth-least": 117.428465, "belt-teeth-greatest": 119.237109 },
      source: "open-belt geometry re-derived by script",
    },
  ],
});
