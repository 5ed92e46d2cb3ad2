import { parseDeclaration } from "../../grammar/parse.ts";
import type { Assembly } from "../model/assembly.ts";
import type { WrittenSetting } from "../model/finding.ts";
import type { Statement } from "../model/stated.ts";
import { readValue } from "../values/read.ts";
import { instruction } from "../vocabulary/deeds.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { buildFields, slotByPath } from "../vocabulary/index.ts";

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
