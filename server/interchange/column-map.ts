import { type Unit, unitBySpelling } from "../../grammar/units.ts";
import { currencies } from "../values/currency.ts";
import { didYouMean, nearestSeveral } from "../values/near.ts";
import type { Field } from "../vocabulary/define.ts";
import { kindByName, kindNames, kinds } from "../vocabulary/index.ts";
import { type Delimiter, delimiters } from "./csv-table.ts";
import { type Encoding, encodings } from "./decode.ts";

/** What stands for a decision that a person has to take. */
export const undecided = "?";

/** What a column of a supplier's file holds. */
export interface MappedColumn {
  /** Its title in the file. */
  readonly column: string;
  /** The fact it states, `own.KEY` for data of the workshop's own, or `?`. Absent for one that is passed over. */
  readonly fact?: string;
  /** Unit of bare numbers. */
  readonly unit?: string;
  /** Currency of bare sums. */
  readonly currency?: string;
  /** What the column may mean, where that is not decided. */
  readonly perhaps?: readonly string[];
  readonly ignore?: true;
  /** For data of the workshop's own: the cells are as they stand in a file, not texts. */
  readonly asWritten?: true;
}

/**
 * How a supplier's columns become facts: kept in a small JSON file beside the CSV, so that next month's list is read
 * the same way. `kind`, `name` and `title` are templates: `{SKU}` stands for the cell under that title.
 */
export interface ColumnMap {
  readonly version: 1;
  readonly kind: string;
  /** Kinds by what the kind's column says, where it does not say them in the vocabulary's own words. */
  readonly kinds?: Readonly<Record<string, string>>;
  readonly name: string;
  readonly title?: string;
  /** The part that it derives from. */
  readonly from?: string;
  readonly documentation?: string;
  /** How numbers are written: `12.5` or `12,5`. */
  readonly decimals: "point" | "comma" | "?";
  readonly encoding?: Encoding;
  readonly delimiter?: Delimiter;
  readonly columns: readonly MappedColumn[];
}

/** Every fact that some kind has, by name. */
export function factNamed(name: string, ofKinds: readonly string[] = kindNames): Field | undefined {
  for (const kind of ofKinds) {
    const fields = kindByName(kind)?.fields;
    if (fields && Object.hasOwn(fields, name)) return fields[name];
  }
  return undefined;
}

/** The names of all facts of these kinds, each once. */
export function factNames(ofKinds: readonly string[] = kindNames): readonly string[] {
  return [...new Set(ofKinds.flatMap((kind) => Object.keys(kinds.get(kind)?.fields ?? {})))];
}

/** The titles in a template, in order. */
export function titlesIn(template: string): readonly string[] {
  return [...template.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] ?? "");
}

/** Everything in a map that a person has still to decide, in words. */
export function undecidedIn(map: ColumnMap): readonly string[] {
  return [
    ...(map.kind === undecided ? ["kind: the kind of part, such as cassette, or a column in braces"] : []),
    ...Object.entries(map.kinds ?? {}).flatMap(([word, kind]) =>
      kind === undecided ? [`kinds: which kind of part ${word} is`] : [],
    ),
    ...(map.name === undecided ? ["name: the part's name, such as corrie.{SKU}"] : []),
    ...(map.decimals === undecided ? ["decimals: point or comma"] : []),
    ...map.columns.flatMap(({ column, fact, unit, currency, perhaps }) => [
      ...(fact === undecided
        ? [`${column}: the fact it states${perhaps ? ` (perhaps ${perhaps.join(" or ")})` : ""}, or "ignore": true`]
        : []),
      ...(unit === undecided ? [`${column}: its unit`] : []),
      ...(currency === undecided ? [`${column}: its currency`] : []),
    ]),
  ];
}

export type ReadMap = { readonly map: ColumnMap } | { readonly problems: readonly string[] };

/** Reads a column map; every problem is named. */
export function readMap(text: string): ReadMap {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return { problems: [`it is not JSON: ${error instanceof Error ? error.message : String(error)}`] };
  }
  if (!isRecord(data)) return { problems: ["it is not a JSON object"] };
  const problems: string[] = [];
  if (data.version !== 1) problems.push("version must be 1");
  for (const name of ["kind", "name"]) {
    if (typeof data[name] !== "string" || data[name] === "") problems.push(`${name} must be a text`);
  }
  for (const name of ["title", "from", "documentation"]) {
    if (data[name] !== undefined && typeof data[name] !== "string") problems.push(`${name} must be a text`);
  }
  oneOf(data, "decimals", ["point", "comma", undecided], true, problems);
  oneOf(data, "encoding", encodings, false, problems);
  oneOf(data, "delimiter", delimiters, false, problems);
  const known = [
    ...["$schema", "version", "kind", "kinds", "name", "title", "from", "documentation"],
    ...["decimals", "encoding", "delimiter", "columns"],
  ];
  unknownMembers(data, known, "", problems);
  if (data.kinds !== undefined) readKinds(data.kinds, problems);
  if (typeof data.kind === "string") kindProblem(data.kind, problems);
  if (!Array.isArray(data.columns)) problems.push("columns must be a list");
  else for (const [index, column] of data.columns.entries()) readColumn(column, index, problems);
  return problems.length > 0 ? { problems } : { map: data as unknown as ColumnMap };
}

