import type { Known, Missing, OfSlot } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showInterval, showMoney, showMoneyInterval, showPair, showQuantity } from "../../values/show.ts";
import type { Interval, Money, MoneyInterval } from "../../values/types.ts";
import { assemblyTable } from "../../vocabulary/index.ts";
import { fails, holds, notApplicable, type Verdict } from "../define.ts";

/** Differences are told to the gram, and have to be what the two masses beside them differ by. */
const toTheGram = { digits: 3 };

/** The assemblies that can have a budget of their own. */
export const budgetAssemblies = (Object.keys(assemblyTable) as (keyof typeof assemblyTable)[]).map((name) => ({
  name,
}));

/** How the thing that has the budget is spoken of. */
export interface BudgetWords {
  /** "The bike weighs" or "Everything in rear-wheel weighs". */
  readonly sum: string;
  /** "is to weigh". */
  readonly aim: string;
}

/** What a budget is held against. */
interface Against<Value> {
  /** One row for each part that counts. */
  readonly rows: readonly OfSlot<Value>[];
  /** Places of which nobody said what stands in them. */
  readonly open: readonly Missing[];
  readonly isTemplate: boolean;
  readonly words: BudgetWords;
}

/**
 * Masses held against a budget. What nobody weighed counts for something: with gaps the sum is a least, which breaks
 * the budget when it is over it and decides nothing when it is not.
 */
export function massBudget(budget: Known<Interval>, { rows, open, isTemplate, words }: Against<number>): Verdict {
  const known = rows.flatMap(({ fact }) => (fact.state === "known" ? [fact] : []));
  const missing = [...open, ...unknownFacts(rows)];
  const sum = known.reduce((total, { value }) => total + value, 0);
  const { least, greatest } = budget.value;
  const atLeastWords = missing.length > 0 ? "at least " : "";
  if (!atMost(sum, greatest)) {
    const [weighs, most] = showPair(sum, greatest, "mass", toTheGram);
    return fails(
      `${words.sum} ${atLeastWords}${weighs}, but the budget allows ${most}: ${showQuantity(sum - greatest, "mass")} too much${withoutThese("masses", missing)}.`,
      budget,
      [...known].sort((a, b) => b.value - a.value).slice(0, 3),
      missing.length > 0 ? [] : [{ kind: "set-field", field: budget.path, value: `<= ${roundedUp(sum)}` }],
    );
  }
  const undecided = openVerdict(isTemplate, missing, greatest === Number.POSITIVE_INFINITY && atLeast(sum, least));
  if (undecided) return undecided;
  if (!atLeast(sum, least)) {
    const [weighs, fewest] = showPair(sum, least, "mass", toTheGram);
    return fails(`${words.sum} ${weighs}, but ${words.aim} at least ${fewest}.`, budget, []);
  }
  return holds(
    `${words.sum} ${atLeastWords}${showQuantity(sum, "mass", toTheGram)}; the budget is ${showInterval(budget.value, "mass")}.`,
    marginOf(sum, greatest),
  );
}

/** Prices held against a budget; one in another currency than the budget's is as good as none. */
export function priceBudget(budget: Known<MoneyInterval>, { rows, open, isTemplate, words }: Against<Money>): Verdict {
  const { currency, least, greatest } = budget.value;
  const known = rows.flatMap(({ fact }) => (fact.state === "known" ? [fact] : []));
  const counted = known.filter(({ value }) => value.currency === currency);
  const missing = [
    ...open,
    ...unknownFacts(rows),
    // No rate of exchange is known here.
    ...known.filter(({ value }) => value.currency !== currency).map((price) => inOtherCurrency(price, currency)),
  ];
  const amount = counted.reduce((total, { value }) => total + value.amount, 0);
  const sum = showMoney({ currency, amount });
  const atLeastWords = missing.length > 0 ? "at least " : "";
  if (!atMost(amount, greatest)) {
    return fails(
      `${words.sum} ${atLeastWords}${sum}, but the budget allows ${showMoney({ currency, amount: greatest })}: ${showMoney({ currency, amount: amount - greatest })} too much${withoutThese("prices", missing)}.`,
      budget,
      [...counted].sort((a, b) => b.value.amount - a.value.amount).slice(0, 3),
    );
  }
  const undecided = openVerdict(isTemplate, missing, greatest === Number.POSITIVE_INFINITY && atLeast(amount, least));
  if (undecided) return undecided;
  if (!atLeast(amount, least)) {
    const fewest = showMoney({ currency, amount: least });
    return fails(`${words.sum} ${sum}, but ${words.aim} at least ${fewest}.`, budget, []);
  }
  return holds(
    `${words.sum} ${atLeastWords}${sum}; the budget is ${showMoneyInterval(budget.value)}.`,
    marginOf(amount, greatest),
  );
}

function unknownFacts(rows: readonly OfSlot<unknown>[]): readonly Missing[] {
  return rows.flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : []));
}

/** What cannot be said of a sum with gaps; nothing where the gaps do not matter. */
function openVerdict(isTemplate: boolean, missing: readonly Missing[], isReached: boolean): Verdict | undefined {
  if (isTemplate) return notApplicable("a template is not a whole bike");
  return missing.length > 0 && !isReached ? { outcome: "unknown", missing } : undefined;
}

function marginOf(sum: number, greatest: number): number | undefined {
  return Number.isFinite(greatest) && greatest > 0 ? (greatest - sum) / greatest : undefined;
}

/** A mass rounded up as a budget would be written: to a tenth of a kilogram, or to ten grams where that is much. */
function roundedUp(grams: number): string {
  return grams < 1000 ? `${Math.ceil(grams / 10) * 10} g` : `${Math.ceil(grams / 100) / 10} kg`;
}

/** How many missing facts a message names. */
const mostNamed = 3;

function withoutThese(what: string, missing: readonly Missing[]): string {
  if (missing.length === 0) return "";
  const named = missing.slice(0, mostNamed).map((one) => one.what);
  const rest = missing.length - named.length;
  return `, with ${what} still missing: ${named.join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
}

function inOtherCurrency(price: Known<Money>, currency: string): Missing {
  return {
    path: price.path,
    what: `a price in ${currency} of ${price.subject}, which is priced in ${price.value.currency}`,
    place: price.place,
  };
}
