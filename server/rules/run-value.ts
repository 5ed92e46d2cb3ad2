import { dimensions, toBase, unitBySpelling } from "../../grammar/units.ts";
import { calculationOfQuantity } from "../calculations/table.ts";
import type { Installed } from "../model/assembly.ts";
import type { Maybe } from "../model/need.ts";
import type { Code, Interval, Money, MoneyInterval } from "../values/types.ts";
import { isInterval, isMoney } from "../values/write.ts";
import type { ExpressionType } from "./expression-type.ts";
import type { PathMeaning } from "./paths.ts";
import type { Reason, Truth } from "./truth.ts";
import { truth } from "./truth.ts";

/**
 * What an expression comes to in one build. Numbers are in the coherent units m, kg, s, degree, K, A and lm, so that
 * products need no factor.
 */
export type RunValue =
  | NumberValue
  | { readonly form: "numbers"; readonly items: readonly number[]; readonly currency?: string }
  /** What is allowed: every number from one to the other. */
  | { readonly form: "range"; readonly least: NumberValue; readonly greatest: NumberValue }
  | { readonly form: "truth"; readonly truth: Truth }
  | { readonly form: "name"; readonly name: string }
  | { readonly form: "names"; readonly items: readonly string[] }
  /** Stated to be none. `isOwn` where it is the thing itself, and not what it belongs to, that there is none of. */
  | { readonly form: "none"; readonly path: string; readonly isOwn: boolean }
  | { readonly form: "open"; readonly reasons: readonly Reason[] };

/** A number, or a stretch in which it lies for the reasons given. */
export interface NumberValue {
  readonly form: "number";
  readonly least: number;
  readonly greatest: number;
  readonly currency?: string;
  /** Empty for one number. */
  readonly reasons: readonly Reason[];
}

export function single(value: number, currency?: string): NumberValue {
  return {
    form: "number",
    least: value,
    greatest: value,
    reasons: [],
    ...(currency === undefined ? {} : { currency }),
  };
}

export function openValue(...reasons: readonly Reason[]): RunValue {
  return { form: "open", reasons };
}

/** What a build answers for a path. */
export function answered(meaning: PathMeaning, answer: Maybe): RunValue {
  if (answer.state === "unknown")
    return openValue(...answer.missing.map((missing) => ({ why: "missing", missing }) as const));
  if (answer.state === "none") {
    // A number that means nothing in a build is not a thing that it has none of.
    const isOwn = meaning.what !== "number" && answer.path === meaning.path;
    return { form: "none", path: answer.path, isOwn };
  }
  return known(meaning, answer.value) ?? openValue({ why: "undefined", path: meaning.path, what: meaning.path });
}

/** What is not of the type that the vocabulary gives the path is no answer. */
function known(meaning: PathMeaning, value: unknown): RunValue | undefined {
  const { type, what, path } = meaning;
  if (what === "number") return result(path, type.form, value);
  switch (type.form) {
    case "truth":
      return typeof value === "boolean" ? { form: "truth", truth: truth(value) } : undefined;
    case "name": {
      const name = what === "slot" ? (value as Partial<Installed> | null)?.name : nameOf(value);
      return typeof name === "string" ? { form: "name", name } : undefined;
    }
    case "names": {
      const items = Array.isArray(value) ? value.map(nameOf) : [undefined];
      return items.every((item) => item !== undefined) ? { form: "names", items } : undefined;
    }
    case "numbers": {
      const items: readonly unknown[] = Array.isArray(value) ? value : [undefined];
      if (!items.every((item) => typeof item === "number")) return undefined;
      return { form: "numbers", items: items.map((item) => item * scaleOf(meaning)) };
    }
    case "number":
      return number(meaning, value);
    default:
      return undefined;
  }
}

function nameOf(value: unknown): string | undefined {
  if (typeof value === "string") return value;
  return isCode(value) ? value.code : undefined;
}

function isCode(value: unknown): value is Code {
  return typeof value === "object" && value !== null && "code" in value;
}

function scaleOf({ field }: PathMeaning): number {
  const type = field?.type;
  return type?.type === "quantity" || type?.type === "quantities" ? dimensions[type.dimension].scale : 1;
}

function number(meaning: PathMeaning, value: unknown): RunValue | undefined {
  const scale = scaleOf(meaning);
  if (typeof value === "number") return single(value * scale);
  return typeof value === "object" && value !== null
    ? stretch(meaning, value as Interval | Money | MoneyInterval)
    : undefined;
}

function stretch(meaning: PathMeaning, value: Interval | Money | MoneyInterval): RunValue | undefined {
  const scale = scaleOf(meaning);
  if (isMoney(value)) return single(value.amount, value.currency);
  if (!isInterval(value)) return undefined;
  const role = meaning.type.form === "number" ? meaning.type.role : "exact";
  const currency = "currency" in value ? value.currency : undefined;
  const [least, greatest] = [value.least * scale, value.greatest * scale];
  if (role === "allowed")
    return { form: "range", least: single(least, currency), greatest: single(greatest, currency) };
  if (role === "exact" || least === greatest) return single(least, currency);
  return { form: "number", least, greatest, reasons: [{ why: "spread", role, path: meaning.path }] };
}

/** The result of a calculation, which is in a unit of its own. */
function result(path: string, form: ExpressionType["form"], value: unknown): RunValue | undefined {
  const row = calculationOfQuantity(path);
  const unit = unitBySpelling(row?.calculation.results[row.result]?.unit ?? "");
  const coherent = (one: number): number =>
    unit === undefined ? one : toBase(one, unit) * dimensions[unit.dimension].scale;
  if (typeof value === "number") return form === "number" ? single(coherent(value)) : undefined;
  if (typeof value === "string") return form === "name" ? { form, name: value } : undefined;
  if (!Array.isArray(value)) return undefined;
  if (form === "number") return sumOfMoney(path, value as readonly unknown[]);
  if (form === "numbers") return { form, items: (value as readonly number[]).map(coherent) };
  return form === "names" ? { form, items: (value as readonly unknown[]).map(String) } : undefined;
}

/** A sum for each currency, as it is shown: a number where there is one. */
function sumOfMoney(path: string, sums: readonly unknown[]): RunValue | undefined {
  const read = sums.map((sum) => /^([A-Z]{3}) (-?\d+(?:\.\d+)?)$/.exec(String(sum)));
  const currencies = read.flatMap((match) => match?.[1] ?? []);
  const [only] = read;
  if (currencies.length === 1 && only) return single(Number(only[2]), only[1]);
  if (currencies.length < 2) return undefined;
  const what = `${path}, which is of ${currencies.join(" and ")}: no rate of exchange is kept`;
  return openValue({ why: "undefined", path, what });
}
