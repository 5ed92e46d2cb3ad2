import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { FieldEntry } from "../../grammar/tree.ts";
import type { Check } from "../../server/checks/define.ts";
import { instancesOf, needsOf } from "../../server/checks/table.ts";
import type { Need } from "../../server/model/need.ts";
import { exampleOf } from "../../server/values/example.ts";
import type { Field, Fields } from "../../server/vocabulary/define.ts";
import { buildFields, kindByName, slotByPath } from "../../server/vocabulary/index.ts";
import { answers, type Edit, entriesOf, standardsOf, type Variation, varied } from "./variations.ts";

/**
 * What an example does not state, though the check asks for it: a check declares its needs, so that each of them can be
 * stated here in every way that there is, one at a time. Much of a check is there for such facts: a limit that few
 * makers give, a part that few bicycles have.
 */
export function additionsTo(check: Check, example: string): readonly Variation[] {
  const source = new Source(example);
  const found = new Map<string, Variation>();
  for (const need of needsHere(check, example)) {
    for (const addition of source.added(need)) {
      if (addition.text !== example && !found.has(addition.name)) found.set(addition.name, addition);
    }
  }
  return [...found.values()];
}

/** What those instances need that have something to say of the example, or all where none has. */
function needsHere(check: Check, example: string): readonly Need[] {
  const applying = new Set(
    answers(check, example).flatMap(({ instance, verdict }) => (verdict.outcome === "notApplicable" ? [] : [instance])),
  );
  return instancesOf(check)
    .filter(({ name }) => applying.size === 0 || applying.has(name))
    .flatMap((instance) => Object.values(needsOf(check, instance)) as Need[]);
}

/** The most codes or words that are tried of one fact. */
const most = 3;

/** Ways to state a field. */
function valuesOf(field: Field, example: string): readonly string[] {
  const { type } = field;
  switch (type.type) {
    case "yes-no":
      return ["yes", "no"];
    case "word":
    case "words":
      return Object.keys(type.words).slice(0, most);
    case "code":
    case "codes": {
      const codes = standardsOf(type.family);
      // Those that the example speaks of come first: what matters is whether they are the same.
      const spoken = codes.filter((code) => example.includes(` ${code}`));
      return [...new Set([...spoken.slice(0, 2), ...codes])].slice(0, most);
    }
    case "teeth":
      return ["11-13-15 t", "40 t"];
    case "part":
    case "colour":
    case "text":
    case "date":
      return [];
    case "slot":
      return ["front-brake.lever", "rear-brake.lever"];
    case "count":
    case "number":
    case "quantity":
      return [
        ...new Set([
          exampleOf(type),
          ...(type.lowest === undefined ? [] : [exampleOf({ ...type, highest: type.lowest })]),
          ...(type.highest === undefined ? [] : [exampleOf({ ...type, lowest: type.highest })]),
        ]),
      ];
    default:
      return [exampleOf(type)];
  }
}

/** An example's text, with the places where something can be added to it. */
class Source {
  private readonly slots = new Map<string, FieldEntry>();
  /** End of the block of the build, and of each part by its name. */
  private readonly ends = new Map<string, number>();
  private readonly stated = new Map<string, ReadonlySet<string>>();
  private build: { readonly start: number; readonly end: number } | undefined;

  private readonly example: string;

  constructor(example: string) {
    this.example = example;
    for (const chunk of split(example)) {
      const tree = parseDeclaration(example.slice(chunk.start, chunk.end));
      const name = tree.header.name?.text ?? "";
      if (!tree.block || (chunk.keyword !== "part" && chunk.keyword !== "build")) continue;
      const end = chunk.start + tree.block.span.end - 1;
      const entries = entriesOf(tree.block, "", undefined);
      const key = chunk.keyword === "build" ? "" : name;
      this.ends.set(key, end);
      this.stated.set(key, new Set(entries.map(({ path }) => path)));
      if (chunk.keyword !== "build") continue;
      this.build = { start: chunk.start, end };
      for (const { path, entry } of entries) if (slotByPath(path)) this.slots.set(path, entry);
    }
  }

