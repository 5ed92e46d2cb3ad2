import { fact } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** What has to stand between a brake mount and its caliper for a rotor. */
export default defineCalculation({
  name: "rotor-adapter",
  title: "Adapter for a rotor",
  description:
    "By how much an adapter has to enlarge the rotor that a mount takes by itself, and how far it moves the caliper outward. No adapter makes a mount take a smaller rotor.",
  inputs: {
    "native-rotor": input(length("Rotor that the mount takes without an adapter.")),
    rotor: input(length("Rotor that is fitted.")),
  },
  results: {
    "rotor-change-needed": { unit: "mm", digits: 1, description: "By how much the adapter has to enlarge the rotor." },
    "caliper-shift": { unit: "mm", digits: 2, description: "How far the caliper moves outward." },
  },
  formula: "change = rotor − native rotor; shift = half of it",
  source: "common practice, no source",
  compute({ "native-rotor": native, rotor }, working) {
    const wrong = notPositive({ "native-rotor": native, rotor });
    if (wrong) return wrong;
    const change = rotor - native;
    working?.step(`Change: ${say(rotor, "mm")} − ${say(native, "mm")} = ${say(change, "mm")}`);
    if (change < -1e-9) {
      return impossible(`A mount for a ${say(native, "mm")} rotor cannot take a smaller one of ${say(rotor, "mm")}.`);
    }
    working?.step(`Shift: ${say(change, "mm")} ÷ 2 = ${say(change / 2, "mm")}`);
    return { "rotor-change-needed": change, "caliper-shift": change / 2 };
  },
  inBuild: [
    {
      assembly: "front-brake",
      needs: { native: fact("fork", "native-rotor"), rotor: fact("front-brake.rotor", "diameter") },
      inputs: ({ native, rotor }) => known({ "native-rotor": native.value, rotor: rotor.value }),
    },
    {
      assembly: "rear-brake",
      needs: { native: fact("frame", "rear-native-rotor"), rotor: fact("rear-brake.rotor", "diameter") },
      inputs: ({ native, rotor }) => known({ "native-rotor": native.value, rotor: rotor.value }),
    },
  ],
  examples: [
    {
      inputs: { "native-rotor": 160, rotor: 203 },
      results: { "rotor-change-needed": 43, "caliper-shift": 21.5 },
      source: "common practice, no source: (203 − 160) ÷ 2",
    },
    {
      inputs: { "native-rotor": 140, rotor: 160 },
      results: { "rotor-change-needed": 20, "caliper-shift": 10 },
      source: "common practice, no source: (160 − 140) ÷ 2",
    },
  ],
});
