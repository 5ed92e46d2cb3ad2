import { calculationOfQuantity } from "../calculations/table.ts";
import type { Check } from "../checks/define.ts";
import type { Need } from "../model/need.ts";
import type { Field } from "../vocabulary/define.ts";
import { buildFields, kindByName, slotByPath, workshopFields } from "../vocabulary/index.ts";
import type { Paint } from "./paint.ts";
import { paragraph } from "./printable.ts";
import { severityWords } from "./words.ts";

/** Something a check needs to know, in words. */
export interface NeededFact {
  /** `drivetrain.cassette.cogs`. */
  readonly path: string;
  readonly description: string;
  /** True when the check can answer without it in some builds. */
  readonly optional: boolean;
}

/** Everything that there is to know about a check. */
export interface CheckExplanation {
  readonly code: string;
  readonly title: string;
  readonly severity: Check["severity"];
  readonly explanation: string;
  readonly needs: readonly NeededFact[];
  readonly instances: readonly string[];
  readonly source: string;
  readonly caution?: string;
  readonly examples: { readonly holds: string; readonly fails: string };
}

export function explainCheck(check: Check): CheckExplanation {
  const instances = check.instances ?? [{ name: "" }];
  const needs = new Map<string, NeededFact>();
  for (const instance of instances) {
    for (const need of Object.values(check.needs(instance)) as Need[]) {
      const needed = describeNeed(need);
      if (!needs.has(needed.path)) needs.set(needed.path, needed);
    }
  }
  return {
    code: check.code,
    title: check.title,
    severity: check.severity,
    explanation: check.explanation,
    needs: [...needs.values()],
    instances: instances.map(({ name }) => name).filter((name) => name !== ""),
    source: check.source,
    ...(check.caution === undefined ? {} : { caution: check.caution }),
    examples: check.examples,
  };
}

/** What a need asks for, with the description of its row in the vocabulary. */
export function describeNeed(need: Need): NeededFact {
  const { optional } = need;
  switch (need.kind) {
    case "fact":
      return { path: `${need.slot}.${need.field}`, description: factOf(need.slot, need.field), optional };
    case "setting": {
      const field = slotByPath(need.slot)?.settings[need.setting];
      return { path: `${need.slot}.${need.setting}`, description: field?.description ?? "", optional };
    }
    case "slot":
      return { path: need.slot, description: slotByPath(need.slot)?.description ?? "", optional };
    case "field": {
      const field = (buildFields as Readonly<Record<string, Field>>)[need.field];
      return { path: need.field, description: field?.description ?? "", optional };
    }
    case "workshop-field": {
      const field = (workshopFields as Readonly<Record<string, Field>>)[need.field];
      return { path: `${need.field} of the workshop`, description: field?.description ?? "", optional };
    }
    case "fact-of-named": {
      const field = slotByPath(need.slot)?.settings[need.setting];
      return {
        path: `${need.slot}.${need.setting}`,
        description: `${field?.description ?? ""} Of the part it names: ${need.field}.`.trim(),
        optional,
      };
    }
    case "worked": {
      const quantity = calculationOfQuantity(need.quantity);
      const result = quantity?.calculation.results[quantity.result];
      return { path: need.quantity, description: `${result?.description ?? ""} Worked out.`.trim(), optional };
    }
    case "every-fact":
      return { path: `*.${need.field}`, description: "Of every part that has it.", optional };
    case "every-setting":
      return { path: `*.${need.setting}`, description: "Of every slot where it is stated.", optional };
    case "every-slot":
      return { path: "*", description: "Every slot of the build.", optional };
  }
}

function factOf(slot: string, name: string): string {
  for (const kind of slotByPath(slot)?.kinds ?? []) {
    const field = kindByName(kind)?.fields[name];
    if (field) return field.description;
  }
  return "";
}

/** The explanation as a person reads it. */
export function checkExplanationText(explained: CheckExplanation, width: number, paint: Paint): string {
  const severity = paint[explained.severity](severityWords[explained.severity]);
  const lines = [
    `${paint.strong(explained.code)}  ${severity}`,
    ...paragraph(explained.title, width, "").map(paint.strong),
    "",
    ...explained.explanation.split("\n").flatMap((text) => paragraph(text.trim(), width, "")),
  ];
  if (explained.caution !== undefined) {
    lines.push("", ...paragraph(`Caution: ${explained.caution}`, width, "  ", "").map(paint.warning));
  }
  if (explained.needs.length > 0) lines.push("", "It needs to know:");
  for (const { path, description, optional } of explained.needs) {
    const note = optional ? " (where the build has it)" : "";
    lines.push(...paragraph(`${path}${note}: ${description}`, width, "      ", "  - "));
  }
  if (explained.instances.length > 0) {
    lines.push("", ...paragraph(`It is asked for each of: ${explained.instances.join(", ")}.`, width, ""));
  }
  lines.push("", ...paragraph(`Source: ${explained.source}`, width, "  ", ""));
  const { holds, fails } = explained.examples;
  if (holds !== "") lines.push("", "It holds in this build:", "", ...example(holds));
  if (fails !== "") lines.push("", "It fails in this one:", "", ...example(fails));
  return `${lines.join("\n")}\n`;
}

/** An example's text, without blank lines around it and without the indentation that all its lines share. */
function example(text: string): string[] {
  const lines = text.split("\n").map((line) => line.trimEnd());
  while (lines[0] === "") lines.shift();
  while (lines.at(-1) === "") lines.pop();
  const depths = lines.filter((line) => line !== "").map((line) => line.length - line.trimStart().length);
  const shared = depths.length === 0 ? 0 : Math.min(...depths);
  return lines.map((line) => (line === "" ? "" : `    ${line.slice(shared)}`));
}
