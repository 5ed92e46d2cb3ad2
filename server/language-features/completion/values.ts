import { unitBySpelling } from "../../../grammar/units.ts";
import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import { readStandard } from "../../model/standard.ts";
import { writeCode } from "../../values/code.ts";
import { exampleOf } from "../../values/example.ts";
import { unitsFor } from "../../values/field-units.ts";
import type { FieldType } from "../../values/types.ts";
import { familyByName, jointTable, slotByPath } from "../../vocabulary/index.ts";
import { daysFrom } from "../shared/days.ts";
import { type FieldPlace, meaningOfPath } from "../shared/meaning.ts";
import { type Around, statedPaths } from "./context.ts";
import { CompletionItemKind, type Draft, place } from "./items.ts";
import { plainPartDraft, slotPartDrafts } from "./parts.ts";
import { recordValueDrafts } from "./record-values.ts";
import { ruleValueDrafts } from "./rule-values.ts";

export interface ValueList {
  readonly drafts: readonly Draft[];
  readonly isCut?: boolean;
  /** Where the word that is being replaced starts, when it is less than the whole word. */
  readonly from?: number;
}

const none: Draft = { label: "none", kind: CompletionItemKind.Keyword, detail: "stated to be absent" };

/** What may be written as the value of the entry that is being typed. */
export function valueDrafts(engine: Engine, around: Around & { readonly key: string }): ValueList {
  const { mended, path, key } = around;
  if (path.split(".").includes("own")) return { drafts: [] };
  const whole = path === "" ? key : `${path}.${key}`;
  if (mended.keyword === "build" && whole === "remove") return { drafts: inheritedDrafts(engine, mended) };
  if (mended.keyword === "record") {
    const own = recordValueDrafts(engine, mended, whole);
    if (own) return { drafts: own };
  }
  if (mended.keyword === "rule") {
    const own = ruleValueDrafts(engine, around, whole);
    if (own) return own;
  }
  const meaning = meaningOfPath(mended, whole, { start: 0, end: 0 });
  if (meaning?.what === "slot") return slotDrafts(engine, around, meaning.path);
  if (meaning?.what === "field") return fieldValueDrafts(engine, around, meaning.at);
  return { drafts: [] };
}

function slotDrafts(engine: Engine, around: Around, slot: string): ValueList {
  const last = around.cursor.before.at(-1);
  const isFresh = last?.text === ":" || last?.text === "or";
  if (!isFresh) {
    // Behind a part's name stands `or` with another, or how it is installed.
    const settings = Object.keys(slotByPath(slot)?.settings ?? {});
    return {
      drafts: [
        { label: "or", kind: CompletionItemKind.Keyword, insert: "or ", detail: "an alternate", continues: true },
        ...(settings.length > 0
          ? [
              {
                label: "{",
                kind: CompletionItemKind.Module,
                insert: "{ ",
                snippet: "{ $0 }",
                detail: `how it is installed: ${settings.join(", ")}`,
              },
            ]
          : []),
      ],
    };
  }
  const { drafts, isCut } = slotPartDrafts(engine, around, slot);
  return { drafts: last?.text === ":" ? [...drafts, none] : drafts, isCut };
}

function fieldValueDrafts(engine: Engine, around: Around, at: FieldPlace): ValueList {
  const { type, omitted } = at.field;
  const { cursor } = around;
  const isFresh = cursor.before.at(-1)?.text === ":";
  const absent = isFresh && omitted === "none" ? [none] : [];
  switch (type.type) {
    case "word":
      return { drafts: isFresh ? [...wordDrafts(type.words, new Set()), ...absent] : [] };
    case "words": {
      const stated = new Set(cursor.before.map(({ text }) => text.replace(/,$/, "")));
      return { drafts: [...wordDrafts(type.words, stated), ...absent] };
    }
    case "yes-no":
      return { drafts: isFresh ? [value("yes"), value("no")] : [] };
    case "code":
      return isFresh ? codeDrafts(engine, around, type.family, absent) : { drafts: [] };
    case "codes":
      return codeDrafts(engine, around, type.family, absent);
    case "part":
      return { drafts: isFresh ? [...partsOfKinds(engine, type.kinds), ...absent] : [] };
    case "slot":
      return { drafts: isFresh ? [...slotReferenceDrafts(engine, around, at), ...absent] : [] };
    case "date":
      return {
        drafts: isFresh
          ? daysFrom(engine.today)
              .map(({ day, words }) => ({ ...value(day), description: words }))
              .reverse()
          : [],
      };
    case "money":
      return { drafts: isFresh ? [...moneyDrafts(engine, cursor.word.text), ...absent] : [] };
    default:
      return { drafts: [...numberDrafts(at, around), ...(cursor.word.text === "" ? absent : [])] };
  }
}

function value(label: string): Draft {
  return { label, kind: CompletionItemKind.Value };
}

function wordDrafts(words: Readonly<Record<string, string>>, stated: ReadonlySet<string>): Draft[] {
  return Object.entries(words)
    .filter(([word]) => !stated.has(word))
    .map(([label, detail]) => ({ label, kind: CompletionItemKind.EnumMember, detail }));
}

