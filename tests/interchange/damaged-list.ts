import { seeded } from "../bench/random.ts";

/** A supplier's list as a person would get it: mostly sound rows, and every kind of damage among them. */
export interface DamagedList {
  readonly text: string;
  /** Names of the parts that have to come in, with the value of one fact of each. */
  readonly sound: ReadonlyMap<string, { readonly mass: string; readonly title: string }>;
  /** Rows that must not come in: where each is named, and a word of the reason. */
  readonly damaged: readonly Damage[];
  /** Rows that say the same as an earlier one. */
  readonly repeated: readonly number[];
}

export interface Damage {
  readonly line: number;
  /** From 1; 0 for the whole row. */
  readonly column: number;
  readonly reason: RegExp;
  readonly what: string;
}

const titles = [
  "Type",
  "SKU",
  "Description",
  "Weight (g)",
  "RRP (GBP)",
  "Freehub",
  "Cogs",
  "Speeds",
  "Crank length (mm)",
  "Stock",
];

interface Cells {
  kind: string;
  sku: string;
  title: string;
  mass: string;
  price: string;
  freehub: string;
  cogs: string;
  speeds: string;
  crank: string;
  stock: string;
}

/** @param delimiter what stands between cells; @param comma whether numbers have decimal commas. */
export function damagedList(rows: number, delimiter: string, comma: boolean, seed = 4): DamagedList {
  const random = seeded(seed);
  const lines: string[] = [titles.join(delimiter)];
  const sound = new Map<string, { mass: string; title: string }>();
  const damaged: Damage[] = [];
  const repeated: number[] = [];
  const decimal = (text: string): string => (comma ? text.replace(".", ",") : text);
  const cell = (text: string): string =>
    text.includes(delimiter) || /["\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  const row = (cells: Cells): string => Object.values(cells).map(cell).join(delimiter);

  const base = (index: number): Cells => {
    const isCassette = index % 2 === 0;
    return {
      kind: isCassette ? "Cassettes" : "Crankset",
      sku: `GL-${index}`,
      title: `Gill part ${index}`,
      mass: decimal(`${random.number(100, 900)}.5`),
      price: decimal(`${random.number(10, 300)}.${random.pick(["25", "50", "95"])}`),
      freehub: isCassette ? "stepped-driver" : "",
      cogs: isCassette ? "11-13-15-18-21-24-28-32" : "",
      speeds: isCassette ? random.pick(["", "8", "8-speed"]) : "",
      crank: isCassette ? "" : decimal(random.pick(["165", "170", "172.5"])),
      stock: String(random.number(0, 40)),
    };
  };
  const take = (cells: Cells, mass: string, title = cells.title, text = row(cells)): void => {
    sound.set(`gill.${cells.sku.toLowerCase()}`, { mass, title });
    lines.push(...text.split("\n"));
  };
  const massOf = ({ mass }: Cells): string => `${mass.replace(",", ".")} g`;

  /** Sound, but not in the plainest way. */
  const odd: ((cells: Cells) => void)[] = [
    (cells) => take({ ...cells, title: `Cut by${delimiter} the sign` }, massOf(cells)),
    (cells) => take({ ...cells, title: 'For 29" wheels' }, massOf(cells)),
    (cells) =>
      take({ ...cells, title: "Two\nlines" }, massOf(cells), "Two lines", row({ ...cells, title: "Two\nlines" })),
    (cells) => take({ ...cells, title: "'=cmd|' /C calc'!A0" }, massOf(cells), "=cmd|' /C calc'!A0"),
    (cells) => take({ ...cells, mass: ` ${cells.mass} ` }, massOf(cells)),
    (cells) => take({ ...cells, mass: `${decimal("0.4")} kg` }, "0.4 kg"),
    (cells) => take({ ...cells, mass: `12${comma ? "." : ","}345${comma ? "," : "."}5` }, "12345.5 g"),
    (cells) => take({ ...cells, price: comma ? "12,50 €" : "£12.50" }, massOf(cells)),
    (cells) => take({ ...cells, stock: "n/a", price: "-" }, massOf(cells)),
    (cells) => take({ ...cells, kind: ` ${cells.kind.toUpperCase()} ` }, massOf(cells)),
    (cells) => take({ ...cells, title: "Rückgrat, grün – é" }, massOf(cells)),
    // An inch sign without quotes round the cell is no quote.
    (cells) => {
      const title = `For 29" wheels`;
      const text = Object.values({ ...cells, title }).join(delimiter);
      take({ ...cells, title }, massOf(cells), title, text);
    },
  ];

  const refuse = (text: string, column: number, reason: RegExp, what: string): void => {
    damaged.push({ line: lines.length + 1, column, reason, what });
    lines.push(text);
  };
  const damages: ((cells: Cells) => void)[] = [
    (c) => refuse(row(c).replace(c.title, `"${c.title}`), 3, /never closed/, "open quote"),
    (c) => refuse(row(c).replace(c.title, `"${c.title}" again`), 3, /follows the closing quote/, "after a quote"),
    (c) => refuse([c.kind, c.sku, c.title].join(delimiter), 3, /3 cells/, "too few cells"),
    (c) => refuse(c.kind, 1, /1 cell,/, "one cell alone"),
    () => refuse(titles.join(delimiter), 0, /titles of the columns once more/, "titles in the middle"),
    (c) => refuse(`${row(c)}${delimiter}${delimiter}more`, 11, /12 cells/, "too many cells"),
    (c) => refuse(row({ ...c, kind: "Teapots" }), 1, /Teapots is not a kind/, "unknown kind"),
    (c) => refuse(row({ ...c, kind: "" }), 1, /empty/, "no kind"),
    (c) => refuse(row({ ...c, sku: "" }), 2, /empty/, "no number"),
    (c) => refuse(row({ ...c, sku: "?!" }), 2, /neither letters nor digits/, "a number of signs alone"),
    (c) => refuse(row({ ...c, mass: "0" }), 4, /0 g is the mass of no part/, "nought for not known"),
    (c) => refuse(row({ ...c, mass: "heavy" }), 4, /heavy/, "no number in a number"),
    (c) => refuse(row({ ...c, mass: "-40" }), 4, /mass/, "less than nothing"),
    (c) => refuse(row({ ...c, mass: "99999999" }), 4, /mass/, "a slipped digit"),
    (c) => refuse(row({ ...c, mass: "40 mm" }), 4, /mass/, "a unit of something else"),
    (c) => refuse(row({ ...c, mass: comma ? "1.5" : "1,5" }), 4, /decimal/, "the other decimals"),
    (c) => refuse(row({ ...c, mass: "1.2.3" }), 4, /1\.2\.3/, "two decimals"),
    (c) => refuse(row({ ...c, price: "XQZ 12" }), 5, /XQZ/, "no currency"),
    (c) => refuse(row({ ...c, price: decimal("-12.50") }), 5, /at least GBP 0.00/, "a credit"),
    (c) => refuse(row({ ...c, price: decimal("0.00") }), 5, /hardly a price/, "nought for a price"),
    (c) => refuse(row({ ...c, price: decimal("1.295") }), 5, /3 decimals/, "thousands parted by the decimal sign"),
    (c) => refuse(row({ ...c, price: `JPY 1200${decimal(".5")}` }), 5, /JPY has no decimals/, "half a yen"),
    (c) => refuse(row({ ...c, price: "ask" }), 5, /price/, "no sum"),
    (c) =>
      refuse(
        row({ ...c, kind: "Cassettes", freehub: "round-thing", crank: "" }),
        6,
        /round-thing/,
        "unknown interface",
      ),
    (c) => refuse(row({ ...c, kind: "Cassettes", freehub: "x } part y z {", crank: "" }), 6, /no place/, "structure"),
    (c) => refuse(row({ ...c, kind: "Cassettes", cogs: "11-34", crank: "" }), 7, /every one/, "a range of cogs"),
    (c) =>
      refuse(row({ ...c, kind: "Cassettes", cogs: "11-13-15", speeds: "8", crank: "" }), 8, /cogs lists 3/, "speeds"),
    (c) => refuse(row({ ...c, kind: "x".repeat(20_000) }), 1, /^x{59}… is not a kind/, "a cell without end"),
    (c) => refuse(row({ ...c, kind: "Cassettes", cogs: "11-13--17", crank: "" }), 7, /11-13--17/, "a cog left out"),
    (c) =>
      refuse(row({ ...c, kind: "Crankset", cogs: "", freehub: "stepped-driver" }), 6, /no fact/, "another kind's fact"),
    (c) =>
      refuse(row({ ...c, kind: "Crankset", cogs: "", freehub: "", speeds: "", crank: "long" }), 9, /long/, "no length"),
  ];

  for (let index = 0; index < rows; index++) {
    const cells = base(index);
    const dice = random.number(0, 99);
    if (dice < 60) take(cells, massOf(cells));
    else if (dice < 72) odd[index % odd.length]!(cells);
    else if (dice < 74) {
      take(cells, massOf(cells));
      repeated.push(lines.length + 1);
      lines.push(row(cells));
    } else if (dice < 76) {
      // Two rows of one number that differ: nobody can tell which is right.
      const reason = /only one of them/;
      damaged.push({ line: lines.length + 1, column: 0, reason, what: "contradicts" });
      lines.push(row(cells));
      damaged.push({ line: lines.length + 1, column: 0, reason, what: "contradicts" });
      lines.push(row({ ...cells, price: decimal("999.00") }));
    } else if (dice < 78) lines.push("", delimiter.repeat(titles.length - 1));
    else damages[index % damages.length]!(cells);
  }
  return { text: `${lines.join("\r\n")}\r\n`, sound, damaged, repeated };
}
