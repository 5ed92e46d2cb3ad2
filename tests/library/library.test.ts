import { describe, expect, test } from "vitest";
import { duplicateParts } from "../../server/library/duplicates.ts";
import { neverFittingParts } from "../../server/library/never-fit.ts";
import { unusedParts } from "../../server/library/unused.ts";
import { uris, workshopOf } from "./workshop.ts";

const always = (): boolean => true;

describe("unused parts", () => {
  const engine = workshopOf(`
part frame moor.used { }
part frame moor.alternate { }
part frame moor.base { }
part frame moor.derived from moor.base { }
part frame moor.in-template { }
part frame moor.never { }

build base { template: yes; frame: moor.in-template }
build one { frame: moor.used or moor.alternate }
build two from one { frame: moor.derived }
`);

  test("are those that no build names, neither first, nor as an alternate, nor in a template", () => {
    expect(unusedParts(engine, uris).map(({ declaration, baseOf }) => [declaration.name, baseOf])).toEqual([
      ["moor.base", ["moor.derived"]],
      ["moor.never", []],
    ]);
  });

  test("only of the files asked for", () => {
    expect(unusedParts(engine, [])).toEqual([]);
  });
});

describe("duplicates", () => {
  const engine = workshopOf(`
part cassette corrie.wide-10-52 "Corrie wide" { speeds: 12; mass: 372 g; freehub: stepped-driver }
part cassette corrie.wide10-52 "Corrie wider" { speeds: 12; mass: 372 g; freehub: none }
part cassette corrie.same "Something" { freehub: stepped-driver; speeds: 12; mass: 0.372 kg; price: GBP 4 }
part chain beck.one "Beck chain" { supplier: "North"; supplier-code: "X-1" }
part chain beck.two "beck chain " { supplier: "north"; supplier-code: "x-1" }
part chain beck.three { supplier: "South"; supplier-code: "X-1" }
part saddle beck.four "Beck chain" { }
part saddle beck.five { }
part saddle beck.six { }
`);
  const groups = duplicateParts(engine, uris).map(({ likeness, parts }) => [likeness, parts.map(({ name }) => name)]);

  test.each([
    ["like-name", ["corrie.wide-10-52", "corrie.wide10-52"]],
    ["title", ["beck.one", "beck.two"]],
    ["order-number", ["beck.one", "beck.two"]],
    ["facts", ["corrie.wide-10-52", "corrie.same"]],
  ])("by %s", (likeness, names) => {
    expect(groups).toContainEqual([likeness, names]);
  });

  test("and nothing else: parts of which nothing is stated are not alike for that", () => {
    expect(groups).toHaveLength(4);
  });

  test("one name declared twice", () => {
    const twice = workshopOf("part saddle beck.one { }\n\npart saddle beck.one { mass: 3 g }\n");
    expect(duplicateParts(twice, uris)).toMatchObject([{ likeness: "name", shared: "beck.one" }]);
  });
});

