import type { DeclarationKeyword } from "../../../grammar/tree.ts";
import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import { families, kinds } from "../../vocabulary/index.ts";
import type { Context } from "./context.ts";
import { CompletionItemKind, type Draft, place } from "./items.ts";

/** Declarations as they are begun, in the order in which a workshop is usually written. */
const declarations: Readonly<Record<DeclarationKeyword, { readonly description: string; readonly snippet: string }>> = {
  part: {
    description: "a component",
    snippet: `part ${place(1, "kind")} ${place(2, "name")} "${place(3, "Title")}" {\n\t$0\n}`,
  },
  build: { description: "a whole bicycle", snippet: `build ${place(1, "name")} "${place(2, "Title")}" {\n\t$0\n}` },
  standard: {
    description: "a mating interface",
    snippet: `standard ${place(1, "family")} ${place(2, "code")} "${place(3, "Title")}" {\n\t$0\n}`,
  },
  rule: {
    description: "a constraint of the workshop's own",
    snippet: `rule ${place(1, "name")} "${place(2, "Title")}" {\n\trequire: $0\n}`,
  },
  record: {
    description: "what was measured on a bicycle as built",
    snippet: `record "${place(1, "serial")}" of ${place(2, "build")} {\n\t$0\n}`,
  },
  workshop: {
    description: "what holds for the whole workshop",
    snippet: `workshop ${place(1, "name")} "${place(2, "Title")}" {\n\tlanguage: 1\n\tcurrency: ${place(3, "GBP")}\n\t$0\n}`,
  },
};

/** The words that begin a declaration. */
export function keywordDrafts(engine: Engine): Draft[] {
  return Object.entries(declarations).flatMap(([keyword, { description, snippet }]) => {
    // There is one workshop under a root.
    if (keyword === "workshop" && engine.workshop.lookup("workshop")) return [];
    return [
      {
        label: keyword,
        kind: CompletionItemKind.Keyword,
        insert: `${keyword} `,
        snippet,
        description,
        continues: true,
      },
    ];
  });
}

/** What comes next in a header: a kind or family, `from` or `of`, or the name after them. */
export function headerDrafts(engine: Engine, context: Extract<Context, { where: "header" }>): Draft[] {
  const { keyword, cursor, original } = context;
  const words = cursor.before.filter(({ kind }) => kind !== "mark");
  const last = words.at(-1)?.text;
  if (keyword === "part" && words.length === 1) return kindDrafts();
  if (keyword === "standard" && words.length === 1) return familyDrafts();
  if (last === "from" && words.length > 1) {
    return keyword === "part" || keyword === "build" ? baseDrafts(engine, keyword, words[1]?.text, original) : [];
  }
  if (last === "of" && keyword === "record") return baseDrafts(engine, "build", undefined, original);
  const isNamed = words.length >= (keyword === "part" || keyword === "standard" ? 3 : 2);
  const has = (word: string): boolean => words.some(({ text, kind }) => kind === "word" && text === word);
  if (!isNamed) return [];
  if ((keyword === "part" || keyword === "build") && !has("from")) {
    return [
      {
        label: "from",
        kind: CompletionItemKind.Keyword,
        insert: "from ",
        description: "derive it from another",
        continues: true,
      },
    ];
  }
  if (keyword === "record" && !has("of")) {
    return [
      {
        label: "of",
        kind: CompletionItemKind.Keyword,
        insert: "of ",
        description: "the build it was measured on",
        continues: true,
      },
    ];
  }
  return [];
}

function kindDrafts(): Draft[] {
  return [...kinds.values()].map(({ name, noun, description }) => ({
    label: name,
    kind: CompletionItemKind.Class,
    insert: `${name} `,
    description: noun,
    documentation: description,
  }));
}

function familyDrafts(): Draft[] {
  return [...families.values()].map(({ name, noun, description }) => ({
    label: name,
    kind: CompletionItemKind.Interface,
    insert: `${name} `,
    description: noun,
    documentation: description,
  }));
}

/** Declarations to derive from: parts of the same kind, or builds; never the declaration itself. */
function baseDrafts(
  engine: Engine,
  keyword: "part" | "build",
  kind: string | undefined,
  original: Declaration | undefined,
): Draft[] {
  const found: Declaration[] = [];
  for (const declaration of engine.workshop.declared(keyword, keyword === "part" ? kind : undefined)) {
    if (declaration !== original && declaration.name !== "") found.push(declaration);
  }
  found.sort((a, b) => (a.name < b.name ? -1 : 1));
  return found.map(({ name, title }) => ({
    label: name,
    kind: CompletionItemKind.Class,
    ...(title === undefined ? {} : { description: title }),
  }));
}
