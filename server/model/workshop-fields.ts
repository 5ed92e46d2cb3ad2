import { workshopFields } from "../vocabulary/index.ts";
import type { Declaration } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { readFields } from "./read-fields.ts";
import type { Statement } from "./stated.ts";

/** What the declaration of a workshop states, by the field's name. What is wrong with it is added to `findings`. */
export function workshopFieldsOf(declaration: Declaration, findings: Finding[]): Map<string, Statement> {
  const into = new Map<string, Statement>();
  if (declaration.tree.block) {
    readFields(declaration.tree.block, {
      declaration,
      fields: workshopFields,
      owner: "a workshop",
      prefix: "",
      free: ["own"],
      into,
      findings,
    });
  }
  return into;
}

const kept = new WeakMap<Declaration, ReadonlyMap<string, Statement>>();

/** The same, read once for a declaration, for those whom its findings do not concern. */
export function statedByWorkshop(declaration: Declaration): ReadonlyMap<string, Statement> {
  let fields = kept.get(declaration);
  if (!fields) {
    fields = workshopFieldsOf(declaration, []);
    kept.set(declaration, fields);
  }
  return fields;
}
