import { parseDeclaration } from "../../grammar/parse.ts";
import type { BlockTree, Chunk, FieldEntry } from "../../grammar/tree.ts";
import { readValue } from "../values/read.ts";
import type { FieldType } from "../values/types.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import {
  buildFields,
  commonFields,
  familyByName,
  kindByName,
  measuredFieldAt,
  recordFields,
  slotByPath,
  workshopFields,
} from "../vocabulary/index.ts";
import { fieldByName } from "./read-fields.ts";

/** Types whose values have one spelling: numbers with their units, and the codes of interfaces. */
const spelt: ReadonlySet<FieldType["type"]> = new Set([
  "quantity",
  "quantities",
  "count",
  "number",
  "teeth",
  "money",
  "code",
  "codes",
]);

/** Habits that are read with a doubt, so that a person has to say what is meant: `5 NM` may be millimetres or not. */
const doubtful: ReadonlySet<string> = new Set(["value/unit-capitals"]);

/**
 * The values of a declaration that have one canonical spelling by the type of their field, by the offset in its text
 * at which each starts: `56.5cm` is written `56.5 cm`, `52T` as `52 t`, `£184.00` as `GBP 184.00`. What cannot be read
 * for certain is not among them.
 */
export function canonicalValues(text: string, chunk: Chunk): ReadonlyMap<number, string> {
  const values = new Map<number, string>();
  const fieldAt = fieldsOf(chunk);
  const { block } = parseDeclaration(text);
  if (!fieldAt || !block) return values;
  const read = (within: BlockTree, prefix: string): void => {
    for (const entry of within.entries) {
      if (entry.form === "waive") continue;
      const path = `${prefix}${entry.path.text}`;
      if (path === "own") continue;
      if (entry.form === "field") {
        const canonical = canonicalValue(entry, path, fieldAt(path));
        if (canonical !== undefined) values.set(entry.value.span.start, canonical);
      }
      if (entry.block) read(entry.block, `${path}.`);
    }
  };
  read(block, "");
  return values;
}

function canonicalValue(entry: FieldEntry, path: string, field: Field | undefined): string | undefined {
  if (!field || !spelt.has(field.type.type)) return undefined;
  const { value, written, problems } = readValue(field.type, entry.value.tokens, {
    field: path,
    span: entry.value.span,
  });
  const isCertain = problems.every(({ code, severity }) => severity !== "error" && !doubtful.has(code));
  return value === undefined || !isCertain ? undefined : written;
}

/** How the field at a path of a declaration is found; `undefined` where nothing is known of its fields. */
function fieldsOf({ keyword, kind }: Chunk): ((path: string) => Field | undefined) | undefined {
  const among = (fields: Fields) => (path: string) => fieldByName(fields, path)?.field;
  switch (keyword) {
    case "part":
      return among(kindByName(kind ?? "")?.fields ?? commonFields);
    case "standard":
      return among(familyByName(kind ?? "")?.fields ?? {});
    case "workshop":
      return among(workshopFields);
    case "build":
      return (path) => among(buildFields)(path) ?? settingAt(path);
    case "record":
      return (path) => among(recordFields)(path) ?? measuredFieldAt(path);
    default:
      return undefined;
  }
}

function settingAt(path: string): Field | undefined {
  const dot = path.lastIndexOf(".");
  const slot = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  return slot && fieldByName(slot.settings, path.slice(dot + 1))?.field;
}
