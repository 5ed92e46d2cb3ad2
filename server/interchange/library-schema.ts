import { unitsOf } from "../../grammar/units.ts";
import type { FieldType } from "../values/types.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { commonFields, families, kinds } from "../vocabulary/index.ts";
import { librarySchemaName, libraryVersion } from "./library-json.ts";

type Schema = Readonly<Record<string, unknown>>;

/** The JSON Schema (draft 2020-12) of a library as JSON, from the vocabulary: every kind, every family, every fact. */
export function librarySchema(): Schema {
  const definitions = new Definitions();
  const kindDefinitions = [...kinds.values()].map((kind) => {
    const own = Object.fromEntries(Object.entries(kind.fields).filter(([name]) => !Object.hasOwn(commonFields, name)));
    definitions.add(`facts of ${kind.name}`, {
      description: kind.description,
      allOf: [{ $ref: reference("facts of every part") }],
      properties: definitions.facts(own),
      unevaluatedProperties: false,
    });
    return kind.name;
  });
  definitions.add("facts of every part", { type: "object", properties: definitions.facts(commonFields) });
  const familyNames = [...families.values()].map((family) => {
    definitions.add(`facts of ${family.name} standards`, {
      description: family.description,
      type: "object",
      properties: definitions.facts(family.fields),
      additionalProperties: false,
    });
    return family.name;
  });
  definitions.add("own", {
    description: "Data of the workshop's own, which nothing checks: values as they are written, and blocks.",
    type: "array",
    items: {
      type: "object",
      required: ["key"],
      anyOf: [{ required: ["written"] }, { required: ["entries"] }],
      additionalProperties: false,
      properties: { key: { type: "string" }, written: { type: "string" }, entries: { $ref: reference("own") } },
    },
  });
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    $id: librarySchemaName,
    title: `Library of ferrule export --format json, version ${libraryVersion}`,
    type: "object",
    required: ["schemaVersion", "parts"],
    additionalProperties: false,
    properties: {
      $schema: { type: "string" },
      schemaVersion: { description: "Version of this shape.", const: libraryVersion },
      languageVersion: { description: "The language number that the workshop states.", type: "integer", minimum: 1 },
      parts: { type: "array", items: { $ref: reference("part") } },
      standards: { type: "array", items: { $ref: reference("standard") } },
    },
    $defs: {
      part: declaration("kind", kindDefinitions, (kind) => `facts of ${kind}`, {
        from: { description: "The part it derives from; its facts are its own alone.", type: "string" },
      }),
      standard: declaration("family", familyNames, (family) => `facts of ${family} standards`, {}),
      ...definitions.all,
    },
  };
}

function declaration(of: string, names: readonly string[], facts: (name: string) => string, further: Schema): Schema {
  return {
    type: "object",
    required: ["name", of],
    additionalProperties: false,
    properties: {
      [of]: { enum: names },
      name: { type: "string", minLength: 1 },
      title: { type: "string" },
      documentation: { description: "The lines of documentation above it.", type: "string" },
      ...further,
      facts: { type: "object" },
      own: { $ref: reference("own") },
    },
    allOf: names.map((name) => ({
      if: { properties: { [of]: { const: name } } },
      // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema.
      then: { properties: { facts: { $ref: reference(facts(name)) } } },
    })),
  };
}

function reference(name: string): string {
  return `#/$defs/${name.replaceAll(" ", "-")}`;
}

/** Definitions that are used in many places, each written once. */
class Definitions {
  readonly all: Record<string, Schema> = {};

  add(name: string, schema: Schema): void {
    this.all[name.replaceAll(" ", "-")] = schema;
  }

  facts(fields: Fields): Schema {
    return Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, this.#fact(field)]));
  }

  #fact({ type, description }: Field): Schema {
    if (type.type === "word" || type.type === "words") {
      const words = { enum: Object.keys(type.words) };
      const value = type.type === "word" ? words : { type: "array", minItems: 1, items: words };
      return { description, ...given({ value }, ["value"]) };
    }
    const { name, schema } = shared(type);
    if (!Object.hasOwn(this.all, name.replaceAll(" ", "-"))) this.add(name, schema);
    return { description, $ref: reference(name) };
  }
}

/** The shape of a fact, under the name by which others of the same shape share it. */
function shared(type: FieldType): { readonly name: string; readonly schema: Schema } {
  const number = { type: "number" };
  const text = { type: "string" };
  switch (type.type) {
    case "quantity":
    case "quantities": {
      const unit = {
        description: `A unit of ${type.dimension}.`,
        enum: unitsOf(type.dimension).map(({ symbol }) => symbol),
      };
      if (type.type === "quantities") {
        const value = { type: "array", minItems: 1, items: number };
        return { name: `several of ${type.dimension}`, schema: given({ value, unit }, ["value", "unit"]) };
      }
      if (type.role === "exact") {
        return { name: `one ${type.dimension}`, schema: given({ value: number, unit }, ["value", "unit"]) };
      }
      return { name: `range of ${type.dimension}`, schema: given({ ...range, unit }, ["unit"], "range") };
    }
    case "number":
      return type.role === "exact"
        ? { name: "number", schema: given({ value: number }, ["value"]) }
        : { name: "range of numbers", schema: given(range, [], "range") };
    case "count":
      return {
        name: type.unit === undefined ? "count" : `count of ${type.unit}`,
        schema: given(
          { value: { type: "integer" }, ...(type.unit === undefined ? {} : { unit: { const: type.unit } }) },
          ["value"],
        ),
      };
    case "teeth":
      return {
        name: "teeth",
        schema: given(
          { value: { type: "array", minItems: 1, items: { type: "integer", minimum: 1 } }, unit: { const: "t" } },
          ["value"],
        ),
      };
    case "money":
      return type.role === "exact"
        ? { name: "sum", schema: given({ value: number, currency }, ["value", "currency"]) }
        : { name: "range of sums", schema: given({ ...range, currency }, ["currency"], "range") };
    case "codes":
      return { name: "codes", schema: given({ value: { type: "array", minItems: 1, items: text } }, ["value"]) };
    case "yes-no":
      return { name: "yes or no", schema: given({ value: { type: "boolean" } }, ["value"]) };
    case "date":
      return {
        name: "date",
        schema: given({ value: { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" } }, ["value"]),
      };
    default:
      return { name: type.type, schema: given({ value: text }, ["value"]) };
  }
}

const currency = { description: "Three letters of ISO 4217.", type: "string", pattern: "^[A-Z]{3}$" };
const range = { value: { type: "number" }, least: { type: "number" }, greatest: { type: "number" } };
const written = {
  description: "As it is written in a file; agrees with the value where both are given.",
  type: "string",
};

/** A fact: a text as a file has it, an object with its value, or one that says that there is none. */
function given(properties: Schema, required: readonly string[], form: "single" | "range" = "single"): Schema {
  const value = form === "range" ? [{ required: ["value"] }, { required: ["least"] }, { required: ["greatest"] }] : [];
  return {
    anyOf: [
      { type: "string" },
      { type: "object", required: ["none"], additionalProperties: false, properties: { none: { const: true } } },
      {
        type: "object",
        additionalProperties: false,
        properties: { ...properties, written },
        anyOf: [{ required: ["written"] }, value.length > 0 ? { required, anyOf: value } : { required }],
      },
    ],
  };
}
