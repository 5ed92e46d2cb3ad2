import type { LocationLink, Position } from "vscode-languageserver-types";
import { calculationOfQuantity } from "../calculations/table.ts";
import type { Engine } from "../engine/engine.ts";
import { type Declaration, headerPlace, type Place } from "../model/declaration.ts";
import { comparedWith } from "../records/judge.ts";
import { parentOf } from "../records/paths.ts";
import { measurementAt, slotByPath } from "../vocabulary/index.ts";
import { type Meaning, meaningAt } from "./shared/meaning.ts";
import type { ClientOptions } from "./shared/options.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { rulesBuilds } from "./shared/rule-builds.ts";

/**
 * Where what stands at a position is declared: a part or a base at its declaration, a code (or the half of a composite
 * one) at its standard, the name of a slot at its line in the build, a slot of a variant at the base's line. Needs the
 * resolved model.
 */
export function definition(engine: Engine, uri: string, position: Position, client: ClientOptions): LocationLink[] {
  const located = locate(engine, uri, position);
  if (!located) return [];
  const { declaration, offset } = located;
  const meaning = meaningAt(engine.workshop, declaration, offset);
  if (!meaning) return [];
  return definedAt(engine, declaration, meaning).map((place) => ({
    originSelectionRange: rangeOf(engine, declaration, meaning.span),
    targetUri: client.shownUri(place.declaration.uri),
    targetRange: place.isWhole ? rangeOf(engine, place.declaration, place.declaration.tree.span) : engine.range(place),
    targetSelectionRange: engine.range(place),
  }));
}

interface Target extends Place {
  /** True when the whole declaration is meant, of which the place is the name. */
  readonly isWhole?: boolean;
}

function definedAt(engine: Engine, declaration: Declaration, meaning: Meaning): readonly Target[] {
  if (declaration.keyword === "rule" && (meaning.what === "slot" || meaning.what === "field")) {
    return placesInBuilds(engine, declaration, meaning.what === "slot" ? meaning.path : meaning.at.path);
  }
  switch (meaning.what) {
    case "check":
      return meaning.rule ? [whole(meaning.rule)] : [];
    case "local":
      return [{ declaration, span: meaning.local.span }];
    case "reference":
      return meaning.target ? [whole(meaning.target)] : [];
    case "code":
      return meaning.resolved?.standard ? [whole(meaning.resolved.standard.declaration)] : [];
    case "own-name":
      return [whole(declaration)];
    case "slot":
      return slotPlaces(engine, declaration, meaning.path, meaning.isKey);
    case "field":
      return declaration.keyword === "record"
        ? comparedPlaces(engine, declaration, meaning.at.path)
        : statedPlaces(engine, declaration, meaning.at.path);
    default:
      return [];
  }
}

/** Where the builds that a rule is for say what it names, each place once. */
function placesInBuilds(engine: Engine, rule: Declaration, path: string): readonly Target[] {
  const applying = rulesBuilds(engine, rule).filter(({ row }) => row.outcome !== "notApplicable");
  return distinct(
    applying.flatMap(({ build, report }) => {
      const slot = report.assembly.slots.get(path)?.place;
      const place = slot ?? placeInBuild(engine, build, path);
      return place ? [place] : [];
    }),
  );
}

function whole(declaration: Declaration): Target {
  return { ...headerPlace(declaration), isWhole: true };
}

/** Where a build says what is in a slot; from its own line, where the base that it derives from does. */
function slotPlaces(engine: Engine, declaration: Declaration, path: string, isKey: boolean): readonly Target[] {
  const build = buildOf(engine, declaration);
  const installed = build && engine.report(build)?.assembly.slots.get(path);
  if (!installed) return [];
  if (!isKey || installed.place.declaration !== declaration) return [installed.place];
  const base = declaration.from === undefined ? undefined : engine.workshop.build(declaration.from);
  const inherited = base && base !== declaration ? engine.report(base)?.assembly.slots.get(path) : undefined;
  return [inherited?.place ?? installed.place];
}

/** Where that which was measured stands in the build or its parts: what it is compared with, else what it was measured on. */
function comparedPlaces(engine: Engine, record: Declaration, path: string): readonly Target[] {
  const report = engine.record(record);
  const reader = report?.bike?.reader;
  if (!report || !reader) return [];
  const rows = report.rows.filter(({ measured, beside }) => measured.path === path || beside?.path === path);
  const facts = rows.flatMap((row) => comparedWith(row, reader));
  const stated = facts.filter((fact) => !calculationOfQuantity(fact.path) && !slotByPath(fact.path));
  const places = (stated.length > 0 ? stated : facts).map(({ place }) => place);
  if (places.length > 0) return distinct(places);
  const slot = measurementAt(path)?.on ?? parentOf(path);
  return slotPlaces(engine, record, slot, false);
}

function distinct(places: readonly Place[]): readonly Place[] {
  const seen = new Set<string>();
  return places.filter(({ declaration, span }) => {
    const key = `${declaration.uri} ${declaration.start} ${span.start}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** Where the base states the field that a part or a variant states anew, else the statement itself. */
function statedPlaces(engine: Engine, declaration: Declaration, path: string): readonly Target[] {
  const { keyword, from } = declaration;
  if (keyword === "part") {
    const base = from === undefined ? undefined : engine.workshop.part(from);
    const stated = (base ? engine.part(base) : engine.part(declaration)).facts.get(path);
    return stated ? [stated.place] : [];
  }
  const build = buildOf(engine, declaration);
  if (!build) return [];
  const base = from === undefined || keyword !== "build" ? undefined : engine.workshop.build(from);
  for (const one of [base, build]) {
    const place = one && placeInBuild(engine, one, path);
    if (place) return [place];
  }
  return [];
}

function placeInBuild(engine: Engine, build: Declaration, path: string): Place | undefined {
  const assembly = engine.report(build)?.assembly;
  const dot = path.lastIndexOf(".");
  const installed = assembly?.slots.get(path.slice(0, Math.max(0, dot)));
  const name = path.slice(dot + 1);
  return (assembly?.fields.get(path) ?? installed?.settings.get(name) ?? installed?.part?.facts.get(name))?.place;
}

/** The build that a declaration's paths are of: itself, or the one that a record was measured on. */
function buildOf(engine: Engine, declaration: Declaration): Declaration | undefined {
  if (declaration.keyword === "build") return declaration;
  if (declaration.keyword === "record" && declaration.of !== undefined) return engine.workshop.build(declaration.of);
  return undefined;
}
