/** How many numbers have to speak against each one that says otherwise. */
const clearMajority = 10;

/**
 * How numbers are written, told from all of them together: one `12,5` says that commas are decimal, one `1,480.00`
 * that they part thousands. Where only numbers such as `1,480` stand there it cannot be told, and a slip would be a
 * thousandfold.
 */
export function guessDecimals(cells: readonly string[]): "point" | "comma" | "?" {
  let comma = 0;
  let point = 0;
  let either = 0;
  for (const cell of cells) {
    for (const number of cell.match(/\d[\d.,]*\d/g) ?? []) {
      const style = styleOf(number);
      if (style === "comma") comma++;
      else if (style === "point") point++;
      else if (style === "either") either++;
    }
  }
  // A few strays among many do not make the rest doubtful: they are rejected, row by row.
  if (comma > point * clearMajority) return "comma";
  if (point > comma * clearMajority) return "point";
  return comma + point + either > 0 ? "?" : "point";
}

function styleOf(number: string): "comma" | "point" | "either" | undefined {
  const lastComma = number.lastIndexOf(",");
  const lastPoint = number.lastIndexOf(".");
  if (lastComma < 0 && lastPoint < 0) return undefined;
  if (lastComma >= 0 && lastPoint >= 0) return lastComma > lastPoint ? "comma" : "point";
  const sign = lastComma >= 0 ? "," : ".";
  const parts = number.split(sign);
  // `1,480,000` can only be thousands.
  if (parts.length > 2) return parts.slice(1).every((part) => part.length === 3) ? other(sign) : undefined;
  const [whole = "", after = ""] = parts;
  if (after.length === 3 && whole.length <= 3 && whole !== "0") return "either";
  return sign === "," ? "comma" : "point";
}

function other(sign: string): "comma" | "point" {
  return sign === "," ? "point" : "comma";
}

/**
 * Numbers of a cell in the form that the language reads: a decimal point, thousands not parted.
 * @returns `undefined` where a number is not written in that style.
 */
export function plainNumbers(cell: string, decimals: "point" | "comma"): string | undefined {
  const [thousands, decimal] = decimals === "point" ? [",", "."] : [".", ","];
  let isSound = true;
  const text = cell
    // Blanks and apostrophes between digits part thousands, whatever the decimals.
    .replace(/(?<=\d)[\u0020\u00a0\u202f'\u2019](?=\d{3}(?:\D|$))/g, "")
    .replace(/\d[\d.,]*/g, (number) => {
      const bare = number.replace(/[.,]+$/, "");
      const rest = number.slice(bare.length);
      const [whole = "", fraction, ...more] = bare.split(decimal);
      const groups = whole.split(thousands);
      const areThousands =
        groups.length === 1 ||
        groups.every((group, index) => (index === 0 ? group.length >= 1 && group.length <= 3 : group.length === 3));
      if (more.length > 0 || !areThousands || fraction?.includes(thousands)) isSound = false;
      return `${groups.join("")}${fraction === undefined ? "" : `.${fraction}`}${rest}`;
    });
  return isSound ? text : undefined;
}
