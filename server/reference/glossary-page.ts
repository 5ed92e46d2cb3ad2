import type { FieldType } from "../values/types.ts";
import { familyByName, familyNames, kindByName, kindNames, slotByPath, slotPaths } from "../vocabulary/index.ts";
import { code, page } from "./markdown.ts";

/** Words of a set with their meanings. */
function wordsOf(type: FieldType): [string, string][] {
  return type.type === "word" || type.type === "words" ? Object.entries(type.words) : [];
}

/** The terms of the trade as this language uses them, from the rows that define them. */
export function glossaryPage(): string {
  const terms = new Map<string, Set<string>>();
  const add = (term: string, meaning: string): void => {
    const meanings = terms.get(term);
    if (meanings) meanings.add(meaning);
    else terms.set(term, new Set([meaning]));
  };
  for (const name of kindNames) {
    const kind = kindByName(name);
    if (!kind) continue;
    add(name, kind.description);
    for (const [field, row] of Object.entries(kind.fields)) {
      add(field, row.description);
      for (const [word, meaning] of wordsOf(row.type)) add(word, `${meaning} (${field})`);
    }
  }
  for (const name of familyNames) add(name, familyByName(name)?.description ?? "");
  for (const path of slotPaths) {
    const slot = slotByPath(path);
    for (const [field, row] of Object.entries(slot?.settings ?? {})) {
      add(field, row.description);
      for (const [word, meaning] of wordsOf(row.type)) add(word, `${meaning} (${field})`);
    }
  }
  const sorted = [...terms].sort(([a], [b]) => (a < b ? -1 : 1));
  return page("Glossary", [
    "Every term of the language with what it means. A term with several meanings depends on where it stands.",
    sorted.map(([term, meanings]) => `- ${code(term)}: ${[...meanings].slice(0, 4).join(" / ")}`).join("\n"),
  ]);
}
