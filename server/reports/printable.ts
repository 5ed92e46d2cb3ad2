import stringWidth from "string-width";

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

/** How many columns a terminal gives to a text: two for wide characters, none for combining marks. */
export function columns(text: string): number {
  return /^[\u0020-\u007e\u00a0-\u00ac\u00ae-\u02ff]*$/.test(text) ? text.length : stringWidth(text);
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
