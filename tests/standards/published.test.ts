import { describe, expect, test } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { mate, type ResolvedCode, resolveCode } from "../../server/model/standard.ts";
import { prelude } from "../../server/standards/index.ts";
import type { Interval } from "../../server/values/types.ts";

/**
 * Dimensions of the built-in standards against published ones. The source stands beside each group; what was only
 * remembered, or seen in trade glossaries, is called so.
 */

const engine = new Engine({ today: "2026-11-25", prelude });

function standard(family: string, code: string): ResolvedCode {
  const found = resolveCode({ family, code }, engine.workshop, []);
  if (!found) throw new Error(`no standard ${family} ${code}`);
  return found;
}

function value(family: string, code: string, dimension: string): unknown {
  const statement = standard(family, code).standard?.dimensions.get(dimension);
  return statement?.state === "stated" ? statement.value : undefined;
}

const number = (family: string, code: string, dimension: string): number => Number(value(family, code, dimension));

describe("threads", () => {
  test("pedals: major diameter and pitch (JIS B 0225:1960)", () => {
    expect(number("pedal-thread", "9/16x20", "thread-diameter")).toBeCloseTo((9 / 16) * 25.4, 6);
    expect(number("pedal-thread", "9/16x20", "thread-diameter")).toBeCloseTo(14.29, 2);
    expect(number("pedal-thread", "9/16x20", "thread-pitch")).toBeCloseTo(25.4 / 20, 6);
    expect(number("pedal-thread", "1/2x20", "thread-diameter")).toBeCloseTo(12.7, 6);
    expect(number("pedal-thread", "1/2x20", "thread-pitch")).toBeCloseTo(1.27, 6);
  });

  test("the ISO freewheel: 1.375 in x 24, 34.9250 x 1.0583 mm, right hand (Wikipedia, Cogset)", () => {
    expect(number("freewheel-thread", "1.375x24", "thread-diameter")).toBeCloseTo(1.375 * 25.4, 6);
    expect(number("freewheel-thread", "1.375x24", "thread-pitch")).toBeCloseTo(1.0583, 4);
    expect(value("freewheel-thread", "1.375x24", "hand")).toBe("right");
  });

  test("the English shell: 1.370 in x 24, left-hand at the drive side (DIN ISO 6696 for the hands; trade glossaries)", () => {
    for (const width of [68, 73, 83, 100]) {
      const code = `threaded-1.370x24-${width}`;
      expect(number("bottom-bracket-shell", code, "bore"), code).toBeCloseTo(1.37 * 25.4, 6);
      expect(number("bottom-bracket-shell", code, "thread-pitch"), code).toBeCloseTo(25.4 / 24, 4);
      expect(value("bottom-bracket-shell", code, "left-hand"), code).toBe("right");
      expect(value("bottom-bracket-shell", code, "right-hand"), code).toBe("left");
      expect(number("bottom-bracket-shell", code, "shell-width"), code).toBe(width);
    }
  });

  test("the freewheel's thread is not the shell's: they differ by 0.127 mm", () => {
    const difference =
      number("freewheel-thread", "1.375x24", "thread-diameter") -
      number("bottom-bracket-shell", "threaded-1.370x24-68", "bore");
    expect(difference).toBeCloseTo(0.127, 6);
  });

  test("Italian and French shells are right-hand on both sides, the Swiss is not (trade glossaries; from memory)", () => {
    for (const code of ["threaded-36x24-70", "threaded-35x1-68-right-right"]) {
      expect(value("bottom-bracket-shell", code, "left-hand"), code).toBe("right");
      expect(value("bottom-bracket-shell", code, "right-hand"), code).toBe("right");
    }
    expect(value("bottom-bracket-shell", "threaded-35x1-68-right-left", "right-hand")).toBe("left");
    expect(number("bottom-bracket-shell", "threaded-36x24-70", "shell-width")).toBe(70);
    expect(number("bottom-bracket-shell", "threaded-1.370x26-71", "thread-pitch")).toBeCloseTo(25.4 / 26, 4);
  });
});

