import { describe, expect, it } from "vitest";
import type { ResultValue } from "../../server/calculations/define.ts";
import { quantities } from "../../server/calculations/table.ts";
import type { BuildEvaluation } from "../../server/engine/evaluate.ts";
import { evaluate, missing, none, value, worked } from "./build.ts";
import { run } from "./run.ts";

/** A hardtail with a single ring; every fact can be replaced. */
interface Hardtail {
  frame?: string;
  fork?: string;
  derailleur?: string;
  cassette?: string;
  crankset?: string;
  hub?: string;
  rim?: string;
  extra?: string;
  drivetrain?: string;
  chain?: string;
  build?: string;
}

function hardtail(change: Hardtail = {}): string {
  return `
part frame kestle.ridge "Kestle ridge" {
  ${change.frame ?? "rear-travel: none; chainstay: 435 mm"}
  reach: 450 mm
  stack: 620 mm
  head-angle: 66°
  head-tube-length: 110 mm
  bottom-bracket-drop: 60 mm
  seat-angle: 74°
  seat-tube-offset: 0 mm
  seat-tube-length: 440 mm
  least-post-insertion: 100 mm
  rear-native-rotor: 160 mm
}
part fork kestle.prong "Kestle prong" {
  ${change.fork ?? "axle-to-crown: 540 mm; fork-offset: 44 mm; travel: 130 mm; native-rotor: 180 mm"}
}
part headset kestle.race { upper-stack: 15 mm; lower-stack: 12 mm }
part rear-derailleur kestle.reach-12 "Kestle reach 12" {
  ${change.derailleur ?? "set-up: cable; total-capacity: 47 t; actuation-ratio: 1.1"}
}
part cassette kestle.stack-12 "Kestle stack 12" {
  ${change.cassette ?? "cogs: 10-12-14-16-18-21-24-28-33-39-45-51 t; cog-pitch: 3.6 mm"}
}
part chain kestle.chain-12 "Kestle chain 12" { ${change.chain ?? "speeds: 12"} }
part crankset kestle.arm "Kestle arm" {
  ${change.crankset ?? "crank-length: 170 mm; chainline: 52 mm; rings: 32 t; q-factor: 168 mm"}
}
part pedals kestle.flat { outer-edge: 110 mm; underside-height: 12 mm }
part shift-controller kestle.click-12 { pull-per-click: 3.4 mm }
part hub kestle.hub "Kestle hub" {
  ${
    change.hub ??
    `cog-line: 46 mm; spoke-holes: 32; spoke-hole-diameter: 2.6 mm
  flange-diameter-left: 45 mm; flange-diameter-right: 45 mm
  flange-offset-left: 37 mm; flange-offset-right: 18 mm`
  }
}
part rim kestle.hoop "Kestle hoop" {
  ${change.rim ?? "bead-seat: 622; inner-width: 30 mm; effective-rim-diameter: 600 mm; rim-kind: TSS; greatest-pressure: 3 bar; hole-offset: 0 mm"}
}
part spokes kestle.wire {}
part tyre kestle.tread "Kestle tread" { size: 61-622; least-pressure: 1.2 bar; greatest-pressure: 2.5 bar }
part stem kestle.stub { clamp-height: 40 mm; length: 50 mm; angle: 0° }
part handlebar kestle.bar { bar: riser; rise: 20 mm; back-sweep: 0° }
part seatpost kestle.post { overall-length: 400 mm; least-insertion: 90 mm; setback: 0 mm }
part saddle kestle.perch { height: 45 mm; clamp-to-sitting: 0 mm }
part rotor kestle.disc { diameter: 180 mm }
${change.extra ?? ""}
build example {
  rider { mass: 78 kg; inseam: 830 mm; cadence: 80 rpm }
  frame: kestle.ridge
  fork: kestle.prong
  headset: kestle.race
  drivetrain {
    rear-derailleur: kestle.reach-12
    cassette: kestle.stack-12
    chain: kestle.chain-12 { links: 118 }
    crankset: kestle.arm
    pedals: kestle.flat
    rear-controller: kestle.click-12
    ${change.drivetrain ?? ""}
  }
  cockpit {
    stem: kestle.stub { spacers-below: 10 mm; spacers-above: 5 mm; cap-gap: 3 mm }
    handlebar: kestle.bar
  }
  seat {
    post: kestle.post { insertion: 150 mm }
    saddle: kestle.perch { rail-position: 5 mm }
  }
  front-brake.rotor: kestle.disc
  rear-brake.rotor: kestle.disc
  front-wheel { rim: kestle.hoop; tyre: kestle.tread }
  rear-wheel {
    hub: kestle.hub
    rim: kestle.hoop
    spokes: kestle.wire { cross: 3; tension: 1200 N }
    tyre: kestle.tread
  }
  ${change.build ?? ""}
}
`;
}

