/**
 * Currencies by their ISO 4217 letters, as the runtime knows them. No rates are kept: sums of different currencies
 * are never added up.
 */

/** Used where the runtime cannot list currencies: those of the countries with most workshops. */
const fewCurrencies = [
  ..."AUD BRL CAD CHF CNY CZK DKK EUR GBP HKD HUF IDR ILS INR JPY KRW MXN MYR".split(" "),
  ..."NOK NZD PHP PLN RON SEK SGD THB TRY TWD USD ZAR".split(" "),
];

let known: ReadonlySet<string> | undefined;

/** The letters of all known currencies. */
export function currencies(): ReadonlySet<string> {
  if (known === undefined) {
    let list: readonly string[] = fewCurrencies;
    try {
      const supported = Intl.supportedValuesOf("currency");
      if (supported.length > 0) list = supported;
    } catch {
      // An older runtime: the short list serves.
    }
    known = new Set(list);
  }
  return known;
}

/** Signs that are used for money, with what they can stand for, the likeliest first. */
export const currencySigns: Readonly<Record<string, readonly string[]>> = {
  "£": ["GBP"],
  "€": ["EUR"],
  $: ["USD", "CAD", "AUD"],
  US$: ["USD"],
  CA$: ["CAD"],
  C$: ["CAD"],
  A$: ["AUD"],
  AU$: ["AUD"],
  NZ$: ["NZD"],
  "¥": ["JPY", "CNY"],
  "₩": ["KRW"],
  "₹": ["INR"],
  zł: ["PLN"],
  kr: ["SEK", "NOK", "DKK"],
  "kr.": ["DKK", "NOK", "SEK"],
  Kč: ["CZK"],
  "Fr.": ["CHF"],
  SFr: ["CHF"],
  euro: ["EUR"],
  euros: ["EUR"],
  pounds: ["GBP"],
  dollars: ["USD", "CAD", "AUD"],
};

const digitsByCurrency = new Map<string, number>();

/** Decimals in which sums of a currency are written (ISO 4217 minor unit); two where it is not known. */
export function minorDigits(currency: string): number {
  let digits = digitsByCurrency.get(currency);
  if (digits === undefined) {
    digits = 2;
    try {
      const options = new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions();
      digits = options.maximumFractionDigits ?? 2;
    } catch {
      // Not three letters: shown with two decimals.
    }
    digitsByCurrency.set(currency, digits);
  }
  return digits;
}