describe("pressed shells (trade pages, common practice; the 41 and 37 mm ones from memory)", () => {
  test.each([
    ["BB30-68", 41.96, 68],
    ["BB30-73", 41.96, 73],
    ["PF30-68", 46, 68],
    ["PF30-73", 46, 73],
    ["BB86", 41, 86.5],
    ["BB92", 41, 92],
    ["pressed-46-86.5", 46, 86.5],
    ["pressed-37-90.5", 37, 90.5],
    ["one-piece-51.3", 51.3, 68],
    ["mid-73", 41.2, 73],
    ["spanish-68", 37, 68],
  ])("%s: bore %d mm, width %d mm", (code, bore, width) => {
    expect(number("bottom-bracket-shell", code, "bore")).toBe(bore);
    expect(number("bottom-bracket-shell", code, "shell-width")).toBe(width);
  });
});

describe("bolt circles", () => {
  // The chord between neighbouring bolts of an even circle is its diameter times the sine of half the angle.
  test.each([
    ["ring-mount", "110x5", 64.65638],
    ["ring-mount", "130x5", 76.41208],
    ["ring-mount", "144x5", 84.64108],
    ["ring-mount", "104x4", 73.53911],
    ["ring-mount", "110x4", 77.78175],
    ["rotor-mount", "six-bolt-44", 22],
  ])("%s %s: neighbouring bolts %d mm apart (worked out; the circles trade glossaries)", (family, code, chord) => {
    const circle = number(family, code, "bolt-circle");
    const bolts = number(family, code, "bolts");
    expect(circle * Math.sin(Math.PI / bolts)).toBeCloseTo(chord, 5);
  });

  test("codes of rings say their circle and number of bolts", () => {
    for (const code of ["144x5", "130x5", "110x5", "94x5", "74x5", "58x5", "110x4", "104x4", "64x4"]) {
      expect(`${number("ring-mount", code, "bolt-circle")}x${number("ring-mount", code, "bolts")}`).toBe(code);
    }
  });
});

describe("axles (trade glossaries; diameters of thru axles from memory)", () => {
  test("codes say diameter and width", () => {
    for (const { name } of engine.workshop.declared("standard", "axle")) {
      expect(`${number("axle", name, "diameter")}x${number("axle", name, "width")}`).toBe(name);
    }
  });

  test.each([
    ["12x142", 135],
    ["12x157", 150],
    ["12x177", 170],
    ["12x197", 190],
  ])("%s is the open width %d mm with its recesses of 3.5 mm (common practice)", (code, open) => {
    expect(number("axle", code, "width") - 2 * number("axle", code, "recess")).toBe(open);
  });

  test("a frame of 132.5 mm takes hubs of 130 and of 135 mm, which do not take each other's place", () => {
    expect(mate(standard("axle", "10x132.5"), standard("axle", "10x130"))).toBe(true);
    expect(mate(standard("axle", "10x135"), standard("axle", "10x132.5"))).toBe(true);
    expect(mate(standard("axle", "10x130"), standard("axle", "10x135"))).toBe(false);
  });
});

describe("bead seats", () => {
  const listed = [
    // Wikipedia, ISO 5775 and Gear inches
    [597, 622, 630],
    // trade glossary, tyre-size table: common practice, no source
    [110, 203, 305, 349, 355, 406, 428, 501, 507, 540, 541, 559, 571, 584, 590, 597, 609],
    // hobby wiki: common practice, no source
    [419, 451, 489, 520, 540, 547, 622, 635],
  ].flat();

  test.each(listed)("%d mm", (diameter) => {
    expect(number("bead-seat", String(diameter), "diameter")).toBe(diameter);
  });

  test("sizes that look alike are apart (trade glossary, trap pairs)", () => {
    const seats = (names: readonly string[]) => names.map((name) => standard("bead-seat", name).code);
    expect(seats(["26-decimal", "26 x 1 1/2"])).toEqual(["559", "584"]);
    expect(seats(["26 x 1 3/8", "26 x 1 1/4"])).toEqual(["590", "597"]);
    expect(seats(["700C", "28 x 1 1/2", "700A"])).toEqual(["622", "635", "642"]);
    expect(seats(["650A", "650B", "650C"])).toEqual(["590", "584", "571"]);
    for (const ambiguous of ["26", "28 in", "20 in", "24 x 1"]) {
      expect(resolveCode({ family: "bead-seat", code: ambiguous }, engine.workshop, []), ambiguous).toBeUndefined();
    }
  });

  test("no two mate: tyre and rim must have one and the same", () => {
    expect(mate(standard("bead-seat", "622"), standard("bead-seat", "630"))).toBe(false);
  });
});

