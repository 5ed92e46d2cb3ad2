import { dimensions, unitBySpelling } from "../../grammar/units.ts";
import type { Calculation, Result } from "../calculations/define.ts";
import { calculationOfQuantity, quantities } from "../calculations/table.ts";
import { type Need, shareNeeds } from "../model/need.ts";
import type { Field } from "../vocabulary/define.ts";
import { buildFields, kindByName, kindNames, namesOfSlot, slotByPath, slotPaths } from "../vocabulary/index.ts";
import { type ExpressionType, numberType, typeOfField } from "./expression-type.ts";

/** Something of a build that an expression can name. */
export interface PathMeaning {
  readonly path: string;
  readonly what: "slot" | "fact" | "setting" | "field" | "number";
  readonly type: ExpressionType;
  /** What a check asks the build for it. */
  readonly need: Need;
  readonly description: string;
  /** The row of the vocabulary, for a fact, a setting and a field. */
  readonly field?: Field;
}

const meanings = new Map<string, PathMeaning | undefined>();
/** Names under `extras` are the workshop's own, so that no end of paths can be asked for. */
const mostKept = 10_000;

/**
 * What a path stands for: a slot, a fact of the part in one, how it is installed, a field of the build, or a number
 * that is worked out; `undefined` when no build can have it.
 */
export function pathMeaning(path: string): PathMeaning | undefined {
  if (meanings.has(path)) return meanings.get(path);
  const meaning = read(path);
  if (meanings.size < mostKept) meanings.set(path, meaning);
  return meaning;
}

let all: readonly string[] | undefined;

/** Every path that builds have by the vocabulary; names of the workshop's own under `extras` aside. */
export function everyPath(): readonly string[] {
  all ??= [
    ...Object.keys(buildFields),
    ...slotPaths.flatMap((slot) => [slot, ...namesOfSlot(slot).map((name) => `${slot}.${name}`)]),
    ...quantities.map(({ path }) => path),
  ];
  return all;
}

function read(path: string): PathMeaning | undefined {
  const own = Object.hasOwn(buildFields, path) ? (buildFields as Readonly<Record<string, Field>>)[path] : undefined;
  if (own) return ofField(path, "field", own, { kind: "field", field: path, optional: true });
  const slot = slotByPath(path);
  if (slot) {
    const type: ExpressionType = { form: "name", names: { of: "part", kinds: slot.kinds } };
    const need = shared({ kind: "slot", slot: path, optional: true });
    return { path, what: "slot", type, need, description: slot.description };
  }
  return underSlot(path) ?? workedOut(path);
}

function underSlot(path: string): PathMeaning | undefined {
  const dot = path.lastIndexOf(".");
  const slot = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  if (!slot) return undefined;
  const name = path.slice(dot + 1);
  const setting = Object.hasOwn(slot.settings, name) ? slot.settings[name] : undefined;
  if (setting) {
    return ofField(path, "setting", setting, { kind: "setting", slot: slot.path, setting: name, optional: true });
  }
  // A slot of the workshop's own takes a part of any kind.
  for (const kindName of slot.kinds.length > 0 ? slot.kinds : kindNames) {
    const fields = kindByName(kindName)?.fields;
    const field = fields && Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (field) return ofField(path, "fact", field, { kind: "fact", slot: slot.path, field: name, optional: true });
  }
  return undefined;
}

function ofField(path: string, what: PathMeaning["what"], field: Field, need: Need): PathMeaning {
  return { path, what, type: typeOfField(field.type), need: shared(need), description: field.description, field };
}

function workedOut(path: string): PathMeaning | undefined {
  const row = calculationOfQuantity(path);
  const result = row?.calculation.results[row.result];
  if (!row || !result) return undefined;
  return {
    path,
    what: "number",
    type: typeOfResult(row.calculation, row.result, result),
    need: shared({ kind: "worked", quantity: path, optional: true }),
    description: result.description,
  };
}

/** A result without a unit is a plain number or a text: its worked examples say which. */
function typeOfResult({ examples }: Calculation, name: string, { unit, list }: Result): ExpressionType {
  const example = examples.flatMap(({ results }) => (results as Readonly<Record<string, unknown>>)[name] ?? [])[0];
  // A sum of prices is one of each currency; a rule compares it where there is one.
  if (name === "price-at-least") return numberType({ money: 1 });
  if (typeof example === "string") {
    return list ? { form: "names", names: { of: "text" } } : { form: "name", names: { of: "text" } };
  }
  const known = unitBySpelling(unit);
  const vector = known ? dimensions[known.dimension].vector : {};
  const shown = known ? { dimension: known.dimension, unit: known.symbol } : unit === "" ? {} : { word: unit };
  return list ? { form: "numbers", vector, shown } : numberType(vector, shown);
}

/** Equal needs are one object, so that what answers them can keep each answer. */
function shared(need: Need): Need {
  return shareNeeds({ need }).need;
}
