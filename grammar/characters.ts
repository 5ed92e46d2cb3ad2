/**
 * Which characters separate, which make up a word, and which a person cannot see.
 *
 * The splitter and the lexer both ask here, so a skimmed name and a parsed name are always cut at the same place.
 */

/** Classes of ASCII characters; every other one is part of a word unless it is a blank or a curly quote. */
const wordClass = 0;
const blankClass = 1;
const lineEndClass = 2;
const delimiterClass = 3;
const slashClass = 4;
const commaClass = 5;

const asciiClasses = new Uint8Array(128);
for (const character of " \t\v\f") asciiClasses[character.charCodeAt(0)] = blankClass;
for (const character of "\r\n") asciiClasses[character.charCodeAt(0)] = lineEndClass;
for (const character of '{}()[];:<>="') asciiClasses[character.charCodeAt(0)] = delimiterClass;
asciiClasses["/".charCodeAt(0)] = slashClass;
asciiClasses[",".charCodeAt(0)] = commaClass;

/** The mark some editors write at the start of a file; it counts as a blank there. */
export const byteOrderMark = 0xfeff;

/** Space, tab, vertical tab, form feed, and every space of Unicode, the no-break ones included. */
export function isBlank(code: number): boolean {
  if (code < 128) return asciiClasses[code] === blankClass;
  return (
    code === 0xa0 ||
    code === 0x1680 ||
    (code >= 0x2000 && code <= 0x200a) ||
    code === 0x202f ||
    code === 0x205f ||
    code === 0x3000
  );
}

/** Line feed or carriage return. The two together are one line end. */
export function isLineEnd(code: number): boolean {
  return code === 10 || code === 13;
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** A typographic double quote, or the double prime that stands for inches. */
export function isCurlyQuote(code: number): boolean {
  return (code >= 0x201c && code <= 0x201f) || code === 0x2033;
}

/** One of the signs ≤ ≥ ⩽ ⩾, which stand for `<=` and `>=`. */
export function isComparisonSign(code: number): boolean {
  return code === 0x2264 || code === 0x2265 || code === 0x2a7d || code === 0x2a7e;
}

/** True for a character that ends a word wherever it appears (a slash and a comma depend on neighbours). */
function endsWord(code: number): boolean {
  if (code < 128) {
    const found = asciiClasses[code];
    return found === blankClass || found === lineEndClass || found === delimiterClass;
  }
  return isBlank(code) || isCurlyQuote(code) || isComparisonSign(code);
}

/**
 * The offset just after the word that starts at `start`; `start` itself when no word starts there.
 * A comma between two digits and a single slash stay inside the word.
 */
export function wordEnd(text: string, start: number): number {
  const length = text.length;
  let offset = start;
  for (; offset < length; offset++) {
    const code = text.charCodeAt(offset);
    if (code < 128) {
      const found = asciiClasses[code];
      if (found === wordClass) continue;
      if (found === slashClass) {
        if (text.charCodeAt(offset + 1) === code) break;
        continue;
      }
      if (found === commaClass) {
        if (offset > start && isDigit(text.charCodeAt(offset - 1)) && isDigit(text.charCodeAt(offset + 1))) continue;
      }
      break;
    }
    if (endsWord(code)) break;
  }
  return offset;
}

/** The offset of the first character at or after `start` that is not a blank. */
export function skipBlanks(text: string, start: number): number {
  let offset = start;
  if (offset === 0 && text.charCodeAt(0) === byteOrderMark) offset++;
  while (offset < text.length && isBlank(text.charCodeAt(offset))) offset++;
  return offset;
}

/** The offset of the line end that closes the line holding `start`, or the text's length. */
export function lineEndAt(text: string, start: number): number {
  let offset = start;
  while (offset < text.length && !isLineEnd(text.charCodeAt(offset))) offset++;
  return offset;
}

/** The offset just after the last character before `end` that is not a blank, but never before `start`. */
export function trimEnd(text: string, start: number, end: number): number {
  let offset = end;
  while (offset > start && isBlank(text.charCodeAt(offset - 1))) offset--;
  return offset;
}

/** The offset where the line that holds `offset` starts. */
export function lineStartAt(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && !isLineEnd(text.charCodeAt(start - 1))) start--;
  return start;
}

/** Characters that reorder what a person reads, so that the text shown is not the text stored. */
export function isDirectionCharacter(code: number): boolean {
  return (
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069) ||
    code === 0x200e ||
    code === 0x200f ||
    code === 0x061c
  );
}

/** Characters that take part in words without being seen: controls, zero-width characters, line separators. */
export function isInvisibleCharacter(code: number): boolean {
  if (code < 32) return !isBlank(code) && !isLineEnd(code);
  return (
    (code >= 0x7f && code <= 0x9f) ||
    code === 0xad ||
    code === 0x034f ||
    code === 0x115f ||
    code === 0x1160 ||
    code === 0x180e ||
    (code >= 0x200b && code <= 0x200d) ||
    code === 0x2028 ||
    code === 0x2029 ||
    (code >= 0x2060 && code <= 0x2064) ||
    (code >= 0x206a && code <= 0x206f) ||
    code === 0x3164 ||
    code === byteOrderMark ||
    (code >= 0xfff9 && code <= 0xfffb)
  );
}

/** `U+200B`, as people look such characters up. */
export function codePointName(code: number): string {
  return `U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
}
