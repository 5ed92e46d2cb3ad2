/** Random text of the language: sound declarations with blanks, comments and line ends at will; damage; any text. */

import fc from "fast-check";
import { quoteText } from "../../grammar/split.ts";
import { teethSpellings, unitBySpelling } from "../../grammar/units.ts";

const name = fc
  .stringMatching(/^[a-z][a-z0-9]{0,4}([-.][a-z][a-z0-9]{0,4}){0,2}$/)
  // The words that join parts of a header, a waiver or a value cannot be names there.
  .filter((text) => !["or", "from", "of", "at", "until"].includes(text))
  // Behind a number these are units in a spelling of their own, which the formatter rewrites.
  .filter((text) => (unitBySpelling(text)?.symbol ?? text) === text && !teethSpellings.slice(1).includes(text));
/** Words that mean something elsewhere in the language are ordinary names, units and values here. */
const key = fc.oneof(
  { weight: 8, arbitrary: name },
  fc.constantFrom("part", "from", "of", "at", "or", "in", "to", "until", "when", "build.x"),
);
const title = fc
  .string({ unit: "grapheme", maxLength: 12 })
  // Characters that would be reported, or that end the line, are for other tests.
  .map((text) =>
    text
      .replace(/[^\p{Letter}\p{Number}\p{Punctuation}\p{Symbol} ]/gu, "")
      // Letters by name that nobody can see, such as the filler of Hangul.
      .replace(/\p{Default_Ignorable_Code_Point}/gu, ""),
  )
  .map(quoteText);

const word = fc.oneof(
  name,
  fc.stringMatching(/^[A-Z]{1,3}[0-9]{1,3}\/[0-9]{1,3}$/),
  fc.stringMatching(/^[0-9]{1,4}(\.[0-9]{1,2})?$/),
  fc.stringMatching(/^[0-9]{1,2}x[0-9]{1,3}$/),
  fc.constantFrom("é", "路", "#c0ffee", "2027-03-31", "none", "yes", "GBP", "t"),
);
const item = fc.oneof({ weight: 6, arbitrary: word }, { weight: 2, arbitrary: title });
const value = fc.oneof(
  { weight: 4, arbitrary: fc.array(item, { minLength: 1, maxLength: 3 }).map((items) => items.join(" ")) },
  fc.array(item, { minLength: 2, maxLength: 3 }).map((items) => items.join(", ")),
  fc.array(word, { minLength: 2, maxLength: 3 }).map((items) => items.join(" or ")),
  word.map((limit) => `<= ${limit}`),
);

const blanks = fc.constantFrom("", " ", "  ", "\t", "\u00a0");
const comment = fc
  .tuple(fc.constantFrom("//", "///", "////"), fc.constantFrom("", " x", " build a { ...", ' "', " }", " # = ["))
  .map((parts) => parts.join(""));

interface EntryText {
  readonly lines: string[];
}

/** Lines of a block's entries, with random indentation, separators, comments and empty lines. */
const entries: fc.Memo<EntryText> = fc.memo((depth) =>
  fc
    .array(depth > 1 ? fc.oneof(field, groupOf(depth - 1), noise, waive) : fc.oneof(field, noise), { maxLength: 4 })
    .map((parts) => ({
      lines: parts.flat(),
    })),
);

const indentation = fc.constantFrom("", "  ", "   ", "\t");

const field = fc
  .tuple(indentation, key, blanks, blanks, value, blanks, fc.option(comment), fc.boolean())
  .map(([indent, path, before, after, text, end, trailing, semicolon]) => [
    `${indent}${path}${before}:${after}${text}${end}${semicolon ? ";" : ""}${trailing === null ? "" : ` ${trailing}`}`,
  ]);

const waive = fc
  .tuple(indentation, name, fc.option(name), title, fc.boolean())
  .map(([indent, code, at, reason, dated]) => [
    `${indent}waive drivetrain/${code}${at === null ? "" : ` at ${at}`} ${reason}${dated ? "  until 2027-03-31" : ""}`,
  ]);

