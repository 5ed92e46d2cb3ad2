import { inBounds } from "../../values/bounds.ts";
import { showQuantity } from "../../values/show.ts";
import type { AnyValue, QuantityType } from "../../values/types.ts";
import { isInterval } from "../../values/write.ts";
import type { Field } from "../../vocabulary/define.ts";
import { buildFields, kinds } from "../../vocabulary/index.ts";

/**
 * Whether an input could be what a part or build states under the same name. A calculation takes any number that it
 * can work with; one that no part has was most likely given in the wrong unit.
 * @returns what to say of it; undefined when it is plausible, or nothing is known under that name.
 */
export function implausible(name: string, { type }: Field, value: AnyValue): string | undefined {
  if (type.type !== "quantity") return undefined;
  const rows: (Field | undefined)[] = [...kinds.values()].map(({ fields }) =>
    Object.hasOwn(fields, name) ? fields[name] : undefined,
  );
  // A rider has a mass as well as a part.
  for (const [path, field] of Object.entries(buildFields)) if (path.endsWith(`.${name}`)) rows.push(field);
  const stated = rows.flatMap((row): QuantityType[] =>
    row?.type.type === "quantity" && row.type.dimension === type.dimension ? [row.type] : [],
  );
  const bounded = stated.filter(({ lowest, highest }) => lowest !== undefined || highest !== undefined);
  if (bounded.length === 0 || bounded.length < stated.length) return undefined;
  const ends = (isInterval(value) ? [value.least, value.greatest] : [value]).filter(
    (end): end is number => typeof end === "number" && Number.isFinite(end),
  );
  const outside = ends.find((end) => !bounded.some((bounds) => inBounds(bounds, end)));
  if (outside === undefined) return undefined;
  const lowest = Math.min(...bounded.map((bounds) => bounds.lowest ?? Number.NEGATIVE_INFINITY));
  const highest = Math.max(...bounded.map((bounds) => bounds.highest ?? Number.POSITIVE_INFINITY));
  const range = [
    ...(Number.isFinite(lowest) ? [`at least ${showQuantity(lowest, type.dimension)}`] : []),
    ...(Number.isFinite(highest) ? [`at most ${showQuantity(highest, type.dimension)}`] : []),
  ].join(" and ");
  return `${name} of ${showQuantity(outside, type.dimension)} is not one that a part has (${range}): is the unit right?`;
}
