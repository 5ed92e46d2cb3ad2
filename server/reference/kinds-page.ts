import { type Field, type Fields, fieldGroups } from "../vocabulary/define.ts";
import { commonFields, kindByName, kindNames } from "../vocabulary/index.ts";
import { describeType } from "./field-type.ts";
import { code, page, table } from "./markdown.ts";

/** Rows of fields, in the order of their groups. */
export function fieldRows(fields: Fields): string[][] {
  const order = (name: string): number => {
    const group = fields[name]?.group;
    return group === undefined ? fieldGroups.length : fieldGroups.indexOf(group);
  };
  return Object.entries(fields)
    .sort(([a], [b]) => order(a) - order(b))
    .map(([name, field]) => [
      code(name) + (field.essential ? " *" : ""),
      describeType(field.type),
      field.description,
      field.omitted === "none" ? `there is none${unless(field)}` : "not known",
    ]);
}

function unless({ impliedBy = [] }: Field): string {
  return impliedBy.length === 0 ? "" : `, but not known beside ${impliedBy.map(code).join(", ")}`;
}

export const fieldHead = ["field", "takes", "what it is", "left out means"];

/** Every kind of part with its facts. */
export function kindsPage(): string {
  const parts = [
    "Every kind of part and the facts that can be stated of it. A star marks what a complete entry states. Any field can also be `none`: stated to be absent.",
    "## Facts of every kind",
    table(fieldHead, fieldRows(commonFields)),
  ];
  for (const name of kindNames) {
    const kind = kindByName(name);
    if (!kind) continue;
    const own = Object.fromEntries(
      Object.entries(kind.fields).filter(([field]) => !Object.hasOwn(commonFields, field)),
    );
    parts.push(`## ${name}`, kind.description);
    if (kind.caution) parts.push(`**Caution.** ${kind.caution}`);
    parts.push(table(fieldHead, fieldRows(own)));
  }
  return page("Kinds of parts", parts);
}
