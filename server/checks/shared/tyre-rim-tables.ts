import { overlap } from "../../values/compare.ts";
import type { Interval } from "../../values/types.ts";

/**
 * Published tables of which tyre widths go with which inner widths of rim. They disagree with one another, and none is
 * a maker's limit.
 */
export interface WidthTable {
  /** For a sentence: "the ratio rule of trade glossaries". */
  readonly edition: string;
  /** Widths of tyre for a rim of this inner width, in millimetres; `undefined` where the table says nothing. */
  widths(rim: number): Interval | undefined;
}

type Rows = readonly (readonly [rim: number, least: number, greatest: number])[];

/** Tyre ÷ rim by the rule behind the first table. */
const leastRatio = 1.4;
const greatestRatio = 2.4;

/** Combinations that trade glossaries list, before they go by the ratio alone. */
const listed: Rows = [
  [13, 18, 25],
  [15, 23, 32],
  [17, 25, 37],
  [19, 28, 47],
  [21, 32, 50],
  [23, 35, 54],
  [25, 37, 60],
  [27, 47, 60],
];

/** Permitted ranges as generally quoted between 2010 and 2020. */
const quoted: Rows = [
  [13, 18, 25],
  [15, 23, 32],
  [17, 25, 50],
  [19, 28, 62],
  [21, 35, 62],
  [23, 40, 64],
  [25, 44, 64],
  [27, 47, 64],
  [29, 50, 64],
  [30, 52, 71],
  [35, 56, 76],
];

/** The widest rim for which either table says anything. */
const widestRim = 35;

/** @source trade glossaries' reproduction of the ratio rule; common practice, no source. */
const ratioTable: WidthTable = {
  edition: "the ratio rule of trade glossaries",
  widths(rim) {
    const [lastListed = 0] = listed[listed.length - 1] ?? [];
    if (rim > lastListed && rim <= widestRim) {
      return { least: leastRatio * rim, greatest: greatestRatio * rim };
    }
    return between(listed, rim);
  },
};

/** @source from memory; edges differ by a step or two between editions. */
const rangeTable: WidthTable = {
  edition: "the ranges quoted between 2010 and 2020",
  widths: (rim) => between(quoted, rim),
};

export const widthTables: readonly WidthTable[] = [ratioTable, rangeTable];

/** A row, or what the two rows on either side have in common. */
function between(rows: Rows, rim: number): Interval | undefined {
  const below = [...rows].reverse().find(([at]) => at <= rim);
  const above = rows.find(([at]) => at >= rim);
  if (!below || !above) return undefined;
  return overlap([below, above].map(([, least, greatest]) => ({ least, greatest })));
}
