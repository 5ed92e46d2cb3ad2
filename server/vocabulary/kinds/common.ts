import { colour, money, quantity, text, word, words } from "../fields.ts";
import { bikeCategories, materials, systemMassDefinitions } from "../words.ts";

/** Facts that a part of any kind may state. */
export const commonFields = {
  maker: text("Who makes it.", { group: "Identity", example: '"Corrie"' }),
  model: text("The maker's model and year or version.", { group: "Identity", example: '"Long 12, 2026"' }),
  material: word(materials, "Material of the part where others touch it.", { group: "Identity" }),
  colour: colour("Colour, for drawings and orders.", { group: "Identity", omitted: "none" }),
  mass: quantity("mass", "Mass of everything its slot takes, such as one tyre or a pair of grips, as weighed.", {
    group: "Identity",
    lowest: 0,
    highest: 30_000,
    example: "372 g",
  }),
  price: money("Price of everything its slot takes, as the workshop sells it.", {
    group: "Identity",
    lowest: 0,
    example: "GBP 184.00",
  }),
  supplier: text("Who the workshop buys it from.", { group: "Identity", omitted: "none" }),
  "supplier-code": text("The supplier's order number.", { group: "Identity", omitted: "none", example: '"C-1052"' }),
  note: text("A remark that is printed beside the part.", { group: "Identity", omitted: "none" }),
  source: text("Where the facts come from: a manual with its page, or a measurement.", {
    group: "Identity",
    example: '"Corrie manual 2026, page 12"',
  }),
  categories: words(bikeCategories, "Uses that the maker rates it for.", {
    group: "Limits",
    example: "mountain, gravel",
  }),
  "max-system-mass": quantity(
    "mass",
    "Greatest system mass that the maker allows, by the definition stated beside it.",
    { group: "Limits", unit: "kg", lowest: 10_000, highest: 500_000, example: "120 kg" },
  ),
  "system-mass-includes": word(systemMassDefinitions, "Whose mass the greatest system mass counts.", {
    group: "Limits",
  }),
  "max-rider-mass": quantity("mass", "Greatest mass of the rider alone that the maker allows.", {
    group: "Limits",
    unit: "kg",
    lowest: 10_000,
    highest: 300_000,
  }),
} as const;
