import type { AnyValue, FieldType, ValueOf } from "../values/types.ts";
import { buildFields } from "./builds.ts";
import type { Family, Field, Fields, Kind, Slot } from "./define.ts";
import { type FamilyName, familyTable, standardFields } from "./families/index.ts";
import { commonFields } from "./kinds/common.ts";
import { type KindName, kindTable } from "./kinds/index.ts";
import { assemblyTable, extrasAssembly, slotTable } from "./slots/index.ts";
import type { workshopFields } from "./workshops.ts";

/**
 * The vocabulary: every kind, slot, family and field, looked up by name.
 *
 * The tables keep the literal types of their rows, so that a check that reads `fact("drivetrain.cassette", "cogs")`
 * is handed teeth and a misspelt name does not compile.
 */

export { buildFields, buildGroups, buildWords, innerBuildGroups } from "./builds.ts";
export { compositeHalves, type WrittenHalf } from "./composite.ts";
export type { FamilyName } from "./families/index.ts";
export { type Joint, type JointEnd, jointsOf, jointTable } from "./joints.ts";
export { commonFields } from "./kinds/common.ts";
export type { KindName } from "./kinds/index.ts";
export {
  type JointTorque,
  type Measurement,
  measurementAt,
  measurements,
  type TightenedJoint,
  type Tolerance,
  tightenedJoints,
  usualTolerance,
} from "./measurements/index.ts";
export { measuredFieldAt } from "./record-paths.ts";
export { recordFields, recordGroups } from "./records.ts";
export { ruleEntries, ruleExpectations } from "./rules.ts";
export { assemblyTable, extrasAssembly } from "./slots/index.ts";
export { workshopFields } from "./workshops.ts";

type SlotRow = (typeof slotTable)[number];
type SlotRows = { readonly [Row in SlotRow as Row["path"]]: Row };

/** The path of a slot, such as `drivetrain.cassette`. */
export type SlotPath = SlotRow["path"];
export type AssemblyName = keyof typeof assemblyTable;

/** The kinds that may go into a slot. */
export type SlotKind<P extends SlotPath> = SlotRows[P]["kinds"][number] & KindName;

type KindFields<K extends KindName> = (typeof kindTable)[K]["fields"] & typeof commonFields;
type FieldNames<K extends KindName> = K extends KindName ? keyof KindFields<K> & string : never;
type FieldOf<K extends KindName, F extends string> = K extends KindName
  ? F extends keyof KindFields<K>
    ? KindFields<K>[F]
    : never
  : never;
type TypeOf<Row> = Row extends Field<infer Type> ? Type : never;

/** The facts of the kinds that a slot takes. */
export type FactField<P extends SlotPath> = FieldNames<SlotKind<P>>;
export type FactType<P extends SlotPath, F extends FactField<P>> = TypeOf<FieldOf<SlotKind<P>, F>>;
export type FactValue<P extends SlotPath, F extends FactField<P>> = ValueOf<FactType<P, F>>;

/** The facts of a kind. */
export type KindField<K extends KindName> = FieldNames<K>;
export type KindFactType<K extends KindName, F extends KindField<K>> = TypeOf<FieldOf<K, F>>;

/** The settings of a slot. */
export type SettingField<P extends SlotPath> = keyof SlotRows[P]["settings"] & string;
export type SettingType<P extends SlotPath, F extends SettingField<P>> = TypeOf<SlotRows[P]["settings"][F]>;
export type SettingValue<P extends SlotPath, F extends SettingField<P>> = ValueOf<SettingType<P, F>>;

/** The fields of a build, such as `category` and `rider.mass`. */
export type WorkshopFieldName = keyof typeof workshopFields;
export type WorkshopFieldType<F extends WorkshopFieldName> = TypeOf<(typeof workshopFields)[F]>;
export type BuildFieldName = keyof typeof buildFields;
export type BuildFieldType<F extends BuildFieldName> = TypeOf<(typeof buildFields)[F]>;
export type BuildFieldValue<F extends BuildFieldName> = ValueOf<BuildFieldType<F>>;

