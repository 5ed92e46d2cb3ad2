import { stated } from "../../calculations/shared/maybe.ts";
import { fact, type Maybe, optional, slot, worked } from "../../model/need.ts";
import { inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/belt-length",
  title: "The belt is taut within the movement of the axle",
  severity: "error",
  since: 1,
  needs: () => ({
    ...requiredRingNeeds,
    belt: slot("drivetrain.chain"),
    teeth: fact("drivetrain.chain", "teeth"),
    cogs: fact("drivetrain.cassette", "cogs"),
    chainstay: fact("frame", "chainstay"),
    dropout: optional(fact("frame", "dropout")),
    taut: optional(worked<number>("drivetrain.belt-chainstay")),
    fewest: optional(worked<number>("drivetrain.belt-teeth-least")),
    most: optional(worked<number>("drivetrain.belt-teeth-greatest")),
    pitch: optional(fact("drivetrain.chain", "pitch")),
    family: optional(fact("drivetrain.chain", "drive-family")),
  }),
  test(facts) {
    const { belt, teeth, taut, fewest, most, pitch, family, cogs, chainstay, dropout } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    if (stated(dropout) === "vertical") {
      return notApplicable("neither axle nor cranks can be moved, which is found as such");
    }
    if (taut.state === "unknown") return cannotTell(taut);
    const ring = rings.rings[0];
    const sprocket = cogs.value[0] ?? 0;
    if (rings.rings.length > 1 || cogs.value.length > 1) {
      return notApplicable("a belt runs on one ring and one sprocket");
    }
    const familyPitch = family.state === "known" ? dimensionOf<number>(family.value, "pitch") : undefined;
    if (pitch.state === "none" && familyPitch === undefined) return notApplicable("no pitch is stated");
    const millimetres = pitch.state === "known" ? pitch.value : familyPitch;
    const ofPitch = millimetres === undefined ? "" : ` with a pitch of ${showQuantity(millimetres, "length")}`;
    const loop = `A belt of ${teeth.value} t${ofPitch} round ${ring.teeth} t and ${sprocket} t`;
    const reach = showInterval(chainstay.value, "length");
    const others = [teeth, ring.fact, cogs, chainstay];
    const mends = swaps("drivetrain.chain", ring.slot, "drivetrain.cassette");
    if (taut.state === "none") {
      return fails(
        `${loop} does not reach round both: fit a longer belt, a smaller ring or a smaller sprocket.`,
        belt,
        others,
        mends,
      );
    }
    const distance = taut.value;
    if (inside(distance, chainstay.value)) {
      return holds(
        `${loop} is taut with a chainstay of ${showQuantity(distance, "length")}, and it can be set to ${reach}.`,
        (chainstay.value.greatest - distance) / chainstay.value.greatest,
      );
    }
    const fault = distance > chainstay.value.greatest ? "too long" : "too short";
    return fails(
      `${loop} is taut with a chainstay of ${showQuantity(distance, "length")}, but it can be set to ${reach} only, so the belt is ${fault}: fit ${belts(fewest, most)}another ring or sprocket.`,
      belt,
      others,
      mends,
    );
  },
  explanation:
    "A belt comes in fixed numbers of teeth and cannot be shortened. With ring and sprocket given, each length is taut at " +
    "one distance between the axes only, and the axle has to be movable to just there. It also has to come a little " +
    "farther forward to put the belt on and a little farther back as it wears in. The distance follows from the geometry " +
    "of a loop round two pitch circles; a belt's pitch runs along the circle and not along its chords, unlike a chain's.",
  source: "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived",
  examples: {
    holds: `
part frame example.frame "Frame" { chainstay: 430 to 450 mm; dropout: sliding }
part belt example.belt "Belt 117" { teeth: 117 t; pitch: 11 mm }
part belt-ring example.ring "Belt ring 50" { teeth: 50 t }
part crankset example.crank "Crank" { rings: none }
part sprocket example.cog "Sprocket 24" { cogs: 24 t }

build example "The axle reaches" {
  frame: example.frame
  drivetrain {
    chain: example.belt
    chainring: example.ring
    crankset: example.crank
    cassette: example.cog
  }
}
`,
    fails: `
part frame example.frame "Frame" { chainstay: 430 to 450 mm; dropout: sliding }
part belt example.belt "Belt 122" { teeth: 122 t; pitch: 11 mm }
part belt-ring example.ring "Belt ring 50" { teeth: 50 t }
part crankset example.crank "Crank" { rings: none }
part sprocket example.cog "Sprocket 24" { cogs: 24 t }

build example "A belt too long" {
  frame: example.frame
  drivetrain {
    chain: example.belt
    chainring: example.ring
    crankset: example.crank
    cassette: example.cog
  }
}
`,
  },
});

/** The belts that are taut within the movement of the axle, as the beginning of a remedy; nothing where none is. */
function belts(fewest: Maybe<number>, most: Maybe<number>): string {
  if (fewest.state !== "known" || most.state !== "known") return "a belt with another number of teeth, or ";
  const [from, to] = [Math.ceil(fewest.value), Math.floor(most.value)];
  if (from > to) return "";
  return from === to ? `a belt of ${from} t, or ` : `a belt of ${from} to ${to} t, or `;
}
