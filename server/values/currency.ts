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

/** Currencies whose sums are not written with two decimals, by how many they have (ISO 4217, column "minor unit"). */
const unusualDigits: Readonly<Record<number, string>> = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
};

const digitsByCurrency = new Map(
  Object.entries(unusualDigits).flatMap(([digits, codes]) =>
    codes.split(" ").map((code) => [code, Number(digits)] as const),
  ),
);

/**
 * Decimals in which sums of a currency are written; two where it is not known. A table of our own, since the one of
 * `Intl` takes longer to open than a whole build to check.
 */
export function minorDigits(currency: string): number {
  return digitsByCurrency.get(currency) ?? 2;
}
