import type { DimensionName } from "../../grammar/units.ts";
import { dimensions } from "../../grammar/units.ts";
import { dimensionsOf, sameVector } from "../values/dimensions.ts";
import { showInterval, showMoney, showMoneyInterval, showNumber, showSeveral } from "../values/show.ts";
import type { ExpressionType, Shown } from "./expression-type.ts";
import type { NumberValue, RunValue } from "./run-value.ts";

/** Values of rules for people: with their units, in the units of the reader. */
export function showRunValue(value: RunValue, type: ExpressionType): string {
  switch (value.form) {
    case "number":
      return showStretch(value, value, type);
    case "range":
      return showStretch(value.least, value.greatest, type);
    case "numbers":
      return value.items.length === 0 ? "nothing" : showItems(value.items, value.currency, type);
    case "name":
      return value.name;
    case "names":
      return value.items.length === 0 ? "nothing" : value.items.join(", ");
    case "truth":
      return value.truth.state === "open" ? "not known" : value.truth.state === "true" ? "yes" : "no";
    case "none":
      return "none";
    case "open":
      return "not known";
  }
}

/** Two numbers that are compared, with as many decimals as it takes to tell them apart. */
export function showCompared(one: NumberValue, other: NumberValue, type: ExpressionType): readonly [string, string] {
  const measured = measureOf(type);
  const areSingle = one.least === one.greatest && other.least === other.greatest;
  if (!areSingle || measured.dimension === undefined) {
    return [showStretch(one, one, type), showStretch(other, other, type)];
  }
  const { scale } = dimensions[measured.dimension];
  const [a = "", b = ""] = showSeveral([one.least / scale, other.least / scale], measured.dimension, unitOf(measured));
  return [a, b];
}

function showStretch(from: NumberValue, to: NumberValue, type: ExpressionType): string {
  const currency = from.currency ?? to.currency;
  const ends = { least: from.least, greatest: to.greatest };
  if (currency !== undefined) {
    return ends.least === ends.greatest
      ? showMoney({ currency, amount: ends.least })
      : showMoneyInterval({ currency, ...ends });
  }
  const measured = measureOf(type);
  if (measured.dimension !== undefined) {
    const { scale } = dimensions[measured.dimension];
    const interval = { least: ends.least / scale, greatest: ends.greatest / scale };
    return showInterval(interval, measured.dimension, unitOf(measured));
  }
  const word = measured.word === undefined ? "" : ` ${measured.word}`;
  if (ends.least === ends.greatest) return showNumber(ends.least) + word;
  if (!Number.isFinite(ends.greatest)) return `at least ${showNumber(ends.least)}${word}`;
  if (!Number.isFinite(ends.least)) return `up to ${showNumber(ends.greatest)}${word}`;
  return `${showNumber(ends.least)} to ${showNumber(ends.greatest)}${word}`;
}

function showItems(items: readonly number[], currency: string | undefined, type: ExpressionType): string {
  if (currency !== undefined) return items.map((amount) => showMoney({ currency, amount })).join(", ");
  const measured = measureOf(type);
  if (measured.dimension === undefined) {
    const word = measured.word === undefined ? "" : ` ${measured.word}`;
    return items.map((item) => showNumber(item)).join(measured.word === "t" ? "-" : ", ") + word;
  }
  const { scale } = dimensions[measured.dimension];
  return showSeveral(
    items.map((item) => item / scale),
    measured.dimension,
    unitOf(measured),
  ).join(", ");
}

interface Measured {
  readonly dimension?: DimensionName;
  readonly unit?: string;
  readonly word?: string;
}

/** What a number measures, where that has a name; a product of two lengths is shown as an area. */
function measureOf(type: ExpressionType): Measured {
  if (type.form !== "number" && type.form !== "numbers") return {};
  const shown: Shown = type.shown;
  if (shown.dimension !== undefined) return { ...shown, dimension: shown.dimension };
  if (sameVector(type.vector, {})) return shown.word === undefined ? {} : { word: shown.word };
  const [dimension] = dimensionsOf(type.vector);
  return dimension === undefined ? {} : { dimension };
}

function unitOf({ unit }: Measured): { readonly unit?: string } {
  return unit === undefined ? {} : { unit };
}