const noise = fc.oneof(
  fc.constantFrom([""], ["", ""], [" \t"]),
  comment.map((text) => [text]),
  comment.map((text) => ["", `   ${text}  `, ""]),
);

const inlineEntries = fc
  .array(
    fc.tuple(key, value).map(([path, text]) => `${path}: ${text}`),
    { maxLength: 3 },
  )
  .chain((list) => fc.constantFrom(list.join("; "), list.join(" ;"), list.length > 0 ? `${list.join("; ")};` : ""));

function groupOf(depth: number): fc.Arbitrary<string[]> {
  const head = fc.tuple(key, fc.option(value)).map(([path, text]) => (text === null ? path : `${path}: ${text}`));
  const multiLine = fc
    .tuple(head, fc.option(comment), entries(depth), indentation)
    .map(([start, trailing, inner, indent]) => [
      `${indent}${start}{${trailing === null ? "" : ` ${trailing}`}`,
      ...inner.lines,
      `${indent}}`,
    ]);
  const oneLine = fc
    .tuple(indentation, head, inlineEntries, fc.option(comment))
    .map(([indent, start, inner, trailing]) => [`${indent}${start} {${inner}}${trailing === null ? "" : trailing}`]);
  return fc.oneof(multiLine, oneLine);
}

const header = fc.oneof(
  fc.tuple(name, fc.option(title)).map(([own, text]) => `workshop ${own} ${text ?? ""}`),
  fc
    .tuple(name, name, fc.option(title), fc.option(name))
    .map(([kind, own, text, base]) => `part ${kind} ${own} ${text ?? ""} ${base === null ? "" : `from ${base}`}`),
  fc
    .tuple(name, fc.option(title), fc.option(name))
    .map(([own, text, base]) => `build\t${own} ${base === null ? "" : `from ${base}`} ${text ?? ""}`),
  fc.tuple(name, fc.oneof(word, title), title).map(([family, code, text]) => `standard ${family} ${code} ${text}`),
  fc.tuple(title, name).map(([serial, of]) => `record ${serial} of ${of}`),
);

const documentation = fc.array(comment, { maxLength: 2 });

/** A sound declaration, `\n` between its lines and at its end, no empty line at its start. */
export const declarationText: fc.Arbitrary<string> = fc
  .tuple(documentation, header, entries(3), fc.option(comment))
  .map(([above, first, inner, trailing]) =>
    [...above, `${first.trimEnd()} {`, ...inner.lines, `}${trailing === null ? "" : ` ${trailing}`}`, ""].join("\n"),
  );

/** Sound declarations with any number of empty lines between them. */
export const soundText: fc.Arbitrary<string> = fc
  .array(fc.tuple(declarationText, fc.constantFrom("", "\n", "\n\n\n", "\n// between\n\n")), { maxLength: 4 })
  .map((parts) => parts.flat().join(""));

/** What damage puts in: single signs and short runs that mean something to the reader. */
const damage = fc.constantFrom(
  ..."{}:;,\"'=#<>()[]\n\r\t",
  "//",
  " - ",
  "\r\n",
  "{\n",
  "\n}",
  "\nbuild ",
  "waive ",
  " or ",
  "\u200b",
  "“",
  "http://x",
  "",
);

/** Sound text with pieces cut out and signs put in. */
export const damagedText: fc.Arbitrary<string> = fc
  .tuple(
    soundText,
    fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), damage), { minLength: 1, maxLength: 5 }),
  )
  .map(([text, edits]) =>
    edits.reduce((current, [place, cut, insert]) => {
      const at = Math.floor(place * current.length);
      return current.slice(0, at) + insert + current.slice(at + cut);
    }, text),
  );

/** Any text at all, lone surrogates and controls included, and text that looks like the language. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.string({ unit: fc.nat(0xffff).map((code) => String.fromCharCode(code)), maxLength: 60 }),
  fc
    .array(
      fc.oneof(damage, fc.constantFrom("build", "a", " ", "part", "rule x", "when: ", "3,5", '29"', "or", "not")),
      {
        maxLength: 40,
      },
    )
    .map((parts) => parts.join("")),
  damagedText,
);