describe("headset fits (standardised identification; bores from memory, nominal ones seen on hobby pages)", () => {
  test.each([
    ["EC34", 33.9, 33.95],
    ["EC37", 36.9, 36.95],
    ["EC44", 43.95, 44],
    ["ZS44", 43.95, 44],
    ["ZS56", 55.9, 55.95],
    ["IS41", 41.1, 41.2],
    ["IS42", 41.95, 42.05],
    ["IS52", 52.05, 52.15],
  ])("%s: %d to %d mm", (code, least, greatest) => {
    const bore = value("headset-fit", code, "bore") as Interval;
    expect(bore.least).toBeCloseTo(least, 6);
    expect(bore.greatest).toBeCloseTo(greatest, 6);
  });

  test("external and semi-integrated cups of one number share a bore; integrated bearings share none", () => {
    for (const [one, other] of [
      ["EC44", "ZS44"],
      ["EC49", "ZS49"],
      ["EC56", "ZS56"],
    ] as const) {
      expect(mate(standard("headset-fit", one), standard("headset-fit", other)), one).toBe(true);
      expect(value("headset-fit", one, "bore")).toEqual(value("headset-fit", other, "bore"));
    }
    for (const [one, other] of [
      ["IS41", "ZS41"],
      ["IS41", "IS42"],
      ["IS49", "EC49"],
    ] as const) {
      expect(mate(standard("headset-fit", one), standard("headset-fit", other)), one).toBe(false);
    }
  });

  test("crown-race seats of 1 in forks: 26.4 mm ISO, 27.0 mm JIS (Wikipedia, Headset); others from memory", () => {
    const seats = ["26", "27", "30", "33", "40"].map((code) => number("crown-race", code, "seat-diameter"));
    expect(seats).toEqual([26.4, 27, 30, 33, 39.8]);
  });
});

describe("freehub bodies (from memory)", () => {
  test("the long body is 1.85 mm longer than the short one, of either shape", () => {
    for (const [short, long] of [
      ["splined-11t-short", "splined-11t-long"],
      ["stepped-driver", "stepped-driver-long"],
    ] as const) {
      expect(number("freehub-body", long, "body-length") - number("freehub-body", short, "body-length")).toBeCloseTo(
        1.85,
        6,
      );
      expect(value("freehub-body", long, "profile")).toBe(value("freehub-body", short, "profile"));
      // Length decides one way only, so that it is for the check and not for the mates to say.
      expect(mate(standard("freehub-body", short), standard("freehub-body", long))).toBe(false);
    }
  });

  test("each says the smallest cog that its own code names", () => {
    for (const { name } of engine.workshop.declared("standard", "freehub-body")) {
      const named = /-(\d+)t/.exec(name)?.[1];
      if (named !== undefined) expect(number("freehub-body", name, "smallest-cog"), name).toBe(Number(named));
    }
    expect(number("freehub-body", "stepped-driver", "smallest-cog")).toBe(10);
  });
});

describe("a derailleur round the axle", () => {
  test("sits on the frame end that a coaxial hanger takes, and on no eye", () => {
    const derailleur = standard("derailleur-mount", "coaxial-12");
    expect(mate(derailleur, standard("hanger-seat", "coaxial-12"))).toBe(true);
    expect(mate(standard("hanger-seat", "coaxial-12"), derailleur)).toBe(true);
    expect(mate(derailleur, standard("derailleur-mount", "M10x1"))).toBe(false);
    expect(mate(standard("derailleur-mount", "M10x1"), standard("hanger-seat", "coaxial-12"))).toBe(false);
  });
});

