import { ruleFunctions } from "../rules/functions.ts";
import { ruleEntries, ruleExpectations } from "../vocabulary/rules.ts";
import { fenced, table } from "./markdown.ts";

/** House rules and their expressions, for the page of the language. */
export function rulesSection(): readonly string[] {
  return [
    "## House rules",
    '`rule NAME "TITLE" { ... }` is a constraint of the workshop\'s own. It is asked of every build like a check that comes with the program: it holds, fails, cannot be checked for want of a fact, is waived, or does not apply; it is counted and reported under the code `rule/NAME`, and waived by that code. With several named parts in a slot every combination is asked. Parts are ranked, and repairs judged, by rules as by checks.',
    fenced(`rule tall-stack "No more than 30 mm of spacers under a stem" {
  when: category is mountain
  require: cockpit.stem.spacers-below <= 30 mm
  severity: warning
  because: "Our carbon-steerer policy."
}

rule spare-capacity "The cage keeps two teeth in hand" {
  when: drivetrain.rear-derailleur is not none
  let: spare = drivetrain.rear-derailleur.total-capacity - drivetrain.capacity-needed
  require: spare >= 2 t
  message: "{drivetrain.rear-derailleur} has {spare} to spare."
  because: "Owners fit a bigger ring and do not ask."
}

rule bell-in-town "A town bike leaves with a bell" {
  when: category in city, cargo
  require: lighting.bell is not none
  set { lighting.bell: gill.bell }
  expect {
    holds: fleetwith-52
    not-applicable: fellside-l
  }
}`),
    table(
      ["entry", "what it says", "for example"],
      Object.entries(ruleEntries).map(([name, entry]) => {
        const description = entry.form === "field" ? entry.field.description : entry.description;
        const example =
          entry.form === "field" ? ("example" in entry.field ? entry.field.example : undefined) : entry.example;
        return [`\`${name}\``, description, example === undefined ? "" : `\`${example}\``];
      }),
    ),
    "`require` may stand several times; all of it is required. Without `when` a rule is for every build; one to which `when` does not apply is counted as not applicable. A rule with a mistake in it says so where it is written, and is asked of no build until the mistake is mended.",
    `What a rule is tried with stands under \`expect\`: ${Object.keys(ruleExpectations)
      .map((name) => `\`${name}\``)
      .join(
        ", ",
      )}, each with names of builds. It is a finding at the name when the rule comes out otherwise there; waivers in the build change nothing about it.`,
    "### Expressions",
    "An expression names anything of a build by its path: a slot (`lighting.bell`), a fact of the part in it (`drivetrain.cassette.cogs`), how it is installed (`cockpit.stem.spacers-below`), a field of the build (`category`, `rider.mass`), and every number that is worked out (`drivetrain.capacity-needed`, listed in [calculations.md](calculations.md)). `today` is the day on which the build is checked. Numbers are written with their units, words and codes and names of parts as they are, texts in quotes.",
    table(
      ["written", "loosest first"],
      [
        ["`a or b`, `a and b`, `not a`", "conditions"],
        ["`a < b`, `<=`, `>`, `>=`", "numbers that measure the same thing, days"],
        [
          "`a is b` (or `a = b`), `a is not b`",
          "numbers, words, codes, parts, yes and no; `none` for what there is none of",
        ],
        [
          "`a in b, c`, `a not in 3 to 5 mm`, `52 t in drivetrain.cassette.cogs`",
          "one of several, inside a range, an item of a list",
        ],
        ["`a to b`", "a range, both ends included"],
        ["`a + b`, `a - b`, then `a * b`, `a / b`", "arithmetic; the signs stand between blanks"],
        ["`f(a, b)`, `(a)`", "a function, a parenthesis"],
      ],
    ),
    table(
      ["function", "what it comes to", "for example"],
      ruleFunctions.map(({ written, description, example }) => [`\`${written}\``, description, `\`${example}\``]),
    ),
    "**What is measured.** Adding millimetres to kilograms, comparing a price with a length, or a word with one that its field cannot have is a finding where the rule is written, before any build is looked at. A product measures what its factors make together: a length times a length is an area. Sums of two currencies are never taken together: no rate of exchange is kept.",
    "**What is not stated.** Every condition is true, false or open. `false and open` is false, `true or open` is true, anything else that is open leaves the rule unchecked, with every missing fact named. `sum`, `min` and `max` use what is known: three parts of four that weigh too much already are too heavy, whatever the fourth weighs. So does a sum that is worked out: `bike.mass-at-least <= 12 kg` or `bike.price-at-least <= GBP 3000` is open while a part is unweighed or unpriced or a place is not spoken of, unless the rest is too much already. Dividing by zero, and the least of an empty list, leave a rule open too.",
    "**What there is none of.** `none` is the same as `none` and as nothing else. What belongs to a part that is not there does not arise: `lighting.bell.mass <= 50 g` does not apply to a bike without a bell. `sum`, `min`, `max` and `count` pass over it.",
    "**Ranges.** A tolerance has to satisfy a rule with every value that it may have, something adjustable (a torque window) with one value that it can be set to; a range of what is allowed is asked with `in`, or by its ends with `min` and `max`. Where one range would have to satisfy two comparisons at once, nothing is claimed.",
  ];
}
