import { split } from "../../grammar/split.ts";
import { Declaration } from "../model/declaration.ts";
import { readStandard } from "../model/standard.ts";
import { prelude } from "../standards/index.ts";
import { familyByName, familyNames } from "../vocabulary/index.ts";
import { code, page, table } from "./markdown.ts";

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
    "The interfaces that come with the program, by family. A workshop adds its own with `standard FAMILY CODE { ... }`. Two parts fit where their codes are one and the same, or where either names the other among those it mates with.",
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
    if (own.length === 0) continue;
    parts.push(
      table(
        ["code", "title", "also called", "mates with", "dimensions", "source"],
        own.map((standard) => [
          code(standard.code),
          standard.declaration.title ?? "",
          standard.aliases.join(", "),
          standard.mates.map((mate) => (mate.startsWith(`${name}/`) ? mate.slice(name.length + 1) : mate)).join(", "),
          [...standard.dimensions]
            .filter(([field]) => !["aliases", "mates", "source", "published", "note"].includes(field))
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