describe("brakes, rims, rails and the rest", () => {
  test("post mounts are 74 mm apart, tabs 51 mm (trade glossaries)", () => {
    expect(number("brake-mount", "post-74", "bolt-spacing")).toBe(74);
    expect(number("brake-mount", "tabs-51-front", "bolt-spacing")).toBe(51);
    expect(number("brake-mount", "tabs-51-rear", "bolt-spacing")).toBe(51);
  });

  test("tabs at the front take a rotor 20 mm larger than at the rear (trade pages; an older set says 25)", () => {
    expect(number("brake-mount", "tabs-51-front", "native-rotor")).toBe(160);
    expect(number("brake-mount", "tabs-51-rear", "native-rotor")).toBe(140);
    expect(mate(standard("brake-mount", "tabs-51-front"), standard("brake-mount", "tabs-51-rear"))).toBe(false);
  });

  test("five kinds of rim for wired-on tyres, and one for tubulars; straight sides without hooks bear 5 bar (Wikipedia, ISO 5775; the pressure from memory)", () => {
    const kinds = [...engine.workshop.declared("standard", "rim-kind")].map(({ name }) => name);
    expect(kinds.filter((name) => value("rim-kind", name, "letters") !== undefined)).toHaveLength(5);
    expect(kinds.filter((name) => value("rim-kind", name, "letters") === undefined)).toEqual(["tubular"]);
    expect(number("rim-kind", "TSS", "greatest-pressure")).toBe(5);
    expect(number("rim-kind", "TSS", "least-excess-width")).toBe(5);
    expect(value("rim-kind", "hooked", "straight-side")).toBe(false);
    // What the trade calls hooked is ISO's crochet; hooked-bead is an older kind.
    expect(standard("rim-kind", "hooked").code).not.toBe(standard("rim-kind", "HB").code);
  });

  test("rails: 7 mm round, and 7 mm wide by 9 mm high (trade glossaries; the oval from memory)", () => {
    expect(number("rail", "round-7", "width")).toBe(7);
    expect([number("rail", "oval-7x9", "width"), number("rail", "oval-7x9", "height")]).toEqual([7, 9]);
    expect(mate(standard("rail", "round-7"), standard("rail", "oval-7x9"))).toBe(false);
  });

  test("bands: 22.2 mm on flat bars, 23.8 mm on drop bars (trade glossaries)", () => {
    expect(number("control-clamp", "band-22.2", "diameter")).toBe(22.2);
    expect(number("control-clamp", "band-23.8", "diameter")).toBe(23.8);
  });

  test("chains have half-inch pitch; 1/8 in is wider than 3/32 in (Wikibooks, Chain sizes)", () => {
    for (const { name } of engine.workshop.declared("standard", "drive-family")) {
      if (value("drive-family", name, "drive") === "chain") {
        expect(number("drive-family", name, "pitch"), name).toBeCloseTo(25.4 / 2, 6);
      }
    }
    expect(number("drive-family", "1/8-inch", "inner-width")).toBeCloseTo(25.4 / 8, 3);
    expect(number("drive-family", "3/32-inch", "inner-width")).toBeCloseTo((25.4 * 3) / 32, 2);
  });

  test("chains grow narrower with every speed (ranges from memory)", () => {
    const widths = ["6", "7", "8", "9", "10", "11", "12"].map((speeds) =>
      number("drive-family", `${speeds}-speed`, "outer-width"),
    );
    const ranges = [
      [7.8, 7.8],
      [7.3, 7.3],
      [7, 7.3],
      [6.5, 6.7],
      [5.8, 6.2],
      [5.46, 5.74],
      [5.15, 5.3],
    ];
    widths.forEach((width, index) => {
      const [least = 0, greatest = 0] = ranges[index] ?? [];
      expect(width).toBeGreaterThanOrEqual(least);
      expect(width).toBeLessThanOrEqual(greatest);
    });
  });

  test("nipples: 56 threads to the inch (from memory)", () => {
    expect(number("spoke-thread", "2.0x56", "thread-pitch")).toBeCloseTo(25.4 / 56, 4);
  });
});
