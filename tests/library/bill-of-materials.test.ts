import { describe, expect, test } from "vitest";
import { billOfMaterials, isTemplate, withVariants } from "../../server/library/bill-of-materials.ts";
import { plain } from "../../server/reports/paint.ts";
import { partsListCsv, partsListJson, partsListText } from "../../server/reports/parts-list.ts";
import { build, workshopOf } from "./workshop.ts";

const text = `
part tyre beck.rough "Beck rough" { mass: 0.9 kg; price: GBP 45.10 }
part tyre beck.slick "=SUM(A1)" { price: EUR 30 }
part frame moor.frame "Moor frame" { mass: 1800 g; price: GBP 470 }
part frame moor.base { mass: 2 kg; price: GBP 300 }
part brake-lever corrie.both "Corrie lever and control" { mass: 250 g; price: GBP 99.95 }

build base "Base" {
  template: yes
  frame: moor.base
}

build fell "Fell" from base {
  frame: moor.frame
  front-wheel.tyre: beck.rough
  rear-wheel.tyre: beck.rough
  drivetrain.rear-controller: corrie.both { clamp: rear-brake.lever }
  rear-brake.lever: corrie.both
}

build fell-road "Fell on roads" from fell {
  front-wheel.tyre: beck.slick or beck.rough
  rear-wheel.tyre: beck.gone
}
`;

const engine = workshopOf(text);
const billOf = (...names: string[]) =>
  billOfMaterials(names.map((name) => ({ engine, declaration: build(engine, name) })));

describe("a bill of materials", () => {
  test("counts every piece once: two tyres, and one lever that stands in two slots", () => {
    const { lines } = billOf("fell");
    expect(lines.map(({ part, quantity, slots }) => [part.declaration.name, quantity, slots])).toEqual([
      ["moor.frame", 1, ["frame"]],
      ["corrie.both", 1, ["rear-brake.lever"]],
      ["beck.rough", 2, ["front-wheel.tyre", "rear-wheel.tyre"]],
    ]);
  });

  test("counts a wheel bought whole once in each place it goes, and asks for nothing that comes in it", () => {
    const wheels = workshopOf(`
part built-wheel beck.pair "Beck wheel" { mass: 800 g; price: GBP 210 }
build quick {
  front-wheel { hub: beck.pair; rim: beck.pair }
  rear-wheel { hub: beck.pair; rim: beck.pair }
}
`);
    const bill = billOfMaterials([{ engine: wheels, declaration: build(wheels, "quick") }]);
    expect(bill.lines.map(({ part, quantity, slots }) => [part.declaration.name, quantity, slots])).toEqual([
      ["beck.pair", 2, ["front-wheel.hub", "rear-wheel.hub"]],
    ]);
    expect(bill).toMatchObject({ mass: 1600, prices: [{ currency: "GBP", amount: 420 }], unweighed: [], unpriced: [] });
    const open = bill.open.map(({ slot }) => slot).filter((slot) => /^(front|rear)-wheel/.test(slot));
    expect(open).toContain("front-wheel.tyre");
    expect(open.filter((slot) => /hub|rim$|spokes|nipples/.test(slot))).toEqual([]);
  });

  test("adds up masses and prices, and names what is not known", () => {
    expect(billOf("fell")).toMatchObject({
      mass: 1800 + 250 + 2 * 900,
      unweighed: [],
      prices: [{ currency: "GBP", amount: 660.15 }],
      unpriced: [],
    });
    const road = billOf("fell-road");
    expect(road.unweighed).toEqual(["beck.slick"]);
    expect(road.undeclared).toEqual([{ build: "fell-road", slot: "rear-wheel.tyre", name: "beck.gone" }]);
    expect(road.alternates).toEqual([
      { build: "fell-road", slot: "front-wheel.tyre", names: ["beck.slick", "beck.rough"] },
    ]);
  });

  test("keeps currencies apart", () => {
    const { prices } = billOf("fell", "fell-road");
    expect(prices).toEqual([
      { currency: "GBP", amount: 1230.1 },
      { currency: "EUR", amount: 30 },
    ]);
    const said = partsListText(billOf("fell", "fell-road"), 100, plain);
    expect(said).toContain("GBP 1230.10 and EUR 30.00");
    expect(said).toContain("sums of different currencies are not added up");
    expect(said).toContain("at least");
    expect(said).toContain("beck.gone (rear-wheel.tyre of fell-road)");
  });

  test("says in which builds a part goes, and how often", () => {
    const frame = billOf("fell", "fell-road").lines.find(({ part }) => part.declaration.name === "moor.frame");
    expect(frame?.quantity).toBe(2);
    expect([...(frame?.builds ?? [])]).toEqual([
      ["fell", 1],
      ["fell-road", 1],
    ]);
  });

  test("names the places where every whole bike has something and nothing is named", () => {
    const { open } = billOf("fell");
    expect(open.map(({ slot }) => slot)).toContain("fork");
    expect(open.map(({ slot }) => slot)).not.toContain("frame");
    expect(open.map(({ slot }) => slot)).not.toContain("extras");
  });

  test("a base leads to its variants, and a template is no bike", () => {
    expect(withVariants(engine, [build(engine, "base")]).map(({ name }) => name)).toEqual([
      "base",
      "fell",
      "fell-road",
    ]);
    expect(["base", "fell", "fell-road"].filter((name) => isTemplate(engine, build(engine, name)))).toEqual(["base"]);
  });

  test("as CSV: what is not known is empty, and no cell is a formula", () => {
    const [head = "", ...rows] = partsListCsv(billOf("fell-road")).slice(1).trimEnd().split("\r\n");
    const column = head.split(",").indexOf("mass (g)");
    const slick = rows.find((row) => row.includes("beck.slick"));
    expect(slick?.split(",")[3]).toBe("'=SUM(A1)");
    expect(slick?.split(",")[column]).toBe("");
    expect(rows.find((row) => row.includes("moor.frame"))?.split(",")[column]).toBe("1800");
  });

  test("as JSON: sums and gaps are the same", () => {
    const list = partsListJson(billOf("fell"));
    expect(list.totals).toMatchObject({ mass: 3850, unweighed: [] });
    expect(list.parts.find(({ name }) => name === "beck.rough")).toMatchObject({
      quantity: 2,
      massEach: 900,
      priceEach: { currency: "GBP", amount: 45.1 },
      builds: { fell: 2 },
    });
  });
});
