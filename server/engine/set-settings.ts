import { parseDeclaration } from "../../grammar/parse.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Repair, WrittenSetting } from "../model/finding.ts";
import type { Statement } from "../model/stated.ts";
import { readValue } from "../values/read.ts";
import type { FieldType } from "../values/types.ts";
import { writeValue } from "../values/write.ts";
import { instruction } from "../vocabulary/deeds.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { buildFields, slotByPath } from "../vocabulary/index.ts";
import { type DeclarationEdit, writeEntry } from "./edit-build.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";

/** What somebody does to give a setting a value, and how it is written: "Cut the chain to 110 links (...: 110)". */
export function settingTitle({ slot, setting, value }: WrittenSetting): string {
  return titleOf(slotByPath(slot)?.settings[setting], `${slot}.${setting}`, value);
}

/** The same for a field of the build itself. */
export function fieldTitle(name: string, value: string): string {
  return titleOf((buildFields as Fields)[name], name, value);
}

function titleOf(field: Field | undefined, path: string, value: string): string {
  const words = field && instruction(field, value);
  return words === undefined ? `Set ${path} to ${value}` : `${words} (${path}: ${value})`;
}

/** A build as it would be with a setting written so; `undefined` when there is no such setting. */
export function withSetting(assembly: Assembly, { slot, setting, value }: WrittenSetting): Assembly | undefined {
  const installed = assembly.slots.get(slot);
  const field = installed?.slot.settings[setting];
  const written = parseDeclaration(`build setting {\n  ${setting}: ${value}\n}\n`).block?.entries[0];
  if (!installed || !field || written?.form !== "field") return undefined;
  const reading = readValue(field.type, written.value.tokens, { field: setting, span: written.value.span });
  const { place } = installed;
  const statement: Statement = reading.isNone
    ? { state: "none", place }
    : reading.value === undefined
      ? { state: "unreadable", place }
      : { state: "stated", value: reading.value, written: reading.written, place };
  const settings = new Map(installed.settings).set(setting, statement);
  return { ...assembly, slots: new Map(assembly.slots).set(slot, { ...installed, settings }) };
}

/** Of several values for one setting, those with which nothing else begins to fail; all where that leaves none. */
export function withoutWorse(engine: Engine, assembly: Assembly, repairs: readonly Repair[]): readonly Repair[] {
  const settings = repairs.filter((repair) => repair.kind === "set-setting");
  if (settings.length < 2) return repairs;
  const worse = new Set<Repair>(settings.filter((repair) => beginsToFail(engine, assembly, repair)));
  const isBettered = (repair: Repair): boolean =>
    repair.kind === "set-setting" &&
    worse.has(repair) &&
    settings.some((other) => other.slot === repair.slot && other.setting === repair.setting && !worse.has(other));
  return repairs.filter((repair) => !isBettered(repair));
}

/** Whether a check that does not fail now would fail with a setting written so. */
function beginsToFail(engine: Engine, assembly: Assembly, set: WrittenSetting): boolean {
  const changed = withSetting(assembly, set);
  if (!changed) return false;
  const before = new BuildEvaluation(assembly, engine.workshop);
  const after = new BuildEvaluation(changed, engine.workshop);
  return engine.checks
    .reading(set.slot)
    .some(
      ({ check, instance }) =>
        after.ask(check, instance).outcome === "fails" && before.ask(check, instance).outcome !== "fails",
    );
}

/** A setting that nobody stated, written down. */
export interface StatedSetting {
  readonly title: string;
  /** True when a person still has to write the value. */
  readonly unfinished: boolean;
  readonly edits: readonly DeclarationEdit[];
}

/** The ways to state a setting: with the number worked out for it, where nothing fails with it, or by hand. */
export function stateSetting(
  engine: Engine,
  build: Declaration,
  assembly: Assembly,
  { slot, setting }: { readonly slot: string; readonly setting: string },
): readonly StatedSetting[] {
  const installed = assembly.slots.get(slot);
  if (!installed || installed.settings.has(setting)) return [];
  const path = `${slot}.${setting}`;
  const byHand = { title: `State ${path} here`, unfinished: true, edits: [writeEntry(build, path, "")] };
  const value = workedOut(engine, assembly, slot, setting);
  if (value === undefined || beginsToFail(engine, assembly, { slot, setting, value })) return [byHand];
  const title = `${settingTitle({ slot, setting, value })}, as worked out`;
  return [{ title, unfinished: false, edits: [writeEntry(build, path, value)] }, byHand];
}

/** The value that the build's own numbers give a setting, as it would be written. */
function workedOut(engine: Engine, assembly: Assembly, slot: string, setting: string): string | undefined {
  const field = slotByPath(slot)?.settings[setting];
  if (field?.workedOutAs === undefined) return undefined;
  const path = field.workedOutAs.includes(".")
    ? field.workedOutAs
    : `${slot.slice(0, slot.indexOf("."))}.${field.workedOutAs}`;
  const worked = new BuildEvaluation(assembly, engine.workshop).quantity(path);
  if (worked?.state !== "known" || typeof worked.value !== "number") return undefined;
  return writeValue(field.type, rounded(field.type, worked.value));
}

/** As fine as it is set at the bench: whole millimetres and counts, two digits of anything else. */
function rounded(type: FieldType, value: number): number {
  const isWhole = type.type === "count" || (type.type === "quantity" && type.dimension === "length");
  return isWhole ? Math.round(value) : Number(value.toPrecision(2));
}
