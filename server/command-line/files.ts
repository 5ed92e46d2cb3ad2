import { type LeftOut, listFiles } from "../workshop-files/list.ts";
import type { Target } from "./targets.ts";

/** The files that targets stand for, each once: those of a folder include the workshops below it. */
export function filesUnder(targets: readonly Target[]): {
  readonly files: readonly string[];
  readonly leftOut: readonly LeftOut[];
} {
  const files = new Set<string>();
  const leftOut: LeftOut[] = [];
  const folders: string[] = [];
  for (const { path, isFolder } of targets) {
    if (isFolder) folders.push(path);
    else files.add(path);
  }
  for (let next = folders.shift(); next !== undefined; next = folders.shift()) {
    const listing = listFiles(next);
    for (const file of listing.files) files.add(file);
    leftOut.push(...listing.leftOut);
    folders.push(...listing.workshopsBelow);
  }
  return { files: [...files], leftOut };
}