function kindProblem(kind: string, problems: string[]): void {
  if (kind === undecided || titlesIn(kind).length > 0 || kindByName(kind)) return;
  problems.push(`kind: ${kind} is not a kind of part.${didYouMean(nearestSeveral(kind, kindNames))}`);
}

function readKinds(data: unknown, problems: string[]): void {
  if (!isRecord(data)) {
    problems.push("kinds must be an object");
    return;
  }
  for (const [word, kind] of Object.entries(data)) {
    if (typeof kind !== "string") problems.push(`kinds: ${word} must be the name of a kind`);
    else if (kind !== undecided && !kindByName(kind)) {
      problems.push(
        `kinds: ${kind}, which ${word} stands for, is not a kind of part.${didYouMean(nearestSeveral(kind, kindNames))}`,
      );
    }
  }
}

function readColumn(data: unknown, index: number, problems: string[]): void {
  const where = `columns[${index}]`;
  if (!isRecord(data) || typeof data.column !== "string") {
    problems.push(`${where} must be an object with the title of a column as "column"`);
    return;
  }
  const { column, fact, unit, currency, ignore, perhaps, asWritten } = data;
  unknownMembers(
    data,
    ["column", "fact", "unit", "currency", "perhaps", "ignore", "asWritten"],
    `${column}: `,
    problems,
  );
  if (ignore !== undefined && ignore !== true) problems.push(`${column}: ignore is true or left out`);
  if (asWritten !== undefined && asWritten !== true) problems.push(`${column}: asWritten is true or left out`);
  if (fact !== undefined && typeof fact !== "string") problems.push(`${column}: fact must be a text`);
  if (perhaps !== undefined && !Array.isArray(perhaps)) problems.push(`${column}: perhaps must be a list`);
  const field = typeof fact === "string" ? factNamed(fact) : undefined;
  if (typeof fact === "string" && fact !== undecided && !field && !fact.startsWith("own.")) {
    problems.push(`${column}: no kind of part has a fact ${fact}.${didYouMean(nearestSeveral(fact, factNames()))}`);
  }
  if (unit !== undefined && unit !== undecided) unitProblem(column, unit, field, problems);
  if (currency !== undefined && currency !== undecided && !(typeof currency === "string" && currencies().has(currency)))
    problems.push(`${column}: currency is three letters such as GBP`);
}

function unitProblem(column: string, written: unknown, field: Field | undefined, problems: string[]): void {
  const unit: Unit | undefined = typeof written === "string" ? unitBySpelling(written) : undefined;
  if (!unit) {
    problems.push(`${column}: ${String(written)} is not a unit`);
    return;
  }
  const type = field?.type;
  if (type && "dimension" in type && type.dimension !== unit.dimension) {
    problems.push(`${column}: ${unit.symbol} is a unit of ${unit.dimension}, and the fact is a ${type.dimension}`);
  }
}

function oneOf(
  data: Readonly<Record<string, unknown>>,
  name: string,
  values: readonly string[],
  required: boolean,
  problems: string[],
): void {
  const value = data[name];
  if (value === undefined && !required) return;
  if (typeof value === "string" && values.includes(value)) return;
  problems.push(`${name} must be one of ${values.map((one) => JSON.stringify(one)).join(", ")}`);
}

function unknownMembers(
  data: Readonly<Record<string, unknown>>,
  known: readonly string[],
  where: string,
  problems: string[],
): void {
  for (const name of Object.keys(data)) {
    if (!known.includes(name))
      problems.push(`${where}${name} is not understood.${didYouMean(nearestSeveral(name, known))}`);
  }
}

export function isRecord(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

/** A map as it is written into its file: one column on a line. */
export function writeMap(map: ColumnMap): string {
  const { columns, ...rest } = map;
  const head = Object.entries(rest)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => `  ${JSON.stringify(name)}: ${JSON.stringify(value)},\n`)
    .join("");
  const rows = columns.map((column) => `    ${JSON.stringify(column)}`).join(",\n");
  return `{\n${head}  "columns": [\n${rows}\n  ]\n}\n`;
}
