import type { TextMateTables } from "../../grammar/textmate.ts";
import { teethSpellings, type Unit } from "../../grammar/units.ts";
import type { FieldType } from "../values/types.ts";
import type { Fields } from "../vocabulary/define.ts";
import {
  assemblyNames,
  buildFields,
  buildGroups,
  familyByName,
  familyNames,
  kindByName,
  kindNames,
  recordFields,
  ruleEntries,
  slotByPath,
  slotPaths,
  workshopFields,
} from "../vocabulary/index.ts";

function wordsOf(type: FieldType): readonly string[] {
  if (type.type === "word" || type.type === "words") return Object.keys(type.words);
  return type.type === "yes-no" ? ["yes", "no"] : [];
}

/** The tables from which the TextMate grammar is made, so that an editor without the server colours the same words. */
export function grammarTables(keywords: readonly string[], units: readonly Unit[]): TextMateTables {
  const rows: Fields[] = [
    ...kindNames.map((name) => kindByName(name)?.fields ?? {}),
    ...familyNames.map((name) => familyByName(name)?.fields ?? {}),
    ...slotPaths.map((path) => slotByPath(path)?.settings ?? {}),
    buildFields,
    workshopFields,
    recordFields,
  ];
  const fields = new Set<string>(["own", "remove", ...Object.keys(ruleEntries)]);
  const words = new Set<string>(["none"]);
  for (const row of rows) {
    for (const [name, field] of Object.entries(row)) {
      for (const part of name.split(".")) fields.add(part);
      for (const word of wordsOf(field.type)) words.add(word);
    }
  }
  for (const path of slotPaths) fields.add(path.slice(path.lastIndexOf(".") + 1));
  return {
    keywords,
    kinds: [...kindNames, ...familyNames],
    assemblies: [...assemblyNames, ...Object.keys(buildGroups)],
    fields: [...fields],
    words: [...words],
    units: [...new Set([...units.flatMap((unit) => [unit.symbol, ...unit.spellings]), ...teethSpellings])],
  };
}