describe("a hardtail with one ring", () => {
  const bike = evaluate(hardtail());

  it.each([
    ["drivetrain.capacity-needed", 41],
    ["drivetrain.cog-difference", 41],
    ["drivetrain.front-difference", 0],
    ["drivetrain.chain-allowance", 2],
    ["drivetrain.chain-links-needed", 114],
    ["drivetrain.spare-capacity", 6],
    ["drivetrain.longest-useful-links", 116],
    ["drivetrain.surplus-links", 4],
    ["drivetrain.greatest-slack", 49],
    ["drivetrain.chainline-offset", 6],
    ["drivetrain.indexing-error-per-click", 0.14],
    ["rear-wheel.wheel-diameter", 744],
    ["rear-wheel.spoke-length-drive-side", 291.3842],
    ["rear-wheel.spoke-length-non-drive-side", 293.164],
    ["rear-wheel.tension-non-drive-side", 587.334],
    ["rear-wheel.greatest-pressure", 2.5],
    ["rear-wheel.least-pressure", 1.2],
    ["front-brake.rotor-change-needed", 0],
    ["rear-brake.rotor-change-needed", 20],
    ["steering.steerer-stack", 192],
    ["steering.steerer-cut", 189],
    ["seat.saddle-height-by-crank-axis", 732.89],
    ["seat.saddle-top-height", 690 * Math.sin((74 * Math.PI) / 180) + 45],
    ["cockpit.bar-clamp-forward", 450 - 45 * Math.cos((66 * Math.PI) / 180) + 50 * Math.cos((24 * Math.PI) / 180)],
  ])("%s is %f", (path, expected) => {
    expect(value(bike, path) as number).toBeCloseTo(expected, 3);
  });

  it("names the gears in which the chain hangs", () => {
    expect(value(bike, "drivetrain.slack-gears")).toEqual(["32×10"]);
  });

  it("gives speeds at the rider's cadence", () => {
    const speeds = value(bike, "drivetrain.gear-speeds") as readonly number[];
    expect(speeds.at(-1)).toBeCloseTo(((Math.PI * 744) / 1000) * 3.2 * 80 * 0.06, 6);
  });

  it("shows its working from the stated facts", () => {
    const working = bike.working("drivetrain.capacity-needed");
    expect(working[0]).toContain("32 t (Kestle arm)");
    expect(working.at(-1)).toBe("Capacity needed: 0 t + 41 t = 41 t");
  });

  it("gives the trail of the fork as the bicycle stands", () => {
    const angle = value(bike, "geometry.actual-head-angle") as number;
    const radians = (angle * Math.PI) / 180;
    expect(value(bike, "steering.trail")).toBeCloseTo((372 * Math.cos(radians) - 44) / Math.sin(radians), 9);
    expect(value(bike, "geometry.front-centre") as number).toBeGreaterThan(700);
  });

  it("says that parts are not weighed rather than that they weigh nothing", () => {
    expect(value(bike, "bike.mass-at-least")).toBe(0);
    expect(value(bike, "bike.unweighed-parts")).toContain("drivetrain.cassette");
    expect(missing(bike, "bike.all-up-mass")).toContain("rider.kit-mass");
  });

  it("works every number out, or says what is missing or why not", () => {
    for (const { path } of quantities) {
      const quantity = worked(bike, path);
      if (quantity.state === "unknown") expect(quantity.missing.length, path).toBeGreaterThan(0);
      if (quantity.state === "none") expect(quantity.reason, path).not.toMatch(/needs itself|not a number/);
    }
  });
});