/** Standards of a family; for a composite one, the codes of the half that is being typed. */
function codeDrafts(engine: Engine, { cursor }: Around, family: string, absent: readonly Draft[]): ValueList {
  const composite = familyByName(family)?.composite;
  if (!composite) return { drafts: [...standardDrafts(engine, family, ""), ...absent] };
  const [first, second] = composite.halves;
  const separator = cursor.word.text.indexOf(composite.separator);
  const half = separator < 0 ? first : second;
  const ofHalf =
    "family" in half
      ? standardDrafts(engine, half.family, separator < 0 && !second.optional ? composite.separator : "")
      : [];
  return separator < 0
    ? { drafts: [...standardDrafts(engine, family, ""), ...ofHalf, ...absent] }
    : { drafts: ofHalf, from: cursor.word.start + separator + composite.separator.length };
}

function standardDrafts(engine: Engine, family: string, behind: string): Draft[] {
  const found: Declaration[] = [];
  for (const declaration of engine.workshop.declared("standard", family)) {
    if (engine.workshop.lookup(declaration.key) === declaration) found.push(declaration);
  }
  // The workshop's own first, then in the order in which they stand in the prelude.
  found.sort(
    (a, b) => Number(a.builtIn) - Number(b.builtIn) || (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : a.start - b.start),
  );
  return found.map((declaration) => {
    const { aliases } = readStandard(declaration);
    const { name, title, uri } = declaration;
    return {
      label: name,
      kind: CompletionItemKind.Interface,
      insert: writeCode(name) + behind,
      filter: [name, ...aliases, title ?? ""].join(" "),
      ...(title === undefined ? {} : { description: title }),
      ...(aliases.length === 0 ? {} : { detail: `also ${aliases.join(", ")}` }),
      data: { of: "standard", uri, family, code: name },
    };
  });
}

function partsOfKinds(engine: Engine, kinds: readonly string[]): Draft[] {
  const found: Declaration[] = [];
  for (const kind of kinds) found.push(...engine.workshop.declared("part", kind));
  return found.sort((a, b) => (a.name < b.name ? -1 : 1)).map(plainPartDraft);
}

/** Slots of the same build that hold a part; those whose part offers what the setting asks for first. */
function slotReferenceDrafts(engine: Engine, { mended, path }: Around, at: FieldPlace): Draft[] {
  const assembly = engine.assemble(mended);
  const joints = jointTable.filter(
    ({ shared, ends }) => shared?.setting === at.name && ends.some(({ slot }) => slot === path),
  );
  const offering: Draft[] = [];
  const others: Draft[] = [];
  for (const [slot, installed] of assembly.slots) {
    if (installed.state !== "part" || slot === path) continue;
    const offered = joints.flatMap(({ shared }) => {
      const stated = shared && installed.part?.facts.get(shared.offers);
      return stated?.state === "stated" ? [stated.written] : [];
    });
    const label = installed.part?.declaration.label ?? installed.name;
    const draft: Draft = {
      label: slot,
      kind: CompletionItemKind.Reference,
      description: label,
      ...(offered.length === 0 ? {} : { detail: `offers ${offered.join(", ")}` }),
    };
    if (offered.length > 0) offering.push(draft);
    else others.push(draft);
  }
  return [...offering, ...others];
}

/** What a build could take away from what it inherits. */
function inheritedDrafts(engine: Engine, mended: Declaration): Draft[] {
  const base = mended.from === undefined ? undefined : engine.workshop.build(mended.from);
  const assembly = base && engine.report(base)?.assembly;
  if (!assembly) return [];
  const stated = statedPaths(mended);
  return [...assembly.slots]
    .filter(([path]) => !stated.has(path))
    .map(([path, installed]) => ({
      label: path,
      kind: CompletionItemKind.Reference,
      description: installed.part?.declaration.label ?? installed.name,
    }));
}

function moneyDrafts(engine: Engine, typed: string): Draft[] {
  const workshop = engine.workshop.lookup("workshop");
  const own = workshop && /\bcurrency:\s*([A-Z]{3})\b/.exec(workshop.text)?.[1];
  if (own === undefined || /^\d/.test(typed)) return [];
  return [
    {
      label: own,
      kind: CompletionItemKind.Unit,
      insert: `${own} `,
      snippet: `${own} ${place(1, "0.00")}`,
      detail: "the workshop's currency",
    },
  ];
}

/** Units behind a number; with nothing typed yet, an example of the whole. */
function numberDrafts({ field }: FieldPlace, { cursor }: Around): Draft[] {
  const { type } = field;
  const last = cursor.before.at(-1);
  const { text } = cursor.word;
  const symbols = unitSymbols(type);
  if (/^[-+−±]?\d[\d.,/–−×+-]*$/.test(text)) {
    return symbols.map((symbol) => unit(symbol, `${text} ${symbol}`, `${text} ${symbol}`));
  }
  if (last && /\d$/.test(last.text)) return symbols.map((symbol) => unit(symbol, symbol));
  if (text !== "" || last?.text !== ":") return [];
  const example = field.example ?? exampleOf(type);
  return [
    {
      label: example,
      kind: CompletionItemKind.Value,
      insert: example,
      snippet: place(1, example),
      detail: "an example: write your own",
    },
  ];
}

function unit(label: string, insert: string, filter?: string): Draft {
  return {
    label,
    kind: CompletionItemKind.Unit,
    insert,
    detail: unitBySpelling(label)?.name ?? (label === "t" ? "teeth" : ""),
    ...(filter === undefined ? {} : { filter }),
  };
}

function unitSymbols(type: FieldType): readonly string[] {
  switch (type.type) {
    case "quantity":
    case "quantities":
      return unitsFor(type).map(({ symbol }) => symbol);
    case "count":
      return type.unit === undefined ? [] : [type.unit];
    case "teeth":
      return ["t"];
    default:
      return [];
  }
}
