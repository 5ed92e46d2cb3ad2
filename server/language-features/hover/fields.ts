import { unitsFor } from "../../values/field-units.ts";
import type { ReadContext } from "../../values/problems.ts";
import { readValue } from "../../values/read.ts";
import { showValue } from "../../values/show.ts";
import type { FieldType, RangeRole } from "../../values/types.ts";
import type { Field } from "../../vocabulary/define.ts";
import { familyByName, kindByName } from "../../vocabulary/index.ts";
import { bullets, code, paragraphs, plain } from "../shared/markdown.ts";
import type { FieldPlace, Meaning } from "../shared/meaning.ts";

/** What a field is: description, type and unit, what leaving it out means, source. */
export function fieldHover({ owner, name, field }: FieldPlace): string {
  return paragraphs(
    `**${plain(name)}** of ${plain(owner)}`,
    plain(field.description),
    bullets([
      typeText(field.type),
      field.omitted === "none"
        ? `Left out, there is none${field.impliedBy ? `, unless ${field.impliedBy.map(code).join(", ")} or the like is stated` : ""}.`
        : "Left out, it is not known, and what needs it cannot be checked.",
      ...(field.example === undefined ? [] : [`For example ${code(field.example)}.`]),
      ...(field.formerNames?.length ? [`Formerly ${field.formerNames.map(code).join(", ")}.`] : []),
      ...(field.source === undefined ? [] : [`Source: ${plain(field.source)}`]),
    ]),
  );
}

const rangeWords: Readonly<Record<RangeRole, string>> = {
  exact: "one value, no range",
  tolerance: "a value or a range; what is checked must hold for all of it",
  adjustable: "a value or a range; it can be set anywhere inside",
  allowed: "a value or a range; what is paired with it must lie inside",
};

/** The type of a field in words: what may be written there. */
export function typeText(type: FieldType): string {
  switch (type.type) {
    case "quantity": {
      const units = unitsFor(type).map(({ symbol }) => symbol);
      return `A ${type.dimension} in ${code(units[0] ?? "")} (also ${units.slice(1, 5).map(code).join(", ") || "no other"}): ${rangeWords[type.role]}.`;
    }
    case "quantities":
      return `Several of ${type.dimension}, with commas between and the unit after the last.`;
    case "count":
      return type.unit === undefined ? "A whole number." : `A whole number of ${code(type.unit)}.`;
    case "number":
      return `A plain number: ${rangeWords[type.role]}.`;
    case "teeth":
      return `Counts of teeth with dashes between: ${code("11-13-15 t")}.`;
    case "code":
      return `One code of the family ${code(type.family)}${noun(type.family)}.`;
    case "codes":
      return `Codes of the family ${code(type.family)}${noun(type.family)}, with commas between.`;
    case "word":
      return `One of ${wordList(type.words)}.`;
    case "words":
      return `Any of ${wordList(type.words)}, with commas between.`;
    case "text":
      return "Text in quotes.";
    case "yes-no":
      return `${code("yes")} or ${code("no")}.`;
    case "date":
      return `A day, written ${code("2027-03-31")}.`;
    case "money":
      return `A sum with its currency: ${code("GBP 184.00")}.`;
    case "colour":
      return `A colour, by name or as ${code("#2f5d50")}.`;
    case "part":
      return `The name of ${type.kinds.map((kind) => kindByName(kind)?.noun ?? kind).join(" or ") || "a part"}.`;
    case "slot":
      return `A slot of the same build: ${code("rear-brake.lever")}.`;
  }
}

function noun(family: string): string {
  const found = familyByName(family);
  return found ? ` (${plain(found.noun)})` : "";
}

/** How many words of a set are listed; more only fill the window. */
const mostWords = 12;

function wordList(words: Readonly<Record<string, string>>): string {
  const names = Object.keys(words);
  const shown = names.slice(0, mostWords).map(code).join(", ");
  return names.length > mostWords ? `${shown} and ${names.length - mostWords} more` : shown;
}

/** A value as it was read, in metric and in inch units; empty when it cannot be read, which has a finding of its own. */
export function readingOf(field: Field, tokens: Parameters<typeof readValue>[1], name: string): string {
  const context: Partial<ReadContext> = { field: name };
  const { value, isNone } = readValue(field.type, tokens, context);
  if (isNone) return "There is none: stated.";
  if (value === undefined) return "";
  const shown = showValue(field.type, value, { displayUnits: "both" });
  return `Read as ${code(shown)}.`;
}

/** A word of a set with its meaning. */
export function wordHover({ at, word, description }: Extract<Meaning, { what: "word" }>): string {
  return paragraphs(`**${plain(word)}**: ${plain(description)}`, fieldHover(at));
}
