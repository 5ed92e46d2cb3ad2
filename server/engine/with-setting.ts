import { parseDeclaration } from "../../grammar/parse.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Statement } from "../model/stated.ts";
import { readValue } from "../values/read.ts";

/**
 * The assembly with a setting of a slot written otherwise; `undefined` where the slot is empty, has no such setting,
 * or the value cannot be read.
 * @param value as it would be written in a file.
 */
export function withSetting(assembly: Assembly, slot: string, setting: string, value: string): Assembly | undefined {
  const installed = assembly.slots.get(slot);
  const field = installed?.slot.settings[setting];
  const entry = parseDeclaration(`build setting {\n  ${setting}: ${value}\n}\n`).block?.entries[0];
  if (!installed || !field || installed.state === "none" || entry?.form !== "field") return undefined;
  const reading = readValue(field.type, entry.value.tokens, { field: setting, span: entry.value.span });
  const { place } = installed;
  if (!reading.isNone && reading.value === undefined) return undefined;
  const statement: Statement = reading.isNone
    ? { state: "none", place }
    : { state: "stated", value: reading.value!, written: reading.written, place };
  const settings = new Map(installed.settings).set(setting, statement);
  return { ...assembly, slots: new Map(assembly.slots).set(slot, { ...installed, settings }) };
}
