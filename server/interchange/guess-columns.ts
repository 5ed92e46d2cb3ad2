import { nearestSeveral } from "../values/near.ts";
import { kindByName, kindNames, kinds } from "../vocabulary/index.ts";
import { meantBy } from "../vocabulary/synonyms.ts";
import { type CellStyle, isBareNumber, readCell } from "./cells.ts";
import { type ColumnMap, factNamed, factNames, type MappedColumn, undecided } from "./column-map.ts";
import { codeTitles, doubtfulTitles, factTitles, kindTitles, labelTitles, ownTitles } from "./column-words.ts";
import type { CsvTable } from "./csv-table.ts";
import { guessDecimals } from "./decimals.ts";
import { type Heading, readHeading, slug } from "./heading.ts";
import { isEmptyCell } from "./spreadsheet-text.ts";

/**
 * How a column was understood.
 * - `certain`: its title is the name of a fact, as our own export writes it.
 * - `likely`: by what such columns are usually called.
 * - `open`: a person has to say.
 * - `ignored`: nothing in the vocabulary goes by such a title.
 */
export type Confidence = "certain" | "likely" | "open" | "ignored";

export interface GuessedColumn {
  readonly mapped: MappedColumn;
  readonly confidence: Confidence;
  /** A cell of it, for a person to see what it holds. */
  readonly example: string;
}

export interface Guess {
  readonly map: ColumnMap;
  readonly columns: readonly GuessedColumn[];
  /** True when nothing was guessed at: every title says exactly what is below it. */
  readonly isCertain: boolean;
}

/** Titles that our own export writes beside the names of facts. */
const structure = ["kind", "name", "title", "from", "documentation"] as const;

/** Rows that are looked at for a guess. */
const mostSamples = 200;
const everyRow = Number.POSITIVE_INFINITY;

/**
 * Guesses what the columns of a table hold.
 * @param stem the file's name without its ending: a list called `cassettes` is one of cassettes.
 * @param currency the workshop's own.
 */
export function guessColumns(table: CsvTable, stem: string, currency: string | undefined): Guess {
  return new Guesser(table, stem, currency).guess();
}

/** Where the kind of each part stands. */
interface MeantKind {
  readonly template: string;
  /** The column that names it; absent where all parts are of one kind. */
  readonly column: number | undefined;
  /** What words of that column stand for which kind. */
  readonly words: Readonly<Record<string, string>>;
}

class Guesser {
  readonly #table: CsvTable;
  readonly #headings: readonly Heading[];
  readonly #stem: string;
  readonly #currency: string | undefined;

  constructor(table: CsvTable, stem: string, currency: string | undefined) {
    this.#table = table;
    this.#headings = table.headings.map(readHeading);
    this.#stem = stem;
    this.#currency = currency;
  }

