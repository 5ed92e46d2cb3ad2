import type {
  ExplainedGroup,
  ExplainedNumber,
  ExplainedPath,
  ExplainedRow,
  ExplainedSlot,
  ExplainedValue,
  StatedFact,
} from "../engine/explain-path.ts";
import { headerPlace, type Place } from "../model/declaration.ts";
import { label } from "../model/facts.ts";
import { isRuleCheck } from "../rules/rule-check.ts";
import type { ReportedWorkshop } from "./collect.ts";
import { locate } from "./collect.ts";
import type { Paint } from "./paint.ts";
import { paragraph } from "./printable.ts";
import { placeText } from "./text.ts";
import { instanceText, verdictText } from "./verdict.ts";
import { outcomeHeadings } from "./words.ts";

interface Page {
  readonly workshop: ReportedWorkshop;
  readonly width: number;
  readonly paint: Paint;
}

/** An explanation as a person reads it: the value first, then what it comes from and where that was stated. */
export function explainedPathText(explained: ExplainedPath, page: Page): string {
  return `${lines(explained, page).join("\n")}\n`;
}

function lines(explained: ExplainedPath, page: Page): string[] {
  switch (explained.form) {
    case "number":
      return numberLines(explained, page);
    case "value":
      return valueLines(explained, page);
    case "slot":
      return slotLines(explained, page);
    case "check":
      return rowLines(explained, page);
    case "group":
      return groupLines(explained, page);
  }
}

function where({ workshop }: Page, place: Place): string {
  return placeText(locate(workshop, place));
}

function factLines(facts: readonly StatedFact[], page: Page): string[] {
  return facts.flatMap(({ path, written, subject, place }) =>
    paragraph(`${path}: ${written} (${subject}, ${where(page, place)})`, page.width, "    ", "  "),
  );
}

function numberLines(explained: ExplainedNumber, page: Page): string[] {
  const { paint, width } = page;
  const { outcome, calculation } = explained;
  const title = outcome.state === "known" ? `${explained.path}: ${outcome.shown}` : explained.path;
  const said = [...paragraph(title, width, "  ", "").map(paint.strong), ...paragraph(explained.description, width, "")];
  if (outcome.state === "none") {
    said.push("", ...paragraph(`It means nothing for this build: ${outcome.reason}.`, width, ""));
  }
  if (outcome.state === "unknown") {
    said.push("", "It cannot be worked out until these are stated:");
    for (const { what, place } of outcome.missing) {
      said.push(...paragraph(`${what} (${where(page, place)})`, width, "    ", "  - "));
    }
  }
  if (explained.facts.length > 0) said.push("", "From:", ...factLines(explained.facts, page));
  if (explained.steps.length > 0) {
    said.push("", "Working:", ...explained.steps.flatMap((step) => paragraph(step, width, "    ", "  ")));
  }
  said.push("", ...paragraph(`Formula: ${calculation.formula}`, width, "  ", ""));
  said.push(...paragraph(`Source: ${calculation.source}`, width, "  ", ""));
  return said;
}

function valueLines(explained: ExplainedValue, page: Page): string[] {
  const { paint, width } = page;
  const { stated, path } = explained;
  const head = stated ? `${path}: ${stated.written}` : `${path}: not stated`;
  const said = [...paragraph(head, width, "  ", "").map(paint.strong), ...paragraph(explained.description, width, "")];
  if (stated) {
    const text = explained.unreadable ? "Something stands there that cannot be read" : "Stated";
    return [...said, "", ...paragraph(`${text} by ${stated.subject} at ${where(page, stated.place)}.`, width, "")];
  }
  const meaning =
    explained.omitted === "none" ? "Leaving it out says that there is none." : "Whatever needs it cannot be checked.";
  return [...said, "", ...paragraph(`${meaning} It would be stated at ${where(page, explained.place)}.`, width, "")];
}

function slotLines(explained: ExplainedSlot, page: Page): string[] {
  const { paint, width } = page;
  const { installed, path } = explained;
  const said = [...paragraph(`${path}: ${installed?.name ?? "not stated"}`, width, "  ", "").map(paint.strong)];
  said.push(...paragraph(explained.description, width, ""), "");
  if (!installed) {
    const kinds =
      explained.kinds.length === 0 ? "a part of any kind" : `a part of kind ${explained.kinds.join(" or ")}`;
    said.push(...paragraph(`It takes ${kinds}.`, width, ""));
    return said;
  }
  said.push(...paragraph(`Fitted at ${where(page, installed.place)}.`, width, ""));
  if (installed.state === "unknown-part") {
    const why =
      installed.declaredAs === undefined
        ? "No part is declared with that name."
        : `That name is declared as ${installed.declaredAs}, which does not go here.`;
    said.push(...paragraph(why, width, ""));
  }
  if (installed.part) {
    const { declaration } = installed.part;
    const kind = declaration.kind ?? "part";
    const at = where(page, headerPlace(declaration));
    said.push(...paragraph(`${label(installed)} is declared as ${kind} at ${at}.`, width, ""));
    if (declaration.from !== undefined) said.push(...paragraph(`It derives from ${declaration.from}.`, width, ""));
  }
  if (explained.settings.length > 0) said.push("", "As fitted here:", ...factLines(explained.settings, page));
  if (explained.facts.length > 0) said.push("", "Of the part:", ...factLines(explained.facts, page));
  return said;
}

function rowLines({ row }: ExplainedRow, page: Page): string[] {
  const { paint, width } = page;
  const said = [
    `${paint.strong(row.check.code)}  ${row.check.title}`,
    outcomeHeadings[row.outcome],
    "",
    ...row.instances.flatMap((result) => {
      const { verdict } = result;
      const said = `${outcomeHeadings[verdict.outcome]}${instanceText(result)}: ${verdictText(verdict)}`;
      return paragraph(said, width, "    ", "  ");
    }),
  ];
  if (isRuleCheck(row.check)) {
    const { declaration } = row.check.rule;
    const declared = `A house rule, declared at ${where(page, headerPlace(declaration))}.`;
    return [...said, "", ...paragraph(row.check.explanation, width, ""), ...paragraph(declared, width, "")];
  }
  return [...said, "", ...paragraph(`ferrule explain ${row.check.code} says what it means.`, width, "")];
}

function groupLines(explained: ExplainedGroup, page: Page): string[] {
  const { paint, width } = page;
  const said: string[] = [];
  if (explained.path !== "") said.push(paint.strong(explained.path), "");
  if (explained.fields.length > 0) said.push("Stated of the build:", ...factLines(explained.fields, page), "");
  if (explained.slots.length > 0) {
    said.push("Parts:");
    for (const { path, name, place } of explained.slots) {
      said.push(...paragraph(`${path}: ${name} (${where(page, place)})`, width, "    ", "  "));
    }
    said.push("");
  }
  said.push("Worked out:");
  for (const { path, shown } of explained.numbers) said.push(...paragraph(`${path}: ${shown}`, width, "    ", "  "));
  if (explained.numbers.length === 0) said.push(paint.quiet("  nothing"));
  if (explained.spec !== undefined) {
    said.push(
      "",
      ...paragraph(`Specification, for records of bicycles built to it: spec: ${explained.spec}`, width, ""),
    );
  }
  return said;
}