function complete(kind: Kind): Kind {
  return { ...kind, fields: { ...kind.fields, ...commonFields } };
}

/** Every kind, the facts that all kinds take included. */
export const kinds: ReadonlyMap<string, Kind> = new Map(
  Object.values(kindTable).map((kind) => [kind.name, complete(kind)]),
);
export const kindNames: readonly string[] = [...kinds.keys()];

/** Every slot, in the order in which a build is usually written. */
export const slots: ReadonlyMap<string, Slot> = new Map(slotTable.map((slot) => [slot.path, slot]));
export const slotPaths: readonly SlotPath[] = slotTable.map((slot) => slot.path);

export const assemblyNames: readonly string[] = [...Object.keys(assemblyTable), extrasAssembly];

/** Every family, the fields that all standards take included. */
export const families: ReadonlyMap<string, Family> = new Map(
  familyTable.map((family: Family) => [
    family.name,
    { ...family, fields: { ...family.fields, ...standardFields(family.name) } },
  ]),
);
export const familyNames: readonly FamilyName[] = familyTable.map((family) => family.name);

export function kindByName(name: string): Kind | undefined {
  return kinds.get(name);
}

export function familyByName(name: string): Family | undefined {
  return families.get(name);
}

/** Settings of a slot of the workshop's own: nothing is known of how its part is installed. */
const noSettings: Fields = {};
const extraName = /^extras\.[^.]+$/;

/**
 * The slot with this path. Each key under `extras` is a slot of the workshop's own that takes a part of any kind;
 * its list of kinds is empty.
 */
export function slotByPath(path: string): Slot | undefined {
  const slot = slots.get(path);
  if (slot || !extraName.test(path)) return slot;
  return {
    path,
    kinds: [],
    description: "A place of the workshop's own, for a part of any kind.",
    omitted: "none",
    settings: noSettings,
  };
}

/** The slots of an assembly, in order. */
export function slotsOf(assembly: string): readonly Slot[] {
  return slotTable.filter((slot) => slot.path.startsWith(`${assembly}.`));
}

/** Slot paths at which a part of this kind may go. */
export function slotsTaking(kind: string): readonly Slot[] {
  return slotTable.filter((slot: Slot) => slot.kinds.includes(kind));
}

/**
 * Names that stand directly under an assembly, or at the first level for an empty prefix. Names of worked-out
 * numbers must differ from them, since paths share one namespace.
 */
export function namesUnder(prefix: string): readonly string[] {
  const start = prefix === "" ? "" : `${prefix}.`;
  const names = new Set<string>();
  for (const path of [...slotPaths, ...Object.keys(buildFields)]) {
    if (path.startsWith(start)) names.add(path.slice(start.length).split(".")[0] ?? "");
  }
  return [...names];
}

/** The facts and settings that stand under a slot. */
export function namesOfSlot(path: string): readonly string[] {
  const slot = slotByPath(path);
  if (!slot) return [];
  const facts = slot.kinds.flatMap((kind) => Object.keys(kindByName(kind)?.fields ?? {}));
  return [...new Set([...facts, ...Object.keys(slot.settings)])];
}

/**
 * The paths of worked-out numbers that clash with a slot, an assembly, a fact, a setting or a field of a build: all
 * of them share one namespace.
 */
export function clashingPaths(calculations: readonly string[]): readonly string[] {
  return calculations.filter((path) => {
    const dot = path.lastIndexOf(".");
    const prefix = dot < 0 ? "" : path.slice(0, dot);
    const name = path.slice(dot + 1);
    return namesUnder(prefix).includes(name) || namesOfSlot(prefix).includes(name);
  });
}

/** The value of any field type; for code that handles fields it does not know by name. */
export type FieldValue<Type extends FieldType = FieldType> = ValueOf<Type> & AnyValue;