  added(need: Need): readonly Variation[] {
    switch (need.kind) {
      case "fact":
        return this.fact(need.slot, need.field);
      case "setting":
        return this.setting(need.slot, need.setting);
      case "slot":
        return this.part(need.slot);
      case "field":
        return this.field(need.field);
      default:
        return [];
    }
  }

  private fact(path: string, name: string): readonly Variation[] {
    const entry = this.slots.get(path);
    const kinds = slotByPath(path)?.kinds ?? [];
    if (entry) {
      const part = entry.value.tokens[0]?.text ?? "";
      if (!this.ends.has(part) || this.stated.get(part)?.has(name)) return [];
      const field = fieldOf(kinds, name);
      return this.ways(`${name} of ${part}`, field, (value) => [this.into(part, `${name}: ${value}`)]);
    }
    const kind = kinds.find((one) => Object.hasOwn(kindByName(one)?.fields ?? {}, name));
    if (kind === undefined) return [];
    return this.ways(
      `${path} with ${name}`,
      fieldOf([kind], name),
      (value) => this.withPart(path, kind, `${name}: ${value}`),
      `${path} of example`,
    );
  }

  private setting(path: string, name: string): readonly Variation[] {
    const entry = this.slots.get(path);
    const field = slotByPath(path)?.settings[name];
    if (!entry || !this.build || this.stated.get("")?.has(`${path}.${name}`)) return [];
    const { start } = this.build;
    const end = entry.block ? start + entry.block.span.end - 1 : start + entry.value.span.end;
    return this.ways(`${path}.${name}`, field, (value) => [
      insertion(end, entry.block ? `\n${name}: ${value}\n` : ` { ${name}: ${value} }`),
    ]);
  }

  private part(path: string): readonly Variation[] {
    if (this.slots.has(path)) return [];
    const subject = `${path} of example`;
    return [
      varied(this.example, `${path}: none added`, subject, [this.into("", `${path}: none`)]),
      ...(slotByPath(path)?.kinds ?? []).map((kind) =>
        varied(this.example, `${path}: a ${kind} added`, subject, this.withPart(path, kind, "")),
      ),
    ];
  }

  private field(name: string): readonly Variation[] {
    if (this.stated.get("")?.has(name)) return [];
    const field = (buildFields as Fields)[name];
    return this.ways(name, field, (value) => [this.into("", `${name}: ${value}`)]);
  }

  private ways(
    what: string,
    field: Field | undefined,
    put: (value: string) => readonly Edit[],
    subject = what,
  ): readonly Variation[] {
    if (!field) return [];
    const values = [...valuesOf(field, this.example), ...(field.omitted === "none" ? [] : ["none"])];
    return values.map((value) => varied(this.example, `${what}: ${value} added`, subject, put(value)));
  }

  private withPart(path: string, kind: string, facts: string): readonly Edit[] {
    const name = `example.added-${path.replaceAll(".", "-")}`;
    return [
      this.into("", `${path}: ${name}`),
      insertion(this.example.length, `\npart ${kind} ${name} "Added" { ${facts} }\n`),
    ];
  }

  /** Into the block of the build, or of a part. */
  private into(owner: string, line: string): Edit {
    const end = this.ends.get(owner);
    return end === undefined ? insertion(0, "") : insertion(end, `\n${line}\n`);
  }
}

function insertion(start: number, by: string): Edit {
  return { start, end: start, by };
}

function fieldOf(kinds: readonly string[], name: string): Field | undefined {
  for (const kind of kinds) {
    const fields = kindByName(kind)?.fields;
    if (fields && Object.hasOwn(fields, name)) return fields[name];
  }
  return undefined;
}
