import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, optionalInput } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Share of the proof load to which dealers' tables tighten. */
const usualShare = 75;

/** How much tension a metric bolt bears. */
export default defineCalculation({
  name: "bolt-preload",
  title: "Stress area and preload of a metric bolt",
  description:
    "Stress area of a metric thread and the tension at a share of its proof load; no component's torque follows from it.",
  inputs: {
    "bolt-diameter": input(length("Nominal diameter of the thread.")),
    "thread-pitch": input(length("Pitch of the thread.")),
    "proof-stress": input(
      quantity("pressure", "Proof stress: 580 MPa for class 8.8, 830 for 10.9, 970 for 12.9.", {
        lowest: 10,
        highest: 50_000,
        unit: "MPa",
      }),
    ),
    share: optionalInput(
      quantity("ratio", "Share of the proof load; 75 % when left out.", { lowest: 1, highest: 100 }),
    ),
  },
  results: {
    "stress-area": { unit: "mm2", digits: 2, description: "Stress area of the thread." },
    "proof-load": { unit: "N", digits: 0, description: "Tension at the proof stress." },
    preload: { unit: "N", digits: 0, description: "Tension at the share of it." },
  },
  formula: "stress area = π ÷ 4 × (diameter − 0.9382 × pitch)²; preload = share × proof stress × area",
  source: "ISO 898-1 (from memory); proof stresses as in fastener dealers' tables",
  compute({ "bolt-diameter": diameter, "thread-pitch": pitch, "proof-stress": proof, share = usualShare }, working) {
    const wrong = notPositive({ "bolt-diameter": diameter, "thread-pitch": pitch, "proof-stress": proof, share });
    if (wrong) return wrong;
    if (share > 100) return impossible("A share of the proof load is no more than all of it.");
    const core = diameter - 0.9382 * pitch;
    if (core <= 0) return impossible("The pitch leaves no core in the bolt.");
    const area = (Math.PI / 4) * core ** 2;
    // Ten bar are one newton per square millimetre.
    const load = (area * proof) / 10;
    const preload = (load * share) / 100;
    working?.step(`Stress area: π ÷ 4 × (${say(diameter)} − 0.9382 × ${say(pitch)})² = ${say(area, "mm²")}`);
    working?.step(`Proof load: ${say(area, "mm²")} × ${say(proof / 10, "MPa")} = ${say(load, "N", 1)}`);
    working?.step(`Preload: ${say(share, "%")} of ${say(load, "N", 1)} = ${say(preload, "N", 1)}`);
    return { "stress-area": area, "proof-load": load, preload };
  },
  examples: [
    {
      inputs: { "bolt-diameter": 6, "thread-pitch": 1, "proof-stress": 5800 },
      results: { "stress-area": 20.12333, preload: 8753.65 },
      source: "ISO 898-1 table value 20.1 mm² (from memory); preload worked independently",
    },
    {
      inputs: { "bolt-diameter": 5, "thread-pitch": 0.8, "proof-stress": 5800 },
      results: { "stress-area": 14.18252, preload: 6169.39, "proof-load": 8225.86 },
      source: "ISO 898-1 table value 14.2 mm² (from memory); preload worked independently",
    },
  ],
});
