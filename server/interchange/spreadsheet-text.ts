/**
 * What makes a spreadsheet take a cell for a formula (OWASP, "CSV Injection"): these at its start, also as full-width
 * signs. A part's title that begins with one must not become an order to the program of whoever opens the file.
 */
const formulaStart = /^'*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
const plainNumber = /^[-+]?\d+(?:\.\d+)?$/;

/** What people write into a cell of which they know nothing. */
const emptyWords = new Set([
  "",
  "-",
  "--",
  "\u2013",
  "\u2014",
  "\u2212",
  "n/a",
  "n.a.",
  "na",
  "null",
  "nil",
  "?",
  "tbc",
]);

/** Whether a cell says nothing. */
export function isEmptyCell(cell: string): boolean {
  return emptyWords.has(cell.trim().toLowerCase());
}

/** @param isText whether it is the content of a text, of which the word `none` is not the absence. */
function needsMark(text: string, isText: boolean): boolean {
  if (formulaStart.test(text)) return !plainNumber.test(text);
  const bare = text.replace(/^'+/, "");
  return isEmptyCell(bare) || (isText && bare === "none");
}

/** A text as a cell that no spreadsheet takes for a formula, and that an import does not take for empty. */
export function protectedCell(text: string, isText = false): string {
  return needsMark(text, isText) ? `'${text}` : text;
}

/** What `protectedCell` was given. */
export function unprotectedCell(cell: string, isText = false): string {
  return cell.startsWith("'") && needsMark(cell.slice(1), isText) ? cell.slice(1) : cell;
}
