/**
 * What suppliers call their columns, beside the names of facts and the words that the vocabulary knows for them.
 * Collected from common practice, no source; every guess made with them is shown before anything is imported.
 */

/** Titles of columns that hold the supplier's number of a part. */
export const codeTitles: readonly string[] = [
  ...["sku", "code", "part-number", "part-no", "partno", "item", "item-code", "item-no", "item-number", "article"],
  ...["article-number", "article-no", "art-no", "art.-no", "product-code", "product-id", "order-code", "order-number"],
  ...["order-no", "mpn", "stock-code", "supplier-code", "ref", "reference", "number", "no", "id"],
];

/** Titles of columns that say in words what a part is. */
export const labelTitles: readonly string[] = [
  ...["title", "description", "product", "product-name", "product-description", "item-description", "item-name"],
  ...["name", "designation", "label"],
];

/** Titles of columns that say of which kind a part is. */
export const kindTitles: readonly string[] = [
  ...["kind", "type", "category", "product-type", "product-group", "part-type", "component", "group", "class"],
];

/** Facts by what their columns are called, the likeliest first. */
export const factTitles: Readonly<Record<string, readonly string[]>> = {
  brand: ["maker"],
  make: ["maker"],
  manufacturer: ["maker"],
  wt: ["mass"],
  "actual-weight": ["mass"],
  "claimed-weight": ["mass"],
  "net-weight": ["mass"],
  gewicht: ["mass"],
  "retail-price": ["price"],
  retail: ["price"],
  srp: ["price"],
  msrp: ["price"],
  "list-price": ["price"],
  "price-inc-vat": ["price"],
  preis: ["price"],
  finish: ["colour"],
  vendor: ["supplier"],
  remarks: ["note"],
  remark: ["note"],
  notes: ["note"],
  comment: ["note"],
  comments: ["note"],
  "no.-of-speeds": ["speeds"],
  speed: ["speeds"],
  length: ["crank-length", "length"],
  holes: ["spoke-holes"],
  drilling: ["spoke-holes"],
  width: ["width", "inner-width", "section"],
};

/** Titles that may mean a fact and may as well mean something else: a person has to say. */
export const doubtfulTitles: Readonly<Record<string, readonly string[]>> = {
  cost: ["price"],
  "cost-price": ["price"],
  trade: ["price"],
  "trade-price": ["price"],
  "net-price": ["price"],
  net: ["price"],
  "unit-price": ["price"],
  "gross-weight": ["mass"],
  "shipping-weight": ["mass"],
};

/** Titles of what is of use to the workshop and no fact of the vocabulary: kept as its own data. */
export const ownTitles: Readonly<Record<string, string>> = {
  ean: "ean",
  gtin: "gtin",
  upc: "upc",
  barcode: "barcode",
  bin: "bin",
  location: "location",
  url: "address",
  link: "address",
};
