import type { Assembly, Installed } from "../model/assembly.ts";
import type { RecordText } from "./read-record.ts";

/**
 * The bike that was measured. A build that names several parts for a slot stands for several bikes; a record that says
 * which part was fitted there is of one of them. A part that the build does not name is a finding, and changes nothing.
 */
export function asFitted(assembly: Assembly, { entries }: RecordText): Assembly {
  const slots = new Map<string, Installed>();
  for (const { path, statement } of entries) {
    const installed = assembly.slots.get(path);
    if (!installed || statement.state !== "stated") continue;
    const named = installed.alternates.find(({ name }) => name === statement.value);
    if (!named?.part) continue;
    slots.set(path, {
      ...installed,
      state: "part",
      name: named.name,
      part: named.part,
      place: named.place,
      alternates: [],
    });
  }
  return slots.size === 0 ? assembly : { ...assembly, slots: new Map([...assembly.slots, ...slots]) };
}
