import type { Declaration } from "../model/declaration.ts";
import { printable } from "../reports/printable.ts";
import { nearest } from "../values/near.ts";
import type { DisplayUnits } from "../values/show.ts";
import { type Address, readAddress, splits } from "./address.ts";
import type { Invocation } from "./command.ts";
import { dayOf, localDay } from "./day.ts";
import { type LoadedWorkshop, load } from "./load.ts";
import { UsageProblem } from "./problem.ts";
import { readWorkshops } from "./read-workshops.ts";
import { findTargets, Roots } from "./targets.ts";

/** A build that an address names, in its workshop. */
export interface FoundBuild {
  readonly workshop: LoadedWorkshop;
  readonly build: Declaration;
  /** What stands behind the build's name; empty for nothing. */
  readonly path: string;
}

/** Reads the workshops of these files and folders, and says what of them could not be read. */
export function readAndLoad(words: readonly string[], invocation: Invocation): readonly LoadedWorkshop[] {
  const { folder, terminal } = invocation;
  const given = invocation.value("today");
  const today = given === undefined ? localDay() : dayOf(given);
  const units = invocation.value("units") as DisplayUnits | undefined;
  const read = readWorkshops(findTargets(words, folder, new Roots()), undefined, folder);
  const workshops = read.map((workshop) => load(workshop, today, folder, units));
  for (const { path, reason } of [...read, ...workshops].flatMap(({ leftOut }) => leftOut)) {
    terminal.warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
  }
  return workshops;
}

/**
 * The build that `FILE#BUILD` names, and what stands behind its name.
 * @throws UsageProblem when there is no such build.
 */
export function findBuild(address: Address, invocation: Invocation): FoundBuild {
  return buildIn(readAndLoad([fileOf(address)], invocation), address);
}

/** The file or folder of an address; the folder the command runs in when it names none. */
export function fileOf({ file }: Address): string {
  return file === "" ? "." : file;
}

/**
 * The build itself.
 * @throws UsageProblem when the word is no such address, when there is no such build, or something stands behind it.
 */
export function findWholeBuild(word: string, invocation: Invocation): FoundBuild {
  const address = readAddress(word);
  if (!address) throw new UsageProblem(`${printable(word)} names no build; write FILE#BUILD.`);
  const found = findBuild(address, invocation);
  if (found.path === "") return found;
  throw new UsageProblem(`${printable(word)} names something of a build; write FILE#BUILD for the build itself.`);
}

/** @throws UsageProblem when none of the workshops has the build in a file that was asked for. */
export function buildIn(workshops: readonly LoadedWorkshop[], address: Address): FoundBuild {
  const { declaration, ...found } = declaredIn(workshops, address, ["build"]);
  return { ...found, build: declaration };
}

/**
 * The build or record that `FILE#NAME` names, and what stands behind its name. A build comes before a record.
 * @throws UsageProblem when there is neither.
 */
export function findBuildOrRecord(address: Address, invocation: Invocation): FoundDeclaration {
  return declaredIn(readAndLoad([fileOf(address)], invocation), address, ["build", "record"]);
}

/** Something that an address names, in its workshop. */
export interface FoundDeclaration {
  readonly workshop: LoadedWorkshop;
  readonly declaration: Declaration;
  /** What stands behind its name; empty for nothing. */
  readonly path: string;
}

function declaredIn(
  workshops: readonly LoadedWorkshop[],
  address: Address,
  keywords: readonly ("build" | "record")[],
): FoundDeclaration {
  const names: string[] = [];
  const present = new Set<string>();
  for (const keyword of keywords) {
    for (const workshop of workshops) {
      const declared = declarationsOf(workshop, keyword);
      for (const { name, path } of splits(address.rest)) {
        const declaration = declared.find((one) => one.name === name);
        if (declaration) return { workshop, declaration, path };
      }
      names.push(...declared.map(({ name }) => name));
      if (declared.length > 0) present.add(keyword);
    }
  }
  const wanted = address.rest.split("/", 1)[0] ?? "";
  const near = nearest(wanted, names);
  const where = address.file === "" ? "this workshop" : printable(address.file);
  // Records are not for whoever has none.
  const sought = present.has("record") ? keywords : keywords.slice(0, 1);
  throw new UsageProblem(
    `${where} has no ${sought.join(" or ")} ${printable(wanted)}.${near === undefined ? "" : ` Did you mean ${printable(near)}?`}`,
    names.length === 0
      ? [`It has no ${sought.join(" or ")} at all.`]
      : [`Its ${sought.map((keyword) => `${keyword}s`).join(" and ")}: ${names.map(printable).join(", ")}`],
  );
}

/** The builds of the files that were asked for. */
export function buildsOf(workshop: Pick<LoadedWorkshop, "engine" | "uris">): readonly Declaration[] {
  return declarationsOf(workshop, "build");
}

function declarationsOf(
  { engine, uris }: Pick<LoadedWorkshop, "engine" | "uris">,
  keyword: "build" | "record",
): readonly Declaration[] {
  return uris.flatMap((uri) => (engine.file(uri)?.declarations ?? []).filter((one) => one.keyword === keyword));
}
