import type { MoneyType, QuantityType } from "../values/types.ts";
import type { Field } from "./define.ts";
import { length, moneyRange, number, quantity, quantityRange, text, word, yesNo } from "./fields.ts";
import { assemblyTable } from "./slots/index.ts";
import { bikeCategories } from "./words.ts";

type AssemblyName = keyof typeof assemblyTable;
type AssemblyBudgets = { readonly [A in AssemblyName as `budget.${A}.mass`]: Field<QuantityType<"allowed">> } & {
  readonly [A in AssemblyName as `budget.${A}.price`]: Field<MoneyType<"allowed">>;
};

/** What one assembly alone may weigh and cost: `budget.rear-wheel.mass`. */
const assemblyBudgets = Object.fromEntries(
  Object.keys(assemblyTable).flatMap((assembly) => [
    [
      `budget.${assembly}.mass`,
      quantityRange("mass", "allowed", `Mass of everything in ${assembly}.`, {
        group: "Limits",
        unit: "kg",
        omitted: "none",
        example: "<= 1.9 kg",
      }),
    ],
    [
      `budget.${assembly}.price`,
      moneyRange(`Price of everything in ${assembly}.`, { group: "Limits", omitted: "none", example: "<= GBP 450" }),
    ],
  ]),
) as unknown as AssemblyBudgets;

/** What a build says of itself and its rider. A dot stands between a group and a field in it. */
export const buildFields = {
  category: word(bikeCategories, "What the bicycle is used for.", {
    essential: true,
    group: "Identity",
    deed: "Build it for {} use",
  }),
  template: yesNo("Whether it is a base for others and not a whole bicycle, so that empty slots are no finding.", {
    group: "Identity",
    omitted: "none",
  }),
  customer: text("For whom it is built.", { group: "Identity", omitted: "none" }),
  note: text("A remark that is printed on the sheet.", { group: "Identity", omitted: "none" }),

  "rider.mass": quantity("mass", "Mass of the rider, dressed to ride.", {
    essential: true,
    group: "Limits",
    unit: "kg",
    lowest: 8000,
    highest: 300_000,
    example: "78 kg",
  }),
  "rider.kit-mass": quantity("mass", "Mass of what is carried: luggage, water, a passenger.", {
    group: "Limits",
    unit: "kg",
    highest: 300_000,
  }),
  "rider.height": length("Height of the rider.", { group: "Geometry", lowest: 700, highest: 2300 }),
  "rider.inseam": length("From the floor to the crotch, without shoes, a book pressed up firmly.", {
    essential: true,
    group: "Geometry",
    lowest: 250,
    highest: 1150,
    example: "845 mm",
  }),
  "rider.foot-length": length("Length of the shoe, for toe and heel clearance.", {
    group: "Geometry",
    lowest: 120,
    highest: 360,
  }),
  "rider.cadence": quantity("cadence", "Cadence for the speeds of the gear table.", {
    group: "Gearing",
    lowest: 20,
    highest: 200,
  }),

  "fit.saddle-height": length("Aim: from the crank axis to the saddle's top along the seat tube.", {
    group: "Geometry",
    omitted: "none",
    lowest: 200,
    highest: 1000,
  }),
  "fit.saddle-setback": length("Aim: from the crank axis back to where the rider sits, positive backward.", {
    group: "Geometry",
    omitted: "none",
    lowest: -150,
    highest: 400,
  }),
  "fit.grip-reach": length("Aim: from the crank axis forward to the hands.", {
    group: "Geometry",
    omitted: "none",
    lowest: 100,
    highest: 900,
  }),
  "fit.grip-stack": length("Aim: height of the hands above the crank axis.", {
    group: "Geometry",
    omitted: "none",
    lowest: 200,
    highest: 1300,
  }),
  "fit.saddle-to-bar-drop": length(
    "Aim: height of the saddle's top above the bar clamp, positive with the bar lower.",
    {
      group: "Geometry",
      omitted: "none",
      lowest: -400,
      highest: 250,
    },
  ),
  "fit.tolerance": length("How far a position may lie from its aim.", { group: "Geometry", highest: 50 }),
  "fit.standover-clearance": length("Least clearance over the top tube that is asked for.", {
    group: "Geometry",
    omitted: "none",
    highest: 200,
  }),

  "ground.mud-allowance": length("Room that is kept free round the tyres; the category's usual one when left out.", {
    group: "Clearance",
    highest: 40,
    omitted: "none",
  }),
  "gearing.lowest-development": length("Aim: development of the lowest gear at most.", {
    group: "Gearing",
    unit: "m",
    lowest: 300,
    highest: 20_000,
    omitted: "none",
  }),
  "gearing.highest-development": length("Aim: development of the highest gear at least.", {
    group: "Gearing",
    unit: "m",
    lowest: 300,
    highest: 20_000,
    omitted: "none",
  }),
  "gearing.greatest-step": number("Aim: greatest ratio of one gear to the next.", {
    group: "Gearing",
    lowest: 1,
    highest: 3,
    omitted: "none",
  }),

  "budget.mass": quantityRange("mass", "allowed", "Mass of the whole bicycle.", {
    group: "Limits",
    unit: "kg",
    omitted: "none",
    example: "<= 12.5 kg",
    deed: "Let the budget be {}",
  }),
  "budget.price": moneyRange("Price of all its parts.", { group: "Limits", omitted: "none", example: "<= GBP 3200" }),
  ...assemblyBudgets,
} as const;

/** The groups of build fields, each with what belongs to it. */
export const buildGroups = {
  rider: "The rider.",
  fit: "The position that is aimed at.",
  ground: "Where it is ridden.",
  gearing: "The gears that are aimed at.",
  budget: "What it may weigh and cost, as a whole and by assembly.",
} as const;

/** Groups inside of groups, such as `budget.rear-wheel`, each with what belongs to it. */
export const innerBuildGroups: Readonly<Record<string, string>> = Object.fromEntries(
  Object.keys(assemblyTable).map((assembly) => [`budget.${assembly}`, `What ${assembly} alone may weigh and cost.`]),
);

/** Words that mean something by themselves inside a build, with what they do. */
export const buildWords = {
  remove: "Takes something inherited away; full paths, separated by commas.",
  waive: "Silences one finding, with a reason and an end date; it stays visible in every report.",
  extras: "A map of the workshop's own keys, each holding a part of any kind.",
  own: "The workshop's own data, which nothing checks.",
} as const;
