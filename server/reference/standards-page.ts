import { split } from "../../grammar/split.ts";
import { Declaration } from "../model/declaration.ts";
import { readStandard } from "../model/standard.ts";
import { prelude } from "../standards/index.ts";
import { familyByName, familyNames } from "../vocabulary/index.ts";
import { fieldHead, fieldRows } from "./kinds-page.ts";
import { code, page, table } from "./markdown.ts";

/** Fields that standards of every family may state. */
const commonNames: readonly string[] = ["aliases", "mates", "source", "published", "note"];

/** Every built-in interface, by family. */
export function standardsPage(): string {
  const declarations = prelude.flatMap(({ uri, text }) =>
    split(text).flatMap((chunk) =>
      chunk.keyword === undefined
        ? []
        : [new Declaration({ ...chunk, keyword: chunk.keyword }, text.slice(chunk.start, chunk.end), uri, true)],
    ),
  );
  const parts = [
    "The interfaces that come with the program, by family. A workshop adds its own with `standard FAMILY CODE { ... }`. Two parts fit where their codes are one and the same, or where either names the other among those it mates with. Any standard may also state `aliases`, `mates`, `published`, `source` and `note`.",
  ];
  for (const name of familyNames) {
    const family = familyByName(name);
    const own = declarations.filter((declaration) => declaration.kind === name).map(readStandard);
    parts.push(`## ${name}`, family?.description ?? "");
    if (family?.composite) {
      parts.push(
        `Written in two halves with ${code(family.composite.separator)} between: ${family.composite.halves.map((half) => half.name).join(", then ")}.`,
      );
    }
    const stateable = family ? Object.entries(family.fields).filter(([field]) => !commonNames.includes(field)) : [];
    if (stateable.length > 0) {
      parts.push("What a standard of it may state:", table(fieldHead, fieldRows(Object.fromEntries(stateable))));
    }
    if (own.length === 0) continue;
    parts.push("Built in:");
    parts.push(
      table(
        ["code", "title", "also called", "mates with", "dimensions", "source"],
        own.map((standard) => [
          code(standard.code),
          standard.declaration.title ?? "",
          standard.aliases.join(", "),
          standard.mates.map((mate) => (mate.startsWith(`${name}/`) ? mate.slice(name.length + 1) : mate)).join(", "),
          [...standard.dimensions]
            .filter(([field]) => !commonNames.includes(field))
            .map(([field, value]) => `${field} ${value.state === "stated" ? value.written : "none"}`)
            .join("; "),
          ["published", "source"]
            .flatMap((field) => {
              const value = standard.dimensions.get(field);
              return value?.state === "stated" ? [String(value.value)] : [];
            })
            .join("; "),
        ]),
      ),
    );
  }
  return page("Standards: interfaces between parts", parts);
}
