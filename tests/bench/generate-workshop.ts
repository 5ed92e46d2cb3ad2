import { emptySlots, ownStandards, type PartTemplate, partTemplates } from "./part-templates.ts";
import { type Random, seeded } from "./random.ts";

export interface WorkshopSize {
  /** About so many parts; at least one for each slot. */
  readonly parts: number;
  readonly builds: number;
  /** Builds in one file; a build takes about sixty lines. */
  readonly buildsPerFile?: number;
  /** Parts in one file. */
  readonly partsPerFile?: number;
  readonly seed?: number;
}

const makers = ["corrie", "moor", "beck", "gill", "fell", "tarn", "scar", "howe", "rigg", "dale"];

interface GeneratedPart {
  readonly name: string;
  readonly template: PartTemplate;
  readonly text: string;
}

/**
 * The files of a workshop of any size: libraries of parts, standards of its own, and builds that use them, all of one
 * kind of bike so that everything fits everything. Names, masses, prices and many dimensions differ.
 * @returns path from the workshop's root to text. The same arguments give the same texts on every machine.
 */
export function generateWorkshop(size: WorkshopSize): ReadonlyMap<string, string> {
  const random = seeded(size.seed ?? 2026);
  const files = new Map<string, string>();
  files.set("workshop.ferrule", `workshop north-yard "North Yard Cycles" {\n  language: 1\n  currency: GBP\n}\n`);
  files.set("standards.ferrule", ownStandards);
  const parts = generateParts(size.parts, random);
  chunked(parts, size.partsPerFile ?? 250).forEach((chunk, index) => {
    files.set(`parts/library-${number(index)}.ferrule`, chunk.map(({ text }) => text).join("\n"));
  });
  const builds = Array.from({ length: size.builds }, (_, index) => generateBuild(index, parts, random));
  chunked(builds, size.buildsPerFile ?? 16).forEach((chunk, index) => {
    files.set(`builds/builds-${number(index)}.ferrule`, chunk.join("\n"));
  });
  return files;
}

function generateParts(wanted: number, random: Random): readonly GeneratedPart[] {
  const shares = partTemplates.reduce((sum, { share }) => sum + share, 0);
  const parts: GeneratedPart[] = [];
  for (const [row, template] of partTemplates.entries()) {
    const count = Math.max(1, Math.round((wanted * template.share) / shares));
    for (let index = 0; index < count; index++) {
      const name = `${random.pick(makers)}.${template.kind}-${row}-${index}`;
      parts.push({ name, template, text: partText(name, template, index, random) });
    }
  }
  return parts;
}

function partText(name: string, template: PartTemplate, index: number, random: Random): string {
  const maker = name.slice(0, 1).toUpperCase() + name.slice(1, name.indexOf("."));
  const lines = [
    ...(index % 3 === 0 ? [`/// ${maker} ${template.kind} of series ${index}, stocked by the box.`] : []),
    `part ${template.kind} ${name} "${maker} ${template.kind} ${index}" {`,
    ...template.facts(random).map((line) => `  ${line}`),
    `  mass: ${random.number(...template.mass)} g`,
    `  price: GBP ${random.number(5, 400)}.${random.pick(["00", "50", "95"])}`,
    ...(index % 4 === 0 ? [`  own { bin: "${random.pick(["A", "B", "C"])}${random.number(1, 40)}" }`] : []),
    "}",
    "",
  ];
  return lines.join("\n");
}

function generateBuild(index: number, parts: readonly GeneratedPart[], random: Random): string {
  const entries = new Map<string, string[]>();
  const add = (path: string, value: string): void => {
    const [assembly, name] = path.includes(".") ? path.split(".") : ["", path];
    const lines = entries.get(assembly ?? "") ?? [];
    lines.push(`${name}: ${value}`);
    entries.set(assembly ?? "", lines);
  };
  for (const template of partTemplates) {
    const fitting = parts.filter((part) => part.template === template);
    for (const { path, settings } of template.slots) {
      add(path, `${random.pick(fitting).name}${settings === undefined ? "" : ` { ${settings} }`}`);
    }
  }
  for (const path of emptySlots) add(path, "none");
  return [
    `build hardtail-${index} "Hardtail number ${index}" {`,
    "  category: mountain",
    `  rider { mass: ${random.number(55, 95)} kg; inseam: ${random.number(740, 900)} mm }`,
    "",
    ...(entries.get("") ?? []).map((line) => `  ${line}`),
    ...[...entries].flatMap(([assembly, lines]) =>
      assembly === "" ? [] : ["", `  ${assembly} {`, ...lines.map((line) => `    ${line}`), "  }"],
    ),
    "}",
    "",
  ].join("\n");
}

function chunked<Item>(items: readonly Item[], size: number): Item[][] {
  const chunks: Item[][] = [];
  for (let start = 0; start < items.length; start += size) chunks.push(items.slice(start, start + size));
  return chunks;
}

function number(index: number): string {
  return String(index + 1).padStart(3, "0");
}
