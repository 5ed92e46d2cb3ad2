import { fact, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { fittedRingNeeds, placedRings } from "../shared/fitted-rings.ts";
import { both } from "../shared/sentence.ts";

export default defineCheck({
  code: "drivetrain/ring-replaced",
  title: "No ring is bought beside one that the cranks are sold with",
  severity: "information",
  since: 1,
  needs: () => ({
    ...fittedRingNeeds,
    cranks: slot("drivetrain.crankset"),
    sold: fact("drivetrain.crankset", "rings"),
  }),
  test({ cranks, sold, ...facts }) {
    const placed = placedRings(facts);
    if (placed.state === "unknown") return cannotTell(placed);
    const rings = placed.state === "known" ? placed.rings : [];
    const added = rings.filter(({ slot: path }) => path !== "drivetrain.crankset");
    if (added.length === 0) return holds(`${cranks.subject} turns the rings it is sold with, ${sold.written}.`);
    const [first] = added;
    const said = both(
      added.map(({ fact: teeth, place }) => `${teeth.subject} (${teeth.written}) as the ${place} ring`),
    );
    return fails(
      `${cranks.subject} is sold with ${sold.written}, and the build fits ${said} as well, which ${added.length === 1 ? "takes its place" : "take their place"}: what is replaced is left over. Where nothing is replaced, leave that slot out, or name the cranks without rings.`,
      first?.part ?? cranks,
      [sold, ...added.map(({ fact: teeth }) => teeth)],
      [
        ...added.map(({ slot: path }) => ({ kind: "leave-empty", slot: path }) as const),
        { kind: "swap-part", slot: "drivetrain.crankset" },
      ],
    );
  },
  explanation:
    "Cranks are sold with rings or without, and a ring of its own can be named in either case. Beside cranks that have " +
    "theirs already it replaces one, which is sometimes meant, as when a smaller ring is wanted, and sometimes an " +
    "oversight: the same ring entered twice, and paid and weighed twice. Teeth are always counted from the ring named by " +
    "itself. The mass and the price of the cranks still hold the ring that came with them.",
  source: "common practice, no source",
  examples: {
    holds: `
part crankset example.set "Set 46-30" { rings: 46-30 t }

build example "Nothing replaced" {
  drivetrain { crankset: example.set; chainring: none; middle-chainring: none; inner-chainring: none }
}
`,
    fails: `
part crankset example.set "Set 42" { rings: 42 t }
part chainring example.ring "Ring 42" { teeth: 42 t }

build example "The same ring twice" {
  drivetrain { crankset: example.set; chainring: example.ring; middle-chainring: none; inner-chainring: none }
}
`,
  },
});
