import type { Assembly } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import type { FieldType } from "../values/types.ts";
import { writeValue } from "../values/write.ts";
import { slotByPath } from "../vocabulary/index.ts";
import { type DeclarationEdit, writeEntry } from "./edit-build.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { beginsToFail } from "./judged-repairs.ts";
import { settingTitle } from "./set-settings.ts";

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