describe("the allowance of a chain", () => {
  const links = (change: Hardtail): ResultValue => value(evaluate(hardtail(change)), "drivetrain.chain-allowance");

  it("is what the derailleur's maker states for a rigid rear end", () => {
    expect(links({ derailleur: "set-up: cable; chain-allowance-rigid: 4; chain-allowance-double: 2" })).toBe(4);
  });

  it("is four pitches by practice for one ring shifted by motor on a rigid rear end", () => {
    expect(links({ derailleur: "set-up: electronic" })).toBe(4);
  });

  it("is two pitches by practice for several rings, also shifted by motor", () => {
    expect(links({ derailleur: "set-up: electronic", crankset: "rings: 46-30 t", cassette: "cogs: 10-12-34 t" })).toBe(
      2,
    );
  });

  it("is what the maker states for a sprung rear end, measured at the longest rear centre", () => {
    const sprung = evaluate(
      hardtail({
        frame: "rear-travel: 140 mm; chainstay: 435 mm; rear-centre-growth-full: 19 mm",
        derailleur: "set-up: direct-mount; chain-allowance-rigid: 4; chain-allowance-sprung: 3; total-capacity: 42 t",
      }),
    );
    expect(value(sprung, "drivetrain.chain-allowance")).toBe(3);
    const longest = run("chain-length", { rings: [32], cogs: [51], chainstay: 435 + 19 });
    expect(value(sprung, "drivetrain.chain-links-exact")).toBe(longest["chain-links-exact"]);
  });

  it("cannot be told while nobody says whether the rear end is sprung", () => {
    expect(missing(evaluate(hardtail({ frame: "chainstay: 435 mm" })), "drivetrain.chain-links-needed")).toEqual([
      "frame.rear-travel",
    ]);
  });

  it("cannot be told for a sprung rear end of unknown growth", () => {
    const bike = evaluate(hardtail({ frame: "rear-travel: 140 mm; chainstay: 435 mm" }));
    expect(missing(bike, "drivetrain.chain-links-needed")).toEqual(["frame.rear-centre-growth-full"]);
    expect(missing(bike, "drivetrain.longest-useful-links")).toEqual(["frame.rear-centre-growth-full"]);
  });

  it("means nothing where an idler leads the chain", () => {
    const bike = evaluate(
      hardtail({ frame: "rear-travel: 160 mm; chainstay: 435 mm; rear-centre-growth-full: 20 mm; idler-teeth: 16 t" }),
    );
    expect(none(bike, "drivetrain.chain-links-needed")).toMatch(/idler/);
  });
});

