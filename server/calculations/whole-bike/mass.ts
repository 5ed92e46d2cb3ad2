import { everyFact, type Facts } from "../../model/need.ts";
import { quantities, text } from "../../vocabulary/fields.ts";
import { type BuildInputs, defineCalculation, input, known, meaningless, optionalInput } from "../define.ts";
import { eachPartOnce, namesIn, ofAssembly, sumPlaces } from "../shared/every-part.ts";
import { negative } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

const inputs = {
  masses: input(quantities("mass", "Masses of the parts, separated by commas.")),
  parts: optionalInput(text("Names of the parts, in the order of their masses, separated by commas.")),
  unweighed: optionalInput(text("Names of parts whose mass is not known, separated by commas.")),
};

const needs = { masses: everyFact<number>("mass") };

function feedOf(assembly: string) {
  return ({ masses }: Facts<typeof needs>): BuildInputs<typeof inputs> => {
    const rows = ofAssembly(eachPartOnce(masses.value), assembly);
    if (rows.length === 0) return meaningless("nothing is fitted here");
    const weighed = rows.flatMap(({ slot, fact }) => (fact.state === "known" ? [{ slot, mass: fact.value }] : []));
    return known({
      masses: weighed.map(({ mass }) => mass),
      parts: weighed.map(({ slot }) => slot).join(", "),
      unweighed: rows
        .filter(({ fact }) => fact.state === "unknown")
        .map(({ slot }) => slot)
        .join(", "),
    });
  };
}

/** Mass of what is fitted, as far as it is known. */
export default defineCalculation({
  name: "mass",
  title: "Mass of the parts",
  description:
    "Sum of the masses that are stated. Parts whose mass is not known are named, and make the sum a least mass and not the mass.",
  inputs,
  results: {
    "mass-at-least": { unit: "g", digits: 0, description: "Sum of the masses that are known." },
    "heaviest-part": { unit: "", digits: 0, description: "The part that weighs the most, where the parts are named." },
    "unweighed-parts": { unit: "", digits: 0, list: true, description: "Parts whose mass is not known." },
  },
  formula: "sum of all masses known",
  source: "definition",
  compute({ masses, parts, unweighed }, working) {
    const wrong = negative(Object.fromEntries(masses.map((mass, index) => [`mass ${index + 1}`, mass])));
    if (wrong) return wrong;
    const names = namesIn(parts);
    const missing = namesIn(unweighed);
    const sum = masses.reduce((total, mass) => total + mass, 0);
    masses.forEach((mass, index) => {
      working?.step(`${names[index] ?? `part ${index + 1}`}: ${say(mass, "g", 1)}`);
    });
    working?.step(`Sum: ${say(sum, "g", 1)}`);
    if (missing.length > 0) working?.step(`At least, since the mass is not known of: ${missing.join(", ")}`);
    const heaviest = masses.length > 0 ? names[masses.indexOf(Math.max(...masses))] : undefined;
    return {
      "mass-at-least": sum,
      "unweighed-parts": missing,
      ...(heaviest === undefined ? {} : { "heaviest-part": heaviest }),
    };
  },
  inBuild: sumPlaces.map((assembly) => ({ assembly, needs, inputs: feedOf(assembly) })),
  examples: [
    {
      inputs: { masses: [372, 1480, 95.5], parts: "cassette, frame, bolts", unweighed: "saddle" },
      results: { "mass-at-least": 1947.5, "heaviest-part": "frame", "unweighed-parts": ["saddle"] },
      source: "worked by hand",
    },
    {
      inputs: { masses: [453.59237, 453.59237] },
      results: { "mass-at-least": 907.18474, "unweighed-parts": [] },
      source: "two pounds avoirdupois, exact by definition",
    },
  ],
});
