import type { Field } from "./define.ts";
import { date, text, word } from "./fields.ts";

/** An entry of a rule: an expression, or an ordinary field. */
export type RuleEntry =
  | { readonly form: "expression"; readonly description: string; readonly essential?: true; readonly example: string }
  | { readonly form: "field"; readonly field: Field };

/** What a rule states, in the order in which it is written. */
export const ruleEntries = {
  when: {
    form: "expression",
    description: "Builds to which it applies; every build when left out.",
    example: "category is mountain",
  },
  let: {
    form: "expression",
    description: "Names a value for use in the entries after it.",
    example: "height = cockpit.stem.spacers-below + headset.upper-stack",
  },
  require: {
    form: "expression",
    description: "What has to be true of the build.",
    essential: true,
    example: "cockpit.stem.spacers-below <= 30 mm",
  },
  severity: {
    form: "field",
    field: word(
      {
        error: "The build is not to be made so.",
        warning: "To be looked at.",
        information: "Good to know.",
      },
      "How grave a breach is; an error when left out.",
      { omitted: "none" },
    ),
  },
  because: {
    form: "field",
    field: text("Why the workshop wants it, shown with every breach.", { essential: true }),
  },
  mend: { form: "field", field: text("What mends it, shown with every breach.", { omitted: "none" }) },
  until: { form: "field", field: date("Last day on which it applies.", { omitted: "none" }) },
} as const satisfies Readonly<Record<string, RuleEntry>>;
