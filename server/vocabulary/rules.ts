import type { Field } from "./define.ts";
import { date, text, word } from "./fields.ts";

/** An entry of a rule: an expression, an ordinary field, or a block of entries. */
export type RuleEntry =
  | { readonly form: "expression"; readonly description: string; readonly essential?: true; readonly example: string }
  | { readonly form: "field"; readonly field: Field }
  | { readonly form: "block"; readonly description: string; readonly example: string };

/** What a rule may come to for a build that it names as an example, by the word it is written with. */
export const ruleExpectations = {
  holds: "Builds for which it holds.",
  fails: "Builds that it forbids.",
  unknown: "Builds that do not state what it asks for.",
  "not-applicable": "Builds that it is not for.",
} as const;

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
  message: {
    form: "field",
    field: text(
      "What is said of a breach, in place of the comparison itself; {PATH} stands for the value there, with its unit.",
      {
        omitted: "none",
        example: '"{cockpit.stem.spacers-below} of spacers is more than we allow."',
      },
    ),
  },
  mend: { form: "field", field: text("What mends it, shown with every breach.", { omitted: "none" }) },
  set: {
    form: "block",
    description: "Values that mend it, each offered as a repair: the path in the build and what to write there.",
    example: "set { cockpit.stem.spacers-below: 30 mm }",
  },
  until: { form: "field", field: date("Last day on which it applies.", { omitted: "none" }) },
  expect: {
    form: "block",
    description: "Builds by which the rule itself is tested: what it has to come to for each of them.",
    example: "expect { holds: fellside-l; fails: fellside-xl }",
  },
} as const satisfies Readonly<Record<string, RuleEntry>>;
