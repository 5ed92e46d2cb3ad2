/**
 * Numbers as people write them. A reading either gives the number with its canonical spelling, or names the habit that
 * makes it unclear and what may have been meant.
 */

export interface NumberReading {
  readonly value: number;
  /** Canonical spelling: a point before decimals, no `+`, `1 1/8` for a fraction with a whole part. */
  readonly text: string;
  readonly isFraction: boolean;
}

export interface UnclearNumber {
  readonly habit: "decimal-comma" | "thousands-separator";
  /** What it most likely means; present whenever it can mean anything. */
  readonly meant: readonly string[];
}

const vulgarFractions: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Where a number can start in a word, without its sign. Sticky: set `lastIndex`. */
export const numberPattern = /\d+[-\u2010-\u2015\u2212]\d+\/\d+|\d+\/\d+|\d*[¼½¾⅛⅜⅝⅞]|\d+(?:[.,'’_]\d+)*|\.\d+/y;

/** What is greater is no measurement, and could grow past all numbers when its unit is converted. */
const greatestNumber = 1e30;

function number(value: number, text: string, isFraction: boolean): NumberReading | undefined {
  return Number.isFinite(value) && Math.abs(value) <= greatestNumber ? { value, text, isFraction } : undefined;
}

/** Joins a whole number and a fraction of one, such as `1` and `1/8`. */
export function mixedNumber(whole: NumberReading, fraction: NumberReading): NumberReading | undefined {
  if (whole.isFraction || !Number.isInteger(whole.value) || !fraction.isFraction) return undefined;
  if (fraction.value <= 0 || fraction.value >= 1 || fraction.text.includes(" ")) return undefined;
  const negative = whole.value < 0 || whole.text.startsWith("-");
  return number(whole.value + (negative ? -fraction.value : fraction.value), `${whole.text} ${fraction.text}`, true);
}

function fraction(text: string): NumberReading | undefined {
  const [top, bottom] = text.split("/").map(Number);
  if (top === undefined || bottom === undefined || bottom === 0) return undefined;
  return number(top / bottom, text, true);
}

/** Reads what `numberPattern` matched, which has no sign. Undefined for what is no number at all (`1/0`, `1.2.3`). */
export function readNumber(text: string): NumberReading | UnclearNumber | undefined {
  if (/^\d+(\.\d+)?$/.test(text)) return number(Number(text), text, false);
  if (/^\.\d+$/.test(text)) return number(Number(text), `0${text}`, false);
  if (/^\d+\/\d+$/.test(text)) return fraction(text);
  const mixed = /^(\d+)[-\u2010-\u2015\u2212](\d+\/\d+)$/.exec(text) ?? /^(\d*)([¼½¾⅛⅜⅝⅞])$/.exec(text);
  if (mixed !== null) {
    const [, whole = "", part = ""] = mixed;
    const read = fraction(vulgarFractions[part] ?? part);
    if (read === undefined || whole === "") return read;
    return mixedNumber({ value: Number(whole), text: whole, isFraction: false }, read);
  }
  return readSeparators(text);
}

/** Numbers with commas, apostrophes, underscores or several points in them. */
function readSeparators(text: string): UnclearNumber | undefined {
  const plain = text.replace(/['’_]/g, "");
  if (/^\d+(\.\d+)?$/.test(plain)) return { habit: "thousands-separator", meant: [plain] };
  if (/^[1-9]\d{0,2},\d{3}$/.test(plain)) {
    // A comma before three digits separates thousands in one country and decimals in another.
    return { habit: "thousands-separator", meant: [plain.replace(",", ""), plain.replace(",", ".")] };
  }
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(plain))
    return { habit: "thousands-separator", meant: [plain.replace(/,/g, "")] };
  if (/^\d+,\d+$/.test(plain)) return { habit: "decimal-comma", meant: [plain.replace(",", ".")] };
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(plain)) {
    return { habit: "decimal-comma", meant: [plain.replace(/\./g, "").replace(",", ".")] };
  }
  if (/^\d{1,3}(\.\d{3}){2,}$/.test(plain)) return { habit: "thousands-separator", meant: [plain.replace(/\./g, "")] };
  return undefined;
}
