import papaparse from "papaparse";
import { protectedCell } from "../interchange/spreadsheet-text.ts";
import type { BillLine, BillOfMaterials } from "../library/bill-of-materials.ts";
import { showMoney, showQuantity } from "../values/show.ts";
import type { Money } from "../values/types.ts";
import type { Paint } from "./paint.ts";
import { columns, paragraph, printable } from "./printable.ts";
import { counted } from "./words.ts";

/** What a person reads of a bill of materials: each part with its sums, then everything that is not known. */
export function partsListText(bill: BillOfMaterials, width: number, paint: Paint): string {
  const rows = bill.lines.map((line) => [
    String(line.quantity),
    printable(line.part.declaration.name),
    printable(line.part.declaration.title ?? ""),
    times(line.mass, line.quantity, (mass) => showQuantity(mass, "mass", { unit: "g" })),
    line.price === undefined ? "?" : showMoney(totalPrice(line.price, line.quantity)),
  ]);
  const head = ["", "part", "", "mass", "price"];
  const widths = head.map((title, index) => Math.max(...[head, ...rows].map((row) => columns(row[index] ?? title))));
  const table = [head, ...rows].map((row) =>
    row
      .map((cell, index) => {
        const room = " ".repeat(Math.max(0, (widths[index] ?? 0) - columns(cell)));
        return index === 0 || index > 2 ? room + cell : cell + room;
      })
      .join("  ")
      .trimEnd(),
  );
  const [titles = "", ...lines] = table;
  const pieces = bill.lines.reduce((sum, { quantity }) => sum + quantity, 0);
  return `${[
    paint.strong(`${counted(bill.builds.length, "build")}: ${printable(bill.builds.join(", "))}`),
    "",
    paint.quiet(titles),
    ...lines,
    "",
    ...paragraph(`${counted(bill.lines.length, "part")}, ${counted(pieces, "piece")}`, width, ""),
    ...paragraph(`Mass: ${massText(bill)}`, width, "  ", ""),
    ...paragraph(`Price: ${priceText(bill)}`, width, "  ", ""),
    ...gapsText(bill, width),
  ].join("\n")}\n`;
}

function massText({ mass, unweighed, lines }: BillOfMaterials): string {
  if (unweighed.length === 0) return showQuantity(mass, "mass");
  const known = unweighed.length < lines.length ? `at least ${showQuantity(mass, "mass")}, since it is` : "it is";
  return `${known} not stated for ${unweighed.join(", ")}`;
}

function priceText({ prices, unpriced }: BillOfMaterials): string {
  const sums = prices.map(showMoney).join(" and ");
  const apart = prices.length > 1 ? "; sums of different currencies are not added up" : "";
  if (unpriced.length === 0) return `${sums || "nothing is fitted"}${apart}`;
  return `${sums === "" ? "it is" : `at least ${sums}, since it is`} not stated for ${unpriced.join(", ")}${apart}`;
}

function gapsText({ undeclared, open, alternates }: BillOfMaterials, width: number): readonly string[] {
  const say = (title: string, rows: readonly string[]): readonly string[] =>
    rows.length === 0 ? [] : ["", title, ...rows.flatMap((row) => paragraph(row, width, "    ", "  "))];
  const byBuild = new Map<string, string[]>();
  for (const { build, slot } of open) byBuild.set(build, [...(byBuild.get(build) ?? []), slot]);
  return [
    ...say(
      "Named, but declared in no library, and not counted:",
      undeclared.map(({ build, slot, name }) => `${name} (${slot} of ${build})`),
    ),
    ...say(
      "Nothing named yet, where every whole bike has something:",
      [...byBuild].map(([build, slots]) => `${build}: ${slots.join(", ")}`),
    ),
    ...say(
      "Several parts named, of which the first is counted:",
      alternates.map(({ build, slot, names }) => `${slot} of ${build}: ${names.join(" or ")}`),
    ),
  ];
}

function times(each: number | undefined, quantity: number, show: (value: number) => string): string {
  return each === undefined ? "?" : show(each * quantity);
}

function totalPrice({ currency, amount }: Money, quantity: number): Money {
  return { currency, amount: (Math.round(amount * 1e6) * quantity) / 1e6 };
}

/** The same as a table (RFC 4180, UTF-8 with a mark); cells of what is not known are empty. */
export function partsListCsv({ lines }: BillOfMaterials): string {
  const rows = lines.map((line) => {
    const { part, quantity, mass, price, slots, builds } = line;
    const { name, kind = "", title = "" } = part.declaration;
    return [
      ...[String(quantity), name, kind, title, textOf(line, "maker"), textOf(line, "supplier")].map(safe),
      safe(textOf(line, "supplier-code")),
      ...[mass, mass === undefined ? undefined : mass * quantity].map(number),
      ...[price?.amount, price && totalPrice(price, quantity).amount].map(number),
      price?.currency ?? "",
      safe(slots.join(" ")),
      safe([...builds].map(([build, count]) => `${build}: ${count}`).join(", ")),
    ];
  });
  const titles = [
    ...["quantity", "part", "kind", "title", "maker", "supplier", "supplier-code"],
    ...["mass each (g)", "mass (g)", "price each", "price", "currency", "slots", "builds"],
  ];
  return `\ufeff${papaparse.unparse([titles, ...rows], { newline: "\r\n" })}\r\n`;
}

function safe(text: string): string {
  return text === "" ? "" : protectedCell(text);
}

function number(value: number | undefined): string {
  return value === undefined ? "" : String(value);
}

function textOf({ part }: BillLine, fact: string): string {
  const statement = part.facts.get(fact);
  return statement?.state === "stated" ? String(statement.value) : "";
}

/** What `parts list --format json` writes, described by parts-list.schema.json. */
export interface JsonPartsList {
  readonly schemaVersion: 1;
  readonly builds: readonly string[];
  readonly parts: readonly {
    readonly name: string;
    readonly kind?: string;
    readonly title?: string;
    readonly quantity: number;
    readonly builds: Readonly<Record<string, number>>;
    readonly slots: readonly string[];
    /** In grams, of one; absent when not stated. */
    readonly massEach?: number;
    readonly priceEach?: Money;
  }[];
  readonly totals: {
    /** In grams. It is a least mass where some part is not weighed. */
    readonly mass: number;
    readonly unweighed: readonly string[];
    /** One sum for each currency. They are least sums where some part is not priced. */
    readonly prices: readonly Money[];
    readonly unpriced: readonly string[];
  };
  readonly undeclared: BillOfMaterials["undeclared"];
  readonly open: BillOfMaterials["open"];
  readonly alternates: BillOfMaterials["alternates"];
}

export function partsListJson(bill: BillOfMaterials): JsonPartsList {
  const { builds, lines, mass, unweighed, prices, unpriced, undeclared, open, alternates } = bill;
  return {
    schemaVersion: 1,
    builds,
    parts: lines.map(({ part, quantity, builds: of, slots, mass: massEach, price: priceEach }) => {
      const { name, kind, title } = part.declaration;
      return {
        name,
        ...(kind === undefined ? {} : { kind }),
        ...(title === undefined ? {} : { title }),
        quantity,
        builds: Object.fromEntries(of),
        slots,
        ...(massEach === undefined ? {} : { massEach }),
        ...(priceEach === undefined ? {} : { priceEach }),
      };
    }),
    totals: { mass, unweighed, prices, unpriced },
    undeclared,
    open,
    alternates,
  };
}
