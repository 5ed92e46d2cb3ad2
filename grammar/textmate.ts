/**
 * The TextMate grammar, for editors that colour text before the language server has answered.
 *
 * Everything it knows by name comes from tables given as data, so it cannot fall behind the vocabulary. Only regular
 * expressions that JavaScript and Oniguruma read alike are used, so that tests can run them.
 */

export interface TextMateTables {
  /** Words that begin a declaration. */
  readonly keywords: readonly string[];
  /** Kinds of parts and families of standards. */
  readonly kinds: readonly string[];
  /** Names of groups: assemblies, `rider`, `budget`, `own`. */
  readonly assemblies: readonly string[];
  /** Names of fields and slots. */
  readonly fields: readonly string[];
  /** Words a value can be, such as `mountain`. */
  readonly words: readonly string[];
  /** Every spelling of a unit and of a currency that is accepted. */
  readonly units: readonly string[];
}

interface Pattern {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly beginCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Pattern[];
  readonly include?: string;
}

/** A character of a word, as in characters.ts, but for the comma that an unmended number may hold. */
const wordCharacter = '[^\\s{}()\\[\\];:<>=",]';
const startOfWord = `(?<!${wordCharacter})`;
const endOfWord = `(?!${wordCharacter})`;
const word = `${wordCharacter}+`;

/** Matches any of the words, longest first so that none hides a longer one; nothing when there are none. */
function anyOf(words: readonly string[]): string {
  const escaped = [...new Set(words)]
    .filter((each) => each !== "" && !/\s/.test(each))
    .sort((left, right) => right.length - left.length || (left < right ? -1 : 1))
    .map((each) => each.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return escaped.length === 0 ? "(?!)" : `(?:${escaped.join("|")})`;
}

function whole(words: readonly string[]): string {
  return `${startOfWord}${anyOf(words)}${endOfWord}`;
}

/** The grammar as the JSON object that an editor loads. */
export function textMateGrammar(tables: TextMateTables): object {
  const keywords = anyOf(tables.keywords);
  const withKind = anyOf(tables.keywords.filter((keyword) => keyword === "part" || keyword === "standard"));
  const include = (...names: string[]): Pattern[] => names.map((name) => ({ include: `#${name}` }));
  const repository: Record<string, { readonly patterns: readonly Pattern[] }> = {
    comments: {
      patterns: [
        { name: "comment.line.documentation.ferrule", match: "///(?!/).*$" },
        { name: "comment.line.double-slash.ferrule", match: "//.*$" },
      ],
    },
    texts: {
      patterns: [
        {
          name: "string.quoted.double.ferrule",
          begin: `${startOfWord}"`,
          end: '"|$',
          patterns: [{ name: "constant.character.escape.ferrule", match: '\\\\["\\\\]' }],
        },
      ],
    },
    headers: {
      patterns: [
        {
          begin: `^\\s*(${withKind})\\s+(?:(${anyOf(tables.kinds)})${endOfWord}|(${word}))`,
          beginCaptures: {
            1: { name: "keyword.declaration.ferrule" },
            2: { name: "support.type.kind.ferrule" },
            3: { name: "entity.name.type.kind.ferrule" },
          },
          end: "(?=\\{)|$",
          patterns: include("comments", "texts", "headerWords", "headerNames"),
        },
        {
          begin: `^\\s*(${keywords})(?=\\s*"|\\s+${wordCharacter})`,
          beginCaptures: { 1: { name: "keyword.declaration.ferrule" } },
          end: "(?=\\{)|$",
          patterns: include("comments", "texts", "headerWords", "headerNames"),
        },
      ],
    },
    headerWords: { patterns: [{ name: "keyword.other.ferrule", match: whole(["from", "of"]) }] },
    headerNames: { patterns: [{ name: "entity.name.type.declaration.ferrule", match: word }] },
    waivers: {
      patterns: [
        {
          begin: `^\\s*(waive)(?=\\s+${wordCharacter})`,
          beginCaptures: { 1: { name: "keyword.control.waive.ferrule" } },
          end: "(?=[;}])|$",
          patterns: [
            ...include("comments", "texts"),
            { name: "keyword.other.ferrule", match: whole(["at", "until"]) },
            { name: "constant.numeric.date.ferrule", match: `${startOfWord}\\d{4}-\\d{2}-\\d{2}${endOfWord}` },
            { name: "variable.other.ferrule", match: word },
          ],
        },
      ],
    },
    keys: {
      patterns: [
        {
          match: `${startOfWord}(?:(${anyOf([...tables.fields, "when", "require", "let", "severity", "because", "remove"])})${endOfWord}|(${word}))\\s*(:)`,
          captures: {
            1: { name: "support.variable.property.ferrule" },
            2: { name: "variable.other.property.ferrule" },
            3: { name: "punctuation.separator.key-value.ferrule" },
          },
        },
        {
          match: `^\\s*(?:(${anyOf(tables.assemblies)})${endOfWord}|(${word}))\\s*(?=\\{)`,
          captures: {
            1: { name: "support.class.assembly.ferrule" },
            2: { name: "variable.other.property.ferrule" },
          },
        },
      ],
    },
    values: {
      patterns: [
        {
          match: `${startOfWord}([-+−±]?\\d[\\d.,/–−-]*)\\s*(${anyOf(tables.units)})${endOfWord}`,
          captures: { 1: { name: "constant.numeric.ferrule" }, 2: { name: "keyword.other.unit.ferrule" } },
        },
        { name: "constant.numeric.ferrule", match: `${startOfWord}[-+−±]?\\d[\\d.,/–−-]*${endOfWord}` },
        { name: "constant.other.colour.ferrule", match: `${startOfWord}#[0-9a-fA-F]{3,8}${endOfWord}` },
        {
          match: `${startOfWord}([a-zA-Z]\\w*)(?=\\()`,
          captures: { 1: { name: "support.function.ferrule" } },
        },
        { name: "constant.language.ferrule", match: whole(["yes", "no", "none"]) },
        { name: "keyword.operator.word.ferrule", match: whole(["or", "and", "not", "is", "in", "to"]) },
        { name: "variable.other.enummember.ferrule", match: whole(tables.words) },
        { name: "keyword.other.unit.ferrule", match: whole(tables.units) },
        { name: "keyword.operator.comparison.ferrule", match: "<=|>=|[<>=≤≥]" },
        { name: "keyword.operator.arithmetic.ferrule", match: `${startOfWord}(?:[-+*/±−]|\\+/-)${endOfWord}` },
        {
          // A part's name; a path through a build begins with a name of the vocabulary.
          name: "entity.name.type.reference.ferrule",
          match: `${startOfWord}(?!${anyOf([...tables.assemblies, ...tables.fields])}\\.)[A-Za-z][^\\s{}()\\[\\];:<>=",.]*\\.${word}`,
        },
        { name: "variable.other.ferrule", match: word },
      ],
    },
    punctuation: {
      patterns: [
        { name: "punctuation.section.block.ferrule", match: "[{}]" },
        { name: "punctuation.separator.ferrule", match: "[;,]" },
        { name: "punctuation.section.parens.ferrule", match: "[()]" },
      ],
    },
  };
  return {
    $schema: "https://raw.githubusercontent.com/martinring/tmlanguage/master/tmlanguage.json",
    name: "Ferrule",
    scopeName: "source.ferrule",
    fileTypes: ["ferrule"],
    patterns: include("comments", "texts", "headers", "waivers", "keys", "values", "punctuation"),
    repository,
  };
}