describe("the rings in use", () => {
  const capacity = (change: Hardtail): BuildEvaluation => evaluate(hardtail(change));
  const rings = `
part chainring kestle.ring-30 { teeth: 30 t; ring-chainline: 55 mm }
part chainring kestle.ring-46 { teeth: 46 t }
part chainring kestle.ring-24 { teeth: 24 t }
`;

  it("are those of the cranks where no ring stands in a slot", () => {
    expect(value(capacity({ crankset: "rings: 46-30 t" }), "drivetrain.front-difference")).toBe(16);
  });

  it("are those in the slots where the cranks come without", () => {
    const change = { extra: rings, crankset: "rings: none; crank-length: 170 mm" };
    const single = capacity({ ...change, drivetrain: "chainring: kestle.ring-30" });
    expect(value(single, "drivetrain.front-difference")).toBe(0);
    const double = capacity({ ...change, drivetrain: "chainring: kestle.ring-46; inner-chainring: kestle.ring-30" });
    expect(value(double, "drivetrain.front-difference")).toBe(16);
    const triple = capacity({
      ...change,
      drivetrain: "chainring: kestle.ring-46; middle-chainring: kestle.ring-30; inner-chainring: kestle.ring-24",
    });
    expect(value(triple, "drivetrain.capacity-needed")).toBe(41 + 22);
  });

  it("are known from the slot even when the cranks do not say", () => {
    const bike = capacity({ extra: rings, crankset: "crank-length: 170 mm", drivetrain: "chainring: kestle.ring-30" });
    expect(value(bike, "drivetrain.lowest-ratio")).toBeCloseTo(30 / 51, 9);
  });

  it("are replaced ring by ring", () => {
    const bike = capacity({ extra: rings, crankset: "rings: 50-34 t", drivetrain: "chainring: kestle.ring-46" });
    expect(value(bike, "drivetrain.front-difference")).toBe(12);
  });

  it("are unknown when neither cranks nor slot say", () => {
    const paths = missing(capacity({ crankset: "crank-length: 170 mm" }), "drivetrain.capacity-needed");
    expect(paths).toContain("drivetrain.crankset.rings");
    expect(paths).toContain("drivetrain.chainring");
  });

  it("give their chainline where a ring states one of its own", () => {
    const bike = capacity({
      extra: rings,
      crankset: "rings: none; chainline: 52 mm",
      drivetrain: "chainring: kestle.ring-30",
    });
    expect(value(bike, "drivetrain.front-chainline")).toBe(55);
  });
});

describe("a bicycle without a derailleur", () => {
  const single = (change: Hardtail = {}): BuildEvaluation =>
    evaluate(
      hardtail({
        frame: "rear-travel: none; chainstay: 400 to 420 mm; dropout: track-end",
        cassette: "cogs: 16 t",
        crankset: "rings: 44 t; crank-length: 165 mm",
        ...change,
      })
        .replace("cassette: kestle.stack-12", "cassette: kestle.stack-12; rear-derailleur: none")
        .replace("    rear-derailleur: kestle.reach-12\n", ""),
    );

  it("gets the whole lengths that can be made taut", () => {
    const bike = single();
    const links = value(bike, "drivetrain.tension-links") as readonly number[];
    expect(links.length).toBeGreaterThan(0);
    for (const count of links) expect(count % 2).toBe(0);
    const places = value(bike, "drivetrain.tension-chainstays") as readonly number[];
    for (const place of places) {
      expect(place).toBeGreaterThanOrEqual(400);
      expect(place).toBeLessThanOrEqual(420);
    }
    expect(none(bike, "drivetrain.chain-links-needed")).toMatch(/rear-derailleur is none/);
  });

  it("may use odd lengths with a half-link chain", () => {
    const links = value(single({ chain: "half-link: yes" }), "drivetrain.tension-links") as readonly number[];
    expect(links.some((count) => count % 2 === 1)).toBe(true);
  });

  it("is not worked out as a single-speed when there is a derailleur", () => {
    expect(none(evaluate(hardtail()), "drivetrain.tension-links")).toMatch(/derailleur/);
  });
});

describe("a gear hub", () => {
  const bike = evaluate(
    hardtail({
      frame: "rear-travel: none; chainstay: 430 to 445 mm",
      cassette: "cogs: 20 t",
      crankset: "rings: 44 t; crank-length: 170 mm",
      hub: "gears: 8; lowest-gear: 0.5; gear-range: 3",
    })
      .replace("cassette: kestle.stack-12", "cassette: kestle.stack-12; rear-derailleur: none")
      .replace("    rear-derailleur: kestle.reach-12\n", ""),
  );

  it("has its gears counted through the hub", () => {
    expect(value(bike, "drivetrain.primary-ratio") as number).toBeCloseTo(2.2, 9);
    expect(value(bike, "drivetrain.lowest-hub-development") as number).toBeCloseTo((1.1 * Math.PI * 744) / 1000, 9);
    expect(value(bike, "drivetrain.highest-hub-development") as number).toBeCloseTo((3.3 * Math.PI * 744) / 1000, 9);
  });

  it("has no gears of ring and cog alone", () => {
    expect(none(bike, "drivetrain.lowest-ratio")).toMatch(/hub changes gear/);
    expect(none(bike, "drivetrain.developments")).toMatch(/hub changes gear/);
  });

  it("leaves only those numbers unknown that need the least primary ratio", () => {
    expect(missing(bike, "drivetrain.primary-ratio-margin")).toEqual(["rear-wheel.hub.least-primary-ratio"]);
  });
});

