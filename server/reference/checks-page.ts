import { format } from "../../grammar/format.ts";
import { checks } from "../checks/table.ts";
import type { Need } from "../model/need.ts";
import { code, fenced, page } from "./markdown.ts";

/** A need in words: `drivetrain.cassette.cogs`. */
export function needPath(need: Need): string {
  switch (need.kind) {
    case "fact":
      return `${need.slot}.${need.field}`;
    case "setting":
      return `${need.slot}.${need.setting}`;
    case "slot":
      return need.slot;
    case "field":
      return need.field;
    case "workshop-field":
      return `${need.field} of the workshop`;
    case "fact-of-named":
      return `${need.field} of the slot named by ${need.slot}.${need.setting}`;
    case "worked":
      return need.quantity;
    case "every-fact":
      return `${need.field} of every part`;
    case "every-setting":
      return `${need.setting} of every slot`;
    case "every-slot":
      return "every slot";
  }
}

/** An example in the form the formatter gives it. */
function example(text: string): string {
  return fenced(format(text.trim()).text);
}

/** Every check: what it asks, why, what it needs, where it is from, and examples. */
export function checksPage(): string {
  const parts = [
    "Every check that is made of a build. Each one holds, fails, cannot be made (the missing facts are named), is waived, or does not apply; nothing is passed over in silence.",
  ];
  for (const check of checks) {
    const needs = new Set<string>();
    for (const instance of check.instances ?? [{ name: "" }]) {
      for (const need of Object.values(check.needs(instance))) {
        needs.add(code(needPath(need)) + (need.optional ? " (where stated)" : ""));
      }
    }
    const shown = [...needs];
    parts.push(
      `## ${check.code}`,
      `**${check.title}.** Severity: ${check.severity}${check.safety ? "; safety: never silenced altogether by a waiver" : ""}.`,
      check.explanation,
    );
    if (check.caution) parts.push(`**Caution.** ${check.caution}`);
    parts.push(
      `Needs: ${shown.slice(0, 12).join(", ")}${shown.length > 12 ? ` and ${shown.length - 12} more` : ""}.`,
      `Source: ${check.source}`,
    );
    if (check.examples.fails !== "") parts.push("Fails:", example(check.examples.fails));
    parts.push("Holds:", example(check.examples.holds));
  }
  return page("Checks", parts);
}