describe("parts that never fit", () => {
  const engine = workshopOf(`
part cassette corrie.stepped "Stepped" { freehub: stepped-driver; speeds: 12; cogs: 10-12-14-16-18-20-22-25-28-32-38-44 t }
part cassette corrie.stepped-52 "Stepped, wide" { freehub: stepped-driver; speeds: 12; cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t }
part cassette corrie.nine-spline "Nine splines" { freehub: nine-spline-driver; speeds: 12; cogs: 10-12-14-16-18-20-22-25-28-32-38-44 t }
part hub beck.rear "Beck rear" { wheel: rear; freehub: stepped-driver }
part rear-derailleur corrie.arm "Corrie arm" { speeds: 12; largest-cog: 46 t; smallest-cog: 10 t }

build fell {
  drivetrain { cassette: corrie.stepped; rear-derailleur: corrie.arm }
  rear-wheel.hub: beck.rear
}
`);
  const { parts, asked, builds } = neverFittingParts(engine, uris, always);
  const found = new Map(parts.map((one) => [one.declaration.name, one]));

  test("a part without a counterpart is named with its interface", () => {
    expect(found.get("corrie.nine-spline")?.lonely).toMatchObject([
      { fact: "freehub", written: "nine-spline-driver", others: 1 },
    ]);
    expect(found.get("corrie.stepped-52")?.lonely).toEqual([]);
  });

  test("a part that fits no build is named with the nearest miss", () => {
    const reason = found.get("corrie.stepped-52")?.fitsNone;
    expect(reason).toMatchObject({ builds: 1, build: "fell", slot: "drivetrain.cassette" });
    expect(reason?.reason).toContain("drivetrain/largest-cog");
  });

  test("parts that fit are not named, used or not", () => {
    expect([...found.keys()].sort()).toEqual(["corrie.nine-spline", "corrie.stepped-52"]);
    expect([asked, builds]).toEqual([1, 1]);
  });

  test("an adapter of the libraries is a counterpart", () => {
    const lonely = (text: string): readonly string[] =>
      neverFittingParts(workshopOf(text), uris, always).parts.map(({ declaration }) => declaration.name);
    const apart = `
part caliper corrie.grip "Corrie grip" { mount: post-74 }
part frame moor.frame "Moor frame" { rear-brake-mount: tabs-51-rear }
`;
    expect(lonely(apart)).toEqual(["corrie.grip"]);
    const adapter = 'part brake-adapter corrie.post "Corrie post" { sits-on: tabs-51-rear; offers: post-74 }\n';
    expect(lonely(apart + adapter)).toEqual([]);
    const other = 'part brake-adapter corrie.other "Another" { sits-on: tabs-51-rear; offers: flat-34 }\n';
    expect(lonely(apart + other)).toEqual(["corrie.grip"]);
  });

  test("a hub or rim by itself is asked where bought wheels stand, without the other half of theirs", () => {
    const found = neverFittingParts(
      workshopOf(`
part frame moor.frame "Frame" { rear-axle: 12x148 }
part fork moor.fork "Fork" { axle: 12x100 }
part tyre beck.tyre "Tyre" { size: 30-622 }
part built-wheel beck.whole "Whole" { axle: 12x100; bead-seat: 622 }
part hub beck.hub "Hub" { wheel: front; axle: 12x100 }
part hub beck.wide "Wide hub" { wheel: front; axle: 15x110 }
part rim beck.rim "Rim" { bead-seat: 622 }
part rim beck.small "Small rim" { bead-seat: 584 }

build fell {
  frame: moor.frame
  fork: moor.fork
  front-wheel { hub: beck.whole; rim: beck.whole; tyre: beck.tyre }
  rear-wheel.tyre: beck.tyre
}
`),
      uris,
      always,
    );
    const misses = found.parts.flatMap(({ declaration, fitsNone }) =>
      fitsNone ? [`${declaration.name} ${fitsNone.reason.split(":")[0]}`] : [],
    );
    expect(misses.sort()).toEqual(["beck.small wheel/tyre-seat", "beck.wide wheel/axle"]);
  });

  test("a wheel bought whole is asked as it would be fitted: in both places, and nothing laced", () => {
    const wheels = neverFittingParts(
      workshopOf(`
part hub beck.hub "Hub" { axle: 12x142; spoke-holes: 28 }
part rim beck.rim "Rim" { bead-seat: 622; rim-holes: 28 }
part spokes beck.spokes "Spokes" { spoke-head: elbow }
part frame moor.frame "Frame" { rear-axle: 12x142 }
part fork moor.fork "Fork" { axle: 12x100 }
part tyre beck.tyre "Tyre" { size: 30-622 }
part built-wheel beck.right "Right" { axle: 12x142; bead-seat: 622 }
part built-wheel beck.small "Small" { axle: 12x142; bead-seat: 584 }
part built-wheel beck.wide "Wide" { axle: 12x148; bead-seat: 622 }

build fell {
  frame: moor.frame
  fork: moor.fork
  front-wheel.tyre: beck.tyre
  rear-wheel { hub: beck.hub; rim: beck.rim; spokes: beck.spokes; tyre: beck.tyre }
}
`),
      uris,
      always,
    );
    const misses = wheels.parts.flatMap(({ declaration, fitsNone }) =>
      fitsNone ? [[declaration.name, fitsNone.reason.split(":")[0]]] : [],
    );
    expect(misses).toEqual([
      ["beck.small", "wheel/tyre-seat"],
      ["beck.wide", "wheel/axle"],
    ]);
  });

  test("when the time is up, that is said, and nothing is held against a part for want of it", () => {
    const stopped = neverFittingParts(engine, uris, () => false);
    expect(stopped.asked).toBe(0);
    expect(stopped.parts.every(({ fitsNone }) => fitsNone === undefined)).toBe(true);
  });
});
