import { assemblyTable, buildFields, slotByPath, slotPaths, workshopFields } from "../vocabulary/index.ts";
import { fieldHead, fieldRows } from "./kinds-page.ts";
import { code, page, table } from "./markdown.ts";

/** A build's slots by assembly with their settings, and the fields of the other declarations. */
export function slotsPage(): string {
  const parts = [
    "What a build consists of. A slot takes a part; the block behind the part's name holds how it is installed.",
    "## Fields of a build",
    table(fieldHead, fieldRows(buildFields)),
    "## Slots",
  ];
  const byAssembly = new Map<string, string[]>();
  for (const path of slotPaths) {
    const dot = path.indexOf(".");
    const assembly = dot < 0 ? "" : path.slice(0, dot);
    byAssembly.set(assembly, [...(byAssembly.get(assembly) ?? []), path]);
  }
  for (const [assembly, paths] of byAssembly) {
    const description = (assemblyTable as Readonly<Record<string, string | { readonly description?: string }>>)[
      assembly
    ];
    parts.push(`### ${assembly === "" ? "On their own" : assembly}`);
    const said = typeof description === "string" ? description : description?.description;
    if (said) parts.push(said);
    parts.push(
      table(
        ["slot", "takes", "what it is", "left out means"],
        paths.map((path) => {
          const slot = slotByPath(path);
          const omitted =
            slot?.omitted === "none"
              ? "there is none"
              : slot?.noneWhen
                ? "not known, or none by the rest"
                : "not known";
          return [code(path), (slot?.kinds ?? []).join(", "), slot?.description ?? "", omitted];
        }),
      ),
    );
    for (const path of paths) {
      const settings = slotByPath(path)?.settings ?? {};
      if (Object.keys(settings).length === 0) continue;
      parts.push(`#### Settings of ${path}`, table(fieldHead, fieldRows(settings)));
    }
  }
  parts.push("## Fields of the workshop", table(fieldHead, fieldRows(workshopFields)));
  return page("Builds: slots, settings and fields", parts);
}
