import { describe, expect, test } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import type { FieldEntry } from "../../grammar/tree.ts";
import { exampleOf } from "../../server/values/example.ts";
import { readValue } from "../../server/values/read.ts";
import { buildFields } from "../../server/vocabulary/builds.ts";
import type { Field } from "../../server/vocabulary/define.ts";
import { families, kinds, slots } from "../../server/vocabulary/index.ts";
import { measurements } from "../../server/vocabulary/measurements/index.ts";
import { recordFields } from "../../server/vocabulary/records.ts";
import { ruleEntries } from "../../server/vocabulary/rules.ts";
import { workshopFields } from "../../server/vocabulary/workshops.ts";

const owners: [string, Readonly<Record<string, Field>>][] = [
  ...[...kinds.values()].map((kind): [string, Readonly<Record<string, Field>>] => [`part ${kind.name}`, kind.fields]),
  ...[...slots.values()].map((slot): [string, Readonly<Record<string, Field>>] => [slot.path, slot.settings]),
  ...[...families.values()].map((family): [string, Readonly<Record<string, Field>>] => [family.name, family.fields]),
  ["build", buildFields],
  ["workshop", workshopFields],
  ["record", { ...recordFields, ...measurements }],
];

/** Writes the value into a file, and reads it as the language server would. */
function readWritten(name: string, field: Field, written: string) {
  const tree = parseDeclaration(`part kind name {\n  ${name}: ${written}\n}\n`);
  expect(tree.problems).toEqual([]);
  const entry = tree.block?.entries[0] as FieldEntry;
  expect(entry.value.alternates).toHaveLength(1);
  return readValue(field.type, entry.value.tokens, { field: name, span: entry.value.span, currency: "GBP" });
}

describe.each(owners)("%s", (_owner, fields) => {
  const examples = Object.entries(fields).flatMap(([name, field]) =>
    field.example === undefined ? [] : [{ name, field, example: field.example }],
  );
  if (examples.length > 0) {
    test.each(examples)("$name: $example is read as it stands", ({ name, field, example }) => {
      const result = readWritten(name, field, example);
      expect(result.problems).toEqual([]);
      expect(result.value).toBeDefined();
      expect(result.written).toBe(example);
    });
  }

  test("none is read as stated absence everywhere", () => {
    for (const [name, field] of Object.entries(fields)) {
      expect([name, readWritten(name, field, "none").isNone]).toEqual([name, true]);
    }
  });

  test("the example that is offered for an empty field is read", () => {
    for (const [name, field] of Object.entries(fields)) {
      if (["code", "codes", "part", "slot"].includes(field.type.type)) continue;
      const offered = exampleOf(field.type);
      const { problems } = readWritten(name, field, offered);
      expect([name, offered, problems]).toEqual([name, offered, []]);
    }
  });
});

test("the examples of a rule parse as what they are", () => {
  for (const [name, entry] of Object.entries(ruleEntries)) {
    if (entry.form !== "expression" || name === "let") continue;
    const tree = parseDeclaration(`rule name "Title" {\n  ${name}: ${entry.example}\n}\n`);
    expect([name, tree.problems]).toEqual([name, []]);
    expect((tree.block?.entries[0] as FieldEntry | undefined)?.expression).toBeDefined();
  }
  for (const [name, entry] of Object.entries(ruleEntries)) {
    if (entry.form !== "block") continue;
    const tree = parseDeclaration(`rule name "Title" {\n  ${entry.example}\n}\n`);
    expect([name, tree.problems, tree.block?.entries[0]?.form]).toEqual([name, [], "group"]);
  }
});
