import type { Engine } from "../../engine/engine.ts";
import { slotByPath } from "../../vocabulary/index.ts";
import type { Around } from "./context.ts";
import { expressionDrafts } from "./expressions.ts";
import { CompletionItemKind, type Draft } from "./items.ts";
import type { ValueList } from "./values.ts";

/** What may be written as the value of a rule's entry; nothing where it is a value like any other. */
export function ruleValueDrafts(engine: Engine, around: Around, path: string): ValueList | undefined {
  const [entry = "", ...rest] = path.split(".");
  switch (entry) {
    case "when":
    case "require":
    case "let":
      return expressionDrafts(engine, around);
    case "expect":
      return { drafts: rest.length > 0 ? buildDrafts(engine) : [] };
    case "set": {
      const slot = slotByPath(rest.join("."));
      return slot && { drafts: partDrafts(engine, slot.kinds) };
    }
    default:
      return undefined;
  }
}

function buildDrafts(engine: Engine): Draft[] {
  return [...engine.workshop.declared("build")]
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .map(({ name, title }) => ({
      label: name,
      kind: CompletionItemKind.Class,
      ...(title === undefined ? {} : { description: title }),
    }));
}

function partDrafts(engine: Engine, kinds: readonly string[]): Draft[] {
  const parts = kinds.flatMap((kind) => [...engine.workshop.declared("part", kind)]);
  const named = parts.map(
    ({ name, title }): Draft => ({
      label: name,
      kind: CompletionItemKind.Class,
      ...(title === undefined ? {} : { description: title }),
    }),
  );
  return [...named, { label: "none", kind: CompletionItemKind.Keyword, detail: "stated to be absent" }];
}
