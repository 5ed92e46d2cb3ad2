import { fact, optional } from "../../model/need.ts";
import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, meaningless, optionalInput, unusable } from "../define.ts";
import { chainlineNeeds, frontChainline } from "../shared/front-chainline.ts";
import { cogsField, gearsOf, ringsField } from "../shared/gears.ts";
import { notFinite, notPositive, notTeeth } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";
import { say } from "../shared/say.ts";

/** How much the chain runs askew in every gear. */
export default defineCalculation({
  name: "chain-angle",
  title: "Chain angle of every gear",
  description: "Sideways angle of the chain between ring and cog in every gear, seen from above.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    chainline: input(
      quantity("length", "From the centre plane to the ring, midway between two, or the middle one of three.", {
        lowest: 20,
        highest: 90,
      }),
    ),
    "ring-spacing": optionalInput(length("Between the middles of neighbouring rings; needed for several.")),
    "cog-line": input(
      quantity("length", "From the centre plane to the middle of the cassette, or to the single cog.", {
        lowest: 20,
        highest: 90,
      }),
    ),
    "cog-pitch": optionalInput(length("Between the middles of neighbouring cogs; needed for several.")),
    chainstay: input(length("From crank axis to rear axle along the line between them.")),
  },
  results: {
    "chain-angle-gears": {
      unit: "",
      digits: 0,
      list: true,
      description: "Ring × cog of every gear, in the order of the angles.",
    },
    "chain-angles": {
      unit: "°",
      digits: 2,
      list: true,
      description: "Angle of the chain in every gear; positive when the ring stands farther out than the cog.",
    },
    "greatest-chain-angle": { unit: "°", digits: 2, description: "The greatest angle, whichever way." },
    "worst-chain-angle-gear": { unit: "", digits: 0, description: "The gear that has it." },
  },
  formula: "angle = arctangent of (line of the ring − line of the cog) ÷ chainstay",
  source: "trigonometry; re-derived",
  compute(inputs, working) {
    const { rings, cogs, chainline, chainstay } = inputs;
    const { "cog-line": cogLine, "cog-pitch": cogPitch, "ring-spacing": ringSpacing } = inputs;
    const wrong =
      notTeeth({ rings, cogs }) ??
      notFinite({ chainline, "cog-line": cogLine }) ??
      notPositive({ chainstay, "ring-spacing": ringSpacing, "cog-pitch": cogPitch });
    if (wrong) return wrong;
    if (rings.length > 1 && ringSpacing === undefined) return unusable("Several rings need their ring-spacing.");
    if (cogs.length > 1 && cogPitch === undefined) return unusable("Several cogs need their cog-pitch.");
    // Rings go outward from the smallest and cogs from the largest, which is the order of the gears; of two alike each
    // has its own place.
    const ringLine = (place: number): number => chainline + (place - (rings.length - 1) / 2) * (ringSpacing ?? 0);
    const lineOfCog = (place: number): number => cogLine + (place - (cogs.length - 1) / 2) * (cogPitch ?? 0);
    const gears = gearsOf(rings, cogs);
    const angles = gears.map(({ name }, index) => {
      const ringAt = ringLine(Math.floor(index / cogs.length));
      const cogAt = lineOfCog(index % cogs.length);
      const offset = ringAt - cogAt;
      const angle = (Math.atan2(offset, chainstay) * 180) / Math.PI;
      working?.step(
        `${name}: ring at ${say(ringAt, "mm")}, cog at ${say(cogAt, "mm")}, ${say(offset, "mm")} apart over ${say(chainstay, "mm")} = ${say(angle, "°", 2)}`,
      );
      return angle;
    });
    const sizes = angles.map(Math.abs);
    const greatest = Math.max(...sizes);
    const worst = gears[sizes.indexOf(greatest)]?.name ?? "";
    working?.step(`Greatest: ${say(greatest, "°", 2)} in ${worst}`);
    return {
      "chain-angle-gears": gears.map(({ name }) => name),
      "chain-angles": angles,
      "greatest-chain-angle": greatest,
      "worst-chain-angle-gear": worst,
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        ...chainlineNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        cogLine: fact("rear-wheel.hub", "cog-line"),
        cogPitch: optional(fact("drivetrain.cassette", "cog-pitch")),
        ringSpacing: optional(fact("drivetrain.crankset", "ring-spacing")),
        chainstay: fact("frame", "chainstay"),
      },
      inputs: (facts) =>
        withRings(facts, (rings) => {
          const front = frontChainline(facts);
          if (front.state === "none") return meaningless("no chainline is stated for the cranks");
          const missing = [
            ...(front.state === "unknown" ? front.missing : []),
            ...(rings.length > 1 ? missingOf(facts.ringSpacing) : []),
            ...(facts.cogs.value.length > 1 ? missingOf(facts.cogPitch) : []),
          ];
          if (missing.length > 0 || front.state === "unknown") return lacking(missing);
          return known({
            rings,
            cogs: facts.cogs.value,
            chainline: front.chainline,
            "ring-spacing": stated(facts.ringSpacing),
            "cog-line": facts.cogLine.value,
            "cog-pitch": stated(facts.cogPitch),
            // Closest together the angles are greatest.
            chainstay: facts.chainstay.value.least,
          });
        }),
    },
  ],
  examples: [
    {
      inputs: {
        rings: [32],
        cogs: [10, 12, 14, 16, 18, 21, 24, 28, 32, 38, 45, 52],
        chainline: 52,
        "cog-line": 50,
        "cog-pitch": 3.58,
        chainstay: 435,
      },
      results: { "greatest-chain-angle": 2.85452, "worst-chain-angle-gear": "32×52" },
      tolerance: 2e-6,
      source: "worked independently: (52 − (50 − 5.5 × 3.58)) ÷ 435",
    },
    {
      inputs: {
        rings: [46],
        cogs: [11, 12, 13, 14, 15, 17, 19, 21, 24, 28, 32],
        chainline: 45,
        "cog-line": 45,
        "cog-pitch": 3.69,
        chainstay: 410,
      },
      results: { "greatest-chain-angle": 2.57657 },
      tolerance: 2e-6,
      source: "worked independently: 5 × 3.69 ÷ 410",
    },
    {
      inputs: { rings: [44], cogs: [16], chainline: 42, "cog-line": 42, chainstay: 405 },
      results: { "chain-angle-gears": ["44×16"], "chain-angles": [0], "greatest-chain-angle": 0 },
      source: "worked by hand: a straight chain",
    },
  ],
});
