import type { Assembly } from "../model/assembly.ts";
import type { Statement } from "../model/stated.ts";
import { quote } from "../values/problems.ts";
import type { Field } from "../vocabulary/define.ts";
import type { Solution } from "./solution.ts";
import type { Target } from "./target.ts";

/**
 * A suggestion as a variant of the build: its text is complete, and the build itself stays as it is. A part that is
 * exchanged has its settings restated, since those of the part before it do not pass on; an aim that the build states
 * and a target differs from is stated anew, as it is reached.
 * @param name of the variant.
 */
export function variantText(
  { declaration, fields }: Assembly,
  { changes, setUps, values, state }: Solution,
  targets: readonly Target[],
  name: string,
): string {
  const changed = new Set(changes.map(({ slot }) => slot));
  const lines = changes.map(({ slot, after }) => {
    if (after === "none") return `  ${slot}: none`;
    const settings = settingsText(state.assembly, slot);
    return `  ${slot}: ${after.declaration.name}${settings.length === 0 ? "" : ` { ${settings.join("; ")} }`}`;
  });
  for (const { slot, setting, value } of setUps) {
    if (!changed.has(slot)) lines.push(`  ${slot}.${setting}: ${value}`);
  }
  targets.forEach(({ aim }, index) => {
    const reached = values[index];
    if (aim === undefined || !fields.has(aim) || reached?.state !== "known") return;
    lines.push(`  ${aim}: ${Math.round(reached.value)} mm`);
  });
  const title = `${declaration.label}, changed`;
  return [`build ${name} ${quote(title)} from ${declaration.name} {`, ...lines, "}", ""].join("\n");
}

/** A name for a variant that no other build has. */
export function variantName({ declaration }: Assembly, isTaken: (name: string) => boolean): string {
  for (let number = 1; ; number++) {
    const name = `${declaration.name}-changed${number === 1 ? "" : `-${number}`}`;
    if (!isTaken(name)) return name;
  }
}

function settingsText({ slots }: Assembly, path: string): readonly string[] {
  const installed = slots.get(path);
  return [...(installed?.settings ?? [])].flatMap(([name, statement]) => {
    const field = installed?.slot.settings[name];
    const value = field && written(field, statement);
    return value === undefined ? [] : [`${name}: ${value}`];
  });
}

function written({ type }: Field, statement: Statement): string | undefined {
  if (statement.state === "none") return "none";
  if (statement.state === "unreadable") return undefined;
  return type.type === "text" ? quote(String(statement.value)) : statement.written;
}
