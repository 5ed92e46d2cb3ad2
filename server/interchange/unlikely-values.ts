import { minorDigits } from "../values/currency.ts";
import type { FieldType } from "../values/types.ts";

/**
 * Why a value that can be read is hardly what a supplier meant: lists write nought where nothing is known, and a
 * point that parts thousands makes a price a thousandth of what it is. Taken over in silence both would count in sums.
 * A workshop's own export is not asked: there somebody wrote it.
 * @param written in canonical spelling.
 */
export function doubtOf(fact: string, type: FieldType, written: string): string | undefined {
  if (type.type === "money") return doubtOfSum(fact, written);
  if (fact === "mass" && Number.parseFloat(written) === 0) {
    return `${written} is the mass of no part; the cell stays empty where nobody knows it`;
  }
  return undefined;
}

function doubtOfSum(fact: string, written: string): string | undefined {
  const [, currency = "", amount = "", decimals = ""] = /^([A-Z]{3}) (\d+(?:\.(\d+))?)$/.exec(written) ?? [];
  if (amount === "") return undefined;
  if (Number(amount) === 0) return `${written} is hardly a ${fact}; the cell stays empty where nobody knows it`;
  const most = minorDigits(currency);
  if (decimals.length <= most) return undefined;
  const has = most === 0 ? "has no decimals" : `has ${most} decimals`;
  return `${written} has ${decimals.length} decimals, and ${currency} ${has}; does the point part thousands?`;
}