describe("wheels", () => {
  it("refuse lacings that are not even", () => {
    const text = hardtail().replace("cross: 3;", "cross: 3; lacing: two-to-one;");
    expect(none(evaluate(text), "rear-wheel.spoke-length-drive-side")).toMatch(/even lacing/);
  });

  it("need the rim's hole offset, and name it when it is not stated", () => {
    const bike = evaluate(
      hardtail({ rim: "bead-seat: 622; inner-width: 30 mm; effective-rim-diameter: 600 mm; rim-kind: TSS" }),
    );
    expect(missing(bike, "rear-wheel.spoke-length-drive-side")).toEqual(["rear-wheel.rim.hole-offset"]);
    expect(missing(bike, "rear-wheel.tension-non-drive-side")).toEqual(["rear-wheel.rim.hole-offset"]);
  });

  it("keep a least pressure unknown that the tyre does not print", () => {
    const bike = evaluate(hardtail().replace("least-pressure: 1.2 bar; ", ""));
    expect(value(bike, "rear-wheel.greatest-pressure")).toBe(2.5);
    expect(missing(bike, "rear-wheel.least-pressure")).toEqual(["rear-wheel.tyre.least-pressure"]);
  });
});

describe("sums", () => {
  const text = `
part frame kestle.ridge { mass: 1.5 kg; price: GBP 900.00 }
part cassette kestle.stack-12 { mass: 372 g; price: GBP 184.50 }
part crankset kestle.arm { price: EUR 120.00 }
part brake-lever kestle.grasp { mass: 300 g; price: GBP 90.00 }
build example {
  frame: kestle.ridge
  drivetrain { cassette: kestle.stack-12; crankset: kestle.arm; rear-controller: kestle.grasp { clamp: rear-brake.lever } }
  rear-brake.lever: kestle.grasp
}
`;
  const bike = evaluate(text);

  it("count a lever with a shift control built in once", () => {
    expect(value(bike, "bike.mass-at-least")).toBe(2172);
    expect(value(bike, "drivetrain.mass-at-least")).toBe(372);
    expect(value(bike, "rear-brake.mass-at-least")).toBe(300);
  });

  it("count a wheel bought whole once, in its own assembly and in the bike", () => {
    const wheel = evaluate(`
part built-wheel kestle.round { mass: 800 g; price: GBP 210.00 }
part tyre kestle.tread { mass: 300 g; price: GBP 40.00 }
build example {
  rear-wheel { hub: kestle.round; rim: kestle.round; tyre: kestle.tread }
}
`);
    expect(value(wheel, "bike.mass-at-least")).toBe(1100);
    expect(value(wheel, "rear-wheel.mass-at-least")).toBe(1100);
    expect(value(wheel, "rear-wheel.unweighed-parts")).toEqual([]);
    expect(value(wheel, "bike.price-at-least")).toEqual(["GBP 250.00"]);
    expect(wheel.quantity("rear-wheel.spoke-length-drive-side")?.state).toBe("none");
  });

  it("name what is not weighed", () => {
    expect(value(bike, "bike.unweighed-parts")).toEqual(["drivetrain.crankset"]);
  });

  it("never add currencies up", () => {
    expect(value(bike, "bike.price-at-least")).toEqual(["GBP 1174.50", "EUR 120.00"]);
  });
});