  guess(): Guess {
    const exact = this.#exactStructure();
    const kind = exact.kind === undefined ? this.#kind() : { template: "{kind}", column: exact.kind, words: {} };
    const ofKinds = this.#kindsMeant(kind);
    const code = exact.name ?? this.#find(codeTitles);
    const label = exact.title ?? this.#label(code);
    const taken = new Set([kind.column, ...Object.values(exact)].filter((column) => column !== undefined));
    const facts = this.#table.headings.map((_, column) => {
      if (taken.has(column)) return undefined;
      if (column === code) return this.#supplierCode(column);
      if (column === label) return undefined;
      return this.#fact(column, ofKinds);
    });
    const isOwn = exact.kind !== undefined && facts.every((guess) => !guess || guess.confidence === "certain");
    const numbers = facts.flatMap((guess, column) => (this.#isNumeric(guess, ofKinds) ? this.#cells(column) : []));
    // Our own export writes points, however few numbers there are to tell it by.
    const decimals = isOwn ? "point" : guessDecimals(numbers);
    const columns = this.#withoutDoubles(facts).flatMap((guess, column) => {
      if (!guess) return [];
      return [this.#withMeasure(guess, column, ofKinds)];
    });
    const titles = this.#table.headings;
    const named = code === undefined ? undecided : exact.name === undefined ? this.#nameTemplate(code) : "{name}";
    const map: ColumnMap = {
      version: 1,
      kind: kind.template,
      ...(Object.keys(kind.words).length > 0 ? { kinds: kind.words } : {}),
      name: named,
      ...(label === undefined ? {} : { title: `{${titles[label]}}` }),
      ...(exact.from === undefined ? {} : { from: "{from}" }),
      ...(exact.documentation === undefined ? {} : { documentation: "{documentation}" }),
      decimals,
      columns: columns.map(({ mapped }) => mapped),
    };
    const isCertain =
      exact.kind !== undefined &&
      exact.name !== undefined &&
      decimals !== undecided &&
      columns.every(({ confidence }) => confidence === "certain");
    return { map, columns, isCertain };
  }

  /** Columns whose titles are written as our own export writes them. */
  #exactStructure(): Partial<Record<(typeof structure)[number], number>> {
    const found: Partial<Record<(typeof structure)[number], number>> = {};
    const { headings } = this.#table;
    if (!headings.includes("kind") || !headings.includes("name")) return found;
    for (const title of structure) {
      const column = headings.indexOf(title);
      if (column >= 0) found[title] = column;
    }
    return found;
  }

  #cells(column: number, most = mostSamples): readonly string[] {
    return this.#table.rows
      .slice(0, most)
      .map(({ cells }) => cells[column]?.trim() ?? "")
      .filter((cell) => !isEmptyCell(cell));
  }

  #find(titles: readonly string[]): number | undefined {
    for (const title of titles) {
      const column = this.#headings.findIndex(({ name }) => name === title);
      if (column >= 0) return column;
    }
    return undefined;
  }

  #label(code: number | undefined): number | undefined {
    for (const title of labelTitles) {
      const column = this.#headings.findIndex(({ name }, index) => name === title && index !== code);
      if (column >= 0) return column;
    }
    return undefined;
  }

  /** The kind of all parts by the file's name, or of each by a column. */
  #kind(): MeantKind {
    for (const title of kindTitles) {
      const column = this.#headings.findIndex(({ name }) => name === title);
      if (column < 0) continue;
      const words = [...new Set(this.#cells(column, everyRow))];
      const meant = words.map((word) => [word, kindMeant(word) ?? undecided] as const);
      const known = meant.filter(([, kind]) => kind !== undecided).length;
      if (words.length === 0 || known * 2 < words.length) continue;
      const translated = meant.filter(([word, kind]) => word !== kind);
      return { template: `{${this.#table.headings[column]}}`, column, words: Object.fromEntries(translated) };
    }
    const named = this.#stem.split(/[^\p{L}]+/u).flatMap((word) => kindMeant(word) ?? []);
    return { template: kindMeant(this.#stem) ?? named[0] ?? undecided, column: undefined, words: {} };
  }

  #kindsMeant({ template, column, words }: MeantKind): readonly string[] {
    if (column === undefined) return template === undecided ? kindNames : [template];
    const found = new Set(
      this.#cells(column, everyRow)
        .map((word) => words[word] ?? word)
        .filter((kind) => kindByName(kind)),
    );
    return found.size > 0 ? [...found] : kindNames;
  }

  #nameTemplate(code: number): string {
    const template = `{${this.#table.headings[code]}}`;
    // A code with a dot in it names its maker already, as names of parts do.
    const hasMaker = this.#cells(code).every((cell) => cell.includes("."));
    const maker = slug(this.#stem).split("-")[0] ?? "";
    return hasMaker || maker === "" ? template : `${maker}.${template}`;
  }

  #supplierCode(column: number): GuessedColumn {
    return this.#guessed(column, { fact: "supplier-code" }, "likely");
  }

  #fact(column: number, ofKinds: readonly string[]): GuessedColumn {
    const title = this.#table.headings[column] ?? "";
    const { name } = this.#headings[column]!;
    const data = /^(own\..+?)( \(as written\))?$/.exec(title);
    if (data) {
      const raw = data[2] === undefined ? {} : ({ asWritten: true } as const);
      return this.#guessed(column, { fact: data[1]!, ...raw }, "certain");
    }
    const own = ownTitles[name];
    const exact = factNamed(name, ofKinds);
    if (exact) return this.#guessed(column, { fact: name }, isOwnTitle(title, name) ? "certain" : "likely");
    const known = factNames(ofKinds);
    const meant = [...(Object.hasOwn(factTitles, name) ? (factTitles[name] ?? []) : []), ...meantBy(name, known)];
    const [likely] = meant.filter((fact) => known.includes(fact));
    if (likely !== undefined) {
      return this.#isReadable(column, likely, ofKinds)
        ? this.#guessed(column, { fact: likely }, "likely")
        : this.#guessed(column, { fact: `own.${likely}` }, "likely");
    }
    if (own !== undefined) return this.#guessed(column, { fact: `own.${own}` }, "likely");
    const doubtful = Object.hasOwn(doubtfulTitles, name) ? (doubtfulTitles[name] ?? []) : nearestSeveral(name, known);
    if (doubtful.length > 0) return this.#guessed(column, { fact: undecided, perhaps: doubtful }, "open");
    return this.#guessed(column, { ignore: true }, "ignored");
  }

  #isNumeric(guess: GuessedColumn | undefined, ofKinds: readonly string[]): boolean {
    const fact = guess?.mapped.fact;
    const type = fact === undefined ? undefined : factNamed(fact, ofKinds)?.type.type;
    return type !== undefined && ["quantity", "quantities", "count", "number", "money"].includes(type);
  }

  #guessed(column: number, mapped: Omit<MappedColumn, "column">, confidence: Confidence): GuessedColumn {
    const [example = ""] = this.#cells(column);
    return { mapped: { column: this.#table.headings[column] ?? "", ...mapped }, confidence, example };
  }

  /** Words of a maker's own for a colour or a material are no words of ours: most cells have to be readable. */
  #isReadable(column: number, fact: string, ofKinds: readonly string[]): boolean {
    const field = factNamed(fact, ofKinds);
    if (!field || (field.type.type !== "colour" && field.type.type !== "word" && field.type.type !== "words"))
      return true;
    const cells = this.#cells(column);
    const style: CellStyle = { decimals: "point" };
    const readable = cells.filter((cell) => !("problem" in readCell(field.type, cell, style)));
    return readable.length * 2 > cells.length;
  }

  /** Of several columns for one fact the surest keeps it; the others are for a person to decide. */
  #withoutDoubles(guesses: readonly (GuessedColumn | undefined)[]): readonly (GuessedColumn | undefined)[] {
    const ranks: Readonly<Record<Confidence, number>> = { certain: 0, likely: 1, open: 2, ignored: 3 };
    const first = new Map<string, GuessedColumn>();
    const order = guesses
      .filter((guess) => guess !== undefined)
      .sort((a, b) => ranks[a.confidence] - ranks[b.confidence]);
    for (const guess of order) {
      const { fact } = guess.mapped;
      if (fact !== undefined && fact !== undecided && !first.has(fact)) first.set(fact, guess);
    }
    return guesses.map((guess) => {
      const fact = guess?.mapped.fact;
      if (!guess || fact === undefined || fact === undecided || first.get(fact) === guess) return guess;
      const { column } = guess.mapped;
      return { ...guess, mapped: { column, fact: undecided, perhaps: [fact] }, confidence: "open" };
    });
  }

  /** Puts unit and currency to a column: by its title, else open where its cells are bare numbers. */
  #withMeasure(guess: GuessedColumn, column: number, ofKinds: readonly string[]): GuessedColumn {
    const { fact } = guess.mapped;
    const field = fact === undefined ? undefined : factNamed(fact, ofKinds);
    const heading = this.#headings[column]!;
    if (!field) return guess;
    const { type } = field;
    const areBare = this.#cells(column).some(isBareNumber);
    if (type.type === "quantity" || type.type === "quantities") {
      const unit = heading.unit;
      if (unit && unit.dimension === type.dimension) {
        return { ...guess, mapped: { ...guess.mapped, unit: unit.symbol } };
      }
      if (!areBare) return guess;
      return { ...guess, mapped: { ...guess.mapped, unit: undecided }, confidence: "open" };
    }
    if (type.type === "money" && (areBare || heading.currency !== undefined)) {
      const currency = heading.currency ?? this.#currency;
      const confidence = guess.confidence === "certain" && heading.currency !== undefined ? "certain" : "likely";
      return currency === undefined
        ? { ...guess, mapped: { ...guess.mapped, currency: undecided }, confidence: "open" }
        : { ...guess, mapped: { ...guess.mapped, currency }, confidence };
    }
    return guess;
  }
}

/** Whether a title is written just as a fact's name is, with its unit or currency in brackets or without. */
function isOwnTitle(title: string, name: string): boolean {
  return title === name || (title.startsWith(`${name} (`) && title.endsWith(")"));
}

/** The kind that a supplier's word means: `Cassettes`, `rear derailleur`, `Chain ring`. */
export function kindMeant(word: string): string | undefined {
  const name = slug(word).replaceAll(".", "");
  const forms = [name, name.replace(/s$/, ""), name.replace(/es$/, ""), name.replace(/ies$/, "y")];
  for (const form of forms) if (kindByName(form)) return form;
  for (const form of forms) {
    const [meant] = meantBy(form, kindNames);
    if (meant !== undefined) return meant;
  }
  const bare = name.replaceAll("-", "");
  for (const kind of kinds.values()) {
    const own = kind.name.replaceAll("-", "");
    if (own === bare || `${own}s` === bare || own === `${bare}s`) return kind.name;
  }
  return undefined;
}
