import type { FieldType } from "../values/types.ts";
import { buildFields } from "./builds.ts";
import type { Field } from "./define.ts";
import { kindByName, slotByPath } from "./index.ts";
import { measurementAt } from "./measurements/index.ts";

/**
 * The type of what was measured: one value, even where a part states a range in which it may lie.
 */
function measuredType(type: FieldType): FieldType {
  if (type.type === "quantity" || type.type === "number" || type.type === "money") return { ...type, role: "exact" };
  return type;
}

function measured(field: Field): Field {
  const { example: _, essential: __, ...rest } = field;
  return { ...rest, type: measuredType(field.type), omitted: "none" };
}

/**
 * How a value that was measured at a path of a build is read: a row of the table of measurements, a setting of a slot,
 * a fact of a part, a field of the build, or the part itself.
 * @param kind the kind of the part that stands there, where the slot takes several.
 */
export function measuredFieldAt(path: string, kind?: string): Field | undefined {
  const row = measurementAt(path);
  if (row) return row;
  const slot = slotByPath(path);
  if (slot) {
    return {
      type: { type: "part", kinds: slot.kinds },
      description: `The part that was fitted. ${slot.description}`,
      omitted: "none",
    };
  }
  if (Object.hasOwn(buildFields, path))
    return measured((buildFields as Readonly<Record<string, Field>>)[path] as Field);
  const dot = path.lastIndexOf(".");
  const parent = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  if (!parent) return undefined;
  const name = path.slice(dot + 1);
  const own = Object.hasOwn(parent.settings, name) ? parent.settings[name] : undefined;
  if (own) return measured(own);
  const kinds = kind === undefined ? parent.kinds : [kind, ...parent.kinds];
  for (const each of kinds) {
    const fields = kindByName(each)?.fields ?? {};
    if (Object.hasOwn(fields, name)) return measured(fields[name] as Field);
  }
  return undefined;
}
