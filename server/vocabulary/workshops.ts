import { currencies } from "./currencies.ts";
import { count, text, word } from "./fields.ts";
import { sides } from "./words.ts";

/** What the declaration of a workshop states. */
export const workshopFields = {
  language: count("Number of the language that its files are written in.", {
    essential: true,
    lowest: 1,
    highest: 99,
    example: "1",
  }),
  currency: word(currencies, "Currency of its prices, by ISO 4217.", {
    essential: true,
    source: "ISO 4217",
    example: "GBP",
  }),
  units: word(
    {
      metric: "Millimetres, grams, newton-metres and bar.",
      inch: "Inches, pounds, inch-pounds and pounds per square inch.",
      both: "Metric, with the inch units after it.",
    },
    "Units in which reports and sheets show numbers; files may use any.",
  ),
  paper: word({ a4: "210 by 297 mm.", letter: "8.5 by 11 in." }, "Paper on which sheets are printed."),
  "front-brake-side": word(sides, "Hand that works the front brake where it trades, by law or habit."),
  address: text("Address for the head of a sheet.", { omitted: "none" }),
  contact: text("Telephone or mail for the head of a sheet.", { omitted: "none" }),
  note: text("A remark that is printed on every sheet.", { omitted: "none" }),
} as const;
