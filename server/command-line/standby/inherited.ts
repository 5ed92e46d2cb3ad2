import { closeSync, readdirSync, readFileSync } from "node:fs";

/** `O_CLOEXEC` as Linux shows it: not handed on to another program. */
const notHandedOn = 0o2000000;

/**
 * Closes files that whoever started this process had open: a lock that is held through one would be held for as long
 * as a standby lives. Node keeps the first sixteen from a process that it starts, and on macOS all of them; what it
 * opens itself is never to be handed on, by which it is told from what was.
 */
export function letGoOfInherited(): void {
  if (process.platform !== "linux") return;
  for (const name of namesOf("/proc/self/fd")) {
    const descriptor = Number(name);
    if (descriptor <= 2) continue;
    try {
      const [, flags] = /^flags:\s*(\d+)/m.exec(readFileSync(`/proc/self/fdinfo/${name}`, "utf8")) ?? [];
      if (flags !== undefined && (Number.parseInt(flags, 8) & notHandedOn) === 0) closeSync(descriptor);
    } catch {
      // Closed since: that by which the names were read.
    }
  }
}

function namesOf(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
