import { eastAsianWidth } from "get-east-asian-width";

/**
 * Everything that would move the cursor, change direction or not be seen, line ends and tabs included; but not the
 * joiners and hyphens that scripts and emoji are written with.
 */
const unprintable = /[\p{Cc}\p{Zl}\p{Zp}]|(?![\u00ad\u200c\u200d])\p{Cf}/gu;

/**
 * Text from a file or a file's name, safe to send to a terminal: what cannot be seen is shown by a sign one column
 * wide, so that a text can neither hide itself nor give the terminal orders.
 */
export function printable(text: string): string {
  return text.replace(unprintable, (character) => {
    const code = character.codePointAt(0) ?? 0;
    if (code === 9) return " ";
    if (code < 32) return String.fromCharCode(0x2400 + code);
    return code === 127 ? "\u2421" : "\ufffd";
  });
}

/** Made when first needed: it takes longer than writing a whole report. */
let graphemes: Intl.Segmenter | undefined;

/** The characters of a text as a person counts them. */
export function* charactersOf(text: string): Iterable<string> {
  graphemes ??= new Intl.Segmenter("en", { granularity: "grapheme" });
  for (const { segment } of graphemes.segment(text)) yield segment;
}

/** How many columns a terminal gives to a text: two for wide characters (Unicode Annex 11), none for marks alone. */
export function columns(text: string): number {
  if (/^[\u0020-\u007e\u00a0-\u00ac\u00ae-\u02ff]*$/.test(text)) return text.length;
  let width = 0;
  for (const character of charactersOf(text)) {
    if (/^[\p{M}\p{Cf}]+$/u.test(character)) continue;
    // A sign that asks for its coloured picture is as wide as one.
    width += character.includes("\ufe0f") ? 2 : eastAsianWidth(character.codePointAt(0) ?? 32);
  }
  return width;
}

/** Lines of at most `width` columns, broken at blanks; a longer word stays whole. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  let used = 0;
  for (const word of text.split(" ")) {
    const needed = columns(word);
    if (line !== "" && used + 1 + needed > width) {
      lines.push(line);
      line = word;
      used = needed;
    } else {
      used += line === "" ? needed : 1 + needed;
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines;
}

/** A paragraph behind an indentation; the first line may begin otherwise, such as with "Fix: ". */
export function paragraph(text: string, width: number, indent: string, first = indent): string[] {
  const room = Math.max(20, width - Math.max(columns(indent), columns(first)));
  return wrap(printable(text), room).map((line, index) => `${index === 0 ? first : indent}${line}`);
}
